/** Recording what was read: from a part’s own page, or many at once on the round of a car. */
import type { Fault } from '../../acts/fault.ts';
import { kindOf } from '../../acts/parts.ts';
import { type ReadingGiven, recordReadingsAct } from '../../acts/record-reading.ts';
import { type Gauged, gaugesOf } from '../../findings/measured.ts';
import { type CarWithParts, carWithParts, type PartOnRecord } from '../../store/cars.ts';
import { withdrawReading } from '../../store/readings.ts';
import { READINGS_FORM, type ReadingsForm, readForm } from '../forms.ts';
import { A, choiceOf, FaultSummary, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { showPart } from './part.tsx';
import { nameOf } from './part-name.ts';
import { fieldOf, ReadingField, ReadingRest } from './reading-field.tsx';

export const roundPage = (c: Ctx) => {
  const found = carInPath(c);
  return found ? showRound(c, found, {}, []) : notFound(c, 'car');
};

export const recordReadings = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = carInPath(c);
  if (!found) return notFound(c, 'car');
  const given = await readForm(c, READINGS_FORM);
  const outcome = recordReadingsAct(c.get('around').store, actingIn(visit), found, readingsIn(given, visit.on), (one) =>
    fieldOf(one.partId, one.gauge),
  );
  const part = found.parts.find(({ id }) => id === given.back);
  if (!outcome.ok)
    return part
      ? showPart(c, part, found, { faults: outcome.faults, given })
      : showRound(c, found, given, outcome.faults);
  return c.redirect(at(visit, part ? `/parts/${part.id}#readings` : `/cars/${found.car.id}`), 303);
};

export const takeBackReading = (c: Ctx) => {
  const visit = c.get('visit');
  const partId = c.req.param('partId') ?? '';
  withdrawReading(c.get('around').store, visit.collection.id, partId, c.req.param('readingId') ?? '', visit.on);
  return c.redirect(at(visit, `/parts/${partId}#readings`), 303);
};

const carInPath = (c: Ctx): CarWithParts | undefined =>
  carWithParts(c.get('around').store, c.get('visit').collection.id, c.req.param('carId') ?? '');

const FIELD = /^([^.]+)\.([^.]+)\.typed$/;

/** The numbers that were typed; a field left empty is no reading. */
const readingsIn = (given: ReadingsForm, on: string): ReadingGiven[] =>
  Object.entries(given).flatMap(([name, typed]) => {
    const [, partId, gauge] = FIELD.exec(name) ?? [];
    if (!partId || !gauge || typed === '') return [];
    const own = (what: string): string => given[`${fieldOf(partId, gauge)}${what}`] ?? '';
    return [
      {
        partId,
        gauge,
        typed,
        unit: own('unit'),
        day: given.day || on,
        warmth: own('warmth'),
        warmthUnit: own('warmthUnit'),
        instrument: given.instrument,
        note: given.note,
        sure: choiceOf(typed, own('typedAsked'), own('typedChoice')) === 'sure',
      },
    ];
  });

const showRound = (c: Ctx, found: CarWithParts, given: Partial<ReadingsForm>, faults: readonly Fault[]) =>
  page(
    c,
    `Readings of ${found.car.name}`,
    <Round found={found} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

interface Shown {
  found: CarWithParts;
  given: Partial<ReadingsForm>;
  faults: readonly Fault[];
}

const Round = ({ found, given, faults }: Shown) => {
  const gauges = found.parts.flatMap((part) => gaugesOf(kindOf(part)).map((test) => ({ part, test })));
  const [round, others] = [true, false].map((on) => gauges.filter(({ test }) => Boolean(test.gauge.round) === on));
  return (
    <>
      <p class="crumb">
        <A to={`/cars/${found.car.id}`}>{found.car.name}</A>
      </p>
      <h1>What did you read?</h1>
      <p class="lede">Type what the instruments show and leave the rest empty; one button keeps it all.</p>
      <FaultSummary faults={faults} />
      <Post to={`/cars/${found.car.id}/readings`} class="round">
        <ReadingFields list={round ?? []} given={given} faults={faults} />
        <details open={(others ?? []).some((one) => typedIn(one, given))}>
          <summary>Other gauges: {others?.length}</summary>
          <ReadingFields list={others ?? []} given={given} faults={faults} />
        </details>
        <ReadingRest given={given} faults={faults} />
        <button>Keep the readings</button>
      </Post>
    </>
  );
};

const typedIn = ({ part, test }: { part: PartOnRecord; test: Gauged }, given: Partial<ReadingsForm>): boolean =>
  Boolean(given[`${fieldOf(part.id, test.gauge.key)}typed`]);

const ReadingFields = ({
  list,
  given,
  faults,
}: {
  list: readonly { part: PartOnRecord; test: Gauged }[];
  given: Partial<ReadingsForm>;
  faults: readonly Fault[];
}) => (
  <>
    {list.map(({ part, test }) => (
      <ReadingField
        part={part}
        test={test}
        label={`${nameOf(part)}: ${lower(test.name)}`}
        given={given}
        faults={faults}
      />
    ))}
  </>
);

const lower = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
