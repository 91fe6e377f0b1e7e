/** One request to an address somebody gave, to real HTTP servers. */
import type { ServerResponse } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { ask } from '../../src/mail/post.ts';
import { openListeningPost } from '../support/listening-post.ts';

const closing: (() => void)[] = [];
afterEach(() => {
  for (const close of closing.splice(0)) close();
});

const asked = async (answer: (response: ServerResponse) => void, timeout: number) => {
  const post = await openListeningPost(answer);
  closing.push(post.close);
  return ask(post.url, { method: 'POST', body: 'news', allowPrivate: true, timeout });
};

describe('an address that', () => {
  it('drips its answer out without an end has answered when patience is over', async () => {
    const drip = (response: ServerResponse): void => {
      const dripping = setInterval(() => response.write('.'), 20);
      response.once('close', () => clearInterval(dripping));
    };
    expect(await asked(drip, 300)).toMatchObject({ status: 200, text: expect.stringMatching(/^\.+$/) });
  });

  it('pours out more than is read is heard no further', async () => {
    const pour = (response: ServerResponse): void => {
      const pouring = setInterval(() => response.write('x'.repeat(4096)), 5);
      response.once('close', () => clearInterval(pouring));
    };
    // Patience of a minute is not used up: the test would be over before.
    expect(await asked(pour, 60_000)).toEqual({ status: 200, text: 'x'.repeat(500) });
  });

  it('takes the news and never answers may have heard it', async () => {
    const silent = asked(() => {}, 200);
    await expect(silent).rejects.toMatchObject({ connected: true, message: 'No answer within 0.2 seconds' });
  });

  it('hangs up in the middle of its answer has answered', async () => {
    const cut = (response: ServerResponse): void => {
      response.writeHead(503).write('not now');
      setTimeout(() => response.destroy(), 50);
    };
    expect(await asked(cut, 5000)).toEqual({ status: 503, text: 'not now' });
  });
});
