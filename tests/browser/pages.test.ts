/** Every page of the demo, at phone and desk width: no accessibility violation, no error, nothing wider than the screen. */
import axe from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumFound, openBrowser, SIZES } from '../support/chromium.ts';
import { type RunningServer, startServer } from '../support/server.ts';

interface Car {
  id: string;
}
interface Part {
  id: string;
  kind: string;
}

describe.skipIf(!chromiumFound)('every page', () => {
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;
  let paths: string[];
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
    paths = [
      '/',
      '/?on=2028-02-29',
      ...cars.map(({ id }) => `/cars/${id}`),
      '/cars/new',
      `/cars/${car?.id}/change`,
      `/cars/${car?.id}/parts/new`,
      `/parts/${tire?.id}`,
      `/parts/${tire?.id}/date`,
      `/parts/${tire?.id}/renew`,
      '/date-codes?fl=2317&fr=239&rl=DOT+4B7+C2DE1F&rr=5417&sp=2O17&mark=battery&typed=C7',
      '/practice',
      '/practice/brake-fluid-glycol',
      '/letters',
      letter ?? '/no-letter',
      '/collection',
    ];
  });

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
    test(`at ${size} width has no accessibility violation, no script error, and no sideways scroll`, async () => {
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

  test('a date can be recorded without any script', async () => {
    const plain = await openBrowser('phone', { javaScriptEnabled: false });
    const sheet = await plain.newPage();
    await sheet.goto(`${server.url}${paths.find((path) => path.endsWith('/date'))}`);
    await sheet.fill('[name=typed]', '2317');
    await sheet.click('button:has-text("Record")');
    expect(await sheet.locator('main').innerText()).toMatch(/2317/);
    await plain.close();
  });
});
