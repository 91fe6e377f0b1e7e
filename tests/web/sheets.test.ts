import { describe, expect, it } from 'vitest';
import { closeLayUp } from '../../src/acts/lay-up.ts';
import { setDetails } from '../../src/store/readings.ts';
import { carOf, must } from '../support/cars.ts';
import { inside, tags, text } from '../support/html.ts';
import { decoded } from '../support/qr.ts';
import { openStay, type SheetStay } from '../support/sheets.ts';
import { openSite } from '../support/site.ts';

const SHEETS = ['plan', 'windshield', 'monthly', 'wake-up'];
const PARKED = '2026-11-01';
const LATER = 'on=2027-01-15';

/** Titles of the steps of a sheet by what their boxes say. */
const boxes = (html: string, state: string): string[] =>
  [...html.matchAll(/<li class="step (\w+)">.*?<p class="title">(.*?)<\/p>/gs)]
    .filter(([, found]) => found === state)
    .map(([, , title]) => text(title ?? ''));

const lines = (html: string, group: 'facts' | 'open'): string[] =>
  [
    ...(new RegExp(`<section class="${group}">(.*?)</section>`, 's').exec(html)?.[1] ?? '').matchAll(/<li.*?<\/li>/gs),
  ].map(([line]) => text(line));

const answer = (stay: SheetStay, kind: string, details: Record<string, string | number>): void => {
  for (const part of carOf(stay.barn, stay.carId).parts)
    if (part.kind === kind)
      setDetails(stay.site.store, stay.site.collectionId, part.id, { ...part.details, ...details });
};

