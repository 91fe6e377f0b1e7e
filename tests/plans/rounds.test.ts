import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { looksOn } from '../../src/plans/looks.ts';
import { foundBy, nextVisit, type RoundMade, roundsOf } from '../../src/plans/rounds.ts';
import { HEATED, roundMade, type StayGiven, situationWith } from '../support/stays.ts';

const WINTER = { parkedOn: '2026-11-01', returnOn: '2027-04-01' } as const;
const OPEN = { parkedOn: '2026-11-01', returnOn: null } as const;

const states = (stay: typeof WINTER | typeof OPEN, made: readonly RoundMade[], on: CivilDate): string[] =>
  roundsOf(stay, made, on).map(({ due, state }) => `${due} ${state}`);

describe('the rounds of a winter', () => {
  it('fall on the day of the parking day, each month, and none on the day it comes back', () =>
    expect(states(WINTER, [], '2026-11-01')).toEqual([
      '2026-12-01 ahead',
      '2027-01-01 ahead',
      '2027-02-01 ahead',
      '2027-03-01 ahead',
    ]));

  it('fall on the last day of shorter months', () =>
    expect(
      roundsOf({ parkedOn: '2026-10-31', returnOn: '2027-03-15' }, [], '2026-11-01').map(({ due }) => due),
    ).toEqual(['2026-11-30', '2026-12-31', '2027-01-31', '2027-02-28']));

  it.each([
    ['2026-11-30', 'ahead'],
    ['2026-12-01', 'due'],
    ['2026-12-21', 'due'],
    ['2026-12-22', 'missed'],
    ['2027-03-30', 'missed'],
  ] as const)('the first is, unmade, on %s %s', (on, state) =>
    expect(roundsOf(WINTER, [], on)[0]).toMatchObject({ state, made: null }),
  );

  it.each([
    ['2026-11-20', false, 'eleven days early it counts for nothing'],
    ['2026-11-21', true, 'ten days early it counts'],
    ['2026-12-01', true, 'on its day'],
    ['2026-12-21', true, 'eleven days before the next'],
    ['2026-12-22', false, 'ten days before the next it counts for that'],
  ] as readonly (readonly [CivilDate, boolean, string])[])('made on %s it is the first: %s (%s)', (day, counts) =>
    expect(roundsOf(WINTER, [roundMade(day)], '2027-03-30')[0]?.state).toBe(counts ? 'done' : 'missed'),
  );

  it('does not count a round before the day it was made on', () => {
    const made = [roundMade('2026-12-05')];
    expect(roundsOf(WINTER, made, '2026-12-04')[0]?.state).toBe('due');
    expect(roundsOf(WINTER, made, '2026-12-05')[0]).toMatchObject({ state: 'done', made: made[0] });
  });

  it('shows a missed one beside those made later', () =>
    expect(states(WINTER, [roundMade('2027-01-02')], '2027-02-10')).toEqual([
      '2026-12-01 missed',
      '2027-01-01 done',
      '2027-02-01 due',
      '2027-03-01 ahead',
    ]));

  it('takes the last of two made for the same one', () =>
    expect(roundsOf(WINTER, [roundMade('2026-12-01'), roundMade('2026-12-09')], '2026-12-20')[0]?.made?.day).toBe(
      '2026-12-09',
    ));

  it('are none in a stay that ends within the month', () =>
    expect(roundsOf({ parkedOn: '2026-11-01', returnOn: '2026-12-01' }, [], '2026-12-01')).toEqual([]));
});

describe('with an open end', () => {
  it('one round more than came due is told', () =>
    expect(states(OPEN, [], '2027-01-15')).toEqual(['2026-12-01 missed', '2027-01-01 due', '2027-02-01 ahead']));

  it('somebody is always expected', () => expect(nextVisit(OPEN, '2028-05-09')).toBe('2028-06-01'));
});

describe('the next visit', () => {
  it.each([
    ['2026-11-01', '2026-12-01'],
    ['2026-12-01', '2027-01-01'],
    ['2027-03-01', '2027-04-01'],
    ['2027-04-01', null],
  ] as const)('after %s is %s', (on, next) => expect(nextVisit(WINTER, on)).toBe(next));
});

