/** The car’s file for an insurer or a buyer: what nobody knows, dates with their evidence, readings, history. */
import { z } from 'zod';
import { FACETS } from '../../../catalogue/traits.ts';
import type { CivilDate } from '../../../dates/civil.ts';
import { dayInWords, rangeInWords } from '../../../dates/words.ts';
import { findingsOf } from '../../../findings/car.ts';
import { type CarWithParts, carWithParts } from '../../../store/cars.ts';
import { overridesOf } from '../../../store/overrides.ts';
import { BadForm } from '../../forms.ts';
import { notFound } from '../../not-found.tsx';
import type { Ctx } from '../../visit.ts';
import { Blank } from '../sheet.tsx';
import { FileDates } from './file-dates.tsx';
import { FileGaps } from './file-gaps.tsx';
import { FileHistory } from './file-history.tsx';
import { FileReadings } from './file-readings.tsx';
import { FileReturns } from './file-returns.tsx';

import { CarSheetFrame, paperIn } from './frame.tsx';
import { returnsOf } from './returns-of.ts';

/** In the order they are printed. */
const SECTIONS = { gaps: 'What is not known', parts: 'Dates', readings: 'Readings', history: 'History' } as const;
type Section = keyof typeof SECTIONS;
const SECTION_KEYS = Object.keys(SECTIONS) as [Section, ...Section[]];

/** `sections=` names those wanted, apart by commas; all of them otherwise. */
const sectionsIn = (c: Ctx): readonly Section[] => {
  const asked = c.req.query('sections');
  if (asked === undefined) return SECTION_KEYS;
  const sections = z.array(z.enum(SECTION_KEYS)).min(1).safeParse(asked.split(','));
  if (!sections.success) throw new BadForm(`There is no such section: write sections= with ${SECTION_KEYS.join(',')}.`);
  return SECTION_KEYS.filter((one) => sections.data.includes(one));
};

/** Prices only where asked for. */
export const carFilePage = (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const { collection, on } = visit;
  const found = carWithParts(store, collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const paper = paperIn(c);
  const sections = sectionsIn(c);
  const prices = c.req.query('prices') === 'yes';
  const findings = findingsOf(found.facts, found.parts, overridesOf(store, collection.id), on);
  const returns = returnsOf(store, collection, found.car.id, on);
  const to = (wanted: readonly Section[], priced: boolean): string =>
    `/cars/${found.car.id}/file?${new URLSearchParams({
      paper,
      ...(wanted.length === SECTION_KEYS.length ? {} : { sections: wanted.join(',') }),
      ...(priced ? { prices: 'yes' } : {}),
    })}`;
  return c.html(
    `<!DOCTYPE html>${(
      <CarSheetFrame
        visit={visit}
        paper={paper}
        kind="The car’s file"
        car={found.car.name}
        page={`/cars/${found.car.id}`}
        line={lineOf(found, on)}
        links={[
          ...SECTION_KEYS.map((section) => ({
            name: SECTIONS[section],
            to: to(otherwise(sections, section), prices),
            here: sections.includes(section),
          })),
          { name: prices ? 'Without prices' : 'With prices', to: to(sections, !prices) },
        ]}
        cautions={[]}
        long
      >
        <p>{whatItIs(found)}</p>
        <p>
          Every date is told with how it is known, surest first: read on the part, receipt, dated photo, workshop
          statement, own memory, seller’s word, assumed. Where a span is told, its oldest end counts for safety parts.
          Nothing here is a statement of condition, and no part is in order because its date is missing.
        </p>
        {sections.includes('gaps') && <FileGaps found={found} findings={findings} returns={returns} />}
        {sections.includes('parts') && <FileDates findings={findings} />}
        {sections.includes('readings') && <FileReadings parts={found.parts} on={on} />}
        {sections.includes('history') && (
          <>
            <FileHistory store={store} collectionId={collection.id} found={found} on={on} />
            <FileReturns returns={returns} prices={prices} on={on} />
          </>
        )}
        <div class="lines-to-write">
          <p>
            Notes <Blank />
          </p>
          <p>
            <Blank />
          </p>
          <p>
            Given to <Blank /> by <Blank /> on <Blank />
          </p>
        </div>
      </CarSheetFrame>
    )}`,
  );
};

/** With the section, or without it; the last one can’t be taken away: then all come back. */
const otherwise = (sections: readonly Section[], section: Section): readonly Section[] => {
  const left = SECTION_KEYS.filter((one) => sections.includes(one) !== (one === section));
  return left.length === 0 ? SECTION_KEYS : left;
};

const lineOf = ({ facts }: CarWithParts, on: CivilDate): string => {
  const { from, to } = facts.built;
  const read = facts.odometer.findLast(({ day }) => day <= on);
  return `${from || to ? `Built ${rangeInWords(facts.built)}.` : 'Build date not known.'} ${
    read
      ? `Odometer ${read.km.toLocaleString('en-US')} km on ${dayInWords(read.day)}.`
      : 'The odometer was never written down.'
  }`;
};

const whatItIs = ({ car }: CarWithParts): string =>
  `As its owner describes it. ${FACETS.flatMap(({ name, traits }) => {
    const has = Object.entries(traits).filter(([trait]) => car.traits.includes(trait));
    return has.length === 0 ? [] : [`${name}: ${has.map(([, words]) => words).join(', ')}.`];
  }).join(' ')}`;
