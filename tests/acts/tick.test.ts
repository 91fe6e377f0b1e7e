import { describe, expect, it } from 'vitest';
import { type Effect, effectsOf } from '../../src/acts/effects.ts';
import type { Outcome } from '../../src/acts/fault.ts';
import { skipStep, takeBackTick } from '../../src/acts/tick.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { findingsOf } from '../../src/findings/car.ts';
import { explain } from '../../src/findings/explain.ts';
import type { PlanName } from '../../src/plans/plan.ts';
import { closedParts } from '../../src/store/cars.ts';
import { setDetails } from '../../src/store/readings.ts';
import { type Barn, carOf, claim, date, must, partOf } from '../support/cars.ts';
import {
  closeOn,
  everythingIn,
  layUpIn,
  onDayIn,
  PARKED,
  planIn,
  stayIn,
  stepOn,
  tickOn,
  winterBarn,
} from '../support/lay-ups.ts';
import { record, typed } from '../support/readings.ts';
import { keysOf } from '../support/stays.ts';

const DAY: CivilDate = '2026-10-30';
const fields = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.faults.map(({ field }) => field));

const winter = () => {
  const { barn, carId, placeId } = winterBarn();
  const id = layUpIn(barn, carId, { place: placeId });
  const part = (kind: string, position: string | null = null) => partOf(barn, carId, kind, position);
  const effects = (key: string, on: CivilDate = DAY, plan?: PlanName): Effect[] =>
    effectsOf(stepOn(barn, id, key, on, plan).records, carOf(barn, carId).parts);
  const all = (key: string, on?: CivilDate, plan?: PlanName): string[] => effects(key, on, plan).map((one) => one.key);
  return { barn, carId, placeId, id, part, effects, all };
};
const takeBack = (barn: Barn, id: string, key: string, on: CivilDate, plan: PlanName = 'lay-up'): Outcome<null> =>
  takeBackTick(barn.store, { ...barn.acting, today: on }, stayIn(barn, id, on), stepOn(barn, id, key, on, plan), plan);
const closed = (barn: Barn, carId: string, kind: string) =>
  closedParts(barn.store, barn.acting.collectionId, carId).filter((part) => part.kind === kind);

