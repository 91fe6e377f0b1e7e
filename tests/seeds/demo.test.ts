import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CARS } from '../../seeds/demo/people.ts';
import { WHEELS } from '../../seeds/demo/tell.ts';
import { demoCollection } from '../../seeds/demo.ts';
import type { Demo, DemoClaim, DemoPart, DemoReading } from '../../src/acts/demo.ts';
import { loadDemo } from '../../src/acts/load-demo.ts';
import { VERDICTS } from '../../src/ageing/judge.ts';
import { coldestNight } from '../../src/ageing/place.ts';
import { SEVERITIES } from '../../src/catalogue/kind.ts';
import { partsFor } from '../../src/catalogue/kinds.ts';
import { STATED_TRAITS, type StatedTrait } from '../../src/catalogue/traits.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { limitOn } from '../../src/dates/limit.ts';
import type { Finding } from '../../src/findings/assess.ts';
import { findingsOf } from '../../src/findings/car.ts';
import { outlookOf } from '../../src/findings/outlook.ts';
import { STANDINGS } from '../../src/findings/standing.ts';
import { tireSet } from '../../src/findings/tire-set.ts';
import { type CarWithParts, carsOf, carWithParts, closedParts } from '../../src/store/cars.ts';
import { openMemoryStore, type Store } from '../../src/store/open.ts';
import { overridesOf } from '../../src/store/overrides.ts';
import { membersOf } from '../../src/store/people.ts';
import { placeOfCar } from '../../src/store/places.ts';

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

