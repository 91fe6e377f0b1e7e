/** Whatever days the server was up: each person hears the same, each thing once, and what can hurt until it is answered. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renewPart } from '../../src/acts/parts.ts';
import { sweepCollection } from '../../src/acts/sweep.ts';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import { STANDINGS } from '../../src/findings/standing.ts';
import { siteAt } from '../../src/links.ts';
import type { Answer } from '../../src/notices/answers.ts';
import { owed, type Said, type Stage } from '../../src/notices/owed.ts';
import { addMember, changeMember, findCollection } from '../../src/store/people.ts';
import { dayBetween } from '../support/arbitraries.ts';
import { type Barn, carIn, carOf, claim, date, must, openBarn, partOf } from '../support/cars.ts';
import { dated, finding, kindOf } from '../support/parts.ts';

const FIRST: CivilDate = '2027-01-01';
const LAST: CivilDate = '2029-12-31';
const LENGTH = daysBetween(FIRST, LAST);

/** Parts that come of age at some time within those years, and some long before. */
const anyParts = fc.array(
  fc.record({
    kind: fc.constantFrom('tires-road', 'brake-fluid-glycol', 'engine-oil', 'spark-plugs', 'v-belt', 'harness-fia'),
    begun: dayBetween('2015-01-01', '2029-06-30'),
    width: fc.oneof(fc.constant(0), fc.nat(700)),
  }),
  { minLength: 1, maxLength: 4 },
);
type Parts = readonly { kind: string; begun: CivilDate; width: number }[];

/** The days the server is up: any, with gaps of any length; the last day always. */
const anyWalk = fc
  .array(fc.oneof(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 400 })), { minLength: 1, maxLength: 60 })
  .map((gaps) => {
    const days = new Set<number>([LENGTH]);
    let day = 0;
    for (const gap of gaps) {
      day += gap;
      if (day < LENGTH) days.add(day);
    }
    return [...days].sort((a, b) => a - b).map((n) => addDays(FIRST, n));
  });

const findingsOn = (parts: Parts, on: CivilDate) =>
  parts.map(({ kind, begun, width }, n) =>
    finding(kind, [dated(kindOf(kind).clock, begun, addDays(begun, width))], on, { part: { id: `part-${n}` } }),
  );

/** What was said on a walk: part, stage, day. */
const walk = (parts: Parts, days: readonly CivilDate[]): Said[] => {
  const said: Said[] = [];
  for (const on of days)
    for (const { part, told } of owed(
      findingsOn(parts, on),
      Map.groupBy(said, ({ partId }) => partId),
      undefined,
      FIRST,
    ))
      for (const stage of told) said.push({ partId: part.id, stage, saidOn: on });
  return said;
};

/** The gravest standing said of each part since it last was in date. */
const highest = (said: readonly Omit<Said, 'saidOn'>[]): string[] => {
  const rank = (stage: string): number => (STANDINGS as readonly string[]).indexOf(stage);
  const byPart = Map.groupBy(said, ({ partId }) => partId);
  return [...byPart]
    .map(
      ([partId, all]) =>
        `${partId} ${all
          .map(({ stage }) => stage)
          .sort((a, b) => rank(a) - rank(b))
          .at(-1)}`,
    )
    .sort();
};

const daily = Array.from({ length: LENGTH + 1 }, (_, n) => addDays(FIRST, n));
/** Every day, but fast: of a part that only ages, nothing changes between the days its stages begin. */
const turning = (parts: Parts, every = 7): CivilDate[] =>
  daily.filter(
    (day, n) =>
      n % every === 0 || n === LENGTH || findingsOn(parts, day).some(({ news }) => news.calendar.began === day),
  );

