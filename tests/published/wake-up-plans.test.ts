/** Waking a car: the order of spring, what returns where autumn left it out, and what years ask. */
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import type { Plan } from '../../src/plans/plan.ts';
import { viewOf } from '../../src/plans/standing.ts';
import {
  aged,
  GARAGE,
  keysOf,
  layUpWith,
  PARKED,
  placeOf,
  type StayGiven,
  stayOf,
  stepIn,
  tick,
  undated,
  wakeUpWith,
} from '../support/stays.ts';

/** Everything its lay-up asked for was done, or nothing was. */
const wellDone = (stay: StayGiven): Plan => wakeUpWith(stay, { done: keysOf(layUpWith(stay)) });
const leftOut = (stay: StayGiven): Plan => wakeUpWith(stay, { undone: keysOf(layUpWith(stay)) });
/** Nobody ticked anything either way, and rounds found something. */
const untold = (stay: StayGiven): Plan => {
  const keys = keysOf(layUpWith(stay));
  return wakeUpWith(stay, { undone: keys, untold: keys, found: ['Smell, inside and around it: fuel'] });
};

const inOrder = (plan: Plan, wanted: readonly string[]): void => {
  const keys = keysOf(plan);
  expect(keys.filter((key) => wanted.includes(key))).toEqual(wanted);
};

const CARS: readonly [string, StayGiven][] = [
  ['a roadster after five months', {}],
  ['a roadster after eight months', { months: 8 }],
  ['a roadster after 26 months', { months: 26 }],
  ['an air-cooled car after three weeks', { start: 'rear-engine-air-cooled', months: 0, days: 21 }],
  ['a diesel wagon after 14 months', { start: 'diesel-wagon', months: 14 }],
  ['a tourer with a magneto after a year', { start: 'tourer-rod-brakes', months: 12 }],
  ['a grand tourer after two years', { start: 'grand-tourer-powered-top', months: 24 }],
  ['a car with its wheels off', { circumstances: ['wheels-off'] }],
  ['a car on an open end', { months: null }],
  [
    'a hatchback after two years on a belt nobody can date',
    { start: 'hatchback-timing-belt', months: 24, parts: { 'timing-belt': undated('timing-belt') } },
  ],
  ['a big automatic after 14 months', { start: 'big-automatic-v8', months: 14 }],
];

/** First before second wherever both are asked for: common practice of spring, unless named. */
const BEFORE: readonly (readonly [first: string, second: string, source: string])[] = [
  ['cover-off', 'mice', 'insurer’s magazine'],
  ['mice', 'unblock', 'what sits in the pipe is seen before it is opened'],
  ['mice', 'first-start', 'the start draws nests into the carburetor'],
  ['mice-hard', 'first-start', 'chewed wires burn with the ignition on'],
  ['unblock', 'first-start', 'US Army TB 740-97-4: tags against the log'],
  ['levels', 'first-start', 'insurer’s magazine'],
  ['cardboard', 'first-start', 'US Army TM 5-5420-227-24 2-7: a fuel leak is mended first'],
  ['rubber-look', 'first-start', 'insurer’s magazine'],
  ['fuel-sample', 'first-start', 'mechanics: never from the old tank'],
  ['fuel-drain', 'first-start', 'mechanics: never from the old tank'],
  ['tank-refill', 'first-start', 'ten minutes without a leak'],
  ['turn-by-hand', 'battery', 'television workshop: a starter cannot feel a stuck valve'],
  ['turn-by-hand', 'first-start', 'television workshop: a starter cannot feel a stuck valve'],
  ['expel-oil', 'battery', 'US Army TB 740-97-4: hydraulic lock'],
  ['expel-oil', 'first-start', 'US Army TB 740-97-4: hydraulic lock'],
  // It was left in gear with the brake off: hand and starter would push the car.
  ['out-of-gear', 'expel-oil', 'nothing is turned by hand in gear'],
  ['out-of-gear', 'turn-by-hand', 'nothing is turned by hand in gear'],
  ['out-of-gear', 'turn-diesel', 'nothing is turned by hand in gear'],
  ['out-of-gear', 'battery', 'no current for a starter in gear'],
  ['out-of-gear', 'oil-first', 'no starter turns it in gear'],
  ['out-of-gear', 'first-start', 'no starter turns it in gear'],
  ['timing-belt', 'expel-oil', 'a belt that jumps bends valves on the first turn'],
  ['timing-belt', 'turn-by-hand', 'a belt that jumps bends valves on the first turn'],
  ['timing-belt', 'oil-first', 'a belt that jumps bends valves on the first turn'],
  ['expel-oil', 'oil-first', 'US Army TB 740-97-4: hydraulic lock'],
  ['turn-by-hand', 'oil-first', 'a starter cannot feel a stuck valve'],
  ['turn-diesel', 'oil-first', 'a starter cannot feel a stuck valve'],
  ['unblock', 'oil-first', 'US Army TB 740-97-4: tags against the log'],
  ['oil-first', 'first-start', 'oil arrives before it runs'],
  ['found-on-rounds', 'battery', 'with a smell of fuel nothing is switched on'],
  ['found-on-rounds', 'first-start', 'what was seen is put right first'],
  ['battery', 'lights', 'insurer’s magazine'],
  ['tires', 'yard', 'common practice'],
  ['wheels-on', 'tires', 'pumped up before they carry'],
  ['brakes-free', 'yard', 'brakes and tires decide whether it moves by itself'],
  ['brake-fluid', 'brakes-free', 'common practice'],
  ['clutch', 'yard', 'a glued clutch on a public road'],
  ['wheel-nuts', 'yard', 'insurer’s magazine'],
  ['first-start', 'leaks', 'common practice'],
  ['leaks', 'road-check', 'common practice'],
  ['yard', 'road-check', 'first motion at walking pace'],
  ['road-cover', 'road-registry', 'UK texts on the off-road notice: cover first'],
  ['road-registry', 'road-check', 'UK texts on the off-road notice: road last'],
];

