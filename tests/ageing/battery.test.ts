import { describe, expect, it } from 'vitest';
import { chargeByVoltage, voltageByCharge } from '../../src/ageing/battery/charge.ts';
import { CHARGING } from '../../src/ageing/battery/charging.ts';
import { BATTERY, CHEMISTRIES } from '../../src/ageing/battery/chemistry.ts';
import { daysUntil, drainRate, observedDrain, selfDischargeRate } from '../../src/ageing/battery/discharge.ts';
import { freezingByCharge, frostLimit, leastCharge } from '../../src/ageing/battery/freezing.ts';
import { crankingPower, lifeInHeat } from '../../src/ageing/battery/life.ts';
import { type BatteryFacts, chargeOn, projectBattery } from '../../src/ageing/battery/outlook.ts';
import { ASSUMED, monthOn, monthsOf, type Place } from '../../src/ageing/place.ts';

/** Mild until December, then nights of −20 °C; no swing but for the months’ own means. */
const SUDDEN: Place = {
  ...ASSUMED,
  winterLow: 0,
  summerHigh: 0,
  months: [-20, -20, 5, 10, 15, 20, 20, 20, 15, 10, 5, -20],
};

const FACTS: BatteryFacts = {
  chemistry: 'calcium',
  capacity: 60,
  drain: { low: 20, high: 40 },
  maintained: false,
  charge: { low: 85, high: 95 },
  from: '2026-10-03',
};

describe('reading a battery', () => {
  it('tells nothing of lithium by its voltage', () => {
    expect(chargeByVoltage('lithium', 13.2, 12)).toBeNull();
    expect(voltageByCharge('lithium', 50)).toBeNull();
  });

  it('reads a 6-volt battery at half the volts', () => {
    const [six, twelve] = [chargeByVoltage('antimony', 6.12, 6), chargeByVoltage('antimony', 12.24, 12)];
    expect(six).toEqual({ ...twelve, span: expect.anything() });
    expect(voltageByCharge('antimony', 50, 6)).toBeCloseTo(6.12, 9);
    expect(chargeByVoltage('antimony', 6.45, 6)?.surface).toBe(true);
    expect(chargeByVoltage('antimony', 6.12, 12)).toMatchObject({ percent: 0, surface: false });
  });

  it('gives 5 points either way, within 0 to 100; of 6 volts, on half the cells, 10', () => {
    const span = (volts: number, nominal: 6 | 12 = 12) => chargeByVoltage('agm', volts, nominal)?.span;
    expect(span(12.6)).toEqual({ low: 70, high: 80 });
    expect(span(11)).toEqual({ low: 0, high: 5 });
    expect(span(12.8)).toEqual({ low: 95, high: 100 });
    expect(span(6.3, 6)).toEqual({ low: 65, high: 85 });
    expect(span(5.5, 6)).toEqual({ low: 0, high: 10 });
    expect(span(6.4, 6)).toEqual({ low: 90, high: 100 });
  });

  it('knows a charger’s doing by what such a battery settles at', () => {
    expect(chargeByVoltage('agm', 12.95, 12)?.surface).toBe(false);
    expect(chargeByVoltage('gel', 12.95, 12)?.surface).toBe(true);
  });
});

describe('what nobody told of a battery', () => {
  it('loses charge and freezes no later than any known one', () => {
    for (const chemistry of CHEMISTRIES) {
      const { low, typical, high } = BATTERY[chemistry].selfDischarge;
      const unknown = BATTERY.unknown.selfDischarge;
      expect([unknown.low >= low, unknown.typical >= typical, unknown.high >= high]).toEqual([true, true, true]);
      for (const percent of [0, 10, 19, 20, 50, 75, 100])
        expect(freezingByCharge('unknown', percent)).toBeGreaterThanOrEqual(
          freezingByCharge(chemistry, percent) ?? -99,
        );
    }
  });

  it('is charged no higher than any known acid one, and as late in the cold as lithium', () => {
    for (const chemistry of CHEMISTRIES) {
      expect(CHARGING.unknown.absorb.high).toBeLessThanOrEqual(CHARGING[chemistry].absorb.high);
      expect(CHARGING.unknown.float?.high).toBeLessThanOrEqual(CHARGING[chemistry].float?.high ?? 99);
    }
    expect(CHARGING.unknown.notBelow).toBe(0);
  });
});

