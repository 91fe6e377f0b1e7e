/** What the models say of a part: on which facts, with which days, and where they end. */
import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Answers, CarFacts, Claim, Reading } from '../../src/findings/facts.ts';
import { PLACE_ASSUMED } from '../../src/findings/outlook/outlook.ts';
import { outlookOf } from '../../src/findings/outlook.ts';
import { carOf, dated, finding } from '../support/parts.ts';
import { COOL, FROSTY, HOT, reading } from '../support/readings.ts';

const ON: CivilDate = '2026-06-01';
const MADE = [dated('made', '2024-01-15')];
const FILLED = [dated('filled', '2026-01-15')];

interface Facts {
  claims?: Claim[];
  readings?: Reading[];
  details?: Answers;
  car?: CarFacts;
}
const outlook = (kind: string, { claims = [], readings = [], details = {}, car = carOf() }: Facts) =>
  outlookOf(finding(kind, claims, ON, { car, part: { readings, details } }));

/** What it says of its facts in the fewest places. */
const says = (kind: string, facts: Facts): string => {
  const told = outlook(kind, facts);
  return told ? [told.now, ...told.says].join('\n') : 'nothing';
};
const days = (kind: string, facts: Facts): string[] => outlook(kind, facts)?.days.map(({ what }) => what) ?? [];

describe('every outlook', () => {
  const all: [string, Facts][] = [
    ['battery-flooded', { claims: MADE, readings: [reading('rest-voltage', '2026-05-01', 12.6)] }],
    ['battery-agm', { claims: MADE }],
    ['battery-lithium', { claims: MADE }],
    ['brake-fluid-glycol', { claims: FILLED }],
    ['brake-fluid-silicone', { claims: FILLED }],
    ['coolant-iat', { claims: FILLED }],
    ['coolant-oat', { readings: [reading('freeze-point', '2026-05-01', -30)] }],
    ['fuel-gasoline', { claims: FILLED }],
    ['fuel-diesel', { claims: FILLED }],
    ['tires-road', { claims: MADE, car: carOf({ place: HOT }) }],
    ['tire-spare', { readings: [reading('cold-pressure', '2026-05-01', 2.1)] }],
  ];
  it.each(all)('%s: says where it ends and what it rests on, in whole sentences', (kind, facts) => {
    const told = outlook(kind, facts);
    expect(told?.sources.length).toBeGreaterThan(0);
    expect(new Set(told?.sources).size).toBe(told?.sources.length);
    expect(told?.ends).toMatch(/\.$/);
    for (const line of [told?.now ?? '', ...(told?.says ?? [])]) {
      expect(line).toMatch(/\.$/);
      expect(line).not.toMatch(/undefined|null|NaN|\b(safe|fine|ok)\b/i);
    }
    expect(told?.measured).toBe((facts.readings ?? []).length > 0);
  });

  it('is none of a kind without a model, nor of a part nothing is known of', () => {
    expect(outlook('brake-hoses', { claims: MADE })).toBeNull();
    for (const kind of ['battery-flooded', 'brake-fluid-glycol', 'coolant-iat', 'fuel-gasoline', 'tires-road'])
      expect(outlook(kind, {}), kind).toBeNull();
  });

  it('says that a place was assumed, and only then', () => {
    const facts: Record<string, Facts> = {
      'battery-flooded': { readings: [reading('rest-voltage', '2026-05-01', 12.6)] },
      'fuel-gasoline': { claims: FILLED },
      'tires-road': { readings: [reading('cold-pressure', '2026-05-01', 2.1)] },
    };
    for (const [kind, known] of Object.entries(facts)) {
      expect(says(kind, known)).toContain(PLACE_ASSUMED);
      expect(says(kind, { ...known, car: carOf({ place: FROSTY }) })).not.toContain(PLACE_ASSUMED);
    }
  });
});

