import { describe, expect, it } from 'vitest';
import { changeLayUpAct, chooseSide, type LayUpGiven } from '../../src/acts/lay-up.ts';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import { isSilent } from '../../src/plans/standing.ts';
import { changeMember } from '../../src/store/people.ts';
import { setDetails } from '../../src/store/readings.ts';
import { type Barn, claim, date, must, partOf } from '../support/cars.ts';
import {
  BACK,
  closeOn,
  layUpGiven,
  layUpIn,
  lettersTo,
  onDayIn,
  PARKED,
  PLANNED,
  personIn,
  placeIn,
  planIn,
  roundOn,
  stayIn,
  sweepOn,
  sweptOn,
  tellOn,
  tickOn,
  titleOf,
  winterBarn,
} from '../support/lay-ups.ts';
import { record, typed } from '../support/readings.ts';

const ADA = 'ada@example.org';
const BRAM = 'bram@example.org';
const GOOD = { smell: 'none', mice: 'none', drips: 'none', wet: 'dry', tires: 'full' };

/** The titles a letter tells of the lay-up, without their days. */
const told = (text: string | undefined): string[] =>
  [...(text ?? '').matchAll(/^\[(?:Lay-up|Wake-up|Round|While it stands|Found|Return)\] (.*)$/gm)].map(
    ([, title]) => title ?? '',
  );
const STEP = /^\d+ \w+ 20\d\d: /;
const about = (text: string | undefined, words: string): string[] => told(text).filter((one) => one.includes(words));

/** A winter whose plan was told, ticked off as far as steps go; nothing else of the car has a date. */
const winter = (more: Partial<LayUpGiven> = {}, { ticked = true } = {}) => {
  const { barn, carId, placeId } = winterBarn();
  const id = layUpIn(barn, carId, { place: placeId, ...more });
  tellOn(barn, id, PLANNED);
  if (ticked)
    for (const { key } of planIn(barn, id, PARKED).steps)
      must(tickOn(barn, id, key, more.parkedOn ? PLANNED : PARKED, { day: PLANNED }));
  return { barn, carId, placeId, id };
};
const change = (barn: Barn, id: string, on: CivilDate, more: Partial<LayUpGiven>): void => {
  must(changeLayUpAct(barn.store, { ...barn.acting, today: on }, stayIn(barn, id, on), layUpGiven(more)));
};
const readBattery = (barn: Barn, carId: string, on: CivilDate, volts: string): void => {
  const { id } = partOf(barn, carId, 'battery-flooded');
  must(record(barn, carId, [typed(id, 'rest-voltage', volts, { day: on })], on));
};

type Letters = [day: CivilDate, text: string][];

/** The letters to a person of sweeps on some days. */
const sweptThrough = (barn: Barn, days: readonly CivilDate[], who = ADA): Letters =>
  days.flatMap((day): Letters => {
    const text = sweptOn(barn, day)[who];
    return text ? [[day, text]] : [];
  });
/** A sweep every so many days. */
const from = (first: CivilDate, last: CivilDate, every = 1): CivilDate[] =>
  Array.from({ length: Math.floor(daysBetween(first, last) / every) + 1 }, (_, n) => addDays(first, n * every));
/** The day itself, the days about it, and a week later. */
const round = (...days: CivilDate[]): CivilDate[] => days.flatMap((day) => [-1, 0, 1, 7].map((n) => addDays(day, n)));
const saying = (letters: Letters, words: string): CivilDate[] =>
  letters.flatMap(([day, text]) => (about(text, words).length > 0 ? [day] : []));

