/**
 * Plans of contrasting sleepers against the trade’s own stages and its table of years: what must be in them, by which
 * way, what must not, and in which order. Beside each case stands where it is from; “common practice” where the trade
 * has no single text for it.
 */
import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { PartFacts } from '../../src/findings/facts.ts';
import type { Said } from '../../src/revival/journal.ts';
import { type RevivalPlan, revivalPlan, stepsIn } from '../../src/revival/plan.ts';
import type { Sleep } from '../../src/revival/sleep.ts';
import type { Act } from '../../src/revival/step.ts';
import { dated } from '../support/parts.ts';
import { journal, since, sleeper, traitsOf, UNKNOWN, undated } from '../support/sleepers.ts';

const ON: CivilDate = '2026-11-26';

interface Case {
  name: string;
  source: string;
  start: string;
  sleep: Sleep;
  built?: CivilDate | null;
  /** Days parts were made, fitted and filled, by kind; the others are undated. */
  known?: Readonly<Record<string, CivilDate>>;
  said?: readonly Said[];
  must: Readonly<Record<string, Act>>;
  mustNot: readonly string[];
  order: readonly (readonly [before: string, after: string])[];
}

const young = (traits: readonly string[], day: CivilDate, but: Readonly<Record<string, CivilDate>> = {}): PartFacts[] =>
  undated(traits).map((part) => {
    const made = but[part.kind] ?? day;
    return {
      ...part,
      claims: [dated('made', made), dated('fitted', made), dated('filled', made), dated('serviced', made)],
    };
  });

const planOf = ({ start, sleep, built, known, said }: Case): RevivalPlan => {
  const traits = traitsOf(start);
  const parts = undated(traits).map((part) => {
    const day = known?.[part.kind];
    return day ? { ...part, claims: [dated('made', day), dated('fitted', day), dated('filled', day)] } : part;
  });
  return revivalPlan(
    sleeper({
      traits,
      sleep,
      begunOn: '2026-11-01',
      parts,
      ...(built === undefined ? {} : { built }),
      entries: journal('2026-11-02', ...(said ?? [])),
    }),
    ON,
  );
};

/** Before the starter, before moving and before a road: of every car. */
const ALWAYS_IN_ORDER = [
  ['photographs', 'nests'],
  ['battery-out', 'wires'],
  ['air-box', 'turn-by-hand'],
  ['turn-by-hand', 'pre-oil'],
  ['pre-oil', 'first-start'],
  ['fuel-leak-test', 'first-start'],
  ['first-start', 'leaks-1-hot'],
  ['first-heat', 'leaks-1-hot'],
  ['leaks-1-morning', 'leaks-2-cold'],
  ['brakes-proved', 'run-a'],
  ['steering-proved', 'run-a'],
  ['tires', 'run-a'],
  ['papers-road', 'run-b'],
  ['run-a', 'run-b'],
  ['run-d', 'run-e'],
] as const;