describe('the outlook of a battery', () => {
  const READ = { readings: [reading('rest-voltage', '2026-05-01', 12.6)] };

  it('without a reading knows no charge, and says what would start it', () => {
    expect(says('battery-flooded', { claims: MADE })).toMatch(/charge is not known.*\n.*read its rest voltage/);
    expect(days('battery-flooded', { claims: MADE })).toEqual([]);
  });

  it('knows none either of one that had not rested, or of a lithium one', () => {
    expect(outlook('battery-flooded', { readings: [reading('rest-voltage', '2026-05-01', 13.5)] })?.measured).toBe(
      false,
    );
    expect(says('battery-lithium', { readings: [reading('rest-voltage', '2026-05-01', 13.3)] })).toContain('voltage');
    expect(days('battery-lithium', { readings: [reading('rest-voltage', '2026-05-01', 13.3)] })).toEqual([]);
  });

  it('takes a reading of six volts for three cells only where it is told so', () => {
    const read = { readings: [reading('rest-voltage', ON, 6.32)] };
    expect(says('battery-flooded', { ...read, details: { volts: '6' } })).toMatch(/^8\d to 100 % charged/);
    expect(says('battery-flooded', read)).toMatch(/^0 to 5 % charged/);
  });

  it('names the day it could freeze only where the car’s place is known', () => {
    expect(days('battery-flooded', READ)).toHaveLength(2);
    expect(days('battery-flooded', { ...READ, car: carOf({ place: FROSTY }) })).toHaveLength(3);
  });

  it('has no days on a maintainer', () => {
    expect(days('battery-flooded', { ...READ, details: { connection: 'maintainer' } })).toEqual([]);
    expect(says('battery-flooded', { ...READ, details: { connection: 'maintainer' } })).toContain('maintainer');
  });

  it('says which drain and which capacity it reckoned with', () => {
    expect(says('battery-flooded', READ)).toMatch(/drain of 0 to 50 mA.*assumed/);
    const told = says('battery-flooded', { ...READ, details: { capacity: 60 }, car: carOf({ drain: 18 }) });
    expect(told).toContain('drain of 18 mA, give or take a fifth (60 Ah)');
    expect(told).not.toContain('assumed, as its capacity');
    const ofItself = says('battery-flooded', { ...READ, details: { drain: 40 }, car: carOf({ drain: 18 }) });
    expect(ofItself).toContain('drain of 40 mA, give or take a fifth');
  });

  it('hands its numbers on to the desk', () => {
    const desk = outlook('battery-flooded', {
      ...READ,
      details: { capacity: 60 },
      car: carOf({ place: { ...FROSTY, shelter: 'heated', heatedTo: 8, hemisphere: 'south' } }),
    })?.desk;
    const query = new URLSearchParams(desk?.split('?')[1]);
    expect(desk).toMatch(/^\/desks\/battery\?/);
    expect(Object.fromEntries(query)).toMatchObject({
      capacity: '60',
      low: '-20',
      high: '30',
      shelter: 'heated',
      heatedTo: '8',
      winter: 'july',
    });
  });

  it('counts the acid of an unknown fill by both, and the reading last made', () => {
    const facts: Facts = { readings: [reading('density', ON, 1.225, 26.7)] };
    expect(says('battery-flooded', facts)).toMatch(/^5\d to 78 % charged/);
    expect(says('battery-flooded', { ...facts, details: { fill: '1.265' } })).toMatch(/^72 to 78 % charged/);
    const later: Facts = {
      readings: [reading('density', '2026-05-01', 1.1, 26.7), reading('rest-voltage', ON, 12.66)],
    };
    expect(says('battery-flooded', later)).toMatch(/^95 to 100 % charged/);
  });
});

