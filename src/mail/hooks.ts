/** Letters by other doors: a signed document for programs, and plain text for whatever shows it on a phone. */
import { createHmac } from 'node:crypto';
import { type Answered, ask } from './post.ts';
import type { Failure, Parcel, Transport } from './transport.ts';

/** An answer that is not 2xx. */
class NotTaken extends Error {
  readonly status: number;
  constructor({ status, text }: Answered) {
    super(`${status} ${text}`.trim());
    this.status = status;
  }
}

/** 410 says that the address is gone for good; everything else may be put right. */
const judge = (error: unknown): Failure => ({
  refused: error instanceof NotTaken && error.status === 410,
  inDoubt: !(error instanceof NotTaken) && (error as { connected?: boolean }).connected === true,
});

const hookTransport = (
  send: (parcel: Parcel) => { headers: Record<string, string>; body: string },
  allowPrivate: boolean,
): Transport => ({
  send: async (parcel) => {
    const answered = await ask(parcel.letter.recipient, { method: 'POST', ...send(parcel), allowPrivate });
    if (answered.status < 200 || answered.status > 299) throw new NotTaken(answered);
    return `${answered.status} ${answered.text}`.trim();
  },
  judge,
  close: () => {},
});

/**
 * A JSON document signed as the Standard Webhooks specification has it: HMAC-SHA256 over id, instant and body. The id
 * stays over all tries, so that one that comes twice can be told.
 */
export const webhookTransport = (allowPrivate: boolean, now: () => Date): Transport =>
  hookTransport((parcel) => {
    const { letter, collection, page, secret } = parcel;
    const at = Math.floor(now().getTime() / 1000);
    const body = JSON.stringify({
      type: `letter.${letter.kind}`,
      timestamp: letter.writtenAt,
      data: { id: letter.id, collection, day: letter.day, subject: letter.subject, text: letter.text, page },
    });
    const signature = createHmac('sha256', Buffer.from(secret ?? '', 'base64'))
      .update(`${letter.id}.${at}.${body}`)
      .digest('base64');
    return {
      headers: {
        'content-type': 'application/json',
        'webhook-id': letter.id,
        'webhook-timestamp': String(at),
        'webhook-signature': `v1,${signature}`,
      },
      body,
    };
  }, allowPrivate);

/** What the letter is about, and where it can be read. */
export const pushTransport = (allowPrivate: boolean): Transport =>
  hookTransport(
    ({ letter, page }) => ({
      headers: { 'content-type': 'text/plain; charset=utf-8' },
      body: `${letter.subject}\n${page}`,
    }),
    allowPrivate,
  );
