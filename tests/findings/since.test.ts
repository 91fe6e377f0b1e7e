import { describe, expect, it } from 'vitest';
import type { Clock } from '../../src/catalogue/clock.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Claim } from '../../src/findings/facts.ts';
import { labelOf, type Since, sinceLast, sinceOf, sinceOnce } from '../../src/findings/since.ts';
import { dated, said } from '../support/parts.ts';

const BUILT = { from: '1972-01-01', to: '1972-12-31' } as const;
const UNBUILT = { from: null, to: null };

type Range = [CivilDate | null, CivilDate | null] | null;
const range = (since: Since | null): Range => since && [since.from, since.to];
const once = (claims: Claim[], cautious = false) => sinceOnce(claims, 'made', BUILT, cautious);
const bounded = (claims: Claim[], clock: Clock) => sinceOf(claims, clock, BUILT, false);

describe('a clock that is set once', () => {
  it('without a claim of its own knows nothing', () => {
    expect(once([])).toBeNull();
    expect(once([dated('fitted', '2015-06-03')])).toBeNull();
    expect(once([said('made', 'unknown'), said('made', 'not looked')])).toBeNull();
  });

  it('with one claim is that claim', () => {
    expect(once([dated('made', '2009-01-01', '2013-12-31')])).toEqual({
      from: '2009-01-01',
      to: '2013-12-31',
      evidence: 'receipt',
      disagree: false,
      contradicted: false,
    });
  });

  it('an “unknown” beside a date takes nothing away from it', () => {
    expect(range(once([dated('made', '2015-06-03'), said('made', 'unknown')]))).toEqual(['2015-06-03', '2015-06-03']);
  });

  it('“original” is the car’s build date, and moves with it', () => {
    expect(range(once([said('made', 'original')]))).toEqual(['1972-01-01', '1972-12-31']);
    const later = { from: '1974-05-01', to: '1974-05-31' } as const;
    expect(range(sinceOnce([said('made', 'original')], 'made', later, false))).toEqual(['1974-05-01', '1974-05-31']);
  });

  it('“original” on a car of unknown build date tells nothing', () => {
    expect(sinceOnce([said('made', 'original')], 'made', UNBUILT, true)).toBeNull();
    expect(sinceLast([said('serviced', 'original')], 'serviced', UNBUILT)).toBeNull();
    expect(sinceOf([said('made', 'original')], 'made', UNBUILT, true)).toBeNull();
  });

  it('a date open at its start is no older than the car', () => {
    expect(range(once([dated('made', null, '1997-12-31')]))).toEqual(['1972-01-01', '1997-12-31']);
    expect(range(once([dated('made', null, '1972-01-01')]))).toEqual(['1972-01-01', '1972-01-01']);
  });

  it('but stays open where the car is younger than the date, or of unknown age', () => {
    expect(range(once([dated('made', null, '1971-12-31')]))).toEqual([null, '1971-12-31']);
    expect(range(sinceOnce([dated('made', null, '1997-12-31')], 'made', UNBUILT, true))).toEqual([null, '1997-12-31']);
  });
});