describe('frost', () => {
  it('asks nothing of lithium', () => {
    expect(freezingByCharge('lithium', 0)).toBeNull();
    expect(frostLimit('lithium', -40)).toBeNull();
    expect(projectBattery({ ...FACTS, chemistry: 'lithium' }, SUDDEN, '2027-06-01').freezes).toBeNull();
  });

  it('asks nothing of a night that freezes nothing', () => {
    expect(frostLimit('unknown', 1)).toBeNull();
    expect(leastCharge(1)).toBe(0);
  });

  it('asks a flooded battery only not to be flat in a light frost, for a flat one goes on thinning', () =>
    expect([frostLimit('calcium', 0), frostLimit('calcium', -5)]).toEqual([0, 0]));

  it('asks AGM and gel for a fifth of the charge as soon as −7 °C is too near', () => {
    expect(frostLimit('agm', -4)).toBe(0);
    expect(frostLimit('agm', -4.1)).toBe(20);
    expect(frostLimit('gel', -20)).toBe(leastCharge(-20));
  });

  it('asks for a full battery where not even that will do', () => expect(leastCharge(-70)).toBe(100));
});

describe('the drain that explains two readings', () => {
  const before = { percent: 95, day: '2026-11-01' } as const;

  it('is what self-discharge leaves to be explained', () => {
    const self = selfDischargeRate(3, 10);
    const drain = observedDrain(before, { percent: 58.2, day: '2026-12-01' }, self, 60);
    expect(drain).toBeGreaterThan(29.8);
    expect(drain).toBeLessThan(30.2);
    expect(observedDrain(before, { percent: 65, day: '2026-12-01' }, 0, 60)).toBeCloseTo(25, 9);
  });

  it('is never below 0', () =>
    expect(observedDrain(before, { percent: 97, day: '2026-12-01' }, selfDischargeRate(3, 10), 60)).toBe(0));

  it.each(['2026-11-01', '2026-10-31'] as const)('is not told by a second reading on %s', (day) =>
    expect(observedDrain(before, { percent: 90, day }, 0.001, 60)).toBeNull(),
  );
});

