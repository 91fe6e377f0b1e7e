/** A poison part must not stop the run: one record that can’t be reckoned stops neither the run, nor its car, nor the others; and somebody hears of it. */
import { afterEach, describe, expect, it } from 'vitest';
import { beginRevival } from '../../src/acts/begin-revival.ts';
import { eachCarReckoned } from '../../src/acts/reckon.ts';
import { openStore } from '../../src/store/open.ts';
import { allCollections } from '../../src/store/people.ts';
import { putCar } from '../../src/store/places.ts';
import { writeEntries } from '../../src/store/revivals.ts';
import { isBad, runsOf } from '../../src/store/runs.ts';
import { carIn, claim, date, must, openBarn, partOf } from '../support/cars.ts';
import { newFolder } from '../support/folder.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';
import { layUpIn, onDayIn, placeIn, roundOn } from '../support/lay-ups.ts';
import { kindOf } from '../support/parts.ts';
import { record, typed } from '../support/readings.ts';
import { INTAKE } from '../support/revivals.ts';
import { run } from '../support/run.ts';

const open: WakingHouse[] = [];
afterEach(() => {
  for (const { house } of open.splice(0)) house.close();
});

type Poison = (partId: string) => string;
const POISONS: [string, Poison][] = [
  ['whose answers are damaged', (id) => `update parts set details = '{"grade": ' where id = '${id}'`],
  ['of a kind this version does not know', (id) => `update parts set kind = 'flux-capacitor' where id = '${id}'`],
  ['whose date is none', (id) => `update claims set from_day = 'soon', to_day = 'soon' where part_id = '${id}'`],
  ['whose details are no answers', (id) => `update parts set details = 'null' where id = '${id}'`],
];

const poisoned = (poison: Poison) => {
  const here = openWakingHouse(null);
  open.push(here);
  const { barn, house } = here;
  const carId = carIn(barn, { name: 'Merle Tourer' });
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2020'));
  date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
  date(barn, carIn(barn, { name: 'Alder Coupe' }), 'engine-oil', claim('filled', '1 June 2020'));
  house.store.$client.exec(poison(partOf(barn, carId, 'spark-plugs').id));
  return here;
};

/** What is told of two cars whose plugs, past too, can't be reckoned. */
const TOLD = [
  ...['MERLE TOURER', '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)'],
  ...['ALDER COUPE', '[Past] Engine oil'],
];

describe.each(POISONS)('a part %s', (_, poison) => {
  it('leaves the other parts of its car and the other cars told, and is counted in the letter', async () => {
    const { wakeAt, letters } = poisoned(poison);
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()).toHaveLength(1);
    expect(letters()[0]?.text.match(/^(MERLE TOURER|ALDER COUPE|\[.*)/gm)).toEqual(TOLD);
    expect(letters()[0]?.text).toContain('One record could not be reckoned');
  });

  it('makes the run a bad one, which is in the log and on record, and the letters go out all the same', async () => {
    const { wakeAt, letters, house, logged } = poisoned(poison);
    await wakeAt('2026-06-10T06:30:00Z');
    const { sweep, deliver } = runsOf(house.store);
    expect([isBad(sweep), isBad(deliver)]).toEqual([true, false]);
    expect(sweep.trouble).toMatch(/^Merle Tourer: (spark-plugs|flux-capacitor): /);
    expect(logged.join('')).toContain('sweep had trouble');
    expect(letters().map(({ state }) => state)).toEqual(['sent']);
  });
});

describe('a car whose traits are damaged', () => {
  it('is told of all the same, and the run is a bad one', async () => {
    const { wakeAt, letters, house } = poisoned(() => 'select 1');
    const carId = house.store.$client
      .prepare("select id from cars where name = 'Merle Tourer'")
      .pluck()
      .get() as string;
    house.store.$client.exec(`update cars set traits = '["' where id = '${carId}'`);
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()[0]?.subject).toBe('3 past: Merle Tourer and 1 more car');
    expect(runsOf(house.store).sweep.trouble).toContain('Merle Tourer');
  });
});