describe.each(CARS)('%s', (_, stay) => {
  const plans = [wellDone(stay), leftOut(stay), untold(stay)];

  it.each(BEFORE)('%s comes before %s: %s', (first, second) => {
    for (const keys of plans.map(keysOf)) {
      if (!keys.includes(first) || !keys.includes(second)) continue;
      expect(keys.indexOf(first)).toBeLessThan(keys.indexOf(second));
    }
  });

  it('always looks, checks brakes, tires and lights, starts outdoors, and ends with the road check', () => {
    for (const plan of plans) {
      expect(keysOf(plan)).toEqual(
        expect.arrayContaining(['cover-off', 'mice', 'levels', 'unblock', 'tires', 'wheel-nuts', 'brakes-free']),
      );
      expect(keysOf(plan)).toEqual(expect.arrayContaining(['lights', 'first-start', 'leaks', 'yard']));
      expect(keysOf(plan).at(-1)).toBe('road-check');
    }
  });
});

it('every pair of the order is met by some car', () => {
  const met = CARS.flatMap(([, stay]) => [wellDone(stay), leftOut(stay), untold(stay)].map(keysOf)).concat([
    keysOf(leftOut({ months: 26, parts: { 'brake-fluid-glycol': aged('brake-fluid-glycol', 30) } })),
  ]);
  for (const [first, second] of BEFORE)
    expect(
      met.some((keys) => keys.includes(first) && keys.includes(second)),
      `${first}, ${second}`,
    ).toBe(true);
});

describe('spring of a roadster that was well laid up', () => {
  const plan = wellDone({});

  // Common practice: pipes and air box, mice, levels, cardboard, battery, brakes, lights, out of doors, papers, road.
  it('goes by the list', () =>
    inOrder(plan, [
      ...['road-cover', 'cover-off', 'cardboard', 'mice', 'levels', 'rubber-look', 'out-of-gear', 'road-registry'],
      ...['fuel-sample', 'unblock', 'battery', 'tires', 'wheel-nuts', 'brakes-free', 'clutch', 'lights'],
      ...['first-start', 'leaks', 'yard', 'road-check'],
    ]));

  // Letters and deliveries take weeks: insurer before registry, both before the road.
  it.each([
    ['order-due', 28],
    ['road-cover', 10],
    ['road-registry', 7],
    ['out-of-gear', 7],
    ['road-check', 0],
  ])('has %s %d days ahead', (key, days) => expect(stepIn(plan, key).day).toBe(addDays('2027-04-01', -days)));

  it.each([
    ['oil', 'it was changed in autumn'],
    ['coolant', 'its strength was seen to'],
    ['carburetor', 'its bowl was run dry'],
    ['mice-hard', 'holes were closed'],
    ['brake-stuck', 'the parking brake was off'],
    ['flat-spots', 'the pressure was set'],
    ['turn-by-hand', 'it stood less than a year'],
    ['battery-load', 'it was kept charged'],
    ['workshop-years', 'it stood less than two years'],
    ['expel-oil', 'no oil was put into its bores'],
    ['found-on-rounds', 'rounds found nothing'],
  ])('without %s: %s', (key) => expect(keysOf(plan)).not.toContain(key));
});

