/** The newcomer's path, in a real browser, on the real server, with the letter taken by a real mail server. */
import { mkdirSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumFound, openBrowser } from '../support/chromium.ts';
import { openPostOffice, type PostOffice } from '../support/post-office.ts';
import { type RunningServer, startServer } from '../support/server.ts';

/** PICTURES=1 renews the pictures the README shows; otherwise they are left aside. */
const PICTURES = process.env['PICTURES'] ? 'tests/browser/pictures' : 'dist/pictures';

describe.skipIf(!chromiumFound)('a newcomer with only the README', () => {
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;
  let office: PostOffice;

  const go = async (path: string): Promise<void> => {
    await page.goto(`${server.url}${path}`);
  };
  const picture = async (name: string, fullPage = false): Promise<void> => {
    await page.screenshot({ path: `${PICTURES}/${name}.png`, fullPage });
  };
  const say = (): Promise<string> => page.locator('main').innerText();

  beforeAll(async () => {
    mkdirSync(PICTURES, { recursive: true });
    office = await openPostOffice();
    // The hour is late, so that only the newcomer's own hand writes letters.
    server = await startServer(['--demo'], { SMTP_URL: office.url, LETTER_HOUR: '23' });
    browser = await openBrowser('desk');
    page = await browser.newPage();
    page.on('pageerror', (error) => {
      throw error;
    });
  });

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    await office?.close();
  });

  test('sees seven cars in the line-up, what needs a hand first on top', async () => {
    await go('/');
    expect(await page.locator('.line-up > li').count()).toBe(7);
    expect(await page.locator('.line-up > li').first().innerText()).toMatch(/past/);
    await picture('line-up-desk');
  });

  test('opens a car and finds its rules drawn by system', async () => {
    await page.locator('.line-up h2 a').first().click();
    expect(await page.locator('svg.rule').count()).toBeGreaterThan(3);
    expect(await page.locator('svg.rule').first().getAttribute('aria-label')).toMatch(
      /started .*; look from .*; replace by .*; seen on/,
    );
    await picture('car-sheet-desk');
  });

  test('reads a tire code of each form at once', async () => {
    await go('/date-codes');
    await page.fill('[name=fl]', 'dot 4b7 c2de1f 2317');
    await page.fill('[name=fr]', '2317');
    await page.fill('[name=rl]', 'AB C2 DEF 239');
    await page.fill('[name=rr]', 'DOT 4B7 C2DE1F');
    await page.fill('[name=sp]', '5417');
    await page.click('text=Read the codes');
    const answers = await page.locator('article.code').allInnerTexts();
    expect(answers[0]).toMatch(/Week 23 of 2017/);
    expect(answers[1]).toMatch(/Sunday 4 June 2017.*Saturday 10 June 2017/s);
    expect(answers[2]).toMatch(/1979, 1989 or 1999/);
    expect(answers[3]).toMatch(/inner sidewall/);
    expect(answers[4]).toMatch(/54|week/i);
    await picture('date-codes-desk', true);
  });

  test('says who they are and where letters go', async () => {
    await go('/collection');
    await page.locator('details:has-text("Add a person") summary').click();
    const form = page.locator('form[action$="/members/new"]');
    await form.locator('[name=name]').fill('Nova Quill');
    await form.locator('[name=email]').fill('nova@example.org');
    await form.locator('[value="day first"]').check();
    await form.locator('button').click();
    await page.selectOption('[name=person]', { label: 'Nova Quill' });
    await page.locator('form[action$="/acting"] button').first().click();
    expect(await page.locator('[name=person] option[selected]').innerText()).toBe('Nova Quill');
  });

  test('adds a car of their own, and a slip loses nothing typed', async () => {
    await go('/cars/new');
    await page.fill('[name=name]', 'Quill Corvid 1300');
    await page.fill('[name=built]', 'banana');
    await page.fill('[name=distance]', '54,300 mi');
    await page.check('[value=roadster-disc-drum-overdrive]');
    await page.click('text=Add the car and its list of parts');
    expect(await page.locator('#built-fault').innerText()).toMatch(/“banana” was not understood/);
    expect(await page.inputValue('[name=name]')).toBe('Quill Corvid 1300');
    expect(await page.isChecked('[value=roadster-disc-drum-overdrive]')).toBe(true);
    await page.fill('[name=built]', 'June 1967');
    await page.click('text=Add the car and its list of parts');
    expect(await page.locator('h1').innerText()).toBe('Quill Corvid 1300');
    expect(await say()).toMatch(/Built June 1967; 87,387 km/);
    expect(await say()).toMatch(/parts wait for a date/);
  });

  test('dates ten parts in different ways, on a phone, one after the other', async () => {
    await page.setViewportSize({ width: 360, height: 760 });
    await page.click('text=Date its parts');
    const answers = [
      { typed: 'DOT 4B7 C2DE1F 2317' },
      { typed: '2317' },
      { typed: '239', choice: /11 to 17 June 1989|4 to 10 June 1989/ },
      { typed: '1012' },
      { quick: 'original' },
      { typed: 'about 2015', evidence: 'seller’s word' },
      { typed: 'between 2009 and 2013', evidence: 'own memory' },
      { typed: 'before 1998', evidence: 'workshop statement' },
      { quick: 'unknown' },
      { typed: '3/4/2021', evidence: 'receipt' },
    ];
    for (const [index, { typed, quick, choice, evidence }] of answers.entries()) {
      const part = await page.locator('h1').innerText();
      if (index === 1) await picture('date-part-phone');
      if (evidence) await page.check(`[name=evidence][value="${evidence}"]`);
      if (quick) await page.click(`button[name=quick][value=${quick}]`);
      else {
        await page.fill('[name=typed]', typed ?? '');
        // Enter records what was typed, as the button does.
        if (index === 0) await page.press('[name=typed]', 'Enter');
        else await page.click('button:has-text("Record")');
      }
      if (choice) {
        await page.getByLabel(choice).check();
        await page.click('button:has-text("Record")');
      }
      if (await page.locator('main [role=alert]').count()) throw new Error(`${part}, ${typed}: ${await say()}`);
      expect(await page.locator('[role=status]').innerText(), `${part}: ${typed ?? quick}`).toContain(
        `Recorded: ${part}, ${quick ?? 'understood as'}`,
      );
    }
    await page.click('text=Back to the car');
    await picture('car-sheet-phone');
    await page.setViewportSize({ width: 1280, height: 900 });
    expect(await say()).toMatch(/at least \d+ years, could be \d+ years/);
  });

  test('has the letter written, receives it, and finds the same on the Letters page; a second look over says nothing twice', async () => {
    await go('/letters');
    await page.click('text=Look over the collection now');
    expect(await page.locator('[role=status]').innerText()).toMatch(/Written/);
    // The plans of the demo’s lay-ups come by letters of their own.
    const letter = office.mails.find(
      ({ to, subject }) => to?.text === 'nova@example.org' && /past/.test(subject ?? ''),
    );
    expect(letter?.subject).toMatch(/\d+ past/);
    expect(letter?.text).toContain('QUILL CORVID 1300');
    expect(letter?.text).toMatch(/\[Past, safety\] Road tire, \w+ \w+\n +Made 4 to 10 June 1989: 37 years/);
    expect(letter?.text).toMatch(/Practice of the trade: look from 5 years, replace by 10 years/);
    expect(letter?.html).toContain('Quill Corvid 1300');
    await page
      .locator('.letters li')
      .filter({ hasText: 'nova@example.org' })
      .filter({ hasText: /\d+ past/ })
      .locator('h2 a')
      .first()
      .click();
    expect(await page.locator('pre.letter').innerText()).toContain('QUILL CORVID 1300');
    await picture('letter-desk');

    const before = office.mails.length;
    await go('/letters');
    await page.click('text=Look over the collection now');
    expect(await page.locator('[role=status]').innerText()).toMatch(/Nothing new/);
    expect(office.mails.length).toBe(before);
  });

  test('sees the car as it will be in spring, and every link stays on that day', async () => {
    await go('/?on=2027-04-01');
    expect(await page.locator('[role=status]').innerText()).toMatch(/Seen as on 1 April 2027/);
    await page.click('text=Quill Corvid 1300');
    expect(page.url()).toContain('on=2027-04-01');
  });
});
