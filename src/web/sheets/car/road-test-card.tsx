/** The card for the road tests, and behind it what falls due after them and the leak map. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { dayInWords } from '../../../dates/words.ts';
import { stepsIn } from '../../../revival/plan.ts';
import { RUNS, type RunKey, SENSES, type Sense, VERSUS, type Versus } from '../../../revival/runs.ts';
import { Blank, Box } from '../sheet.tsx';
import { DueAfter } from './due-after.tsx';
import { LeakMap } from './leak-map.tsx';
import { shutBelow } from './shut-below.ts';
import { Stopped } from './stopped.tsx';

export const RoadTestCard = ({ here }: { here: RevivalHere }) => {
  const shut = shutBelow(here.plan, 'yard');
  return (
    <>
      <Stopped plan={here.plan} />
      {shut.length > 0 && (
        <p class="stopped">
          Not yet: {shut.length === 1 ? 'a gate' : `${shut.length} gates`} below the first run{' '}
          {shut.length === 1 ? 'is' : 'are'} not passed, the first of them {shut[0]?.stage.name}.
        </p>
      )}
      <p>
        <b>Alone in the car, daylight, dry, a phone, somebody who knows the way, a plan for the tow.</b> Each run only
        when the one before ended as planned and nothing got worse.
      </p>
      {(Object.keys(RUNS) as RunKey[]).map((run) => (
        <RunBox here={here} run={run} />
      ))}
      <h2>Noted: the run’s letter into the box it belongs to, against the run before</h2>
      <div class="notes">
        {NOTED.map((sense) => SENSES[sense]).map(({ name, kinds }) => (
          <section>
            <h3>
              <b>{name}</b>
              {VERSUS.map((versus) => (
                <span> {VERSUS_WORDS[versus]}</span>
              ))}
            </h3>
            {kinds.map((kind) => (
              <p>
                {kind}
                {VERSUS.map(() => (
                  <Box />
                ))}
              </p>
            ))}
          </section>
        ))}
      </div>
      <section class="page-break">
        <DueAfter here={here} />
      </section>
      <LeakMap />
    </>
  );
};

/** In an order that fills three columns alike. */
const NOTED: readonly Sense[] = ['noise', 'look', 'smell', 'feel', 'gauge'];

/** On paper in a word that needs no telling. */
const VERSUS_WORDS: Readonly<Record<Versus, string>> = { new: 'new', colder: 'less', same: 'same', worse: 'worse' };

const RunBox = ({ here, run }: { here: RevivalHere; run: RunKey }) => {
  const { name, distance, speed, looks, stopIf, afterwards } = RUNS[run];
  const step = stepsIn(here.plan).find((one) => one.run === run);
  const driven = step?.state === 'done' ? step.settled : null;
  return (
    <section class="run-card">
      <h2>
        <span>
          <Box state={driven ? 'done' : 'open'} /> {name}: {distance}. {speed}.
        </span>
        {!driven && (
          <span>
            <Box /> as planned <Box /> stopped
          </span>
        )}
      </h2>
      <p>
        Watch: {looks}. <b>Stop if: {stopIf}.</b> After: {afterwards}
      </p>
      {driven ? (
        <p>
          Ended as planned on {dayInWords(driven.day)}, by {driven.by}.
        </p>
      ) : (
        <p class="hubs">
          Who <Blank /> Day <Blank /> Odometer <Blank /> Hubs °C: FL <Blank /> FR <Blank /> RL <Blank /> RR <Blank />
        </p>
      )}
    </section>
  );
};
