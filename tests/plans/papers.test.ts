import { describe, expect, it } from 'vitest';
import { papersInWords } from '../../src/plans/papers.ts';
import { NO_PAPERS, type Papers } from '../../src/plans/stay.ts';
import { layUpWith, PARKED, stepIn } from '../support/stays.ts';

const words = (papers: Partial<Papers>): string =>
  papersInWords({ papers: { ...NO_PAPERS, ...papers }, parkedOn: PARKED }).join('\n');

/** The sentences of each gap, told apart by a few of their words. */
const GAPS = {
  notice: 'The notice takes effect after the cover for the road ends',
  cover: 'Between the cover for the road and the one while it stands there is a gap',
  early: 'Cover for the road ends before the parking day',
  parked: 'The notice takes effect before the parking day',
} as const;
type Gap = keyof typeof GAPS;

describe('the papers', () => {
  it('untold are said to be untold, each of them, and the rules of the place are asked for', () => {
    expect(words({}).match(/not told yet/g)).toHaveLength(5);
    expect(words({})).toContain('ask insurer and registry');
  });

  it('are told by their days, the rules as they were written', () => {
    const told = words({ storageFrom: '2026-11-01', rules: 'Notice by post, two weeks' });
    expect(told).toContain('Cover while it stands begins: 1 November 2026');
    expect(told).toContain('Rules of the place: Notice by post, two weeks');
  });

  it.each([
    [{ roadUntil: '2026-11-02', noticeFrom: '2026-11-03' }, ['notice']],
    [{ roadUntil: '2026-11-02', noticeFrom: '2026-11-02' }, []],
    [{ roadUntil: '2026-11-02', storageFrom: '2026-11-02' }, []],
    [{ roadUntil: '2026-11-02', storageFrom: '2026-11-05' }, ['cover']],
    [{ roadUntil: '2026-10-31' }, ['early']],
    [{ roadUntil: '2026-11-01' }, []],
    [{ noticeFrom: '2026-10-31' }, ['parked']],
    [{ noticeFrom: '2026-11-01' }, []],
    [
      { roadUntil: '2026-10-20', noticeFrom: '2026-10-25', storageFrom: '2026-10-25' },
      ['notice', 'cover', 'early', 'parked'],
    ],
    [{}, []],
  ] as readonly (readonly [Partial<Papers>, readonly Gap[]])[])('of %o have the gaps %o', (papers, gaps) => {
    const told = words(papers);
    for (const [gap, says] of Object.entries(GAPS)) expect(told.includes(says), gap).toBe(gaps.includes(gap as Gap));
  });

  it('are read on the steps of insurer and registry', () => {
    const plan = layUpWith({ papers: { roadUntil: '2026-10-31' } });
    for (const key of ['insurer', 'registry']) expect(stepIn(plan, key).lines.join()).toContain(GAPS.early);
  });
});
