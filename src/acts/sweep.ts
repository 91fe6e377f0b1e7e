/** The sweep: find what is news of parts and of stays, and put the day’s letters into the outbox, one digest a person. */
import { todayIn } from '../clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import { findingsOf } from '../findings/car.ts';
import type { Override } from '../findings/facts.ts';
import { letterHtml, letterText } from '../mail/letter.tsx';
import { type Digest, digestOf, type OwedCar, type RevivalLine, type StayLine } from '../notices/digest.ts';
import { owed, type Said } from '../notices/owed.ts';
import { newsOfRevival } from '../notices/revival-news.ts';
import { heardWhileStanding } from '../notices/silence.ts';
import { newsOf, type StayNews, unheard } from '../notices/stay-news.ts';
import { isSilent, type StayView } from '../plans/standing.ts';
import { revivalPlan } from '../revival/plan.ts';
import { openLayUps } from '../store/lay-ups.ts';
import {
  queueLetters,
  saidTo,
  type ToldOfRevival,
  type ToldOfStay,
  toldOfRevivalsTo,
  toldOfStaysTo,
  type Written,
} from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import { inTransaction } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import { type Collection, type Member, membersOf } from '../store/people.ts';
import { placesOf } from '../store/places.ts';
import { openRevivals } from '../store/revivals.ts';
import { type CarStreamed, eachCar } from '../store/stream.ts';
import { frameFor, letterRow, type Writing } from './letter-row.ts';
import { ratesOf } from './rates.ts';
import { revivalFacts } from './revivals.ts';
import { viewBeside } from './stays.ts';
import { planFor, wantsPlan } from './tell-plan.ts';

export interface SweepOptions extends Writing {
  /** Compute and answer, write nothing. */
  dryRun: boolean;
}

export interface SweepResult {
  letters: { to: string; subject: string; lines: number }[];
  /** Members who would get a letter but have no address. */
  withoutAddress: string[];
}

/** Reads and writes under one lock, so that two sweeps at the same time say nothing twice. */
export const sweepCollection = (store: Store, collection: Collection, options: SweepOptions): SweepResult =>
  options.dryRun ? sweep(store, collection, options) : inTransaction(store, () => sweep(store, collection, options));

const sweep = (store: Store, collection: Collection, options: SweepOptions): SweepResult => {
  const result: SweepResult = { letters: [], withoutAddress: [] };
  const written: Written[] = [];
  for (const { member, cars, plans, missed } of collectOwed(store, collection, options.today)) {
    const digest = digestOf(cars);
    if (!digest && plans.length === 0 && !missed) continue;
    if (!member.email) {
      result.withoutAddress.push(member.name);
      continue;
    }
    const to = { collection, member, recipient: member.email };
    for (const { view, names } of plans) written.push(planFor(view, names, to, options));
    if (digest) written.push(write(digest, to, options));
    if (digest) result.letters.push({ to: member.email, subject: digest.subject, lines: linesIn(digest) });
  }
  for (const { letter } of written)
    if (letter.kind === 'plan') result.letters.push({ to: letter.recipient, subject: letter.subject, lines: 1 });
  const ahead = options.today > todayIn(collection.timeZone, new Date(options.now));
  const swept = { collectionId: collection.id, day: options.today, ahead, finishedAt: options.now };
  if (!options.dryRun) queueLetters(store, swept, written);
  return result;
};

const linesIn = ({ cars }: Digest): number =>
  cars.reduce((sum, { lines, stay }) => sum + lines.length + stay.length, 0);

/** A person with what was said to them, and what they have to be told. */
interface Listener {
  member: Member;
  said: ReadonlyMap<string, readonly Said[]>;
  told: readonly ToldOfStay[];
  toldBack: readonly ToldOfRevival[];
  cars: OwedCar[];
  /** A round was to go to this person, who can’t be written to. */
  missed: boolean;
  plans: { view: StayView; names: { car: string; place: string | null } }[];
}

