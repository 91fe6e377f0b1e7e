import { describe, expect, it } from 'vitest';
import { siteAt } from '../../src/links.ts';
import { createLog } from '../../src/log.ts';
import { openMemoryStore } from '../../src/store/open.ts';
import { ensureCollection } from '../../src/store/people.ts';
import { recordRun } from '../../src/store/runs.ts';
import { createApp } from '../../src/web/app.tsx';

const TOKEN = 'sixteen letters and more';

const open = (metricsToken: string | null = TOKEN) => {
  const store = openMemoryStore();
  ensureCollection(store, 'Europe/Lisbon');
  const app = createApp({
    store,
    site: siteAt(null, 3000),
    log: createLog('error', () => {}),
    now: () => new Date('2026-11-25T10:00:00Z'),
    dataDir: null,
    hasMailServer: true,
    metricsToken,
    deliver: async () => ({ sent: 0, waiting: 0, failed: 0, calledOff: 0 }),
  });
  const get = (path: string, token?: string) =>
    app.request(`http://localhost:3000${path}`, token ? { headers: { authorization: `Bearer ${token}` } } : {});
  return { store, get };
};

describe('the numbers for monitors', () => {
  it('are none without a token of their own', async () => {
    expect((await open(null).get('/metrics', 'anything at all')).status).toBe(404);
  });

  it.each([undefined, 'some other token here', `${TOKEN}x`])('are closed to the token %s', async (token) => {
    expect((await open().get('/metrics', token)).status).toBe(401);
  });

  it('are in the text format, with a word on each', async () => {
    const { store, get } = open();
    recordRun(store, 'sweep', '2026-11-25T07:00:00.000Z', null);
    recordRun(store, 'backup', '2026-11-25T03:00:00.000Z', 'The disk is full.');
    const answer = await get('/metrics', TOKEN);
    expect(answer.headers.get('content-type')).toBe('text/plain; version=0.0.4; charset=utf-8');
    const lines = (await answer.text()).trimEnd().split('\n');
    for (const line of lines)
      expect(line).toMatch(/^(# (HELP|TYPE) [a-z_]+ .+|[a-z_]+(\{[a-z]+="[a-z]+"\})? -?\d+(\.\d+)?)$/);
    expect(lines).toContain(
      `standstill_last_good_run_seconds{job="sweep"} ${Date.parse('2026-11-25T07:00:00Z') / 1000}`,
    );
    expect(lines).toContain('standstill_in_trouble{job="backup"} 1');
    expect(lines).toContain('standstill_in_trouble{job="sweep"} 0');
  });
});

describe('what went wrong by itself', () => {
  it('stands on every page, on the Status page in words, and in /readyz', async () => {
    const { store, get } = open();
    expect(await (await get('/')).text()).not.toContain('went wrong');
    recordRun(store, 'backup', '2026-11-25T03:00:00.000Z', 'The disk is full.');
    expect(await (await get('/places')).text()).toContain('Something this server does by itself went wrong.');
    expect(await (await get('/status')).text()).toContain('The disk is full.');
    expect(await (await get('/readyz')).json()).toMatchObject({ trouble: ['backup'], lastGoodSweep: null });
    recordRun(store, 'backup', '2026-11-25T04:00:00.000Z', null);
    expect(await (await get('/places')).text()).not.toContain('went wrong');
  });
});
