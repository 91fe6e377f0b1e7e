import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { findingsOf } from '../../src/findings/car.ts';
import type { CarFacts, PartFacts } from '../../src/findings/facts.ts';
import { type RoadFacts, type RoadToday, roadToday } from '../../src/plans/road-answer.ts';
import { WALK_KEYS, type Walkround, walkLook } from '../../src/plans/walkround.ts';
import { carOf, dated } from '../support/parts.ts';
import { traitsOf, undated } from '../support/sleepers.ts';

const ON: CivilDate = '2026-11-26';
const YOUNG: CivilDate = '2026-06-01';
const WELL: Walkround = { answers: Object.fromEntries(WALK_KEYS.map((key) => [key, 'well'])), by: 'Nell' };

/** Every part dated a year ago, but for what is told otherwise; null: nobody knows. */
const partsOf = (but: Readonly<Record<string, CivilDate | null>> = {}): PartFacts[] =>
  undated(traitsOf('hatchback-timing-belt')).map((part) => {
    const day = part.kind in but ? but[part.kind] : YOUNG;
    if (day == null) return part;
    return {
      ...part,
      claims: (['made', 'fitted', 'filled', 'serviced', 'used'] as const).map((clock) =>
        dated(clock, day, day, { km: 50_000 }),
      ),
    };
  });

const DRIVEN: CarFacts = carOf({
  odometer: [
    { day: '2025-11-01', km: 50_000 },
    { day: '2026-11-01', km: 52_000 },
  ],
});

const check = (parts: readonly PartFacts[], more: Partial<RoadFacts> = {}): RoadToday =>
  roadToday({
    on: ON,
    car: DRIVEN,
    findings: findingsOf(DRIVEN, parts, [], ON),
    sleep: null,
    walk: WELL,
    gates: [],
    testing: false,
    found: [],
    ...more,
  });

const words = ({ against, unchecked }: RoadToday): string =>
  [...against, ...unchecked].map((one) => one.words).join(' ');

