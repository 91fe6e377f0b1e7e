/** What a person does with a part: dates it, looks at it, renews it, takes back a slip. */

import type { Clock } from '../catalogue/clock.ts';
import type { Kind } from '../catalogue/kind.ts';
import { KINDS } from '../catalogue/kinds.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Answers, CarFacts } from '../findings/facts.ts';
import { addPart, type CarWithParts, changePart, type PartOnRecord, recordClaim, replacePart } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import { type AnswerGiven, readAnswers } from './details.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { type ClaimGiven, type ClaimRead, readClaim } from './read-claim.ts';

export const kindOf = (part: { kind: string }): Kind => {
  const kind = KINDS.get(part.kind);
  if (!kind) throw new Error(`No kind ${part.kind} in the catalogue`);
  return kind;
};

/** A closed record is history: its successor is the one to write to. */
const isClosed = ({ closedOn }: { closedOn: CivilDate | null }): Outcome<never> =>
  refused({
    field: 'part',
    message: `This part was closed on ${closedOn}; its successor is the one to date or renew.`,
  });

/** Records one date of a part; `instead` names an earlier claim that was a slip. */
export const datePart = (
  store: Store,
  acting: Acting,
  { part, car }: { part: PartOnRecord; car: CarFacts },
  given: ClaimGiven,
  instead: string | null = null,
): Outcome<ClaimRead> => {
  if (part.closedOn) return isClosed(part);
  const claims = part.claims.filter(({ id }) => id !== instead);
  const read = readClaim(given, { kind: kindOf(part), claims }, car, acting);
  if (read.ok) recordClaim(store, acting.collectionId, part.id, read.value.claim, instead);
  return read;
};

/** The clock that begins when such a part is renewed. */
export const beginsOn = ({ clock }: Kind): Clock =>
  clock === 'filled' || clock === 'serviced' || clock === 'used' ? clock : 'fitted';

export interface RenewalGiven {
  why: string;
  note: string;
  claims: readonly ClaimGiven[];
}

/** Closes a part and opens its successor with what is known of it; answers the new part's id. */
export const renewPart = (
  store: Store,
  acting: Acting,
  { part, car }: { part: PartOnRecord; car: CarFacts },
  { why, note, claims }: RenewalGiven,
): Outcome<string> => {
  if (part.closedOn) return isClosed(part);
  const read = readClaims(claims, kindOf(part), car, acting);
  if (!read.ok) return read;
  const stays = (kindOf(part).details ?? []).filter((detail) => detail.stays).map(({ key }) => key);
  const details = Object.fromEntries(Object.entries(part.details).filter(([key]) => stays.includes(key)));
  const successor = replacePart(store, part, acting.today, why, note, read.value, details);
  return successor === null ? isClosed({ closedOn: acting.today }) : done(successor);
};

export interface PartGiven {
  kind: string;
  position: string | null;
  note: string;
  claims: readonly ClaimGiven[];
}

/** Adds a part to a car; one that is on its list and waits for a first date is that part. Answers its id. */
export const addPartAct = (
  store: Store,
  acting: Acting,
  { car, facts, parts }: CarWithParts,
  given: PartGiven,
): Outcome<string> => {
  const kind = KINDS.get(given.kind);
  if (!kind)
    return refused({ field: 'kind', message: `There is no kind “${given.kind}”. The Practice page lists them all.` });
  const there = parts.find((part) => part.kind === kind.key && part.position === given.position);
  if (there && there.claims.length > 0)
    return refused({
      field: 'position',
      message: `The car already has this part${given.position ? ` at “${given.position}”` : ''}. Renew that one, or name another position.`,
    });
  const read = readClaims(given.claims, kind, facts, acting);
  if (!read.ok) return read;
  const { position, note } = given;
  if (there) {
    changePart(store, acting.collectionId, there.id, note || undefined, read.value);
    return done(there.id);
  }
  return done(
    addPart(store, acting.collectionId, car.id, acting.today, { kind: kind.key, position, note }, read.value),
  );
};

export interface PartChangeGiven {
  note?: string | undefined;
  claims: readonly ClaimGiven[];
  /** Answers by key; an empty one forgets what was answered, and what is not named stays. */
  details?: Readonly<Record<string, AnswerGiven>> | undefined;
}

/** Changes a part's note, its details, and records further dates, all or nothing. */
export const changePartAct = (
  store: Store,
  acting: Acting,
  { part, car }: { part: PartOnRecord; car: CarFacts },
  { note, claims, details }: PartChangeGiven,
): Outcome<null> => {
  if (part.closedOn && (claims.length > 0 || details)) return isClosed(part);
  const kind = kindOf(part);
  const read = readClaims(claims, kind, car, acting, part.claims);
  const answers = details ? changedAnswers(part.details, kind, details) : done(undefined);
  if (!read.ok || !answers.ok)
    return { ok: false, faults: [read, answers].flatMap((one) => (one.ok ? [] : one.faults)) };
  changePart(store, acting.collectionId, part.id, note, read.value, answers.value);
  return done(null);
};

const changedAnswers = (known: Answers, kind: Kind, given: Readonly<Record<string, AnswerGiven>>): Outcome<Answers> => {
  const read = readAnswers(kind.details ?? [], given);
  if (!read.ok) return { ok: false, faults: read.faults.map((one) => ({ ...one, field: `details/${one.field}` })) };
  const kept = Object.entries(known).filter(([key]) => !Object.hasOwn(given, key));
  return done({ ...Object.fromEntries(kept), ...read.value });
};

/** Reads several dates of one part, each checked against those before it; faults name the place in the list. */
const readClaims = (
  given: readonly ClaimGiven[],
  kind: Kind,
  car: CarFacts,
  acting: Acting,
  known: PartOnRecord['claims'] = [],
): Outcome<ClaimRead['claim'][]> => {
  const faults: Fault[] = [];
  const read: ClaimRead['claim'][] = [];
  given.forEach((claim, index) => {
    const one = readClaim(claim, { kind, claims: [...known, ...read] }, car, acting);
    if (one.ok) read.push(one.value.claim);
    else faults.push(...one.faults.map((fault) => ({ ...fault, field: `dates/${index}/${fault.field}` })));
  });
  return faults.length > 0 ? { ok: false, faults } : done(read);
};
