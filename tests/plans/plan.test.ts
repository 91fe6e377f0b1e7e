import { describe, expect, it } from 'vitest';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { figureLines, isDone, isOpen, type Plan, type PlanStep, sideOfStep } from '../../src/plans/plan.ts';
import { isPreparing, isSilent, isWaking, viewOf } from '../../src/plans/standing.ts';
import { keysOf, layUpWith, PARKED, placeOf, type StayGiven, stayOf, stepIn, tick, undated } from '../support/stays.ts';

describe('a plan', () => {
  it('is in the order of its days', () => {
    const days = layUpWith({ months: 14 }).steps.map(({ day }) => day);
    expect(days).toEqual(days.toSorted());
  });

  it('made late begins on the day it is made, and loses nothing by that', () => {
    const [early, late] = [layUpWith({}), layUpWith({ ahead: 5 })];
    expect(keysOf(late).toSorted()).toEqual(keysOf(early).toSorted());
    expect(late.steps[0]?.day).toBe(addDays(PARKED, -5));
    expect(stepIn(late, 'fuel-fill').day).toBe(stepIn(early, 'fuel-fill').day);
  });

  it('made after the fact keeps its days', () =>
    expect(stepIn(layUpWith({ ahead: -30 }), 'insurer').day).toBe(addDays(PARKED, -10)));

  it('carries the tick of a step, and that of one that no longer applies', () => {
    const [done, gone] = [tick('lay-up', 'wash', PARKED), tick('lay-up', 'drip-tray', PARKED, { state: 'skipped' })];
    const plan = layUpWith({ ticks: [done, gone] });
    expect(stepIn(plan, 'wash')).toMatchObject({ tick: done, applies: true });
    expect(stepIn(plan, 'drip-tray')).toMatchObject({ tick: gone, applies: false });
    expect(isDone(stepIn(plan, 'wash'))).toBe(true);
    expect(isDone(stepIn(plan, 'drip-tray')) || isOpen(stepIn(plan, 'drip-tray'))).toBe(false);
    expect(isOpen(stepIn(plan, 'wax'))).toBe(true);
  });

  it('takes no tick of the other plan', () =>
    expect(
      stepIn(layUpWith({ ticks: [tick('wake-up', 'brake-fluid', PARKED)], months: 26 }), 'brake-fluid').tick,
    ).toBeNull());

  it('takes the owner’s own steps on their days, with their ticks', () => {
    const own = { plan: 'lay-up', id: 'own-1', title: 'Ask the neighbor', days: 9, note: 'He has the key' } as const;
    const plan = layUpWith({
      own: [own, { ...own, plan: 'wake-up', id: 'own-2' }],
      ticks: [tick('lay-up', 'own-1', PARKED)],
    });
    expect(stepIn(plan, 'own-1')).toMatchObject({
      phase: 'own',
      title: 'Ask the neighbor',
      why: 'He has the key',
      day: addDays(PARKED, -9),
      tick: { step: 'own-1' },
    });
    expect(keysOf(plan)).not.toContain('own-2');
  });
});

describe('what a plan needs', () => {
  it('is listed once, on the step that orders it, and no more of steps that are ticked', () => {
    const { supplies, steps } = layUpWith({});
    expect(new Set(supplies).size).toBe(supplies.length);
    expect(supplies).toEqual(expect.arrayContaining(['hygrometer', 'wheel chocks']));
    expect(steps.find(({ key }) => key === 'order-supplies')?.lines).toEqual(supplies);
    const after = layUpWith({ ticks: [tick('lay-up', 'chocks', PARKED)] }).supplies;
    expect(after).not.toContain('wheel chocks');
    // Two steps need it: one tick is not enough.
    expect(layUpWith({ ticks: [tick('lay-up', 'desiccant', PARKED)] }).supplies).toContain('hygrometer');
  });
});

