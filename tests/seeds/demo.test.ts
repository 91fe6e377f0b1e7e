import { describe, expect, it } from 'vitest';
import { demoCollection } from '../../seeds/demo.ts';
import type { Demo, DemoClaim, DemoPart } from '../../src/acts/demo.ts';
import { loadDemo } from '../../src/acts/load-demo.ts';
import { SEVERITIES } from '../../src/catalogue/kind.ts';
import { partsFor } from '../../src/catalogue/kinds.ts';
import { STATED_TRAITS, type StatedTrait } from '../../src/catalogue/traits.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Finding } from '../../src/findings/assess.ts';
import { findingsOf } from '../../src/findings/car.ts';
import { STANDINGS } from '../../src/findings/standing.ts';
import { tireSet } from '../../src/findings/tire-set.ts';
import { type CarWithParts, carsOf, carWithParts, closedParts } from '../../src/store/cars.ts';
import { openMemoryStore, type Store } from '../../src/store/open.ts';
import { overridesOf } from '../../src/store/overrides.ts';
import { membersOf } from '../../src/store/people.ts';

/** The end of a February, a leap day, a first of the month, and a day of this year. */
const DAYS: readonly CivilDate[] = ['2026-11-25', '2027-02-28', '2028-02-29', '2031-07-01'];

/** Traits no car of the demo has, each with the reason. There is none at present. */
const NOT_SHOWN: Partial<Record<StatedTrait, string>> = {};

/** Ways of telling a date that the demo must show. */
const WRITTEN: Readonly<Record<string, RegExp>> = {
  'a year': /^\d{4}$/,
  'a month': /^[A-Z][a-z]+ \d{4}$/,
  'a day in words': /^\d{1,2} [A-Z][a-z]+ \d{4}$/,
  'a day, month first': /^\d{1,2}\/\d{1,2}\/\d{4}$/,
  'a day, day first': /^\d{1,2}\.\d{1,2}\.\d{4}$/,
  about: /^about \d{4}$/,
  between: /^between \d{4} and \d{4}$/,
  before: /^before \d{4}$/,
  after: /^after \d{4}$/,
  original: /^original$/,
  unknown: /^unknown$/,
  'not looked yet': /^not looked yet$/,
  'the number of a tire': /^DOT \w{3} \w{6} \d{4}$/,
  'three digits of a tire': /^DOT [\w ]+ \d{3}$/,
  'a hose label': /^DOT \d{1,2}\/\d\d$/,
  'a print of hoses and belts': /^[1-4]Q\d\d$/,
  'a battery letter': /^[A-L]\d$/,
  'a dial or a sticker': /^\d{1,2}\/\d\d$/,
  'an international harness': /^not valid after \d{4}$/,
  'a US harness': /^SFI 16\.1 \d{1,2}\/\d{4}$/,
};

const loaded = (today: CivilDate): { store: Store; demo: Demo } => {
  const store = openMemoryStore();
  const demo = demoCollection(today);
  loadDemo(store, demo, today);
  return { store, demo };
};

const everyRow = ({ $client }: Store): Record<string, unknown[]> => {
  const tables = $client.prepare(`select name from sqlite_master where type = 'table'`).pluck().all() as string[];
  return Object.fromEntries(tables.map((table) => [table, $client.prepare(`select * from "${table}"`).all()]));
};

const everyClaim = ({ cars }: Demo): DemoClaim[] =>
  cars.flatMap(({ parts }) => parts.flatMap((part) => [...(part.before ?? []), part].flatMap(({ claims }) => claims)));

const placeOf = ({ kind, position = null }: { kind: string; position?: string | null }): string =>
  `${kind} ${position ?? ''}`;

/** The demo with one claim told otherwise. */
const retold = (demo: Demo, which: DemoClaim, told: DemoClaim): Demo => ({
  ...demo,
  cars: demo.cars.map((car) => ({
    ...car,
    parts: car.parts.map(
      (part): DemoPart => ({ ...part, claims: part.claims.map((claim) => (claim === which ? told : claim)) }),
    ),
  })),
});

