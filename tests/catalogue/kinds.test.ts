import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../src/catalogue/cautions.ts';
import { CLOCKS } from '../../src/catalogue/clock.ts';
import { GRADES } from '../../src/catalogue/grades.ts';
import { type Kind, MARKS, SEVERITIES } from '../../src/catalogue/kind.ts';
import { KINDS, kindsFor, partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { SOURCES } from '../../src/catalogue/sources.ts';
import { SYSTEMS } from '../../src/catalogue/systems.ts';
import { allTraits, FACETS, IMPLIED, type StatedTrait } from '../../src/catalogue/traits.ts';
import { LAY_UP_STEPS } from '../../src/plans/lay-up.ts';
import { LOOKS } from '../../src/plans/looks.ts';
import { WAKE_UP_STEPS } from '../../src/plans/wake-up.ts';

const kinds: readonly Kind[] = [...KINDS.values()];
const traits: readonly string[] = [...FACETS.flatMap((facet) => Object.keys(facet.traits)), ...Object.keys(IMPLIED)];

/** Source keys named anywhere in the code but in the lists of sources themselves. */
const namedInCode = (): Set<string> => {
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter(
    (file) => /\.tsx?$/.test(file) && !/sources\.ts$/.test(file),
  );
  return new Set(
    files.flatMap((file) =>
      [...readFileSync(join('src', file), 'utf8').matchAll(/'([a-z0-9-]+)'/g)].map((found) => found[1] ?? ''),
    ),
  );
};

/** Traits that bring no part: they only say what the car does without. */
const BRINGS_NOTHING: Readonly<Partial<Record<StatedTrait, string>>> = {
  'gravity-feed': 'no fuel pump',
  'coil-ignition': 'no distributor, leads or points; its plugs and coils come with gasoline',
  'compression-ignition': 'no ignition at all',
  'air-cooled': 'no coolant, hoses, radiator or water pump',
  'no-coolant': 'said together with air cooling',
  'no-front-brakes': 'neither discs nor drums in front',
  'cable-brakes': 'no brake fluid and nothing that holds it',
  'no-spare': 'no spare tire and no sealant',
  'no-battery': 'no battery of any make',
  'fixed-roof': 'neither fabric nor hydraulics',
};

/** Traits no quick start has, because no usual car does; with them every kind has its car. */
const RARE: readonly StatedTrait[] = [
  'silicone-fluid',
  'high-pressure-brakes',
  'sealed-tank-coating',
  'lpg-tank',
  'cng-tank',
  'coolant-waterless',
  'battery-lithium',
  'harness-sfi',
  'child-seat',
  'flares',
];

const isWhole = (n: number): boolean => Number.isInteger(n) && n > 0;

describe('the catalogue', () => {
  it('knows 120 kinds or more', () => expect(kinds.length).toBeGreaterThanOrEqual(120));

  it('gives every kind a key and a name of its own', () => {
    const listed = readdirSync('src/catalogue/kinds').flatMap((file) => [
      ...readFileSync(join('src/catalogue/kinds', file), 'utf8').matchAll(/^ {4}key: '([^']+)'/gm),
    ]);
    const keys = listed.map((found) => found[1]);
    expect(keys.toSorted()).toEqual([...KINDS.keys()].toSorted());
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(kinds.map(({ name }) => name)).size).toBe(kinds.length);
  });

  it('lists the kinds in the order of the systems', () => {
    const order = kinds.map(({ system }) => Object.keys(SYSTEMS).indexOf(system));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(new Set(order).size).toBe(Object.keys(SYSTEMS).length);
  });

  it('has a source for every figure and a figure for every source', () => {
    const used = namedInCode();
    expect(Object.keys(SOURCES).filter((key) => !used.has(key))).toEqual([]);
  });

  it('grades every source and tells each once', () => {
    const titles = Object.values(SOURCES).map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
    for (const { grade, title } of Object.values(SOURCES)) {
      expect(Object.keys(GRADES)).toContain(grade);
      expect(title.length).toBeGreaterThan(10);
    }
  });

  it('has a use for every caution', () => {
    const bearers = [...kinds, ...LAY_UP_STEPS, ...WAKE_UP_STEPS, ...LOOKS];
    const used = new Set<string>(bearers.flatMap(({ cautions }) => cautions));
    expect(Object.keys(CAUTIONS).filter((key) => !used.has(key))).toEqual([]);
  });
});