describe('any walk over the days with gaps', () => {
  it('says the same gravest stage of each part as a daily walk, each stage once', () => {
    fc.assert(
      fc.property(anyParts, anyWalk, fc.array(fc.nat(50), { maxLength: 6 }), (parts, some, picks) => {
        const all = turning(parts);
        // The very days on which a stage begins are among them now and then.
        const begins = turning(parts, LENGTH + 1);
        const days = [...new Set([...some, ...picks.flatMap((pick) => begins[pick] ?? [])])].sort();
        const gappy = walk(parts, days);
        expect(highest(gappy)).toEqual(highest(walk(parts, all)));
        const pairs = gappy.map(({ partId, stage }) => `${partId} ${stage}`);
        expect(pairs).toEqual([...new Set(pairs)]);
      }),
      { numRuns: 80 },
    );
  });

  it('says nothing more on days that are walked again, in whatever order', () => {
    fc.assert(
      fc.property(anyParts, anyWalk, fc.array(fc.nat(LENGTH), { maxLength: 10 }), (parts, days, again) => {
        const said = walk(parts, days);
        const memory = Map.groupBy(said, ({ partId }) => partId);
        for (const on of [LAST, ...again.map((n) => addDays(FIRST, n))])
          expect(
            owed(findingsOn(parts, on), memory, undefined, FIRST).map(({ part, told }) => [part.id, told]),
          ).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what can hurt somebody and has no answer', () => {
  const tire = (on: CivilDate) => finding('tires-road', [dated('made', '2012-01-15')], on, { part: { id: 'tire' } });
  const anyAnswer = fc.record({
    word: fc.constantFrom('seen' as const, 'waiting' as const),
    after: fc.integer({ min: 0, max: 300 }),
    wait: fc.integer({ min: 1, max: 300 }),
    mine: fc.boolean(),
  });

  it('is told again when the interval or a wait is over, on that very day, and never once it was seen', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), fc.array(anyAnswer, { maxLength: 3 }), (days, given) => {
        const answers: Answer[] = given
          .map(({ word, after, wait, mine }) => {
            const answeredOn = addDays(FIRST, after);
            const until = word === 'waiting' ? addDays(answeredOn, wait) : null;
            return { partId: 'tire', personId: mine ? 'ada' : 'bram', word, until, answeredOn };
          })
          .sort((a, b) => a.answeredOn.localeCompare(b.answeredOn));
        let last: CivilDate | null = null;
        for (let n = 0; n < 700; n++) {
          const on = addDays(FIRST, n);
          const byNow = answers.filter(({ answeredOn }) => answeredOn < on);
          const since = byNow.filter(({ answeredOn }) => last !== null && answeredOn >= last);
          const seen = since.some(({ word, personId }) => word === 'seen' && personId === 'ada');
          const wait = since.findLast(({ word }) => word === 'waiting')?.until ?? null;
          const isDue = last === null || (!seen && (wait ? on > wait : on >= addDays(last, days)));
          const said: Said[] = last === null ? [] : [{ partId: 'tire', stage: 'past', saidOn: last }];
          const repeats = { days, personId: 'ada', answers: new Map([['tire', byNow]]) };
          const news = owed([tire(on)], new Map([['tire', said]]), repeats);
          expect(
            news.map(({ told, lastSaid }) => [told, lastSaid]),
            on,
          ).toEqual(isDue ? [[['past'], last]] : []);
          if (isDue) last = on;
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is told again at once where it became graver, whatever was answered', () => {
    fc.assert(
      fc.property(fc.array(anyAnswer, { maxLength: 3 }), fc.integer({ min: 0, max: 120 }), (given, days) => {
        // Due from 1 February, past from 2 April 2027.
        const fluid = (on: CivilDate) =>
          finding('brake-fluid-glycol', [dated('filled', '2025-04-01')], on, { part: { id: 'fluid' } });
        const answers = given.map(({ word, after, wait, mine }) => {
          const answeredOn = addDays('2027-02-01', after % 60);
          const until = word === 'waiting' ? addDays(answeredOn, wait) : null;
          return { partId: 'fluid', personId: mine ? 'ada' : 'bram', word, until, answeredOn };
        });
        const said: Said[] = [{ partId: 'fluid', stage: 'due', saidOn: '2027-02-01' }];
        const repeats = { days, personId: 'ada', answers: new Map([['fluid', answers]]) };
        const news = owed([fluid('2027-04-02')], new Map([['fluid', said]]), repeats);
        expect(news.map(({ told, lastSaid }) => [told, lastSaid])).toEqual([[['past'], null]]);
      }),
      { numRuns: 40 },
    );
  });
});

const { href } = siteAt(null, 3000);

/** What became of a person's letters between two sweeps. */
const FATES = {
  sent: "update letters set state = 'sent' where state = 'waiting'",
  'still waiting': 'select 1',
  'in doubt': "update letters set in_doubt = 1 where state = 'waiting'",
  'given up': "update letters set state = 'failed', why = 'tries used up' where state = 'waiting'",
  refused: "update letters set state = 'failed', why = 'refused' where state = 'waiting'",
  'its refusal seen': "update letters set seen_at = 'now' where state = 'failed'",
} as const;
type Fate = keyof typeof FATES;

const BRAM = { name: 'Bram', email: 'bram@example.org', dateOrder: 'ask', letters: true } as const;

describe('a collection, whatever becomes of its letters', () => {
  const sweep = (barn: Barn, today: CivilDate): void => {
    const collection = findCollection(barn.store, barn.acting.collectionId);
    if (!collection) throw new Error('No collection');
    sweepCollection(barn.store, collection, { today, now: `${today}T07:00:00.000Z`, href, dryRun: false });
  };
  const befall = ({ store }: Barn, fate: Fate, personId: string): void =>
    void store.$client.exec(`${FATES[fate]}${fate === 'still waiting' ? '' : ` and person_id = '${personId}'`}`);

  /** What has arrived: by person, part and stage, with its day. */
  const arrived = ({ store }: Barn): { who: string; partId: string; stage: Stage; saidOn: CivilDate }[] =>
    store.$client
      .prepare(
        `select people.name as who, cars.name || ' ' || parts.kind as partId, stage, said_on as saidOn from said
         join letters on letters.id = letter_id join people on people.id = said.person_id
         join parts on parts.id = part_id join cars on cars.id = car_id where letters.state = 'sent' order by said_on`,
      )
      .all() as { who: string; partId: string; stage: Stage; saidOn: CivilDate }[];

  /** Parts of a few cars, dated before the collection is looked over for the first time. */
  const anyCars = fc.array(
    fc.uniqueArray(
      fc.record({
        kind: fc.constantFrom('brake-fluid-glycol', 'engine-oil', 'v-belt', 'spark-plugs', 'coolant-iat'),
        begun: dayBetween('2021-06-01', '2025-12-31'),
        width: fc.oneof(fc.constant(0), fc.nat(300)),
      }),
      { selector: ({ kind }) => kind, minLength: 1, maxLength: 3 },
    ),
    { minLength: 1, maxLength: 3 },
  );
  type Cars = readonly Parts[];

  const barnOf = (cars: Cars, repeatDays = 0) => {
    const barn = openBarn();
    const { collectionId, personId } = barn.acting;
    const bram = addMember(barn.store, collectionId, BRAM);
    for (const id of [personId, bram]) changeMember(barn.store, collectionId, id, { yearlyMonth: null, repeatDays });
    for (const [n, parts] of cars.entries()) {
      const carId = carIn(barn, { name: `Car ${n}` });
      for (const { kind, begun, width } of parts)
        date(barn, carId, kind, claim(kindOf(kind).clock, width === 0 ? begun : `${begun}/${addDays(begun, width)}`));
    }
    return { barn, people: [personId, bram] };
  };

  /** Days of a walk: gaps, what becomes of each person's letter then, and whether the day before is swept again. */
  const anySteps = fc.array(
    fc.record({
      gap: fc.oneof(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 250 })),
      fates: fc.tuple(
        fc.constantFrom(...(Object.keys(FATES) as Fate[])),
        fc.constantFrom(...(Object.keys(FATES) as Fate[])),
      ),
      again: fc.constantFrom('once', 'twice', 'a day back', 'a month back'),
    }),
    { minLength: 1, maxLength: 12 },
  );
  type Steps = typeof anySteps extends fc.Arbitrary<infer T> ? T : never;

  const walkThrough = ({ barn, people }: ReturnType<typeof barnOf>, steps: Steps): void => {
    const all = (fate: Fate): void => {
      for (const id of people) befall(barn, fate, id);
    };
    /** What may have arrived: it must stay as it is. */
    const doubtful = (): unknown[] =>
      barn.store.$client.prepare("select id, text from letters where in_doubt and state = 'waiting' order by id").all();
    let on = FIRST;
    sweep(barn, on);
    for (const { gap, fates, again } of steps) {
      for (const [n, id] of people.entries()) befall(barn, fates[n] ?? 'sent', id);
      on = addDays(on, gap);
      if (on >= LAST) break;
      const before = doubtful();
      sweep(barn, on);
      if (again === 'twice') sweep(barn, on);
      if (again === 'a day back') sweep(barn, addDays(on, -1));
      if (again === 'a month back') sweep(barn, addDays(on, -30));
      expect(doubtful()).toEqual(before);
    }
    // In the end all that waits arrives, and somebody looks at what did not.
    all('sent');
    all('its refusal seen');
    for (const last of [LAST, addDays(LAST, 1)]) {
      sweep(barn, last);
      all('sent');
    }
  };

  /** The gravest stage each person was told of each part. */
  const gravest = (barn: Barn): string[] =>
    [...Map.groupBy(arrived(barn), ({ who }) => who)].flatMap(([who, said]) =>
      highest(said).map((line) => `${who}: ${line}`),
    );

  it('tells on any walk the same gravest stages as on a daily one, each once to each person', () => {
    fc.assert(
      fc.property(anyCars, anySteps, (cars, steps) => {
        const daily = barnOf(cars);
        // The other walk ends a day after the last, so this one must.
        for (const day of [...turning(cars.flat(), 120), addDays(LAST, 1)]) {
          sweep(daily.barn, day);
          daily.barn.store.$client.exec(FATES.sent);
        }
        const gappy = barnOf(cars);
        walkThrough(gappy, steps);
        expect(gravest(gappy.barn).toSorted()).toEqual(gravest(daily.barn).toSorted());
        const lines = arrived(gappy.barn).map(({ who, partId, stage }) => `${who}: ${partId} ${stage}`);
        expect(lines).toEqual([...new Set(lines)]);
      }),
      { numRuns: 25 },
    );
  });

  it('repeats what can hurt to each person no sooner than the interval after it last arrived', () => {
    const fluids: Cars = [[{ kind: 'brake-fluid-glycol', begun: '2021-06-01', width: 0 }]];
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 60 }), anySteps, (days, steps) => {
        const here = barnOf(fluids, days);
        walkThrough(here, steps);
        for (const [who, said] of Map.groupBy(arrived(here.barn), (line) => line.who)) {
          const gaps = said.slice(1).map(({ saidOn }, n) => daysBetween(said[n]?.saidOn ?? saidOn, saidOn));
          expect(
            gaps.filter((gap) => gap < days),
            who,
          ).toEqual([]);
        }
        // It arrived at last, and again after any gap that is long enough.
        expect(new Set(arrived(here.barn).map(({ who }) => who)).size).toBe(2);
      }),
      { numRuns: 15 },
    );
  });

  it('tells of a renewed part anew, and of nothing else', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 600 }), (after) => {
        const { barn } = barnOf([
          [
            { kind: 'brake-fluid-glycol', begun: '2025-03-01', width: 0 },
            { kind: 'spark-plugs', begun: '2021-06-01', width: 0 },
          ],
        ]);
        const carId = barn.store.$client.prepare('select id from cars').pluck().get() as string;
        sweep(barn, '2028-06-01');
        barn.store.$client.exec(FATES.sent);
        const before = arrived(barn).length;
        const renewedOn = addDays('2028-06-01', after);
        const part = partOf(barn, carId, 'brake-fluid-glycol');
        const acting = { ...barn.acting, today: renewedOn };
        const claims = [claim('filled', renewedOn)];
        must(renewPart(barn.store, acting, { part, car: carOf(barn, carId).facts }, { why: '', note: '', claims }));
        sweep(barn, addDays(renewedOn, 740));
        barn.store.$client.exec(FATES.sent);
        const anew = arrived(barn).slice(before);
        expect(anew.map(({ who, partId, stage }) => `${who}: ${partId} ${stage}`).toSorted()).toEqual([
          'Ada: Car 0 brake-fluid-glycol past',
          'Bram: Car 0 brake-fluid-glycol past',
        ]);
      }),
      { numRuns: 8 },
    );
  });
});