describe('a tick', () => {
  it('keeps its day, who made it, the note and the cost', () => {
    const { barn, id } = winter();
    must(
      tickOn(barn, id, 'photographs', DAY, { day: '2026-10-12', note: 'Forty, in the <blue> folder', cost: '45,50' }),
    );
    expect(stepOn(barn, id, 'photographs', DAY).tick).toMatchObject({
      state: 'done',
      day: '2026-10-12',
      by: 'Ada',
      note: 'Forty, in the <blue> folder',
      cost: 45.5,
    });
  });

  it('without a cost has none, which is not nothing', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', DAY));
    must(tickOn(barn, id, 'hinges', DAY, { cost: '0' }));
    expect(stepOn(barn, id, 'photographs', DAY).tick?.cost).toBeNull();
    expect(stepOn(barn, id, 'hinges', DAY).tick?.cost).toBe(0);
  });

  it.each([
    ['a day that lies ahead', { day: '2026-10-31' }, ['day']],
    ['a day that is none', { day: '31.10.' }, ['day']],
    ['a cost with its currency', { cost: 'EUR 45' }, ['cost']],
    ['both at once', { day: 'x', cost: 'y' }, ['day', 'cost']],
  ])('is refused for %s, and writes nothing', (_, given, wrong) => {
    const { barn, id, all } = winter();
    const before = everythingIn(barn);
    expect(fields(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change'), ...given }))).toEqual(wrong);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('of a step that is ticked already is refused: what it renewed is not renewed again', () => {
    const { barn, id, part, all } = winter();
    must(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change') }));
    const before = everythingIn(barn);
    expect(fields(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change') }))).toEqual(['step']);
    expect(everythingIn(barn)).toEqual(before);
    expect(part('engine-oil').claims).toHaveLength(1);
  });

  it('with a day no record of the part can have says so beside the day', () => {
    const { barn, carId, id, all } = winter();
    date(barn, carId, 'engine-oil', claim('filled', '3 May 2025'));
    const before = everythingIn(barn);
    const old = { effects: all('oil-change'), day: '1955-01-01' };
    expect(fields(tickOn(barn, id, 'oil-change', DAY, old))).toEqual(['day']);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('is seen from its day on', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', DAY));
    expect(stepOn(barn, id, 'photographs', '2026-10-29').tick).toBeNull();
    expect(stepOn(barn, id, 'photographs', DAY).tick).not.toBeNull();
  });

  it('taken back leaves the step open, and can be made anew', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', DAY, { note: 'First' }));
    must(takeBack(barn, id, 'photographs', DAY));
    expect(stepOn(barn, id, 'photographs', DAY).tick).toBeNull();
    must(tickOn(barn, id, 'photographs', DAY, { note: 'Second' }));
    expect(stepOn(barn, id, 'photographs', DAY).tick?.note).toBe('Second');
  });

  it('names who did it, where that is not who ticks it', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', DAY, { by: 'Bram' }));
    expect(stepOn(barn, id, 'photographs', DAY).tick?.by).toBe('Bram');
  });

  it('of the lay-up takes a day of the year before it was parked, and none earlier', () => {
    const { barn, id } = winter();
    expect(fields(tickOn(barn, id, 'photographs', DAY, { day: '2025-10-31' }))).toEqual(['day']);
    expect(stepOn(barn, id, 'photographs', DAY).tick).toBeNull();
    must(tickOn(barn, id, 'photographs', DAY, { day: '2025-11-01' }));
  });

  it('of the way back takes no day before it was parked', () => {
    const { barn, id } = winter();
    const on: CivilDate = '2027-03-29';
    expect(fields(tickOn(barn, id, 'cover-off', on, { day: '2026-10-31' }, 'wake-up'))).toEqual(['day']);
    expect(stepOn(barn, id, 'cover-off', on, 'wake-up').tick).toBeNull();
    must(tickOn(barn, id, 'cover-off', on, { day: PARKED }, 'wake-up'));
  });

  it('of one plan is none of the other', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'brake-fluid', '2027-03-29', {}, 'wake-up'));
    expect(stepOn(barn, id, 'brake-fluid', '2027-03-29', 'wake-up').tick).not.toBeNull();
    expect(stepOn(barn, id, 'brake-fluid', '2027-03-29').tick).toBeNull();
  });
});

