import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/dates/civil.ts';
import { gapsIn, papersInWords } from '../../src/plans/papers.ts';
import { NO_PAPERS, type Papers } from '../../src/plans/stay.ts';
import { layUpWith, PARKED, stepIn } from '../support/stays.ts';

const words = (papers: Partial<Papers>): string =>
  papersInWords({ papers: { ...NO_PAPERS, ...papers }, parkedOn: PARKED }).join('\n');

const gaps = (papers: Partial<Papers>) => gapsIn({ ...NO_PAPERS, ...papers }, PARKED);

/** The sentences of each gap, told apart by a few of their words. */
const GAPS = {
  'notice-late': 'such a gap draws letters and fines',
  uncovered: 'it has no cover at all',
  'road-cover-early': 'Cover for the road ends before the parking day',
  'notice-early': 'The notice takes effect before the parking day',
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
    [{ roadUntil: '2026-11-02', noticeFrom: '2026-11-03' }, ['notice-late']],
    [{ roadUntil: '2026-11-02', noticeFrom: '2026-11-02' }, []],
    [{ roadUntil: '2026-11-02', storageFrom: '2026-11-02' }, []],
    // Cover to the end of one day and from the next is none.
    [{ roadUntil: '2026-11-02', storageFrom: '2026-11-03' }, []],
    [{ roadUntil: '2026-11-02', storageFrom: '2026-11-04' }, ['uncovered']],
    [{ roadUntil: '2026-10-31' }, ['road-cover-early']],
    [{ roadUntil: '2026-11-01' }, []],
    [{ noticeFrom: '2026-10-31' }, ['notice-early']],
    [{ noticeFrom: '2026-11-01' }, []],
    [
      { roadUntil: '2026-10-20', noticeFrom: '2026-10-25', storageFrom: '2026-10-25' },
      ['notice-late', 'uncovered', 'road-cover-early', 'notice-early'],
    ],
    [{}, []],
  ] as readonly (readonly [Partial<Papers>, readonly Gap[]])[])('of %o have the gaps %o', (papers, wanted) => {
    expect(gaps(papers).map(({ key }) => key)).toEqual(wanted);
    const told = words(papers);
    for (const [gap, says] of Object.entries(GAPS)) expect(told.includes(says), gap).toBe(wanted.includes(gap as Gap));
  });

  it('have gaps that open on the day the cover for the road ends; a notice that is early lapses nothing', () => {
    const roadUntil = '2026-10-20';
    const all = gaps({ roadUntil, noticeFrom: addDays(roadUntil, 5), storageFrom: addDays(roadUntil, 5) });
    expect(all.map(({ from }) => from)).toEqual([roadUntil, roadUntil, roadUntil, null]);
  });

  it('are read on the steps of insurer and registry, and on the one that keeps road cover', () => {
    const papers = { roadUntil: '2026-10-31' } as const;
    for (const key of ['insurer', 'registry'])
      expect(stepIn(layUpWith({ papers }), key).lines.join()).toContain(GAPS['road-cover-early']);
    const driven = layUpWith({ papers, choices: { running: 'drive' } });
    expect(stepIn(driven, 'keep-road-cover').lines.join()).toContain(GAPS['road-cover-early']);
  });
});