describe('steps of a lay-up', () => {
  it('are told three days before their day, all in one digest, and once', () => {
    const { barn, id } = winter({}, { ticked: false });
    expect(sweptOn(barn, '2026-09-16')).toEqual({});
    const [letter, ...others] = Object.entries(sweptOn(barn, '2026-09-17'));
    expect(others).toEqual([]);
    expect(letter?.[0]).toBe(ADA);
    expect(told(letter?.[1])).toEqual([
      `20 September 2026: ${titleOf('settle-place')}`,
      `20 September 2026: ${titleOf('settle-running')}`,
      `20 September 2026: ${titleOf('measure-humidity')}`,
      `20 September 2026: ${titleOf('book-lift')}`,
    ]);
    expect(letter?.[1]).toContain(`https://barn.example.org/cars-here/lay-ups/${id}/steps/book-lift`);
    for (const day of ['2026-09-17', '2026-09-18', '2026-09-20', '2026-09-23'] as const)
      expect(sweptOn(barn, day), day).toEqual({});
  });

  it('stand in the same letter as news of parts', () => {
    const { barn, carId } = winter({}, { ticked: false });
    date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
    const written = sweptOn(barn, '2026-09-17');
    expect(Object.keys(written)).toEqual([ADA]);
    expect(told(written[ADA])).toHaveLength(4);
    expect(written[ADA]).toContain('[Past] Spark plugs');
    expect(lettersTo(barn, ADA).at(-1)?.subject).toBe('4 lay-up steps; 1 past: Merle Tourer');
  });

  it('that were ticked or left out are told no more', () => {
    const { barn, id } = winter({}, { ticked: false });
    for (const key of ['settle-place', 'settle-running']) must(tickOn(barn, id, key, '2026-09-12'));
    must(tickOn(barn, id, 'book-lift', '2026-09-12'));
    expect(told(sweptOn(barn, '2026-09-17')[ADA])).toEqual([`20 September 2026: ${titleOf('measure-humidity')}`]);
  });

  it('are told again when the parking day moves on, and not when it comes nearer', () => {
    const { barn, id, placeId } = winter({}, { ticked: false });
    expect(told(sweptOn(barn, '2026-09-17')[ADA])).toHaveLength(4);
    change(barn, id, '2026-09-18', { place: placeId, parkedOn: '2026-11-08' });
    expect(sweptOn(barn, '2026-09-18')).toEqual({});
    expect(told(sweptOn(barn, '2026-09-24')[ADA])).toEqual([
      `27 September 2026: ${titleOf('settle-place')}`,
      `27 September 2026: ${titleOf('settle-running')}`,
      `27 September 2026: ${titleOf('measure-humidity')}`,
      `27 September 2026: ${titleOf('book-lift')}`,
    ]);
    change(barn, id, '2026-09-25', { place: placeId, parkedOn: '2026-11-07' });
    expect(told(sweptOn(barn, '2026-09-25')[ADA])).toEqual([]);
  });

  it('of a stay that began long ago are never told', () => {
    const { barn, carId, placeId } = winterBarn();
    const late = onDayIn(barn, '2027-01-20');
    const id = layUpIn(late, carId, { place: placeId });
    tellOn(late, id, '2027-01-20');
    const letters = sweptThrough(late, from('2027-01-20', '2027-02-08', 4));
    expect(letters.length).toBeGreaterThan(0);
    expect(letters.flatMap(([, text]) => told(text)).filter((title) => STEP.test(title))).toEqual([]);
  });

  it('of the wake-up begin a month before it comes back', () => {
    const { barn } = winter();
    sweepOn(barn, '2027-02-20');
    const march = sweptThrough(barn, [...round('2027-03-01'), ...from('2027-03-20', '2027-03-24')]);
    const steps = march.flatMap(([day, text]) =>
      told(text).flatMap((title) => (STEP.test(title) ? [[day, title]] : [])),
    );
    expect(steps[0]).toEqual(['2027-03-01', `4 March 2027: ${titleOf('order-tires', 'wake-up')}`]);
    expect(steps).toContainEqual(['2027-03-22', `25 March 2027: ${titleOf('cover-off', 'wake-up')}`]);
    expect(steps.map(([, title]) => title)).toEqual([...new Set(steps.map(([, title]) => title))]);
  });
});