describe('the outlook of a tire', () => {
  const READ = reading('cold-pressure', '2026-05-01', 2.2, 15);

  it('has no days and no lay-up without a placard', () => {
    expect(days('tires-road', { readings: [READ] })).toEqual([]);
    expect(says('tires-road', { readings: [READ] })).not.toContain('lay-up');
    expect(days('tires-road', { readings: [READ], details: { placard: 2 } })).toHaveLength(1);
    expect(says('tires-road', { readings: [READ], details: { placard: 2 } })).toContain(
      'For a lay-up: 2.00 bar (29 psi), cold.',
    );
    expect(says('tires-road', { readings: [READ], details: { placard: 2, sidewall: 3.5 } })).toContain(
      '2.70 to 3.00 bar (39 to 44 psi)',
    );
  });

  it('tells a leak from two readings, and none from one or from air added', () => {
    const leak = (first: number): string =>
      says('tires-road', { readings: [reading('cold-pressure', '2026-04-01', first, 15), READ] });
    expect(leak(2.5)).toMatch(/lost .* a month: more than rubber lets through, look for a leak/);
    expect(leak(2.25)).toMatch(/lost .* a month\./);
    expect(leak(2)).not.toContain('lost');
    expect(says('tires-road', { readings: [READ] })).not.toContain('lost');
  });

  it('speaks of the spot it stands on from the day it was last moved', () => {
    const standing = says('tires-road', { readings: [READ], claims: [dated('used', '2025-10-01')] });
    expect(standing).toContain('Last moved on 1 October 2025');
    expect(says('tires-road', { readings: [READ] })).toMatch(/Move the car every \d+ days/);
  });

  it('tells the age of its rubber there only with a date and a place', () => {
    expect(outlook('tires-road', { claims: MADE })).toBeNull();
    const age = (place: typeof HOT): number =>
      Number(
        /like (\d+)/.exec(says('tires-road', { claims: [dated('made', '2016-06-01')], car: carOf({ place }) }))?.[1],
      );
    expect(age(HOT)).toBeGreaterThan(age(COOL));
  });
});

describe('the outlook of fluids and fuel', () => {
  it('brake fluid: says that the weakest grade was assumed, and names an owner’s own limit', () => {
    expect(says('brake-fluid-glycol', { claims: FILLED })).toContain('grade not told, the weakest assumed');
    expect(days('brake-fluid-glycol', { claims: FILLED })).toHaveLength(1);
    const told: Facts = { claims: FILLED, details: { grade: 'dot-5-1', limit: 200 } };
    expect(says('brake-fluid-glycol', told)).toMatch(/as DOT 5\.1 /);
    expect(days('brake-fluid-glycol', told)).toEqual(['Down to its wet minimum, 180 °C', 'Down to your limit, 200 °C']);
  });

  it('brake fluid: passes over a reading of before it was filled', () => {
    const read = (day: CivilDate) =>
      outlook('brake-fluid-glycol', { claims: FILLED, readings: [reading('water', day, 3)] });
    expect(read('2026-01-14')?.measured).toBe(false);
    expect(read('2026-01-15')?.measured).toBe(true);
  });

  it('coolant: is told from its reading beside the coldest night, and from nothing else', () => {
    const READ = [reading('freeze-point', '2026-05-01', -35)];
    expect(says('coolant-iat', { readings: READ })).not.toContain('coldest night there');
    expect(says('coolant-iat', { readings: READ, car: carOf({ place: FROSTY }) })).toMatch(
      /below the coldest night there \(−20 °C\)/,
    );
    expect(
      says('coolant-iat', { readings: [reading('freeze-point', '2026-05-01', -10)], car: carOf({ place: FROSTY }) }),
    ).toContain('above the coldest night there');
    expect(says('coolant-iat', { claims: FILLED })).toContain('count on no frost protection');
  });

  it.each(['freeze-point', 'density', 'sugar-scale', 'strength'])('coolant: tells its strength from %s', (gauge) => {
    const value = { 'freeze-point': -36, density: 1.075, 'sugar-scale': 33, strength: 50 }[gauge] ?? 0;
    const told = says('coolant-iat', {
      readings: [reading(gauge, '2026-05-01', value)],
      details: { glycol: 'ethylene' },
    });
    const [, low, high = low] = /about (\d+)(?: to (\d+))? % glycol/.exec(told) ?? [];
    expect(Number(low)).toBeGreaterThan(40);
    expect(Number(high)).toBeLessThan(60);
  });

  it('fuel: says that the blend was assumed, and by which', () => {
    expect(says('fuel-gasoline', { claims: FILLED })).toMatch(/10 % ethanol \(E10\) \(assumed\)/);
    expect(says('fuel-gasoline', { claims: FILLED, details: { blend: 'e0' } })).not.toContain('assumed)');
    expect(says('fuel-diesel', { claims: FILLED })).toMatch(/\(B7\) \(assumed\)/);
    expect(says('fuel-gasoline', { claims: FILLED, details: { stabilized: 'yes' } })).toContain(
      'stabilized while fresh',
    );
  });
});