describe.each(SHEETS)('the %s sheet', (sheet) => {
  it('has one heading, a language, its car, its collection and its day, and no inline style', async () => {
    const html = await openStay().get(sheet, LATER);
    expect(html).toMatch(/^<!DOCTYPE html><html lang="en">/);
    expect(inside(html, 'h1')).toHaveLength(1);
    expect(inside(html, 'h1')[0]).toContain('Merle Tourer');
    expect(text(html)).toContain('My cars. Printed as on 15 January 2027.');
    expect(html).not.toMatch(/<style|\sstyle="|<script/);
  });

  it('carries a code that a camera reads as the address below it', async () => {
    const site = openSite({ baseUrl: 'https://cars.example.org/barn' });
    const stay = openStay({ site, base: '/barn' });
    const html = await stay.get(sheet);
    const page = { monthly: '/round', 'wake-up': '/wake-up' }[sheet] ?? '';
    const address = `https://cars.example.org/barn/lay-ups/${stay.id}${page}`;
    expect(decoded(html)).toBe(address);
    expect(inside(html, 'p')).toContain(address);
    expect(text(html)).not.toContain('on this machine only');
  });

  it('says so where its code works on this machine only', async () => {
    const stay = openStay();
    const html = await stay.get(sheet);
    expect(decoded(html)).toMatch(`http://localhost:3000/lay-ups/${stay.id}`);
    expect(text(html)).toContain('This code works on this machine only.');
  });

  it('leads to a page of the site', async () => {
    const stay = openStay();
    const address = new URL(decoded(await stay.get(sheet)) ?? '');
    expect((await stay.site.get(address.pathname)).status).toBe(200);
  });

  it('is made for A4, or for US Letter where asked', async () => {
    const stay = openStay();
    const styles = async (more: string): Promise<string[]> =>
      tags(await stay.get(sheet, more), 'link').map(({ href }) => href ?? '');
    expect(await styles('')).toContain('/static/sheet-a4.css');
    expect(await styles('paper=a4')).toContain('/static/sheet-a4.css');
    expect(await styles('paper=letter')).toContain('/static/sheet-letter.css');
    expect(await styles('paper=letter')).not.toContain('/static/sheet-a4.css');
    expect((await stay.site.get(stay.path(sheet, 'paper=a5'))).status).toBe(400);
  });

  it('has a bar that leads to the others, to the other paper and back, and keeps the day', async () => {
    const stay = openStay();
    const html = await stay.get(sheet, `paper=letter&${LATER}`);
    const links = tags(html, 'a').map(({ href }) => href ?? '');
    for (const name of SHEETS) expect(links).toContain(stay.path(name, `paper=letter&${LATER}`));
    expect(links).toContain(stay.path(sheet, `paper=a4&${LATER}`));
    expect(links).toContain(`/lay-ups/${stay.id}?${LATER}`);
  });

  it('escapes what people typed', async () => {
    const stay = openStay({ name: 'The <Tourer>', layUp: { phone: '<b>555', note: '<i>keys', returnOn: '' } });
    stay.tick('park', PARKED, { note: '<u>dry' });
    stay.round('2026-12-01', { mice: 'none' }, [], '<s>hatch');
    const html = await stay.get(sheet, LATER);
    expect(html).toContain('The &lt;Tourer&gt;');
    expect(html).not.toMatch(/<Tourer>|<b>555|<i>keys|<u>dry|<s>hatch/);
  });

  it('is not there for a lay-up nobody made', async () => {
    const { site } = openStay();
    expect((await site.get(`/lay-ups/01900000-0000-7000-8000-000000000000/sheets/${sheet}`)).status).toBe(404);
  });
});

it('there is no other sheet', async () => {
  const stay = openStay();
  const { status } = await stay.site.get(stay.path('poster'));
  expect(status).toBe(404);
});

describe('the lay-up plan on paper', () => {
  it('fills what is done, strikes what is left out, and says when and who', async () => {
    const stay = openStay();
    stay.tick('park', PARKED, { note: 'left bay' });
    stay.skip('wax', PARKED, 'polished in August');
    const html = await stay.get('plan', LATER);
    expect(boxes(html, 'done').join()).toMatch(/^\d+ Park it in its place/);
    expect(boxes(html, 'skipped').join()).toMatch(/^\d+ Wax paint and chrome/);
    expect(boxes(html, 'open').length).toBe(stay.here('2027-01-15').view.layUp.steps.length - 2);
    expect(text(html)).toContain('Done 1 November 2026, Ada. left bay');
    expect(text(html)).toContain('Left out 1 November 2026, Ada. polished in August');
  });

  it('leaves a line where a figure or a day on paper is not told, and prints what is', async () => {
    const stay = openStay({
      layUp: { papers: { storageFrom: '', roadUntil: '2026-11-05', noticeFrom: '', renewsOn: '', rules: '' } },
    });
    const blank = /Cold pressure, each tire: <span class="blank/;
    expect(await stay.get('plan')).toMatch(blank);
    answer(stay, 'tires-road', { placard: 2, sidewall: 3.5 });
    const html = await stay.get('plan');
    expect(html).not.toMatch(blank);
    expect(text(html)).toMatch(/Cold pressure, each tire: 2\.7 to 3\.0 bar \(39 to 44 psi\)/);
    expect(html).toMatch(/Cover while it stands begins<\/dt><dd><span class="blank/);
    expect(html).toMatch(/Cover for the road ends<\/dt><dd>5 November 2026/);
    expect(html).toMatch(/Rules of the place<\/dt><dd><span class="blank/);
  });

  it('carries each caution once, and defers to the handbook', async () => {
    const said = inside(
      /<section class="cautions">.*?<\/section>/s.exec(await openStay().get('plan'))?.[0] ?? '',
      'li',
    );
    expect(said.length).toBeGreaterThan(5);
    expect(new Set(said).size).toBe(said.length);
    expect(said.at(-1)).toContain('The vehicle’s handbook and the law of the place come first.');
  });

  it('says what is said of many parts once, and every part by its whole name', async () => {
    const html = text(await openStay().get('wake-up', LATER));
    expect(html).toMatch(/Unproven, no date clears them: .*Wheel nuts/);
    expect(html).toMatch(/· Soft top: fabric, stitching, plastic window ·/);
  });
});

describe('the windshield sheet', () => {
  it('claims nothing that is not ticked', async () => {
    const html = await openStay().get('windshield', LATER);
    expect(text(html)).toContain('DO NOT START');
    expect(lines(html, 'facts')).toEqual([]);
    expect(lines(html, 'open').join()).toMatch(
      /Tailpipe and intake blocked.*Parking brake off.*Battery on a maintainer/,
    );
    expect(text(html)).not.toMatch(/BLOCKED|OFF|MAINTAINER|TREATED|OILED/);
  });

  it.each([
    ['pipes-blocked', 'Tailpipe and intake BLOCKED'],
    ['chocks', 'Parking brake OFF'],
    ['in-gear', 'Left IN GEAR'],
    ['battery-maintainer', 'Battery ON A MAINTAINER'],
    ['fuel-fill', 'Fuel TREATED On 1 November 2026'],
    ['soft-top', 'Soft top UP'],
  ])('claims %s once it is ticked, from that day on', async (step, words) => {
    const stay = openStay();
    stay.tick(step, PARKED);
    expect(lines(await stay.get('windshield', 'on=2026-10-31'), 'facts')).toEqual([]);
    const html = await stay.get('windshield', LATER);
    expect(lines(html, 'facts')).toHaveLength(1);
    expect(lines(html, 'facts')[0]).toContain(words);
    expect(lines(html, 'open').join().toLowerCase()).not.toContain(words.toLowerCase());
  });

  it.each([
    ['cylinder-oil', 'Bores OILED Plugs out, turn it by hand first'],
    ['belts-slack', 'Belts SLACK'],
    ['gas-valve', 'Gas valve CLOSED'],
    ['drain-tank', 'Tank and fuel lines DRAINED'],
  ])('tells %s of a long stay', async (step, words) => {
    const stay = openStay({ more: ['lpg-tank'], layUp: { returnOn: '2029-01-01' } });
    stay.tick(step, PARKED);
    expect(lines(await stay.get('windshield', LATER), 'facts').join()).toContain(words);
  });

  it('names what was left out, and claims nothing of it', async () => {
    const stay = openStay();
    stay.skip('pipes-blocked', PARKED, 'no plugs');
    const html = await stay.get('windshield', LATER);
    expect(text(html)).toContain('Left out this time: tailpipe and intake blocked.');
    expect(lines(html, 'open').join()).not.toContain('Tailpipe');
  });

  it('takes back what the wake-up undid', async () => {
    const stay = openStay();
    stay.tick('pipes-blocked', PARKED);
    stay.tick('battery-maintainer', PARKED);
    stay.tick('unblock', '2027-03-29', { plan: 'wake-up' });
    const html = await stay.get('windshield', 'on=2027-03-30');
    expect(lines(html, 'facts').join()).not.toContain('BLOCKED');
    expect(lines(html, 'facts').join()).toContain('Battery ON A MAINTAINER');
    expect(text(html)).toContain('Undone again for the wake-up: tailpipe and intake blocked.');
  });

  it('prints pressures as they were read, or as planned, or a line to write on', async () => {
    const stay = openStay();
    expect(lines(await stay.get('windshield'), 'open').join()).toContain(
      'Tires Storage pressure: let down before driving. Set to',
    );
    answer(stay, 'tires-road', { placard: 2, sidewall: 3.5 });
    expect(lines(await stay.get('windshield'), 'open').join()).toContain('Tires 2.7 to 3.0 bar 39 to 44 psi.');
    stay.tick('pressure', PARKED, { read: { 'tires-road.cold-pressure': '2.85' } });
    expect(lines(await stay.get('windshield', LATER), 'facts').join()).toMatch(
      /Tires 2\.[89] bar 41 psi\. Storage pressure/,
    );
  });

  it('tells the frost of the coolant only where it was measured, and never colder than it was', async () => {
    const stay = openStay();
    expect(text(await stay.get('windshield', LATER))).not.toContain('Coolant');
    stay.tick('coolant-strength', '2026-10-20', { read: { 'coolant-iat.freeze-point': '-30' } });
    expect(text(await stay.get('windshield', 'on=2026-10-19'))).not.toContain('Coolant');
    const html = await stay.get('windshield', LATER);
    const told = /Coolant freezes at −(\d+) °C measured on 20 October 2026; nights there fall to −12 °C/.exec(
      text(html),
    );
    expect(Number(told?.[1])).toBeGreaterThan(20);
    expect(Number(told?.[1])).toBeLessThanOrEqual(30);
    // A reading is a fact, and nothing to tick.
    for (const group of ['facts', 'open'] as const) expect(lines(html, group).join()).not.toContain('Coolant');
    expect(html).toMatch(/<p class="measured">\s*Coolant freezes at <b>/);
  });

  it('says whom to call, or leaves a line for the number', async () => {
    const told = await openStay({ layUp: { phone: '+1 555 0134' } }).get('windshield');
    // As it was typed: a name may be in it already.
    expect(text(told)).toContain('Call +1 555 0134');
    expect(text(told)).not.toContain('Ada');
    const named = await openStay({ layUp: { phone: 'Bram, 0170 555' } }).get('windshield');
    expect(text(named)).toContain('Call Bram, 0170 555');
    const blank = await openStay().get('windshield');
    expect(blank).toMatch(/Call <b>Ada<\/b> <span class="blank rest">/);
  });

  it('says when it was parked and comes back, with a line where that is open', async () => {
    expect(text(await openStay().get('windshield'))).toMatch(/Parked 1 November 2026 Back 1 April 2027/);
    expect(await openStay({ layUp: { returnOn: '' } }).get('windshield')).toMatch(/Back <span class="blank/);
  });
});

describe('a lay-up that is closed', () => {
  it('claims nothing any more on its windshield sheet, and says on the others when it was closed', async () => {
    const stay = openStay();
    stay.tick('pipes-blocked', PARKED);
    const acting = { ...stay.barn.acting, today: '2027-04-03' as const };
    must(
      closeLayUp(stay.site.store, acting, stay.here('2027-04-03'), {
        day: '2027-04-03',
        how: 'back',
        km: null,
        pattern: false,
      }),
    );
    const html = text(await stay.get('windshield', 'on=2027-04-04'));
    expect(html).toMatch(/LAY-UP OVER.*This lay-up was closed on 3 April 2027\. Take the sheet down\./);
    expect(html).not.toMatch(/DO NOT START|BLOCKED/);
    for (const sheet of ['plan', 'monthly', 'wake-up'])
      expect(text(await stay.get(sheet, 'on=2027-04-04')), sheet).toContain('This lay-up was closed on 3 April 2027.');
    expect(text(await stay.get('windshield', LATER))).toMatch(/DO NOT START.*BLOCKED/);
  });
});

describe('the monthly card', () => {
  const rows = (html: string): string[] => [...html.matchAll(/<tbody.*?<\/tbody>/gs)].map(([row]) => text(row));

  it('has a row for each round of the stay, before it is parked and after', async () => {
    const stay = openStay();
    for (const day of ['on=2026-10-01', LATER]) expect(rows(await stay.get('monthly', day))).toHaveLength(4);
    expect(rows(await stay.get('monthly'))[0]).toMatch(/^1 1 December 2026/);
  });

  it('has twelve rounds to come for an open end', async () => {
    const stay = openStay({ layUp: { returnOn: '' } });
    expect(rows(await stay.get('monthly', 'on=2026-11-02'))).toHaveLength(12);
    const later = rows(await stay.get('monthly', 'on=2027-01-15'));
    expect(later).toHaveLength(13);
    expect(later[0]).toContain('missed');
    expect(later.at(-1)).toMatch(/^13 /);
  });

  it('prints what a round found, and calls a missed one missed', async () => {
    const stay = openStay();
    stay.round(
      '2026-12-02',
      { mice: 'caught', drips: 'none', smell: 'must' },
      [
        ['battery-flooded', 'rest-voltage', '12.71'],
        ['tires-road', 'cold-pressure', '2.75'],
        ['desiccant', 'humidity', '52'],
      ],
      'Hatch open.',
    );
    const [first, second, third] = rows(await stay.get('monthly', 'on=2027-01-28'));
    expect(first).toContain('2 December 2026 12.71 V 2.75 bar 2.75 bar 2.75 bar 2.75 bar 52 % One in a trap Dry');
    expect(first).toContain('Ada Smell, inside and around it: Musty. Hatch open.');
    expect(second).toContain('missed');
    expect(third).toBe('3 1 February 2027');
  });

  it('asks for the lamp only on a maintainer, and for rolling only on its wheels', async () => {
    const heads = async (stay: SheetStay): Promise<string> => inside(await stay.get('monthly'), 'th').join();
    expect(await heads(openStay())).toMatch(/Lamp.*Rolled/);
    expect(await heads(openStay({ layUp: { circumstances: ['rented-bay'] } }))).not.toContain('Lamp');
    expect(await heads(openStay({ layUp: { circumstances: ['lift'] } }))).not.toContain('Rolled');
    expect(await heads(openStay({ layUp: { circumstances: ['wheels-off'] } }))).not.toContain('FL');
  });

  it('says at which figures to act, and what some months ask', async () => {
    const html = text(await openStay({ layUp: { returnOn: '2028-01-01' } }).get('monthly'));
    expect(html).toContain('Battery at rest under 12.40 V, a 6-volt one under 6.20 V: charge it.');
    expect(html).toContain('Humidity over 65 %');
    expect(html).toContain('lost more than 0.2 bar (3 psi)');
    expect(html).toContain('No short starts');
    expect(html).toMatch(/Month 3, 6, 9, 12: Desiccant\./);
    expect(html).toMatch(/Month 6, 12: .*Oil on the stick\./);
    expect(html).toMatch(/Month 9: It has stood nine months\. .*Month 12: It has stood a year\./);
    expect(text(await openStay().get('monthly'))).toMatch(/Month 3: Desiccant\./);
  });

  it('leaves rows to write on where a stay has no round', async () => {
    expect(rows(await openStay({ layUp: { returnOn: '2026-11-20' } }).get('monthly'))).toEqual(['', '', '']);
  });
});

describe('the wake-up plan on paper', () => {
  it('marks what was left undone, and not what was done', async () => {
    const stay = openStay();
    const marked = async (): Promise<string[]> =>
      boxes(await stay.get('wake-up', LATER), 'open').filter((title) => title.includes('Left undone'));
    expect((await marked()).join()).toMatch(/The parking brake stood on/);
    stay.tick('chocks', PARKED);
    expect((await marked()).join()).not.toMatch(/The parking brake stood on/);
    const undone = /<section class="undone">.*?<\/section>/s.exec(await stay.get('wake-up', LATER))?.[0] ?? '';
    expect(inside(undone, 'li')).toContain('Change the brake fluid');
    expect(inside(undone, 'li').join()).not.toContain('Chocks');
  });

  it('before the parking day says that it counts all as done', async () => {
    const html = await openStay().get('wake-up', 'on=2026-10-01');
    expect(text(html)).toContain('made as if all of the lay-up were done');
    expect(html).not.toContain('class="undone"');
  });

  it('ends with the road check and the first drive, never with a plain yes', async () => {
    const html = text(await openStay().get('wake-up', LATER));
    // While it stands it is of today; before it is parked, of the day it comes back.
    expect(html).toMatch(
      /Road check, by what is recorded, for 15 January 2027 Not on the road until these are put right/,
    );
    expect(text(await openStay().get('wake-up', 'on=2026-10-01'))).toContain(
      'Road check, by what is recorded, for 1 April 2027',
    );
    expect(html).toMatch(
      /First drive: daylight, dry, under 50 km\/h \(30 mph\), under 10 km \(6 miles\) Checked by\s+on\s*$/,
    );
  });
});