describe('the round', () => {
  it('is told on its day to who looks in and to nobody else, even without letters of their own', () => {
    const { barn, carId, placeId } = winterBarn();
    const visitor = personIn(barn, 'Bram', BRAM, false);
    const id = layUpIn(barn, carId, { place: placeId, visitor });
    tellOn(barn, id, PLANNED);
    for (const { key } of planIn(barn, id, PARKED).steps) must(tickOn(barn, id, key, PARKED, { day: PLANNED }));
    readBattery(barn, carId, PARKED, '12.7');
    const fuel = date(barn, carId, 'fuel-gasoline', claim('filled', '1 September 2026'));
    setDetails(barn.store, barn.acting.collectionId, fuel, { blend: 'e10', stabilized: 'yes', fullness: 95 });
    expect(sweptOn(barn, '2026-11-30')[BRAM]).toBeUndefined();
    const day = sweptOn(barn, '2026-12-01');
    expect(Object.keys(day)).toEqual([BRAM]);
    expect(told(day[BRAM])).toEqual(['The round of 1 December 2026: ten minutes at the car']);
    expect(day[BRAM]).toContain(`https://barn.example.org/cars-here/lay-ups/${id}/round`);
    expect(sweptOn(barn, '2026-12-02')).toEqual({});
  });

  it('goes to the owner where who looks in has no address, or nobody is named', () => {
    for (const email of [null, 'nobody is named']) {
      const { barn, carId, placeId } = winterBarn();
      const visitor = email === null ? personIn(barn, 'Nell', null, false) : '';
      const id = layUpIn(barn, carId, { place: placeId, visitor });
      tellOn(barn, id, PLANNED);
      sweepOn(barn, '2026-11-20');
      const { letters, withoutAddress } = sweepOn(barn, '2026-12-01');
      expect(letters.map(({ to }) => to)).toEqual([ADA]);
      expect(withoutAddress).toEqual(email === null ? ['Nell'] : []);
      expect(about(lettersTo(barn, ADA).at(-1)?.text, 'The round of 1 December 2026')).toHaveLength(1);
    }
  });

  it('made in time is not asked for', () => {
    const { barn, id } = winter();
    must(roundOn(barn, id, '2026-11-28', GOOD));
    expect(saying(sweptThrough(barn, ['2026-11-29', ...round('2026-12-01'), '2026-12-20']), 'The round of')).toEqual(
      [],
    );
    // Nothing hides it but that: the next one is.
    expect(saying(sweptThrough(barn, ['2027-01-01']), 'The round of')).toEqual(['2027-01-01']);
  });

  it('after days without a sweep is the last that came due, and the missed ones are named', () => {
    const { barn } = winter();
    const written = sweptOn(barn, '2027-02-05');
    expect(about(written[ADA], 'The round of')).toEqual(['The round of 1 February 2027: ten minutes at the car']);
    expect(written[ADA]).toContain('Missed so far: 1 December 2026; 1 January 2027.');
    expect(sweptThrough(barn, from('2027-02-05', '2027-02-10'))).toEqual([]);
  });

  it('that nobody made is told to the owner, once, and not to who should have', () => {
    const { barn, carId, placeId } = winterBarn();
    const visitor = personIn(barn, 'Bram', BRAM, false);
    const id = layUpIn(barn, carId, { place: placeId, visitor });
    tellOn(barn, id, PLANNED);
    for (const { key } of planIn(barn, id, PARKED).steps) must(tickOn(barn, id, key, PARKED, { day: PLANNED }));
    const missed: [CivilDate, string][] = [];
    for (const day of ['2026-12-01', ...round('2026-12-22'), '2027-01-01', ...round('2027-01-22')] as CivilDate[])
      for (const [who, text] of Object.entries(sweptOn(barn, day)))
        if (about(text, 'Nobody has made the round').length > 0) missed.push([day, who]);
    // Until ten days before the next it could still be made.
    expect(missed).toEqual([
      ['2026-12-22', ADA],
      ['2027-01-22', ADA],
    ]);
  });

  it('is told again in the next month', () => {
    const { barn } = winter();
    const days = round('2026-12-01', '2027-01-01', '2027-02-01', '2027-03-01');
    expect(saying(sweptThrough(barn, days), 'The round of')).toEqual([
      '2026-12-01',
      '2027-01-01',
      '2027-02-01',
      '2027-03-01',
    ]);
  });
});

describe('what a round found', () => {
  it('is told to the owner with what to do, once, and anew when it is found anew', () => {
    const { barn, id } = winter();
    sweepOn(barn, '2026-11-30');
    must(roundOn(barn, id, '2026-12-01', { ...GOOD, mice: 'traces' }));
    const letters = sweptThrough(barn, from('2026-12-01', '2026-12-10', 3));
    expect(letters.map(([day, text]) => [day, about(text, 'Found on')])).toEqual([
      ['2026-12-01', ['Found on 1 December 2026: droppings, nests, traps: droppings or a nest']],
    ]);
    expect(letters[0]?.[1]).toContain('Take the nest out, close the holes');
    must(roundOn(barn, id, '2026-12-28', GOOD));
    must(roundOn(barn, id, '2027-01-30', { ...GOOD, mice: 'traces' }));
    expect(saying(sweptThrough(barn, ['2026-12-28', '2027-01-15', ...round('2027-01-30')]), 'Found on')).toEqual([
      '2027-01-30',
    ]);
  });
});

