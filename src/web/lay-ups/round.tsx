/** The monthly round: ten minutes at the car with a phone, big fields, one button. */
import type { Fault } from '../../acts/fault.ts';
import { closedFault } from '../../acts/lay-up.ts';
import { makeRound } from '../../acts/make-round.ts';
import { kindOf } from '../../acts/parts.ts';
import type { StayHere } from '../../acts/stays.ts';
import { CAUTIONS, DEFERS } from '../../catalogue/cautions.ts';
import { type CivilDate, monthsBetween } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { gaugesOf } from '../../findings/measured.ts';
import { type Look, looksOn } from '../../plans/looks.ts';
import { roundsOf } from '../../plans/rounds.ts';
import type { Stay } from '../../plans/stay.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { withdrawRound } from '../../store/lay-ups.ts';
import { type ReadingsForm, readForm } from '../forms.ts';
import { A, FaultSummary, Faults, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { nameOf } from '../pages/part-name.ts';
import { fieldOf, ReadingField } from '../pages/reading-field.tsx';
import { AirTemperature } from '../pages/record-readings.tsx';
import { besideFields, readingsIn } from '../reading-form.ts';
import { actingIn, at, type Ctx } from '../visit.ts';
import { ROUND_FORM } from './forms.ts';
import { stayInPath, toRecord } from './in-path.ts';
import { isClosed } from './words.ts';

export const roundOfStay = (c: Ctx) => {
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  return isClosed(here.record.row, c.get('visit').on) ? toRecord(c, here) : show(c, here, {}, []);
};

export const makeRoundPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const form = await readForm(c, ROUND_FORM);
  const given = { ...form, day: form.day || visit.on };
  const outcome = makeRound(
    c.get('around').store,
    actingIn(visit),
    here,
    {
      day: given.day,
      note: form.note,
      answers: answersIn(form),
      readings: readingsIn({ ...given, note: '' }, given.day),
    },
    (one) => fieldOf(one.partId, one.gauge),
  );
  if (!outcome.ok) return show(c, here, form, besideFields(outcome.faults, form));
  return c.redirect(at(visit, `/lay-ups/${here.record.row.id}#standing`), 303);
};

const LOOK = /^look\.(.+)$/;
const answersIn = (form: ReadingsForm): Record<string, string> =>
  Object.fromEntries(
    Object.entries(form).flatMap(([name, answer]) => {
      const [, key] = LOOK.exec(name) ?? [];
      return key ? [[key, answer]] : [];
    }),
  );

export const takeBackRound = (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  const made = here?.record.rounds.find(({ id }) => id === c.req.param('roundId'));
  if (!here || !made) return notFound(c, 'round');
  const closed = closedFault(here.record, visit.on);
  if (closed) return show(c, here, {}, closed.faults);
  const { id } = here.record.row;
  withdrawRound(c.get('around').store, visit.collection.id, id, made.id, visit.on);
  return c.redirect(at(visit, `/lay-ups/${id}#standing`), 303);
};