describe('a kind that can’t be reckoned by a fault of ours', () => {
  it('is left out of each car, and all else is told', async () => {
    const { wakeAt, letters, house } = poisoned(() => 'select 1');
    const kind = kindOf('spark-plugs');
    const { interval } = kind;
    Object.defineProperty(kind, 'interval', {
      configurable: true,
      get: () => {
        throw new Error('a fault of ours');
      },
    });
    await wakeAt('2026-06-10T06:30:00Z');
    Object.defineProperty(kind, 'interval', { configurable: true, writable: true, value: interval });
    expect(letters()[0]?.text.match(/^(MERLE TOURER|ALDER COUPE|\[.*)/gm)).toEqual(TOLD);
    expect(runsOf(house.store).sweep.trouble).toBe(
      'Merle Tourer: spark-plugs: a fault of ours; Alder Coupe: spark-plugs: a fault of ours',
    );
  });
});

describe('a reading that is damaged', () => {
  it.each([
    ['value', "'soon'"],
    ['unit', "'cubits'"],
  ])('(%s) keeps no other part from being told', async (column, damaged) => {
    const { wakeAt, letters, house, barn } = poisoned(() => 'select 1');
    const carId = carIn(barn, { name: 'Birch Sedan' });
    date(barn, carId, 'battery-flooded', claim('made', 'June 2015'));
    const { id } = partOf(barn, carId, 'battery-flooded');
    const read = typed(id, 'rest-voltage', '12.1', { day: '2026-06-01', warmth: '20' });
    must(record(barn, carId, [read], '2026-06-01'));
    house.store.$client.exec(`update readings set ${column} = ${damaged}`);
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()[0]?.text.match(/^(MERLE TOURER|ALDER COUPE|\[.*)/gm)).toEqual(expect.arrayContaining(TOLD));
    expect(runsOf(house.store).sweep.trouble).toMatch(/^Birch Sedan: battery-flooded: /);
  });
});

describe('a part whose date is no day', () => {
  const DAYS = ['2026-13-45', '2026-00-10', '2026-06-31', '2025-02-30'];
  it.each(DAYS)('(%s) is not cleared by it: it is counted as one that can’t be reckoned', async (day) => {
    const { wakeAt, letters, house } = poisoned(
      (id) => `update claims set from_day = '${day}', to_day = '${day}' where part_id = '${id}'`,
    );
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()[0]?.text).toContain('One record could not be reckoned');
    expect(runsOf(house.store).sweep.trouble).toMatch(/^Merle Tourer: spark-plugs: /);
  });
});

