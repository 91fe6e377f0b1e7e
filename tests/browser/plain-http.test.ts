/** A server in the house, reached by its name over plain http: forms are taken from its own pages and from no other. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumFound, openBrowser } from '../support/chromium.ts';
import { openListeningPost } from '../support/listening-post.ts';
import { type RunningServer, startServer } from '../support/server.ts';

const freePort = async (): Promise<number> => {
  const server = createServer();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  await new Promise((closed) => server.close(closed));
  return port;
};

describe.skipIf(!chromiumFound)('over plain http, by a name of the house', () => {
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;
  let home: string;

  beforeAll(async () => {
    const port = await freePort();
    home = `http://cars.lan:${port}`;
    server = await startServer(['--demo'], { PORT: String(port), BASE_URL: home, LETTER_HOUR: '0' });
    browser = await openBrowser('phone', {}, ['--host-resolver-rules=MAP *.lan 127.0.0.1']);
    page = await browser.newPage();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  test('a form is taken, of a page and of a link in a letter', async () => {
    await page.goto(`${home}/collection`);
    const name = page.locator('form:has(button:has-text("Save the collection")) [name=name]');
    await name.fill('The shed by the lake');
    await page.getByRole('button', { name: 'Save the collection' }).click();
    expect(await name.inputValue()).toBe('The shed by the lake');
    await page.goto(`${home}/letters`);
    await page.locator('.letters h2 a').first().click();
    const seen = /\/seen\/\S+/.exec(await page.locator('main').innerText())?.[0];
    await page.goto(`${home}${seen}`);
    await page.getByRole('button').first().click();
    expect(page.url()).toContain('/seen/');
    expect(await page.locator('body').innerText()).not.toMatch(/forbidden/i);
  });

  test('one of another page is turned away', async () => {
    const elsewhere = await openListeningPost((response) => {
      response.setHeader('content-type', 'text/html');
      response.end(`<form method="post" action="${home}/letters"><button>Win</button></form>`);
    });
    await page.goto(elsewhere.url.replace('127.0.0.1', 'elsewhere.lan'));
    const [answer] = await Promise.all([page.waitForResponse(`${home}/letters`), page.click('button')]);
    expect(answer.status()).toBe(403);
    elsewhere.close();
  });
});
