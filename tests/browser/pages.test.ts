/** Every page of the demo, at phone and desk width: no accessibility violation, no error, nothing wider than the screen. */
import axe from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumFound, openBrowser, SIZES } from '../support/chromium.ts';
import { DESKS_ANSWERED } from '../support/pages.ts';
import { type RunningServer, startServer } from '../support/server.ts';

interface Car {
  id: string;
}
interface Part {
  id: string;
  kind: string;
}

/** Drawings with much to name in little room. */
const CROWDED = [
  '/desks/brake-fluid?grade=dot-3&boiling=150&limit=150&water=2.9&air=damp',
  '/desks/brake-fluid?grade=dot-4&boiling=160&limit=165&filled=2025',
  '/desks/coolant?strength=40&night=-35',
  '/desks/coolant?freezing=-25&night=-20',
  '/desks/battery?capacity=60&charge=40&connection=maintainer&low=-25',
];

describe.skipIf(!chromiumFound)('every page', () => {
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;
  let paths: string[];
  let round: string;
  const errors: string[] = [];

  const get = async <T>(path: string): Promise<T> => (await (await fetch(`${server.url}/api/v1${path}`)).json()) as T;

  beforeAll(async () => {
    server = await startServer(['--demo'], { LETTER_HOUR: '0' });
    const { cars } = await get<{ cars: Car[] }>('/cars');
    const [car] = cars;
    const { parts } = await get<{ parts: Part[] }>(`/cars/${car?.id}/parts`);
    const tire = parts.find(({ kind }) => kind === 'tires-road');
    browser = await openBrowser('desk');
    page = await browser.newPage();
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(`${server.url}/letters`);
    const letter = await page.locator('.letters h2 a').first().getAttribute('href');
    // What is reached by links in a letter alone.
    const told = (await (await fetch(`${server.url}${letter}`)).text()).replaceAll('&amp;', '&');
    const byLink = ['answers', 'seen', 'stop'].map(
      (by) => new RegExp(`${server.url}(/${by}/\\S+?)(?=[\\s<])`).exec(told)?.[1] ?? `/no-${by}`,
    );
    await page.goto(`${server.url}/collection`);
    const member = await page
      .locator('main a[href$="/letters"][href^="/members/"]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('href') ?? '').slice(0, 1));
    const battery = parts.find(({ kind }) => /^battery-(flooded|agm|lithium)$/.test(kind));
    const volts = `${battery?.id}.rest-voltage.`;
    round = `/cars/${car?.id}/readings`;
    // Something read today to judge and draw, whatever the demo holds.
    const read = await page.request.post(`${server.url}${round}`, {
      // Confirmed, should this one be of 6 volts.
      form: { [`${volts}typed`]: '12.3', [`${volts}typedAsked`]: '12.3', [`${volts}typedChoice`]: 'sure' },
      headers: { origin: server.url },
      maxRedirects: 0,
    });
    expect(read.status()).toBe(303);
    await page.goto(`${server.url}/places`);
    const place = await page.locator('main ul a').first().getAttribute('href');
    await page.goto(`${server.url}/lay-ups`);
    const stays = await page
      .locator('main h2 a[href^="/lay-ups/"]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('href') ?? ''));
    expect(stays.length).toBeGreaterThan(0);
    await page.goto(`${server.url}/revivals`);
    const back = await page
      .locator('main li a[href^="/revivals/"]')
      .evaluateAll((all) => all.map((one) => (one.getAttribute('href') ?? '').replace('/verdict', '')));
    expect(back.length).toBe(2);
    paths = [
      '/',
      '/?on=2028-02-29',
      ...cars.map(({ id }) => `/cars/${id}`),
      '/cars/new',
      `/cars/${car?.id}/change`,
      `/cars/${car?.id}/parts/new`,
      round,
      `/parts/${battery?.id}`,
      `/parts/${tire?.id}`,
      `/parts/${tire?.id}/date`,
      `/parts/${tire?.id}/renew`,
      '/date-codes?fl=2317&fr=239&rl=DOT+4B7+C2DE1F&rr=5417&sp=2O17&mark=battery&typed=C7',
      '/places',
      '/places/new',
      place ?? '/no-place',
      '/lay-ups',
      `/lay-ups/new?car=${car?.id}`,
      ...stays,
      ...['change', 'steps/park', 'wake-up', 'wake-up/first-start', 'round', 'close'].map(
        (one) => `${stays[0]}/${one}`,
      ),
      '/revivals',
      '/revivals/new',
      ...back,
      ...['survey', 'verdict', 'stages/fuel', 'steps/tank', 'steps/run-b', 'steps/leaks-1-hot', 'journal', 'end'].map(
        (one) => `${back[0]}/${one}`,
      ),
      `/cars/${car?.id}/road-check`,
      '/year-ahead',
      '/shopping',
      '/collection/money',
      '/desks',
      '/desks/battery',
      ...Object.values(DESKS_ANSWERED),
      '/practice',
      '/practice/brake-fluid-glycol',
      '/letters',
      letter ?? '/no-letter',
      '/collection',
      '/status',
      ...member,
      ...byLink,
    ];
  });

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
    test(`at ${size} width has no accessibility violation, no script error, and no sideways scroll`, {
      timeout: 240_000,
    }, async () => {
      await page.setViewportSize(SIZES[size]);
      for (const path of paths) {
        const answer = await page.goto(`${server.url}${path}`);
        expect(answer?.status(), path).toBe(200);
        await page.evaluate(axe.source);
        const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
          path,
        ).toEqual([]);
        const wide = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect(wide, `${path} is wider than the screen by`).toBe(0);
      }
      expect(errors).toEqual([]);
    });

  for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
    test(`at ${size} width no words of a drawing lie on others or beyond its frame`, async () => {
      await page.setViewportSize(SIZES[size]);
      for (const path of [...paths, ...CROWDED]) {
        await page.goto(`${server.url}${path}`);
        const crossed = await page.evaluate(() =>
          [...document.querySelectorAll('svg.chart')].flatMap((drawing) => {
            const frame = drawing.getBoundingClientRect();
            const words = [...drawing.querySelectorAll('text')].map((one) => ({
              says: one.textContent ?? '',
              box: one.getBoundingClientRect(),
            }));
            const beyond = words.filter(
              ({ box }) => box.left < frame.left || box.right > frame.right || box.bottom > frame.bottom,
            );
            // A line’s box has room above and below its letters.
            const pairs = words.flatMap(({ says, box }, index) =>
              words
                .slice(index + 1)
                .filter(
                  (other) =>
                    Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left) > 1 &&
                    Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top) > 3,
                )
                .map((other) => `${says} / ${other.says}`),
            );
            return [...beyond.map(({ says }) => says), ...pairs];
          }),
        );
        expect(crossed, path).toEqual([]);
      }
    });

  test('a date can be recorded without any script', async () => {
    const plain = await openBrowser('phone', { javaScriptEnabled: false });
    const sheet = await plain.newPage();
    await sheet.goto(`${server.url}${paths.find((path) => path.endsWith('/date'))}`);
    await sheet.fill('[name=typed]', '2317');
    await sheet.click('button:has-text("Record")');
    expect(await sheet.locator('main').innerText()).toMatch(/2317/);
    await plain.close();
  });

  test('readings can be recorded without any script: empty fields left out, an unlikely one asked back', async () => {
    const plain = await openBrowser('phone', { javaScriptEnabled: false });
    const sheet = await plain.newPage();
    await sheet.goto(`${server.url}${round}`);
    const volts = sheet.locator('[name$=".rest-voltage.typed"]').first();
    const pressure = sheet.locator('[name$=".cold-pressure.typed"]').first();
    // A phone shows its number pad for them.
    expect(await volts.getAttribute('inputmode')).toBe('decimal');
    await volts.fill('9.7');
    await pressure.fill('2.1');
    await sheet.click('main form.round > button');
    expect(await pressure.inputValue()).toBe('2.1');
    const choice = sheet.locator('input[type=radio][name$=".rest-voltage.typedChoice"]');
    await choice.check();
    await sheet.click('main form.round > button');
    expect(sheet.url()).toMatch(/\/cars\/[^/]+$/);
    expect(await sheet.locator('main').innerText()).toMatch(/9\.70 V/);
    await plain.close();
  });

  test('a desk answers without any script, under its own heading', async () => {
    const plain = await openBrowser('phone', { javaScriptEnabled: false });
    const sheet = await plain.newPage();
    await sheet.goto(`${server.url}/desks/battery`);
    await sheet.fill('[name=capacity]', '60');
    await sheet.fill('[name=charge]', '95');
    await sheet.fill('[name=drain]', '30');
    await sheet.click('form.desk > button');
    expect(sheet.url()).toContain('capacity=60');
    expect(await sheet.locator('#answers').isVisible()).toBe(true);
    expect(await sheet.inputValue('[name=capacity]')).toBe('60');
    await plain.close();
  });

  for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
    describe(`on paper as wide as ${size}`, () => {
      beforeAll(async () => {
        await page.setViewportSize(SIZES[size]);
        await page.emulateMedia({ media: 'print' });
      });
      afterAll(async () => {
        await page.emulateMedia({ media: null });
      });
      const formsOn = async (path: string): Promise<number> => {
        await page.goto(`${server.url}${path}`);
        return page.locator('form').evaluateAll((all) => all.filter((form) => form.checkVisibility()).length);
      };

      test('a desk prints its answer and what it was asked, and no form', async () => {
        for (const path of Object.values(DESKS_ANSWERED)) {
          expect(await formsOn(path), path).toBe(0);
          expect(await page.locator('.print-only').first().isVisible(), path).toBe(true);
          expect(await page.locator('svg.chart').first().isVisible(), path).toBe(true);
        }
      });

      test('the sheets of a car and a part print no form', async () => {
        for (const path of paths.filter((one) => /^\/(parts|cars)\/[^/]{36}$/.test(one)))
          expect(await formsOn(path), path).toBe(0);
      });
    });
});
