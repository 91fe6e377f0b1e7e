/** Letters by other doors, to real HTTP servers. */
import type { ServerResponse } from 'node:http';
import { Webhook } from 'standardwebhooks';
import { afterEach, describe, expect, it } from 'vitest';
import { createLog } from '../../src/log.ts';
import { deliver } from '../../src/mail/deliver.ts';
import { pushTransport, webhookTransport } from '../../src/mail/hooks.ts';
import { findLetter } from '../../src/store/letters.ts';
import { queueLetters } from '../../src/store/outbox.ts';
import { openBarn } from '../support/cars.ts';
import { justLetter, newLetter } from '../support/letters.ts';
import { type ListeningPost, openListeningPost } from '../support/listening-post.ts';

const SECRET = Buffer.from('a key of twenty-four byt').toString('base64');

const closing: (() => void)[] = [];
afterEach(() => {
  for (const close of closing.splice(0)) close();
});

const listenTo = async (answer: (response: ServerResponse, n: number) => void): Promise<ListeningPost> => {
  const post = await openListeningPost(answer);
  closing.push(post.close);
  return post;
};

const taken = (response: ServerResponse): void => {
  response.end('thanks');
};

const posted = async (
  door: 'push' | 'webhook',
  recipient: string,
  { mayBePrivate = true, tries = 1 }: { mayBePrivate?: boolean; tries?: number } = {},
) => {
  const barn = openBarn();
  const now = new Date();
  const letter = { ...newLetter(barn.acting, 'a', now.toISOString()), door, recipient };
  queueLetters(barn.store, [justLetter(letter)]);
  const page = 'https://barn.example.org/letters/a';
  const transports = { webhook: webhookTransport(mayBePrivate, () => now), push: pushTransport(mayBePrivate) };
  for (let n = 0; n < tries; n++)
    await deliver(
      {
        store: barn.store,
        transports: { ...transports, mail: transports.push },
        refresh: (row) => ({ letter: row, collection: 'The barn', page, stop: '', secret: SECRET }),
        log: createLog('error', () => {}),
        now: () => new Date(now.getTime() + n * 86_400_000),
        goOn: () => true,
      },
      new Date('2999-01-01'),
    );
  const found = findLetter(barn.store, barn.acting.collectionId, 'a');
  return { letter: found?.letter, answers: found?.attempts.map(({ answer }) => answer) ?? [] };
};

describe('a signed document', () => {
  it('is verified by an independent library, and says what the letter says', async () => {
    const { heard, url } = await listenTo(taken);
    const { letter, answers } = await posted('webhook', url);
    expect(letter).toMatchObject({ state: 'sent' });
    expect(answers).toEqual(['200 thanks']);
    const [{ headers, body } = { headers: {}, body: '' }] = heard;
    expect(headers['content-type']).toBe('application/json');
    const read = new Webhook(`whsec_${SECRET}`).verify(body, headers as Record<string, string>);
    expect(read).toMatchObject({
      type: 'letter.digest',
      data: {
        id: 'a',
        collection: 'The barn',
        subject: '1 past: Merle Tourer',
        page: 'https://barn.example.org/letters/a',
      },
    });
    expect(() => new Webhook(`whsec_${SECRET}`).verify(`${body} `, headers as Record<string, string>)).toThrow();
  });

  it('has the same id over all tries', async () => {
    const { heard, url } = await listenTo((response, n) => response.writeHead(n < 3 ? 503 : 200).end());
    expect((await posted('webhook', url, { tries: 3 })).letter).toMatchObject({ state: 'sent', tries: 3 });
    expect(heard.map(({ headers }) => headers['webhook-id'])).toEqual(['a', 'a', 'a']);
  });
});

describe('a plain post', () => {
  it('is the subject and the address of the letter', async () => {
    const { heard, url } = await listenTo(taken);
    await posted('push', url);
    expect(heard[0]?.body).toBe('1 past: Merle Tourer\nhttps://barn.example.org/letters/a');
    expect(heard[0]?.headers['content-type']).toBe('text/plain; charset=utf-8');
  });
});

describe('a door that does not take it', () => {
  it('for now: waits', async () => {
    const { url } = await listenTo((response) => response.writeHead(500).end('full'));
    const { letter, answers } = await posted('push', url);
    expect(letter).toMatchObject({ state: 'waiting', inDoubt: false });
    expect(answers).toEqual(['500 full']);
  });

  it('for good (410): is given up', async () => {
    const { url } = await listenTo((response) => response.writeHead(410).end());
    expect((await posted('push', url)).letter).toMatchObject({ state: 'failed', why: 'refused' });
  });

  it('and hangs up without an answer: it may have been taken', async () => {
    const { url } = await listenTo((response) => response.destroy());
    expect((await posted('push', url)).letter).toMatchObject({ state: 'waiting', inDoubt: true });
  });

  it('and is not there: it was not taken', async () => {
    const { url } = await listenTo(taken);
    for (const close of closing.splice(0)) close();
    expect((await posted('push', url)).letter).toMatchObject({ state: 'waiting', inDoubt: false });
  });

  it('and points elsewhere: is not followed', async () => {
    const other = await listenTo(taken);
    const { url } = await listenTo((response) => response.writeHead(302, { location: other.url }).end());
    expect((await posted('push', url)).letter).toMatchObject({ state: 'waiting' });
    expect(other.heard).toEqual([]);
  });
});

describe('an address within the server’s own network', () => {
  it.each(['127.0.0.1', 'localhost', '[::1]', '169.254.169.254', '10.0.0.1', '192.168.1.1'])(
    '(%s) is refused unless it is allowed',
    async (host) => {
      const { heard, url } = await listenTo(taken);
      const { letter, answers } = await posted('push', url.replace('127.0.0.1', host), { mayBePrivate: false });
      expect(letter).toMatchObject({ state: 'waiting', inDoubt: false });
      expect(answers[0]).toContain('HOOKS_MAY_BE_PRIVATE=true');
      expect(heard).toEqual([]);
    },
  );
});
