/** The sheets of a return as a browser prints them: pages, paper, sizes, grays; and on screen as every page. */
import axe from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LOOKS } from '../../src/revival/looks.ts';
import { STOOD } from '../../src/revival/sleep.ts';
import { chromiumFound, openBrowser, SIZES } from '../support/chromium.ts';
import { openSleeper, type Sleeper } from '../support/revivals.ts';
import { serveSite } from '../support/sheets.ts';
import { openSite } from '../support/site.ts';

const ONE_PAGE = ['survey', 'verdict', 'first-start'] as const;
const SHEETS = [...ONE_PAGE, 'road-tests', 'stages'] as const;
/** Points, and what lies between the margins in CSS pixels. */
const PAPERS = {
  a4: { points: [595, 842], inside: 710 },
  letter: { points: [612, 792], inside: 732 },
} as const;
/** From the upper margin of the shorter paper to its lower one, mm. */
const TALL = 261.4;
type Paper = keyof typeof PAPERS;
const PAPER_NAMES = Object.keys(PAPERS) as Paper[];
const POINT = 96 / 72;
const MILLIMETER = 96 / 25.4;

/** Of every kind of engine, and those with the most to do. */
const WORST = [
  'roadster-disc-drum-overdrive',
  'runabout-rear-brakes',
  'rear-engine-air-cooled',
  'diesel-wagon',
  'roadster-airbags',
  'track-car-harness-cell',
] as const;

/** Two lines of the head. */
const LONG_NAME = 'The Grand Duchess of the Northern Marches, green over black, with the odd door';

/** The worst that can be seen, so that every list is as long as it gets. */
const GRAVE = Object.fromEntries(
  Object.entries(LOOKS).map(([look, { answers }]) => [
    look,
    Object.entries(answers).findLast(([, { verdict }]) => verdict === 'act')?.[0] ?? Object.keys(answers).at(-1) ?? '',
  ]),
);

