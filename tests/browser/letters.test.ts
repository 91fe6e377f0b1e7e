/** Letters as a person meets them: one that was refused, what the letter itself offers, fewer of them, none at all. */
import { setTimeout as wait } from 'node:timers/promises';
import { simpleParser } from 'mailparser';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { todayIn } from '../../src/clock.ts';
import { addDays } from '../../src/dates/civil.ts';
import { dayInWords } from '../../src/dates/words.ts';
import { type BadMailServer, openBadMailServer } from '../support/bad-mail-server.ts';
import { chromiumFound, openBrowser } from '../support/chromium.ts';
import { type RunningServer, startServer } from '../support/server.ts';

describe.skipIf(!chromiumFound)('letters', () => {
  let mail: BadMailServer;
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    mail = await openBadMailServer('take');
    mail.behavior = { code: 550, at: 'rcpt' };
    server = await startServer(['--demo'], { LETTER_HOUR: '0', SMTP_URL: mail.url });
    await untilTried();
    browser = await openBrowser('phone');
    page = await browser.newPage();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    await mail?.close();
  });

  /** The first wake has tried all it wrote. */
  const untilTried = async (): Promise<void> => {
    for (let looks = 0; looks < 100; looks++) {
      const list = await (await fetch(`${server.url}/letters`)).text();
      if (/given up/.test(list) && !/waiting to be sent|being sent/.test(list)) return;
      await wait(100);
    }
  };
  const main = () => page.locator('main').innerText();
  const open = async (path: string): Promise<void> => {
    await page.goto(`${server.url}${path}`);
  };
  /** The last news to somebody, as it arrived. */
  const newsFor = async (address: string) => {
    const mails = await Promise.all(mail.taken.map(({ raw }) => simpleParser(raw)));
    return mails.findLast(
      ({ to, messageId }) => to && !Array.isArray(to) && to.text === address && messageId?.startsWith('<digest'),
    );
  };
  const linkIn = (text: string | undefined, way: string): string =>
    new RegExp(`${way}: (\\S+)`).exec(text ?? '')?.[1] ?? `no link: ${way}`;

  test('one that was refused is named on every page, stands out in the list, and is let go once it is seen', async () => {
    await open('/');
    await page.getByText('See Letters').click();
    for (const row of await page.locator('.letters li.given-up h2 a').all()) expect(await row.isVisible()).toBe(true);
    const refused = page.locator('.letters li.given-up');
    for (let left = await refused.count(); left > 0; left--) {
      await refused.locator('h2 a').first().click();
      expect(await main()).toContain('550');
      await page.getByRole('button', { name: /^Seen/ }).click();
      expect(await main()).toContain('What of it is still owed comes in the next letter.');
      await open('/letters');
      expect(await refused.count()).toBe(left - 1);
    }
    await open('/');
    expect(await page.getByText('See Letters').count()).toBe(0);
  });

  test('a test shows what the mail server said', async () => {
    mail.behavior = 'take';
    await open('/letters');
    await page.getByRole('button', { name: /^Send a test/ }).click();
    expect(await main()).toMatch(/taken: 250/);
  });

  test('from a letter a part is answered for, and nothing is changed before a button is pressed', async () => {
    await open('/letters');
    await page.getByRole('button', { name: /^Look over/ }).click();
    const letter = (await newsFor('odile@example.org'))?.text;
    const link = linkIn(letter, 'Answer \\([^)]+\\)');
    await page.goto(link);
    const until = addDays(todayIn('Europe/Lisbon', new Date()), 30);
    await page.locator('[name=day]').first().fill(until);
    await page.getByRole('button', { name: 'Remind me after that day' }).click();
    expect(await page.locator('body').innerText()).toContain(dayInWords(until));
    await open(`/parts/${link.split('/')[5]}`);
    expect(await main()).toMatch(new RegExp(`waiting for parts.+${dayInWords(until)}`, 'i'));
  });

  test('all letters are stopped by the link in one, and started again on the Collection page', async () => {
    const letter = (await newsFor('bram@workbench.example.net'))?.text;
    await page.goto(linkIn(letter, 'Stop all of them'));
    await page.getByRole('button', { name: 'Stop all letters to me' }).click();
    expect(await page.locator('body').innerText()).toContain('are stopped');
    await open('/collection');
    const wishes = page.locator('a[href$="/letters"][href^="/members/"]');
    await wishes.nth(1).click();
    expect(await main()).toContain('stopped all letters on');
    await page.check('[name=letters]');
    await page.getByRole('button', { name: 'Save' }).click();
    expect(await main()).not.toContain('stopped all letters on');
  });

  test('a quiet season that is half told comes back as it was typed', async () => {
    await page.fill('[name=quietFromDay]', '1');
    await page.selectOption('[name=quietFromMonth]', '11');
    await page.getByRole('button', { name: 'Save' }).click();
    expect(await main()).toContain('nothing you typed is lost');
    expect(await page.inputValue('[name=quietFromDay]')).toBe('1');
    await page.fill('[name=quietToDay]', '31');
    await page.selectOption('[name=quietToMonth]', '3');
    await page.getByRole('button', { name: 'Save' }).click();
    expect(await main()).toContain('Saved.');
  });
});
