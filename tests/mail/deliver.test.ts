import { readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createLog } from '../../src/log.ts';
import { type Delivery, deliver, due } from '../../src/mail/deliver.ts';
import { fileTransport, smtpTransport, type Transport } from '../../src/mail/transport.ts';
import { findLetter } from '../../src/store/letters.ts';
import { claimLetter, queueLetters } from '../../src/store/outbox.ts';
import { type Barn, openBarn, TODAY } from '../support/cars.ts';
import { newFolder } from '../support/folder.ts';
import { justLetter, newLetter } from '../support/letters.ts';
import { openPostOffice, type PostOffice } from '../support/post-office.ts';

const NOW = '2026-11-25T07:00:00.000Z';
const FROM = 'Standstill <standstill@example.org>';
const PAGE = 'https://barn.example.org/letters/a';
const STOP = 'https://barn.example.org/stop/barn/ada/signed';
const minutes = (after: number): Date => new Date(Date.parse(NOW) + after * 60_000);

let office: PostOffice;
beforeEach(async () => {
  office = await openPostOffice();
});
const closing: { close(): void }[] = [];
afterEach(async () => {
  for (const one of closing.splice(0)) one.close();
  await office.close();
});
const kept = <T extends { close(): void }>(one: T): T => {
  closing.push(one);
  return one;
};

const barnWith = (...ids: string[]): Barn => {
  const barn = openBarn();
  queueLetters(
    barn.store,
    ids.map((id) => justLetter(newLetter(barn.acting, id, NOW))),
  );
  return barn;
};

const deliveryOf = (barn: Barn, mail: Transport, after = 0, lines: string[] = []): Delivery => ({
  store: barn.store,
  transports: { mail, push: mail, webhook: mail },
  // What becomes of a letter just before it goes is another test's.
  refresh: (letter) => ({ letter, collection: 'The barn', page: PAGE, stop: STOP, secret: null }),
  log: createLog('debug', (line) => lines.push(line)),
  now: () => minutes(after),
  goOn: () => true,
});

const send = (barn: Barn, transport: Transport, after = 0, lines: string[] = []) =>
  deliver(deliveryOf(barn, transport, after, lines));

const found = (barn: Barn, id = 'a') => findLetter(barn.store, barn.acting.collectionId, id);

/** A port of this machine where nobody listens. */
const closedPort = async (): Promise<number> => {
  const server = createServer();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const address = server.address();
  await new Promise((closed) => server.close(closed));
  return typeof address === 'object' && address ? address.port : 0;
};