describe('several claims on one clock', () => {
  const receipt = dated('made', '2015-01-01', '2015-12-31');

  it('the surest rules', () => {
    const since = once([dated('made', '2010-01-01', '2010-12-31', { evidence: 'seller’s word' }), receipt]);
    expect(since).toMatchObject({ from: '2015-01-01', to: '2015-12-31', evidence: 'receipt', disagree: false });
  });

  it.each([
    ['read on the part', 'receipt'],
    ['receipt', 'dated photo'],
    ['dated photo', 'workshop statement'],
    ['workshop statement', 'own memory'],
    ['own memory', 'seller’s word'],
    ['seller’s word', 'assumed'],
  ] as const)('%s comes before %s, whichever was recorded first', (surer, weaker) => {
    const claims = [
      dated('made', '2015-01-01', '2015-12-31', { evidence: surer }),
      dated('made', '2010-01-01', '2010-12-31', { evidence: weaker }),
    ];
    for (const list of [claims, claims.toReversed()])
      expect(once(list)).toMatchObject({ from: '2015-01-01', to: '2015-12-31', evidence: surer, contradicted: true });
  });

  it('equals that agree narrow each other', () => {
    const since = once([receipt, dated('made', '2015-06-01', '2016-05-31')]);
    expect(since).toMatchObject({ from: '2015-06-01', to: '2015-12-31', disagree: false, contradicted: false });
  });

  it('equals that touch on one day agree on that day', () => {
    expect(range(once([receipt, dated('made', '2015-12-31', '2016-12-31')]))).toEqual(['2015-12-31', '2015-12-31']);
  });

  it('an open end narrows nothing', () => {
    expect(range(once([receipt, dated('made', '2015-06-01', null)]))).toEqual(['2015-06-01', '2015-12-31']);
  });

  it('equals that exclude each other count with their whole span, and it is said', () => {
    const since = once([dated('made', '2010-01-01', '2010-12-31'), receipt]);
    expect(since).toMatchObject({ from: '2010-01-01', to: '2015-12-31', disagree: true, contradicted: false });
  });

  it('a span with an open start stays open', () => {
    const claims = [dated('made', null, '2010-12-31'), receipt];
    expect(range(sinceOnce(claims, 'made', UNBUILT, false))).toEqual([null, '2015-12-31']);
  });

  it('a span with an open end stays open', () => {
    expect(range(once([dated('made', '2010-01-01', '2010-12-31'), dated('made', '2015-01-01', null)]))).toEqual([
      '2010-01-01',
      null,
    ]);
  });

  it('a weaker claim that agrees changes nothing and is no contradiction', () => {
    const since = once([receipt, dated('made', '2014-01-01', '2016-12-31', { evidence: 'own memory' })]);
    expect(since).toMatchObject({ from: '2015-01-01', to: '2015-12-31', contradicted: false });
  });

  it('a weaker claim that contradicts is noted, and kept out where a receipt rules', () => {
    const since = once([receipt, dated('made', '2005-01-01', '2005-12-31', { evidence: 'own memory' })], true);
    expect(since).toMatchObject({ from: '2015-01-01', contradicted: true });
  });

  it('for a safety item without a receipt, an older weaker word counts at its oldest', () => {
    const claims = [
      dated('made', '2015-01-01', '2015-12-31', { evidence: 'dated photo' }),
      dated('made', '2005-01-01', '2005-12-31', { evidence: 'seller’s word' }),
    ];
    expect(once(claims, true)).toMatchObject({ from: '2005-01-01', to: '2015-12-31', evidence: 'dated photo' });
    expect(once(claims, false)).toMatchObject({ from: '2015-01-01', to: '2015-12-31', contradicted: true });
  });

  it('a younger weaker word does not make a safety item younger', () => {
    const claims = [
      dated('made', '2005-01-01', '2005-12-31', { evidence: 'own memory' }),
      dated('made', '2015-01-01', '2015-12-31', { evidence: 'assumed' }),
    ];
    expect(once(claims, true)).toMatchObject({ from: '2005-01-01', to: '2005-12-31', contradicted: true });
  });
});

describe('a clock that can tick again', () => {
  it('is read by the newest event, whatever the order of entry and however it is known', () => {
    const claims = [
      dated('serviced', '2020-05-01', '2020-05-01', { evidence: 'assumed' }),
      dated('serviced', '2010-05-01', '2010-05-01', { evidence: 'read on the part' }),
    ];
    for (const list of [claims, claims.toReversed()])
      expect(sinceLast(list, 'serviced', BUILT)).toEqual({
        from: '2020-05-01',
        to: '2020-05-01',
        evidence: 'assumed',
        disagree: false,
        contradicted: false,
      });
    expect(range(bounded(claims, 'serviced'))).toEqual(['2020-05-01', '2020-05-01']);
  });

  it('of which one is only roughly dated is read by the one that can’t be older', () => {
    const claims = [dated('serviced', '2015-05-05'), dated('serviced', '2010-01-01', '2020-12-31')];
    for (const list of [claims, claims.toReversed()])
      expect(range(sinceLast(list, 'serviced', BUILT))).toEqual(['2015-05-05', '2015-05-05']);
  });

  it('passes over other clocks and answers without a date', () => {
    const claims = [dated('fitted', '2021-01-01'), said('used', 'unknown'), dated('used', '2019-01-01')];
    expect(range(sinceLast(claims, 'used', BUILT))).toEqual(['2019-01-01', '2019-01-01']);
    expect(sinceLast(claims, 'serviced', BUILT)).toBeNull();
  });

  it('“original” is an event too: it was last done when the car was built', () => {
    expect(range(sinceLast([said('serviced', 'original')], 'serviced', BUILT))).toEqual(['1972-01-01', '1972-12-31']);
  });
});

