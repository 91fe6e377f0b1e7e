import { describe, expect, it } from 'vitest';
import { CAUTIONS, DEFERS } from '../../src/catalogue/cautions.ts';
import { LEAK_PLACES } from '../../src/revival/leaks.ts';
import { SURVEY } from '../../src/revival/looks/survey.ts';
import { RUNS, SENSES } from '../../src/revival/runs.ts';
import { STAGE_KEYS, STAGES } from '../../src/revival/stages.ts';
import { STEPS } from '../../src/revival/steps.ts';
import { withoutSums } from '../../src/web/sheets/car/without-sums.ts';
import { barnOf, carIn, claim, date, partOf } from '../support/cars.ts';
import { inside, tags, text } from '../support/html.ts';
import { decoded } from '../support/qr.ts';
import { openSleeper, type Sleeper } from '../support/revivals.ts';
import { openSite } from '../support/site.ts';

const SHEETS = ['survey', 'verdict', 'stages', 'first-start', 'road-tests'];
const LATER = 'on=2027-01-15';
const NO_ID = '01900000-0000-7000-8000-000000000000';

/** The sheet without the cautions, which every car has in the same words. */
const body = (html: string): string =>
  text(html.replace(/<nav.*?<\/nav>/s, '').replace(/<section class="cautions">.*?<\/section>/gs, ''));

const times = (html: string, words: string): number => text(html).split(words).length - 1;

/** The part of a sheet between a heading and the next one. */
const under = (html: string, heading: string): string =>
  new RegExp(`<h2[^>]*>${heading}</h2>(.*?)(?=<h2|</main>)`, 's').exec(html)?.[1] ?? '';

const MONEY = /\p{Sc}|\bUSD\b|\d+ (?:dollars|euros)/u;