describe('the amounts of what a plan needs', () => {
  // 25 to 35 mL for each 10 L of what a tank of 62 L holds at 95 percent.
  it('are told beside it where a figure tells them', () =>
    expect(layUpWith({ parts: { 'fuel-gasoline': { details: { tank: 62 } } } }).supplies).toContain(
      'fuel stabilizer, in date (147 to 206 mL)',
    ));

  it('are left out where none does', () => {
    const { supplies } = layUpWith({});
    for (const need of ['engine oil', 'mouse traps', 'breathable cover']) expect(supplies).toContain(need);
  });
});

describe('the run to a low tank', () => {
  const keys = (given: StayGiven): string[] => keysOf(layUpWith(given));

  it('leaves the plan once the fill is ticked, of either fuel', () => {
    expect(keys({})).toContain('fuel-low');
    expect(keys({ ticks: [tick('lay-up', 'fuel-fill', PARKED)] })).not.toContain('fuel-low');
    const diesel = { start: 'diesel-wagon' } as const;
    expect(keys(diesel)).toContain('fuel-low');
    expect(keys({ ...diesel, ticks: [tick('lay-up', 'diesel-fill', PARKED)] })).not.toContain('fuel-low');
  });

  it('stays where the fill was skipped, and where it was itself ticked', () => {
    expect(keys({ ticks: [tick('lay-up', 'fuel-fill', PARKED, { state: 'skipped' })] })).toContain('fuel-low');
    const both = [tick('lay-up', 'fuel-low', PARKED), tick('lay-up', 'fuel-fill', PARKED)];
    expect(keys({ ticks: both })).toContain('fuel-low');
  });
});

describe('why a step is there', () => {
  const because = (key: string, given: StayGiven = {}): readonly string[] => stepIn(layUpWith(given), key).because;

  it.each([
    ['wash', {}, []],
    ['settle-place', {}, ['it stands 3 months or longer']],
    ['washer', {}, ['it can freeze there', 'it stands 1 month or longer']],
    ['washer', { place: null }, ['nobody has said where it stands', 'it stands 1 month or longer']],
    ['drip-tray', { circumstances: ['lift'] }, ['it stands on a lift, or another car below it']],
    ['in-gear', {}, ['gearbox: manual']],
  ] as readonly (readonly [string, StayGiven, readonly string[]])[])('%s for %o: %o', (key, given, wanted) =>
    expect(because(key, given)).toEqual(wanted),
  );

  it('says that a date is missing where that is the reason', () => {
    const parts = { 'brake-fluid-glycol': undated('brake-fluid-glycol') };
    expect(because('brake-fluid', { parts }).join()).toMatch(/the date of its .*brake fluid.* is not known/);
  });

  it('tells the side that was taken, with what its friends say', () => {
    const step = stepIn(layUpWith({ choices: { battery: 'out' } }), 'battery-out');
    expect(step.side).toBe('out');
    expect(sideOfStep(step)?.name).toBe('Taken out');
    expect(step.because).toContain('your choice: taken out');
    expect(because('battery-maintainer')).toContain('usual here: on a maintainer');
    expect(sideOfStep(stepIn(layUpWith({}), 'wash'))).toBeNull();
  });

  it('writes its figures in words', () =>
    expect(figureLines(stepIn(layUpWith({ place: placeOf({ winterLow: 5 }) }), 'desiccant'))).toEqual([
      'Desiccant, cabin and trunk together: 1 to 2 kg',
    ]));
});