describe('a car that stands', () => {
  /** With plugs long past, a brake fluid that falls due in winter, a coolant and a battery of some age. */
  const oldWinter = () => {
    const made = winter();
    const { barn, carId } = made;
    date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 February 2025'));
    date(barn, carId, 'coolant-iat', claim('filled', '15 January 2025'));
    return made;
  };
  const partsIn = (letters: Letters): [CivilDate, string][] =>
    letters.flatMap(([day, text]) =>
      [...text.matchAll(/^\[[^\]]*\] ((?:Spark|Brake|Coolant|Battery|Road tire)[^\n]*)$/gm)].map(
        ([, title]): [CivilDate, string] => [day, title ?? ''],
      ),
    );

  it('is told before it is parked what is past, and while it stands only what can’t wait', () => {
    const { barn } = oldWinter();
    const before = partsIn(sweptThrough(barn, ['2026-10-20', '2026-10-31']));
    expect(before.map(([, title]) => title)).toContain('Spark plugs');
    const standing = partsIn(sweptThrough(barn, from(PARKED, '2027-03-31', 6)));
    const titles = new Set(standing.map(([, title]) => title));
    expect([...titles]).toEqual([expect.stringMatching(/^Coolant/)]);
  });

  it('does not wait with what was read', () => {
    const { barn, carId } = oldWinter();
    sweepOn(barn, PARKED);
    readBattery(barn, carId, '2026-12-03', '12.2');
    const tire = partOf(barn, carId, 'tires-road', 'front left').id;
    setDetails(barn.store, barn.acting.collectionId, tire, { placard: 2.2 });
    must(record(barn, carId, [typed(tire, 'cold-pressure', '0.9', { day: '2026-12-03', sure: true })], '2026-12-03'));
    const titles = partsIn(sweptThrough(barn, ['2026-12-04', '2026-12-05'])).map(([, title]) => title);
    expect(titles).toEqual(expect.arrayContaining([expect.stringMatching(/^Battery/), 'Road tire, front left']));
  });

  it('closed, is told what was kept quiet, once', () => {
    const { barn, id } = oldWinter();
    const before = partsIn(sweptThrough(barn, ['2026-10-30', ...from(PARKED, '2027-03-27', 20), '2027-03-27']));
    // Due since December, past since February: all that was told of it is what it asked for before it stood.
    expect(before.filter(([, title]) => title.startsWith('Brake fluid')).map(([day]) => day)).toEqual(['2026-10-30']);
    must(closeOn(barn, id, '2027-03-28'));
    const after = partsIn(sweptThrough(barn, from('2027-03-28', '2027-04-04')));
    expect(after.filter(([, title]) => title.startsWith('Brake fluid'))).toEqual([
      ['2027-03-28', 'Brake fluid, glycol (DOT 3, 4, 5.1)'],
    ]);
    // Told before it was parked, and nothing new since.
    expect(after.map(([, title]) => title)).not.toContain('Spark plugs');
  });

  it('called off, is heard again from that day, and of its steps no more is told', () => {
    const { barn, carId, placeId } = winterBarn();
    const id = layUpIn(barn, carId, { place: placeId });
    tellOn(barn, id, PLANNED);
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '10 December 2024'));
    const fluid = 'Brake fluid, glycol (DOT 3, 4, 5.1)';
    expect(partsIn(sweptThrough(barn, ['2026-11-02', '2026-12-19'])).map(([, title]) => title)).not.toContain(fluid);
    must(closeOn(barn, id, '2026-12-20', 'called off'));
    const after = sweptThrough(barn, ['2026-12-20', ...from('2026-12-21', '2027-04-10', 10)]);
    expect(partsIn(after)[0]).toEqual(['2026-12-20', fluid]);
    expect(after.flatMap(([, text]) => told(text))).toEqual([]);
  });

  it('is told its return a month ahead, once, with how much was kept quiet', () => {
    const { barn } = oldWinter();
    const letters = sweptThrough(barn, [PARKED, ...round('2027-03-01'), '2027-04-01']).filter(
      ([, text]) => about(text, 'It comes back on').length > 0,
    );
    expect(letters.map(([day]) => day)).toEqual(['2027-03-01']);
    expect(about(letters[0]?.[1], 'It comes back on')).toEqual(['It comes back on 1 April 2027']);
    expect(letters[0]?.[1]).toMatch(/\d+ parts past or due by their dates/);
  });

  it('overdue by two weeks is asked after, once a month', () => {
    const { barn } = winter();
    sweepOn(barn, BACK);
    const days = ['2027-04-02', ...round('2027-04-15', '2027-05-15', '2027-06-15')] as CivilDate[];
    expect(saying(sweptThrough(barn, days), 'It was to come back')).toEqual(['2027-04-15', '2027-05-15', '2027-06-15']);
  });
});