describe.each(kinds.map((kind) => [kind.key, kind] as const))('%s', (_, kind) => {
  const { interval, tests } = kind;

  it('belongs to a system, has a known gravity, clocks and mark, and applies by known traits', () => {
    expect(kind.key).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(Object.keys(SYSTEMS)).toContain(kind.system);
    expect(SEVERITIES).toContain(kind.severity);
    expect(CLOCKS).toContain(kind.clock);
    if (kind.fallback) expect([kind.clock, kind.fallback]).toEqual(['made', 'fitted']);
    if (kind.mark) expect(MARKS).toContain(kind.mark);
    expect(kind.applies.filter((trait) => !traits.includes(trait))).toEqual([]);
  });

  it('has whole positive figures, looks before it replaces, and asks for something', () => {
    const { lookFrom, lookEvery, replaceBy, replaceByKm } = interval;
    for (const figure of [lookFrom, lookEvery, replaceBy, replaceByKm ?? null])
      if (figure !== null) expect(isWhole(figure)).toBe(true);
    if (lookFrom !== null && replaceBy !== null) expect(lookFrom).toBeLessThanOrEqual(replaceBy);
    expect(lookFrom ?? replaceBy).not.toBeNull();
  });

  it('names the sources of its interval and of every test', () => {
    for (const { sources } of [interval, ...tests]) {
      expect(sources.length).toBeGreaterThan(0);
      expect(new Set(sources).size).toBe(sources.length);
      expect(sources.filter((key) => !(key in SOURCES))).toEqual([]);
    }
  });

  it('tells where its date is, what neglect does and what shifts the figures, in whole sentences', () => {
    for (const text of [kind.findDate, kind.ignored, kind.varies]) expect(text).toMatch(/^[A-Z0-9“].*\.$/);
    for (const test of tests) expect(test.how).toMatch(/^[A-Z].*\.$/);
    expect(kind.agesBy.length).toBeGreaterThan(0);
    expect(new Set(tests.map(({ name }) => name)).size).toBe(tests.length);
  });

  it('carries known cautions, and at least one where its failure is a matter of safety', () => {
    expect(kind.cautions.filter((key) => !(key in CAUTIONS))).toEqual([]);
    expect(new Set(kind.cautions).size).toBe(kind.cautions.length);
    if (kind.severity === 'safety') expect(kind.cautions.length).toBeGreaterThan(0);
  });

  it('says nothing about the words it must not promise', () => {
    const texts = [
      kind.findDate,
      kind.ignored,
      kind.varies,
      ...tests.flatMap((t) => [t.how, t.good, t.watch ?? '', t.act]),
    ];
    expect(texts.filter((text) => /\b(safe|fine|ok|okay)\b/i.test(text))).toEqual([]);
  });
});