describe.each(SHEETS)('the sheet %s', (sheet) => {
  it('has one heading, its car, its collection and its day, and no inline style', async () => {
    const html = await (await openSleeper()).get(sheet, LATER);
    expect(html).toMatch(/^<!DOCTYPE html><html lang="en">/);
    expect(inside(html, 'h1')).toHaveLength(1);
    expect(inside(html, 'h1')[0]).toContain('Quillon Sedan');
    expect(text(html)).toContain('My cars. Printed as on 15 January 2027.');
    expect(html).not.toMatch(/<style|\sstyle="|<script/);
  });

  it('carries a code to its page, which answers', async () => {
    const site = openSite({ baseUrl: 'https://cars.example.org/barn' });
    const sleeper = await openSleeper({ site, base: '/barn' });
    const html = await sleeper.get(sheet);
    const page = { survey: '/survey', verdict: '/verdict', stages: '', 'first-start': '/stages/first-start' }[sheet];
    const address = decoded(html) ?? '';
    expect(address).toBe(`https://cars.example.org/barn/revivals/${sleeper.id}${page ?? '/stages/road'}`);
    expect((await site.get(new URL(address).pathname)).status).toBe(200);
  });

  it('has its cautions, none of them twice in one place, and says to whom it defers', async () => {
    const html = await (await openSleeper()).get(sheet);
    expect(text(html)).toContain(DEFERS);
    const boxes = [...html.matchAll(/<section class="cautions">(.*?)<\/section>/gs)].map(([, box]) => box ?? '');
    expect(boxes.length).toBeGreaterThan(0);
    for (const box of boxes) {
      const lines = inside(box, 'li').map((line) => line.replace(/^\d+ /, ''));
      expect(new Set(lines).size).toBe(lines.length);
      expect(lines.at(-1)).toBe(DEFERS);
    }
  });

  it('has lines to write on', async () => {
    expect((await (await openSleeper()).get(sheet)).match(/class="blank/g)?.length).toBeGreaterThan(2);
  });

  it('is made for A4, or for US Letter where asked, and for no other', async () => {
    const sleeper = await openSleeper();
    const styles = async (more: string) => tags(await sleeper.get(sheet, more), 'link').map(({ href }) => href);
    expect(await styles('')).toContain('/static/sheet-a4.css');
    expect(await styles('paper=letter')).toContain('/static/sheet-letter.css');
    expect(await styles('paper=letter')).not.toContain('/static/sheet-a4.css');
    expect((await sleeper.site.get(sleeper.path(sheet, 'paper=a5'))).status).toBe(400);
  });

  it('has a bar to the others, the other paper and back, which keeps the day', async () => {
    const sleeper = await openSleeper();
    const links = tags(await sleeper.get(sheet, `paper=letter&${LATER}`), 'a').map(({ href }) => href);
    for (const other of SHEETS) expect(links).toContain(sleeper.path(other, `paper=letter&${LATER}`));
    expect(links).toContain(sleeper.path(sheet, `paper=a4&${LATER}`));
    for (const link of links) expect((await sleeper.site.get(link ?? '')).status, link).toBe(200);
  });

  it('escapes what people typed', async () => {
    const sleeper = await openSleeper({ name: 'The <Sedan>', intake: { whyWords: '<b>pump' } });
    await sleeper.tick('story', { note: '<u>ran' });
    const html = await sleeper.get(sheet, LATER);
    expect(html).toContain('The &lt;Sedan&gt;');
    expect(html).not.toMatch(/<Sedan>|<b>pump|<u>ran/);
  });

  it('is not there for a return nobody began', async () => {
    const { site } = await openSleeper();
    expect((await site.get(`/revivals/${NO_ID}/sheets/${sheet}`)).status).toBe(404);
  });

  it('says that the return has ended, and how', async () => {
    const sleeper = await openSleeper();
    await sleeper.post('/end', { how: 'given up' });
    expect(text(await sleeper.get(sheet))).toContain('This return ended on 25 November 2026: given up.');
  });
});

it('there is no other sheet', async () => {
  const sleeper = await openSleeper();
  expect((await sleeper.site.get(sleeper.path('poster'))).status).toBe(404);
});

it.each(['survey', 'verdict', 'stages'])(
  'the sheet %s names a price or asks for one, and can be had without',
  async (sheet) => {
    const sleeper = await openSleeper({ intake: { whyWords: 'They asked 900 USD for the pump' } });
    await sleeper.tick('transport', { cost: '280', note: 'Paid $280 to the neighbor' });
    await sleeper.passInWriting('papers', 'He keeps the title until he has his 1,500 dollars');
    const priced = await sleeper.get(sheet);
    expect(text(priced)).toMatch(sheet === 'survey' ? /Most it may cost/ : /\$[\d,]+ to \$[\d,]+/);
    const html = await sleeper.get(sheet, 'prices=no');
    expect(text(html)).not.toMatch(MONEY);
    expect(text(html)).not.toMatch(/may cost/);
    const links = tags(html, 'a').map(({ href }) => href);
    expect(links).toContain(sleeper.path(sheet, 'paper=a4'));
    expect(tags(priced, 'a').map(({ href }) => href)).toContain(sleeper.path(sheet, 'paper=a4&prices=no'));
    // Whoever goes on to another sheet from there has it without prices, too.
    expect(links).toContain(sleeper.path('road-tests', 'paper=a4&prices=no'));
  },
);

it.each([
  ['Paid $280 to him', 'Paid … to him'],
  ['€ 1.200, then 40 EUR', '…, then …'],
  ['about 3,000 dollars in 1994', 'about … in 1994'],
  ['bolt of 12 mm, 3 turns', 'bolt of 12 mm, 3 turns'],
])('sums are struck out of what was typed: %s', (typed, told) => expect(withoutSums(typed, 'EUR')).toBe(told));

describe('the survey card', () => {
  it('has a box for every answer to every look, also of one that may be bought', async () => {
    const html = await (await openSleeper({ intake: { ours: 'looking' } })).get('survey');
    for (const { name, answers } of Object.values(SURVEY)) {
      expect(inside(html, 'b')).toContain(name);
      for (const { words } of Object.values(answers)) expect(inside(html, 'span')).toContain(words);
    }
  });

  it('asks nothing a car does not have', async () => {
    const html = await (await openSleeper({ start: 'rear-engine-air-cooled' })).get('survey');
    expect(body(html)).not.toContain(SURVEY['coolant-seen'].name);
    expect(body(html)).toContain(SURVEY['brake-reservoir'].name);
  });

  it('has five tires to read, each by its place, and says what not to do', async () => {
    const said = body(await (await openSleeper()).get('survey'));
    for (const tire of ['front left', 'front right', 'rear left', 'rear right'])
      expect(said).toContain(`Road tire, ${tire}`);
    expect(said).toMatch(/Spare tire/);
    expect(said).toContain('Start nothing, charge nothing, jump nothing, clean nothing.');
    for (const line of ['Odometer', 'Last ran', 'Why parked', 'Who says so', 'Most it may cost', 'Notes'])
      expect(said).toContain(line);
  });
});

describe('the verdict on paper', () => {
  it('begins with what stops a return, whenever it was seen', async () => {
    const looks = { 'fuel-smell': 'varnish', rodents: 'nest', title: 'unclear' };
    const html = await (await openSleeper({ looks })).get('verdict');
    const grave = inside(under(html, 'Grave, as seen'), 'li');
    expect(grave).toHaveLength(3);
    expect(grave[0]).toMatch(/^Papers: /);
    expect(body(html)).toContain('Stop. The papers are missing');
  });

  it('leaves no step of safety to a number where the list is longer than the page', async () => {
    const sleeper = await openSleeper({
      start: 'roadster-airbags',
      intake: { lastRan: 'unknown', stood: ['flooded', 'coast'] },
    });
    const page = text(await (await sleeper.site.get(`/revivals/${sleeper.id}/verdict`)).text());
    const html = await sleeper.get('verdict');
    const lines = inside(html, 'li');
    expect(lines.some((line) => /^and \d+ more, see the page$/.test(line))).toBe(true);
    const safety = STEPS.filter(({ safety }) => safety).flatMap(({ ways }) => ways.map(({ title }) => title));
    const renewed = inside(under(html, 'Renewed or taken apart, whatever the odometer says'), 'li').join('\n');
    const named = safety.filter((title) => page.includes(`${title} (`));
    expect(named.length).toBeGreaterThan(8);
    for (const title of named) expect(renewed).toContain(`${title} (safety)`);
  });

  it('says what nobody looked at, and never clears it', async () => {
    const said = body(await (await openSleeper({ looks: { rodents: 'none' } })).get('verdict'));
    expect(said).toContain('Nothing grave in what was answered; what nobody looked at is below.');
    expect(said).toMatch(/Not looked yet: papers; .*has anybody tried to start it\./);
    expect(said).toMatch(/No date clears: Road tire; .* and \d+ more\./);
    expect(said).toContain('never a quote');
    expect(said).not.toMatch(/\bfine\b|in order|\bsafe\b/i);
  });
});

describe('the stage sheets', () => {
  it('have every stage with its gate as a question to sign, or the one that is asked for', async () => {
    const sleeper = await openSleeper();
    const html = await sleeper.get('stages');
    for (const key of STAGE_KEYS) expect(text(html)).toContain(STAGES[key].gate);
    expect(times(html, 'stop and ask')).toBe(STAGE_KEYS.length);
    const fuel = await sleeper.get('stages', 'stage=fuel');
    expect(times(fuel, 'stop and ask')).toBe(1);
    expect(text(fuel)).toContain(STAGES.fuel.gate);
    expect(times(fuel, DEFERS)).toBe(1);
    expect(decoded(fuel)).toMatch(/\/stages\/fuel$/);
    // Without prices it is still that stage.
    expect(tags(fuel, 'a').map(({ href }) => href)).toContain(sleeper.path('stages', 'paper=a4&stage=fuel&prices=no'));
    expect((await sleeper.site.get(sleeper.path('stages', 'stage=paint'))).status).toBe(404);
  });

  it('tell of each step what it is, why, what to expect, how to tell, with what, and what a failure means', async () => {
    const html = await (await openSleeper()).get('stages', 'stage=fuel');
    const tank =
      /<div class="work">(?:(?!<div class="work").)*?Tank (?:(?!<div class="work").)*/s.exec(html)?.[0] ?? '';
    const said = text(tank);
    expect(said).toMatch(/^Tank .*(Renew|Strip|Look)\b.* · safety/);
    expect(said).toMatch(/Because /);
    expect(said).toMatch(/Expect: .* \((seldom|sometimes|often|nearly always)\)/);
    for (const line of [
      'Tell by:',
      'If it fails:',
      'Tools:',
      'Supplies:',
      'Found',
      'Measured',
      'Parts',
      'Who',
      'Hours',
    ])
      expect(said).toContain(line);
    // What the step asks can be ticked beside it.
    expect(said).toContain('Rust, scale or a tarry floor');
  });

  it('number the cautions of a stage, and each step names its own', async () => {
    const html = await (await openSleeper()).get('stages', 'stage=fuel');
    const box = /<section class="cautions">(.*?)<\/section>/s.exec(html)?.[1] ?? '';
    const numbered = new Map(
      inside(box, 'li').flatMap((line): [string, string][] => {
        const found = /^(\d+) (.*)$/.exec(line);
        return found ? [[found[1] ?? '', found[2] ?? '']] : [];
      }),
    );
    const works = html.split('<div class="work">').slice(1);
    expect(works.length).toBeGreaterThan(3);
    for (const work of works) {
      const step = STEPS.find(({ ways }) => ways.some(({ title }) => text(work).startsWith(title)));
      const named = /Cautions? ([\d, ]+) above/.exec(text(work))?.[1]?.split(', ') ?? [];
      expect(named.map((number) => numbered.get(number)).toSorted(), step?.key).toEqual(
        step?.cautions.map((key) => CAUTIONS[key]).toSorted(),
      );
    }
  });

  it('fill what is done with its day and who, and leave no lines there', async () => {
    const sleeper = await openSleeper();
    await sleeper.tick('story', { by: 'Nell', note: 'Water pump noisy' });
    await sleeper.post('/steps/title/leave-out', { reason: 'The county has it' });
    const html = await sleeper.get('stages', 'stage=papers');
    const settled = html.split('<div class="work settled">').slice(1);
    expect(settled).toHaveLength(2);
    expect(text(settled.join(''))).toMatch(/Done on 25 November 2026 by Nell.*: Water pump noisy — it was at hand\./);
    expect(text(settled[0] ?? '')).toMatch(/Left out on 25 November 2026 by Ada: The county has it\./);
    for (const one of settled) expect(one.split('<div class="work')[0]).not.toContain('Measured');
  });

  it('say plainly what was passed in writing, and what the engine or the road waits for', async () => {
    const sleeper = await openSleeper();
    await sleeper.passInWriting('papers', 'He is my uncle');
    await sleeper.passInWriting('evidence', 'There is a film of it');
    await sleeper.passInWriting('structure', 'It only has to move across the yard');
    const passed = body(await sleeper.get('stages', 'stage=structure'));
    expect(passed).toMatch(/Passed on 25 November 2026 by Ada: It only has to move across the yard\./);
    expect(passed).toMatch(
      /In writing only: it clears nothing for the road\. What it lacked: .*Structure, probed: not answered yet/,
    );
    const start = body(await sleeper.get('stages', 'stage=first-start'));
    expect(start).toMatch(/Not before these gates are passed: Make safe · Rodents and wiring/);
  });
});

describe('the first-start card', () => {
  const card = async (start: string): Promise<string> => (await openSleeper({ start })).get('first-start');

  it('has ten points, the nevers, times to write, and the cautions of a running engine', async () => {
    const html = await card('sedan-drums-all-round');
    expect(inside(/<ol class="big-points">.*?<\/ol>/s.exec(html)?.[0] ?? '', 'li')).toHaveLength(10);
    const said = text(html);
    expect(said).toMatch(/Never: starting fluid as a crutch · a jump lead on a frozen, cracked or swollen battery/);
    for (const line of ['Oil pressure after, seconds', 'Knock', 'Leaks', 'Smoke', 'Steam'])
      expect(said).toContain(line);
    for (const key of ['carbon-monoxide', 'fuel-vapor', 'rolling', 'fan-and-belts'] as const)
      expect(said).toContain(CAUTIONS[key]);
    expect(said).toContain('Coil disconnected');
  });

  it('speaks to a diesel in its own words: nothing of coil or spark', async () => {
    const said = body(await card('diesel-wagon'));
    expect(said).not.toMatch(/coil|spark|magneto/i);
    expect(said).toMatch(/Fuel shut off: turned in bursts/);
    expect(said).toMatch(/Glow, then start.*A plate lies ready to shut its intake/);
    expect(said).toMatch(/Not yet: .*Oil before the start · Fuel · Injectors and charge/);
  });

  it('asks an air-cooled one for no coolant and no steam', async () => {
    const html = await card('rear-engine-air-cooled');
    expect(text(html)).not.toMatch(/coolant|steam/i);
    expect(body(html)).toContain('smell of hot dust');
  });

  it('warns of a battery only where there is one', async () => {
    const said = text(await card('tourer-rod-brakes'));
    expect(said).not.toContain('jump lead');
    expect(said).toContain('Magneto grounded');
    expect(said).toContain('tap open ten minutes');
  });

  it('tells what is recorded of the car, and where nobody has looked', async () => {
    const sleeper = await openSleeper({ looks: { 'fuel-smell': 'varnish' } });
    await sleeper.tick('tank', { 'look.tank-inside': 'rust' });
    const facts = text(under(await sleeper.get('first-start'), 'This car, by what is recorded'));
    expect(facts).toContain('Fuel: Gasoline (petrol), carburetor'.replace('Fuel: ', 'Fuel '));
    expect(facts).toContain('Smell of the fuel like varnish or paint');
    expect(facts).toContain('Tank, inside rust, scale or a tarry floor');
    expect(facts).toContain('Turned by hand nobody has looked');
    expect(facts).toContain('Engine oil No date known');
    expect(facts).toContain('Oil grade');
  });

  it('says which gates below it are not passed, or were passed in writing only', async () => {
    const sleeper = await openSleeper();
    expect(body(await sleeper.get('first-start'))).toMatch(
      /Not yet: below it these gates are not passed: Papers and story · /,
    );
    for (const stage of STAGE_KEYS.slice(0, STAGE_KEYS.indexOf('first-start')))
      await sleeper.passInWriting(stage, 'For the sake of the paper');
    const said = body(await sleeper.get('first-start'));
    expect(said).toMatch(/Every gate below it is passed, but in writing only: .*Structure/);
    expect(said).not.toContain('Not yet');
  });
});

describe('the road-test card', () => {
  it('has every run with its limits, four hubs, odometer and who', async () => {
    const html = await (await openSleeper()).get('road-tests');
    const cards = html.split('<section class="run-card">').slice(1);
    expect(cards).toHaveLength(Object.keys(RUNS).length);
    Object.values(RUNS).forEach(({ name, distance, speed, looks, stopIf, afterwards }, index) => {
      const said = text(cards[index] ?? '');
      for (const words of [name, distance, speed, looks, `Stop if: ${stopIf}`, afterwards, 'Odometer', 'Who'])
        expect(said).toContain(words);
      for (const hub of ['FL', 'FR', 'RL', 'RR']) expect(said).toMatch(new RegExp(`\\b${hub}\\b`));
    });
  });

  it('has every note to tick as new, less, same or worse', async () => {
    const html = await (await openSleeper()).get('road-tests');
    const notes = /<div class="notes">.*?<\/div>/s.exec(html)?.[0] ?? '';
    const kinds = Object.values(SENSES).flatMap(({ kinds: all }) => [...all]);
    expect(inside(notes, 'p').toSorted()).toEqual(kinds.toSorted());
    expect(notes.match(/class="box"/g)).toHaveLength(kinds.length * 4);
    expect(inside(notes, 'h3')[0]).toBe('Noise new less same worse');
  });

  it('has the leak map: every place over two heats, cold, hot and next morning', async () => {
    const map = /<table class="leak-map">.*?<\/table>/s.exec(await (await openSleeper()).get('road-tests'))?.[0] ?? '';
    const rows = inside(map, 'tr').slice(2);
    expect(rows.slice(0, -1)).toEqual(Object.values(LEAK_PLACES));
    expect(map.match(/<td>/g)).toHaveLength((Object.keys(LEAK_PLACES).length + 1) * 6);
  });

  it('has the wheel nuts once more with distance and day, and fills a run that was driven', async () => {
    const sleeper = await openSleeper();
    expect(body(await sleeper.get('road-tests'))).toMatch(/Wheel nuts once more after 80 to 160 km at km day who/);
    await sleeper.post('/steps/run-a/run', { ended: 'as planned', driven: '0.1', hubs: '4', despite: 'in the yard' });
    const html = await sleeper.get('road-tests');
    expect(body(html)).toMatch(/A: yard.*Ended as planned on 25 November 2026, by Ada\..*B: round the block/);
    expect(body(html)).toMatch(
      /Not yet: \d+ gates below the first run are not passed, the first of them Papers and story/,
    );
  });
});

describe('the car’s file', () => {
  const known = async (): Promise<Sleeper> => {
    const sleeper = await openSleeper({ looks: { rodents: 'none' } });
    const barn = barnOf(sleeper.site);
    date(barn, sleeper.carId, 'engine-oil', claim('filled', '2019'));
    date(barn, sleeper.carId, 'spark-plugs', claim('fitted', 'unknown'));
    date(barn, sleeper.carId, 'tires-road', claim('made', '2309', { evidence: 'read on the part' }), 'front left');
    date(barn, sleeper.carId, 'tires-road', claim('made', '1013', { evidence: 'read on the part' }), 'front left');
    date(barn, sleeper.carId, 'brake-hoses', claim('fitted', '2010', { evidence: 'seller’s word' }), 'rear');
    return sleeper;
  };

  it('works for a car that never slept', async () => {
    const site = openSite();
    const carId = carIn(barnOf(site), { name: 'Merle Tourer', km: 87_400 });
    const html = await (await site.get(`/cars/${carId}/file`)).text();
    expect(inside(html, 'h1')[0]).toContain('Merle Tourer');
    expect(body(html)).toContain('Odometer 87,400 km on 25 November 2026.');
    expect(body(html)).toContain('Fuel: Gasoline (petrol).');
    expect(body(html)).not.toContain('Return to the road');
    expect(text(html)).toContain(DEFERS);
    expect(decoded(html)).toMatch(`/cars/${carId}`);
    expect((await site.get(`/cars/${NO_ID}/file`)).status).toBe(404);
    expect((await site.get(`/cars/${carId}/file?paper=a5`)).status).toBe(400);
  });

  it('says first what nobody knows: not looked, asked in vain, hearsay, sources that disagree', async () => {
    const html = await (await known()).file();
    const gaps = text(under(html, 'What is not known'));
    expect(gaps).toMatch(/No date is known of \d+ of \d+ parts and fluids\./);
    expect(gaps).toMatch(/Nobody has looked for the date of \(\d+\) Road tire, front right \(safety\)/);
    expect(gaps).toMatch(/No date is known, though somebody asked, of \(1\) Spark plugs/);
    expect(gaps).toMatch(/Flexible brake hose, rear: seller’s word/);
    expect(gaps).toMatch(
      /Road tire, front left: Made 7 to 13 June 2009 \(read on the part\); Made 10 to 16 March 2013 \(read on the part\)/,
    );
    expect(gaps).toMatch(/Nobody has looked: Papers; /);
    expect(gaps).toContain('Nobody has said where it stands.');
    expect(html.indexOf('What is not known</h2>')).toBeLessThan(html.indexOf('Dates of parts and fluids</h2>'));
  });

  it('tells every part: dates, how each is known, how old it can be', async () => {
    const html = await (await known()).file('sections=parts');
    const rows = inside(html, 'tr');
    expect(rows).toContain('Engine oil Filled 2019 (receipt) at least 6 years, could be 7 years past');
    expect(rows.find((row) => row.startsWith('Road tire, front left'))).toMatch(
      /These disagree; all are kept\. at least 13 years, could be 17 years past$/,
    );
    // What has no date is named, and its row clears nothing.
    const blank = rows.filter((row) => row.startsWith('No date known'));
    expect(blank.join(' ')).toMatch(/Road tire, front right · .*Spark plugs/);
    for (const row of blank) expect(row).toMatch(/ unproven$/);
    expect(text(html)).toContain('no part is in order because its date is missing');
  });

  it('does not call in date what was only looked at', async () => {
    const sleeper = await openSleeper();
    date(barnOf(sleeper.site), sleeper.carId, 'wiring', claim('serviced', '20 November 2026'));
    const row = inside(await sleeper.file('sections=parts'), 'tr').find((one) => one.startsWith('Wiring'));
    expect(row).toMatch(/looked at lately; its age is not known$/);
  });

  it('says where an interval is the owner’s own', async () => {
    const sleeper = await known();
    await sleeper.site.post('/practice/engine-oil', { scope: '', replaceBy: '120', note: 'my own' });
    const row = inside(await sleeper.file('sections=parts'), 'tr').find((one) => one.startsWith('Engine oil'));
    expect(row).toMatch(/, by the owner’s interval$/);
  });

  it('holds readings and history, the dates of what is gone among them', async () => {
    const sleeper = await known();
    const barn = barnOf(sleeper.site);
    const [battery, oil] = ['battery-flooded', 'engine-oil'].map((kind) => partOf(barn, sleeper.carId, kind).id);
    await sleeper.site.post(`/cars/${sleeper.carId}/readings`, { [`${battery}.rest-voltage.typed`]: '12.31' });
    const fresh = { clock: 'filled', evidence: 'receipt', fitted: '20 November 2026', why: 'Black' };
    expect((await sleeper.site.post(`/parts/${oil}/renew`, fresh)).status).toBe(303);
    const html = await sleeper.file();
    expect(text(under(html, 'Readings'))).toBe('25 November 2026: Battery, flooded lead-acid, rest voltage 12.31 V');
    expect(text(under(html, 'History'))).toContain('25 November 2026: Engine oil, filled 2019 (receipt). Black.');
    // As on the day before, neither has happened yet.
    const before = await sleeper.file('on=2026-11-24');
    expect(text(under(before, 'Readings'))).toBe('Nothing was ever measured on it, as far as is recorded.');
    expect(text(under(before, 'History'))).not.toContain('Black');
  });

  it('tells a return with its gates: what was passed in writing, despite what, and why', async () => {
    const sleeper = await known();
    await sleeper.tick('transport', { cost: '280', hours: '5', note: 'Paid $280' });
    for (const stage of ['papers', 'evidence', 'structure']) await sleeper.passInWriting(stage, 'A reason for 300 USD');
    await sleeper.post('/survey', { 'look.title': 'unclear' });
    await sleeper.post('/stops/title', { by: 'Ada', note: 'The registry is asked' });
    const html = await sleeper.file('sections=history');
    const said = text(under(html, 'Return to the road, begun 25 November 2026'));
    expect(said).toContain('It is still on its way.');
    expect(said).toMatch(
      /Structure \(safety\): passed in writing only, on 25 November 2026 by Ada\. It lacked: .*Structure, probed: not answered yet\..* Reason given: A reason for …/,
    );
    expect(said).toMatch(/Not passed: .*Brakes \(safety\)/);
    expect(said).toMatch(/Decided to go on\. It had stopped: The papers are missing/);
    expect(said).toContain('(5 hours)');
    expect(said).not.toMatch(MONEY);
    const priced = text(await sleeper.file('prices=yes'));
    expect(priced).toContain('Spent, as far as it was told: $280.');
    expect(priced).toContain('Paid $280');
  });

  it('has the sections that are asked for, and a bar that adds and takes away', async () => {
    const sleeper = await openSleeper();
    const path = `/cars/${sleeper.carId}/file`;
    const headings = async (more: string) =>
      inside(await sleeper.file(more), 'h2').filter((one) => !one.startsWith('Return'));
    expect(await headings('')).toEqual(['What is not known', 'Dates of parts and fluids', 'Readings', 'History']);
    expect(await headings('sections=history,gaps')).toEqual(['What is not known', 'History']);
    expect((await sleeper.site.get(`${path}?sections=prices`)).status).toBe(400);
    const links = tags(await sleeper.file('sections=gaps,parts&prices=yes&paper=letter'), 'a').map(({ href }) => href);
    expect(links).toContain(`${path}?paper=letter&sections=gaps&prices=yes`);
    expect(links).toContain(`${path}?paper=letter&sections=gaps%2Cparts%2Chistory&prices=yes`);
    expect(links).toContain(`${path}?paper=letter&sections=gaps%2Cparts`);
  });
});

describe('links', () => {
  it('lead to the sheets from the pages of the work', async () => {
    const sleeper = await openSleeper();
    const links = async (path: string): Promise<(string | undefined)[]> =>
      tags(await (await sleeper.site.get(path)).text(), 'a').map(({ href }) => href);
    const at = `/revivals/${sleeper.id}`;
    expect(await links(at)).toContain(sleeper.path('stages'));
    expect(await links(`${at}/survey`)).toContain(sleeper.path('survey'));
    expect(await links(`${at}/verdict`)).toContain(sleeper.path('verdict'));
    expect(await links(`${at}/stages/fuel`)).toContain(sleeper.path('stages', 'stage=fuel'));
    expect(await links(`${at}/steps/first-start`)).toContain(sleeper.path('first-start'));
    for (const step of ['run-a', 'run-b', 'leaks-1-cold'])
      expect(await links(`${at}/steps/${step}`)).toContain(sleeper.path('road-tests'));
    expect(await links(`/cars/${sleeper.carId}`)).toContain(`/cars/${sleeper.carId}/file`);
  });
});
