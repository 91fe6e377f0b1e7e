import { beforeAll, describe, expect, it } from 'vitest';
import { addresses, tags } from '../support/html.ts';
import { type FullSite, openFullSite } from '../support/pages.ts';

const BASE = '/cars-here';

describe.each(['http://localhost:3000/cars-here', 'http://localhost:3000/cars-here/'])(
  'a site below a path, %s',
  (baseUrl) => {
    let full: FullSite;
    beforeAll(async () => {
      full = await openFullSite({ baseUrl });
    });
    const get = (path: string) => full.site.get(path);

    it('answers every page there, and every address on it lies there, too', async () => {
      for (const [name, path] of Object.entries(full.pages)) {
        const answer = await get(path);
        expect(answer.status, name).toBe(200);
        const html = await answer.text();
        const found = addresses(html);
        expect(found.length, name).toBeGreaterThan(8);
        expect(
          found.filter((address) => !address.startsWith(`${BASE}/`)),
          name,
        ).toEqual([]);
        expect(tags(html, 'body')[0]?.['data-base'], name).toBe(BASE);
      }
    });

    it('answers with and without the slash at its end', async () => {
      for (const path of [BASE, `${BASE}/`]) expect((await get(path)).status, path).toBe(200);
    });

    it('follows its own links and static files to an answer', async () => {
      const html = await (await get(`${BASE}/`)).text();
      for (const address of new Set(addresses(html))) expect((await get(address)).status, address).toBe(200);
      for (const file of ['style.css', 'reads.js', 'icon.svg'])
        expect((await get(`${BASE}/static/${file}`)).status, file).toBe(200);
    });

    it('sends a form’s sender on below its path', async () => {
      const car = { name: 'Merle', built: '1967', start: 'roadster-disc-drum-overdrive' };
      for (const [path, form] of [
        ['/cars', car],
        [`/parts/${full.tireId}/looked`, {}],
        [`/cars/${full.carId}/odometer`, { distance: '90 000 km' }],
        ['/letters', {}],
        ['/collection', { name: 'Barn', timeZone: 'Europe/Lisbon' }],
        ['/acting', { person: full.site.personId }],
        ['/collections', { name: 'Shed', timeZone: 'Europe/Lisbon' }],
      ] as const) {
        const answer = await full.site.post(`${BASE}${path}`, form);
        expect(answer.status, path).toBe(303);
        expect(answer.headers.get('location'), path).toMatch(/^\/cars-here\//);
        const cookie = answer.headers.get('set-cookie');
        if (cookie) expect(cookie, path).toContain('Path=/cars-here/;');
      }
      const round = await get(`${BASE}/cars/${full.carId}/dating`);
      expect(round.headers.get('location')).toMatch(/^\/cars-here\/parts\/.*\/date\?round=1$/);
    });

    it('answers nothing beside it', async () => {
      for (const path of ['/', '/letters', '/static/style.css', '/cars-hereafter', '/api/v1/cars'])
        expect((await get(path)).status, path).toBe(404);
    });

    it('has its API and probes there, and the API says so', async () => {
      expect((await get(`${BASE}/api/v1/cars`)).status).toBe(200);
      expect((await get(`${BASE}/readyz`)).status).toBe(200);
      const openapi = (await (await get(`${BASE}/api/v1/openapi.json`)).json()) as { servers: unknown };
      expect(openapi.servers).toEqual([{ url: '/cars-here/api/v1' }]);
    });
  },
);