describe('a stay nobody ends', () => {
  it('and in which nobody ticks anything has its ordinary letters again, and is asked after every month', {
    timeout: 60_000,
  }, () => {
    const { barn, carId, id } = winter({}, { ticked: false });
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 February 2025'));
    date(barn, carId, 'engine-oil', claim('filled', '1 September 2026'));
    const winterDays = [
      '2026-09-20',
      '2026-10-28',
      PARKED,
      ...from('2026-12-01', '2027-04-14', 15),
      '2027-04-14',
    ] as const;
    const silent = sweptThrough(barn, winterDays);
    // Said for the first time; what can hurt somebody is told again each month after that.
    const fluid = (letters: Letters): CivilDate[] =>
      letters.flatMap(([day, text]) => (/^\[[^\]]*\] Brake fluid[^\n]*\n(?! *Told on)/m.test(text) ? [day] : []));
    expect(fluid(silent).filter((day) => day >= PARKED)).toEqual([]);
    expect(saying(silent, 'nobody has closed the lay-up')).toEqual([]);
    // Two weeks after the day it was to be back the silence ends by itself, and then two years go by.
    const asked = from('2027-04-15', '2029-04-20').filter((day) => /-(15|16|28)$/.test(day));
    const after = sweptThrough(barn, asked);
    expect(fluid(after)).toEqual(['2027-04-15']);
    expect(saying(after, 'nobody has closed the lay-up')).toEqual(asked.filter((day) => day.endsWith('-15')));
    expect(saying(after, 'nobody has closed the lay-up')).toHaveLength(25);
    // What comes of age long after is told on its day as of any other car.
    const oil = after.flatMap(([day, text]) => (/^\[Past\] Engine oil/m.test(text) ? [day] : []));
    expect(oil).toEqual([expect.stringMatching(/^2027-(09|1)|^2028/)]);
    expect(after.flatMap(([, text]) => told(text)).filter((title) => STEP.test(title))).toEqual([]);
    expect(after.flatMap(([, text]) => about(text, 'The round of'))).toEqual([]);
    expect(isSilent(stayIn(barn, id, '2027-04-14').view)).toBe(true);
    expect(isSilent(stayIn(barn, id, '2029-04-20').view)).toBe(false);
    // Once somebody closes it, nobody is asked any more.
    must(closeOn(barn, id, '2029-04-20', 'back', '2027-04-01'));
    expect(saying(sweptThrough(barn, ['2029-05-15', '2029-06-15']), 'nobody has closed')).toEqual([]);
  });

  it('given a later day is silent again, and asked after anew from that day', () => {
    const { barn, id, placeId } = winter();
    expect(saying(sweptThrough(barn, ['2027-04-15', '2027-04-20']), 'nobody has closed')).toEqual(['2027-04-15']);
    change(barn, id, '2027-04-21', { place: placeId, returnOn: '2027-06-01' });
    expect(isSilent(stayIn(barn, id, '2027-05-20').view)).toBe(true);
    expect(
      saying(sweptThrough(barn, ['2027-05-15', '2027-06-14', '2027-06-15', '2027-06-16']), 'nobody has closed'),
    ).toEqual(['2027-06-15']);
  });
});