describe.each(DAYS)('the demo on %s', (today) => {
  const { store, demo } = loaded(today);
  const collectionId = demo.collection.id;
  const cars = carsOf(store, collectionId).map(({ id }) => carWithParts(store, collectionId, id) as CarWithParts);
  const overrides = overridesOf(store, collectionId);
  const findings = cars.map(({ facts, parts }) => findingsOf(facts, parts, overrides, today));
  const all = findings.flat();
  const some = (test: (finding: Finding) => boolean): void => expect(all.filter(test)).not.toEqual([]);
  const safety = ({ kind }: Finding): boolean => kind.severity === 'safety';

  it('is the same loaded twice', () => {
    const once = everyRow(store);
    loadDemo(store, demo, today);
    loadDemo(store, demoCollection('2040-01-31'), '2040-01-31');
    expect(everyRow(store)).toEqual(once);
    expect(once['cars']).toHaveLength(6);
  });

  it('has people with letters and one without', () => {
    const members = membersOf(store, collectionId);
    expect(members.map(({ id }) => id)).toEqual(demo.people.map(({ id }) => id));
    expect(members.filter(({ letters, email }) => letters && email)).toHaveLength(2);
    expect(members.filter(({ letters, email }) => !letters && !email)).toHaveLength(1);
  });

  it.each(STANDINGS)('has parts that are %s, safety and others', (standing) => {
    some((finding) => finding.standing === standing && safety(finding));
    some((finding) => finding.standing === standing && !safety(finding));
  });

  it('has parts of every severity', () => {
    expect(new Set(all.map(({ kind }) => kind.severity))).toEqual(new Set(SEVERITIES));
  });

  it('has every trait but those with a reason', () => {
    const stated = new Set(cars.flatMap(({ car }) => car.traits));
    expect(STATED_TRAITS.filter((trait) => !stated.has(trait))).toEqual(Object.keys(NOT_SHOWN));
  });

  it('gives every car the parts of its traits, and those added by hand', () => {
    for (const { car, parts } of cars) {
      const told = demo.cars.find(({ id }) => id === car.id);
      const byHand = (told?.parts ?? []).filter((part) => part.byHand);
      expect(parts.map(placeOf).sort()).toEqual([...partsFor(car.traits), ...byHand].map(placeOf).sort());
    }
  });

  it('tells each place once', () => {
    for (const { parts } of demo.cars) expect(new Set(parts.map(placeOf)).size).toBe(parts.length);
  });

  it('knows one car well and another hardly', () => {
    const known = cars.map(({ parts }) => parts.filter(({ claims }) => claims.length > 0).length / parts.length);
    expect(Math.max(...known)).toBeGreaterThan(0.75);
    expect(Math.min(...known)).toBeLessThan(0.25);
  });

  it.each(Object.entries(WRITTEN))('has dates written as %s', (_, pattern) => {
    expect(everyClaim(demo).filter(({ typed }) => pattern.test(typed))).not.toEqual([]);
  });

  it('picks only meanings that are offered', () => {
    const chosen = everyClaim(demo).filter(({ choice }) => choice);
    expect(chosen.length).toBeGreaterThan(3);
    for (const claim of chosen) {
      const { choice = '', ...unchosen } = claim;
      const load = (): void => loadDemo(openMemoryStore(), retold(demo, claim, unchosen), today);
      expect(load, claim.typed).toThrow(`Choice ${choice}:`);
    }
  });

  it('has two sources that disagree', () => some(({ since }) => since?.disagree === true));

  it('has a weak source that contradicts a sure one, and one that counts against a safety item', () => {
    some(({ since }) => since?.contradicted === true && since.evidence === 'read on the part');
    some(({ since, standing }) => since?.contradicted === true && since.evidence !== 'receipt' && standing === 'past');
  });

  it('has parts that only their other dates bound', () => some(({ since }) => since?.evidence === null));

  it('has a printed date about to run out, and one that did', () => {
    some((finding) => finding.label !== null && finding.standing === 'due' && safety(finding));
    some(({ label, standing }) => label !== null && standing === 'past');
  });

  it('has limits reached by distance, near and past', () => {
    some(({ distance }) => distance?.standing === 'due');
    some(({ distance }) => distance?.standing === 'past');
    expect(cars.filter(({ facts }) => facts.odometer.length > 2)).toHaveLength(5);
  });

  it('has a look that puts off the next one', () =>
    some(({ lastLook, standing, kind, since }) =>
      Boolean(lastLook && standing === 'in date' && since?.from && kind.interval.lookFrom),
    ));

  it('has tires of mixed ages on an axle, an old spare, and every decade of three digits', () => {
    const notes = findings.flatMap((ofCar) => tireSet(ofCar).notes);
    expect(notes.filter((note) => note.startsWith('Mixed ages on the rear axle'))).toHaveLength(1);
    some(({ kind, standing }) => kind.key === 'tire-spare' && standing === 'past');
    some(({ since }) => since?.from === '1979-08-19' && since.to === '1999-08-21');
  });

  it('has an overdue timing belt', () =>
    some(({ kind, standing, since }) => kind.key === 'timing-belt' && standing === 'past' && since !== null));

  it('has intervals of a handbook and of its own', () => {
    some(({ ruling }) => ruling.by === 'handbook' && Boolean(ruling.note));
    some(({ ruling }) => ruling.by === 'own' && Boolean(ruling.note));
  });

  it('has a history', () => {
    const closed = cars.flatMap(({ car }) => closedParts(store, collectionId, car.id));
    expect(closed.filter(({ claims }) => claims.length > 0).length).toBeGreaterThan(20);
    expect(cars.flatMap(({ parts }) => parts).filter(({ replaces }) => replaces)).not.toEqual([]);
  });

  it('records nothing on a day ahead, and reads its meter forward', () => {
    const rows = store.$client.prepare('select recorded_on from claims').pluck().all() as CivilDate[];
    expect(rows.filter((day) => day > today)).toEqual([]);
    for (const { facts } of cars) {
      const km = facts.odometer.map((reading) => reading.km);
      expect(km).toEqual([...km].sort((a, b) => a - b));
    }
  });
});