describe('what was not done in autumn', () => {
  // Common practice: good preparation spares work, “driven in and shut off” adds it.
  it.each([
    ['oil-change', 'oil', {}],
    ['coolant-strength', 'coolant', {}],
    ['carburetor-dry', 'carburetor', {}],
    ['close-holes', 'mice-hard', {}],
    ['traps', 'mice-hard', {}],
    ['pressure', 'flat-spots', {}],
    ['chocks', 'brake-stuck', {}],
    ['battery-maintainer', 'battery-load', {}],
    ['brake-fluid', 'brake-fluid', {}],
    ['fuel-fill', 'fuel-drain', { months: 6 }],
    ['cylinder-oil', 'turn-by-hand', { months: 12 }],
  ] as const)('%s comes back as %s', (left, back, stay) => {
    expect(keysOf(wakeUpWith(stay, { undone: [left] }))).toContain(back);
    if (back !== 'fuel-drain') expect(keysOf(wakeUpWith(stay, { done: [left] }))).not.toContain(back);
  });

  it.each([
    ['cylinder-oil', 'expel-oil'],
    ['belts-slack', 'belts-tight'],
    ['stands', 'stands-out'],
    ['sprung-by-gas', 'stands-out'],
    ['gas-valve', 'valve-open'],
    ['insurer', 'road-cover'],
    ['registry', 'road-registry'],
  ])('%s, done, is undone by %s', (done, undoing) => {
    const stay: StayGiven = { months: 1 };
    expect(keysOf(wakeUpWith(stay, { done: [done] }))).toContain(undoing);
    expect(keysOf(wakeUpWith(stay, { undone: [done] }))).not.toContain(undoing);
  });

  it.each([
    ['cylinder-oil', 'expel-oil'],
    ['belts-slack', 'belts-tight'],
    ['stands', 'stands-out'],
    ['sprung-by-gas', 'stands-out'],
    ['gas-valve', 'valve-open'],
  ])('%s that nobody ticked either way may have been done, and brings %s', (step, undoing) => {
    const became = { undone: [step], untold: [step] };
    const plan = wakeUpWith({ months: 1 }, became);
    expect(stepIn(plan, undoing).because).toContain('nobody has ticked either way whether it was done');
  });

  it('oil in the bores that nobody told of is expelled; skipped there is none', () => {
    const keys = (ticks: StayGiven['ticks']): string[] =>
      keysOf(viewOf(stayOf({ months: 8, ...(ticks ? { ticks } : {}) }), '2027-06-20').wakeUp);
    expect(keys([])).toContain('expel-oil');
    expect(keys([tick('lay-up', 'cylinder-oil', PARKED)])).toContain('expel-oil');
    expect(keys([tick('lay-up', 'cylinder-oil', PARKED, { state: 'skipped' })])).not.toContain('expel-oil');
    // A winter asks for none, so none can be there.
    expect(keysOf(viewOf(stayOf({}), '2027-03-20').wakeUp)).not.toContain('expel-oil');
  });

  it('a car with a lever is always taken out of gear, whatever was ticked', () => {
    for (const start of ['roadster-disc-drum-overdrive', 'big-automatic-v8'] as const)
      for (const plan of [wellDone({ start }), leftOut({ start }), wellDone({ start, months: 0, days: 10 })])
        expect(keysOf(plan)).toContain('out-of-gear');
  });

  it('is what nobody ticked by the parking day, skipped steps among it', () => {
    const facts = stayOf({
      ticks: [
        tick('lay-up', 'carburetor-dry', '2026-11-01'),
        tick('lay-up', 'oil-change', '2026-10-30', { state: 'skipped' }),
      ],
    });
    const keys = keysOf(viewOf(facts, '2026-11-20').wakeUp);
    expect(keys).toEqual(expect.arrayContaining(['oil', 'brake-stuck', 'mice-hard']));
    expect(keys).not.toContain('carburetor');
    // Before it is parked each still can be done.
    expect(keysOf(viewOf(facts, '2026-10-31').wakeUp)).not.toContain('brake-stuck');
  });
});

