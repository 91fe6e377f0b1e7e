/** Lay-ups to test with, made, ticked, rounded and swept through the doors people and jobs use. */
import type { Outcome } from '../../src/acts/fault.ts';
import { closeLayUp, type LayUpGiven, startLayUp } from '../../src/acts/lay-up.ts';
import { makeRound } from '../../src/acts/make-round.ts';
import type { ReadingGiven } from '../../src/acts/record-reading.ts';
import { type StayHere, stayHere } from '../../src/acts/stays.ts';
import { type SweepResult, sweepCollection } from '../../src/acts/sweep.ts';
import { tellPlan } from '../../src/acts/tell-plan.ts';
import { stepIn, type TickGiven, tickDone } from '../../src/acts/tick.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { siteAt } from '../../src/links.ts';
import { LAY_UP_STEPS } from '../../src/plans/lay-up.ts';
import type { Plan, PlanName, PlanStep } from '../../src/plans/plan.ts';
import { WAKE_UP_STEPS } from '../../src/plans/wake-up.ts';
import { type LetterRow, lettersOf } from '../../src/store/letters.ts';
import { addMember, type Collection, findCollection } from '../../src/store/people.ts';
import { addPlace, type NewPlace } from '../../src/store/places.ts';
import { type Barn, barnOf, carIn, carOf, must, openBarn } from './cars.ts';
import { filledIn } from './html.ts';
import { allSent } from './letters.ts';
import { openSite } from './site.ts';
import { placeOf } from './stays.ts';

/** A usual winter: planned on, parked on, back on. */
export const PLANNED: CivilDate = '2026-09-10';
export const PARKED: CivilDate = '2026-11-01';
export const BACK: CivilDate = '2027-04-01';

export const { href } = siteAt(new URL('https://barn.example.org/cars-here'), 3000);

export const layUpGiven = (more: Partial<LayUpGiven> = {}): LayUpGiven => ({
  parkedOn: PARKED,
  returnOn: BACK,
  place: '',
  visitor: '',
  phone: '',
  circumstances: [],
  numbers: { dose: '', engine: '', cylinders: '' },
  papers: { storageFrom: '', roadUntil: '', noticeFrom: '', renewsOn: '', rules: '' },
  note: '',
  ...more,
});

/** What a step is called, so that its words can change without a test. */
export const titleOf = (key: string, name: PlanName = 'lay-up'): string => {
  const step = (name === 'lay-up' ? LAY_UP_STEPS : WAKE_UP_STEPS).find((one) => one.key === key);
  if (!step) throw new Error(`No step ${key} in the ${name}`);
  return step.title;
};

/** The barn as somebody acts in it on a day. */
export const onDayIn = (barn: Barn, today: CivilDate): Barn => ({ ...barn, acting: { ...barn.acting, today } });

export const placeIn = ({ store, acting }: Barn, name: string, more: Partial<NewPlace> = {}): string =>
  addPlace(store, acting.collectionId, { ...placeOf(), name, note: '', ...more });

export const personIn = ({ store, acting }: Barn, name: string, email: string | null, letters: boolean): string =>
  addMember(store, acting.collectionId, { name, email, dateOrder: 'ask', letters });

/** A barn on the day the winter is planned, with a car and a garage that freezes. */
export const winterBarn = (): { barn: Barn; carId: string; placeId: string } => {
  const barn = onDayIn(openBarn(), PLANNED);
  return { barn, carId: carIn(barn), placeId: placeIn(barn, 'Garage') };
};

export const tryLayUp = (barn: Barn, carId: string, more: Partial<LayUpGiven> = {}, like = ''): Outcome<string> => {
  const { store, acting } = barn;
  return startLayUp(store, acting, carOf(barn, carId), layUpGiven(more), like);
};

export const layUpIn = (barn: Barn, carId: string, more: Partial<LayUpGiven> = {}, like = ''): string =>
  must(tryLayUp(barn, carId, more, like));

export const stayIn = ({ store, acting }: Barn, id: string, on: CivilDate = acting.today): StayHere => {
  const here = stayHere(store, acting.collectionId, id, on);
  if (!here) throw new Error(`No lay-up ${id}`);
  return here;
};

export const planIn = (barn: Barn, id: string, on: CivilDate, name: PlanName = 'lay-up'): Plan => {
  const { view } = stayIn(barn, id, on);
  return name === 'lay-up' ? view.layUp : view.wakeUp;
};

export const stepOn = (barn: Barn, id: string, key: string, on: CivilDate, name: PlanName = 'lay-up'): PlanStep => {
  const step = stepIn(stayIn(barn, id, on).view, name, key);
  if (!step) throw new Error(`No step ${key} in the ${name}`);
  return step;
};