describe('a slip in the demo', () => {
  const today: CivilDate = '2026-11-25';
  const demo = demoCollection(today);
  const car = demo.cars[0];
  if (!car) throw new Error('The demo has no car');
  const withPart = (part: DemoPart): Demo => ({ ...demo, cars: [{ ...car, parts: [part] }] });
  const claim: DemoClaim = { clock: 'fitted', typed: 'last wensday', evidence: 'own memory' };

  it.each<[string, Demo, RegExp]>([
    ['a text', withPart({ kind: 'wiring', claims: [claim] }), /Tindlewick.*wiring.*“last wensday”.*not understood/],
    ['a kind', withPart({ kind: 'wirring', claims: [] }), /Tindlewick.*wirring.*no such part/],
    ['a place', withPart({ kind: 'tires-road', position: 'left', claims: [] }), /Tindlewick.*tires-road left/],
    ['a day', withPart({ kind: 'wiring', claims: [{ ...claim, typed: '1990', on: '2027-01-01' }] }), /lies ahead/],
    ['a person', withPart({ kind: 'wiring', claims: [{ ...claim, typed: '1990', by: 'nobody' }] }), /Nobody/],
    ['a trait', { ...demo, cars: [{ ...car, without: ['abs'] }] }, /Tindlewick.*Changes nothing: abs/],
  ])('in %s is refused by name, and nothing is kept', (_, slipped, message) => {
    const store = openMemoryStore();
    const empty = everyRow(store);
    expect(() => loadDemo(store, slipped, today)).toThrow(message);
    expect(everyRow(store)).toEqual(empty);
  });
});
