/** The car’s sheet: beside the age the condition, by estimate and by reading, and what would make it surer. */
import { describe, expect, it } from 'vitest';
import { barnOf, carIn, carOf, claim, date, partOf } from '../support/cars.ts';
import { filledIn, inside, tags, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const siteWithCar = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const id = (kind: string, position: string | null = null) => partOf(barn, carId, kind, position).id;
  const sheet = async (query = '') => (await site.get(`/cars/${carId}${query}`)).text();
  /** What the sheet says of one part. */
  const line = async (partId: string, query = ''): Promise<string> => {
    const articles = [...(await sheet(query)).matchAll(/<article class="part[^"]*">(.*?)<\/article>/gs)];
    const found = articles.map(([, inner = '']) => inner).find((inner) => inner.includes(`href="/parts/${partId}`));
    if (!found) throw new Error('The sheet leaves that part out');
    return found;
  };
  const read = async (partId: string, gauge: string, typed: string, more: Record<string, string> = {}) => {
    const answer = await site.post(`/cars/${carId}/readings`, { [`${partId}.${gauge}.typed`]: typed, ...more });
    expect(answer.status).toBe(303);
  };
  return { site, barn, carId, id, sheet, line, read };
};

const part = (html: string, name: string): string | undefined => {
  const found = new RegExp(`<p class="${name}">(.*?)</p>`, 's').exec(html);
  return found ? text(found[1] ?? '') : undefined;
};

describe('the line of a part on the car’s sheet', () => {
  it('says beside the age what is estimated of its condition, and what would make it surer', async () => {
    const { barn, carId, line } = siteWithCar();
    const fluid = date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
    const html = await line(fluid);
    expect(text(html)).toContain('Filled 1 December 2024: 23 months');
    expect(part(html, 'outlook')).toMatch(/^Estimated: 1\.5 to 4 % water/);
    expect(part(html, 'surer')).toMatch(/^Surer: .*\d+ minutes/);
    expect(part(html, 'read')).toBeUndefined();
  });

  it('tells what was read, judged, and that the estimate starts from it', async () => {
    const { barn, carId, line, read } = siteWithCar();
    const fluid = date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
    await read(fluid, 'boiling-point', '392', { [`${fluid}.boiling-point.unit`]: '°F', day: '2026-11-20' });
    const html = await line(fluid);
    expect(part(html, 'read')).toMatch(/392 °F \(200 °C\) on 20 November 2026.*good/);
    expect(part(html, 'outlook')).toMatch(/^Estimated from its reading: /);
    // Just read: nothing would make it surer today; some months on a new reading would.
    expect(part(html, 'surer')).toBeUndefined();
    expect(part(await line(fluid, '?on=2027-06-01'), 'surer')).toMatch(/^Surer: /);
  });

  it('of a part without a date still tells what was read, and asks for the date', async () => {
    const { id, line, read } = siteWithCar();
    await read(id('battery-flooded'), 'rest-voltage', '12.1');
    const html = await line(id('battery-flooded'));
    expect(text(html)).toContain('No date yet');
    expect(part(html, 'read')).toMatch(/12\.10 V.*act/);
    expect(part(html, 'outlook')).toMatch(/charged by now/);
  });

  it('of a part no model tells has no estimate', async () => {
    const { barn, carId, line } = siteWithCar();
    const wiring = date(barn, carId, 'wiring', claim('fitted', '2015'));
    const html = await line(wiring);
    expect(part(html, 'outlook')).toBeUndefined();
    expect(part(html, 'surer')).toBeUndefined();
  });

  it('a good reading does not clear an age that is past', async () => {
    const { barn, carId, line, read } = siteWithCar();
    const fluid = date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2022'));
    await read(fluid, 'boiling-point', '250');
    await read(fluid, 'water', '0.5');
    const html = await line(fluid);
    expect(inside(html, 'h3')[0]).toMatch(/past$/);
    expect(part(html, 'read')).toContain('good');
  });

  it('a bad reading brings a part in date among what needs a hand first, with its reading', async () => {
    const { barn, carId, sheet, line, read } = siteWithCar();
    const fluid = date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 November 2026'));
    expect(inside(await line(fluid), 'h3')[0]).toMatch(/in date$/);
    await read(fluid, 'boiling-point', '130');
    expect(inside(await line(fluid), 'h3')[0]).toMatch(/past$/);
    const first = /<ol class="first-list">(.*?)<\/ol>/s.exec(await sheet())?.[1] ?? '';
    expect(text(first)).toMatch(/130 °C.*act/);
    // The day before it was read nothing was known of it.
    expect(inside(await line(fluid, '?on=2026-11-24'), 'h3')[0]).toMatch(/in date$/);
  });

  it('an estimate that asks brings a part among what needs a hand first, with what it asks', async () => {
    const { id, sheet, read } = siteWithCar();
    await read(id('battery-flooded'), 'rest-voltage', '12.65', { day: '2026-11-25' });
    await read(id('wiring'), 'standing-drain', '30', { day: '2026-11-25' });
    const first = async (query: string) => text(inside(await sheet(query), 'ol')[0] ?? '');
    expect(await first('')).not.toContain('By estimate');
    expect(await first('?on=2027-02-25')).toMatch(/By estimate: charge it, or put it on a maintainer/);
  });

  it('reckons the battery with the drain measured at the wiring', async () => {
    const { id, line, read } = siteWithCar();
    const battery = id('battery-flooded');
    await read(battery, 'rest-voltage', '12.65', { day: '2026-10-01' });
    const low = async (): Promise<number> => Number(/(\d+) to \d+ % charged/.exec(await line(battery))?.[1]);
    const unmeasured = await low();
    await read(id('wiring'), 'standing-drain', '5', { day: '2026-10-01' });
    expect(await low()).toBeGreaterThan(unmeasured);
  });
});

describe('the car’s sheet', () => {
  it('leads to the round, and says that nobody said where the car stands', async () => {
    const { carId, sheet } = siteWithCar();
    const html = await sheet();
    const links = tags(html, 'a').map(({ href }) => href);
    expect(links).toContain(`/cars/${carId}/readings`);
    expect(links).toContain('/places/new');
    expect(text(/<section class="side" aria-labelledby="place">(.*?)<\/section>/s.exec(html)?.[1] ?? '')).toMatch(
      /frost can’t be judged/,
    );
  });

  it('tells frost only where a place is told, by its cold', async () => {
    const { site, barn, carId, id, sheet, line, read } = siteWithCar();
    const coolant = id('coolant-iat');
    await read(coolant, 'strength', '40');
    expect(part(await line(coolant), 'read')).toContain('not judged');
    await site.post('/places', {
      name: 'Yard',
      shelter: 'open',
      air: 'inland',
      winterLow: '-30',
      summerHigh: '28',
      hemisphere: 'north',
      degrees: '°C',
    });
    const form = filledIn(await sheet(), `/cars/${carId}/place`);
    expect(form).toEqual({ place: '' });
    const placeId = /<option value="([^"]{36})">Yard/.exec(await sheet())?.[1] ?? '';
    expect((await site.post(`/cars/${carId}/place`, { place: placeId })).status).toBe(303);
    expect(carOf(barn, carId).facts.place?.winterLow).toBe(-30);
    expect(part(await line(coolant), 'read')).toContain('act');
    expect(part(await line(coolant), 'outlook')).toContain('−30 °C');
  });

  it('never says that a part is in order because of a reading', async () => {
    const { id, sheet, read } = siteWithCar();
    await read(id('battery-flooded'), 'rest-voltage', '12.7');
    expect(text(await sheet())).not.toMatch(/\b(safe|ok|fine|in order)\b/i);
  });
});
