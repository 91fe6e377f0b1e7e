/** What each person of a collection has to be told on a day, read in one walk over its cars. */
import type { CivilDate } from '../dates/civil.ts';
import { explain } from '../findings/explain.ts';
import type { Answer } from '../notices/answers.ts';
import type { OwedCar, RevivalLine, StayLine } from '../notices/digest.ts';
import { type Owed, owed, type Said } from '../notices/owed.ts';
import { newsOfRevival } from '../notices/revival-news.ts';
import { heardWhileStanding } from '../notices/silence.ts';
import { newsOf, type StayNews, unheard } from '../notices/stay-news.ts';
import { wantsYearly, wished } from '../notices/wishes.ts';
import { type YearCar, yearCarOf } from '../notices/yearly.ts';
import { isSilent, type StayView } from '../plans/standing.ts';
import { answersIn } from '../store/answers.ts';
import { openLayUps } from '../store/lay-ups.ts';
import { lastYearly } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import { firstSwept } from '../store/outbox.ts';
import { type Collection, type Member, membersOf } from '../store/people.ts';
import { saidTo, type ToldOfRevival, type ToldOfStay, toldOfRevivalsTo, toldOfStaysTo } from '../store/told.ts';
import { messageOf } from './judge.ts';
import { type CarReckoned, eachCarReckoned, type StayReckoned } from './reckon.ts';
import { wantsPlan } from './tell-plan.ts';

/** A person with what was said to them, and what they have to be told. */
interface Listener {
  member: Member;
  said: ReadonlyMap<string, readonly Said[]>;
  /** From which day this person was told of things; null: today is the first. */
  since: CivilDate | null;
  told: readonly ToldOfStay[];
  toldBack: readonly ToldOfRevival[];
  cars: OwedCar[];
  /** The cars of the yearly letter; null: it is not owed. */
  year: YearCar[] | null;
  /** A round was to go to this person, who can’t be written to. */
  missed: boolean;
  plans: { view: StayView; names: { car: string; place: string | null } }[];
}

/** Who is asked for, and the letter to each that is being written and does not count as told. */
export type Asked = readonly { personId: string; besides: string | null }[];

export interface Heard {
  listeners: Listener[];
  /** What could not be reckoned, a line each. */
  troubles: string[];
}

export const listen = (store: Store, collection: Collection, today: CivilDate, asked: Asked): Heard => {
  const { id: collectionId } = collection;
  const visitors = new Set([...openLayUps(store, collectionId, today).values()].map(({ visitorId }) => visitorId));
  const answers = Map.groupBy(answersIn(store, collectionId), ({ partId }) => partId);
  const members = membersOf(store, collectionId);
  const troubles: string[] = [];
  const listeners = members
    .filter(({ id, letters, stoppedOn }) => stoppedOn === null && (letters || visitors.has(id)))
    .flatMap((member) => {
      const one = asked.find(({ personId }) => personId === member.id);
      return one ? [listenerFor(store, collectionId, member, today, one.besides)] : [];
    });
  const reached = new Set(members.filter(isReached).map(({ id }) => id));
  for (const car of eachCarReckoned(store, collection, today)) {
    const own = [...car.troubles];
    try {
      const named = car.stay?.row.visitorId ?? null;
      const news = car.stay ? newsOf(car.stay.view) : [];
      if (named && !reached.has(named) && news.some(({ sort }) => sort === 'round'))
        for (const listener of listeners) if (listener.member.id === named) listener.missed = true;
      const stay = car.stay && { ...car.stay, news, visitor: named && reached.has(named) ? named : null };
      const back = car.back && { revivalId: car.back.row.id, news: newsOfRevival(car.back.plan) };
      tellOf({ car, answers, today, stay, back, troubles: own }, listeners);
    } catch (error) {
      // One car that can’t be told must not silence the others.
      own.push(`${car.name}: ${messageOf(error)}`);
    }
    troubles.push(...own);
  }
  return { listeners, troubles };
};

const isReached = ({ email, pushUrl, webhookUrl, stoppedOn }: Member): boolean =>
  stoppedOn === null && (email ?? pushUrl ?? webhookUrl) !== null;