describe('a record beside the parts', () => {
  /** A third car is laid up with a round made, and a fourth is on its way back; a fluid of each is long past. */
  const busy = () => {
    const here = openWakingHouse(null);
    open.push(here);
    const barn = onDayIn(here.barn, '2026-06-01');
    const [laidUp, back] = ['Birch Sedan', 'Cedar Wagon'].map((name) => carIn(barn, { name })) as [string, string];
    for (const carId of [laidUp, back, carIn(barn, { name: 'Alder Coupe' })])
      date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2020'));
    const placeId = placeIn(barn, 'Garage');
    const layUp = layUpIn(barn, laidUp, { parkedOn: '2026-06-01', returnOn: '2026-12-01', place: placeId });
    must(roundOn(barn, layUp, '2026-06-02', {}, { note: 'All well.' }));
    const revival = must(beginRevival(barn.store, barn.acting, { ...INTAKE, car: { carId: back } }));
    const said = { day: barn.acting.today, doneBy: 'Ada', note: '', recordedOn: barn.acting.today, recordedBy: null };
    writeEntries(barn.store, barn.acting.collectionId, revival, [
      { ...said, said: { what: 'decision', stop: 'ceiling', ceiling: null } },
    ]);
    return here;
  };

  it('that is sound keeps nobody from anything', async () => {
    const { house, wakeAt, letters } = busy();
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters().flatMap(({ text }) => text.match(/^ALDER COUPE/gm) ?? [])).toEqual(['ALDER COUPE']);
    expect(isBad(runsOf(house.store).sweep)).toBe(false);
  });

  const POISONED = [
    ['the circumstances of a lay-up', 'BIRCH SEDAN', "update lay_ups set circumstances = '['"],
    ['the numbers of a lay-up', 'BIRCH SEDAN', "update lay_ups set numbers = '{'"],
    ['the choices of a lay-up', 'BIRCH SEDAN', "update lay_ups set choices = 'null'"],
    ['the plan of a lay-up as last seen', 'BIRCH SEDAN', "update lay_ups set seen = '['"],
    ['what a round found', 'BIRCH SEDAN', "update rounds set answers = '{'"],
    ['the months of its place', 'BIRCH SEDAN', "update places set months = '['"],
    ['where a car on its way back has stood', 'CEDAR WAGON', "update revivals set stood = '['"],
    ['an entry in its journal', 'CEDAR WAGON', "update revival_entries set said = '{'"],
  ] as const;

  it.each(POISONED)('(%s) that is damaged keeps no car from being told, and the run is a bad one', async (...given) => {
    const [, car, poison] = given;
    const { house, wakeAt, letters } = busy();
    house.store.$client.exec(poison);
    await wakeAt('2026-06-10T06:30:00Z');
    const text = letters().flatMap((letter) => (letter.kind === 'digest' ? letter.text : []));
    expect(text).toHaveLength(1);
    // What can’t be read makes the car one that neither stands nor is on its way: its own parts are told.
    for (const told of ['ALDER COUPE', car])
      expect(text[0]).toMatch(new RegExp(`^${told}  .+\\n\\n\\[Past, safety\\] Brake fluid`, 'm'));
    expect(text[0]).toMatch(/^(One record|2 records) could not be reckoned/m);
    expect(isBad(runsOf(house.store).sweep)).toBe(true);
  });

  it.each(POISONED)('(%s) that is damaged keeps no car out of the calendar, the line-up or the year', (...given) => {
    const [, car, poison] = given;
    const { house } = busy();
    house.store.$client.exec(poison);
    const [collection] = allCollections(house.store);
    const cars = collection ? [...eachCarReckoned(house.store, collection, '2026-06-10')] : [];
    expect(cars.map(({ name, troubles }) => [name.toUpperCase(), troubles.length > 0]).toSorted()).toEqual(
      ['ALDER COUPE', 'BIRCH SEDAN', 'CEDAR WAGON'].map((name) => [name, name === car]),
    );
  });

  it.each([
    ['a distance', "update odometer set km = 'many'"],
    ['the day of a distance', "update odometer set day = '2026-02-30'"],
    ['a build date', "update cars set built_to = 'soon' where name = 'Birch Sedan'"],
    ['the day it came into its place', "update car_places set since = '2026-06-31'"],
  ])('(%s) that is damaged keeps no part of its car from being told, and the run is a bad one', async (_, poison) => {
    const { house, wakeAt, letters, barn } = poisoned(() => 'select 1');
    const carId = carIn(barn, { name: 'Birch Sedan', km: 1000 });
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2020'));
    putCar(house.store, barn.acting.collectionId, carId, placeIn(barn, 'Garage'), '2026-06-01');
    house.store.$client.exec(poison);
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()[0]?.text).toMatch(/^BIRCH SEDAN {2}.+\n\n\[Past, safety\] Brake fluid/m);
    expect(runsOf(house.store).sweep.trouble).toMatch(/^Birch Sedan: /);
  });
});

describe('the sweep by hand', { timeout: 60_000 }, () => {
  it('says what it could not reckon, and ends with 1', async () => {
    const dataDir = newFolder();
    const store = openStore(dataDir);
    const barn = openBarn(store);
    const carId = carIn(barn);
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2004'));
    store.$client.exec(`update parts set details = '{' where id = '${partOf(barn, carId, 'spark-plugs').id}'`);
    store.$client.close();
    const { code, out } = await run('jobs/sweep.ts', [], { DATA_DIR: dataDir });
    expect(code).toBe(1);
    expect(JSON.parse(out.trim().split('\n').at(-1) ?? '')).toMatchObject({
      collections: [{ letters: [{ to: 'ada@example.org' }], troubles: [expect.stringContaining('spark-plugs')] }],
    });
  });
});
