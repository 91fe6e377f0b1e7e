/** The journal of a return: everything that was said of it, in its order, with who said it. */
import type { RevivalHere } from '../../acts/revivals.ts';
import { dayInWords } from '../../dates/words.ts';
import { paidInWords } from '../../money/words.ts';
import type { Entry } from '../../revival/journal.ts';
import { LEAK_PLACES, MOMENTS } from '../../revival/leaks.ts';
import { lookOf } from '../../revival/looks.ts';
import { RUNS, SENSES } from '../../revival/runs.ts';
import { STAGES } from '../../revival/stages.ts';
import { stepWith } from '../../revival/steps.ts';
import { A, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import type { Ctx } from '../visit.ts';
import { pathOf, revivalInPath } from './in-path.ts';

export const journalPage = (c: Ctx) => {
  const here = revivalInPath(c);
  return here ? page(c, `Journal of ${here.found.car.name}`, <Journal here={here} />) : notFound(c, 'return');
};

const Journal = ({ here }: { here: RevivalHere }) => (
  <>
    <p class="crumb">
      <A to={pathOf(here)}>Return of {here.found.car.name}</A>
    </p>
    <h1>Journal of {here.found.car.name}</h1>
    {here.plan.entries.length === 0 && <p>Nothing was said yet.</p>}
    <ol class="journal">
      {here.plan.entries.map((entry) => (
        <li>
          <strong>{dayInWords(entry.day)}</strong>, {entry.by}: {saidInWords(entry, here.rates.currency)}
          {entry.note && <> “{entry.note}”</>}
        </li>
      ))}
    </ol>
  </>
);

/** One entry in a sentence. */
export const saidInWords = (entry: Entry, currency: string): string => {
  switch (entry.what) {
    case 'seen': {
      const { name, answers, number } = lookOf(entry.look);
      const measured = entry.value === null ? '' : ` (${entry.value} ${number?.unit ?? ''})`;
      return `${name}: ${answers[entry.answer]?.words.toLowerCase()}${measured}.`;
    }
    case 'tick': {
      const title = stepWith(entry.step)?.ways.find(({ act }) => act === entry.act)?.title ?? entry.step;
      const told = [
        ...(entry.cost === null ? [] : [paidInWords(entry.cost, currency)]),
        ...(entry.hours === null ? [] : [`${entry.hours} hours`]),
      ].join(', ');
      return `${entry.state === 'done' ? 'Done' : 'Left out'}: ${title}${told && ` (${told})`}.`;
    }
    case 'pass':
      return `Gate of ${STAGES[entry.stage].name} passed${entry.despite.length > 0 ? ' in writing' : ''}.`;
    case 'decision':
      return `Decided to go on${entry.ceiling === null ? '' : ` with a ceiling of ${paidInWords(entry.ceiling, currency)}`}.`;
    case 'run': {
      const notes = entry.notes.map(
        ({ sense, kind, versus }) => `${SENSES[sense].name.toLowerCase()} ${kind} (${versus})`,
      );
      return `Road test ${RUNS[entry.run].name} ${entry.ended === 'stopped' ? 'stopped' : 'ended as planned'}${notes.length > 0 ? `; ${notes.join(', ')}` : ''}.`;
    }
    case 'survey':
      return `Leak survey, heat ${entry.cycle}, ${MOMENTS[entry.moment].toLowerCase()}: ${entry.spots.length === 0 ? 'dry' : entry.spots.map(({ place }) => LEAK_PLACES[place]).join('; ')}.`;
  }
};
