/** Every part of a car with all its dates, how each is known, and how old it can be. */
import { Fragment } from 'hono/jsx';
import { SYSTEMS, type System } from '../../../catalogue/systems.ts';
import { ageInWords, ageOf } from '../../../dates/words.ts';
import type { Finding } from '../../../findings/assess.ts';
import { nameOf } from '../../../plans/lists.ts';
import { datesInWords, isUndated } from './known-dates.ts';

export const FileDates = ({ findings }: { findings: readonly Finding[] }) => (
  <section>
    <h2>Dates of parts and fluids</h2>
    <table class="dates">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Dates, and how each is known</th>
          <th scope="col">Age</th>
          <th scope="col">By the calendar</th>
        </tr>
      </thead>
      <tbody>
        {(Object.keys(SYSTEMS) as System[]).map((system) => (
          <SystemRows name={SYSTEMS[system]} findings={findings.filter(({ kind }) => kind.system === system)} />
        ))}
      </tbody>
    </table>
  </section>
);

/** Those without any date share a row: there is nothing to tell of each, and none may be left out. */
const SystemRows = ({ name, findings }: { name: string; findings: readonly Finding[] }) => {
  const undated = findings.filter(isUndated);
  return findings.length === 0 ? null : (
    <Fragment>
      <tr class="system">
        <th scope="rowgroup" colspan={4}>
          {name}
        </th>
      </tr>
      {findings
        .filter((finding) => !isUndated(finding))
        .map((finding) => (
          <tr>
            <th scope="row">{nameOf(finding)}</th>
            <td>
              {datesOf(finding).map((words) => (
                <p>{words}</p>
              ))}
            </td>
            <td>{agedOf(finding)}</td>
            <td>{standingOf(finding)}</td>
          </tr>
        ))}
      {undated.length > 0 && (
        <tr>
          <th scope="row">No date known ({undated.length})</th>
          <td colspan={2}>{undated.map(nameOf).join(' · ')}</td>
          <td>unproven</td>
        </tr>
      )}
    </Fragment>
  );
};

const datesOf = ({ part, since }: Finding): string[] => {
  const dates = datesInWords(part.claims);
  return since?.disagree || since?.contradicted ? [...dates, 'These disagree; all are kept.'] : dates;
};

const agedOf = ({ since, label, on }: Finding): string => {
  if (label) return 'by its label';
  if (since === null) return 'not known';
  return `${ageInWords(ageOf(since, on))}${since.evidence === null ? ', bounded by its other dates' : ''}`;
};

/** An interval of the owner’s own is not the trade’s, and a late look does not tell an age: whoever reads it must know. */
const standingOf = ({ news, ruling, label, since }: Finding): string => {
  const { standing } = news.calendar;
  if (label) return standing;
  if (standing === 'in date' && since?.from === null) return 'looked at lately; its age is not known';
  return { practice: standing, own: `${standing}, by the owner’s interval`, handbook: `${standing}, by the handbook` }[
    ruling.by
  ];
};
