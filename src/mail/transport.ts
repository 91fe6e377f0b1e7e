/** Where letters leave the house: a mail server, or .eml files in the data folder where none is configured. */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createTransport, type SendMailOptions } from 'nodemailer';
import type { LetterRow } from '../store/letters.ts';

/** A letter ready to go, with what its headers have to say. */
export interface Parcel {
  letter: LetterRow;
  collection: string;
  /** Its page, for who reads it by another door; and what documents to this person are signed with. */
  page: string;
  secret: string | null;
  /** Where all letters to this person are stopped. */
  stop: string;
}

/** What a failed try tells: the door said no for good, or may have taken the letter without our hearing of it. */
export interface Failure {
  refused: boolean;
  inDoubt: boolean;
}

export interface Transport {
  /** Sends one letter; answers what the other side said. Throws where it was not taken. */
  send(parcel: Parcel): Promise<string>;
  judge(error: unknown): Failure;
  close(): void;
}

/** Patience with a silent mail server, in milliseconds. */
const TIMEOUTS = { connectionTimeout: 20_000, greetingTimeout: 20_000, socketTimeout: 60_000 };

export const smtpTransport = (url: string, from: string, timeouts = TIMEOUTS): Transport => {
  const { username } = new URL(url);
  // A name and password go only where they can't be read on the way; ?requireTLS=false in the address says otherwise.
  const mailer = createTransport({ url, pool: true, maxConnections: 2, requireTLS: username !== '', ...timeouts });
  // Letters whose text has left the house whole. No error tells that: a server that never answered at all, and one that
  // took the text and then fell silent, look the same.
  const handedOver = new Set<string>();
  mailer.use('stream', (mail, done) => {
    mail.message.processFunc((text) => text.once('end', () => handedOver.add(mail.data.messageId ?? '')));
    done();
  });
  return {
    send: async (parcel) => {
      const { messageId } = parcel.letter;
      handedOver.delete(messageId);
      try {
        return (await mailer.sendMail(mailOf(parcel, from))).response;
      } catch (error) {
        throw Object.assign(error as Error, { handedOver: handedOver.has(messageId) });
      } finally {
        handedOver.delete(messageId);
      }
    },
    judge: smtpFailure,
    close: () => mailer.close(),
  };
};

export const fileTransport = (folder: string, from: string): Transport => {
  const mailer = createTransport({ streamTransport: true, buffer: true, newline: 'windows' });
  return {
    send: async (parcel) => {
      mkdirSync(folder, { recursive: true });
      const { message } = await mailer.sendMail(mailOf(parcel, from));
      const file = join(folder, `${parcel.letter.day}-${parcel.letter.id}.eml`);
      // A reader never sees half a letter: written aside, then named.
      writeFileSync(`${file}.part`, message as Buffer, { flush: true });
      renameSync(`${file}.part`, file);
      return `Written to ${file}`;
    },
    // Under the same name it is the same file: written twice, it is there once.
    judge: () => ({ refused: false, inDoubt: false }),
    close: () => mailer.close(),
  };
};

/** The message with its headers: RFC 2369, RFC 2919, RFC 3834, RFC 8058 (whose one click needs https). */
const mailOf = ({ letter, collection, stop }: Parcel, from: string): SendMailOptions => ({
  from,
  to: letter.recipient,
  subject: letter.subject,
  text: letter.text,
  html: letter.html,
  messageId: letter.messageId,
  date: new Date(letter.writtenAt),
  list: {
    id: { url: `${letter.collectionId}.${letter.messageId.replace(/^.*@|>$/g, '')}`, comment: collection },
    unsubscribe: stop,
  },
  headers: {
    'Auto-Submitted': 'auto-generated',
    'X-Auto-Response-Suppress': 'All',
    ...(stop.startsWith('https:') ? { 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' } : {}),
  },
});

/**
 * A 5xx to the recipient or the letter itself is the server's final no. Everything else (4xx, a wrong password, no
 * connection, our own address not liked) may be put right. Handed over whole and without an answer, it may have been taken.
 */
const smtpFailure = (error: unknown): Failure => {
  const { code, command, responseCode = 0, handedOver = false } = error as SmtpError;
  return {
    refused: responseCode >= 500 && (code === 'EENVELOPE' || code === 'EMESSAGE') && command !== 'MAIL FROM',
    inDoubt: handedOver && responseCode < 400,
  };
};

interface SmtpError {
  code?: string;
  command?: string;
  responseCode?: number;
  handedOver?: boolean;
}
