/** The lay-up plan on paper: dated, in order, to be ticked by hand. */
import type { CivilDate } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { papersInWords } from '../../plans/papers.ts';
import { isDone, isOpen, type Plan } from '../../plans/plan.ts';
import { CIRCUMSTANCES, type Stay } from '../../plans/stay.ts';
import { Blank, Head, type OnPaper, SheetCautions } from './sheet.tsx';
import { StepList } from './step-list.tsx';

export const PlanSheet = (made: OnPaper) => {
  const { here } = made;
  const { record, found, view } = here;
  const { stay, layUp } = view;
  return (
    <>
      <Head {...made}>
        {stay.circumstances.length > 0 && <p>{stay.circumstances.map((one) => `${CIRCUMSTANCES[one]}.`).join(' ')}</p>}
        {record.row.note && <p>{record.row.note}</p>}
        <p>{progressInWords(layUp)}</p>
      </Head>
      <SheetCautions keys={layUp.steps.flatMap(({ cautions }) => cautions)} />
      <StepList plan={layUp} stay={stay} anchor={stay.parkedOn} anchorName="parking day" parts={found.parts} />
      <Papers stay={stay} />
    </>
  );
};

/** “34 steps: 9 done (filled), 2 left out (struck), 23 to do, about 11 hours hands on.” */
export const progressInWords = ({ steps }: Plan): string => {
  const open = steps.filter(isOpen);
  const done = steps.filter(isDone).length;
  const skipped = steps.length - open.length - done;
  const hours = Math.ceil(open.reduce((sum, step) => sum + (step.minutes ?? 0), 0) / 60);
  return `${count(steps.length, 'step')}: ${done} done (filled), ${skipped} left out (struck), ${open.length} to do${
    hours > 0 ? `, about ${count(hours, 'hour')} hands on` : ''
  }.`;
};

/** Days and rules as told, or a line to write them on; what does not fit together is said below. */
export const Papers = ({ stay }: { stay: Stay }) => {
  const { storageFrom, roadUntil, noticeFrom, renewsOn, rules } = stay.papers;
  const days: readonly (readonly [string, CivilDate | null])[] = [
    ['Cover while it stands begins', storageFrom],
    ['Cover for the road ends', roadUntil],
    ['Off-road notice takes effect', noticeFrom],
    ['The policy renews or runs out', renewsOn],
  ];
  const gaps = papersInWords(stay).slice(days.length + 1);
  return (
    <section class="papers">
      <h2>Papers</h2>
      <dl>
        {days.map(([what, day]) => (
          <div>
            <dt>{what}</dt>
            <dd>{day ? dayInWords(day) : <Blank size="rest" />}</dd>
          </div>
        ))}
        <div>
          <dt>Confirmed by, number</dt>
          <dd>
            <Blank size="rest" />
          </dd>
        </div>
        <div class="rules">
          <dt>Rules of the place</dt>
          <dd>{rules || <Blank size="rest" />}</dd>
        </div>
      </dl>
      {gaps.map((gap) => (
        <p class="gap">{gap}</p>
      ))}
    </section>
  );
};
