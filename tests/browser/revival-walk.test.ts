/** A sleeper brought back on a phone: from the intake at the car through every stage and gate to the road check. */
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WALK_KEYS } from '../../src/plans/walkround.ts';
import { type LookKey, lookOf } from '../../src/revival/looks.ts';
import { STAGE_KEYS, STAGES, type Stage, type StageKey } from '../../src/revival/stages.ts';
import { stepWith } from '../../src/revival/steps.ts';
import { chromiumFound, openBrowser } from '../support/chromium.ts';
import { type RunningServer, startServer } from '../support/server.ts';

const PHONE = { width: 390, height: 844 };

/** The answer that opens a gate, or else a good one. */
const wellOf = (look: LookKey): string => {
  const opens = STAGE_KEYS.flatMap((key) => (STAGES[key] as Stage).opens).find((one) => one.look === look);
  const good = Object.entries(lookOf(look).answers).find(([, { verdict }]) => verdict === 'good')?.[0];
  return opens?.is[0] ?? good ?? '';
};

describe.skipIf(!chromiumFound)('a sleeper on a phone', () => {
  let server: RunningServer;
  let browser: BrowserContext;
  let page: Page;
  let revival = '';
  const errors: string[] = [];

  const say = (): Promise<string> => page.locator('main').innerText();
  const go = async (path: string): Promise<void> => {
    const answer = await page.goto(`${server.url}${path}`);
    expect(answer?.status(), path).toBe(200);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide, `${path} is wider than the phone by`).toBe(0);
    expect(errors, path).toEqual([]);
  };
  const press = async (name: string | RegExp): Promise<void> => {
    await page
      .getByRole('button', { name, exact: typeof name === 'string' })
      .first()
      .click();
    if (await page.locator('main [role=alert]').count()) throw new Error(await say());
  };
  /** What is done beside the walk: the form of another page. */
  const post = async (path: string, form: Record<string, string>, effects: readonly string[] = []): Promise<void> => {
    const body = new URLSearchParams([
      ...Object.entries(form),
      ...effects.map((key): [string, string] => ['effects', key]),
    ]);
    const answer = await page.request.post(`${server.url}${path}`, {
      data: body.toString(),
      headers: { origin: server.url, 'content-type': 'application/x-www-form-urlencoded' },
      maxRedirects: 0,
    });
    if (answer.status() !== 303)
      throw new Error(`${path}: ${answer.status()} ${(await answer.text()).replace(/<[^>]+>/g, ' ').slice(0, 900)}`);
  };
  const gate = (stage: StageKey): Promise<string> => page.locator(`#${stage} .gate-line`).innerText();
  /** Ticks every step of a stage that is open, with good answers, as its form sends them. */
  const work = async (stage: StageKey): Promise<void> => {
    for (let rounds = 0; rounds < 3; rounds++) {
      await go(`${revival}/stages/${stage}`);
      const open = await page.locator('ol.steps > li.open').evaluateAll((all) => all.map(({ id }) => id));
      if (open.length === 0) return;
      for (const key of open) {
        const step = stepWith(key);
        const path = `${revival}/steps/${key}`;
        if (step?.survey) await post(`${path}/leaks`, { dry: 'on' });
        else if (step?.run) await post(`${path}/run`, { ended: 'as planned', driven: '1', hubs: '6' });
        else {
          const looks = Object.fromEntries(
            (step?.asks ?? []).map((look) => [`look.${look}`, lookOf(look).number ? '4' : wellOf(look)]),
          );
          await post(`${path}/done`, { ...looks, evidence: 'receipt', cost: '10', hours: '1' }, await effectsOn(path));
        }
      }
    }
  };
  /** The records a tick would write, as its form has them ticked. */
  const effectsOn = async (path: string): Promise<string[]> => {
    const html = await (await page.request.get(`${server.url}${path}`)).text();
    return [...html.matchAll(/name="effects" value="([^"]+)"/g)].map(([, key]) => key ?? '');
  };
  /** New tires count from their codes: the gate waits for them. */
  const dateTires = async (): Promise<void> => {
    await go(`${revival}/stages/tires`);
    expect(await page.locator('section.gate').innerText()).toMatch(/Road tire, front left: no date; read its code/);
    const read = async <T>(path: string): Promise<T> =>
      (await (await fetch(`${server.url}/api/v1${path}`)).json()) as T;
    const { cars } = await read<{ cars: { id: string }[] }>('/cars');
    const { parts } = await read<{ parts: { id: string; kind: string }[] }>(`/cars/${cars[0]?.id}/parts`);
    for (const { id } of parts.filter(({ kind }) => kind === 'tires-road'))
      await post(`/parts/${id}/date`, { clock: 'made', typed: '0126', evidence: 'read on the part' });
  };
  const pass = async (stage: StageKey): Promise<void> => {
    await go(`${revival}/stages/${stage}`);
    await press('Pass this gate');
  };

  beforeAll(async () => {
    server = await startServer([], { LETTER_HOUR: '23' });
    browser = await openBrowser('phone');
    page = await browser.newPage();
    await page.setViewportSize(PHONE);
    page.on('pageerror', (error) => errors.push(error.message));
  });

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  test('the intake takes what is known and leaves the rest unknown', async () => {
    await go('/revivals/new');
    await page.fill('[name=name]', 'Quillon Sedan');
    await page.fill('[name=built]', '1959');
    await page.selectOption('[name=start]', 'sedan-drums-all-round');
    await page.fill('[name=lastRan]', '02/03/2015');
    await page.check('[name=stood][value=dry]');
    await page.fill('[name=ceiling]', '40000');
    await page.getByRole('button', { name: 'Go on to the first look' }).click();
    // Which day that is can’t be known: it is asked, and what was typed is still there.
    expect(await page.inputValue('[name=name]')).toBe('Quillon Sedan');
    await page.locator('[name=lastRanChoice]').first().check();
    await press('Go on to the first look');
    revival = `/revivals/${page.url().split('/')[4]}`;
    expect(await say()).toContain('First look at Quillon Sedan');
  });

  test('the first look ends in a verdict on one page', async () => {
    await page.check('[name="look.fuel-smell"][value=varnish]');
    await page.check('[name="look.rodents"][value=droppings]');
    const codes = page.locator('[name^="date."]');
    await codes.nth(0).fill('2309');
    await press(/Keep it, and show the verdict/);
    const verdict = await say();
    expect(verdict).toMatch(/Smell of the fuel: Like varnish or paint/);
    expect(verdict).toMatch(/New tires all round/);
    expect(verdict).toMatch(/Not looked yet: papers/);
    expect(verdict).toMatch(/\$[\d,]+ to \$[\d,]+/);
    expect(verdict).not.toMatch(/\bfine\b/i);
  });

  test('no gate opens by itself, and the starter waits for the hand', async () => {
    await go(revival);
    for (const stage of STAGE_KEYS.filter((key) => (STAGES[key] as Stage).safety))
      expect(await gate(stage), stage).toMatch(/^Gate shut/);
    await go(`${revival}/steps/first-start`);
    expect(await say()).toMatch(/Before it:[\s\S]*Turn it by hand/);
    await page.fill('[name="look.oil-pressure"]', '4');
    await page.check('[name="look.knock"][value=none]');
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    expect(await page.locator('#despite-fault').innerText()).toMatch(/First: .*Turn it by hand/);
    expect(await page.inputValue('[name="look.oil-pressure"]')).toBe('4');
    await go(`${revival}/stages/structure`);
    await page.getByText('Go on all the same, in writing').click();
    await page.fill('section.gate [name=note]', 'no');
    await page.getByRole('button', { name: 'Pass it in writing' }).click();
    expect(await page.locator('#note-fault').innerText()).toMatch(/Write the reason/);
  });

  test('the road check says no before anything is done', async () => {
    await go(revival);
    await page.getByRole('link', { name: 'Road check' }).click();
    expect(await page.locator('.road-answer h2').innerText()).toMatch(/^no$/i);
    expect(await say()).toMatch(/Gate of Brakes: not passed/);
  });

  test('a step is ticked on the phone, and what it found changes the plan', async () => {
    await go(`${revival}/steps/title`);
    await page.check('[name="look.title"][value="in hand"]');
    await page.fill('[name=note]', 'Seen the logbook');
    await press('Done');
    expect(page.url()).toContain('/stages/papers#title');
    await post(`${revival}/steps/story/done`, {});
    await post(`${revival}/steps/transport/done`, {});
    await pass('papers');
    for (const stage of STAGE_KEYS.slice(1, STAGE_KEYS.indexOf('fuel'))) {
      await work(stage);
      await pass(stage);
    }
    await go(`${revival}/stages/fuel`);
    expect(await page.locator('#fuel-lines h3').innerText()).toMatch(/blown through/);
    await go(`${revival}/steps/tank`);
    await page.check('[name="look.tank-inside"][value=rust]');
    await press('Done');
    await go(`${revival}/stages/fuel`);
    expect(await page.locator('#fuel-lines h3').innerText()).toMatch(/renewed from tank to engine/);
    expect(await page.locator('#tank').innerText()).toMatch(/to be done again/);
  }, 60_000);

  test('stage after stage to the first heat, the leak map over two heats, and the brakes', async () => {
    for (const stage of STAGE_KEYS.slice(STAGE_KEYS.indexOf('fuel'), STAGE_KEYS.indexOf('yard'))) {
      await work(stage);
      if (stage === 'tires') await dateTires();
      await pass(stage);
    }
    await go(`${revival}/steps/leaks-1-morning`);
    await page.selectOption('[name="place.0"]', 'tank');
    await page.selectOption('[name="fluid.0"]', 'fuel');
    await page.selectOption('[name="how.0"]', 'seeps');
    await press('Keep this survey');
    await go(revival);
    // A leak of fuel shuts its gate again and every one above it.
    expect(await gate('leaks')).toMatch(/Gate shut/);
    expect(await gate('legal')).toMatch(/Gate shut/);
    await work('leaks');
    await post(`${revival}/steps/leaks-1-morning/leaks`, { dry: 'on' });
    await go(revival);
    expect(await gate('leaks')).toMatch(/Gate passed/);
    expect(await gate('legal')).toMatch(/Gate passed/);
  }, 120_000);

  test('road tests with their notes, each only after the last was well', async () => {
    await work('yard');
    await pass('yard');
    await go(`${revival}/steps/run-b`);
    await page.check('[name=ended][value="as planned"]');
    await page.selectOption('[name="note.0"]', 'noise:braking');
    await page.selectOption('[name="versus.0"]', 'worse');
    await press('Keep this run');
    await go(`${revival}/steps/run-c`);
    expect(await say()).toMatch(/find what got worse on B: round the block: noise, braking/);
    await post(`${revival}/steps/run-b/take-back`, {});
    await work('road');
    await pass('road');
    await go(revival);
    expect(await say()).toMatch(/Wheel nuts once more after 80 to 160 km: after 80 to 160 km, by/);
  }, 60_000);

  test('the road check lets it go no farther than its data and the walk round of today allow', async () => {
    await page.getByRole('link', { name: 'Road check' }).click();
    const check = new URL(page.url()).pathname;
    expect(await page.locator('.road-answer h2').innerText()).toMatch(/^no$/i);
    expect(await say()).toMatch(/Brake pedal: not looked at today/);
    for (const key of WALK_KEYS) await page.check(`[name="walk.${key}"][value=well]`);
    await press(/Keep it, and show the answer/);
    expect(await page.locator('.road-answer h2').innerText()).toMatch(/^local only$/i);
    expect(await say()).toMatch(/First 50 km after work on/);
    await page.fill('[name=guest]', 'Nell');
    await press('Make a link');
    const lent = await page.locator('a.address').innerText();
    await page.context().clearCookies();
    await page.goto(lent);
    expect(await page.locator('.road-answer h2').innerText()).toMatch(/^local only$/i);
    expect(await page.locator('nav').count()).toBe(0);
    await page.goto(`${server.url}${check}`);
    await press(/End it now/);
    expect((await page.goto(lent))?.status()).toBe(404);
  });

  test('the car is back, and its records carry the dates of the work', async () => {
    await work('sorting');
    await go(`${revival}/end`);
    await press('End it');
    expect(await say()).toMatch(/Back on the road on/);
    await page.getByRole('link', { name: 'Quillon Sedan' }).first().click();
    expect(await say()).toMatch(/Brought back/);
    await go(`${revival}/journal`);
    expect(await say()).toMatch(/Gate of Road tests passed/);
  }, 60_000);
});
