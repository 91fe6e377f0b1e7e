/** Estimates ask for a look from a day on, and never for more. */
import { describe, expect, it } from 'vitest';
import { chargeOn } from '../../src/ageing/battery/outlook.ts';
import { ASSUMED } from '../../src/ageing/place.ts';
import { dueForAir } from '../../src/ageing/tires/pressure.ts';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import type { Finding } from '../../src/findings/assess.ts';
import { findingsOf } from '../../src/findings/car.ts';
import { explain } from '../../src/findings/explain.ts';
import type { Answers, CarFacts, Claim, Reading } from '../../src/findings/facts.ts';
import { asksOf } from '../../src/findings/outlook.ts';
import { carOf, dated, partOf } from '../support/parts.ts';
import { FROSTY, HOT, reading } from '../support/readings.ts';

interface Facts {
  kind: string;
  claims: Claim[];
  readings?: Reading[];
  details?: Answers;
  car?: CarFacts;
}

const at = ({ kind, claims, readings = [], details = {}, car = carOf() }: Facts, on: CivilDate): Finding =>
  findingsOf(car, [partOf(kind, claims, { readings, details })], [], on)[0] as Finding;

/** The first day a look is asked for by estimate, up to another; null: on none. */
const firstAsked = (facts: Facts, from: CivilDate, to: CivilDate): CivilDate | null => {
  for (let day = 0; day <= daysBetween(from, to); day++) {
    const on = addDays(from, day);
    if (at(facts, on).by === 'estimate') return on;
  }
  return null;
};

const BATTERY: Facts = {
  kind: 'battery-flooded',
  claims: [dated('made', '2026-01-15')],
  readings: [reading('rest-voltage', '2026-03-01', 12.65)],
  details: { chemistry: 'calcium', capacity: 60, connection: 'connected' },
  car: carOf({ drain: 15 }),
};
const [READ, LATER]: [CivilDate, CivilDate] = ['2026-03-01', '2027-06-01'];

/** The low end of a reading of 12.65 V, full, five points off for the meter; a fifth more than the measured drain. */
const lowestCharge = (on: CivilDate): number =>
  chargeOn(
    {
      chemistry: 'calcium',
      capacity: 60,
      drain: { low: 12, high: 18 },
      maintained: false,
      charge: { low: 95, high: 100 },
      from: READ,
    },
    ASSUMED,
    on,
  ).low;