describe('outlook', () => {
  it('has a point each week, the first on its own day and the last on the one asked for', () => {
    const days = projectBattery(FACTS, SUDDEN, '2026-10-20').points.map(({ day }) => day);
    expect(days).toEqual(['2026-10-03', '2026-10-10', '2026-10-17', '2026-10-20']);
    expect(projectBattery(FACTS, SUDDEN, '2026-10-17').points).toHaveLength(3);
  });

  it('goes each month at the temperature of the month', () => {
    const gentle = { ...FACTS, drain: { low: 0, high: 0 }, charge: { low: 90, high: 90 } };
    const { low } = chargeOn(gentle, SUDDEN, '2027-01-01');
    // 29 days at 10 °C, 30 at 5 and 31 at −20, 5 % a month at 25.
    const spent = 29 * 2 ** -1.5 + 30 * 2 ** -2 + 31 * 2 ** -4.5;
    expect(low).toBeCloseTo(90 * Math.exp((-0.05 / 30.4) * spent), 9);
    expect(monthOn(monthsOf(SUDDEN), '2026-12-31').mean).toBe(-20);
  });

  it('finds frost on the day the cold month begins, not on the last of the mild one', () => {
    // Below what −20 °C asks for since mid-November.
    const { freezes } = projectBattery({ ...FACTS, charge: { low: 50, high: 55 } }, SUDDEN, '2027-03-01');
    expect(freezes).toEqual({ earliest: '2026-12-01', latest: '2026-12-01' });
    const until = (day: '2026-11-30' | '2026-12-01') =>
      projectBattery({ ...FACTS, charge: { low: 50, high: 55 } }, SUDDEN, day).freezes;
    expect(until('2026-11-30')).toEqual({ earliest: null, latest: null });
    expect(until('2026-12-01')).toEqual({ earliest: '2026-12-01', latest: '2026-12-01' });
  });

  it('finds the day within a cold month', () => {
    const facts = {
      ...FACTS,
      from: '2026-12-01',
      charge: { low: 60, high: 60 },
      drain: { low: 60, high: 60 },
    } as const;
    const { freezes } = projectBattery(facts, SUDDEN, '2027-01-31');
    const self = selfDischargeRate(5, -20);
    const days = Math.ceil(daysUntil(60, leastCharge(-20), self, drainRate(60, 60)));
    expect(days).toBe(6);
    expect(freezes?.earliest).toBe('2026-12-07');
  });

  it('leaves the first mild day to the mild month', () => {
    const mildAfter: Place = { ...SUDDEN, months: SUDDEN.months.map((mean, month) => (month === 11 ? mean : 10)) };
    const facts = {
      ...FACTS,
      from: '2026-12-01',
      charge: { low: 70.5, high: 70.5 },
      drain: { low: 20, high: 20 },
    } as const;
    expect(chargeOn(facts, mildAfter, '2026-12-31').low).toBeGreaterThan(leastCharge(-20));
    expect(chargeOn(facts, mildAfter, '2027-01-01').low).toBeLessThan(leastCharge(-20));
    expect(projectBattery(facts, mildAfter, '2027-01-20').freezes).toEqual({ earliest: null, latest: null });
  });

  it('says by which day only the worst gets there', () => {
    const { recharge } = projectBattery(FACTS, SUDDEN, '2026-10-15');
    expect(recharge).toEqual({ earliest: '2026-10-10', latest: null });
  });

  it('has both days at once for a battery already low', () => {
    const { recharge, noCrank } = projectBattery({ ...FACTS, charge: { low: 60, high: 75 } }, SUDDEN, '2026-10-04');
    expect(recharge).toEqual({ earliest: '2026-10-03', latest: '2026-10-03' });
    expect(noCrank).toEqual({ earliest: '2026-10-03', latest: null });
  });

  it('has only its own day where the one asked for is before it', () => {
    const outlook = projectBattery(FACTS, SUDDEN, '2026-10-01');
    expect(outlook.points).toEqual([{ day: '2026-10-03', charge: { low: 85, high: 95 } }]);
    expect(outlook.recharge).toEqual({ earliest: null, latest: null });
    expect(chargeOn(FACTS, SUDDEN, '2026-10-01')).toEqual({ low: 85, high: 95 });
  });

  it('holds a maintained battery at its charge, without any day', () => {
    const kept = { ...FACTS, maintained: true, charge: { low: 50, high: 60 } };
    const outlook = projectBattery(kept, SUDDEN, '2027-03-01');
    const none = { earliest: null, latest: null };
    expect(outlook).toMatchObject({ recharge: none, noCrank: none, freezes: none });
    for (const { charge } of outlook.points) expect(charge).toEqual({ low: 50, high: 60 });
    expect(chargeOn(kept, SUDDEN, '2027-03-01')).toEqual({ low: 50, high: 60 });
  });

  it('counts lithium’s own electronics, even disconnected', () => {
    const charge = (chemistry: 'lithium' | 'gel') =>
      chargeOn({ ...FACTS, chemistry, drain: { low: 0, high: 0 } }, SUDDEN, '2026-11-02');
    // 30 days at up to 10 mA of 60 Ah are 12 points.
    expect(charge('gel').low - charge('lithium').low).toBeCloseTo(12, 0);
    expect(charge('gel').high - charge('lithium').high).toBeCloseTo(1.2, 1);
  });
});

describe('power and life', () => {
  it('deep cold never looks better than what was measured', () => {
    expect(crankingPower(-30)).toBeLessThan(crankingPower(-17.8));
    expect(crankingPower(-60)).toBe(0);
    expect(crankingPower(40)).toBe(100);
  });

  it('cold adds no life', () => expect(lifeInHeat(10)).toBe(1));
});
