import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { owed } from '../../src/notices/owed.ts';
import { isQuiet, type Wishes, wantsYearly, wished } from '../../src/notices/wishes.ts';
import { dated, finding } from '../support/parts.ts';

const ALL: Wishes = { notCars: [], notSeverities: [], quietFrom: null, quietTo: null, yearlyMonth: null };
const ON: CivilDate = '2026-11-25';

const pastTire = finding('tires-road', [dated('made', '2012-01-15')], ON, { part: { id: 'tire' } });
const lookTire = finding('tires-road', [dated('made', '2020-01-15')], ON, { part: { id: 'look' } });
const pastPlugs = finding('spark-plugs', [dated('fitted', '2015-01-15')], ON, { part: { id: 'plugs' } });
const news = owed([pastTire, lookTire, pastPlugs], new Map());
const heard = (wishes: Partial<Wishes>, on = ON): string[] =>
  wished(news, 'car', { ...ALL, ...wishes }, on).map(({ part }) => part.id);

describe('what a person wants to hear', () => {
  it('is everything, unless told otherwise', () => expect(heard({})).toEqual(['tire', 'look', 'plugs']));
  it('is nothing of a car left out', () => expect(heard({ notCars: ['car'] })).toEqual([]));
  it('is of some severities only', () =>
    expect(heard({ notSeverities: [pastPlugs.kind.severity] })).toEqual(['tire', 'look']));
  it('is of safety always', () =>
    expect(heard({ notSeverities: ['safety', 'strands', 'engine', 'damage'] })).toContain('tire'));

  it('in a quiet season is only what newly is past and can hurt somebody', () => {
    expect(heard({ quietFrom: '11-01', quietTo: '02-28' })).toEqual(['tire']);
    expect(heard({ quietFrom: '12-01', quietTo: '02-28' })).toEqual(['tire', 'look', 'plugs']);
  });

  it('in a quiet season is nothing told again', () => {
    const said = new Map([['tire', [{ partId: 'tire', stage: 'past' as const, saidOn: '2026-09-01' as const }]]]);
    const again = owed([pastTire], said, { days: 30, personId: 'ada', answers: new Map() });
    expect(again).toMatchObject([{ told: ['past'], lastSaid: '2026-09-01' }]);
    expect(wished(again, 'car', ALL, ON)).toHaveLength(1);
    expect(wished(again, 'car', { ...ALL, quietFrom: '11-01', quietTo: '02-28' }, ON)).toEqual([]);
  });
});

describe('a quiet season', () => {
  it.each<[string, string, CivilDate, boolean]>([
    ['06-01', '08-31', '2026-05-31', false],
    ['06-01', '08-31', '2026-06-01', true],
    ['06-01', '08-31', '2026-08-31', true],
    ['06-01', '08-31', '2026-09-01', false],
    ['12-01', '02-28', '2026-11-30', false],
    ['12-01', '02-28', '2026-12-01', true],
    ['12-01', '02-28', '2027-01-01', true],
    ['12-01', '02-28', '2027-02-28', true],
    ['12-01', '02-28', '2028-02-29', false],
    ['12-01', '02-29', '2028-02-29', true],
    ['12-01', '02-29', '2027-03-01', false],
    ['03-05', '03-05', '2027-03-05', true],
    ['03-05', '03-05', '2027-03-06', false],
  ])('from %s to %s holds on %s: %s', (quietFrom, quietTo, on, quiet) =>
    expect(isQuiet({ ...ALL, quietFrom, quietTo }, on)).toBe(quiet),
  );
});

describe('the yearly letter', () => {
  it.each<[string, CivilDate | null, CivilDate, boolean]>([
    ['is owed from the first day of its month', null, '2027-03-01', true],
    ['not before', null, '2027-02-28', false],
    ['made up for within its month', null, '2027-03-31', true],
    ['not after', null, '2027-04-01', false],
    ['not twice in its month', '2027-03-02', '2027-03-20', false],
    ['again a year later', '2027-03-02', '2028-03-01', true],
  ])('%s', (_, last, on, wanted) => expect(wantsYearly({ ...ALL, yearlyMonth: 3 }, last, on)).toBe(wanted));

  it('is never owed to one who wants none', () => expect(wantsYearly(ALL, null, '2027-01-01')).toBe(false));
});