/** Ticks a step as somebody would on a day; what is not said is left empty, and of its effects none is wanted. */
export const tickOn = (
  barn: Barn,
  id: string,
  key: string,
  on: CivilDate,
  more: Partial<TickGiven> = {},
  plan: PlanName = 'lay-up',
): Outcome<null> =>
  tickDone(
    barn.store,
    { ...barn.acting, today: on },
    stayIn(barn, id, on),
    stepOn(barn, id, key, on, plan),
    plan,
    { day: on, note: '', cost: '', evidence: 'receipt', km: null, effects: [], answers: {}, readings: [], ...more },
    ({ gauge }) => `${gauge} `,
  );

export const roundOn = (
  barn: Barn,
  id: string,
  on: CivilDate,
  answers: Readonly<Record<string, string>>,
  more: { day?: string; note?: string; readings?: readonly ReadingGiven[] } = {},
): Outcome<null> =>
  makeRound(
    barn.store,
    { ...barn.acting, today: on },
    stayIn(barn, id, on),
    { day: on, note: '', readings: [], answers, ...more },
    ({ gauge }) => `${gauge} `,
  );

export const closeOn = (
  barn: Barn,
  id: string,
  on: CivilDate,
  how: 'back' | 'called off' = 'back',
  day: string = on,
): Outcome<null> =>
  closeLayUp(barn.store, { ...barn.acting, today: on }, stayIn(barn, id, on), { day, how, km: null, pattern: false });

const collectionOf = ({ store, acting }: Barn): Collection => {
  const collection = findCollection(store, acting.collectionId);
  if (!collection) throw new Error('No collection');
  return collection;
};

/** The sweep as on a day; `clock` is the day it is when the sweep runs. */
export const sweepOn = (
  barn: Barn,
  today: CivilDate,
  { clock = today, dryRun = false }: { clock?: CivilDate; dryRun?: boolean } = {},
): SweepResult => {
  allSent(barn.store);
  return sweepCollection(barn.store, collectionOf(barn), { today, now: `${clock}T07:00:00.000Z`, href, dryRun });
};

/** Sends the plan of a stay, as making it does. */
/** `clock`: the day it is sent, where that is not the day the pages are seen as on. */
export const tellOn = (barn: Barn, id: string, today: CivilDate, clock: CivilDate = today): number =>
  tellPlan(barn.store, collectionOf(barn), stayIn(barn, id, today), { today, now: `${clock}T10:00:00.000Z`, href });

/** What was written so far, oldest first; to one person if named. */
export const lettersTo = ({ store, acting }: Barn, recipient?: string): LetterRow[] =>
  lettersOf(store, acting.collectionId)
    .toReversed()
    .filter((letter) => recipient === undefined || letter.recipient === recipient);

/** The letters one sweep wrote, by who got them. */
export const sweptOn = (
  barn: Barn,
  today: CivilDate,
  more: { clock?: CivilDate } = {},
): Record<string, string | undefined> => {
  const before = new Set(lettersTo(barn).map(({ id }) => id));
  sweepOn(barn, today, more);
  const written = lettersTo(barn).filter(({ id }) => !before.has(id));
  return Object.fromEntries(written.map(({ recipient, text }) => [recipient, text]));
};

/** All that is stored of lay-ups and of the cars: to show that nothing changed. */
export const everythingIn = ({ store }: Barn): Record<string, unknown[]> =>
  Object.fromEntries(
    ['lay_ups', 'ticks', 'own_steps', 'rounds', 'parts', 'claims', 'readings', 'odometer', 'car_places'].map(
      (table) => [table, store.$client.prepare(`select * from ${table} order by rowid`).all()],
    ),
  );

/** A site on the day the winter is planned: a car, a garage, and its lay-up made by the form. */
export const winterSite = async (more: Record<string, string | string[]> = {}) => {
  const site = openSite({ now: `${PLANNED}T10:00:00Z` });
  const barn = onDayIn(barnOf(site), PLANNED);
  const carId = carIn(barn, { name: 'Merle <Tourer>' });
  const placeId = placeIn(barn, 'Garage <north>');
  const made = await site.post('/lay-ups', {
    car: carId,
    parkedOn: PARKED,
    returnOn: BACK,
    place: placeId,
    ...more,
  });
  const id = made.headers.get('location')?.split('/').at(-1) ?? '';
  const at = (path: string, on?: CivilDate) => `/lay-ups/${id}${path}${on ? `?on=${on}` : ''}`;
  const page = async (path = '', on?: CivilDate) => (await site.get(at(path, on))).text();
  /** Sends a form of a page as a browser would, with some fields filled. */
  const send = async (
    from: string,
    to: string,
    fields: Record<string, string | string[]>,
    on?: CivilDate,
  ): Promise<Response> => site.post(at(to, on), { ...filledIn(await page(from, on), at(to, on)), ...fields });
  return { site, barn, carId, placeId, id, at, page, send };
};
