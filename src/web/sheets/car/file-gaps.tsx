/** What nobody knows of a car, first of all, since whoever reads the rest must know it. */
import type { Child } from 'hono/jsx';
import type { RevivalHere } from '../../../acts/revivals.ts';
import { allTraits } from '../../../catalogue/traits.ts';
import { dayInWords } from '../../../dates/words.ts';
import type { Finding } from '../../../findings/assess.ts';
import { nameOf } from '../../../plans/lists.ts';
import { verdictOf } from '../../../revival/verdict.ts';
import type { CarWithParts } from '../../../store/cars.ts';
import { isWaiting } from '../../waiting.ts';
import { datesInWords, isUndated } from './known-dates.ts';

interface Shown {
  found: CarWithParts;
  findings: readonly Finding[];
  returns: readonly RevivalHere[];
}

export const FileGaps = ({ found, findings, returns }: Shown) => {
  const undated = findings.filter(isUndated);
  const unseen = undated.filter(({ part }) => isWaiting(part.claims));
  const asked = undated.filter(({ part }) => !isWaiting(part.claims));
  const bounded = findings.filter(({ since, label }) => since?.evidence === null && label === null);
  const weak = findings.filter(({ since }) => since?.evidence === 'seller’s word' || since?.evidence === 'assumed');
  const disagree = findings.filter(({ since }) => since?.disagree || since?.contradicted);
  return (
    <section>
      <h2>What is not known</h2>
      <p>
        No date is known of {undated.length} of {findings.length} parts and fluids.
      </p>
      <Named title="Nobody has looked for the date of" findings={unseen} />
      <Named title="No date is known, though somebody asked, of" findings={asked} />
      <Named title="Only other dates bound the age of" findings={bounded} />
      <Listed title="Known by a seller’s word or assumed, and no better">
        {weak.map((finding) => (
          <li>
            {nameOf(finding)}: {finding.since?.evidence}
          </li>
        ))}
      </Listed>
      <Listed title="Sources that disagree; all are kept">
        {disagree.map((finding) => (
          <li>
            {nameOf(finding)}: {datesInWords(finding.part.claims).join('; ')}
          </li>
        ))}
      </Listed>
      <Listed title="Of the car itself">
        {ofTheCar(found).map((words) => (
          <li>{words}</li>
        ))}
      </Listed>
      {returns.map((here) => (
        <Listed title={`Of its sleep, and the return begun ${dayInWords(here.record.row.begunOn)}`}>
          {ofItsSleep(here).map((words) => (
            <li>{words}</li>
          ))}
        </Listed>
      ))}
    </section>
  );
};

const bySafety = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => Number(b.kind.severity === 'safety') - Number(a.kind.severity === 'safety'));

/** Safety parts first, and called so. */
const Named = ({ title, findings }: { title: string; findings: readonly Finding[] }) =>
  findings.length === 0 ? null : (
    <>
      <h3>
        {title} ({findings.length})
      </h3>
      <p>
        {bySafety(findings)
          .map((finding) => `${nameOf(finding)}${finding.kind.severity === 'safety' ? ' (safety)' : ''}`)
          .join(' · ')}
      </p>
    </>
  );

const Listed = ({ title, children }: { title: string; children: readonly Child[] }) =>
  children.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      <ul class="dense">{children}</ul>
    </>
  );

const ofTheCar = ({ facts }: CarWithParts): string[] => [
  ...(facts.built.from === null && facts.built.to === null ? ['Nobody knows when it was built.'] : []),
  ...(facts.odometer.length === 0 ? ['The odometer was never written down.'] : []),
  ...(facts.place === null ? ['Nobody has said where it stands.'] : []),
];

const ofItsSleep = ({ plan, found }: RevivalHere): string[] => {
  const { doubts, unseen } = verdictOf(plan, allTraits(found.car.traits));
  return [
    ...doubts,
    ...(unseen.length > 0
      ? [`Nobody has looked: ${unseen.map(({ name }) => name.replace(/\?$/, '')).join('; ')}.`]
      : []),
  ];
};