describe.skipIf(!chromiumFound)('sheets of a return', () => {
  let browser: BrowserContext;
  let page: Page;
  let url: string;
  let stop = (): void => {};
  const sleepers: Record<string, Sleeper> = {};
  const errors: string[] = [];

  beforeAll(async () => {
    const site = openSite();
    const worst = { lastRan: 'unknown', stood: Object.keys(STOOD), putAway: 'shut off', ceiling: '1' };
    for (const start of WORST)
      sleepers[start] = await openSleeper({
        site,
        name: LONG_NAME,
        start,
        intake: worst,
        looks: GRAVE,
      });
    const usual = await openSleeper({ site, looks: { 'fuel-smell': 'varnish' } });
    await usual.tick('story', { note: 'Water pump noisy' });
    await usual.tick('transport', { cost: '280' });
    await usual.passInWriting('papers', 'The title is on its way');
    const unseen = await openSleeper({ site, name: LONG_NAME, start: 'diesel-wagon', intake: worst });
    Object.assign(sleepers, { usual, unseen });
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

  const pathOf = (sleeper: string, sheet: string, paper: Paper): string => {
    const of = sleepers[sleeper];
    return sheet === 'file' ? `/cars/${of?.carId}/file?paper=${paper}` : `${of?.path(sheet, `paper=${paper}`)}`;
  };
  const go = async (sleeper: string, sheet: string, paper: Paper): Promise<void> => {
    const answer = await page.goto(`${url}${pathOf(sleeper, sheet, paper)}`);
    expect(answer?.status(), `${sleeper} ${sheet}`).toBe(200);
  };

  /** Width and height of each page, in whole points. */
  const printed = async (): Promise<number[][]> => {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const boxes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
    expect(boxes).toHaveLength([...pdf.matchAll(/\/Type\s*\/Page\b/g)].length);
    return boxes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))]);
  };

  for (const paper of PAPER_NAMES)
    describe(`on ${paper}`, () => {
      test('survey, verdict and first start fill one page, the road tests both sides of a sheet', async () => {
        for (const sleeper of ['usual', 'unseen', 'roadster-disc-drum-overdrive'])
          for (const sheet of [...ONE_PAGE, 'road-tests']) {
            await go(sleeper, sheet, paper);
            const pages = await printed();
            expect(pages.length, `${sleeper} ${sheet}`).toBe(sheet === 'road-tests' ? 2 : 1);
            for (const size of pages) expect(size).toEqual(PAPERS[paper].points);
          }
      });

      test('stages and file fill as many pages of that paper as they need', async () => {
        for (const sheet of ['stages', 'file']) {
          await go('usual', sheet, paper);
          const pages = await printed();
          expect(pages.length, sheet).toBeGreaterThan(1);
          expect(pages.length, sheet).toBeLessThan(40);
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

        test('nothing is cut off at the right edge, nothing of the bar is left, and all is black, white or gray', async () => {
          for (const sleeper of ['usual', 'roadster-airbags'])
            for (const sheet of [...SHEETS, 'file']) {
              await go(sleeper, sheet, paper);
              const beyond = await page.evaluate(() =>
                [...document.querySelectorAll('main *')]
                  .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
                  .map((one) => one.outerHTML.slice(0, 80)),
              );
              expect(beyond, `${sleeper} ${sheet}`).toEqual([]);
              expect(await page.locator('nav').isVisible()).toBe(false);
              const colors = await page.evaluate(() => [
                ...new Set(
                  [...document.querySelectorAll('*')].flatMap((one) => {
                    const style = getComputedStyle(one);
                    return [
                      ...[style.color, style.backgroundColor, style.fill, style.stroke],
                      ...[style.borderTopColor, style.borderBottomColor, style.borderLeftColor],
                    ];
                  }),
                ),
              ]);
              const colored = colors.filter((one) => {
                const [r, g, b] = (one.match(/\d+/g) ?? []).map(Number);
                return one !== 'none' && !(r === g && g === b);
              });
              expect(colored, `${sleeper} ${sheet}`).toEqual([]);
            }
        });
      });
    });

  describe('as printed, on the shorter paper', () => {
    beforeAll(async () => {
      await page.setViewportSize({ width: PAPERS.letter.inside, height: 1000 });
      await page.emulateMedia({ media: 'print' });
    });
    afterAll(async () => {
      await page.emulateMedia({ media: null });
    });

    test('the worst sleeper keeps within its page', async () => {
      for (const start of WORST)
        for (const sheet of ONE_PAGE) {
          await go(start, sheet, 'letter');
          const tall = await page.locator('main').evaluate((main) => main.getBoundingClientRect().height);
          expect(tall / MILLIMETER, `${start} ${sheet}`).toBeLessThan(TALL);
        }
    });

    test('words are of nine points and more, save the address below the code', async () => {
      for (const sheet of [...SHEETS, 'file']) {
        await go('usual', sheet, 'letter');
        const small = await page.evaluate(
          (least) =>
            [...document.querySelectorAll('main *:not(.address)')]
              .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
              .filter((one) => Number.parseFloat(getComputedStyle(one).fontSize) < least)
              .map((one) => one.textContent),
          9 * POINT - 0.01,
        );
        expect(small, sheet).toEqual([]);
      }
    });

    test('boxes are wide enough for a pencil in a glove', async () => {
      for (const sheet of SHEETS) {
        await go('usual', sheet, 'letter');
        const sides = await page
          .locator('main .box')
          .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().width));
        expect(sides.length, sheet).toBeGreaterThan(2);
        expect(Math.min(...sides), sheet).toBeGreaterThanOrEqual(4.3 * MILLIMETER);
      }
    });
  });

  for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[])
    test(`on a screen as wide as ${size}: no accessibility violation, no sideways scroll`, async () => {
      await page.setViewportSize(SIZES[size]);
      for (const sheet of [...ONE_PAGE, 'road-tests', 'stages', 'file']) {
        // One stage has all that the others have, and is read twenty times as fast.
        const stage = sheet === 'stages' ? '&stage=papers' : '';
        await page.goto(`${url}${pathOf('usual', sheet, 'a4')}${stage}`);
        expect(await page.locator('nav').isVisible()).toBe(true);
        await page.evaluate(axe.source);
        const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
          sheet,
        ).toEqual([]);
        const wide = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect(wide, sheet).toBe(0);
      }
      expect(errors).toEqual([]);
    });
});