const show = (c: Ctx, here: StayHere, given: Partial<ReadingsForm>, faults: readonly Fault[]) =>
  page(
    c,
    `Round: ${here.found.car.name}`,
    <Round here={here} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

const Round = ({ here, given, faults }: { here: StayHere; given: Partial<ReadingsForm>; faults: readonly Fault[] }) => {
  const { record, found, view } = here;
  const { on } = useVisit();
  const { stay, rounds, situation } = view;
  if (view.state === 'ahead')
    return (
      <>
        <h1>Round: {found.car.name}</h1>
        <FaultSummary faults={faults} />
        <Faults faults={faults} field="day" />
        <p>
          It is parked on {dayInWords(stay.parkedOn)}; the first round comes a month later.{' '}
          <A to={`/lay-ups/${record.row.id}`}>Back to the plan</A>
        </p>
      </>
    );
  const due = rounds.find(({ state }) => state === 'due');
  const month = countsFor(stay, on) ?? monthsBetween(stay.parkedOn, on);
  const looks = looksOn(situation, month);
  const gauges = gaugesIn(
    found.parts,
    WALK.filter((kind) => kind !== 'tires-road' || !stay.circumstances.includes('wheels-off')),
  );
  const missed = rounds.filter(({ state }) => state === 'missed');
  return (
    <>
      <p class="crumb">
        <A to={`/lay-ups/${record.row.id}`}>Lay-up of {found.car.name}</A>
      </p>
      <h1>Round: {found.car.name}</h1>
      <p class="lede">
        {due
          ? `Due since ${dayInWords(due.due)}.`
          : 'None is due; made early it counts all the same from ten days before.'}{' '}
        Parked since {dayInWords(stay.parkedOn)}. Leave open what you did not look at.
      </p>
      {missed.length > 0 && <p class="note">Missed: {missed.map((one) => dayInWords(one.due)).join('; ')}.</p>}
      <p class="note">Do not start it for a short while: that adds water and fuel to the oil and charges nothing.</p>
      <FaultSummary faults={faults} />
      <Faults faults={faults} field="looks" />
      <Post to={`/lay-ups/${record.row.id}/round`} class="round">
        {looks.map((look) => (
          <LookField look={look} given={given} faults={faults} />
        ))}
        <h2>What the instruments show</h2>
        {gauges.map(({ part, test }) => (
          <ReadingField
            part={part}
            test={test}
            label={`${nameOf(part)}: ${test.name.toLowerCase()}`}
            given={given}
            faults={faults}
            warmth={false}
          />
        ))}
        <AirTemperature given={given} faults={faults} />
        <label>
          Note
          <textarea name="note" rows={2}>
            {given.note ?? ''}
          </textarea>
        </label>
        <label>
          Day (today if empty)
          <input name="day" type="date" value={given.day ?? ''} max={on} />
        </label>
        <Faults faults={faults} field="day" />
        <button class="big">Save the round</button>
      </Post>
      <p class="note">{DEFERS}</p>
    </>
  );
};

/** The month a round made on a day counts for, early ones too; null: none yet. */
const countsFor = (stay: Stay, day: CivilDate): number | null =>
  roundsOf(stay, [{ id: '', day, by: '', answers: {}, note: '' }], day).find(({ made }) => made)?.month ?? null;

/** Battery, tires, spare, humidity: the order of the walk round the car. One hygrometer is enough. */
const WALK = [
  'battery-flooded',
  'battery-agm',
  'battery-lithium',
  'tires-road',
  'tire-spare',
  'tire-compact-spare',
  'desiccant',
];

const gaugesIn = (parts: readonly PartOnRecord[], walk: readonly string[]) =>
  walk
    .flatMap((kind) => cornersOf(parts.filter((part) => part.kind === kind)))
    .flatMap((part) =>
      gaugesOf(kindOf(part))
        .filter(({ gauge }) => gauge.round)
        .map((test) => ({ part, test })),
    );

/** Front before rear, left before right. */
const cornersOf = (parts: readonly PartOnRecord[]): PartOnRecord[] =>
  parts.toSorted((a, b) => (a.position ?? '').localeCompare(b.position ?? ''));

const LookField = ({ look, given, faults }: { look: Look; given: Partial<ReadingsForm>; faults: readonly Fault[] }) => {
  const name = `look.${look.key}`;
  return (
    <fieldset class="look">
      <legend>{look.name}</legend>
      <p class="hint">{look.how}</p>
      {look.cautions.map((key) => (
        <p class="caution">{CAUTIONS[key]}</p>
      ))}
      <div class="targets">
        {Object.entries(look.answers).map(([key, answer]) => (
          <label>
            <input type="radio" name={name} value={key} checked={given[name] === key} /> <span>{answer.name}</span>
          </label>
        ))}
      </div>
      <Faults faults={faults} field={name} />
    </fieldset>
  );
};
