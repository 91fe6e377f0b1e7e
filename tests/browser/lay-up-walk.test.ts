/** A winter on a phone, from the plan in September to the closing in April, with the day moved by `on=`. */
import axe from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { chromiumFound, openBrowser } from '../support/chromium.ts';
import { type RunningServer, startServer } from '../support/server.ts';

const PHONE = { width: 390, height: 844 };

describe.skipIf(!chromiumFound)('a winter on a phone', () => {
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;
  let carPath: string;
  let layUp: string;
  let battery: string;
  const errors: string[] = [];
  /** Pages looked through for barriers in this month of the walk. */
  const looked = new Set<string>();

  const say = (): Promise<string> => page.locator('main').innerText();
  /** Nothing to stumble over, and nothing wider than the phone. */
  const sound = async (): Promise<void> => {
    const path = new URL(page.url()).pathname;
    if (!looked.has(path)) {
      looked.add(path);
      await page.evaluate(axe.source);
      const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
        path,
      ).toEqual([]);
    }
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide, `${path} is wider than the phone by`).toBe(0);
    expect(errors, path).toEqual([]);
  };
  const go = async (path: string, on: string): Promise<void> => {
    const answer = await page.goto(`${server.url}${path}?on=${on}`);
    expect(answer?.status(), path).toBe(200);
    await sound();
  };
  /** What is recorded beside the walk: the form of another page. */
  const post = async (path: string, form: Record<string, string>): Promise<void> => {
    const answer = await page.request.post(`${server.url}${path}`, {
      form,
      headers: { origin: server.url },
      maxRedirects: 0,
    });
    expect(answer.status(), path).toBe(303);
  };
  /** Looks over the collection as on a day, and reads the letter that was written; null: none was. */
  const sweep = async (on: string): Promise<string | null> => {
    await go('/letters', on);
    await page.getByRole('button', { name: /Look over the collection/ }).click();
    await sound();
    if (/Nothing new/.test(await page.locator('.understood').innerText())) return null;
    await page.locator('.letters h2 a').first().click();
    await sound();
    return page.locator('pre.letter').innerText();
  };
  const press = async (name: string | RegExp): Promise<void> => {
    await page.getByRole('button', { name }).click();
    if (await page.locator('main [role=alert]').count()) throw new Error(await say());
    await sound();
  };

  beforeAll(async () => {
    // The hour is late, so that only the sweeps of this walk write letters.
    server = await startServer([], { LETTER_HOUR: '23' });
    browser = await openBrowser('phone');
    page = await browser.newPage();
    await page.setViewportSize(PHONE);
    page.on('pageerror', (error) => errors.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    await page.goto(`${server.url}/collection`);
    const member = await page.locator('form[action*="/members/"]').first().getAttribute('action');
    await post(member ?? '', {
      name: 'Nova Quill',
      email: 'nova@example.org',
      dateOrder: 'day first',
      letters: 'on',
    });
    await post('/places', {
      name: 'Stone barn',
      shelter: 'unheated',
      air: 'inland',
      degrees: '°C',
      winterLow: '-12',
      summerHigh: '31',
      hemisphere: 'north',
    });
    await page.goto(`${server.url}/cars/new?on=2026-09-10`);
    await page.fill('[name=name]', 'Quill Corvid 1300');
    await page.fill('[name=built]', 'June 1967');
    await page.check('[value=roadster-disc-drum-overdrive]');
    await page.click('text=Add the car and its list of parts');
    carPath = new URL(page.url()).pathname;
    const answer = await page.request.get(`${server.url}/api/v1${carPath}/parts`);
    const { parts } = (await answer.json()) as { parts: { id: string; kind: string }[] };
    battery = parts.find(({ kind }) => kind === 'battery-flooded')?.id ?? '';
    // Calcium, 100 Ah, little drawn while it stands.
    await post(`/parts/${battery}/details`, {
      'answer.chemistry': 'calcium',
      'answer.capacity': '100',
      'answer.drain': '8',
    });
  });

  beforeEach(() => looked.clear());

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  test('September: the car, a day and a place make a plan', async () => {
    await go(carPath, '2026-09-10');
    await page.getByRole('link', { name: 'Put it away' }).click();
    await sound();
    await page.getByLabel('Parked on').fill('2026-11-01');
    await page.getByLabel('Comes back on').fill('2027-04-01');
    await page.getByLabel('Place it stands in').selectOption({ label: 'Stone barn' });
    await press('Make the plan');
    layUp = new URL(page.url()).pathname;
    expect(layUp).toMatch(/^\/lay-ups\/[^/]+$/);
    expect(await page.locator('h1').innerText()).toBe('Lay-up of Quill Corvid 1300');
    expect(await say()).toMatch(/0 of \d\d steps done/);
    expect(await page.locator('li.step').count()).toBeGreaterThan(35);
    await go('/letters', '2026-09-10');
    expect(await page.locator('.letters h2').allInnerTexts()).toEqual([
      expect.stringMatching(/^Lay-up of Quill Corvid 1300 from 1 November 2026: \d+ steps$/),
    ]);
  });

  test('September: the first steps come by letter, once', async () => {
    expect(await sweep('2026-09-12')).toBeNull();
    expect(await sweep('2026-09-17')).toMatch(/\[Lay-up\] 20 September 2026: Settle the place/);
    expect(await sweep('2026-09-18')).toBeNull();
  });

  test('October: some steps are ticked, one is left out with its reason', async () => {
    await go(layUp, '2026-10-12');
    await page.locator('li#photographs button', { hasText: 'Done' }).click();
    await sound();
    expect(await page.locator('li#photographs').innerText()).toContain('Done on 12 October 2026 by Nova Quill.');
    await page.locator('li#oil-change a', { hasText: 'Done, with details' }).click();
    await sound();
    await page.getByLabel('Note, or what proves it').fill('Two bottles from the shelf');
    await page.getByLabel('Cost').fill('38.50');
    await press('Done');
    expect(await page.locator('li#oil-change').innerText()).toContain('Two bottles from the shelf (cost 38.5)');
    await page.locator('li#coolant-strength a', { hasText: 'Done, with details' }).click();
    await page.locator('[name$=".freeze-point.typed"]').fill('-28');
    await press('Done');
    await page.locator('li#wax h3 a').click();
    await page.getByText('Leave it out, and say why').click();
    await page.getByLabel('Reason').fill('The paint is being redone');
    await press('Leave it out');
    expect(await page.locator('li#wax').innerText()).toContain('Left out on 12 October 2026');
    expect(await say()).toMatch(/3 of \d+ steps done, 1 left out\./);
  });

  test('October: the parking day moves; the plan says so until it was understood', async () => {
    await page.getByRole('link', { name: 'Change the lay-up' }).click();
    await sound();
    await page.getByLabel('Parked on').fill('2026-11-08');
    await press('Update the plan');
    expect(await page.locator('.changed').innerText()).toMatch(
      /steps moved: the first from 20 September 2026 to 27 September 2026/,
    );
    expect(await page.locator('li#photographs').innerText()).toContain('Done on 12 October 2026');
    await press('Understood');
    expect(await page.locator('.changed').count()).toBe(0);
  });

  test('November: it is parked, its battery left connected and read', async () => {
    await go(`${layUp}/steps/battery-maintainer`, '2026-11-08');
    await page.getByLabel('Left as it is').check();
    await press('Take this side');
    await go(`${layUp}/steps/fuel-fill`, '2026-11-08');
    await press('Done');
    await go(`${layUp}/steps/park`, '2026-11-08');
    await page.getByLabel('Odometer').fill('54,300');
    await page.getByLabel('miles').check();
    await press('Done');
    await go(`${layUp}/steps/battery-left`, '2026-11-08');
    await page.locator('[name$=".rest-voltage.typed"]').fill('12.75');
    await press('Done');
    await go(layUp, '2026-11-09');
    expect(await say()).toContain('While it stands');
    expect(await say()).not.toContain('What can’t wait');
    await go(carPath, '2026-11-09');
    expect(await page.locator('.laid-up').innerText()).toContain('Its ordinary letters are silent until it is back.');
    expect(await say()).toMatch(/87,387 km/);
  });

  test('December: the letter asks for the round, and a thumb makes it', async () => {
    // What of the steps was not done is told for a fortnight; the round is new on its day.
    await sweep('2026-11-20');
    expect(await sweep('2026-12-08')).toMatch(/\[Round\] The round of 8 December 2026: ten minutes at the car/);
    await go(layUp, '2026-12-08');
    await page.getByRole('link', { name: 'Make the round' }).click();
    await sound();
    for (const look of await page.locator('fieldset.look').all()) await look.locator('label').first().click();
    const box = await page.locator('fieldset.look label').first().boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    await page.getByLabel('Note').fill('Dry and cold');
    await press('Save the round');
    expect(await page.locator('table.rounds tr').nth(1).innerText()).toMatch(
      /8 December 2026\s+made[\s\S]*Dry and cold/,
    );
    expect(await sweep('2026-12-09')).toBeNull();
  });

  test('January: the round is missed; the battery is warned of before it falls, and charged', async () => {
    const letter = await sweep('2027-01-20');
    expect(letter).toContain('[Round] The round of 8 January 2027');
    expect(letter).toMatch(/\[While it stands\] The battery may fall to three quarters/);
    await go(layUp, '2027-01-20');
    expect(await page.locator('.todo').innerText()).toContain('The battery may fall to three quarters');
    await go(`${carPath}/readings`, '2027-01-20');
    await page.locator(`[name="${battery}.rest-voltage.typed"]`).fill('12.75');
    await press('Keep the readings');
    await go(layUp, '2027-01-20');
    expect(await page.locator('.todo').count()).toBe(0);
  });

  test('February: the next round names the missed one and asks more', async () => {
    const letter = await sweep('2027-02-08');
    expect(letter).toContain('Missed so far: 8 January 2027.');
    await go(`${layUp}/round`, '2027-02-08');
    expect(await say()).toContain('Missed: 8 January 2027.');
    expect(await page.locator('[name="look.under-hood"]').count()).toBeGreaterThan(0);
    await page.locator('[name="look.smell"][value=none]').check();
    await press('Save the round');
    const rows = await page.locator('table.rounds tbody tr').allInnerTexts();
    expect(rows.slice(0, 3).map((row) => /made|missed|due|ahead/.exec(row)?.[0])).toEqual(['made', 'missed', 'made']);
  });

  test('March: the return comes by letter, and the way back has what autumn left undone', async () => {
    expect(await sweep('2027-03-01')).toContain('[Return] It comes back on 1 April 2027');
    await go(`${layUp}/wake-up`, '2027-03-25');
    const road = await page.locator('.road-check').innerText();
    expect(road).toMatch(/Before the road: not on the road until these are put right, or dated/i);
    expect(road).toContain('Road tire, front left');
    // Nobody ticked that the parking brake was off; the oil was changed.
    expect(await page.locator('li#brake-stuck').count()).toBe(1);
    expect(await page.locator('li#oil').count()).toBe(0);
    await page.locator('li#cover-off button', { hasText: 'Done' }).click();
    await sound();
    expect(await page.locator('li#cover-off').innerText()).toContain('Done on 25 March 2027');
  });

  test('April: it is back; the car’s sheet keeps the stay and has its ordinary words again', async () => {
    await go(`${layUp}/wake-up`, '2027-04-01');
    await page.getByRole('link', { name: 'It is back: close the lay-up' }).click();
    await sound();
    await page.getByLabel('Odometer').fill('54,301');
    await page.getByLabel('miles').check();
    await press('Close the lay-up');
    expect(new URL(page.url()).pathname).toBe(carPath);
    const sheet = await say();
    expect(sheet).toMatch(/8 November 2026: Parked on 8 November 2026, back on 1 April 2027/);
    expect(sheet).toMatch(/2 rounds made, 2 missed\./);
    expect(sheet).not.toContain('silent');
    expect(await page.getByRole('link', { name: 'Put it away' }).count()).toBe(1);
    await go(layUp, '2027-05-01');
    expect(await page.locator('main button').allInnerTexts()).toEqual(['It was closed by a slip: open it again']);
    await go('/lay-ups', '2027-05-01');
    expect(await say()).toContain('Past stays');
  });

  test('every letter of the winter is on the Letters page', async () => {
    await go('/letters', '2027-04-02');
    const subjects = await page.locator('.letters h2').allInnerTexts();
    expect(subjects.at(-1)).toMatch(/^Lay-up of Quill Corvid 1300/);
    expect(subjects.filter((subject) => /1 round/.test(subject))).toHaveLength(3);
    expect(subjects.filter((subject) => /1 return/.test(subject))).toHaveLength(1);
    expect(subjects.filter((subject) => /warning/.test(subject)).length).toBeGreaterThan(0);
  });
});
