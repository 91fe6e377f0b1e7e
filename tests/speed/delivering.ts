/** Letters from the outbox to a mail server of its own process, beside the mailer alone with the same messages. */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { createTransport } from 'nodemailer';
import { createLog } from '../../src/log.ts';
import { deliver } from '../../src/mail/deliver.ts';
import { smtpTransport } from '../../src/mail/transport.ts';
import { newId } from '../../src/store/ids.ts';
import type { LetterRow } from '../../src/store/letters.ts';
import type { Store } from '../../src/store/open.ts';
import { queueLetters } from '../../src/store/outbox.ts';
import { membersOf } from '../../src/store/people.ts';
import type { Fleet } from './fleet.ts';
import { inTurns, printTable, tenths, times, whole } from './measure.ts';

const LETTERS = 500;
const NOW = '2026-01-01T07:00:00.000Z';
const TEXT = Array.from({ length: 20 }, (_, n) => `- Tire, front left ${n}: due on 28 March 2027`).join('\n');
const HTML = `<ul><li>${TEXT.replaceAll('\n', '</li><li>')}</li></ul>`;

export const timeDelivering = async (store: Store, { collectionId }: Fleet): Promise<void> => {
  const server = fork(fileURLToPath(new URL('../tests/speed/mail-server.mjs', import.meta.url)));
  const [port] = (await once(server, 'message')) as [number];
  const url = `smtp://127.0.0.1:${port}`;
  const personId = membersOf(store, collectionId)[0]?.id ?? '';
  const mail = smtpTransport(url, 'cars@example.org');
  const alone = createTransport({ url, pool: true, maxConnections: 2 });
  const row = (): LetterRow => {
    const id = newId();
    return {
      ...{ collectionId, id, personId, kind: 'test', door: 'mail', copyOf: null, day: '2026-01-01', ahead: false },
      ...{ recipient: 'ada@example.org', subject: '1 due: Merle Tourer', text: TEXT, html: HTML },
      ...{ messageId: `<test.${id}@localhost>`, state: 'waiting', why: null, inDoubt: false, seenAt: null, tries: 0 },
      ...{ nextTryAt: NOW, leaseUntil: null, writtenAt: NOW, sentAt: null },
    } as LetterRow;
  };
  const message = () => ({ from: 'cars@example.org', to: 'ada@example.org', subject: '1 due', text: TEXT, html: HTML });
  const waiting = (): void =>
    queueLetters(
      store,
      Array.from({ length: LETTERS }, () => ({ letter: row(), copies: [], said: [], told: [], toldBack: [] })),
    );
  const { outbox, oneByOne, together } = await inTurns(5, {
    outbox: async () => {
      waiting();
      const { sent } = await deliver({
        store,
        transports: { mail, push: mail, webhook: mail },
        refresh: (letter) => ({ letter, collection: 'Speed', page: '', stop: 'https://localhost/stop', secret: null }),
        log: createLog('error'),
        now: () => new Date(NOW),
        goOn: () => true,
      });
      if (sent !== LETTERS) throw new Error(`${sent} letters were sent in place of ${LETTERS}`);
    },
    oneByOne: async () => {
      for (let n = 0; n < LETTERS; n++) await alone.sendMail(message());
    },
    together: () => Promise.all(Array.from({ length: LETTERS }, () => alone.sendMail(message()))),
  });
  mail.close();
  alone.close();
  server.kill();
  const line = (name: string, ms: number): string[] => [
    name,
    tenths(ms),
    whole((LETTERS / ms) * 1000),
    times(ms / oneByOne),
  ];
  printTable(`Delivering ${whole(LETTERS)} letters, each claimed, tried and recorded on the disk`, [
    ['', 'ms', 'letters/s', ': the mailer'],
    line('From the outbox, one after another', outbox),
    line('The mailer alone, one after another', oneByOne),
    line('The mailer alone, all at once', together),
  ]);
};
