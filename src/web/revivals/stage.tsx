/** One stage: its steps in order, its cautions, and the gate that ends it. */
import type { Fault } from '../../acts/fault.ts';
import { isOver, type RevivalHere } from '../../acts/revivals.ts';
import { passGate } from '../../acts/work-revival.ts';
import { dayInWords } from '../../dates/words.ts';
import { spanInWords } from '../../money/words.ts';
import type { StagePlan } from '../../revival/plan.ts';
import { STAGE_KEYS, STAGES, type StageKey } from '../../revival/stages.ts';
import { ceilingOf } from '../../revival/stops.ts';
import { Cautions } from '../cautions.tsx';
import { readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { GATE_FORM } from './forms.ts';
import { pathOf, revivalInPath } from './in-path.ts';
import { StepLine } from './step-facts.tsx';
import { against, GATE_WORDS, GateMark, progressOf } from './words.tsx';

const stageInPath = (c: Ctx): { here: RevivalHere; stage: StagePlan } | undefined => {
  const here = revivalInPath(c);
  const stage = here?.plan.stages.find(({ key }) => key === c.req.param('stage'));
  return here && stage ? { here, stage } : undefined;
};

type GateGiven = { by?: string; note?: string };

export const stagePage = (c: Ctx) => {
  const found = stageInPath(c);
  return found ? show(c, found, [], {}) : notFound(c, 'stage');
};

export const passGatePage = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stageInPath(c);
  if (!found) return notFound(c, 'stage');
  const form = await readForm(c, GATE_FORM);
  const { here, stage } = found;
  const outcome = passGate(c.get('around').store, actingIn(visit), here, stage.key, {
    day: form.day || visit.on,
    by: form.by,
    note: form.note,
    inWriting: form.writing === 'on',
  });
  if (!outcome.ok) return show(c, found, outcome.faults, form);
  return c.redirect(at(visit, `${pathOf(here)}#${nextOf(stage.key)}`), 303);
};

const nextOf = (key: StageKey): StageKey => STAGE_KEYS[STAGE_KEYS.indexOf(key) + 1] ?? key;

const show = (c: Ctx, found: { here: RevivalHere; stage: StagePlan }, faults: readonly Fault[], given: GateGiven) =>
  page(
    c,
    `${found.stage.stage.name}: ${found.here.found.car.name}`,
    <StageShown {...found} faults={faults} given={given} />,
    faults.length > 0 ? 422 : 200,
  );

interface Shown {
  here: RevivalHere;
  stage: StagePlan;
  faults: readonly Fault[];
  given: GateGiven;
}

const StageShown = ({ here, stage, faults, given }: Shown) => {
  const { on } = useVisit();
  const cautions = [...new Set(stage.steps.flatMap((step) => step.cautions))];
  const place = STAGE_KEYS.indexOf(stage.key);
  const before = STAGE_KEYS[place - 1];
  const after = STAGE_KEYS[place + 1];
  return (
    <>
      <p class="crumb">
        <A to={pathOf(here)}>Return of {here.found.car.name}</A>
      </p>
      <h1>
        {place + 1}. {stage.stage.name}
      </h1>
      <p class="lede">{stage.stage.why}</p>
      <FaultSummary faults={faults} />
      <p>
        {progressOf(stage.steps)} · <A to={pathOf(here, `/sheets/stages?stage=${stage.key}`)}>Print this stage</A>
      </p>
      <Cautions keys={cautions} />
      <section aria-labelledby="steps">
        <h2 id="steps">Steps, in this order</h2>
        {stage.steps.length === 0 && <p>This car has nothing to do here, by what is known of it.</p>}
        <ol class="steps">
          {stage.steps.map((step) => (
            <StepLine here={here} step={step} />
          ))}
        </ol>
      </section>
      <GateShown here={here} stage={stage} faults={faults} given={given} over={isOver(here.record, on)} />
      <p class="crumb">
        {before && <A to={pathOf(here, `/stages/${before}`)}>Before it: {STAGES[before].name}</A>}
        {before && after && ' · '}
        {after && <A to={pathOf(here, `/stages/${after}`)}>After it: {STAGES[after].name}</A>}
      </p>
    </>
  );
};

const GateShown = ({ here, stage, faults, given, over }: Shown & { over: boolean }) => {
  const { gate } = stage;
  const held = gate.state === 'passed' || gate.state === 'in writing';
  return (
    <section class={`gate ${gate.state.replace(' ', '-')}`} aria-labelledby="gate">
      <h2 id="gate">
        <GateMark gate={gate} /> {GATE_WORDS[gate.state]}
      </h2>
      <p>It asks: {stage.stage.gate}.</p>
      {gate.pass && (
        <p>
          {held ? 'Passed' : 'It was passed'} on {dayInWords(gate.pass.day)} by {gate.pass.by}
          {gate.pass.note && `: ${gate.pass.note}`}
          {held ? '' : '; what lacks now came up since.'}
        </p>
      )}
      {gate.lacks.length > 0 && (
        <>
          <h3>What it lacks</h3>
          <ul>
            {gate.lacks.map(({ words }) => (
              <li>{words}</li>
            ))}
          </ul>
        </>
      )}
      {gate.written.length > 0 && (
        <>
          <h3>Taken on in writing; it clears nothing for the road</h3>
          <ul>
            {gate.written.map(({ words }) => (
              <li>{words}</li>
            ))}
          </ul>
        </>
      )}
      <Review here={here} />
      {!over && !held && <PassForm here={here} stage={stage} faults={faults} given={given} />}
    </section>
  );
};

/** After each stage: what was spent and is to come, against the ceiling. */
const Review = ({ here: { plan, rates } }: { here: RevivalHere }) => {
  const ceiling = ceilingOf(plan.entries, plan.revival);
  return (
    <p>
      Spent and to come: {spanInWords(plan.money.total, rates.currency)}
      {ceiling === null ? '; no ceiling was agreed' : `; ${against(plan.money, ceiling)}`}.
    </p>
  );
};

const PassForm = ({ here, stage, faults, given }: Shown) => {
  const { on, person } = useVisit();
  const path = pathOf(here, `/stages/${stage.key}/pass`);
  const shut = stage.gate.lacks.length > 0;
  const fields = (
    <>
      <input type="hidden" name="day" value={on} />
      <label>
        Name
        <input name="by" value={given.by ?? person.name} autocomplete="off" {...faultsOf(faults, 'by')} />
      </label>
      <Faults faults={faults} field="by" />
      <label>
        {shut ? 'Reason' : 'Note'}
        <textarea name="note" rows={2} {...faultsOf(faults, 'note')}>
          {given.note ?? ''}
        </textarea>
      </label>
      <Faults faults={faults} field="note" />
      <Faults faults={faults} field="gate" />
    </>
  );
  return shut ? (
    <details open={faults.length > 0}>
      <summary>Go on all the same, in writing</summary>
      <p class="hint">
        With a name and a reason. The car stays “no” on its road check while a gate of safety stands open in writing.
      </p>
      <Post to={path} class="stacked">
        <input type="hidden" name="writing" value="on" />
        {fields}
        <button class="quiet">Pass it in writing</button>
      </Post>
    </details>
  ) : (
    <Post to={path} class="stacked">
      {fields}
      <button class="big">Pass this gate</button>
    </Post>
  );
};