const CASES: readonly Case[] = [
  {
    name: 'one year, heated, carburetor, discs and drums, manual',
    source:
      'Collector-car journal, marque-parts specialist, motoring organization: fuel dead, battery suspect; common practice for the rest',
    start: 'roadster-disc-drum-overdrive',
    sleep: since('2025-09-01', { stood: ['heated'] }),
    known: {
      'tires-road': '2023-03-01',
      'tire-spare': '2023-03-01',
      'brake-hoses': '2022-05-01',
      'fuel-hose-low': '2024-04-01',
      'tank-hoses': '2024-04-01',
      'engine-oil': '2025-08-01',
    },
    must: {
      tank: 'flush',
      'fuel-filter': 'renew',
      'oil-fresh': 'renew',
      battery: 'renew',
      'brake-hoses': 'look',
      carburetor: 'strip',
      tires: 'look',
      'turn-by-hand': 'test',
      'bores-oiled': 'do',
      radiator: 'flush',
    },
    mustNot: ['pan-off', 'valves-move', 'soak', 'air-cooling', 'atf', 'diesel-system', 'injectors'],
    order: [['bores-oiled', 'turn-by-hand']],
  },
  {
    name: 'two years, dry, hatchback with carburetor and timing belt',
    source:
      'Repair FAQ and restoration shop: a belt by its age and not by its miles; antique-car forum on two-year fuel',
    start: 'hatchback-timing-belt',
    sleep: since('2024-10-01', { stood: ['dry'] }),
    built: '1987-01-01',
    must: {
      'timing-belt': 'renew',
      carburetor: 'strip',
      battery: 'renew',
      thermostat: 'renew',
      'fuel-hoses': 'renew',
      'wheel-cylinders': 'look',
      'wheels-off': 'do',
    },
    mustNot: ['overdrive', 'atf', 'air-cooling', 'greased', 'pan-off'],
    order: [
      ['timing-belt', 'turn-by-hand'],
      ['timing-belt', 'pre-oil'],
    ],
  },
  {
    name: 'three years in a damp barn, drums all round',
    source: 'Workshop blog on brakes, radio phone-in, marque forum: cylinders and drums in damp places from two years',
    start: 'sedan-drums-all-round',
    sleep: since('2023-06-01', { stood: ['damp'] }),
    must: {
      'wheel-cylinders': 'strip',
      'master-cylinder': 'strip',
      linings: 'look',
      'parking-brake': 'test',
      carburetor: 'strip',
      clutch: 'test',
    },
    mustNot: ['calipers', 'injectors', 'silicone-fluid', 'mineral-fluid'],
    order: [
      ['linings', 'wheel-cylinders'],
      ['wheel-cylinders', 'brake-fluid'],
    ],
  },
  {
    name: 'six years, air-cooled in the rear, dry',
    source: 'Magazine workshop article: what five years of storage does; common practice for air cooling',
    start: 'rear-engine-air-cooled',
    sleep: since('2020-03-01', { stood: ['dry'] }),
    must: {
      'air-cooling': 'strip',
      'fuel-hoses': 'renew',
      'brake-hoses': 'renew',
      'valves-move': 'look',
      'wheel-cylinders': 'strip',
      'gear-oils': 'renew',
      'cooling-holds': 'test',
    },
    mustNot: ['coolant-hoses', 'coolant-drain', 'radiator', 'thermostat', 'water-pump', 'leak-core-plugs'],
    order: [
      ['nests', 'air-cooling'],
      ['air-cooling', 'cooling-holds'],
      ['cooling-holds', 'first-start'],
    ],
  },
  {
    name: 'seven years, injection, discs all round, anti-lock',
    source: 'Antique-car forum on injector baskets, workshop columns on hoses: as a set after a five-year sleep',
    start: 'coupe-injection-abs',
    sleep: since('2019-05-01', { stood: ['covered'] }),
    built: '1991-01-01',
    must: {
      injectors: 'strip',
      calipers: 'strip',
      'brake-hoses': 'renew',
      'brake-special': 'test',
      'fuel-pump': 'test',
      'coolant-hoses': 'renew',
    },
    mustNot: ['carburetor', 'wheel-cylinders', 'bores-oiled-twice'],
    order: [
      ['fuel-filter', 'fuel-pump'],
      ['fuel-pump', 'injectors'],
      ['injectors', 'fuel-leak-test'],
    ],
  },
  {
    name: 'eleven years, diesel wagon, in the open',
    source:
      'Biodiesel storage text and common practice: water, growth, a rack that sticks; wet storage moves it down a row',
    start: 'diesel-wagon',
    sleep: since('2015-10-01', { stood: ['open'] }),
    must: {
      'diesel-system': 'strip',
      'plugs-out': 'do',
      'bores-oiled': 'flush',
      tank: 'renew',
      'brake-lines-set': 'renew',
      'master-cylinder': 'renew',
      'pan-off': 'strip',
      'fuel-lines': 'renew',
    },
    mustNot: ['ignition', 'carburetor', 'injectors'],
    order: [
      ['plugs-out', 'bores-oiled'],
      ['bores-oiled', 'turn-by-hand'],
      ['diesel-system', 'fuel-leak-test'],
    ],
  },
  {
    name: 'twelve years, big automatic with drums and power steering, desert',
    source: 'Restorers’ journal on the second decade: seals, mounts, boots, grease; common practice',
    start: 'big-automatic-v8',
    sleep: since('2014-11-01', { stood: ['desert'] }),
    must: {
      atf: 'renew',
      'power-steering': 'renew',
      tires: 'renew',
      'wheel-cylinders': 'renew',
      'fuel-hoses': 'renew',
      'coolant-hoses': 'renew',
      belts: 'renew',
      tank: 'strip',
      ignition: 'renew',
    },
    mustNot: ['clutch', 'clutch-hydraulics', 'calipers', 'overdrive'],
    order: [
      ['tank', 'fuel-hoses'],
      ['atf', 'drive-proved'],
    ],
  },
  {
    name: 'eighteen years, gas spheres and mineral hydraulics, covered',
    source: 'Owner handbooks and common practice: pressure off first, mineral fluid only, body on supports',
    start: 'gas-sphere-mineral-hydraulics',
    sleep: since('2008-08-01', { stood: ['covered'] }),
    must: {
      'pressure-off': 'do',
      'chassis-down': 'do',
      'mineral-fluid': 'flush',
      'gas-suspension': 'renew',
      calipers: 'renew',
      'brake-hoses': 'renew',
    },
    mustNot: ['brake-fluid', 'silicone-fluid', 'master-cylinder'],
    order: [
      ['chassis-down', 'stands'],
      ['pressure-off', 'mineral-fluid'],
      ['mineral-fluid', 'brakes-proved'],
    ],
  },
  {
    name: 'twenty-five years, damp, roadster',
    source: 'Restorers’ journal: waking a vehicle after twenty years; classic repair Q&A: drop the pan first',
    start: 'roadster-disc-drum-overdrive',
    sleep: since('2001-09-01', { stood: ['damp'] }),
    must: {
      'pan-off': 'strip',
      tank: 'renew',
      'fuel-lines': 'renew',
      'brake-lines-set': 'renew',
      'master-cylinder': 'renew',
      calipers: 'renew',
      'wheel-cylinders': 'renew',
      radiator: 'strip',
      'water-pump': 'renew',
      shafts: 'renew',
      joints: 'renew',
      dampers: 'renew',
      'wheel-bearings': 'strip',
      tires: 'renew',
      exhaust: 'renew',
      'parking-brake': 'renew',
    },
    mustNot: ['atf', 'air-cooling', 'soak'],
    order: [
      ['pan-off', 'oil-fresh'],
      ['oil-fresh', 'pre-oil'],
      ['bores-oiled', 'turn-by-hand'],
    ],
  },
  {
    name: 'thirty years in a field, rod brakes and magneto',
    source: 'Common practice, from memory: structure first, everything seized',
    start: 'tourer-rod-brakes',
    sleep: since('1996-06-01', { stood: ['open'] }),
    built: '1926-01-01',
    must: {
      probe: 'test',
      'brake-rods': 'strip',
      tank: 'renew',
      'turn-by-hand': 'test',
      'valves-move': 'look',
      tires: 'renew',
      'inner-tubes': 'renew',
    },
    mustNot: ['battery', 'brake-fluid', 'brake-hoses', 'master-cylinder', 'calipers', 'fused-supply'],
    order: [
      ['probe', 'stands'],
      ['linings', 'brake-rods'],
      ['brake-rods', 'brakes-proved'],
    ],
  },
  {
    name: 'nobody knows anything',
    source: 'Buyer’s column: assume the worst about past maintenance',
    start: 'sedan-hydraulic-drums',
    sleep: UNKNOWN,
    built: null,
    must: {
      'pan-off': 'strip',
      tank: 'renew',
      'brake-hoses': 'renew',
      'wheel-cylinders': 'renew',
      tires: 'renew',
      'master-cylinder': 'renew',
      'fuel-hoses': 'renew',
    },
    mustNot: ['calipers', 'atf', 'soak'],
    order: [['title', 'story']],
  },
  {
    name: 'a good preparation on paper moves five years up a row',
    source: 'Restorers’ journal: good preparation moves the plan up one row; TB 740-97-4: expel the preservative first',
    start: 'roadster-disc-drum-overdrive',
    sleep: since('2021-03-01', { stood: ['heated'], putAway: 'prepared', putAwayBy: 'receipt' }),
    known: {
      'brake-hoses': '2020-05-01',
      'fuel-hose-low': '2022-04-01',
      'tank-hoses': '2022-04-01',
      'tires-road': '2020-02-01',
    },
    must: {
      'expel-preservative': 'do',
      'brake-hoses': 'look',
      'wheel-cylinders': 'look',
      'fuel-hoses': 'look',
      carburetor: 'strip',
    },
    mustNot: ['valves-move', 'pan-off'],
    order: [
      ['expel-preservative', 'turn-by-hand'],
      ['expel-preservative', 'pre-oil'],
    ],
  },
];