describe('delivery to a mail server', () => {
  it('hands over both parts, umlauts and quotes whole, and every header a letter needs', async () => {
    const barn = barnWith('a');
    expect(await send(barn, kept(smtpTransport(office.url, FROM)))).toEqual({
      sent: 1,
      waiting: 0,
      failed: 0,
      calledOff: 0,
    });
    expect(office.recipients).toEqual(['ada@example.org']);
    const [mail] = office.mails;
    expect(mail?.text?.trim()).toBe('Wörter über Bremsflüssigkeit: “größer” als 24 Monate…');
    expect(mail?.html).toContain('<p>Wörter über Bremsflüssigkeit: “größer”</p>');
    expect(mail).toMatchObject({
      subject: '1 past: Merle Tourer',
      messageId: '<digest.a@localhost>',
      from: { text: '"Standstill" <standstill@example.org>' },
      to: { text: 'ada@example.org' },
      date: new Date(NOW),
    });
    expect(mail?.headers.get('auto-submitted')).toBe('auto-generated');
    expect(mail?.headers.get('x-auto-response-suppress')).toBe('All');
  });

  it('keeps what the server answered, and sends nothing a second time', async () => {
    const barn = barnWith('a', 'b');
    const transport = kept(smtpTransport(office.url, FROM));
    expect((await send(barn, transport)).sent).toBe(2);
    expect((await send(barn, transport, 60)).sent).toBe(0);
    expect(office.mails.map(({ messageId }) => messageId).toSorted()).toEqual([
      '<digest.a@localhost>',
      '<digest.b@localhost>',
    ]);
    expect(found(barn)).toMatchObject({
      letter: { state: 'sent', sentAt: NOW, tries: 1 },
      attempts: [{ ok: true, at: NOW, answer: expect.stringMatching(/^250 /) as string }],
    });
  });

  it('after a “not now” waits, longer each time, and then sends the same message', async () => {
    const barn = barnWith('a');
    const transport = kept(smtpTransport(office.url, FROM));
    office.refuseWith = 451;
    expect(await send(barn, transport)).toEqual({ sent: 0, waiting: 1, failed: 0, calledOff: 0 });
    expect(found(barn)).toMatchObject({
      letter: { state: 'waiting', nextTryAt: minutes(1).toISOString(), leaseUntil: null, sentAt: null },
      attempts: [{ ok: false, answer: expect.stringContaining('451') as string }],
    });
    expect(await send(barn, transport, 0.5)).toEqual({ sent: 0, waiting: 0, failed: 0, calledOff: 0 });
    expect((await send(barn, transport, 1)).waiting).toBe(1);
    expect(found(barn)?.letter.nextTryAt).toBe(minutes(6).toISOString());
    office.refuseWith = null;
    expect((await send(barn, transport, 6)).sent).toBe(1);
    expect(office.mails.map(({ messageId }) => messageId)).toEqual(['<digest.a@localhost>']);
    expect(found(barn)?.letter).toMatchObject({ state: 'sent', tries: 3 });
  });

  it('after a final no gives the letter up at once; the others are sent', async () => {
    const barn = barnWith('a', 'b');
    const transport = kept(smtpTransport(office.url, FROM));
    office.refuseWith = 550;
    expect(await send(barn, transport)).toEqual({ sent: 0, waiting: 0, failed: 2, calledOff: 0 });
    expect(found(barn)).toMatchObject({
      letter: { state: 'failed', tries: 1, sentAt: null },
      attempts: [{ ok: false, answer: expect.stringContaining('550') as string }],
    });
    office.refuseWith = null;
    expect(await send(barn, transport, 9999)).toEqual({ sent: 0, waiting: 0, failed: 0, calledOff: 0 });
  });

  it('where nobody answers waits for the next try', async () => {
    const barn = barnWith('a');
    const transport = kept(smtpTransport(`smtp://127.0.0.1:${await closedPort()}`, FROM));
    expect(await send(barn, transport)).toEqual({ sent: 0, waiting: 1, failed: 0, calledOff: 0 });
    expect(found(barn)).toMatchObject({
      letter: { state: 'waiting' },
      attempts: [{ answer: expect.stringContaining('ECONNREFUSED') as string }],
    });
  });

  it('gives a letter up after the ninth try, three days and more after the first', async () => {
    const barn = barnWith('a');
    const transport: Transport = {
      send: () => Promise.reject(new Error('No answer')),
      judge: () => ({ refused: false, inDoubt: false }),
      close: () => {},
    };
    let after = 0;
    const waits: number[] = [];
    for (;;) {
      const { waiting } = await send(barn, transport, after);
      if (waiting === 0) break;
      const next = (Date.parse(found(barn)?.letter.nextTryAt ?? '') - Date.parse(NOW)) / 60_000;
      waits.push(next - after);
      after = next;
    }
    expect(found(barn)).toMatchObject({ letter: { state: 'failed', tries: 9 }, attempts: { length: 9 } });
    expect(waits).toEqual(waits.toSorted((a, b) => a - b));
    expect(after).toBeGreaterThan(3 * 24 * 60);
  });

  it('is not begun once the process is asked to stop', async () => {
    const barn = barnWith('a');
    const stopped = { ...deliveryOf(barn, kept(smtpTransport(office.url, FROM))), goOn: () => false };
    expect(await deliver(stopped)).toEqual({ sent: 0, waiting: 0, failed: 0, calledOff: 0 });
    expect(found(barn)?.letter).toMatchObject({ state: 'waiting', tries: 0 });
  });

  it('asked to send what is due by a later day tries each letter once, and plans the next try from now', async () => {
    const barn = barnWith('a');
    office.refuseWith = 451;
    const delivery = deliveryOf(barn, kept(smtpTransport(office.url, FROM)));
    expect((await deliver(delivery, minutes(99_999))).waiting).toBe(1);
    expect(found(barn)?.letter).toMatchObject({ state: 'waiting', tries: 1, nextTryAt: minutes(1).toISOString() });
  });

  it('leaves a letter another sender holds, and takes it over when that lease ran out', async () => {
    const barn = barnWith('a');
    const transport = kept(smtpTransport(office.url, FROM));
    claimLetter(barn.store, { ...due(new Date(NOW)), leaseUntil: minutes(10).toISOString(), except: [] });
    expect((await send(barn, transport, 9)).sent).toBe(0);
    expect((await send(barn, transport, 10)).sent).toBe(1);
    expect(office.mails[0]?.messageId).toBe('<digest.a@localhost>');
  });

  it('by two senders at once sends every letter once', async () => {
    const barn = barnWith('a', 'b', 'c', 'd');
    const results = await Promise.all([1, 2].map(() => send(barn, kept(smtpTransport(office.url, FROM)))));
    expect(results.reduce((sum, { sent }) => sum + sent, 0)).toBe(4);
    expect(office.mails.map(({ messageId }) => messageId).toSorted()).toEqual(
      ['a', 'b', 'c', 'd'].map((id) => `<digest.${id}@localhost>`),
    );
  });

  it('logs each attempt without the recipient’s address', async () => {
    const barn = barnWith('a', 'b');
    const lines: string[] = [];
    office.refuseWith = 451;
    await send(barn, kept(smtpTransport(office.url, FROM)), 0, lines);
    office.refuseWith = null;
    await send(barn, kept(smtpTransport(office.url, FROM)), 1, lines);
    expect(lines.map((line) => (JSON.parse(line) as { event: string }).event)).toEqual([
      'letter not sent',
      'letter not sent',
      'letter sent',
      'letter sent',
    ]);
    expect(lines[0]).toContain('recipient not taken');
    expect(lines.join('')).not.toContain('ada@example.org');
    expect(found(barn)?.attempts[0]?.answer).toContain('<ada@example.org>: recipient not taken');
  });
});

describe('delivery without a mail server', () => {
  it('writes each letter as an .eml file with the line ends of mail, which a mail reader opens', async () => {
    const barn = barnWith('a', 'b');
    const folder = join(newFolder(), 'mail');
    expect((await send(barn, kept(fileTransport(folder, FROM)))).sent).toBe(2);
    expect(readdirSync(folder).toSorted()).toEqual([`${TODAY}-a.eml`, `${TODAY}-b.eml`]);
    const file = readFileSync(join(folder, `${TODAY}-a.eml`));
    expect(file.toString('latin1').replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const mail = await simpleParser(file);
    expect(mail).toMatchObject({
      subject: '1 past: Merle Tourer',
      messageId: '<digest.a@localhost>',
      to: { text: 'ada@example.org' },
      text: expect.stringContaining('“größer” als 24 Monate…') as string,
      html: expect.stringContaining('<p>Wörter über') as string,
    });
    expect(found(barn)?.attempts).toMatchObject([{ answer: expect.stringContaining(`${TODAY}-a.eml`) as string }]);
  });
});