describe('traits', () => {
  const brings = new Set<string>(kinds.flatMap(({ applies }) => applies));
  const follows = (trait: string): string[] =>
    Object.entries(IMPLIED).flatMap(([implied, any]) => ((any as readonly string[]).includes(trait) ? [implied] : []));
  const bringsAPart = (trait: string): boolean => [trait, ...follows(trait)].some((one) => brings.has(one));
  const stated = FACETS.flatMap((facet) => Object.keys(facet.traits)) as StatedTrait[];

  it.each(stated.filter((trait) => !(trait in BRINGS_NOTHING)))('%s brings a part', (trait) =>
    expect(bringsAPart(trait)).toBe(true),
  );

  it.each(Object.entries(BRINGS_NOTHING))('%s brings none: %s', (trait) => expect(bringsAPart(trait)).toBe(false));

  it('every implied trait brings a part', () => {
    expect(Object.keys(IMPLIED).filter((implied) => !brings.has(implied))).toEqual([]);
  });

  it('are each offered in one facet only', () => expect(new Set(stated).size).toBe(stated.length));

  it('what follows from a trait follows from the stated one alone', () => {
    expect([...allTraits(['glycol-fluid'])]).toEqual(['glycol-fluid', 'hydraulic-brakes']);
    expect([...allTraits(['cable-brakes'])]).toEqual(['cable-brakes']);
    expect(allTraits(['front-discs', 'rear-drums'])).toContain('disc-brakes');
    expect(allTraits(['front-discs', 'rear-drums'])).toContain('drum-brakes');
    expect(allTraits(['soft-top'])).not.toContain('roof-hydraulic');
  });
});

describe('the list of a car', () => {
  const keysFor = (stated: readonly string[]): string[] => kindsFor(stated).map(({ key }) => key);
  const everyStart = QUICK_STARTS.flatMap((start) => start.traits as readonly StatedTrait[]);

  it('every kind is on some quick start, or comes with a rare trait', () => {
    const listed = new Set([
      ...QUICK_STARTS.flatMap((start) => keysFor(start.traits)),
      ...keysFor([...everyStart, ...RARE]),
    ]);
    expect(kinds.filter(({ key }) => !listed.has(key)).map(({ key }) => key)).toEqual([]);
  });

  it.each(RARE)('the rare trait %s is needed for that', (trait) => {
    const others = [...everyStart, ...RARE.filter((other) => other !== trait)];
    expect(keysFor(others).length).toBeLessThan(kinds.length);
  });

  it('holds each kind once, or once a position', () => {
    const parts = partsFor([...everyStart, ...RARE]);
    const places = parts.map(({ kind, position }) => `${kind} at ${position}`);
    expect(new Set(places).size).toBe(places.length);
    expect(parts.filter(({ kind }) => kind === 'tires-road').map(({ position }) => position)).toEqual([
      'front left',
      'front right',
      'rear left',
      'rear right',
    ]);
    expect(parts.filter(({ kind }) => kind === 'engine-oil')).toEqual([{ kind: 'engine-oil', position: null }]);
  });

  it.each(QUICK_STARTS.map((start) => [start.name, start.traits] as const))(
    '%s: nothing it can’t have',
    (_, traits) => {
      const keys = keysFor(traits);
      const has = new Set<string>(traits);
      const never = (trait: StatedTrait, excluded: readonly string[]): void => {
        if (has.has(trait)) expect(keys.filter((key) => excluded.includes(key))).toEqual([]);
      };
      never('air-cooled', ['coolant-iat', 'coolant-oat', 'radiator-hoses', 'water-pump', 'thermostat', 'heater-core']);
      never('diesel', ['fuel-gasoline', 'spark-plugs', 'carb-soft', 'points-condenser', 'coil']);
      never('gasoline', ['fuel-diesel']);
      never('cable-brakes', ['brake-fluid-glycol', 'brake-hoses', 'brake-master', 'wheel-cylinders', 'calipers']);
      never('glycol-fluid', ['brake-fluid-silicone', 'central-hydraulics']);
      never('fixed-roof', ['soft-top', 'roof-fluid', 'roof-rams']);
      never('tubeless', ['inner-tubes']);
      never('tube-type', ['valve-stems']);
      never('no-battery', ['battery-flooded', 'battery-agm', 'battery-lithium']);
      never('no-spare', ['tire-spare', 'tire-compact-spare', 'tire-sealant-kit']);
      never('manual-gearbox', ['atf']);
      never('automatic-gearbox', ['clutch-plate', 'gearbox-oil']);
      expect(keys).toContain('tires-road');
      expect(keys).toContain('brake-friction');
    },
  );
});