describe('clocks bound each other', () => {
  it('nothing is fitted before it is made', () => {
    const claims = [dated('made', '2012-03-01', '2012-03-31'), dated('fitted', '2010-01-01', '2014-12-31')];
    expect(range(bounded(claims, 'fitted'))).toEqual(['2012-03-01', '2014-12-31']);
  });

  it('it may be fitted on the very day it was made', () => {
    const claims = [dated('made', '2014-12-31'), dated('fitted', '2010-01-01', '2014-12-31')];
    expect(range(bounded(claims, 'fitted'))).toEqual(['2014-12-31', '2014-12-31']);
    const other = [dated('made', '2010-01-01', '2014-12-31'), dated('fitted', '2010-01-01')];
    expect(range(bounded(other, 'made'))).toEqual(['2010-01-01', '2010-01-01']);
  });

  it('nothing is made after it was fitted', () => {
    const claims = [dated('made', '2009-01-01', '2013-12-31'), dated('fitted', '2011-05-05')];
    expect(range(bounded(claims, 'made'))).toEqual(['2009-01-01', '2011-05-05']);
  });

  it('nothing is made, fitted or filled after its last service or use', () => {
    for (const later of ['serviced', 'used'] as const)
      for (const clock of ['made', 'fitted', 'filled'] as const)
        expect(range(bounded([dated(clock, '2009-01-01', '2013-12-31'), dated(later, '2011-05-05')], clock))).toEqual([
          '2009-01-01',
          '2011-05-05',
        ]);
  });

  it('nothing is filled, serviced or used before it is fitted', () => {
    for (const later of ['filled', 'serviced', 'used'] as const)
      expect(range(bounded([dated('fitted', '2011-05-05'), dated(later, '2009-01-01', '2013-12-31')], later))).toEqual([
        '2011-05-05',
        '2013-12-31',
      ]);
  });

  it('a service says nothing about the last use, nor the use about the service', () => {
    const claims = [dated('serviced', '2011-05-05'), dated('used', '2009-01-01', '2013-12-31')];
    expect(range(bounded(claims, 'used'))).toEqual(['2009-01-01', '2013-12-31']);
    expect(range(bounded(claims, 'serviced'))).toEqual(['2011-05-05', '2011-05-05']);
  });

  it('a label’s last day bounds nothing', () => {
    const claims = [dated('printed', '2027-12-31'), dated('made', '2020-01-01', '2023-12-31')];
    expect(range(bounded(claims, 'made'))).toEqual(['2020-01-01', '2023-12-31']);
  });

  it('without a date of its own a clock is known by its bounds alone, and it is said', () => {
    const made = bounded([dated('fitted', '2015-06-03')], 'made');
    expect(made).toEqual({ from: null, to: '2015-06-03', evidence: null, disagree: false, contradicted: false });
    const fitted = bounded([dated('made', '2012-03-01', '2012-03-31')], 'fitted');
    expect(fitted).toMatchObject({ from: '2012-03-01', to: null, evidence: null });
    const both = [dated('made', '2012-03-01'), dated('serviced', '2014-01-01')];
    expect(range(bounded(both, 'fitted'))).toEqual(['2012-03-01', '2014-01-01']);
  });

  it('the tightest bounds count', () => {
    const claims = [
      dated('made', '2010-01-01'),
      dated('fitted', '2011-01-01'),
      dated('serviced', '2015-01-01'),
      dated('used', '2014-01-01'),
    ];
    expect(range(bounded(claims, 'filled'))).toEqual(['2011-01-01', '2014-01-01']);
  });

  it('a date open at one end is closed by another clock', () => {
    const fitted = [dated('made', '2012-03-01'), dated('fitted', null, '2014-12-31')];
    expect(range(sinceOf(fitted, 'fitted', UNBUILT, true))).toEqual(['2012-03-01', '2014-12-31']);
    const made = [dated('made', '2012-03-01', null), dated('fitted', '2014-12-31')];
    expect(range(sinceOf(made, 'made', UNBUILT, true))).toEqual(['2012-03-01', '2014-12-31']);
  });

  it('a bound that would leave nothing open is passed over', () => {
    const claims = [dated('made', '2016-01-01'), dated('fitted', '2015-06-03')];
    expect(range(bounded(claims, 'fitted'))).toEqual(['2015-06-03', '2015-06-03']);
    expect(range(bounded(claims, 'made'))).toEqual(['2016-01-01', '2016-01-01']);
  });

  it('nothing known on any clock is nothing', () => {
    expect(bounded([], 'made')).toBeNull();
    expect(bounded([said('fitted', 'unknown')], 'made')).toBeNull();
  });

  it('a single claim of its own stands as it is', () => {
    expect(range(bounded([dated('made', '2012-03-01', '2012-03-31')], 'made'))).toEqual(['2012-03-01', '2012-03-31']);
  });
});

describe('the label’s last valid day', () => {
  const label = (claims: Claim[], cautious = true) => labelOf(claims, BUILT, cautious);

  it('is the end of what is printed', () => {
    expect(label([dated('printed', '2027-01-01', '2027-12-31')])).toBe('2027-12-31');
    expect(label([dated('made', '2027-01-01')])).toBeNull();
    expect(label([said('printed', 'unknown')])).toBeNull();
  });

  it('is the start where the end is open', () =>
    expect(label([dated('printed', '2028-01-01', null)])).toBe('2028-01-01'));

  it('of labels that disagree is the earliest: one strap run out is the harness run out', () => {
    const straps = [dated('printed', '2026-12-31'), dated('printed', '2024-12-31'), dated('printed', '2027-12-31')];
    expect(label(straps)).toBe('2024-12-31');
    expect(label(straps, false)).toBe('2024-12-31');
  });

  it('by a weaker word counts only for a safety item without a receipt', () => {
    const weak = dated('printed', '2024-12-31', '2024-12-31', { evidence: 'assumed' });
    const photo = dated('printed', '2027-12-31', '2027-12-31', { evidence: 'dated photo' });
    expect(label([photo, weak])).toBe('2024-12-31');
    expect(label([photo, weak], false)).toBe('2027-12-31');
    expect(label([dated('printed', '2027-12-31'), weak])).toBe('2027-12-31');
  });
});
