/** Car sheet: every part by system, with its rule drawn, what needs a hand first, and the tires as a set. */

import type { Fault } from '../../acts/fault.ts';
import { SYSTEMS, type System } from '../../catalogue/systems.ts';
import { rangeInWords } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { byNeed, findingsOf, summaryOf } from '../../findings/car.ts';
import { explain, rulingLine } from '../../findings/explain.ts';
import { askedOf } from '../../findings/outlook.ts';
import { readingLine } from '../../findings/reading-words.ts';
import { tireSet } from '../../findings/tire-set.ts';
import { type CarWithParts, carWithParts, closedParts, type PartOnRecord } from '../../store/cars.ts';
import { overridesOf } from '../../store/overrides.ts';
import { type PlaceRow, placesOf } from '../../store/places.ts';
import { A, FaultSummary, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { Rule } from '../rule.tsx';
import { Bay, countsInWords, StandingWord } from '../standing.tsx';
import type { Ctx } from '../visit.ts';
import { isWaiting } from '../waiting.ts';
import { LeftNote } from './car-left.tsx';
import { ComesBack, revivalsOfCar } from './car-revivals.tsx';
import { History, Odometer, StandsIn } from './car-sheet-sides.tsx';
import { LaidUp, Stays, type StaysOfCar, staysOfCar } from './car-stays.tsx';
import { OutlookLine } from './outlook.tsx';
import { nameOf } from './part-name.ts';

/** How many lines "first" shows before the systems. */
const FIRST = 6;

export const carSheet = (c: Ctx) => showCar(c, c.req.param('carId') ?? '');

export const showCar = (
  c: Ctx,
  carId: string,
  faults: readonly Fault[] = [],
  given: { distance?: string; day?: string } = {},
) => {
  const { collection, on } = c.get('visit');
  const { store } = c.get('around');
  const found = carWithParts(store, collection.id, carId);
  if (!found) return notFound(c, 'car');
  const findings = findingsOf(found.facts, found.parts, overridesOf(store, collection.id), on);
  const past = closedParts(store, collection.id, carId);
  const places = placesOf(store, collection.id);
  const stays = staysOfCar(store, collection.id, found, on);
  const revivals = revivalsOfCar(store, collection.id, found.car.id, on);
  return page(
    c,
    found.car.name,
    <CarSheet
      found={found}
      findings={findings}
      past={past}
      places={places}
      stays={stays}
      revivals={revivals}
      faults={faults}
      given={given}
    />,
    faults.length > 0 ? 422 : 200,
  );
};

interface Shown {
  found: CarWithParts;
  findings: Finding[];
  past: PartOnRecord[];
  places: PlaceRow[];
  stays: StaysOfCar;
  revivals: ReturnType<typeof revivalsOfCar>;
  faults: readonly Fault[];
  given: { distance?: string; day?: string };
}

const CarSheet = ({ found, findings, past, places, stays, revivals, faults, given }: Shown) => {
  const { car, facts } = found;
  const summary = summaryOf(findings);
  const waiting = findings.filter(({ part }) => isWaiting(part.claims)).length;
  // What waits for its date is told above; what is read, or estimated from a reading, can't wait for that.
  const first = findings
    .filter((one) => one.standing !== 'in date' && (!isWaiting(one.part.claims) || asks(one)))
    .sort((a, b) => urgency(b) - urgency(a) || byNeed(a, b));
  const tires = tireSet(findings);
  const reading = facts.odometer.at(-1);
  const systems = (Object.keys(SYSTEMS) as System[]).filter((system) =>
    findings.some(({ kind }) => kind.system === system),
  );
  return (
    <>
      <div class="title-row">
        <h1>{car.name}</h1>
        <A to={`/cars/${car.id}/change`} class="button quiet">
          Change the car
        </A>
      </div>
      <FaultSummary
        faults={faults}
        kept="Nothing was saved yet. What you typed in that form stands in it; other forms of this page are as they were."
      />
      <p class="lede">
        {car.builtFrom || car.builtTo ? `Built ${rangeInWords(facts.built)}` : 'Build date not known'}
        {reading ? `; ${reading.km.toLocaleString('en-US')} km on ${reading.day}` : '; no odometer reading'}.
      </p>
      {car.note && <p class="note">{car.note}</p>}
      <LeftNote car={car} />
      {car.leftOn === null && (
        <>
          <LaidUp stays={stays} carId={car.id} />
          <ComesBack revivals={revivals} carId={car.id} />
        </>
      )}
      <p class="call">
        <A to={`/cars/${car.id}/readings`} class="button">
          Note readings
        </A>{' '}
        Volts, pressures, strips: type what the instruments show.
      </p>
      <p class="call">
        <A to={`/cars/${car.id}/road-check`} class="button quiet">
          Road check
        </A>{' '}
        May it be driven today? <A to={`/cars/${car.id}/file`}>Its file for an insurer or a buyer</A>
      </p>
      <Bay counts={summary.counts} />
      <p class="counts">{countsInWords(summary.counts)}</p>
      <p class="note">
        Estimates are reasons to measure, and readings reasons to act: neither clears a part. Brakes, tires, fuel,
        airbags and lifting are work for a licensed workshop wherever you are in doubt.
      </p>
      {waiting > 0 && (
        <p class="call">
          <A to={`/cars/${car.id}/dating`} class="button">
            Date its parts
          </A>{' '}
          {waiting === 1 ? 'One part waits' : `${waiting} parts wait`} for a date, the most important first.
        </p>
      )}
      <ReadToday findings={findings} />
      {first.length > 0 && (
        <section aria-labelledby="first">
          <h2 id="first">Needs a hand first</h2>
          <ol class="first-list">
            {first.slice(0, FIRST).map((finding) => (
              <li>
                <StandingWord standing={finding.standing} /> <A to={`/parts/${finding.part.id}`}>{nameOf(finding)}</A>.{' '}
                {explain(finding).age}. {whyFirst(finding)}
              </li>
            ))}
          </ol>
          {first.length > FIRST && <p>{first.length - FIRST} more below, by system.</p>}
        </section>
      )}
      {tires.notes.length > 0 && (
        <section aria-labelledby="set">
          <h2 id="set">The tires as a set</h2>
          <ul>
            {tires.notes.map((note) => (
              <li>{note}</li>
            ))}
          </ul>
        </section>
      )}
      <nav class="systems" aria-label="Systems">
        {systems.map((system) => (
          <a href={`#${system}`}>{SYSTEMS[system]}</a>
        ))}
      </nav>
      {systems.map((system) => (
        <section class="system" aria-labelledby={system}>
          <h2 id={system}>{SYSTEMS[system]}</h2>
          {findings
            .filter(({ kind }) => kind.system === system)
            .map((finding) => (
              <PartLine finding={finding} />
            ))}
        </section>
      ))}
      <StandsIn found={found} places={places} faults={faults} />
      <Odometer carId={car.id} faults={faults} given={given} />
      <p>
        <A to={`/cars/${car.id}/parts/new`}>Add a part that is not on this list</A>
      </p>
      <Stays rows={stays.past} />
      {past.length > 0 && <History past={past} />}
    </>
  );
};

/** What was written down this day and what it means: the answer to whoever just did the round. */
const ReadToday = ({ findings }: { findings: readonly Finding[] }) => {
  const read = findings.flatMap((finding) =>
    finding.measured
      .filter(({ reading }) => reading.recordedOn === finding.on)
      .map((measured) => ({ finding, measured })),
  );
  return read.length === 0 ? (
    <></>
  ) : (
    <section aria-labelledby="read-today">
      <h2 id="read-today">Read today</h2>
      <ul>
        {read.map(({ finding, measured }) => (
          <li>
            <A to={`/parts/${finding.part.id}`}>{nameOf(finding)}</A>: {readingLine(measured, finding.kind)}
          </li>
        ))}
      </ul>
    </section>
  );
};

const whyFirst = ({ gravest, kind, news }: Finding): string | null => {
  if (gravest) return readingLine(gravest, kind);
  return news.estimate && `By estimate: ${askedOf(kind)}.`;
};

/** Safety items that are past come first, then what a reading or an estimate asks for. */
const urgency = (finding: Finding): number =>
  (finding.kind.severity === 'safety' && finding.standing === 'past' ? 2 : 0) + Number(asks(finding));

/** Whether a reading or an estimate asks for something. */
const asks = ({ news }: Finding): boolean =>
  news.reading.verdict === 'act' || news.reading.verdict === 'watch' || news.estimate !== null;

const PartLine = ({ finding }: { finding: Finding }) => {
  const { part, standing, ruling, label } = finding;
  const waiting = isWaiting(part.claims);
  const words = explain(finding);
  return (
    <article class={`part ${waiting ? 'waiting' : ''}`}>
      <h3>
        <A to={`/parts/${part.id}`}>{nameOf(finding)}</A> <StandingWord standing={standing} />
      </h3>
      {waiting ? (
        <p>
          No date yet. <A to={`/parts/${part.id}/date`}>Date it</A>
        </p>
      ) : (
        <>
          <p>{words.age}.</p>
          <Rule finding={finding} />
          <p class="ruling">{rulingLine(ruling, label)}</p>
          {words.doubts.map((doubt) => (
            <p class="doubt">Doubt: {doubt}</p>
          ))}
        </>
      )}
      <OutlookLine outlook={words.outlook} />
      {finding.measured.map((measured) => (
        <p class="read">{readingLine(measured, finding.kind)}</p>
      ))}
      {words.outlook && words.surer && <p class="surer">Surer: {words.surer}</p>}
    </article>
  );
};
