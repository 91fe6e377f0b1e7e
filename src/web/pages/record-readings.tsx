/** Recording what was read: from a part’s own page, or many at once on the round of a car. */
import type { Fault } from '../../acts/fault.ts';
import { kindOf } from '../../acts/parts.ts';
import { recordReadingsAct } from '../../acts/record-reading.ts';
import { type Gauged, gaugesOf } from '../../findings/measured.ts';
import { type CarWithParts, carWithParts, type PartOnRecord } from '../../store/cars.ts';
import { withdrawReading } from '../../store/readings.ts';
import { UnitChoice } from '../answer-field.tsx';
import { partInPath } from '../find-part.ts';
import { READINGS_FORM, type ReadingsForm, readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { besideFields, readingsIn } from '../reading-form.ts';
import { actingIn, at, type Ctx } from '../visit.ts';
import { refuseClosed } from './closed-part.tsx';
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
  if (!outcome.ok) {
    const faults = besideFields(outcome.faults, given);
    return part ? showPart(c, part, found, { faults, given }) : showRound(c, found, given, faults);
  }
  return c.redirect(at(visit, part ? `/parts/${part.id}#readings` : `/cars/${found.car.id}#read-today`), 303);
};

export const takeBackReading = (c: Ctx) => {
  const visit = c.get('visit');
  const part = partInPath(c)?.part;
  if (!part) return notFound(c, 'part');
  if (part.closedOn) return refuseClosed(c, part);
  withdrawReading(c.get('around').store, visit.collection.id, part.id, c.req.param('readingId') ?? '', visit.on);
  return c.redirect(at(visit, `/parts/${part.id}#readings`), 303);
};

const carInPath = (c: Ctx): CarWithParts | undefined =>
  carWithParts(c.get('around').store, c.get('visit').collection.id, c.req.param('carId') ?? '');

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
      <p class="lede">
        Type what the instruments show and leave the rest empty; one button keeps it all. A unit can stand behind the
        number: 33 psi.
      </p>
      <FaultSummary faults={faults} />
      <Post to={`/cars/${found.car.id}/readings`} class="round">
        <ReadingFields list={round ?? []} given={given} faults={faults} warmth={false} />
        <AirTemperature given={given} faults={faults} />
        <details open={(others ?? []).some((one) => typedIn(one, given))}>
          <summary>Other gauges: {others?.length}</summary>
          <ReadingFields list={others ?? []} given={given} faults={faults} />
        </details>
        <ReadingRest given={given} faults={faults} />
        <button>Keep the readings</button>
      </Post>
      <p class="note">
        Nothing here asks you to lift the car, open a hot system or run the engine indoors. A reading can condemn a part
        and does not clear its age; brakes, tires and fuel in doubt are for a workshop.
      </p>
    </>
  );
};

const typedIn = ({ part, test }: { part: PartOnRecord; test: Gauged }, given: Partial<ReadingsForm>): boolean =>
  Boolean(given[`${fieldOf(part.id, test.gauge.key)}typed`]);

const ReadingFields = ({
  list,
  given,
  faults,
  warmth = true,
}: {
  list: readonly { part: PartOnRecord; test: Gauged }[];
  given: Partial<ReadingsForm>;
  faults: readonly Fault[];
  warmth?: boolean;
}) => (
  <>
    {list.map(({ part, test }) => (
      <ReadingField
        part={part}
        test={test}
        label={`${nameOf(part)}: ${lower(test.name)}`}
        given={given}
        faults={faults}
        warmth={warmth}
      />
    ))}
  </>
);

/** Tires that stood together are equally warm: asked once. */
export const AirTemperature = ({ given, faults }: { given: Partial<ReadingsForm>; faults: readonly Fault[] }) => {
  const wrong = faults.filter(({ field }) => field === 'warmth');
  const [first] = wrong;
  return (
    <div class="reading">
      <label>
        Temperature of the tires: the air, if they stood
        <input
          name="warmth"
          inputmode="decimal"
          autocomplete="off"
          value={given.warmth ?? ''}
          {...faultsOf(wrong, first?.field ?? '')}
        />
      </label>
      <UnitChoice name="warmthUnit" units={['°C', '°F']} picked={given.warmthUnit ?? '°C'} of="the tires" />
      {first && <Faults faults={wrong} field={first.field} />}
    </div>
  );
};

const lower = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
