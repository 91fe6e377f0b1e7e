/** One step on a stage sheet: filled with day and name where it is settled, else with all that its work asks for. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import type { CautionKey } from '../../../catalogue/cautions.ts';
import { KINDS } from '../../../catalogue/kinds.ts';
import { dayInWords } from '../../../dates/words.ts';
import { SUPPLIES } from '../../../money/supplies.ts';
import { hoursInWords, spanInWords } from '../../../money/words.ts';
import type { RevivalStep } from '../../../revival/plan.ts';
import { isSettled } from '../../../revival/step-state.ts';
import { ACT_WORDS } from '../../revivals/step-facts.tsx';
import { Blank, Box, type BoxState } from '../sheet.tsx';
import { LookBoxes } from './look-boxes.tsx';

interface Shown {
  here: RevivalHere;
  step: RevivalStep;
  prices: boolean;
  /** Of its stage, by whose numbers it names its own. */
  cautions: readonly CautionKey[];
  told: (note: string) => string;
}

const BOXES: Readonly<Record<RevivalStep['state'], BoxState>> = {
  open: 'open',
  again: 'open',
  done: 'done',
  'left out': 'skipped',
};

export const StageStep = (shown: Shown) => {
  const { way, state, safety } = shown.step;
  const settled = isSettled(shown.step);
  return (
    <div class={settled ? 'work settled' : 'work'}>
      <Box state={BOXES[state]} />
      <div>
        <p>
          <b>{way.title}</b> <span class="act">{ACT_WORDS[way.act]}</span>
          {safety && ' · safety'}
        </p>
        <SaidOf {...shown} />
        {!settled && <ToDo {...shown} />}
      </div>
      {!settled && <Lines />}
    </div>
  );
};

const SaidOf = ({ step: { state, settled }, told }: Shown) => {
  if (!settled) return null;
  const note = settled.note === '' ? '' : `: ${told(settled.note).replace(/\.$/, '')}`;
  const early = settled.what === 'tick' && settled.despite ? '; before what comes first, in writing' : '';
  const by = `on ${dayInWords(settled.day)} by ${settled.by}${early}${note}`;
  switch (state) {
    case 'done':
      return <p>{`Done ${by}.`}</p>;
    case 'left out':
      return <p>{`Left out ${by}.`}</p>;
    case 'again':
      return <p>{`To be done again; it was done ${by}.`}</p>;
    case 'open':
      return <p>{settled.what === 'run' ? `Stopped ${by}.` : `Left out before, ${by}.`}</p>;
  }
};

const ToDo = ({ here, step, prices, cautions }: Shown) => {
  const { way, because, expects, test, tools, fails, asks = [], reads = [], cautions: own } = step;
  const supplies = way.supplies ?? [];
  const takes = takesOf(here, step, prices);
  return (
    <>
      <p>
        {way.why}
        {because.length > 0 && ` Because ${because.join('; ')}.`}
      </p>
      {expects.length > 0 && (
        <p>
          <i>Expect:</i> {expects.map(({ finding, odds }) => `${finding.toLowerCase()} (${odds})`).join('; ')}.
        </p>
      )}
      {test && (
        <p>
          <i>Tell by:</i> {test}
        </p>
      )}
      <p>
        <i>If it fails:</i> {fails}
      </p>
      {(tools.length > 0 || supplies.length > 0) && (
        <p>
          {tools.length > 0 && (
            <>
              <i>Tools:</i> {tools.join(', ')}.{' '}
            </>
          )}
          {supplies.length > 0 && (
            <>
              <i>Supplies:</i> {supplies.map((key) => SUPPLIES[key].name.toLowerCase()).join(', ')}.
            </>
          )}
        </p>
      )}
      {takes && <p>{takes}</p>}
      {own.length > 0 && (
        <p>
          <b>
            {own.length === 1 ? 'Caution' : 'Cautions'} {numbersOf(own, cautions).join(', ')} above.
          </b>
        </p>
      )}
      {asks.map((look) => (
        <p class="look">
          <LookBoxes look={look} />
        </p>
      ))}
      {reads
        .filter(([kind]) => here.found.parts.some((part) => part.kind === kind))
        .map(([kind, key]) => (
          <p class="look">
            <b>{KINDS.get(kind)?.name}:</b> <Gauge kind={kind} gauge={key} />
          </p>
        ))}
    </>
  );
};

const numbersOf = (own: readonly CautionKey[], all: readonly CautionKey[]): number[] =>
  all.flatMap((key, index) => (own.includes(key) ? [index + 1] : []));

/** Hours are told in any case; what they cost, where prices are wanted. */
const takesOf = (here: RevivalHere, { cost }: RevivalStep, prices: boolean): string => {
  if (cost.hours.high === 0) return '';
  const money = (span: typeof cost.own): string => (prices ? ` and ${spanInWords(span, here.rates.currency)}` : '');
  return `Own hands ${hoursInWords(cost.ownHours)}${money(cost.own)}; a workshop ${hoursInWords(cost.hours)}${money(cost.workshop)}.`;
};

const Gauge = ({ kind, gauge }: { kind: string; gauge: string }) => {
  const test = KINDS.get(kind)?.tests.find((one) => one.gauge?.key === gauge);
  return (
    <>
      {test?.name.toLowerCase()} <Blank size="tiny" /> {test?.gauge?.unit}
    </>
  );
};

const Lines = () => (
  <div class="write">
    {['Found', 'Measured', 'Parts', 'Who'].map((what) => (
      <p>
        {what} <Blank />
      </p>
    ))}
    <p>
      Day <Blank /> Hours <Blank />
    </p>
  </div>
);
