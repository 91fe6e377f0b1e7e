/** The form of one leak survey, with the map so far beside it. */
import type { Fault } from '../../acts/fault.ts';
import { dayInWords } from '../../dates/words.ts';
import { those } from '../../revival/journal.ts';
import { LEAK_CLASSES, LEAK_FLUIDS, LEAK_PLACES, MOMENTS } from '../../revival/leaks.ts';
import type { RevivalStep } from '../../revival/plan.ts';
import { Faults, faultsOf, Post, useVisit } from '../layout.tsx';
import { ROOM } from './forms.ts';
import { type Given, pathOf, type StepShown } from './in-path.ts';

interface Shown extends StepShown {
  survey: NonNullable<RevivalStep['survey']>;
  given: Given;
  faults: readonly Fault[];
}

export const LeaksForm = ({ here, step, survey, given, faults }: Shown) => {
  const { on, person } = useVisit();
  const text = (name: string): string => String(given[name] ?? '');
  const before = those(here.plan.entries, 'survey');
  return (
    <section aria-labelledby="leaks">
      <h2 id="leaks">
        {MOMENTS[survey.moment]}, {survey.cycle === 1 ? 'first' : 'second'} heat
      </h2>
      {before.length > 0 && (
        <section class="scroll" tabindex={0} aria-label="Leak map so far">
          <table class="leak-map">
            <caption>Leak map so far</caption>
            <thead>
              <tr>
                <th scope="col">When</th>
                <th scope="col">Where, what, how much</th>
              </tr>
            </thead>
            <tbody>
              {before.map(({ cycle, moment, day, spots }) => (
                <tr>
                  <th scope="row">
                    Heat {cycle}, {MOMENTS[moment].toLowerCase()} ({dayInWords(day)})
                  </th>
                  <td>
                    {spots.length === 0
                      ? 'dry'
                      : spots
                          .map(
                            ({ place, fluid, how }) =>
                              `${LEAK_PLACES[place]}: ${LEAK_FLUIDS[fluid].toLowerCase()}, class ${LEAK_CLASSES[how].class}`,
                          )
                          .join('; ')}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <p class="hint">
        Fresh cardboard under the car, a lamp, a white cloth. Class I: wet, no drops. II: drops form and do not fall.
        III: drops fall. Any fuel, any brake fluid: put right before it runs again.
      </p>
      <Post to={pathOf(here, `/steps/${step.key}/leaks`)} class="stacked">
        <label class="box-line">
          <input type="checkbox" name="dry" checked={text('dry') === 'on'} /> All dry: I looked everywhere
        </label>
        <Faults faults={faults} field="dry" />
        <fieldset class="notes">
          <legend>Wet spots, one line each</legend>
          {Array.from({ length: ROOM }, (_, n) => (
            <div class="note-line">
              <Pick
                name={`place.${n}`}
                label={`Spot ${n + 1}: where`}
                of={LEAK_PLACES}
                value={text(`place.${n}`)}
                empty
              />
              <Pick name={`fluid.${n}`} label={`Spot ${n + 1}: what`} of={LEAK_FLUIDS} value={text(`fluid.${n}`)} />
              <Pick
                name={`how.${n}`}
                label={`Spot ${n + 1}: how much`}
                of={Object.fromEntries(Object.entries(LEAK_CLASSES).map(([key, { words }]) => [key, words]))}
                value={text(`how.${n}`)}
              />
            </div>
          ))}
        </fieldset>
        <label>
          Day
          <input name="day" type="date" value={text('day') || on} max={on} {...faultsOf(faults, 'day')} />
        </label>
        <Faults faults={faults} field="day" />
        <label>
          Who looked
          <input name="by" value={given['by'] === undefined ? person.name : text('by')} autocomplete="off" />
        </label>
        <label>
          Note
          <textarea name="note" rows={2}>
            {text('note')}
          </textarea>
        </label>
        <button class="big">Keep this survey</button>
      </Post>
    </section>
  );
};

const Pick = ({
  name,
  label,
  of,
  value,
  empty,
}: {
  name: string;
  label: string;
  of: Readonly<Record<string, string>>;
  value: string;
  empty?: true;
}) => (
  <select name={name} aria-label={label}>
    {empty && <option value="">nowhere</option>}
    {Object.entries(of).map(([key, words]) => (
      <option value={key} selected={key === value}>
        {words}
      </option>
    ))}
  </select>
);
