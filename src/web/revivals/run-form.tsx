/** The form a road test is written down with: what it is, how it ended, what was noted. */
import type { Fault } from '../../acts/fault.ts';
import { those } from '../../revival/journal.ts';
import { RUNS, type RunKey, SENSES, VERSUS } from '../../revival/runs.ts';
import { DistanceField, Faults, faultsOf, Post, useVisit } from '../layout.tsx';
import { Despite } from './despite.tsx';
import { ROOM } from './forms.ts';
import { type Given, pathOf, type StepShown } from './in-path.ts';

interface Shown extends StepShown {
  run: RunKey;
  given: Given;
  faults: readonly Fault[];
}

export const RunForm = ({ here, step, run, given, faults }: Shown) => {
  const { on, person } = useVisit();
  const plan = RUNS[run];
  const text = (name: string): string => String(given[name] ?? '');
  const last = those(here.plan.entries, 'run').at(-1);
  return (
    <section aria-labelledby="run">
      <h2 id="run">Road test {plan.name}</h2>
      <dl class="run-plan">
        <dt>How far</dt>
        <dd>{plan.distance}</dd>
        <dt>How fast</dt>
        <dd>{plan.speed}</dd>
        <dt>Watch for</dt>
        <dd>{plan.looks}</dd>
        <dt>Stop if</dt>
        <dd>
          <strong>{plan.stopIf}</strong>
        </dd>
        <dt>Afterwards</dt>
        <dd>{plan.afterwards}</dd>
      </dl>
      <p class="hint">Alone in the car, daylight, dry, a phone, somebody who knows the way, a plan for the tow.</p>
      {last && last.notes.length > 0 && (
        <p>
          Noted on {RUNS[last.run].name}:{' '}
          {last.notes.map(({ sense, kind }) => `${SENSES[sense].name.toLowerCase()} ${kind}`).join(', ')}. Say below
          whether each is colder (less), the same or worse.
        </p>
      )}
      <Post to={pathOf(here, `/steps/${step.key}/run`)} class="stacked">
        <label>
          Day
          <input name="day" type="date" value={text('day') || on} max={on} {...faultsOf(faults, 'day')} />
        </label>
        <Faults faults={faults} field="day" />
        <fieldset class="choices">
          <legend>How it ended</legend>
          <label>
            <input type="radio" name="ended" value="as planned" checked={text('ended') === 'as planned'} required /> As
            planned
          </label>
          <label>
            <input type="radio" name="ended" value="stopped" checked={text('ended') === 'stopped'} /> Stopped: it did
            what it was to be stopped for
          </label>
        </fieldset>
        <label>
          Driven, km
          <input
            name="driven"
            inputmode="decimal"
            autocomplete="off"
            value={text('driven')}
            {...faultsOf(faults, 'driven')}
          />
        </label>
        <Faults faults={faults} field="driven" />
        <DistanceField label="Odometer after it" value={text('distance')} faults={faults} />
        <label>
          Hottest hub above the coolest, °C
          <input
            name="hubs"
            inputmode="decimal"
            autocomplete="off"
            value={text('hubs')}
            {...faultsOf(faults, 'hubs')}
          />
        </label>
        <Faults faults={faults} field="hubs" />
        <fieldset class="notes">
          <legend>Noted, one line each</legend>
          {Array.from({ length: ROOM }, (_, n) => (
            <NoteLine n={n} text={text} />
          ))}
        </fieldset>
        <label>
          Who drove
          <input name="by" value={given['by'] === undefined ? person.name : text('by')} autocomplete="off" />
        </label>
        <label>
          Note
          <textarea name="note" rows={2}>
            {text('note')}
          </textarea>
        </label>
        <Despite step={step} given={given} faults={faults} />
        <button class="big">Keep this run</button>
      </Post>
    </section>
  );
};

const NoteLine = ({ n, text }: { n: number; text(name: string): string }) => (
  <div class="note-line">
    <select name={`note.${n}`} aria-label={`Note ${n + 1}: what`}>
      <option value="">nothing</option>
      {Object.entries(SENSES).map(([sense, { name, kinds }]) => (
        <optgroup label={name}>
          {kinds.map((kind) => (
            <option value={`${sense}:${kind}`} selected={text(`note.${n}`) === `${sense}:${kind}`}>
              {name}: {kind}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
    <select name={`versus.${n}`} aria-label={`Note ${n + 1}: against the last run`}>
      {VERSUS.map((one) => (
        <option value={one} selected={text(`versus.${n}`) === one}>
          {one}
        </option>
      ))}
    </select>
    <input
      name={`words.${n}`}
      value={text(`words.${n}`)}
      aria-label={`Note ${n + 1}: where, when`}
      autocomplete="off"
    />
  </div>
);