describe('what a round found', () => {
  const found = (on: CivilDate, ...made: RoundMade[]): string[] =>
    foundBy(made, on).map(({ look, answer, day }) => `${look.key}: ${answer.name}, ${day}`);

  it('is told where it is not good and something is to be done', () =>
    expect(found('2026-12-05', roundMade('2026-12-01', { smell: 'must', mice: 'none', rolled: 'not' }))).toEqual([
      'smell: Musty, 2026-12-01',
    ]));

  it('stands until a later round says otherwise, and not because one said nothing', () => {
    const made = [roundMade('2026-12-01', { smell: 'fuel' }), roundMade('2027-01-01', { mice: 'none' })];
    expect(found('2027-01-02', ...made)).toEqual(['smell: Fuel, 2026-12-01']);
    expect(found('2027-02-02', ...made, roundMade('2027-02-01', { smell: 'none' }))).toEqual([]);
  });

  it('is not told before its day, nor from an answer that is none', () => {
    expect(found('2026-11-30', roundMade('2026-12-01', { smell: 'fuel' }))).toEqual([]);
    expect(found('2026-12-02', roundMade('2026-12-01', { smell: 'lavender' }))).toEqual([]);
  });
});

describe('what is looked at', () => {
  const looks = (given: StayGiven, month = 1): string[] => looksOn(situationWith(given), month).map(({ key }) => key);

  // Monthly, every third and every sixth month: common practice, and US Army manuals for the monthly look.
  it('grows in the third and the sixth month', () => {
    expect(looks({}, 1)).toEqual(expect.arrayContaining(['smell', 'mice', 'drips', 'wet', 'tires', 'lamp', 'rolled']));
    expect(looks({}, 1)).not.toEqual(expect.arrayContaining(['desiccant']));
    expect(looks({}, 3)).toEqual(expect.arrayContaining(['desiccant', 'under-hood']));
    expect(looks({}, 3)).not.toContain('oil-smell');
    expect(looks({}, 6)).toEqual(expect.arrayContaining(['desiccant', 'oil-smell', 'fuel-smell', 'drag']));
  });

  it.each([
    ['rolled', { circumstances: ['lift'] }, 'it stands on a lift'],
    ['rolled', { circumstances: ['wheels-off'] }, 'it has no wheels on'],
    ['rolled', { choices: { weight: 'stands' } }, 'it stands on stands'],
    ['tires', { circumstances: ['wheels-off'] }, 'its wheels are stored'],
    ['clutch', { start: 'big-automatic-v8' }, 'it is an automatic'],
    ['pedal', { start: 'tourer-rod-brakes' }, 'it has rods'],
    ['lamp', { start: 'tourer-rod-brakes' }, 'it has no battery'],
    ['lamp', { circumstances: ['rented-bay'] }, 'nothing is plugged in there'],
    ['drive', {}, 'it is left alone'],
    ['desiccant', { place: HEATED }, 'the place is heated'],
    ['fuel-smell', { months: 26 }, 'its tank is empty'],
  ] as readonly (readonly [string, StayGiven, string])[])('without %s where %o: %s', (key, given) =>
    expect(looks(given, 6)).not.toContain(key),
  );

  it('asks for the drive only of who chose it: a short idle is in neither camp', () =>
    expect(looks({ choices: { running: 'drive' } })).toContain('drive'));
});

describe('rounds of before the lay-up was made', () => {
  const stay = { parkedOn: '2026-11-01', returnOn: '2027-04-01', madeOn: '2027-02-20' } as const;
  it('are not asked for, unless somebody made one', () => {
    expect(roundsOf(stay, [], '2027-02-25').map(({ due, state }) => [due, state])).toEqual([['2027-03-01', 'ahead']]);
    const made = { id: 'r', day: '2026-12-02', by: 'Ada', answers: {}, note: '' } as const;
    expect(roundsOf(stay, [made], '2027-02-25').map(({ due, state }) => [due, state])).toEqual([
      ['2026-12-01', 'done'],
      ['2027-03-01', 'ahead'],
    ]);
  });
});
