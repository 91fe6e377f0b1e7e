/** A claimed letter just before it goes: written from today’s facts, or called off with a reason. */
import { todayIn } from '../clock.ts';
import { type CivilDate, latest } from '../dates/civil.ts';
import type { Parcel } from '../mail/transport.ts';
import { digestOf } from '../notices/digest.ts';
import { openLayUps } from '../store/lay-ups.ts';
import type { CalledOff } from '../store/letter-schema.ts';
import { findLetter, type LetterRow } from '../store/letters.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { cancelLetter, putLetter, queueLetters, type Written } from '../store/outbox.ts';
import { type Collection, findCollection, type Member, membersOf } from '../store/people.ts';
import { tellingIn } from '../store/told.ts';
import { type Addressed, addressOf, type Writing } from './letter-row.ts';
import { listen } from './listen.ts';
import { stopPath } from './signed-links.ts';
import { stayHere } from './stays.ts';
import { isWorthTelling, PLAN, planFor } from './tell-plan.ts';
import { digestFor } from './write-digest.ts';

type Fresh = { write: Written } | { keep: LetterRow } | { callOff: CalledOff };

/** A letter with what its door needs to know beside it. */
export const parcelFor = (store: Store, letter: LetterRow, { now, href }: Omit<Writing, 'today'>): Parcel | null => {
  const fresh = refreshLetter(store, letter, { now, href });
  if (!fresh) return null;
  const { collectionId, personId } = fresh;
  const member = membersOf(store, collectionId).find(({ id }) => id === personId);
  return {
    letter: fresh,
    collection: findCollection(store, collectionId)?.name ?? '',
    page: href(`/letters/${fresh.copyOf ?? fresh.id}`),
    secret: member?.webhookSecret ?? null,
    stop: href(stopPath(store, collectionId, personId)),
  };
};

/**
 * The letter as it is to be sent, kept so in the outbox, or null where it was called off. One in doubt may have arrived:
 * it stays word for word what it was.
 */
const refreshLetter = (store: Store, letter: LetterRow, { now, href }: Omit<Writing, 'today'>): LetterRow | null =>
  inTransaction(store, (tx) => {
    const fresh = freshOf(tx, letter, { now, href });
    if ('callOff' in fresh) {
      cancelLetter(tx, letter, fresh.callOff);
      return null;
    }
    if ('keep' in fresh) {
      putLetter(tx, fresh.keep);
      return fresh.keep;
    }
    // Still claimed, still the same message; copies have rows and a turn of their own.
    const { messageId, state, tries, leaseUntil } = letter;
    const written = { ...fresh.write.letter, messageId, state, tries, leaseUntil };
    queueLetters(tx, [{ ...fresh.write, letter: written, copies: [] }]);
    return written;
  });

const freshOf = (store: Store, letter: LetterRow, { now, href }: Omit<Writing, 'today'>): Fresh => {
  const collection = findCollection(store, letter.collectionId);
  const member = collection && membersOf(store, collection.id).find(({ id }) => id === letter.personId);
  if (!collection || !member) return { callOff: 'no address' };
  if (member.stoppedOn !== null) return { callOff: 'stopped' };
  if (letter.kind === 'test') return { keep: letter };
  if (letter.copyOf !== null) return copyOf(store, letter, letter.copyOf, member);
  const to = addressOf(collection, member);
  if (!to) return { callOff: 'no address' };
  if (letter.inDoubt) return doubtful(store, letter, member, to);
  const writing = { today: dayOf(letter, collection, now), now, href };
  return letter.kind === 'plan'
    ? planNow(store, letter, to, writing)
    : digestNow(store, letter, { collection, member, to }, writing);
};

/** Its words have perhaps arrived and stay; where it goes, and whether, is today's. */
const doubtful = (store: Store, letter: LetterRow, member: Member, to: Addressed): Fresh => {
  const looksIn = [...openLayUps(store, letter.collectionId, letter.day).values()].some(
    ({ visitorId }) => visitorId === member.id,
  );
  if (!member.letters && !looksIn) return { callOff: 'letters off' };
  return { keep: to.door === letter.door ? { ...letter, recipient: to.recipient } : letter };
};

/** Today, or the day ahead or back as on which somebody asked for it. */
const dayOf = ({ day, writtenAt }: LetterRow, { timeZone }: Collection, now: string): CivilDate =>
  day < todayIn(timeZone, new Date(writtenAt)) ? day : latest(day, todayIn(timeZone, new Date(now)));

const digestNow = (
  store: Store,
  letter: LetterRow,
  { collection, member, to }: { collection: Collection; member: Member; to: Addressed },
  writing: Writing,
): Fresh => {
  const asked = [{ personId: member.id, besides: letter.id }];
  const [listener] = listen(store, collection, writing.today, asked).listeners;
  if (!listener) return { callOff: 'letters off' };
  const digest = digestOf(listener.cars, listener.year && { on: writing.today, cars: listener.year });
  return digest ? { write: digestFor(store, digest, to, writing, letter) } : { callOff: 'no news' };
};

const planNow = (store: Store, letter: LetterRow, to: Addressed, writing: Writing): Fresh => {
  const { collection, member } = to;
  const layUpId = tellingIn(store, collection.id, letter.id).told.find(({ matter }) => matter === PLAN)?.layUpId;
  const here = layUpId ? stayHere(store, collection.id, layUpId, writing.today) : undefined;
  if (!here || here.record.row.closedOn !== null || !isWorthTelling(here.view)) return { callOff: 'over' };
  if (!member.letters) return { callOff: 'letters off' };
  const { id: carId, leftOn } = here.found.car;
  if (leftOn !== null || member.notCars.includes(carId)) return { callOff: 'its car' };
  const names = { car: here.found.car.name, place: here.place?.name ?? null };
  return { write: planFor(store, here.view, names, to, writing, letter.id) };
};

/** A copy says what its letter says by now. */
const copyOf = (store: Store, copy: LetterRow, of: string, member: Member): Fresh => {
  const original = findLetter(store, copy.collectionId, of)?.letter;
  const recipient = copy.door === 'push' ? member.pushUrl : member.webhookUrl;
  if (!recipient) return { callOff: 'no address' };
  if (!original || original.state === 'cancelled') return { callOff: 'its letter' };
  if (copy.inDoubt) return { keep: copy };
  const { kind, subject, text, html, day } = original;
  return { keep: { ...copy, kind, subject, text, html, day, recipient } };
};
