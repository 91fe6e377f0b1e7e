/** The sheets as a browser prints them: pages, paper, sizes, grays; and on screen the same checks as every page. */
import axe from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumFound, openBrowser, SIZES } from '../support/chromium.ts';
import { openStay, type SheetStay, serveSite } from '../support/sheets.ts';
import { openSite } from '../support/site.ts';

const SHEETS = ['plan', 'windshield', 'monthly', 'wake-up'] as const;
/** Points, and what lies between the margins in CSS pixels. */
const PAPERS = {
  a4: { points: [595, 842], inside: 710 },
  letter: { points: [612, 792], inside: 732 },
} as const;
type Paper = keyof typeof PAPERS;
const PAPER_NAMES = Object.keys(PAPERS) as Paper[];
const POINT = 96 / 72;
const MILLIMETER = 96 / 25.4;

const LONG_NAME = 'The Grand Duchess of the Northern Marches, green over black, with the odd door';

describe.skipIf(!chromiumFound)('sheets', () => {
  let browser: BrowserContext;
  let page: Page;
  let url: string;
  let stop = (): void => {};
  const stays: Record<string, SheetStay> = {};
  const errors: string[] = [];

  beforeAll(async () => {
    const site = openSite({ now: '2027-01-15T10:00:00Z' });
    const usual = openStay({ site, layUp: { phone: '+1 555 0134 288', circumstances: ['mice'] } });
    for (const step of ['park', 'pipes-blocked', 'chocks', 'battery-maintainer', 'fuel-fill'])
      usual.tick(step, '2026-11-01');
    usual.skip('wax', '2026-11-01', 'polished in August');
    usual.round('2026-12-01', { mice: 'traces', drips: 'spots', lamp: 'full', rolled: 'done' }, [
      ['battery-flooded', 'rest-voltage', '12.71'],
      ['tires-road', 'cold-pressure', '2.75'],
      ['desiccant', 'humidity', '52'],
    ]);
    // Every line the windshield sheet has, and the longest words for each.
    const full = openStay({
      site,
      name: LONG_NAME,
      more: ['lpg-tank'],
      layUp: { returnOn: '2027-11-10', phone: '+351 21 000 0000, evenings' },
    });
    full.tick('coolant-strength', '2026-10-20', { read: { 'coolant-iat.freeze-point': '-30' } });
    full.skip('soft-top', '2026-11-01', 'folded');
    const open = openStay({ site, name: 'Otter', start: 'diesel-wagon', place: false, layUp: { returnOn: '' } });
    Object.assign(stays, { usual, full, open });
    ({ url, stop } = await serveSite(site));
    browser = await openBrowser('desk');
    page = await browser.newPage();
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
  });

  afterAll(async () => {
    await browser?.close();
    stop();
  });

  const go = async (stay: string, sheet: string, paper: Paper): Promise<void> => {
    const answer = await page.goto(`${url}${stays[stay]?.path(sheet, `paper=${paper}`)}`);
    expect(answer?.status(), `${stay} ${sheet}`).toBe(200);
  };

  /** Width and height of each page, in whole points. */
  const printed = async (): Promise<number[][]> => {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const pages = [...pdf.matchAll(/\/Type\s*\/Page\b/g)].length;
    const boxes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
    expect(boxes).toHaveLength(pages);
    return boxes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))]);
  };

  for (const paper of PAPER_NAMES)
    describe(`on ${paper}`, () => {
      test('each sheet fills pages of that paper', async () => {
        for (const stay of Object.keys(stays))
          for (const sheet of SHEETS) {
            await go(stay, sheet, paper);
            const pages = await printed();
            const most = sheet === 'plan' || sheet === 'wake-up' ? 5 : 1;
            expect(pages.length, `${stay} ${sheet}`).toBeGreaterThan(0);
            expect(pages.length, `${stay} ${sheet}`).toBeLessThanOrEqual(most);
            for (const size of pages) expect(size).toEqual(PAPERS[paper].points);
          }
      });

      describe('as printed', () => {
        beforeAll(async () => {
          await page.setViewportSize({ width: PAPERS[paper].inside, height: 1000 });
          await page.emulateMedia({ media: 'print' });
        });
        afterAll(async () => {
          await page.emulateMedia({ media: null });
        });

        test('nothing is wider than the paper, nothing of the bar is left, and all is black, white or gray', async () => {
          for (const stay of Object.keys(stays))
            for (const sheet of SHEETS) {
              await go(stay, sheet, paper);
              const wide = await page.evaluate(
                () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
              );
              expect(wide, `${stay} ${sheet}`).toBe(0);
              expect(await page.locator('nav').isVisible()).toBe(false);
              const colors = await page.evaluate(() =>
                [...document.querySelectorAll('*')].flatMap((one) => {
                  const style = getComputedStyle(one);
                  return [
                    ...[style.color, style.backgroundColor, style.fill, style.stroke],
                    ...[style.borderTopColor, style.borderBottomColor, style.borderLeftColor],
                  ];
                }),
              );
              const colored = [...new Set(colors)].filter((one) => {
                const [r, g, b] = (one.match(/\d+/g) ?? []).map(Number);
                return one !== 'none' && !(r === g && g === b);
              });
              expect(colored, `${stay} ${sheet}`).toEqual([]);
            }
        });

        test('the windshield sheet is legible at arm’s length', async () => {
          const sizes = (css: string): Promise<number[]> =>
            page.locator(css).evaluateAll((all) => all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize)));
          for (const stay of Object.keys(stays)) {
            await go(stay, 'windshield', paper);
            const lines = await sizes('.line, .call, .when');
            expect(lines.length).toBeGreaterThan(5);
            expect(Math.min(...lines)).toBeGreaterThanOrEqual(27 * POINT - 0.01);
            expect(Math.min(...(await sizes('.stop')))).toBeGreaterThanOrEqual(60 * POINT - 0.01);
          }
        });

        test('the monthly card has cells for a hand in a glove', async () => {
          for (const stay of Object.keys(stays)) {
            await go(stay, 'monthly', paper);
            const heights = await page
              .locator('.grid tbody tr:not(.remarks)')
              .evaluateAll((rows) => rows.map((row) => row.getBoundingClientRect().height));
            expect(heights.length).toBeGreaterThan(2);
            expect(Math.min(...heights)).toBeGreaterThanOrEqual(9 * MILLIMETER);
          }
        });

        test('no letter is too small to read', async () => {
          for (const sheet of SHEETS) {
            await go('full', sheet, paper);
            const smallest = await page.evaluate(() =>
              Math.min(
                ...[...document.querySelectorAll('main *')]
                  .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
                  .map((one) => Number.parseFloat(getComputedStyle(one).fontSize)),
              ),
            );
            expect(smallest, sheet).toBeGreaterThanOrEqual(7 * POINT - 0.01);
          }
        });
      });
    });

  for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
    test(`on a screen as wide as ${size}: no accessibility violation, no sideways scroll`, async () => {
      await page.setViewportSize(SIZES[size]);
      for (const stay of Object.keys(stays))
        for (const sheet of SHEETS) {
          await go(stay, sheet, 'a4');
          expect(await page.locator('nav').isVisible()).toBe(true);
          await page.evaluate(axe.source);
          const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
          expect(
            violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
            `${stay} ${sheet}`,
          ).toEqual([]);
          const wide = await page.evaluate(
            () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
          );
          expect(wide, `${stay} ${sheet}`).toBe(0);
        }
      expect(errors).toEqual([]);
    });
});
