/** The other dates people read off parts: labels, codes, prints and stamps. */
import type { SourceKey } from '../../catalogue/sources.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { MarkAnswer } from '../../dates/marks/answer.ts';
import { readBatteryCode } from '../../dates/marks/battery-code.ts';
import { readExtinguisherStamp } from '../../dates/marks/extinguisher-stamp.ts';
import { readHarnessLabel } from '../../dates/marks/harness-label.ts';
import { readHoseLabel } from '../../dates/marks/hose-label.ts';
import { readMonthClock } from '../../dates/marks/month-clock.ts';
import { readPeriodPrint } from '../../dates/marks/period-print.ts';
import { readPrintedExpiry } from '../../dates/marks/printed-expiry.ts';
import { ageInWords, ageOf, dayInWords, rangeInWords } from '../../dates/words.ts';
import { useVisit } from '../layout.tsx';
import { Sources } from '../sources.tsx';

interface ReadableMark {
  name: string;
  hint: string;
  sources: readonly SourceKey[];
  read(typed: string, today: CivilDate): MarkAnswer;
}

const MARKS: Readonly<Record<string, ReadableMark>> = {
  hose: {
    name: 'Brake hose label',
    hint: '3/15/09 or 03/2011, month first',
    sources: ['49-cfr-571-106'],
    read: readHoseLabel,
  },
  battery: {
    name: 'Battery letter and digit',
    hint: 'C7, or a sticker 3/17',
    sources: ['battery-age-guides', 'memory'],
    read: readBatteryCode,
  },
  clock: {
    name: 'Molded month clock',
    hint: '6/09: month the arrow points to, year in the center',
    sources: ['common-practice'],
    read: readMonthClock,
  },
  print: {
    name: 'Quarter or week print on hose or belt',
    hint: '3Q09, 24/07, KW 24/2007',
    sources: ['common-practice'],
    read: readPeriodPrint,
  },
  'harness-international': {
    name: 'Harness, international label',
    hint: 'not valid after 2028, or the year made',
    sources: ['fia-8853-98', 'harness-technical-bulletin'],
    read: (typed, today) => readHarnessLabel(typed, today, 'international'),
  },
  'harness-us': {
    name: 'Harness, US label',
    hint: 'punched month and year: 3/24',
    sources: ['sfi-16-1', 'harness-technical-bulletin'],
    read: (typed, today) => readHarnessLabel(typed, today, 'us'),
  },
  expiry: {
    name: 'Printed expiry',
    hint: '2027-06, 06/2027, 2028',
    sources: ['common-practice'],
    read: readPrintedExpiry,
  },
  'extinguisher-disposable': {
    name: 'Extinguisher, disposable',
    hint: 'year or month and year stamped in the base',
    sources: ['nfpa-10'],
    read: (typed, today) => readExtinguisherStamp(typed, today, 'disposable'),
  },
  'extinguisher-rechargeable': {
    name: 'Extinguisher, rechargeable',
    hint: 'year or month and year on the shell',
    sources: ['nfpa-10'],
    read: (typed, today) => readExtinguisherStamp(typed, today, 'rechargeable'),
  },
};

export const OtherMarks = ({ mark: chosen, typed }: { mark: string; typed: string }) => {
  const { on, site, today } = useVisit();
  const mark = MARKS[chosen];
  const answer = mark && typed ? mark.read(typed, on) : null;
  return (
    <section aria-labelledby="marks" class={answer ? undefined : 'screen-only'}>
      <h2 id="marks">Other dates on parts</h2>
      <form method="get" action={`${site.base}/date-codes#marks`} class="stacked">
        {on !== today && <input type="hidden" name="on" value={on} />}
        <label>
          What carries it
          <select name="mark">
            {Object.entries(MARKS).map(([key, { name, hint }]) => (
              <option value={key} selected={key === chosen}>
                {name}: {hint}
              </option>
            ))}
          </select>
        </label>
        <label>
          What it says
          <input name="typed" value={typed} autocomplete="off" />
        </label>
        <button>Read the mark</button>
      </form>
      {answer && <MarkShown answer={answer} typed={typed} />}
      {answer && mark && <Sources keys={mark.sources} />}
    </section>
  );
};

const MarkShown = ({ answer, typed }: { answer: MarkAnswer; typed: string }) => {
  const { on } = useVisit();
  if (!answer.ok)
    return (
      <p class="fault" role="alert">
        <code>{typed}</code>: {answer.message}
      </p>
    );
  return (
    <article class="code">
      <h3>
        <code>{typed}</code>
      </h3>
      <ul>
        {answer.candidates.map((candidate) => (
          <li>
            <strong>
              {candidate.validThrough ? `Valid through ${dayInWords(candidate.validThrough)}` : rangeInWords(candidate)}
            </strong>
            {!candidate.validThrough && <>: {ageInWords(ageOf(candidate, on))}</>}
            {candidate.validThrough && candidate.validThrough < on && ' – that day is past'}
            {candidate.note && <> ({candidate.note})</>}
          </li>
        ))}
        {answer.working.map((step) => (
          <li>{step}</li>
        ))}
      </ul>
      {answer.doubts.map((doubt) => (
        <p class="doubt">Doubt: {doubt}</p>
      ))}
    </article>
  );
};