describe('years', () => {
  // No start from a tank of more than 12 months untreated or 24 treated: judgement of the trade, a red gate.
  it.each([
    ['E10, full and treated, after a year', { months: 12, choices: { tank: 'full' } }],
    ['without ethanol, treated, after two years', { months: 24, choices: { tank: 'ethanol-free' } }],
  ] as const)('drain the tank: %s', (_, stay) => {
    const parts = { 'fuel-gasoline': aged('fuel-gasoline', 0) };
    expect(keysOf(wellDone({ ...stay, parts }))).toContain('fuel-drain');
  });

  it('drain fuel that nobody can date, and that nobody renewed before it stood', () => {
    const stay: StayGiven = { months: 3, parts: { 'fuel-gasoline': undated('fuel-gasoline') } };
    expect(keysOf(wakeUpWith(stay, { undone: ['fuel-fill'] }))).toContain('fuel-drain');
  });

  // Fuel by its own life: without ethanol, treated, two years at 20 °C and below; E10 one.
  it.each([
    ['e0', 'ethanol-free', 13, false],
    ['e10', 'full', 13, true],
    ['e0', 'ethanol-free', 26, true],
  ] as const)(
    'go by the fuel’s own life: %s, %s, treated, after %d months is drained: %s',
    (blend, tank, months, is) => {
      const details = { blend, stabilized: 'yes', fullness: 95 };
      const stay: StayGiven = {
        start: 'coupe-injection-abs',
        months,
        choices: { tank },
        place: placeOf({ winterLow: -5, summerHigh: 20 }),
        parts: { 'fuel-gasoline': { ...aged('fuel-gasoline', 0), details } },
      };
      expect(keysOf(wellDone(stay)).includes('fuel-drain')).toBe(is);
    },
  );

  it('go by the fuel’s own life: E10, treated, in heat or the open is over within the year, and is drained', () => {
    const place = placeOf({ winterLow: 2, summerHigh: 45, air: 'desert', shelter: 'covered' });
    const details = { blend: 'e10', stabilized: 'yes', fullness: 95 };
    const facts = stayOf({
      place,
      months: 10,
      ticks: [tick('lay-up', 'fuel-fill', PARKED)],
      parts: { 'fuel-gasoline': { ...aged('fuel-gasoline', 0), details } },
    });
    const { warnings, wakeUp } = viewOf(facts, '2027-09-01');
    expect(warnings.map(({ key }) => key)).toContain('fuel-stop');
    expect(keysOf(wakeUp)).toContain('fuel-drain');
  });

  it('go by the fuel’s own life: what was over when it was parked for two months is drained', () => {
    const facts = stayOf({ months: 2, parts: { 'fuel-gasoline': aged('fuel-gasoline', 30) } });
    const { warnings, wakeUp } = viewOf(facts, '2027-01-01');
    expect(warnings.map(({ key }) => key)).toContain('fuel-stop');
    expect(keysOf(wakeUp)).toContain('fuel-drain');
  });

  /** Planned for two months, and nobody closed it. */
  const overdue = (on: CivilDate, filled: boolean): string[] => {
    const ticks = filled ? [tick('lay-up', 'fuel-fill', PARKED)] : [];
    return keysOf(viewOf(stayOf({ months: 2, ticks }), on).wakeUp);
  };

  it.each([
    ['workshop-years', false],
    ['turn-by-hand', false],
    ['oil-first', false],
    ['fuel-drain', false],
    ['fuel-drain', true],
  ])('count until the day it is seen: two months planned, thirty gone by, bring %s (filled up: %s)', (key, filled) => {
    expect(overdue('2027-01-01', filled)).not.toContain(key);
    expect(overdue(addMonths(PARKED, 30), filled)).toContain(key);
  });

  it('refill a tank that was drained, and draw no sample from it', () => {
    const keys = keysOf(wellDone({ months: 26 }));
    expect(keys).toContain('tank-refill');
    expect(keys).not.toContain('fuel-sample');
  });

  // Common practice: the starter only after a hand has turned it, from a year on; a workshop after two.
  it('ask for oil in the bores and a turn by hand from twelve months on, and not a day earlier', () => {
    expect(keysOf(leftOut({ months: 12 }))).toContain('turn-by-hand');
    expect(keysOf(leftOut({ months: 12, days: -1 }))).not.toContain('turn-by-hand');
  });

  it('ask for a workshop from two on', () => {
    expect(stepIn(wellDone({ months: 24 }), 'workshop-years').day).toBe(addDays('2028-11-01', -28));
    expect(keysOf(wellDone({ months: 24, days: -1 }))).not.toContain('workshop-years');
  });

  it('change the oil again after one, and not after a winter on fresh oil', () => {
    expect(keysOf(wellDone({ months: 12 }))).toContain('oil');
    expect(keysOf(wellDone({}))).not.toContain('oil');
  });

  it('order tires that are over, weeks ahead: common practice, fitted last', () => {
    const stay: StayGiven = { parts: { 'tires-road': aged('tires-road', 118) }, place: GARAGE };
    const plan = wellDone(stay);
    expect(stepIn(plan, 'order-tires').lines.join()).toMatch(/^Road tire/);
    expect(stepIn(plan, 'order-tires').day).toBe(addDays('2027-04-01', -28));
    expect(keysOf(wellDone({}))).not.toContain('order-tires');
  });

  it('date or renew a timing belt once it is out of gear, and put right two weeks ahead what rounds found', () => {
    const stay: StayGiven = {
      start: 'hatchback-timing-belt',
      parts: { 'timing-belt': undated('timing-belt') },
    };
    const plan = wakeUpWith(stay, { found: ['Smell, inside and around it: fuel'] });
    expect(stepIn(plan, 'timing-belt').day).toBe(addDays('2027-04-01', -7));
    expect(stepIn(plan, 'found-on-rounds')).toMatchObject({
      day: addDays('2027-04-01', -14),
      lines: ['Smell, inside and around it: fuel'],
      because: ['a round found it'],
    });
  });
});