const listenerFor = (
  store: Store,
  collectionId: string,
  member: Member,
  day: CivilDate,
  besides: string | null,
): Listener => {
  const listening = { collectionId, personId: member.id, day, besides };
  const yearly = member.letters && wantsYearly(member, lastYearly(store, collectionId, member.id, besides, day), day);
  return {
    member,
    said: Map.groupBy(saidTo(store, listening), ({ partId }) => partId),
    since: firstSwept(store, collectionId, member.id),
    told: toldOfStaysTo(store, listening),
    toldBack: toldOfRevivalsTo(store, listening),
    cars: [],
    year: yearly ? [] : null,
    missed: false,
    plans: [],
  };
};

interface StayTold extends StayReckoned {
  news: StayNews[];
  /** Who looks in and can be written to; null: whoever gets the letters. */
  visitor: string | null;
}

interface CarTold {
  car: CarReckoned;
  answers: ReadonlyMap<string, readonly Answer[]>;
  today: CivilDate;
  stay: StayTold | null;
  back: { revivalId: string; news: StayNews[] } | null;
  /** Lines on what could not be reckoned so far; what can’t be put into words joins them. */
  troubles: string[];
}

const tellOf = (
  { car: { name, facts, findings: judged }, answers, today, stay, back, troubles }: CarTold,
  listeners: readonly Listener[],
): void => {
  // While it stands, or is on its way back, its plan is the list of work.
  const stands = back !== null || (stay !== null && isSilent(stay.view));
  const findings = stay?.view.state === 'standing' ? stay.view.findings : judged;
  const unproven = stands ? 0 : findings.filter(({ standing }) => standing === 'unproven').length;
  const unsayable = new Map<string, string>();
  const isSayable = (one: Owed): boolean => {
    try {
      explain(one);
      return true;
    } catch (error) {
      unsayable.set(one.part.id, `${name}: ${one.part.kind}: ${messageOf(error)}`);
      return false;
    }
  };
  for (const listener of listeners) {
    const { member, said, since, told, toldBack, cars, plans } = listener;
    const repeats = { days: member.repeatDays, personId: member.id, answers };
    const all = member.letters ? wished(owed(findings, said, repeats, since), facts.id, member, today) : [];
    const news = (stands ? heardWhileStanding(all) : all).filter(isSayable);
    const wanted = member.letters && !member.notCars.includes(facts.id);
    const lines = [
      ...(stay && (wanted || stay.visitor === member.id) ? staysFor(member, stay, told) : []),
      ...(back && wanted ? returnsFor(back, toldBack) : []),
    ];
    if (news.length + lines.length > 0)
      cars.push({
        carId: facts.id,
        name,
        owed: news,
        stay: lines,
        unproven,
        unjudged: troubles.length + unsayable.size,
      });
    if (stay && wanted && wantsPlan(told, stay.view))
      plans.push({ view: stay.view, names: { car: name, place: stay.place?.name ?? null } });
    if (wanted) listener.year?.push(yearCarOf({ id: facts.id, name }, findings, stateOf(stay, back), today));
  }
  troubles.push(...unsayable.values());
};

const stateOf = (stay: StayTold | null, back: object | null): string | null => {
  if (back) return 'On its way back to the road';
  return stay?.view.state === 'standing' ? `Laid up${stay.place ? ` in “${stay.place.name}”` : ''}` : null;
};

/** Who looks in gets the rounds, and what can be done at the car with them; all else is for who gets the letters. */
const staysFor = (
  { id, letters }: Member,
  { view, news, visitor }: StayTold,
  told: readonly ToldOfStay[],
): StayLine[] => {
  const layUpId = view.stay.id;
  const own = told.filter((one) => one.layUpId === layUpId);
  const mine = news.filter(({ sort, forVisitor }) =>
    sort === 'round' && visitor !== null ? id === visitor : letters || (id === visitor && forVisitor),
  );
  // What stands in the plan that goes out today is not told beside it.
  const planned = letters && wantsPlan(told, view) ? mine.filter(({ sort }) => sort !== 'step') : mine;
  const fresh = unheard(planned, own);
  // Who only looks in is written to when a round is due, and else left in peace.
  if (!letters && !fresh.some(({ sort }) => sort === 'round')) return [];
  return fresh.map((one) => ({ layUpId, news: one }));
};

const returnsFor = (
  { revivalId, news }: { revivalId: string; news: StayNews[] },
  told: readonly ToldOfRevival[],
): RevivalLine[] =>
  unheard(
    news,
    told.filter((one) => one.revivalId === revivalId),
  ).map((one) => ({ revivalId, news: one }));
