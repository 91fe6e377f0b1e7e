import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/dates/civil.ts';
import { figureLines, isDone, isOpen, type Plan, type PlanStep, sideOfStep } from '../../src/plans/plan.ts';
import { isWaking, viewOf } from '../../src/plans/standing.ts';
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
    expect(supplies).toEqual(expect.arrayContaining(['hygrometer', 'fuel stabilizer, in date', 'wheel chocks']));
    expect(steps.find(({ key }) => key === 'order-supplies')?.lines).toEqual(supplies);
    const after = layUpWith({ ticks: [tick('lay-up', 'chocks', PARKED)] }).supplies;
    expect(after).not.toContain('wheel chocks');
    // Two steps need it: one tick is not enough.
    expect(layUpWith({ ticks: [tick('lay-up', 'desiccant', PARKED)] }).supplies).toContain('hygrometer');
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
    expect(step.because.join()).toContain('chosen: taken out');
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

  it('of an open end is woken by how long it has stood until now', () => {
    const keys = (on: '2027-02-01' | '2028-12-01'): string[] => keysOf(viewOf(stayOf({ months: null }), on).wakeUp);
    expect(keys('2027-02-01')).not.toContain('workshop-years');
    expect(keys('2028-12-01')).toContain('workshop-years');
  });
});