describe.each(CASES)('$name ($source)', (one) => {
  const plan = planOf(one);
  const steps = stepsIn(plan);
  const place = (key: string): number => steps.findIndex((step) => step.key === key);

  it.each(Object.entries(one.must))('%s: %s', (key, act) => {
    expect(steps.find((step) => step.key === key)?.way.act).toBe(act);
  });

  it('asks nothing it must not', () => {
    expect(steps.map(({ key }) => key).filter((key) => one.mustNot.includes(key))).toEqual([]);
  });

  it('keeps the order of the work', () => {
    for (const [before, after] of [...ALWAYS_IN_ORDER, ...one.order]) {
      if (place(before) < 0 || place(after) < 0) continue;
      expect(place(before), `${before} before ${after}`).toBeLessThan(place(after));
    }
    for (const [before, after] of one.order) expect([place(before), place(after)]).not.toContain(-1);
  });
});

describe('facts of the trade (common practice)', () => {
  const traits = traitsOf('roadster-disc-drum-overdrive');
  const asleep = (day: CivilDate, parts: readonly PartFacts[], said: readonly Said[] = []) =>
    revivalPlan(
      sleeper({ traits, sleep: since(day), begunOn: '2026-11-01', parts, entries: journal('2026-11-02', ...said) }),
      ON,
    );
  const way = (plan: RevivalPlan, key: string) => stepsIn(plan).find((step) => step.key === key)?.way.act;

  it('age rules whatever the odometer says: brake hoses of eight years are renewed after one winter', () => {
    const winter = '2026-02-01';
    expect(way(asleep(winter, young(traits, '2024-01-01')), 'brake-hoses')).toBe('look');
    expect(way(asleep(winter, young(traits, '2024-01-01', { 'brake-hoses': '2018-11-26' })), 'brake-hoses')).toBe(
      'renew',
    );
    expect(way(asleep(winter, young(traits, '2024-01-01', { 'brake-hoses': '2018-11-27' })), 'brake-hoses')).toBe(
      'look',
    );
  });

  it('tires go by their date and never by their tread: ten years to the day', () => {
    const with_ = (made: CivilDate) =>
      way(asleep('2026-02-01', young(traits, '2024-01-01', { 'tires-road': made })), 'tires');
    expect(with_('2016-11-27')).toBe('look');
    expect(with_('2016-11-26')).toBe('renew');
    const plenty = young(traits, '2024-01-01', { 'tires-road': '2010-01-01' }).map((part) =>
      part.kind === 'tires-road'
        ? {
            ...part,
            readings: [
              {
                gauge: 'tread',
                day: '2026-11-01' as const,
                value: 8,
                unit: 'mm' as const,
                warmth: null,
                recordedOn: '2026-11-01' as const,
              },
            ],
          }
        : part,
    );
    expect(way(asleep('2026-02-01', plenty), 'tires')).toBe('renew');
  });

  it('no gate lets the starter before the hand, nor any motion before fluids, brakes and tires', () => {
    const plan = asleep('2019-01-01', undated(traits));
    const start = stepsIn(plan).find(({ key }) => key === 'first-start');
    expect(start?.waits.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['step:turn-by-hand', 'step:pre-oil', 'gate:free', 'gate:fuel', 'gate:drains']),
    );
    const yard = stepsIn(plan).find(({ key }) => key === 'run-a');
    expect(yard?.waits.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['gate:brakes', 'gate:tires', 'gate:steering', 'gate:drains']),
    );
  });

  it('rust in the tank brings in pump, lines, filter, hoses and carburetor', () => {
    const seen: Said = { what: 'seen', look: 'tank-inside', answer: 'rust', value: null };
    const before = asleep('2026-08-01', young(traits, '2026-07-01'));
    const after = asleep('2026-08-01', young(traits, '2026-07-01'), [seen]);
    for (const [key, act] of Object.entries({
      tank: 'strip',
      'fuel-pump': 'renew',
      'fuel-lines': 'renew',
      'fuel-filter': 'renew',
      'fuel-hoses': 'renew',
      carburetor: 'strip',
    })) {
      expect(way(after, key), key).toBe(act);
      expect(way(before, key), key).not.toBe(act);
    }
  });

  it('a stuck engine brings in soaking, and after ten days the question whether to go on', () => {
    const stuck = (on: CivilDate): RevivalPlan =>
      revivalPlan(
        sleeper({
          traits,
          sleep: since('2010-01-01'),
          begunOn: '2026-11-01',
          entries: journal('2026-11-02', { what: 'seen', look: 'turns', answer: 'stuck', value: null }),
        }),
        on,
      );
    expect(way(stuck('2026-11-03'), 'soak')).toBe('do');
    expect(stuck('2026-11-11').stops.map(({ key }) => key)).not.toContain('seized');
    expect(stuck('2026-11-12').stops.map(({ key }) => key)).toContain('seized');
  });

  it('seals that leak only after the first heat bring in their work then, and not before', () => {
    const leak: Said = {
      what: 'survey',
      cycle: 1,
      moment: 'morning',
      spots: [{ place: 'rear-main', fluid: 'oil', how: 'falls' }],
    };
    const parts = young(traits, '2024-01-01');
    expect(way(asleep('2026-02-01', parts), 'leak-rear-main')).toBeUndefined();
    const plan = asleep('2026-02-01', parts, [leak]);
    expect(way(plan, 'leak-rear-main')).toBe('renew');
    expect(
      plan.stages
        .find(({ key }) => key === 'leaks')
        ?.gate.lacks.map(({ words }) => words)
        .join(' '),
    ).toContain('Drops fall');
  });

  it('any fuel leak and any brake leak keeps the gate shut, however little (military leak classes; judgement for brakes)', () => {
    for (const [place, fluid] of [
      ['tank', 'fuel'],
      ['master-cylinder', 'brake'],
    ] as const) {
      const plan = asleep('2026-02-01', young(traits, '2024-01-01'), [
        { what: 'survey', cycle: 2, moment: 'hot', spots: [{ place, fluid, how: 'seeps' }] },
      ]);
      expect(
        plan.stages.find(({ key }) => key === 'leaks')?.gate.lacks.some(({ key }) => key.startsWith('leak:')),
      ).toBe(true);
    }
  });

  it('money: a single winter costs less than five years, and those less than twenty (table of years, from memory)', () => {
    const cost = (day: CivilDate): number => asleep(day, undated(traits)).money.open.workshop.high;
    const [one, six, twentyFive] = [cost('2025-11-01'), cost('2020-11-01'), cost('2001-11-01')];
    expect(one).toBeLessThan(six as number);
    expect(six).toBeLessThan(twentyFive as number);
  });
});
