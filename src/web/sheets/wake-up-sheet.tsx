/** The wake-up plan on paper, with what was not done before it stood, and the road check at its end. */
import { type CivilDate, latest } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { outcomeOf } from '../../plans/lay-up.ts';
import { nameOf } from '../../plans/lists.ts';
import { isDone, type PlanStep } from '../../plans/plan.ts';
import { foundInWords } from '../../plans/rounds.ts';
import type { StayView } from '../../plans/standing.ts';
import { WAKE_UP_STEPS } from '../../plans/wake-up.ts';
import { Papers, progressInWords } from './plan-sheet.tsx';
import { Blank, Box, Head, type OnPaper, SheetCautions } from './sheet.tsx';
import { StepList } from './step-list.tsx';

export const WakeUpSheet = (made: OnPaper) => {
  const { found, view } = made.here;
  const { stay, wakeUp, layUp, state } = view;
  const standing = state === 'standing';
  const { undone } = outcomeOf(layUp, standing);
  const anchor = stay.returnOn ?? latest(view.on, stay.parkedOn);
  return (
    <>
      <Head {...made}>
        <p>{progressInWords(wakeUp)}</p>
        {!standing && <p class="gap">Not parked yet: made as if all of the lay-up were done. Print it anew in time.</p>}
        {stay.returnOn === null && <p class="gap">Open end: made as if it came back on {dayInWords(anchor)}.</p>}
      </Head>
      <Undone steps={standing ? layUp.steps.filter((step) => step.applies && !isDone(step)) : []} />
      <SheetCautions keys={wakeUp.steps.flatMap(({ cautions }) => cautions)} />
      <StepList
        plan={wakeUp}
        stay={stay}
        anchor={anchor}
        anchorName="it comes back"
        parts={found.parts}
        mark={({ key }) => (isFor(key, undone) ? 'Left undone' : null)}
      />
      <Papers stay={stay} />
      <Gate view={view} anchor={anchor} />
    </>
  );
};

/** Whether a step makes up for one of the lay-up that was not done. */
const isFor = (key: string, undone: ReadonlySet<string>): boolean =>
  WAKE_UP_STEPS.some((row) => row.key === key && row.when.some((when) => when.undone?.some((one) => undone.has(one))));

const Undone = ({ steps }: { steps: readonly PlanStep[] }) =>
  steps.length === 0 ? null : (
    <section class="undone">
      <h2>Left undone before it stood</h2>
      <ul>
        {steps.map(({ title, tick }) => (
          <li>
            {title}
            {tick ? ` (left out: ${tick.note})` : ''}
          </li>
        ))}
      </ul>
    </section>
  );

/** What speaks against the road, by the day it comes back; never a plain yes. */
const Gate = ({ view, anchor }: { view: StayView; anchor: CivilDate }) => {
  const { on } = view;
  const ahead = view.state === 'ahead';
  const { answer, against, found, unchecked, due } = view.roadCheck;
  return (
    <section class="gate">
      <h2>Road check, by what is recorded, for {dayInWords(ahead ? anchor : on)}</h2>
      <p class="answer">{answer === 'no' ? 'Not on the road until these are put right' : 'A local drive at most'}</p>
      <Speaks title="Speaks against any drive" findings={against} />
      {found.length > 0 && (
        <>
          <h3>Found on the rounds</h3>
          <ul class="buy">
            {found.map((one) => (
              <li>
                <Box /> {foundInWords(one)}
              </li>
            ))}
          </ul>
        </>
      )}
      <Speaks title="Age not known: look before the drive" findings={unchecked} />
      <Speaks title="Due, or to look at" findings={due} />
      <p class="first-drive">First drive: daylight, dry, under 50 km/h (30 mph), under 10 km (6 miles)</p>
      <p class="sign">
        Checked by <Blank size="long" /> on <Blank />
      </p>
    </section>
  );
};

const Speaks = ({ title, findings }: { title: string; findings: readonly Finding[] }) =>
  findings.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      <ul class="buy many">
        {findings.map((finding) => (
          <li>
            <Box /> {nameOf(finding)}
          </li>
        ))}
      </ul>
    </>
  );