describe('the road check of today', () => {
  it('goes where dates are young, somebody looked today, and nothing speaks against it; and says what it rests on', () => {
    const today = check(partsOf());
    expect([...today.against, ...today.unchecked]).toEqual([]);
    expect(today.answer).toBe('go');
    expect(today.rests.join(' ')).toMatch(/walk round of today, by Nell.*no proof of condition/);
  });

  it('says no while nobody has looked today', () => {
    const today = check(partsOf(), { walk: null });
    expect(today.answer).toBe('no');
    expect(today.unchecked).toHaveLength(WALK_KEYS.length);
  });

  it.each(['pedal', 'release', 'fuel', 'steering', 'tires', 'lamps', 'belts'] as const)(
    '%s not looked at: no drive',
    (key) => {
      const { [key]: _, ...answers } = WELL.answers;
      expect(check(partsOf(), { walk: { answers, by: 'Nell' } }).answer).toBe('no');
    },
  );

  it.each(['under', 'nuts', 'sight'] as const)('%s not looked at: a local drive at most', (key) => {
    const { [key]: _, ...answers } = WELL.answers;
    expect(check(partsOf(), { walk: { answers, by: 'Nell' } }).answer).toBe('local only');
  });

  it.each(WALK_KEYS)('%s found bad today: no drive', (key) => {
    expect(check(partsOf(), { walk: { answers: { ...WELL.answers, [key]: 'badly' }, by: 'Nell' } }).answer).toBe('no');
  });

  it.each<[CivilDate | null, string]>([
    ['2016-11-26', 'no'],
    ['2016-11-27', 'local only'],
    ['2020-11-26', 'local only'],
    ['2020-11-27', 'go'],
    [null, 'no'],
  ])('tires of %s: %s', (made, answer) => {
    expect(check(partsOf({ 'tires-road': made })).answer).toBe(answer);
  });

  it.each<[CivilDate, string]>([
    ['2023-11-26', 'no'],
    ['2023-11-27', 'local only'],
    ['2025-06-01', 'go'],
  ])('brake fluid of %s: %s', (filled, answer) => {
    expect(check(partsOf({ 'brake-fluid-glycol': filled })).answer).toBe(answer);
  });

  it('brake fluid nobody can date counts as due, and after a sleep of more than two years as a no', () => {
    const parts = partsOf({ 'brake-fluid-glycol': null });
    const sleep = { since: '2023-01-01' as const, months: 24, km: 50_000 };
    expect(check(parts).answer).toBe('local only');
    expect(check(parts, { sleep }).answer).toBe('local only');
    expect(check(parts, { sleep: { ...sleep, months: 25 } }).answer).toBe('no');
  });

  it('a timing belt nobody can date counts as due: no', () => {
    const today = check(partsOf({ 'timing-belt': null }));
    expect(today.answer).toBe('no');
    expect(words(today)).toMatch(/Timing belt.*counts as due/);
  });

  it('a brake hose nobody can date is local where it was looked at today, and a no where it was not', () => {
    const parts = partsOf({ 'brake-hoses': null });
    expect(check(parts).answer).toBe('local only');
    expect(words(check(parts))).toMatch(/undated, looked at today/);
    const { pedal: _, release: __, ...answers } = WELL.answers;
    expect(words(check(parts, { walk: { answers, by: 'Nell' } }))).toMatch(/undated, and not looked at today/);
  });

  it('a gate of safety that is not passed, or only in writing, keeps it at no', () => {
    expect(check(partsOf(), { gates: [{ name: 'Brakes', inWriting: false }] }).answer).toBe('no');
    const written = check(partsOf(), { gates: [{ name: 'Brakes', inWriting: true }] });
    expect(written.answer).toBe('no');
    expect(words(written)).toMatch(/passed in writing only/);
  });

  it('road tests still to come, and what a round found, are told', () => {
    expect(check(partsOf(), { testing: true }).answer).toBe('local only');
    expect(check(partsOf(), { found: ['Smell: fuel'] }).answer).toBe('no');
  });

  it('the first drive since it stood is a local one, until the odometer tells of another', () => {
    const sleep = { since: '2026-01-01' as const, months: 8, km: 51_998 };
    expect(check(partsOf(), { sleep }).answer).toBe('local only');
    expect(check(partsOf(), { sleep: { ...sleep, km: 51_995 } }).answer).toBe('go');
    expect(check(partsOf(), { sleep: { ...sleep, km: null } }).answer).toBe('local only');
  });

  it('the first fifty km after work on brakes, wheels or steering are local', () => {
    const renewed = (km: number | null): PartFacts[] =>
      partsOf().map((part) =>
        part.kind === 'brake-master'
          ? { ...part, claims: [dated('fitted', '2026-11-01', '2026-11-01', { km })] }
          : part,
      );
    expect(check(renewed(51_951)).answer).toBe('local only');
    expect(check(renewed(51_950)).answer).toBe('go');
    expect(words(check(renewed(51_951)))).toMatch(/First 50 km after work on/);
  });

  it('old wiper blades keep it on dry roads close by', () => {
    expect(check(partsOf({ wipers: '2025-06-01' })).answer).toBe('local only');
  });

  it('tells what is merely due last, and counts it for nothing', () => {
    const today = check(partsOf({ wipers: '2025-11-20', 'engine-oil': '2025-11-20' }));
    expect(today.due.map(({ kind }) => kind.key)).toContain('engine-oil');
  });

  it('puts the reasons that forbid before those that limit', () => {
    const today = check(partsOf({ 'tires-road': '2019-01-01', 'timing-belt': null }));
    expect(today.against.map(({ answer }) => answer)).toEqual([
      'no',
      'local only',
      'local only',
      'local only',
      'local only',
    ]);
  });

  it('sees with each look kinds that exist, and every safety part that can be undated is seen by some look', () => {
    const seen = new Set(WALK_KEYS.flatMap((key) => walkLook(key).sees));
    for (const kind of seen) expect(KINDS.has(kind), kind).toBe(true);
    const unseen = [...KINDS.values()]
      .filter(({ severity, key }) => severity === 'safety' && !seen.has(key) && !OTHERWISE.includes(key))
      .map(({ key }) => key);
    expect(unseen).toEqual([]);
  });
});

/** Judged by rules of their own, or no matter of a drive. */
const OTHERWISE = [
  'tires-road',
  'inner-tubes',
  'brake-fluid-glycol',
  'brake-fluid-silicone',
  'central-hydraulics',
  'tire-spare',
  'tire-compact-spare',
  'extinguisher',
  'harness-fia',
  'harness-sfi',
  'child-seat',
];
