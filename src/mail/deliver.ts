/** Delivery: takes what waits in the outbox, one letter at a time under a lease, and records each attempt. */
import { addMinutes } from 'date-fns/addMinutes';
import { fault, type Log } from '../log.ts';
import { claimLetter, type LetterRow, settleLetter } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import type { Transport } from './transport.ts';

/** Minutes to the next try after the first, second ... failure; after the last one the letter is given up. */
const RETRY_MINUTES = [1, 5, 30, 120, 360, 1440, 1440, 1440];
const LEASE_MINUTES = 10;

export interface Delivery {
  store: Store;
  transport: Transport;
  from: string;
  log: Log;
  now(): Date;
  /** False once the process is asked to stop: the letter under way is finished, no further one is begun. */
  goOn(): boolean;
}

export interface DeliveryResult {
  sent: number;
  waiting: number;
  failed: number;
}

/** Sends every letter that is due now, or by a later instant; each is tried once a run. */
export const deliver = async (
  { store, transport, from, log, now, goOn }: Delivery,
  dueBy?: Date,
): Promise<DeliveryResult> => {
  const result: DeliveryResult = { sent: 0, waiting: 0, failed: 0 };
  const tried: string[] = [];
  while (goOn()) {
    const started = now();
    const letter = claimLetter(store, {
      now: started.toISOString(),
      dueBy: (dueBy ?? started).toISOString(),
      leaseUntil: addMinutes(started, LEASE_MINUTES).toISOString(),
      except: tried,
    });
    if (!letter) break;
    tried.push(letter.id);
    const outcome = await attempt(letter, transport, from);
    const at = now();
    const wait = RETRY_MINUTES[letter.tries - 1];
    const state = outcome.ok ? 'sent' : outcome.permanent || wait === undefined ? 'failed' : 'waiting';
    settleLetter(store, letter, {
      at: at.toISOString(),
      ok: outcome.ok,
      answer: outcome.answer,
      state,
      nextTryAt: addMinutes(at, wait ?? 0).toISOString(),
    });
    result[state]++;
    if (outcome.ok) log.info('letter sent', { letter: letter.id, tries: letter.tries });
    else {
      const answer = outcome.answer.replaceAll(letter.recipient, '(recipient)');
      log.warn('letter not sent', { letter: letter.id, tries: letter.tries, state, answer });
    }
  }
  return result;
};

type Outcome = { ok: true; answer: string } | { ok: false; permanent: boolean; answer: string };

const attempt = async (letter: LetterRow, transport: Transport, from: string): Promise<Outcome> => {
  try {
    const answer = await transport.send(
      {
        from,
        to: letter.recipient,
        subject: letter.subject,
        text: letter.text,
        html: letter.html,
        messageId: letter.messageId,
        date: new Date(letter.writtenAt),
        headers: { 'Auto-Submitted': 'auto-generated', 'X-Auto-Response-Suppress': 'All' },
      },
      `${letter.day}-${letter.id}`,
    );
    return { ok: true, answer };
  } catch (error) {
    // A 5xx to the recipient or the letter itself is the server's final no. Everything else (4xx, a wrong password, no
    // answer, no connection) may be put right, and goes through later.
    const { code, responseCode = 0 } = error as { code?: string; responseCode?: number };
    const permanent = responseCode >= 500 && (code === 'EENVELOPE' || code === 'EMESSAGE');
    return { ok: false, permanent, answer: fault(error).error };
  }
};