describe('who looks in and can’t be written to', () => {
  it('is named with every round that should have gone to them, and on no other day', () => {
    const { barn, carId, placeId } = winterBarn();
    const id = layUpIn(barn, carId, { place: placeId, visitor: personIn(barn, 'Nell', null, false) });
    tellOn(barn, id, PLANNED);
    const without = (day: CivilDate) => sweepOn(barn, day).withoutAddress;
    expect(without('2026-09-20')).toEqual([]);
    expect(without('2026-11-30')).toEqual([]);
    expect(without('2026-12-01')).toEqual(['Nell']);
    must(roundOn(barn, id, '2026-12-02', GOOD));
    expect(without('2026-12-03')).toEqual([]);
    expect(without('2027-01-01')).toEqual(['Nell']);
  });

  it('is not named where they have an address', () => {
    const { barn, carId, placeId } = winterBarn();
    const id = layUpIn(barn, carId, { place: placeId, visitor: personIn(barn, 'Bram', BRAM, false) });
    tellOn(barn, id, PLANNED);
    expect(sweepOn(barn, '2026-12-01').withoutAddress).toEqual([]);
  });
});

describe('what is still open on the parking day', () => {
  it('is told on that day, once', () => {
    const { barn } = winter({}, { ticked: false });
    const letters = sweptThrough(barn, ['2026-09-20', ...from('2026-10-25', '2026-11-20')]);
    expect(saying(letters, 'Still open before it stands')).toEqual([PARKED]);
  });

  it('is told nobody where it was all ticked', () => {
    const { barn } = winter();
    expect(saying(sweptThrough(barn, from('2026-10-31', '2026-11-05')), 'Still open')).toEqual([]);
  });
});

describe('warnings', () => {
  it('of the battery come on the last visit before it falls, to owner and visitor, once', () => {
    const { barn, carId, placeId } = winterBarn();
    const visitor = personIn(barn, 'Bram', BRAM, false);
    const id = layUpIn(barn, carId, { place: placeId, visitor });
    tellOn(barn, id, PLANNED);
    const battery = partOf(barn, carId, 'battery-flooded').id;
    const details = { chemistry: 'calcium', capacity: 100, drain: 8, connection: 'connected' };
    setDetails(barn.store, barn.acting.collectionId, battery, details);
    readBattery(barn, carId, PARKED, '12.75');
    const heard: Record<string, CivilDate[]> = { [ADA]: [], [BRAM]: [] };
    for (const day of [PARKED, ...round('2026-12-01', '2027-01-01'), '2027-01-20'] as CivilDate[])
      for (const [who, text] of Object.entries(sweptOn(barn, day)))
        if (about(text, 'three quarters').length > 0) heard[who]?.push(day);
    // The round of 1 January is the last before it falls in January.
    expect(heard).toEqual({ [ADA]: ['2027-01-01'], [BRAM]: ['2027-01-01'] });
  });

  it('of a battery that was charged and read again are over', () => {
    const { barn, carId, id } = winter();
    setDetails(barn.store, barn.acting.collectionId, partOf(barn, carId, 'battery-flooded').id, {
      chemistry: 'calcium',
      capacity: 60,
      drain: 30,
      connection: 'connected',
    });
    readBattery(barn, carId, PARKED, '12.7');
    const keys = (on: CivilDate) => stayIn(barn, id, on).view.warnings.map(({ key }) => key);
    expect(keys('2026-11-30')).toContain('battery-recharge');
    const details = { chemistry: 'calcium', capacity: 60, drain: 30, connection: 'disconnected' };
    setDetails(barn.store, barn.acting.collectionId, partOf(barn, carId, 'battery-flooded').id, details);
    readBattery(barn, carId, '2026-12-01', '12.75');
    expect(keys('2026-12-01')).not.toContain('battery-recharge');
  });

  it('of fuel come once it is getting old and once it is over, unless the tank was drained', () => {
    const fueled = (drained: boolean): Letters => {
      const { barn, carId, id } = winter({ returnOn: '' }, { ticked: false });
      date(barn, carId, 'fuel-gasoline', claim('filled', '1 September 2026'));
      const fuel = partOf(barn, carId, 'fuel-gasoline').id;
      setDetails(barn.store, barn.acting.collectionId, fuel, { blend: 'e10', stabilized: 'no', fullness: 95 });
      must(chooseSide(barn.store, barn.acting, stayIn(barn, id), 'tank', 'drained'));
      if (drained) must(tickOn(barn, id, 'drain-tank', PARKED));
      return sweptThrough(barn, from(PARKED, '2027-05-31', 10));
    };
    const full = fueled(false);
    // E10 without stabilizer: three months to a doubt, six to an end, longer while it is cold.
    expect(saying(full, 'The fuel has been getting old')).toEqual([expect.stringMatching(/^2026-12|^2027-01/)]);
    expect(saying(full, 'By its age the fuel has been over')).toEqual([expect.stringMatching(/^2027-0[345]/)]);
    expect(saying(fueled(true), 'fuel has been')).toEqual([]);
  });

  it('of a policy come 30 days before it ends, once', () => {
    const papers = { storageFrom: '', roadUntil: '', noticeFrom: '', renewsOn: '2027-02-10', rules: '' };
    const { barn } = winter({ papers });
    expect(saying(sweptThrough(barn, [PARKED, ...round('2027-01-11'), '2027-02-11']), 'The policy')).toEqual([
      '2027-01-11',
    ]);
  });

  it('of nine months and a year come to an open stay, once each', () => {
    const { barn } = winter({ returnOn: '' });
    const letters = sweptThrough(barn, round('2027-08-01', '2027-11-01'));
    expect(saying(letters, 'It has stood nine months')).toEqual(['2027-08-01']);
    expect(saying(letters, 'It has stood a year')).toEqual(['2027-11-01']);
  });
});

