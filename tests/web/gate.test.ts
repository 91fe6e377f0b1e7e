import { describe, expect, it } from 'vitest';
import { siteAt } from '../../src/links.ts';
import { createLog } from '../../src/log.ts';
import { carsOf } from '../../src/store/cars.ts';
import { openMemoryStore } from '../../src/store/open.ts';
import { ensureCollection } from '../../src/store/people.ts';
import { createApp } from '../../src/web/app.tsx';
import { openSite } from '../support/site.ts';

const CAR = { name: 'Merle', built: '1967', start: 'roadster-disc-drum-overdrive' };

/** The app as a browser reaches it by some address. */
const openApp = (baseUrl?: string) => {
  const store = openMemoryStore();
  ensureCollection(store, 'Europe/Lisbon');
  const lines: string[] = [];
  const app = createApp({
    store,
    site: siteAt(baseUrl ? new URL(baseUrl) : null, 3000),
    log: createLog('debug', (line) => lines.push(line)),
    now: () => new Date('2026-11-25T10:00:00Z'),
    dataDir: null,
    hasMailServer: true,
    metricsToken: null,
    deliver: async () => ({ sent: 0, waiting: 0, failed: 0, calledOff: 0 }),
  });
  const ask = async (address: string, init?: RequestInit) => app.request(address, init);
  return { ask, lines };
};

describe('the host asked for', () => {
  it.each(['http://localhost:3000/', 'http://127.0.0.1:3000/', 'http://[::1]:3000/', 'http://localhost/'])(
    '%s is answered',
    async (address) => expect((await openApp().ask(address)).status).toBe(200),
  );

  it.each(['http://barn.example.org/', 'http://192.168.1.7:3000/', 'http://localhost.example.org:3000/'])(
    '%s is refused: it may be another site’s name for this machine',
    async (address) => {
      const answer = await openApp().ask(address);
      expect(answer.status).toBe(421);
      expect(await answer.text()).toContain('Set BASE_URL');
    },
  );

  it('is answered by the public name where there is one, pages and API alike', async () => {
    const { ask } = openApp('https://barn.example.org/cars');
    for (const path of ['/cars/', '/cars/api/v1/cars', '/cars/healthz'])
      expect((await ask(`http://barn.example.org${path}`)).status, path).toBe(200);
    expect((await ask('http://other.example.org/cars/')).status).toBe(421);
  });

  it('is refused before the API and the static files, too', async () => {
    for (const path of ['/api/v1/cars', '/static/style.css', '/healthz'])
      expect((await openApp().ask(`http://evil.example.org${path}`)).status, path).toBe(421);
  });
});

describe('a change', () => {
  const cars = (site: ReturnType<typeof openSite>) => carsOf(site.store, site.collectionId).length;

  it('from our own page is taken', async () => {
    const site = openSite();
    expect((await site.post('/cars', CAR)).status).toBe(303);
    expect(cars(site)).toBe(1);
  });

  it('that a browser calls cross-site is refused, a form as well as a document', async () => {
    const site = openSite();
    const headers = { 'sec-fetch-site': 'cross-site' };
    expect((await site.post('/cars', CAR, headers)).status).toBe(403);
    const { ask } = openApp();
    const document = await ask('http://localhost:3000/api/v1/cars', {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json' },
      body: JSON.stringify({ name: 'Merle', built: '1967', quickStart: CAR.start }),
    });
    expect(document.status).toBe(403);
    expect(cars(site)).toBe(0);
  });

  it.each(['https://evil.example.org', 'http://localhost.evil.example.org', 'null'])(
    'with the origin %s is refused and is no error of ours',
    async (origin) => {
      const lines: string[] = [];
      const site = openSite({ log: (line) => lines.push(line) });
      expect((await site.post('/cars', CAR, { origin })).status).toBe(403);
      expect(cars(site)).toBe(0);
      expect(lines).toEqual([]);
    },
  );

  it.each(['http://localhost:8080', 'http://127.0.0.1:3000'])('from this machine by %s is taken', async (origin) => {
    expect((await openSite().post('/cars', CAR, { origin })).status).toBe(303);
  });

  it('from the public address is taken', async () => {
    const site = openSite({ baseUrl: 'https://barn.example.org' });
    expect((await site.post('/cars', CAR, { origin: 'https://barn.example.org' })).status).toBe(303);
  });

  it('that is far too large is refused before it is read', async () => {
    const lines: string[] = [];
    const site = openSite({ log: (line) => lines.push(line) });
    const answer = await site.post('/cars', { ...CAR, note: 'x'.repeat(300 * 1024) });
    expect(answer.status).toBe(413);
    expect(cars(site)).toBe(0);
    expect(lines).toEqual([]);
  });

  it('no page of ours can have sent is a 400 page', async () => {
    const site = openSite();
    const answer = await site.post('/cars', { ...CAR, traits: ['no-such-trait'] });
    expect(answer.status).toBe(400);
    expect(await answer.text()).toContain('That was not understood');
    expect((await site.post('/cars', { ...CAR, name: 'x'.repeat(201) })).status).toBe(400);
  });
});

describe('a fault of our own', () => {
  it('is a 500 that names its line in the log and nothing of the inside', async () => {
    const lines: string[] = [];
    const site = openSite({ log: (line) => lines.push(line) });
    site.store.$client.exec('drop table overrides');
    for (const path of ['/', `/api/v1/cars/01900000-0000-7000-8000-000000000000/findings`]) await site.get(path);
    const answer = await site.get('/practice');
    expect(answer.status).toBe(500);
    const body = await answer.text();
    const line = JSON.parse(lines.at(-1) ?? '{}') as { id: string; level: string; event: string; error: string };
    expect(line).toMatchObject({ level: 'error', event: 'request failed', path: '/practice' });
    expect(line.error).toContain('overrides');
    expect(body).toContain(line.id);
    expect(body).not.toContain('overrides');
  });
});

describe('the probes', () => {
  it('answer without a collection of cars being looked at', async () => {
    const site = openSite();
    expect(await (await site.get('/healthz')).json()).toEqual({ status: 'up' });
    expect(await (await site.get('/readyz')).json()).toEqual({
      status: 'ready',
      collections: 1,
      lastSweep: null,
      lastGoodSweep: null,
      trouble: [],
    });
    await site.post('/letters', {});
    expect(await (await site.get('/readyz')).json()).toMatchObject({ lastSweep: '2026-11-25T10:00:00.000Z' });
  });

  it('say when the database does not answer', async () => {
    const site = openSite();
    site.store.$client.close();
    expect((await site.get('/healthz')).status).toBe(200);
    expect((await site.get('/readyz')).status).toBe(503);
  });
});

describe('static files', () => {
  it.each([
    ['/static/style.css', 'text/css'],
    ['/static/reads.js', 'text/javascript'],
    ['/static/icon.svg', 'image/svg+xml'],
  ])('%s is served as %s', async (path, type) => {
    const answer = await openSite().get(path);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toContain(type);
  });

  it.each(['/static/../app.tsx', '/static/%2e%2e/app.tsx', '/static/..%2fapp.tsx', '/static/none.css'])(
    '%s is none',
    async (path) => expect((await openSite().get(path)).status).toBe(404),
  );
});