describe('a battery with a known connection', () => {
  const asked = firstAsked(BATTERY, READ, LATER) ?? READ;

  it('asks from the day its charge may be down to three quarters', () => {
    expect(asked > READ).toBe(true);
    expect(lowestCharge(asked)).toBeLessThanOrEqual(75);
    expect(lowestCharge(addDays(asked, -1))).toBeGreaterThan(75);
    expect(at(BATTERY, addDays(asked, -1))).toMatchObject({ standing: 'in date', began: null });
  });

  it('keeps the day it began, and never asks for more than a look', () => {
    for (const day of [0, 1, 40, 400]) {
      const found = at(BATTERY, addDays(asked, day));
      expect(found).toMatchObject({ standing: 'look', by: 'estimate', began: asked, gravest: null });
    }
    expect(explain(at(BATTERY, addDays(asked, 400))).todo).toMatch(/^Charge it, or put it on a maintainer/);
  });

  it('begins anew with a reading of a charged one', () => {
    const charged: Facts = {
      ...BATTERY,
      readings: [...(BATTERY.readings ?? []), reading('rest-voltage', addDays(asked, 5), 12.65)],
    };
    expect(at(charged, addDays(asked, 4))).toMatchObject({ by: 'estimate', began: asked });
    expect(at(charged, addDays(asked, 5)).standing).toBe('in date');
    const again = firstAsked(charged, addDays(asked, 5), LATER) ?? READ;
    expect(again > addDays(asked, 5)).toBe(true);
    expect(at(charged, addDays(again, 9)).began).toBe(again);
  });

  it('asks sooner with a greater drain measured, later disconnected', () => {
    const thirsty = firstAsked({ ...BATTERY, car: carOf({ drain: 60 }) }, READ, LATER);
    const alone = firstAsked(
      { ...BATTERY, details: { ...BATTERY.details, connection: 'disconnected' } },
      READ,
      '2027-12-31',
    );
    expect([thirsty, asked, alone]).toEqual([thirsty, asked, alone].toSorted());
    expect(new Set([thirsty, asked, alone, null]).size).toBe(4);
  });

  it.each<[string, Partial<Facts>]>([
    ['it is on a maintainer', { details: { chemistry: 'calcium', capacity: 60, connection: 'maintainer' } }],
    ['nothing was read', { readings: [] }],
    ['only what tells no charge was read', { readings: [reading('charging', READ, 14)] }],
    ['it had not rested when it was read', { readings: [reading('rest-voltage', READ, 13.4)] }],
    ['its acid was read without its warmth', { readings: [reading('density', READ, 1.2)] }],
    ['it is a lithium one', { kind: 'battery-lithium', readings: [reading('rest-voltage', READ, 13.3)] }],
  ])('asks for nothing where %s', (_, more) =>
    expect(firstAsked({ ...BATTERY, ...more }, READ, '2026-12-31')).toBeNull(),
  );

  it('asks by self-discharge alone where nobody said how it stands nor measured what it draws', () => {
    const untold: Facts = { ...BATTERY, details: { chemistry: 'calcium', capacity: 60 }, car: carOf() };
    const alone: Facts = { ...BATTERY, details: { ...BATTERY.details, connection: 'disconnected' }, car: carOf() };
    const day = firstAsked(untold, READ, '2027-12-31');
    expect(day).not.toBeNull();
    expect(day).toBe(firstAsked(alone, READ, '2027-12-31'));
    const measured = firstAsked({ ...untold, car: carOf({ drain: 60 }) }, READ, '2027-12-31');
    expect(measured !== null && day !== null && measured < day).toBe(true);
  });

  it('does not ask within thirty days of a reading, unless its drain was measured', () => {
    const guessed: Facts = { ...BATTERY, car: carOf(), details: { connection: 'connected', capacity: 12 } };
    expect(firstAsked(guessed, READ, LATER)).toBe('2026-03-31');
    const told = firstAsked({ ...guessed, details: { ...guessed.details, drain: 50 } }, READ, LATER);
    const wired = firstAsked({ ...guessed, car: carOf({ drain: 50 }) }, READ, LATER);
    expect(told !== null && told > READ && told < '2026-03-31').toBe(true);
    expect(wired).toBe(told);
  });

  it('takes the drain told of the battery before the one read at the wiring', () => {
    const with50 = { ...BATTERY, details: { ...BATTERY.details, drain: 50 } };
    expect(firstAsked(with50, READ, LATER)).toBe(firstAsked({ ...with50, car: carOf({ drain: 1 }) }, READ, LATER));
    expect(firstAsked(with50, READ, LATER)).not.toBe(asked);
  });

  it('answers its days in order: to recharge, no longer to crank, to freeze where that can be', () => {
    const days = (place: CarFacts['place'], on: CivilDate) =>
      asksOf(at({ ...BATTERY, car: carOf({ drain: 15, place }) }, on));
    expect(days(null, addDays(asked, -1))).toEqual([]);
    expect(days(null, asked)).toEqual([asked]);
    const [recharge, noCrank, freezes] = days(FROSTY, LATER);
    expect([recharge, noCrank, freezes]).toEqual([recharge, noCrank, freezes].toSorted());
    expect(new Set([recharge, noCrank, freezes]).size).toBe(3);
    expect(days(FROSTY, LATER)).toHaveLength(3);
    expect(days(null, LATER)).toHaveLength(2);
    for (const [index, day] of [recharge, noCrank, freezes].entries())
      expect(at({ ...BATTERY, car: carOf({ drain: 15, place: FROSTY }) }, day ?? READ), String(index)).toMatchObject({
        began: recharge,
        news: { estimate: day },
      });
  });

  it('does not clear what its age brought', () => {
    const old: Facts = { ...BATTERY, claims: [dated('made', '2015-01-15')] };
    expect(at(old, asked)).toMatchObject({ standing: 'past', by: 'age', began: '2021-01-16' });
    expect(at({ ...BATTERY, claims: [] }, asked)).toMatchObject({ standing: 'unproven', by: 'age' });
  });
});