describe('a renewal that is ticked', () => {
  it('closes the old oil and its filter and opens new ones with that day', () => {
    const { barn, carId, id, part, all } = winter();
    const oil = date(barn, carId, 'engine-oil', claim('filled', '3 May 2025'));
    const filter = date(barn, carId, 'oil-filter', claim('fitted', '3 May 2025'));
    must(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change'), km: 87_400 }));
    expect(part('engine-oil')).toMatchObject({
      replaces: oil,
      claims: [{ clock: 'filled', said: 'date', from: DAY, to: DAY, evidence: 'receipt', km: 87_400 }],
    });
    expect(part('oil-filter')).toMatchObject({ replaces: filter, claims: [{ clock: 'fitted', from: DAY }] });
    expect(closed(barn, carId, 'engine-oil')).toMatchObject([{ id: oil, claims: [{ typed: '3 May 2025' }] }]);
    expect(closed(barn, carId, 'oil-filter')).toHaveLength(1);
  });

  it.each(['brake-fluid', 'coolant-change', 'washer', 'clutch-fluid'])('of %s does the same', (key) => {
    const { barn, carId, id, part, effects } = winter();
    const [effect] = effects(key);
    const kind = effect?.part.kind ?? '';
    expect(effect?.sort).toBe('renews');
    date(barn, carId, kind, claim('filled', '1 June 2021'));
    must(tickOn(barn, id, key, DAY, { effects: [effect?.key ?? ''] }));
    expect(part(kind)).toMatchObject({ replaces: effect?.part.id, claims: [{ clock: 'filled', from: DAY, to: DAY }] });
    expect(closed(barn, carId, kind)).toHaveLength(1);
  });

  it('dates a part nobody had dated yet in place of closing it', () => {
    const { barn, carId, id, part, all } = winter();
    const before = part('engine-oil').id;
    must(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change') }));
    expect(part('engine-oil')).toMatchObject({ id: before, claims: [{ clock: 'filled', from: DAY }] });
    expect(closed(barn, carId, 'engine-oil')).toEqual([]);
  });

  it('that is left out of the tick leaves its record alone', () => {
    const { barn, carId, id, part, effects } = winter();
    date(barn, carId, 'engine-oil', claim('filled', '3 May 2025'));
    const [oil] = effects('oil-change').filter((one) => one.part.kind === 'engine-oil');
    must(tickOn(barn, id, 'oil-change', DAY, { effects: [oil?.key ?? ''] }));
    expect(part('engine-oil').claims).toMatchObject([{ from: DAY }]);
    expect(part('oil-filter').claims).toEqual([]);
    must(tickOn(barn, id, 'brake-fluid', DAY, { effects: [] }));
    expect(part('brake-fluid-glycol').claims).toEqual([]);
    expect(stepOn(barn, id, 'brake-fluid', DAY).tick?.state).toBe('done');
  });

  it('of fuel keeps what was answered of the new fill, and the size of the tank', () => {
    const { barn, carId, id, part, all } = winter();
    date(barn, carId, 'fuel-gasoline', claim('filled', '1 July 2026'));
    const old = part('fuel-gasoline').id;
    barn.store.$client
      .prepare('update parts set details = ? where id = ?')
      .run(JSON.stringify({ tank: 45, blend: 'e10', stabilized: 'no', fullness: 20 }), old);
    const answers = {
      [old]: {
        blend: { typed: 'e5', unit: '' },
        stabilized: { typed: 'yes', unit: '' },
        fullness: { typed: '95', unit: '%' },
      },
    };
    must(tickOn(barn, id, 'fuel-fill', DAY, { effects: all('fuel-fill'), answers }));
    expect(part('fuel-gasoline')).toMatchObject({
      replaces: old,
      claims: [{ clock: 'filled', from: DAY }],
      details: { tank: 45, blend: 'e5', stabilized: 'yes', fullness: 95 },
    });
    // The old fill keeps its own.
    expect(closed(barn, carId, 'fuel-gasoline')[0]?.details).toMatchObject({ stabilized: 'no', fullness: 20 });
  });

  it('with an answer that can’t be is refused whole, the answer named by its part', () => {
    const { barn, id, part, all } = winter();
    const fuel = part('fuel-gasoline').id;
    const before = everythingIn(barn);
    const answers = { [fuel]: { fullness: { typed: '195', unit: '%' } } };
    const outcome = tickOn(barn, id, 'fuel-fill', DAY, { effects: all('fuel-fill'), answers });
    expect(fields(outcome)).toEqual([`${fuel}.fullness`]);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('with an odometer that runs backwards is refused whole', () => {
    const { barn, carId, id, all } = winter();
    barn.store.$client
      .prepare("insert into odometer (collection_id, car_id, day, km) values (?, ?, '2026-08-01', 90000)")
      .run(barn.acting.collectionId, carId);
    const before = everythingIn(barn);
    expect(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change'), km: 87_400 }).ok).toBe(false);
    expect(tickOn(barn, id, 'park', PARKED, { km: 87_400 }).ok).toBe(false);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('of another car’s part is none of its effects', () => {
    const { barn, id, part, effects } = winter();
    expect(
      effects('oil-change')
        .map((one) => one.part.kind)
        .toSorted(),
    ).toEqual(['engine-oil', 'oil-filter']);
    must(tickOn(barn, id, 'oil-change', DAY, { effects: ['renews:no-such-part', `renews:${part('wiring').id}`] }));
    expect(part('wiring').claims).toEqual([]);
  });
});

describe('what was serviced or used', () => {
  it('gets that day on its own clock', () => {
    const { barn, id, part, all } = winter();
    must(tickOn(barn, id, 'hinges', DAY, { effects: all('hinges') }));
    must(tickOn(barn, id, 'last-drive', PARKED, { effects: all('last-drive', PARKED) }));
    must(tickOn(barn, id, 'chocks', PARKED, { effects: all('chocks', PARKED) }));
    expect(part('door-seals').claims).toMatchObject([{ clock: 'serviced', from: DAY, to: DAY }]);
    expect(part('clutch-plate').claims).toMatchObject([{ clock: 'used', from: PARKED, to: PARKED }]);
  });

  it('is nothing where wheels are only chocked: that looks at no brake', () => {
    const { barn, id, part, all } = winter();
    expect(all('chocks', PARKED)).toEqual([]);
    must(tickOn(barn, id, 'chocks', PARKED));
    expect(part('parking-brake').claims).toEqual([]);
  });
});

describe('the battery', () => {
  const PLACES = [
    ['maintainer', 'battery-maintainer', 'maintainer'],
    ['isolator', 'battery-off', 'disconnected'],
    ['out', 'battery-out', 'disconnected'],
    ['connected', 'battery-left', 'connected'],
  ] as const;

  it.each(PLACES)('%s: its step says how it is connected from then on', (side, key, connection) => {
    const { barn, id, part } = winter();
    barn.store.$client.prepare('update lay_ups set choices = ?').run(JSON.stringify({ battery: side }));
    expect(part('battery-flooded').details).not.toHaveProperty('connection');
    must(tickOn(barn, id, key, PARKED));
    expect(part('battery-flooded').details).toMatchObject({ connection });
  });

  it('and its outlook follows: kept on a maintainer it falls to nothing', () => {
    const { barn, carId, id, part } = winter();
    const battery = part('battery-flooded').id;
    must(record(barn, carId, [typed(battery, 'rest-voltage', '12.7', { day: PARKED })], PARKED));
    const outlook = () => {
      const { facts, parts } = carOf(barn, carId);
      const finding = findingsOf(facts, parts, [], '2027-01-15').find((one) => one.part.id === battery);
      return finding && explain(finding).outlook;
    };
    expect(outlook()?.days.map(({ what }) => what)).toContain('Falls to three quarters: recharge');
    must(tickOn(barn, id, 'battery-maintainer', PARKED));
    expect(outlook()?.days).toEqual([]);
    must(tickOn(barn, id, 'battery', '2027-03-30', {}, 'wake-up'));
    expect(part('battery-flooded').details).toMatchObject({ connection: 'connected' });
  });

  it('loses what a step said of it when that tick is taken back, and nothing else', () => {
    const { barn, id, part } = winter();
    setDetails(barn.store, barn.acting.collectionId, part('battery-flooded').id, { chemistry: 'calcium' });
    must(tickOn(barn, id, 'battery-maintainer', PARKED));
    expect(part('battery-flooded').details).toEqual({ chemistry: 'calcium', connection: 'maintainer' });
    must(takeBack(barn, id, 'battery-maintainer', '2026-11-03'));
    expect(part('battery-flooded').details).toEqual({ chemistry: 'calcium' });
    expect(stepOn(barn, id, 'battery-maintainer', '2026-11-03').tick).toBeNull();
  });

  it('keeps what was said of it since, when an earlier tick is taken back', () => {
    const { barn, id, part } = winter();
    const spring: CivilDate = '2027-03-30';
    must(tickOn(barn, id, 'battery-maintainer', PARKED));
    must(tickOn(barn, id, 'battery', spring, {}, 'wake-up'));
    must(takeBack(barn, id, 'battery-maintainer', spring));
    expect(part('battery-flooded').details).toEqual({ connection: 'connected' });
    must(takeBack(barn, id, 'battery', spring, 'wake-up'));
    expect(part('battery-flooded').details).toEqual({});
  });

  it('keeps what somebody answered, when a step is no longer left out', () => {
    const { barn, id, part } = winter();
    setDetails(barn.store, barn.acting.collectionId, part('battery-flooded').id, { connection: 'maintainer' });
    const step = () => stepOn(barn, id, 'battery-maintainer', PARKED);
    must(
      skipStep(barn.store, { ...barn.acting, today: PARKED }, stayIn(barn, id, PARKED), step(), 'lay-up', 'Always on'),
    );
    must(takeBack(barn, id, 'battery-maintainer', PARKED));
    expect(step().tick).toBeNull();
    expect(part('battery-flooded').details).toEqual({ connection: 'maintainer' });
  });

  it('is not said anew by a late tick, where a step of a later day said it', () => {
    const { barn, id, part } = winter();
    const spring: CivilDate = '2027-03-30';
    must(tickOn(barn, id, 'battery', spring, {}, 'wake-up'));
    must(tickOn(barn, id, 'battery-maintainer', '2027-03-31', { day: PARKED }));
    expect(part('battery-flooded').details).toMatchObject({ connection: 'connected' });
  });

  it('of a stay that is over stays as it was said', () => {
    const { barn, id, part } = winter();
    must(tickOn(barn, id, 'battery-maintainer', PARKED));
    must(closeOn(barn, id, '2027-03-28'));
    const before = everythingIn(barn);
    expect(fields(takeBack(barn, id, 'battery-maintainer', '2027-04-02'))).toEqual(['day']);
    expect(everythingIn(barn)).toEqual(before);
    expect(part('battery-flooded').details).toEqual({ connection: 'maintainer' });
  });

  it('read as it is put away keeps its reading; one that can’t be keeps nothing of the whole tick', () => {
    const { barn, id, part } = winter();
    const battery = part('battery-flooded').id;
    const before = everythingIn(barn);
    const read = (text: string) => [typed(battery, 'rest-voltage', text, { day: PARKED })];
    expect(fields(tickOn(barn, id, 'battery-maintainer', PARKED, { readings: read('127') }))).toEqual([
      'rest-voltage typed',
    ]);
    expect(everythingIn(barn)).toEqual(before);
    must(tickOn(barn, id, 'battery-maintainer', PARKED, { readings: read('12.7') }));
    expect(part('battery-flooded').readings).toMatchObject([{ gauge: 'rest-voltage', value: 12.7, day: PARKED }]);
  });
});

describe('parking it', () => {
  it('puts the car into its place and keeps the odometer', () => {
    const { barn, carId, id } = winter();
    expect(carOf(barn, carId).place).toBeUndefined();
    must(tickOn(barn, id, 'park', '2026-11-02', { day: PARKED, km: 87_400 }));
    expect(carOf(barn, carId).facts).toMatchObject({
      place: { name: 'Garage' },
      placedOn: PARKED,
      odometer: [{ day: PARKED, km: 87_400 }],
    });
  });

  it('where nobody has said where leaves the car where it is', () => {
    const { barn, carId } = winterBarn();
    const id = layUpIn(barn, carId);
    must(tickOn(barn, id, 'park', PARKED));
    expect(carOf(barn, carId).place).toBeUndefined();
  });

  it('keeps pressures of all tires, or none', () => {
    const { barn, id, part } = winter();
    const corners = ['front left', 'front right', 'rear left', 'rear right'];
    const read = (last: string) =>
      corners.map((corner, n) =>
        typed(part('tires-road', corner).id, 'cold-pressure', n === 3 ? last : '3.0', { day: PARKED, unit: 'bar' }),
      );
    const before = everythingIn(barn);
    expect(fields(tickOn(barn, id, 'pressure', PARKED, { readings: read('much') }))).toEqual(['cold-pressure typed']);
    expect(everythingIn(barn)).toEqual(before);
    must(tickOn(barn, id, 'pressure', PARKED, { readings: read('2.9') }));
    expect(corners.map((corner) => part('tires-road', corner).readings[0]?.value)).toEqual([3, 3, 3, 2.9]);
  });
});

describe('leaving a step out', () => {
  const skip = ({ barn, id }: ReturnType<typeof winter>, key: string, reason: string) =>
    skipStep(
      barn.store,
      { ...barn.acting, today: DAY },
      stayIn(barn, id, DAY),
      stepOn(barn, id, key, DAY),
      'lay-up',
      reason,
    );

  it('wants a reason', () => {
    const made = winter();
    expect(fields(skip(made, 'wax', ''))).toEqual(['reason']);
    expect(stepOn(made.barn, made.id, 'wax', DAY).tick).toBeNull();
    must(skip(made, 'wax', 'It is <wrapped>'));
    expect(stepOn(made.barn, made.id, 'wax', DAY).tick).toMatchObject({
      state: 'skipped',
      day: DAY,
      note: 'It is <wrapped>',
      by: 'Ada',
    });
  });

  it('changes no record, and comes back as work in spring as if it was forgotten', () => {
    const made = winter();
    const { barn, id } = made;
    const records = () => {
      const { ticks, ...others } = everythingIn(barn);
      return others;
    };
    const before = records();
    must(skip(made, 'chocks', 'The floor is level'));
    must(skip(made, 'oil-change', 'In spring'));
    expect(records()).toEqual(before);
    const spring = keysOf(planIn(barn, id, '2027-03-20', 'wake-up'));
    expect(spring).toEqual(expect.arrayContaining(['brake-stuck', 'oil']));
  });

  it('is another thing than doing it: done in autumn it is no work in spring', () => {
    const { barn, id, all } = winter();
    must(tickOn(barn, id, 'chocks', PARKED));
    must(tickOn(barn, id, 'oil-change', DAY, { effects: all('oil-change') }));
    must(tickOn(barn, id, 'brake-fluid', DAY, { effects: all('brake-fluid') }));
    const spring = keysOf(planIn(barn, id, '2027-03-20', 'wake-up'));
    expect(spring).toContain('first-start');
    for (const key of ['brake-stuck', 'oil', 'brake-fluid']) expect(spring, key).not.toContain(key);
  });
});

describe('the way back', () => {
  it('renews fuel and oil with the day of spring', () => {
    const { barn, id, part, all } = winter();
    const on: CivilDate = '2027-03-27';
    must(tickOn(barn, id, 'fuel-drain', on, { effects: all('fuel-drain', on, 'wake-up') }, 'wake-up'));
    must(tickOn(barn, id, 'oil', on, { effects: all('oil', on, 'wake-up') }, 'wake-up'));
    expect(part('fuel-gasoline').claims).toMatchObject([{ clock: 'filled', from: on }]);
    expect(part('engine-oil').claims).toMatchObject([{ clock: 'filled', from: on }]);
  });

  it('of an open stay is ticked as if it ended today', () => {
    const { barn, carId } = winterBarn();
    const id = layUpIn(barn, carId, { returnOn: '' });
    const spring = onDayIn(barn, '2027-05-02');
    must(tickOn(spring, id, 'cover-off', '2027-05-02', {}, 'wake-up'));
    expect(stepOn(spring, id, 'cover-off', '2027-05-03', 'wake-up').tick?.day).toBe('2027-05-02');
  });
});