/** What each member has to be told, read in one walk over the collection. */
const collectOwed = (store: Store, collection: Collection, today: CivilDate): Listener[] => {
  const { id: collectionId } = collection;
  const overrides = overridesOf(store, collectionId);
  const layUps = openLayUps(store, collectionId, today);
  const revivals = openRevivals(store, collectionId, today);
  const rates = ratesOf(collection);
  const places = new Map(placesOf(store, collectionId).map((place) => [place.id, place]));
  const visitors = new Set([...layUps.values()].map(({ row }) => row.visitorId));
  const members = membersOf(store, collectionId);
  const listeners = members
    .filter(({ id, letters }) => letters || visitors.has(id))
    .map(
      (member): Listener => ({
        member,
        said: Map.groupBy(saidTo(store, collectionId, member.id, today), ({ partId }) => partId),
        told: toldOfStaysTo(store, collectionId, member.id, today),
        toldBack: toldOfRevivalsTo(store, collectionId, member.id, today),
        cars: [],
        missed: false,
        plans: [],
      }),
    );
  const reached = new Set(members.filter(({ email }) => email !== null).map(({ id }) => id));
  for (const car of eachCar(store, collectionId)) {
    const layUp = layUps.get(car.facts.id);
    const stay = layUp && stayBeside(layUp, car, { places, overrides }, today);
    const named = layUp?.row.visitorId ?? null;
    const visitor = named && reached.has(named) ? named : null;
    const round = stay?.news.some(({ sort }) => sort === 'round');
    for (const listener of listeners)
      if (named && !visitor && round && listener.member.id === named) listener.missed = true;
    const back = revivals.get(car.facts.id);
    const { facts, traits, parts } = car;
    const returns = back && {
      revivalId: back.row.id,
      news: newsOfRevival(revivalPlan(revivalFacts(back, { car: facts, traits, parts, overrides, rates }), today)),
    };
    tellOf(car, overrides, today, listeners, stay && { ...stay, visitor }, returns);
  }
  return listeners;
};

const stayBeside = (...beside: Parameters<typeof viewBeside>): Omit<StayTold, 'visitor'> => {
  const { view, place } = viewBeside(...beside);
  return { view, news: newsOf(view), place: place?.name ?? null };
};

interface StayTold {
  view: StayView;
  news: StayNews[];
  place: string | null;
  /** Who looks in and can be written to; null: whoever gets the letters. */
  visitor: string | null;
}

const tellOf = (
  { name, facts, parts }: CarStreamed,
  overrides: readonly Override[],
  today: CivilDate,
  listeners: readonly Listener[],
  stay: StayTold | undefined,
  back: { revivalId: string; news: StayNews[] } | undefined,
): void => {
  // While it stands, or is on its way back, its plan is the list of work.
  const stands = back !== undefined || (stay !== undefined && isSilent(stay.view));
  const findings = stay?.view.state === 'standing' ? stay.view.findings : findingsOf(facts, parts, overrides, today);
  const unproven = stands ? 0 : findings.filter(({ standing }) => standing === 'unproven').length;
  for (const { member, said, told, toldBack, cars, plans } of listeners) {
    const all = member.letters ? owed(findings, said) : [];
    const news = stands ? heardWhileStanding(all) : all;
    const lines = [
      ...(stay ? staysFor(member, stay, told) : []),
      ...(back && member.letters ? returnsFor(back, toldBack) : []),
    ];
    if (news.length + lines.length > 0) cars.push({ carId: facts.id, name, owed: news, stay: lines, unproven });
    if (stay && member.letters && wantsPlan(told, stay.view))
      plans.push({ view: stay.view, names: { car: name, place: stay.place } });
  }
};

/** Who looks in gets the rounds; everything else goes to whoever gets the collection’s letters. */
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
  return unheard(planned, own).map((one) => ({ layUpId, news: one }));
};

const returnsFor = (
  { revivalId, news }: { revivalId: string; news: StayNews[] },
  told: readonly ToldOfRevival[],
): RevivalLine[] =>
  unheard(
    news,
    told.filter((one) => one.revivalId === revivalId),
  ).map((one) => ({ revivalId, news: one }));

const write = (
  digest: Digest,
  to: { collection: Collection; member: Member; recipient: string },
  options: SweepOptions,
): Written => {
  const { today } = options;
  const frame = frameFor(to.member, to.collection, options);
  return {
    letter: letterRow('digest', to, options, {
      subject: digest.subject,
      text: letterText(digest, frame),
      html: letterHtml(digest, frame),
    }),
    said: digest.cars.flatMap(({ lines }) =>
      lines.flatMap(({ partId, news }) => news.map((stage) => ({ partId, stage, saidOn: today }))),
    ),
    told: digest.cars.flatMap(({ stay }) =>
      stay.flatMap((line) =>
        'layUpId' in line ? [{ layUpId: line.layUpId, matter: line.news.matter, saidOn: today }] : [],
      ),
    ),
    toldBack: digest.cars.flatMap(({ stay }) =>
      stay.flatMap((line) =>
        'revivalId' in line ? [{ revivalId: line.revivalId, matter: line.news.matter, saidOn: today }] : [],
      ),
    ),
  };
};