describe.each(['tires-road', 'tire-spare'])('a %s with a placard', (kind) => {
  const TIRE: Facts = {
    kind,
    claims: [dated('made', '2025-01-15')],
    readings: [reading('cold-pressure', READ, 2.3, 15)],
    details: { placard: 2.2 },
  };
  const air = { pressure: 2.3, temperature: 15, day: READ };

  it('asks from the day its air may be a tenth below, and for a look only', () => {
    const { earliest } = dueForAir(air, LATER, ASSUMED, 2.2);
    const asked = firstAsked(TIRE, READ, LATER);
    expect(asked).toBe(earliest);
    expect(asked).not.toBeNull();
    for (const on of [asked ?? READ, LATER])
      expect(at(TIRE, on)).toMatchObject({ standing: 'look', by: 'estimate', began: asked });
  });

  it('asks for nothing without its placard, or without a reading', () => {
    expect(firstAsked({ ...TIRE, details: {} }, READ, LATER)).toBeNull();
    expect(firstAsked({ ...TIRE, readings: [] }, READ, LATER)).toBeNull();
  });
});

describe('a tire read lately', () => {
  const tire = (...readings: Reading[]): Facts => ({
    kind: 'tires-road',
    claims: [dated('made', '2025-01-15')],
    readings,
    details: { placard: 2.2 },
  });
  const air = (day: CivilDate, bar: number): Reading => reading('cold-pressure', day, bar, 15);

  it('is asked for after thirty days and no sooner, low as it may be by then', () => {
    expect(firstAsked(tire(air(READ, 2.02)), READ, LATER)).toBe('2026-03-31');
  });

  it('that lost more than rubber lets through asks at once, and until it holds again', () => {
    const leaking = [air('2026-01-29', 2.6), air(READ, 2.35)];
    expect(firstAsked(tire(...leaking), '2026-01-29', LATER)).toBe(READ);
    expect(at(tire(...leaking), READ)).toMatchObject({ standing: 'look', by: 'estimate', began: READ });
    const holding = [...leaking, air('2026-04-01', 2.33)];
    expect(at(tire(...holding), '2026-04-01').news.estimate).toBeNull();
  });

  it('that lost no more than that does not', () => {
    expect(at(tire(air('2026-01-29', 2.5), air(READ, 2.35)), READ).news.estimate).toBeNull();
  });

  it('still leaks where it was read again on the day after', () => {
    const again = tire(air('2026-01-29', 2.6), air(READ, 2.35), air('2026-03-02', 2.35));
    expect(at(again, '2026-03-02').news.estimate).not.toBeNull();
  });
});

describe('fuel with its blend', () => {
  const FUEL: Facts = {
    kind: 'fuel-gasoline',
    claims: [dated('filled', '2026-05-01')],
    details: { blend: 'e10' },
    car: carOf({ place: HOT }),
  };

  it('asks sooner than the calendar in a hot place', () => {
    const asked = firstAsked(FUEL, '2026-05-01', '2026-07-31') ?? '2026-05-01';
    expect(asked > '2026-05-01' && asked < '2026-08-01').toBe(true);
    expect(at(FUEL, asked)).toMatchObject({ standing: 'look', began: asked });
    expect(at(FUEL, addDays(asked, -1))).toMatchObject({ standing: 'in date' });
    // The calendar's own look comes on 1 August, and changes nothing.
    expect(at(FUEL, '2026-08-01')).toMatchObject({ standing: 'look', by: 'age', began: asked });
  });

  it('asks for no more than a look, though the model would drain it', () => {
    const asked = at(FUEL, '2026-09-30');
    expect(asked.standing).toBe('look');
    expect(explain(asked).outlook?.days.at(-1)?.when.earliest).not.toBeNull();
    expect(String(explain(asked).outlook?.days.at(-1)?.when.earliest) < '2026-09-30').toBe(true);
  });

  it('asks for nothing without the blend, or without a date', () => {
    expect(firstAsked({ ...FUEL, details: { stabilized: 'no' } }, '2026-05-01', '2026-12-31')).toBeNull();
    expect(firstAsked({ ...FUEL, claims: [] }, '2026-05-01', '2026-12-31')).toBeNull();
  });
});

describe('other kinds', () => {
  it('have no estimate that asks: brake fluid and coolant by a reading, whatever is in them', () => {
    const facts: Facts[] = [
      { kind: 'brake-fluid-glycol', claims: [dated('filled', '2025-12-01')], details: { grade: 'dot-5-1' } },
      { kind: 'coolant-iat', claims: [dated('filled', '2025-12-01')], details: { glycol: 'propylene' } },
    ];
    for (const one of facts) expect(firstAsked({ ...one, car: carOf({ place: HOT }) }, '2025-12-01', LATER)).toBeNull();
  });
});
