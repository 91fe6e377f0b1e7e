/** The car’s file for an insurer or a buyer: history, dates with their evidence, readings, and what nobody knows. */
import type { Child } from 'hono/jsx';
import { kindOf } from '../../../acts/parts.ts';
import { revivalHere } from '../../../acts/revivals.ts';
import { KINDS } from '../../../catalogue/kinds.ts';
import { dayInWords, rangeInWords } from '../../../dates/words.ts';
import type { Finding } from '../../../findings/assess.ts';
import { findingsOf } from '../../../findings/car.ts';
import { explain } from '../../../findings/explain.ts';
import { paidInWords } from '../../../money/words.ts';
import { nameOf } from '../../../plans/lists.ts';
import { WHY_PARKED } from '../../../revival/sleep.ts';
import { carWithParts, closedParts, type PartOnRecord } from '../../../store/cars.ts';
import { layUpsOf } from '../../../store/lay-ups.ts';
import { overridesOf } from '../../../store/overrides.ts';
import { revivalsOf } from '../../../store/revivals.ts';
import { notFound } from '../../not-found.tsx';
import { nameOf as partName } from '../../pages/part-name.ts';
import { saidInWords } from '../../revivals/journal.tsx';
import { sleptInWords } from '../../revivals/words.tsx';
import type { Ctx } from '../../visit.ts';
import { CarSheetFrame, paperIn } from './frame.tsx';

const SECTIONS = { gaps: 'What is not known', parts: 'Dates', readings: 'Readings', history: 'History' } as const;
type Section = keyof typeof SECTIONS;

