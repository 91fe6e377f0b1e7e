/** One record that can’t be reckoned stops neither the run, nor its car, nor the others; and somebody hears of it. */
import { afterEach, describe, expect, it } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { isBad, runsOf } from '../../src/store/runs.ts';
import { carIn, claim, date, openBarn, partOf } from '../support/cars.ts';
import { newFolder } from '../support/folder.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';
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

describe.each(POISONS)('a part %s', (_, poison) => {
  it('leaves the other parts of its car and the other cars told, and is counted in the letter', async () => {
    const { wakeAt, letters } = poisoned(poison);
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()).toHaveLength(1);
    expect(letters()[0]?.text.match(/^(MERLE TOURER|ALDER COUPE|\[.*)/gm)).toEqual([
      'MERLE TOURER',
      '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)',
      'ALDER COUPE',
      '[Past] Engine oil',
    ]);
    expect(letters()[0]?.text).toContain('One part could not be reckoned');
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