/** How each model is to be seen: silicone has no gauge, and fuel is told by the calendar alone. */
const OUTLOOKS: Readonly<Record<string, { kinds: RegExp; seen: readonly ('measured' | 'estimated')[] }>> = {
  battery: { kinds: /^battery-/, seen: ['measured', 'estimated'] },
  'brake fluid': { kinds: /^brake-fluid-glycol$/, seen: ['measured', 'estimated'] },
  'silicone fluid': { kinds: /^brake-fluid-silicone$/, seen: ['estimated'] },
  coolant: { kinds: /^coolant-/, seen: ['measured', 'estimated'] },
  fuel: { kinds: /^fuel-(gasoline|diesel)$/, seen: ['estimated'] },
  tire: { kinds: /^tires-road$/, seen: ['measured', 'estimated'] },
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

/** Every part that is or was there, with its readings. */
const everyLife = ({ cars }: Demo): { readings?: readonly DemoReading[] }[] =>
  cars.flatMap(({ parts }) => parts.flatMap((part) => [...(part.before ?? []), part]));

const carsIn = (store: Store, { collection: { id } }: Demo): CarWithParts[] =>
  carsOf(store, id).map((car) => carWithParts(store, id, car.id) as CarWithParts);

/** What the last reading of a gauge says; undefined where it was never read. */
const verdictOf = ({ measured }: Finding, gauge: string) =>
  measured.find(({ test }) => test.gauge.key === gauge)?.verdict;

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
  const cars = carsIn(store, demo);
  const overrides = overridesOf(store, collectionId);
  const findings = cars.map(({ facts, parts }) => findingsOf(facts, parts, overrides, today));
  const all = findings.flat();
  const some = (test: (finding: Finding) => boolean): void => expect(all.filter(test)).not.toEqual([]);
  const safety = ({ kind }: Finding): boolean => kind.severity === 'safety';
  const of = (carId: string, kind: string, position: string | null = null): Finding => {
    const found = all.find(
      ({ car, part }) => car.id === carId && part.kind === kind && (position === null || part.position === position),
    );
    if (!found) throw new Error(`No ${kind} ${position}`);
    return found;
  };
  const read = ({ part }: Finding, gauge: string) => part.readings.filter((reading) => reading.gauge === gauge);

  it('is the same loaded twice', () => {
    const once = everyRow(store);
    loadDemo(store, demo, today);
    loadDemo(store, demoCollection('2040-01-31'), '2040-01-31');
    expect(everyRow(store)).toEqual(once);
    expect(once['cars']).toHaveLength(8);
    expect(once['revivals']).toHaveLength(2);
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

  it('has a car in every place, and one whose place nobody has said', () => {
    const stood = cars
      .filter(({ car }) => demo.cars.some(({ id }) => id === car.id))
      .map(({ car }) => placeOfCar(store, collectionId, car.id)?.place.id ?? null);
    expect(stood.filter((place) => place === null)).toHaveLength(1);
    expect(new Set(stood)).toEqual(new Set([null, ...demo.places.map(({ id }) => id)]));
  });

  it.each(VERDICTS)('has readings that are %s', (verdict) =>
    some(({ measured }) => measured.some((one) => one.verdict === verdict)),
  );

  it('has readings that can’t be judged for want of an answer, a temperature and a place', () => {
    const wants = all.flatMap(({ measured }) => measured.flatMap((one) => (one.verdict === null ? [one.wants] : [])));
    expect(wants).toContainEqual({ detail: 'placard' });
    expect(wants).toContain('its temperature');
    expect(wants).toContain('the coldest night where it stands');
  });

  it('has standings that only a reading brings, to act and to watch', () => {
    some(({ by, standing }) => by === 'reading' && standing === 'due');
    some(({ by, standing }) => by === 'reading' && standing === 'look');
  });

  it.each(Object.entries(OUTLOOKS))('has an outlook of the model of %s of each sort there is', (_, { kinds, seen }) => {
    const outlooks = all.filter(({ kind }) => kinds.test(kind.key)).flatMap((finding) => outlookOf(finding) ?? []);
    const sorts = new Set(outlooks.map(({ measured }) => (measured ? 'measured' : 'estimated')));
    expect([...sorts].sort()).toEqual([...seen].sort());
  });

  it('has a battery that falls month by month in the barn, connected, with what drains it', () => {
    const battery = of(CARS.zwirbel, 'battery-flooded');
    const volts = read(battery, 'rest-voltage');
    expect(battery.car.place?.shelter).toBe('damp');
    expect(battery.part.details['connection']).toBe('connected');
    expect(new Set(volts.map(({ day }) => day.slice(0, 7))).size).toBeGreaterThan(7);
    for (const [index, { value }] of volts.slice(1).entries()) expect(value).toBeLessThan(volts[index]?.value ?? 0);
    expect(verdictOf(battery, 'rest-voltage')).toBe('act');
    expect(battery.car.drain).toBe(of(CARS.zwirbel, 'wiring').part.readings.at(-1)?.value);
    expect(battery.car.drain).toBeGreaterThan(0);
    expect(outlookOf(battery)?.says.join()).toContain(
      `Reckoned with a drain of ${battery.car.drain} mA, give or take a fifth`,
    );
  });

  it('has AGM batteries on a maintainer and off every cable', () => {
    const agm = all.filter(({ kind, measured }) => kind.key === 'battery-agm' && measured.length > 0);
    expect(agm.map(({ part }) => part.details['connection']).sort()).toEqual(['disconnected', 'maintainer']);
    expect(new Set(agm.map((finding) => verdictOf(finding, 'rest-voltage')))).toEqual(new Set(['good', 'watch']));
  });

  it('has brake fluid that a boiling tester puts off, within what its kind allows', () => {
    const good = of(CARS.calvessa, 'brake-fluid-glycol');
    const { replaceBy, stretch } = good.kind.interval;
    expect(verdictOf(good, 'boiling-point')).toBe('good');
    const filled = good.since?.from as CivilDate;
    const usual = addDays(limitOn(filled, replaceBy as number), 1);
    expect(good.past?.worst?.localeCompare(usual)).toBe(1);
    expect(good.past?.worst?.localeCompare(addDays(limitOn(filled, stretch?.most as number), 1))).not.toBe(1);
  });

  it('has brake fluid under its wet minimum, by boiling tester, copper strip and water pen', () => {
    const bad = of(CARS.zwirbel, 'brake-fluid-glycol');
    expect(verdictOf(bad, 'boiling-point')).toBe('act');
    expect(verdictOf(bad, 'copper')).toBe('act');
    expect(verdictOf(bad, 'water')).toBe('watch');
    expect(verdictOf(of(CARS.calvessa, 'brake-fluid-glycol'), 'copper')).toBe('good');
  });

  it('has readings of a fluid that is gone', () => {
    const closed = closedParts(store, collectionId, CARS.norrhalm);
    expect(closed.flatMap(({ readings }) => readings).map(({ gauge }) => gauge)).toContain('water');
  });

  it('has coolant that is strong enough where it stands, and one too weak', () => {
    const [good, weak] = [of(CARS.brackwater, 'coolant-iat'), of(CARS.norrhalm, 'coolant-iat')];
    expect(verdictOf(good, 'freeze-point')).toBe('good');
    expect(verdictOf(weak, 'freeze-point')).toBe('act');
    for (const { car } of [good, weak])
      expect(coldestNight(car.place as NonNullable<typeof car.place>)).toBeLessThan(-18);
    expect(outlookOf(weak)?.now).toContain('above the coldest night there');
  });

  it.each([
    ['psi', CARS.brackwater],
    ['bar', CARS.calvessa],
  ])('has four wheels read in %s over some months, with placard and tread', (unit, carId) => {
    for (const wheel of WHEELS) {
      const tire = of(carId, 'tires-road', wheel);
      const units = store.$client
        .prepare(`select distinct unit from readings where part_id = ? and gauge = 'cold-pressure'`)
        .pluck()
        .all(tire.part.id);
      expect(units).toEqual([unit]);
      expect(read(tire, 'cold-pressure').length).toBeGreaterThan(3);
      expect(tire.part.details['placard']).toBeGreaterThan(0);
      expect(read(tire, 'tread')).not.toEqual([]);
    }
  });

  it('has a tire that leaks, and tires grown hard', () => {
    expect(outlookOf(of(CARS.brackwater, 'tires-road', 'rear right'))?.says.join()).toContain('look for a leak');
    expect(outlookOf(of(CARS.brackwater, 'tires-road', 'front left'))?.says.join()).not.toContain('look for a leak');
    const hardness = all.map((finding) => verdictOf(finding, 'hardness'));
    expect(hardness).toEqual(expect.arrayContaining([...VERDICTS]));
  });

  it('has fuel with its blend, stabilizer, tank and filling, gasoline and diesel', () => {
    const told = all.filter(({ kind, part }) => /^fuel-(gasoline|diesel)$/.test(kind.key) && part.details['blend']);
    for (const { part, ruling } of told) {
      expect(Object.keys(part.details).sort()).toEqual(['blend', 'fullness', 'stabilized', 'tank']);
      expect(ruling.note).toMatch(/^For /);
    }
    expect(told.map(({ part }) => part.details['blend']).sort()).toEqual(['b7', 'e10', 'e5', 'premium-e0']);
    expect(new Set(told.map(({ part }) => part.details['stabilized']))).toEqual(new Set(['yes', 'no']));
  });

  it('has air inside that is dry, damp and wet', () => {
    expect(new Set(all.map((finding) => verdictOf(finding, 'humidity')))).toEqual(new Set([undefined, ...VERDICTS]));
  });

  it('reads every gauge on a day its part was there, with the instrument named, oldest first', () => {
    const rows = store.$client
      .prepare(
        `select r.day, r.recorded_on as recordedOn, r.instrument, p.opened_on as openedOn, p.closed_on as closedOn
         from readings r join parts p on p.collection_id = r.collection_id and p.id = r.part_id`,
      )
      .all() as Record<'day' | 'recordedOn' | 'instrument' | 'openedOn' | 'closedOn', string>[];
    expect(rows.length).toBeGreaterThan(60);
    for (const { day, recordedOn, instrument, openedOn, closedOn } of rows) {
      expect(recordedOn).toBe(day);
      expect(day >= openedOn && day <= (closedOn ?? today)).toBe(true);
      expect(instrument).toMatch(/^[a-z ]+$/);
    }
    for (const { readings = [] } of everyLife(demo)) {
      const days = readings.map(({ day }) => day);
      expect(days).toEqual([...days].sort());
    }
  });
});

describe('the demo on any day', () => {
  const days = fc.integer({ min: 0, max: 7_300 }).map((count) => addDays('2026-11-25', count));

  it('loads, and its readings say the same', () => {
    const said = (today: CivilDate): (string | null)[] => {
      const { store, demo } = loaded(today);
      return carsIn(store, demo)
        .flatMap(({ facts, parts }) => findingsOf(facts, parts, overridesOf(store, demo.collection.id), today))
        .flatMap(({ measured }) => measured.map(({ verdict }) => verdict));
    };
    const once = said('2026-11-25');
    fc.assert(
      fc.property(days, (today) => {
        expect(said(today).map(String).sort()).toEqual(once.map(String).sort());
      }),
      { numRuns: 12 },
    );
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
    [
      'a gauge',
      withPart({ kind: 'wiring', claims: [], readings: [{ gauge: 'volts', typed: '12', day: today }] }),
      /Tindlewick.*wiring, volts “12”.*no gauge/,
    ],
    [
      'a reading',
      withPart({ kind: 'wiring', claims: [], readings: [{ gauge: 'standing-drain', typed: '12 V', day: today }] }),
      /Tindlewick.*standing-drain “12 V”.*not a unit/,
    ],
    [
      'the day of a reading',
      withPart({
        kind: 'wiring',
        claims: [{ clock: 'fitted', typed: '2020', evidence: 'own memory' }],
        readings: [{ gauge: 'standing-drain', typed: '12', day: '2019-12-31' }],
      }),
      /Tindlewick.*wiring.*belongs to the one before it/,
    ],
    [
      'an answer',
      withPart({ kind: 'wiring', claims: [], details: { electronics: { typed: 'some', unit: '' } } }),
      /Tindlewick.*wiring, details: Electronics that stay awake: choose None, /,
    ],
    ['where it stands', { ...demo, cars: [{ ...car, place: 'nowhere' }] }, /Tindlewick.*no such place/],
    ['a place’s night', { ...demo, places: demo.places.map((place) => ({ ...place, winterLow: '-80' })) }, /beyond/],
    ['a trait', { ...demo, cars: [{ ...car, without: ['abs'] }] }, /Tindlewick.*Changes nothing: abs/],
  ])('in %s is refused by name, and nothing is kept', (_, slipped, message) => {
    const store = openMemoryStore();
    const empty = everyRow(store);
    expect(() => loadDemo(store, slipped, today)).toThrow(message);
    expect(everyRow(store)).toEqual(empty);
  });
});
