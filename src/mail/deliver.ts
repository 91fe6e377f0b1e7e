/** Delivery: takes what waits in the outbox, one letter at a time under a lease, and records each attempt. */
import { addMinutes } from 'date-fns/addMinutes';
import { fault, type Log } from '../log.ts';
import type { LetterRow } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import { claimLetter, type DueBy, settleLetter } from '../store/outbox.ts';
import type { Failure, Parcel, Transport } from './transport.ts';

/** Minutes to the next try after the first, second ... failure; after the last one the letter is given up. */
const RETRY_MINUTES = [1, 5, 30, 120, 360, 1440, 1440, 1440];
const LEASE_MINUTES = 10;
const LONGEST_WAIT = Math.max(...RETRY_MINUTES);

export interface Delivery {
  store: Store;
  transports: Readonly<Record<LetterRow['door'], Transport>>;
  log: Log;
  now(): Date;
  /** The letter as it is to go now, or null where it was called off meanwhile. */
  refresh(letter: LetterRow, now: string): Parcel | null;
  /** False once the process is asked to stop: the letter under way is finished, no further one is begun. */
  goOn(): boolean;
}

export interface DeliveryResult {
  sent: number;
  waiting: number;
  failed: number;
  calledOff: number;
}

/** What is due at an instant, or by a later one; and what a clock that ran ahead put off for longer than anything waits. */
export const due = (now: Date, by: Date = now): DueBy => ({
  now: now.toISOString(),
  dueBy: by.toISOString(),
  beyond: addMinutes(now, LONGEST_WAIT + 1).toISOString(),
});

/** Sends every letter that is due now, or by a later instant; each is tried once a run. */
export const deliver = async (delivery: Delivery, dueBy?: Date): Promise<DeliveryResult> => {
  const { store, log, now, goOn } = delivery;
  const result: DeliveryResult = { sent: 0, waiting: 0, failed: 0, calledOff: 0 };
  const by = dueBy ?? now();
  // What fails is due later than now: only up to a later instant it would be due again in the same run.
  const tried: string[] = [];
  while (goOn()) {
    const started = now();
    const letter = claimLetter(store, {
      ...due(started, by),
      leaseUntil: addMinutes(started, LEASE_MINUTES).toISOString(),
      except: tried,
    });
    if (!letter) break;
    if (dueBy) tried.push(letter.id);
    const state = await deliverOne(delivery, letter, started);
    result[state]++;
    if (state === 'calledOff') log.info('letter called off', { letter: letter.id });
  }
  return result;
};

const deliverOne = async (
  { store, transports, log, now, refresh }: Delivery,
  letter: LetterRow,
  started: Date,
): Promise<keyof DeliveryResult> => {
  const outcome = await attempt(letter, transports, () => refresh(letter, started.toISOString()));
  if (outcome === null) return 'calledOff';
  const at = now();
  const wait = RETRY_MINUTES[letter.tries - 1];
  const refused = !outcome.ok && outcome.refused;
  const state = outcome.ok ? 'sent' : refused || wait === undefined ? 'failed' : 'waiting';
  settleLetter(store, letter, {
    at: at.toISOString(),
    ok: outcome.ok,
    answer: outcome.answer,
    state,
    why: state === 'failed' ? (refused ? 'refused' : 'tries used up') : null,
    inDoubt: !outcome.ok && (outcome.inDoubt || (letter.inDoubt && !refused)),
    nextTryAt: addMinutes(at, wait ?? 0).toISOString(),
  });
  const { door, recipient } = outcome.went;
  const about = { letter: letter.id, door, tries: letter.tries };
  if (outcome.ok) log.info('letter sent', about);
  else log.warn('letter not sent', { ...about, state, answer: outcome.answer.replaceAll(recipient, '(recipient)') });
  return state;
};

/** How a try ended, and the letter as it went: its door and its address may be others than when it was written. */
type Outcome = { went: LetterRow; answer: string } & ({ ok: true } | ({ ok: false } & Failure));

/** Null where the letter was called off before it went. */
const attempt = async (
  letter: LetterRow,
  transports: Delivery['transports'],
  refresh: () => Parcel | null,
): Promise<Outcome | null> => {
  let parcel: Parcel | null;
  try {
    parcel = refresh();
  } catch (error) {
    // Nothing has left the house: what could not be written today waits like a letter nobody answered.
    const answer = `Not written: ${fault(error).error}`;
    return { went: letter, ok: false, refused: false, inDoubt: letter.inDoubt, answer };
  }
  if (parcel === null) return null;
  const { letter: went } = parcel;
  const transport = transports[went.door];
  try {
    return { went, ok: true, answer: await transport.send(parcel) };
  } catch (error) {
    return { went, ok: false, ...transport.judge(error), answer: fault(error).error };
  }
};