/** `sections=` names those wanted, apart by commas; all of them otherwise. Prices only where asked for. */
export const carFilePage = (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const { collection, on } = visit;
  const found = carWithParts(store, collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const wanted = c.req.query('sections')?.split(',');
  const has = (section: Section): boolean => wanted === undefined || wanted.includes(section);
  const prices = c.req.query('prices') === 'yes';
  const findings = findingsOf(found.facts, found.parts, overridesOf(store, collection.id), on);
  const closed = closedParts(store, collection.id, found.car.id).filter(({ closedOn }) => closedOn && closedOn <= on);
  const stays = layUpsOf(store, collection.id, found.car.id).filter(
    ({ parkedOn, closedHow }) => parkedOn <= on && closedHow !== 'called off',
  );
  const returns = revivalsOf(store, collection.id, found.car.id)
    .filter(({ begunOn }) => begunOn <= on)
    .flatMap(({ id }) => revivalHere(store, collection, id, on) ?? []);
  const path = `/cars/${found.car.id}/file?paper=${paperIn(c)}`;
  return c.html(
    `<!DOCTYPE html>${(
      <CarSheetFrame
        visit={visit}
        paper={paperIn(c)}
        kind="The car’s file"
        car={found.car.name}
        page={`/cars/${found.car.id}`}
        line={
          <>
            {found.car.builtFrom || found.car.builtTo
              ? `Built ${rangeInWords(found.facts.built)}.`
              : 'Build date not known.'}{' '}
            {odometerInWords(found.facts.odometer.findLast(({ day }) => day <= on))}
          </>
        }
        links={[
          { name: 'All sections', to: path, here: wanted === undefined },
          ...(Object.keys(SECTIONS) as Section[]).map((section) => ({
            name: SECTIONS[section],
            to: `${path}&sections=${section}`,
            here: wanted?.includes(section) ?? false,
          })),
          { name: prices ? 'Without prices' : 'With prices', to: prices ? path : `${path}&prices=yes` },
        ]}
        cautions={[]}
      >
        <p>
          Dates are told with how they are known, surest first: read on the part, receipt, dated photo, workshop
          statement, own memory, seller’s word, assumed. Nothing here is a statement of condition, and what is missing
          is said.
        </p>
        {has('gaps') && <Gaps findings={findings} />}
        {has('parts') && <Dates findings={findings} />}
        {has('readings') && <Readings parts={found.parts} on={on} />}
        {has('history') && (
          <section>
            <h2>History</h2>
            <List title="Parts renewed or taken off" none="No part was renewed on record.">
              {closed.map((part) => (
                <li>
                  {part.closedOn && dayInWords(part.closedOn)}: {partName(part)}. {part.closedWhy}
                </li>
              ))}
            </List>
            <List title="Stays" none="No stay on record.">
              {stays.map(({ parkedOn, closedOn, returnOn }) => (
                <li>
                  Put away {dayInWords(parkedOn)},{' '}
                  {closedOn && closedOn <= on
                    ? `back ${dayInWords(closedOn)}`
                    : returnOn
                      ? `to be back ${dayInWords(returnOn)}`
                      : 'open end'}
                  .
                </li>
              ))}
            </List>
            {returns.map((here) => (
              <>
                <h3>Return to the road, begun {dayInWords(here.record.row.begunOn)}</h3>
                <p>
                  {sleptInWords(here.plan)} Why it was parked: {WHY_PARKED[here.record.row.why].toLowerCase()} (
                  {here.record.row.whyBy}).
                </p>
                {here.plan.stages
                  .filter(({ gate }) => gate.safety && gate.state !== 'passed')
                  .map(({ stage, gate }) => (
                    <p>
                      Gate of {stage.name}: {gate.state === 'in writing' ? 'passed in writing only' : 'not passed'}
                      {gate.state === 'in writing' && gate.pass && ` by ${gate.pass.by}: ${gate.pass.note}`}.
                    </p>
                  ))}
                {prices && <p>Spent, as told: {paidInWords(here.plan.money.spent, here.rates.currency)}.</p>}
                <ul class="dense">
                  {here.plan.entries
                    .map((entry) => (entry.what === 'tick' && !prices ? { ...entry, cost: null } : entry))
                    .filter((entry) => prices || entry.what !== 'decision')
                    .map((entry) => (
                      <li>
                        {dayInWords(entry.day)}, {entry.by}: {saidInWords(entry, here.rates.currency)}
                        {entry.note && ` ${entry.note}`}
                      </li>
                    ))}
                </ul>
              </>
            ))}
          </section>
        )}
      </CarSheetFrame>
    )}`,
  );
};

const odometerInWords = (reading: { day: string; km: number } | undefined): string =>
  reading ? `Odometer ${reading.km.toLocaleString('en-US')} km on ${reading.day}.` : 'No odometer reading.';

const List = ({ title, none, children }: { title: string; none: string; children: readonly Child[] }) => (
  <>
    <h3>{title}</h3>
    {children.length === 0 ? <p>{none}</p> : <ul class="dense">{children}</ul>}
  </>
);

/** First, since whoever reads the rest must know it. */
const Gaps = ({ findings }: { findings: readonly Finding[] }) => {
  const unproven = findings.filter(({ since, label }) => since === null && label === null);
  const disagree = findings.filter(({ since }) => since?.disagree || since?.contradicted);
  const weak = findings.filter(({ since }) => since?.evidence === 'seller’s word' || since?.evidence === 'assumed');
  return (
    <section>
      <h2>What is not known</h2>
      <List
        title={`No date is known of ${unproven.length} of ${findings.length} parts`}
        none="Every part has a date of some kind."
      >
        {unproven.length > 0 ? [<li>{unproven.map(nameOf).join(' · ')}</li>] : []}
      </List>
      <List title="Known by hearsay or assumption only" none="None.">
        {weak.map((finding) => (
          <li>
            {nameOf(finding)} ({finding.since?.evidence})
          </li>
        ))}
      </List>
      <List title="Sources that disagree; both are kept" none="None.">
        {disagree.map((finding) => (
          <li>{nameOf(finding)}</li>
        ))}
      </List>
    </section>
  );
};

const Dates = ({ findings }: { findings: readonly Finding[] }) => (
  <section>
    <h2>Dates of parts and fluids</h2>
    <table>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Date and age</th>
          <th scope="col">How it is known</th>
          <th scope="col">By common practice</th>
        </tr>
      </thead>
      <tbody>
        {findings
          .filter(({ since, label }) => since !== null || label !== null)
          .map((finding) => (
            <tr>
              <th scope="row">{nameOf(finding)}</th>
              <td>{explain(finding).age}</td>
              <td>{finding.since?.evidence ?? 'by its other dates'}</td>
              <td>{finding.standing}</td>
            </tr>
          ))}
      </tbody>
    </table>
  </section>
);

const Readings = ({ parts, on }: { parts: readonly PartOnRecord[]; on: string }) => {
  const read = parts.flatMap((part) =>
    part.readings.filter(({ day }) => day <= on).map((reading) => ({ part, reading })),
  );
  return (
    <section>
      <h2>Readings</h2>
      {read.length === 0 ? (
        <p>None was noted.</p>
      ) : (
        <ul class="two">
          {read
            .toSorted((a, b) => a.reading.day.localeCompare(b.reading.day))
            .map(({ part, reading }) => (
              <li>
                {dayInWords(reading.day)}: {partName(part)},{' '}
                {KINDS.get(part.kind)
                  ?.tests.find(({ gauge }) => gauge?.key === reading.gauge)
                  ?.name.toLowerCase()}{' '}
                {reading.value.toFixed(gaugeDecimals(part, reading.gauge))} {gaugeUnit(part, reading.gauge)}
              </li>
            ))}
        </ul>
      )}
    </section>
  );
};

const gaugeOf = (part: PartOnRecord, key: string) => kindOf(part).tests.find(({ gauge }) => gauge?.key === key)?.gauge;
const gaugeDecimals = (part: PartOnRecord, key: string): number => gaugeOf(part, key)?.decimals ?? 0;
const gaugeUnit = (part: PartOnRecord, key: string): string => gaugeOf(part, key)?.unit ?? '';
