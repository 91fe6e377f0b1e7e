/** Whatever days the server was up: each person hears the same, each thing once, and what can hurt until it is answered. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renewPart } from '../../src/acts/parts.ts';
import { sweepCollection } from '../../src/acts/sweep.ts';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import { STANDINGS } from '../../src/findings/standing.ts';
import { siteAt } from '../../src/links.ts';
import type { Answer } from '../../src/notices/answers.ts';
import { owed, type Said } from '../../src/notices/owed.ts';
import { changeMember, findCollection } from '../../src/store/people.ts';
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
type Parts = typeof anyParts extends fc.Arbitrary<infer T> ? T : never;

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
const highest = (said: readonly Said[]): string[] => {
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
const turning = (parts: Parts): CivilDate[] =>
  daily.filter(
    (day, n) => n % 7 === 0 || n === LENGTH || findingsOn(parts, day).some(({ news }) => news.calendar.began === day),
  );

describe('any walk over the days with gaps', () => {
  it('says the same gravest stage of each part as a daily walk, each stage once', () => {
    fc.assert(
      fc.property(anyParts, anyWalk, (parts, days) => {
        const gappy = walk(parts, days);
        expect(highest(gappy)).toEqual(highest(walk(parts, turning(parts))));
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

  it('is told again no sooner than the interval, at the end of a wait, and never once it was seen', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), fc.array(anyAnswer, { maxLength: 3 }), (days, given) => {
        const answers: Answer[] = given
          .map(({ word, after, wait, mine }) => {
            const answeredOn = addDays(FIRST, after);
            const until = word === 'waiting' ? addDays(answeredOn, wait) : null;
            return { partId: 'tire', personId: mine ? 'ada' : 'bram', word, until, answeredOn };
          })
          .sort((a, b) => a.answeredOn.localeCompare(b.answeredOn));
        const said: Said[] = [];
        for (let n = 0; n < 700; n++) {
          const on = addDays(FIRST, n);
          const byNow = answers.filter(({ answeredOn }) => answeredOn < on);
          const repeats = { days, personId: 'ada', answers: new Map([['tire', byNow]]) };
          for (const { told, lastSaid } of owed([tire(on)], new Map([['tire', said]]), repeats)) {
            const last = said.at(-1)?.saidOn;
            expect(lastSaid).toBe(last ?? null);
            if (last) {
              const since = byNow.filter(({ answeredOn }) => answeredOn >= last);
              expect(since.some(({ word, personId }) => word === 'seen' && personId === 'ada')).toBe(false);
              const wait = since.findLast(({ word }) => word === 'waiting')?.until;
              // The server was up each day, so it comes on its very day.
              expect(on).toBe(
                wait
                  ? [addDays(wait, 1), addDays(since.at(-1)?.answeredOn ?? last, 1)].sort().at(-1)
                  : addDays(last, days),
              );
            }
            for (const stage of told) said.push({ partId: 'tire', stage, saidOn: on });
          }
        }
        expect(said[0]?.saidOn).toBe(FIRST);
      }),
      { numRuns: 100 },
    );
  });
});

const { href } = siteAt(null, 3000);

/** What became of the letters between two sweeps. */
const FATES = {
  sent: "update letters set state = 'sent' where state = 'waiting'",
  'still waiting': 'select 1',
  'in doubt': "update letters set in_doubt = 1 where state = 'waiting'",
  'given up': "update letters set state = 'failed', why = 'tries used up' where state = 'waiting'",
} as const;
type Fate = keyof typeof FATES;

describe('a collection, whatever becomes of its letters', () => {
  const barnOf = (): { barn: Barn; carId: string } => {
    const barn = openBarn();
    const carId = carIn(barn);
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 March 2026'));
    date(barn, carId, 'spark-plugs', claim('fitted', '1 May 2023'));
    date(barn, carId, 'tires-road', claim('made', '2218', { evidence: 'read on the part' }), 'front left');
    const { collectionId, personId } = barn.acting;
    changeMember(barn.store, collectionId, personId, { yearlyMonth: null, repeatDays: 0 });
    return { barn, carId };
  };
  const sweep = (barn: Barn, today: CivilDate): void => {
    const collection = findCollection(barn.store, barn.acting.collectionId);
    if (!collection) throw new Error('No collection');
    sweepCollection(barn.store, collection, { today, now: `${today}T07:00:00.000Z`, href, dryRun: false });
  };
  /** What has arrived or still will: by part and stage. */
  const told = ({ store }: Barn): string[] =>
    store.$client
      .prepare(
        "select parts.kind || ' ' || stage from said join letters on letters.id = letter_id join parts on parts.id = part_id where letters.state in ('sent', 'waiting') order by 1",
      )
      .pluck()
      .all() as string[];

  it('tells on any walk the same gravest stages as on a daily one, each in one letter that arrives', () => {
    const anyDays = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 250 }), fc.constantFrom(...(Object.keys(FATES) as Fate[])), fc.boolean()),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(anyDays, (days) => {
        const { barn } = barnOf();
        let on = FIRST;
        for (const [gap, fate, twice] of days) {
          on = addDays(on, gap);
          if (on > LAST) break;
          sweep(barn, on);
          if (twice) sweep(barn, addDays(on, -1));
          barn.store.$client.exec(FATES[fate]);
        }
        for (const last of [LAST, addDays(LAST, 1)]) {
          sweep(barn, last);
          barn.store.$client.exec(FATES.sent);
        }
        const lines = told(barn);
        expect(lines).toEqual([...new Set(lines)]);
        expect(lines).toEqual(
          expect.arrayContaining(['brake-fluid-glycol past', 'spark-plugs past', 'tires-road past']),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('tells of a renewed part anew, and of nothing else', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 600 }), (after) => {
        const { barn, carId } = barnOf();
        sweep(barn, '2028-06-01');
        barn.store.$client.exec(FATES.sent);
        const renewedOn = addDays('2028-06-01', after);
        const part = partOf(barn, carId, 'brake-fluid-glycol');
        const acting = { ...barn.acting, today: renewedOn };
        const claims = [claim('filled', renewedOn)];
        must(renewPart(barn.store, acting, { part, car: carOf(barn, carId).facts }, { why: '', note: '', claims }));
        const before = told(barn).length;
        sweep(barn, addDays(renewedOn, 740));
        barn.store.$client.exec(FATES.sent);
        expect(
          told(barn)
            .slice()
            .sort()
            .filter((line) => line === 'brake-fluid-glycol past'),
        ).toHaveLength(2);
        expect(told(barn).length - before).toBeGreaterThan(0);
      }),
      { numRuns: 10 },
    );
  });
});