describe('the view of a stay', () => {
  const facts = stayOf({ ticks: [tick('lay-up', 'wash', '2026-10-31'), tick('lay-up', 'chocks', PARKED)] });
  const ticked = ({ steps }: Plan): string[] => steps.filter((step: PlanStep) => step.tick).map(({ key }) => key);

  it('stands from the parking day on, with rounds and warnings from then', () => {
    const [eve, day] = [viewOf(facts, addDays(PARKED, -1)), viewOf(facts, PARKED)];
    expect([eve.state, day.state]).toEqual(['ahead', 'standing']);
    expect([eve.rounds.length, eve.warnings.length, eve.found.length]).toEqual([0, 0, 0]);
    expect(day.rounds).toHaveLength(4);
  });

  it('warns before the parking day of the papers only', () => {
    const given: StayGiven = { papers: { renewsOn: '2026-11-05' } };
    const keys = (on: CivilDate): string[] => viewOf(stayOf(given), on).warnings.map(({ key }) => key);
    expect(keys(addDays(PARKED, -1))).toEqual(['policy']);
    expect(keys(PARKED)).toEqual(expect.arrayContaining(['policy', 'coolant-unmeasured']));
  });

  it('knows no tick before its day', () => {
    expect(ticked(viewOf(facts, '2026-10-31').layUp)).toEqual(['wash']);
    expect(ticked(viewOf(facts, PARKED).layUp)).toEqual(['wash', 'chocks']);
  });

  it('judges the parts where the stay has the car, not where it stood before', () => {
    const cold = placeOf({ winterLow: -30 });
    const view = viewOf(stayOf({ place: cold, car: { place: placeOf(), placedOn: '2020-01-01' } }), PARKED);
    for (const { car } of view.findings) expect(car.place).toBe(cold);
  });

  it.each([
    ['2027-02-28', false],
    ['2027-03-01', true],
    ['2027-05-01', true],
  ] as const)('of a car that comes back on 1 April is on %s waking: %s', (on, waking) =>
    expect(isWaking(facts.stay, on)).toBe(waking),
  );

  it('wakes nothing before it stands, and nothing of an open end', () => {
    expect(isWaking(stayOf({ months: 0, days: 10 }).stay, addDays(PARKED, -1))).toBe(false);
    expect(isWaking(stayOf({ months: 0, days: 10 }).stay, PARKED)).toBe(true);
    expect(isWaking(stayOf({ months: null }).stay, '2029-01-01')).toBe(false);
  });

  it.each([
    ['2026-10-31', false, 'it is not parked'],
    ['2026-11-01', true, 'it stands'],
    ['2027-04-14', true, 'two weeks late are borne'],
    ['2027-04-15', false, 'from the fourteenth day on nobody can say that it still stands'],
  ] as const)('of a car that comes back on 1 April is on %s silent: %s (%s)', (on, silent, _) =>
    expect(isSilent(viewOf(facts, on))).toBe(silent),
  );

  it('of an open end stays silent for years', () =>
    expect(isSilent(viewOf(stayOf({ months: null }), '2030-01-01'))).toBe(true));

  it.each([
    ['2026-09-15', true],
    ['2026-11-15', true],
    ['2026-11-16', false],
  ] as const)('is on %s still to be prepared: %s', (on, preparing) =>
    expect(isPreparing(viewOf(facts, on))).toBe(preparing),
  );

  it('is still to be prepared a fortnight after it was made, where that was later than the parking day', () => {
    const late = stayOf({ ahead: -30 });
    expect(isPreparing(viewOf(late, '2026-12-15'))).toBe(true);
    expect(isPreparing(viewOf(late, '2026-12-16'))).toBe(false);
  });

  it('is prepared once every step is ticked, done or skipped', () => {
    const ticks = keysOf(layUpWith({})).map((key, n) =>
      tick('lay-up', key, '2026-10-20', { state: n % 2 === 0 ? 'done' : 'skipped' }),
    );
    expect(isPreparing(viewOf(stayOf({ ticks }), '2026-10-21'))).toBe(false);
    expect(isPreparing(viewOf(stayOf({ ticks: ticks.slice(1) }), '2026-10-21'))).toBe(true);
  });

  it('that has ended is seen as on its last day', () => {
    const ended = { ...facts, closedOn: '2027-03-20' as const };
    expect(viewOf(ended, '2029-01-01').on).toBe('2027-03-20');
    expect(keysOf(viewOf(ended, '2029-06-01').wakeUp)).not.toContain('workshop-years');
  });

  it('of an open end is woken by how long it has stood until now', () => {
    const keys = (on: '2027-02-01' | '2028-12-01'): string[] => keysOf(viewOf(stayOf({ months: null }), on).wakeUp);
    expect(keys('2027-02-01')).not.toContain('workshop-years');
    expect(keys('2028-12-01')).toContain('workshop-years');
  });
});