describe('sweeping', () => {
  it('twice on a day, and as on a day gone by, says nothing twice', () => {
    const { barn, carId } = winter({}, { ticked: false });
    readBattery(barn, carId, PARKED, '12.7');
    for (const day of ['2026-09-20', PARKED, '2026-12-01', '2027-03-05'] as const) {
      sweepOn(barn, day);
      expect(sweptOn(barn, day), day).toEqual({});
    }
    expect(sweptOn(barn, '2026-12-01', { clock: '2027-03-05' })).toEqual({});
  });

  it('ahead of time does not silence the days before', () => {
    const { barn } = winter();
    const asked = sweptOn(barn, '2027-02-01', { clock: '2026-11-25' });
    expect(about(asked[ADA], 'The round of 1 February 2027')).toHaveLength(1);
    expect(about(sweptOn(barn, '2026-12-01')[ADA], 'The round of 1 December 2026')).toHaveLength(1);
    // On its own day it was said already.
    expect(about(sweptOn(barn, '2027-02-01')[ADA], 'The round of 1 February 2027')).toHaveLength(0);
  });

  it('as a dry run writes nothing and says what it would', () => {
    const { barn } = winter();
    const before = lettersTo(barn).length;
    const dry = sweepOn(barn, '2026-12-01', { dryRun: true });
    expect(lettersTo(barn)).toHaveLength(before);
    expect(sweepOn(barn, '2026-12-01')).toEqual(dry);
    expect(dry.letters).toHaveLength(1);
  });

  it('through a whole winter tells every matter once', { timeout: 60_000 }, () => {
    const { barn, carId } = winter({}, { ticked: false });
    readBattery(barn, carId, PARKED, '12.7');
    const titles = sweptThrough(barn, from(PLANNED, '2027-04-10', 2)).flatMap(([, text]) => told(text));
    expect(titles.length).toBeGreaterThan(60);
    expect(titles.filter((title, n) => titles.indexOf(title) !== n)).toEqual([]);
  });

  it('tells a lay-up to its own collection alone', () => {
    const { barn } = winter();
    const letters = sweptOn(barn, '2026-12-01');
    expect(Object.keys(letters)).toEqual([ADA]);
    changeMember(barn.store, barn.acting.collectionId, barn.acting.personId, {
      name: 'Ada',
      email: ADA,
      dateOrder: 'ask',
      letters: false,
    });
    expect(sweptOn(barn, '2027-01-01')).toEqual({});
  });

  it('names the place where a plan goes out late', () => {
    const { barn, id } = winter({}, { ticked: false });
    expect(stayIn(barn, id).place?.name).toBe('Garage');
    personIn(barn, 'Nell', 'nell@example.org', true);
    placeIn(barn, 'Other');
    expect(sweptOn(barn, '2026-09-12')['nell@example.org']).toContain('it stands in “Garage”');
  });
});
