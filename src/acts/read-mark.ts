/** Reads what is printed, stamped or molded on a part, by the way its kind carries its date. */
import type { Clock } from '../catalogue/clock.ts';
import type { Mark } from '../catalogue/kind.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { MarkAnswer } from '../dates/marks/answer.ts';
import { readBatteryCode } from '../dates/marks/battery-code.ts';
import { readHarnessLabel } from '../dates/marks/harness-label.ts';
import { readHoseLabel } from '../dates/marks/hose-label.ts';
import { readMonthClock } from '../dates/marks/month-clock.ts';
import { readPeriodPrint } from '../dates/marks/period-print.ts';
import type { DateRange } from '../dates/partial-date.ts';
import { explainTireCode } from '../dates/tire-code/explain.ts';
import type { KnownAboutTire } from '../dates/tire-code/narrow.ts';
import { readTireCode } from '../dates/tire-code/read.ts';

export type MarkRead =
  | { ok: true; candidates: (DateRange & { from: CivilDate; to: CivilDate })[]; next: string[] }
  | { ok: false; message: string };

export const readMark = (
  typed: string,
  mark: Mark,
  clock: Clock,
  today: CivilDate,
  known: KnownAboutTire,
): MarkRead => {
  switch (mark) {
    case 'tire code': {
      const answer = readTireCode(typed, today, known);
      const words = explainTireCode(answer, today);
      if (!answer.ok) return { ok: false, message: [words.title, ...words.working, ...words.next].join(' ') };
      return { ok: true, candidates: answer.candidates, next: answer.asks ? words.next.slice(0, 1) : [] };
    }
    case 'hose label':
      return plain(readHoseLabel(typed, today));
    case 'battery code':
      return plain(readBatteryCode(typed, today, known));
    case 'month clock':
      return plain(readMonthClock(typed, today));
    case 'period print':
      return plain(readPeriodPrint(typed, today));
    case 'harness label':
      // When it was made is the same by either standard; how long it is valid is not.
      return expiry(readHarnessLabel(typed, today, clock === 'made' ? 'us' : undefined), clock);
  }
};

const plain = (answer: MarkAnswer): MarkRead =>
  answer.ok ? { ok: true, candidates: answer.candidates, next: [] } : answer;

/** On the clock of printed dates, the last valid day is what counts; on the others, the day it was made. */
const expiry = (answer: MarkAnswer, clock: Clock): MarkRead => {
  if (!answer.ok || clock !== 'printed') return plain(answer);
  const candidates = answer.candidates.flatMap(({ validThrough }) =>
    validThrough ? [{ from: validThrough, to: validThrough }] : [],
  );
  return candidates.length > 0
    ? { ok: true, candidates, next: [] }
    : { ok: false, message: 'This label states no last valid day.' };
};
