import { beforeAll, describe, expect, it } from 'vitest';
import { chargeByVoltage } from '../../src/ageing/battery/charge.ts';
import { BATTERY } from '../../src/ageing/battery/chemistry.ts';
import { projectBattery } from '../../src/ageing/battery/outlook.ts';
import { brakeFluidOutlook } from '../../src/ageing/brake-fluid/outlook.ts';
import { waterPace } from '../../src/ageing/brake-fluid/water.ts';
import { mixing } from '../../src/ageing/coolant/families.ts';
import { freezingPoint, freezingSpan } from '../../src/ageing/coolant/freezing.ts';
import { coolantOutlook } from '../../src/ageing/coolant/outlook.ts';
import { strengthByBrix } from '../../src/ageing/coolant/sample.ts';
import { fuelOutlook } from '../../src/ageing/fuel/outlook.ts';
import { tolerance } from '../../src/ageing/fuel/water.ts';
import { ASSUMED, coldestNight } from '../../src/ageing/place.ts';
import { shelfLife } from '../../src/ageing/rubber/families.ts';
import { daysInWords, spanInWords } from '../../src/ageing/words.ts';
import { BRAKE_FLUID_GRADES } from '../../src/catalogue/brake-fluid-grades.ts';
import { CAUTIONS } from '../../src/catalogue/cautions.ts';
import type { Kind } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { SOURCES } from '../../src/catalogue/sources.ts';
import { addDays } from '../../src/dates/civil.ts';
import { boilingInWords, waterInWords } from '../../src/findings/brake-fluid-words.ts';
import { gaugesOf } from '../../src/findings/measured.ts';
import { choices, faultAt, field, filledIn, inside, tags, text } from '../support/html.ts';
import { openFullSite } from '../support/pages.ts';
import type { TestSite } from '../support/site.ts';

let site: TestSite;
beforeAll(async () => {
  ({ site } = await openFullSite());
});

type Asked = Record<string, string>;
const address = (desk: string, asked: Asked): string => `/desks/${desk}?${new URLSearchParams(asked)}`;
const get = async (desk: string, asked: Asked = {}): Promise<string> => {
  const answer = await site.get(address(desk, asked));
  expect(answer.status, text(await answer.clone().text()).slice(0, 400)).toBe(200);
  return answer.text();
};
const refused = async (desk: string, asked: Asked): Promise<string> => {
  const answer = await site.get(address(desk, asked));
  expect(answer.status).toBe(422);
  return answer.text();
};
/** The part of the page that answers. */
const section = (html: string): string => /<section aria-labelledby="answers">(.*?)<\/section>/s.exec(html)?.[1] ?? '';
const told = async (desk: string, asked: Asked): Promise<string> => text(section(await get(desk, asked)));
/** The days a desk names, by what happens then. */
const days = async (desk: string, asked: Asked): Promise<string[]> =>
  inside(/<dl class="days">(.*?)<\/dl>/s.exec(section(await get(desk, asked)))?.[1] ?? '', 'dd');

/** Questions each desk answers, one it refuses at a field, the range shown there, and the cautions it carries. */
const DESKS: readonly {
  desk: string;
  asked: Asked;
  wrong: Asked;
  at: string;
  range: RegExp;
  caution: (keyof typeof CAUTIONS)[];
  source: keyof typeof SOURCES;
}[] = [
  {
    desk: 'brake-fluid',
    asked: { grade: 'dot-4', filled: '1 December 2024', hoses: 'rubber', air: 'damp', limit: '200' },
    wrong: { boiling: '20', 'boiling-unit': '°C' },
    at: 'boiling',
    range: /\b60\b.*\b350 °C/,
    caution: ['brake-fluid', 'brake-work'],
    source: 'sae-j1707',
  },
  {
    desk: 'coolant',
    asked: { glycol: 'ethylene', strength: '50', night: '-20' },
    wrong: { strength: '101' },
    at: 'strength',
    range: /\b0\b.*\b100 %/,
    caution: ['hot-coolant'],
    source: 'ashrae-glycol',
  },
  {
    desk: 'battery',
    asked: { chemistry: 'antimony', capacity: '60', charge: '95', drain: '30', low: '7', high: '13', air: 'inland' },
    wrong: { capacity: '900', charge: '95' },
    at: 'capacity',
    range: /\b5\b.*\b250 Ah/,
    caution: ['battery-gas'],
    source: 'army-battery-tables',
  },
  {
    desk: 'fuel',
    asked: { blend: 'e10', bought: '1 November 2026', tank: '50', fullness: '90', low: '-10', high: '30' },
    wrong: { blend: 'e10', tank: '2000' },
    at: 'tank',
    range: /\b2\b.*\b400 L/,
    caution: ['fuel-vapor'],
    source: 'epa-phase-separation',
  },
  {
    desk: 'rubber',
    asked: { rubber: 'EPDM', made: 'July 2019', low: '-10', high: '30' },
    wrong: { low: '-70' },
    at: 'low',
    range: /−60\b.*\b40 °C/,
    caution: [],
    source: 'iso-2230',
  },
];

describe.each(DESKS)('the $desk desk', ({ desk, asked, wrong, at, range, caution, source }) => {
  it('asks first and answers nothing unasked', async () => {
    const html = await get(desk);
    expect(section(html)).toBe('');
    expect(tags(html, 'form').filter(({ action }) => action?.startsWith(`/desks/${desk}`))[0]?.['method']).toBe('get');
  });

  it('answers without storing anything', async () => {
    const changes = () => site.store.$client.prepare('select total_changes()').pluck().get();
    const before = changes();
    expect(section(await get(desk, asked))).not.toBe('');
    await refused(desk, { ...asked, ...wrong });
    expect(changes()).toBe(before);
    expect((await site.post(address(desk, asked), {})).status).toBe(404);
  });

  it('keeps what was asked in its fields; sent again without any script, it answers the same', async () => {
    const html = await get(desk, asked);
    const again = filledIn(html, `/desks/${desk}#answers`);
    expect(again).toMatchObject(asked);
    expect(section(await get(desk, again as Asked))).toBe(section(html));
    expect(section(html)).not.toMatch(/<script|\son\w+=/);
  });

  it('refuses what is out of range with the range beside the field, and keeps all that was typed', async () => {
    const html = await refused(desk, { ...asked, ...wrong });
    expect(faultAt(html, at)).toMatch(range);
    expect(field(html, at)['aria-invalid']).toBe('true');
    expect(filledIn(html, `/desks/${desk}#answers`)).toMatchObject({ ...asked, ...wrong });
    expect(section(html)).toBe('');
    expect(faultAt(await refused(desk, { ...asked, [at]: '<many>' }), at)).toContain('<many>');
  });

  it('refuses a choice it does not offer', async () => {
    const choice = tags(await get(desk), 'select').find(({ name }) => name && !name.endsWith('-unit'))?.['name'] ?? '';
    expect(faultAt(await refused(desk, { ...asked, [choice]: 'plutonium' }), choice)).toBeTruthy();
  });

  it('as on another day answers for that day, and asks on for it', async () => {
    const html = await get(desk, { ...asked, on: '2027-04-01' });
    expect(filledIn(html, `/desks/${desk}#answers`)).toMatchObject({ ...asked, on: '2027-04-01' });
    expect(section(html)).not.toBe('');
  });

  it('tells where its estimates end, how they are reckoned, by which sources, and what to be careful of', async () => {
    const html = await get(desk, asked);
    const how = /<section aria-labelledby="how">(.*?)<\/section>/s.exec(html)?.[1] ?? '';
    expect(text(/<p class="note">(.*?)<\/p>/s.exec(how)?.[1] ?? '')).not.toBe('');
    expect(text(how)).toContain(SOURCES[source].title);
    for (const key of caution) expect(text(section(html))).toContain(CAUTIONS[key]);
  });

  it('draws its answer with words for those who can’t see it, and repeats what was asked for paper', async () => {
    const html = section(await get(desk, asked));
    const drawn = tags(html, 'svg').filter((svg) => svg['class'] === 'chart');
    expect(drawn).toHaveLength(1);
    expect(drawn[0]?.['aria-label']).toMatch(/\d/);
    const paper = text(/<p class="print-only">(.*?)<\/p>/s.exec(html)?.[1] ?? '');
    const numbers = Object.values(asked).filter((typed) => /^-?\d+$/.test(typed));
    for (const typed of numbers) expect(paper).toContain(typed.replace('-', paper.includes('−') ? '−' : '-'));
  });
});

describe('the brake fluid desk', () => {
  const FILLED = { from: '2024-12-01', to: '2024-12-01' } as const;
  const grade = (name: string) => {
    const found = BRAKE_FLUID_GRADES.find((one) => one.name === name);
    if (!found) throw new Error(`No grade ${name}`);
    return found;
  };

  it.each([
    [{ grade: 'dot-4', filled: '1 December 2024' }, 'DOT 4', { damp: false, hoses: 'unknown' }],
    [{ grade: 'dot-3', filled: '1 December 2024', air: 'damp' }, 'DOT 3', { damp: true, hoses: 'unknown' }],
    [{ grade: 'dot-5-1', filled: '1 December 2024', hoses: 'braided' }, 'DOT 5.1', { damp: false, hoses: 'braided' }],
  ] as const)('answers %j as the model does', async (asked, name, air) => {
    const facts = { grade: grade(name), pace: waterPace(air), filled: FILLED, measured: {}, ownLimit: null };
    const { water, boiling, wet } = brakeFluidOutlook(facts, '2026-11-25');
    const said = await told('brake-fluid', asked);
    if (!water || !boiling) throw new Error('Nothing told');
    expect(said).toContain(`${waterInWords(water)}, boiling at ${boilingInWords(boiling)}.`);
    expect(await days('brake-fluid', asked)).toEqual([wet && daysInWords(wet, '', '2026-11-25')]);
  });

  it('of a new fill: 1 to 2 percent of water after a year, 3 percent after 18 to 36 months', async () => {
    const said = await told('brake-fluid', { grade: 'dot-3', filled: '25 November 2025', hoses: 'rubber' });
    // Told outward, in halves of a percent.
    expect(said).toContain('0.5 to 2 % water');
    expect(said).toContain('18 to 36 months');
    // The points published for typical DOT 3: 187 °C at 1 percent, 160 °C at 2.
    expect(said).toContain('160 to 190 °C');
    expect(section(await get('brake-fluid', { grade: 'dot-3' }))).toContain('160 to 187 °C after 12 months');
  });

  it('takes what was measured before what is reckoned, in °F as well', async () => {
    const asked = { grade: 'dot-4', filled: '2015', boiling: '392', 'boiling-unit': '°F' };
    const boiling = { value: 200, day: '2026-11-25' } as const;
    const facts = { grade: grade('DOT 4'), pace: waterPace({ damp: false, hoses: 'unknown' }), ownLimit: null };
    const model = brakeFluidOutlook(
      { ...facts, filled: { from: '2015-01-01', to: '2015-12-31' }, measured: { boiling } },
      '2026-11-25',
    );
    const said = await told('brake-fluid', asked);
    expect(model.measured).toBe(true);
    expect(said).toContain(model.water && waterInWords(model.water));
    // Give or take five degrees.
    expect(said).toMatch(/\b195 to 205 °C/);
  });

  it.each([
    [{ grade: 'dot-4', boiling: '150' }, 'Boiling point 150 °C: act.'],
    [{ grade: 'dot-4', boiling: '155' }, 'Boiling point 155 °C: watch.'],
    [{ grade: 'dot-4', boiling: '175' }, 'Boiling point 175 °C: good.'],
    // Nobody told the grade: the weakest is judged by.
    [{ boiling: '150' }, 'Boiling point 150 °C: watch.'],
    [{ grade: 'iso-class-6', boiling: '164' }, 'Boiling point 164 °C: act.'],
    [{ grade: 'iso-class-6', boiling: '165' }, 'Boiling point 165 °C: watch.'],
    [{ grade: 'iso-class-7', boiling: '179' }, 'Boiling point 179 °C: act.'],
    [{ water: '1.9' }, 'Water 1.9 %: good.'],
    [{ water: '3' }, 'Water 3.0 %: act.'],
    [{ copper: '199' }, 'Copper 199 ppm: good.'],
    [{ copper: '200' }, 'Copper 200 ppm: act.'],
  ])('judges %j first of all, by the bands of its gauge: %s', async (asked, line) => {
    const html = section(await get('brake-fluid', asked as Asked));
    const first = text(/<p class="answer">(.*?)<\/p>/s.exec(html)?.[1] ?? '');
    expect(first.startsWith(line), first).toBe(true);
    const test = gaugesOf(KINDS.get('brake-fluid-glycol') as Kind).find(({ name }) => line.startsWith(name));
    const verdict = /: (good|watch|act)\.$/.exec(line)?.[1] as 'good' | 'watch' | 'act';
    expect(first.toLowerCase()).toContain(test?.[verdict]?.toLowerCase());
  });

  it('says so where instruments disagree, and nothing of it where they agree', async () => {
    const said = await told('brake-fluid', { grade: 'dot-4', boiling: '150', water: '1' });
    expect(said).toContain('boiling point says act, water says good. The gravest counts: act.');
    expect(await told('brake-fluid', { grade: 'dot-4', boiling: '150', water: '4' })).not.toContain('disagrees');
  });

  it('judges nothing measured of silicone, of which the instruments say nothing', async () => {
    const asked = { grade: 'dot-5-silicone', boiling: '100', water: '8', copper: '900' };
    const html = section(await get('brake-fluid', asked));
    const said = text(html.replace(/<p class="print-only">.*?<\/p>/s, ''));
    expect(said).toContain(
      'Boiling testers, water meters and copper strips made for glycol fluid say nothing about it.',
    );
    for (const word of ['Copper 900', 'Water 8', 'Boiling point 100', 'binding brake', ': act', ': good'])
      expect(said).not.toContain(word);
  });

  it('draws no boiling point where the water may lie beyond the published curve', async () => {
    const [drawn] = tags(section(await get('brake-fluid', { grade: 'dot-4' })), 'svg');
    const says = drawn?.['aria-label'] ?? '';
    // The fast end passes 3.7 percent after 22 months: the wet minimum is no floor from there on.
    expect(says).toMatch(/after 12 months, at best \d+ °C after 24 months, below that not known/);
    expect(says).not.toContain('155');
    const damp = tags(section(await get('brake-fluid', { grade: 'dot-4', air: 'damp' })), 'svg')[0]?.['aria-label'];
    // The slow end, too, after 30: nothing is told of 36.
    expect(damp).toContain('not known after 36 months');
  });

  it('draws the wet minimum, the limit asked for and what was measured, each by its name', async () => {
    const html = section(await get('brake-fluid', { grade: 'dot-4', limit: '200', boiling: '190' }));
    const names = inside(/<svg class="chart".*?<\/svg>/s.exec(html)?.[0] ?? '', 'text');
    for (const name of [
      'wet minimum 155 °C',
      'your limit 200 °C',
      'measured 190 °C',
      'below: not known',
      'binding brake 143 °C',
    ])
      expect(names.includes(name), name).toBe(name !== 'binding brake 143 °C');
    // Filled on a day that is known, it stands at its age as a dot.
    const dotted = section(await get('brake-fluid', { grade: 'dot-4', boiling: '190', filled: '1 December 2024' }));
    expect(tags(dotted, 'circle')).toHaveLength(1);
    expect(inside(dotted, 'figcaption')[0]).toContain('dots: boiling point measured');
  });

  it('never lets silicone be mixed with glycol', async () => {
    expect(await told('brake-fluid', { grade: 'dot-4', added: 'dot-5-silicone' })).toContain('must never be mixed');
    expect(await told('brake-fluid', { grade: 'dot-4', added: 'dot-3' })).toContain('may be topped up');
    const silicone = await told('brake-fluid', { grade: 'dot-5-silicone', filled: '2020' });
    expect(silicone).not.toMatch(/% water/);
    expect(silicone).toContain('rusts the cylinders');
  });

  it('with a date it can’t read keeps it and says so at its field', async () => {
    const html = await refused('brake-fluid', { grade: 'dot-4', filled: 'last <week>' });
    expect(faultAt(html, 'filled')).toContain('last <week>');
    expect(field(html, 'filled')['value']).toBe('last <week>');
  });

  it('asks which day is meant where it can be two, and answers for the one picked', async () => {
    await site.post(`/members/${site.personId}`, { name: 'Ada', email: '', dateOrder: 'ask' });
    const asked = { grade: 'dot-4', filled: '3/4/2024' };
    const html = await refused('brake-fluid', asked);
    expect(faultAt(html, 'filled')).toBeTruthy();
    const offered = choices(html, 'filled');
    await site.post(`/members/${site.personId}`, { name: 'Ada', email: '', dateOrder: 'day first' });
    // Where meanings are offered, picking one answers.
    for (const filledChoice of offered) {
      const sent = { ...filledIn(html, '/desks/brake-fluid#answers'), filledChoice };
      expect(await told('brake-fluid', sent as Asked)).toMatch(/March|April/);
    }
  });
});

describe('the coolant desk', () => {
  it('half ethylene glycol shows its first ice at about −37 °C, propylene at about −34', async () => {
    for (const [glycol, published] of [
      ['ethylene', -37],
      ['propylene', -34],
    ] as const) {
      const said = await told('coolant', { glycol, strength: '50' });
      const { low, high } = freezingSpan(glycol, 50);
      expect(said).toContain(spanInWords({ low, high }, '°C', 0));
      expect(Math.abs(freezingPoint(glycol, 50) - published)).toBeLessThan(1);
      expect(-published).toBeGreaterThanOrEqual(Math.floor(-high));
      expect(-published).toBeLessThanOrEqual(Math.ceil(-low));
      // One number stands in the drawing’s words: that of the handbook.
      expect(section(await get('coolant', { glycol, strength: '50' }))).toContain(`50 % −${-published} °C`);
    }
  });

  it.each([
    [{ strength: '50', night: '-20' }, 'Good for that night'],
    [{ strength: '40', night: '-23' }, 'Watch it'],
    [{ strength: '40', night: '-13', 'night-unit': '°F' }, 'Act on it'],
    [{ strength: '20', night: '20' }, 'Act on it'],
    [{ strength: '50' }, 'Not judged'],
  ])('judges ethylene glycol of %j: %s', async (asked, verdict) => {
    const { freezes, margin } = coolantOutlook(
      { glycol: 'ethylene', strength: { low: Number(asked.strength), high: Number(asked.strength) } },
      'night' in asked ? ('night-unit' in asked ? -25 : Number(asked.night)) : null,
    );
    const said = await told('coolant', { glycol: 'ethylene', ...(asked as Asked) });
    expect(said).toContain(verdict);
    expect(said).toContain(spanInWords(freezes, '°C', 0));
    // Never told larger than it is.
    if (margin)
      expect(said).toContain(spanInWords({ low: Math.floor(margin.low), high: Math.floor(margin.high) }, '°C', 0));
  });

  it('of an unknown glycol answers for both', async () => {
    const said = await told('coolant', { strength: '50', night: '-20' });
    expect(said).toContain(
      spanInWords({ low: -37, high: freezingSpan('propylene', 50).high }, '°C', 0).split(' to ')[1],
    );
    expect(said).toContain('The glycol is not told');
  });

  it('takes the sugar scale for what the model makes of it', async () => {
    const { low, high } = strengthByBrix('ethylene', 33);
    expect(await told('coolant', { glycol: 'ethylene', brix: '33' })).toContain(spanInWords({ low, high }, '%', 0));
    expect((low + high) / 2).toBeCloseTo(50, -0.5);
  });

  it('says how much to exchange: 10 liters from 33 to 50 with concentrate, in gallons as well', async () => {
    const mix = { glycol: 'ethylene', strength: '33', wanted: '50', concentrate: '100' };
    // 10 × 17 / 67.
    expect(await told('coolant', { ...mix, volume: '10' })).toContain('drain 2.5 L');
    expect(await told('coolant', { ...mix, volume: '2.6417', 'volume-unit': 'US gal' })).toContain(
      'drain 2.5 L (0.67 US gal)',
    );
    const html = await refused('coolant', { ...mix, volume: '10', concentrate: '50' });
    expect(faultAt(html, 'wanted')).toContain('can’t be done');
  });

  it('asks for a strength or a reading where there is none', async () => {
    expect(faultAt(await refused('coolant', { glycol: 'ethylene' }), 'strength')).toBeTruthy();
    expect(faultAt(await refused('coolant', { there: 'iat', wanted: '50', volume: '8' }), 'strength')).toBeTruthy();
  });

  it('answers what mixing does where nothing else was asked', async () => {
    const said = await told('coolant', { glycol: 'ethylene', there: 'iat', added: 'oat' });
    expect(said).toContain(mixing({ family: 'iat', glycol: 'ethylene' }, { family: 'oat', glycol: 'ethylene' }));
    expect(said).toContain('frost is not judged');
    expect(await told('coolant', { glycol: 'ethylene', there: 'iat', added: 'iat' })).toContain('One family and one');
  });

  it.each([
    [{ strength: '50', freezing: '-30' }, 'freezing'],
    [{ brix: '33', freezing: '-30' }, 'brix'],
    [{ strength: '50', density: '1.07' }, 'density'],
  ])('refuses two ways to tell one strength: %j', async (asked, at) => {
    expect(faultAt(await refused('coolant', asked as Asked), at)).toContain('give one of them');
  });

  it('labels the bands of both glycols, and says what is hatched', async () => {
    const html = section(await get('coolant', { strength: '40' }));
    const names = inside(html, 'text');
    expect(names).toEqual(expect.arrayContaining(['ethylene', 'propylene', 'this mix']));
    expect(inside(html, 'figcaption')[0]).toMatch(/^Hatched: .*ethylene glycol and .*propylene glycol\.$/);
  });
});

describe('the battery desk', () => {
  /** Published worked example: 60 Ah, 30 mA, 95 percent, 10 °C: to 75 percent within 17 days. */
  const EXAMPLE = {
    chemistry: 'antimony',
    capacity: '60',
    charge: '95',
    drain: '30',
    low: '7',
    high: '13',
    air: 'inland',
  };
  const PLACE = { ...ASSUMED, winterLow: 7, summerHigh: 13 };

  it('60 Ah with 30 mA at 95 percent and 10 °C is to be recharged within 17 days', async () => {
    const [recharge] = await days('battery', { ...EXAMPLE, from: '2026-11-01', until: '2027-03-01' });
    // 17 days after, at the latest: 18 November.
    expect(recharge).toBe('in mid November 2026');
    const { earliest, latest } = projectBattery(factsOf('2026-11-01', 95), PLACE, '2027-03-01').recharge;
    expect(latest?.localeCompare('2026-11-18')).toBeLessThanOrEqual(0);
    expect(earliest?.localeCompare('2026-11-11')).toBeGreaterThan(0);
    const charged = async (until: string): Promise<number[]> => {
      const end = await told('battery', { ...EXAMPLE, from: '2026-11-01', until });
      return /(\d+)(?: to (\d+))? % charged/.exec(end)?.slice(1).map(Number) ?? [];
    };
    expect(Math.min(...(await charged('2026-11-11')))).toBeGreaterThan(75);
    expect(Math.max(...(await charged('2026-11-18')))).toBeLessThanOrEqual(75);
  });

  const factsOf = (from: `${number}-${number}-${number}`, charge: number) => ({
    chemistry: 'antimony' as const,
    capacity: 60,
    drain: { low: 30, high: 30 },
    maintained: false,
    charge: { low: charge, high: charge },
    from,
  });

  it('answers as the model does: charge at the end, days, and where it could freeze', async () => {
    const place = { ...ASSUMED, winterLow: -20, summerHigh: 28, air: 'coast' as const, shelter: 'open' as const };
    const facts = {
      ...factsOf('2026-11-25', 0),
      chemistry: 'calcium' as const,
      drain: { low: 0, high: 50 },
      charge: chargeByVoltage('calcium', 12.5, 12)?.span ?? { low: 0, high: 0 },
    };
    const { points, recharge, noCrank, freezes } = projectBattery(facts, place, '2027-04-01');
    const asked = {
      chemistry: 'calcium',
      capacity: '60',
      volts: '12.5',
      low: '-4',
      'low-unit': '°F',
      high: '28',
      air: 'coast',
      shelter: 'open',
      until: '2027-04-01',
    };
    expect(await told('battery', asked)).toContain(spanInWords(points.at(-1)?.charge ?? facts.charge, '%', 0));
    const never = 'not before 1 April 2027';
    expect(await days('battery', asked)).toEqual([
      daysInWords(recharge, never, '2026-11-25'),
      daysInWords(noCrank, never, '2026-11-25'),
      freezes && daysInWords(freezes, never, '2026-11-25'),
    ]);
  });

  it('does not judge frost where nobody told the cold, and says what it assumes', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', charge: '95' };
    const [, , freezes] = await days('battery', asked);
    expect(freezes).toContain('not judged');
    const said = await told('battery', asked);
    expect(said).toContain('Frost is not judged.');
    expect(said).toContain('coldest night −10 °C; hottest day 32 °C');
    // No cold that nobody told is reckoned with.
    expect(said).not.toContain('of its power to crank');
  });

  it('reads 6 volts as half of 12, give or take more of its charge', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', drain: '30', volts: '6.25', nominal: '6' };
    const { low, high } = chargeByVoltage('antimony', 6.25, 6)?.span ?? { low: 0, high: 0 };
    const said = tags(section(await get('battery', asked)), 'svg')[0]?.['aria-label'];
    expect(said).toContain(`from ${spanInWords({ low, high }, '%', 0)} to`);
    const middle = (volts: number, nominal: 6 | 12) => chargeByVoltage('antimony', volts, nominal)?.percent;
    expect(middle(6.25, 6)).toBe(middle(12.5, 12));
  });

  it('asks which it is where so few volts may be a battery of 6 or a dead one of 12', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', volts: '6.3' };
    const html = await refused('battery', asked);
    expect(faultAt(html, 'nominal')).toContain('6-volt');
    expect(inside(html, 'option')).toEqual(expect.arrayContaining(['6 volts', '12 volts']));
    expect(await told('battery', { ...asked, nominal: '12' })).toContain('Recharge (75 %) already');
    expect(await told('battery', { ...asked, volts: '8' })).toContain('Recharge (75 %) already');
  });

  it.each([
    [{ charge: '90', volts: '12.6' }, 'volts'],
    [{ volts: '12.6', density: '1.26', warmth: '20' }, 'density'],
    [{ charge: '90', density: '1.26' }, 'density'],
  ])('refuses two ways to tell one charge: %j', async (asked, at) => {
    const html = await refused('battery', { chemistry: 'antimony', capacity: '60', ...(asked as Asked) });
    expect(faultAt(html, at)).toContain('give one of them');
  });

  it('takes density only with the temperature of the acid', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', density: '1.25' };
    expect(faultAt(await refused('battery', asked), 'warmth')).toBeTruthy();
    expect(await told('battery', { ...asked, warmth: '80', 'warmth-unit': '°F' })).toMatch(/charged|flat/);
  });

  it('asks for the charge of a lithium one in place of its voltage', async () => {
    expect(
      faultAt(await refused('battery', { chemistry: 'lithium', capacity: '40', volts: '13.2' }), 'volts'),
    ).toBeTruthy();
    const days3 = await days('battery', { chemistry: 'lithium', capacity: '40', charge: '80', low: '-10' });
    expect(days3[2]).toContain('does not freeze');
    expect(BATTERY.lithium.acid).toBe(false);
  });

  it('refuses days that run backwards, are none, or lie beyond ten years', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', charge: '95' };
    for (const until of ['2026-11-25', '2026-11-01', '2036-11-26', '2027-02-30']) {
      const html = await refused('battery', { ...asked, from: '2026-11-25', until });
      expect(faultAt(html, 'until'), until).toBeTruthy();
      expect(field(html, 'until')['value']).toBe(until);
    }
  });

  it('begins on the day it is seen as on', async () => {
    const html = await get('battery', { chemistry: 'antimony', capacity: '60', charge: '95', on: '2027-11-01' });
    expect(field(html, 'from')['value']).toBe('2027-11-01');
    expect(field(html, 'until')['value']).toBe('2028-05-01');
  });

  it('names no day for one on a maintainer', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', charge: '95', connection: 'maintainer' };
    expect(await days('battery', asked)).toEqual([]);
    expect(await told('battery', asked)).toContain('maintainer');
  });

  it('warns of frost in one held at a low charge, by a night that was told and no other', async () => {
    const asked = { chemistry: 'antimony', capacity: '60', connection: 'maintainer' };
    const warned = 'A frozen battery is never charged';
    expect(await told('battery', { ...asked, charge: '40', low: '-25' })).toContain(warned);
    expect(await told('battery', { ...asked, charge: '100', low: '-25' })).not.toContain(warned);
    expect(await told('battery', { ...asked, charge: '40', low: '-5' })).not.toContain(warned);
    expect(await told('battery', { ...asked, charge: '0' })).not.toContain(warned);
    expect(await told('battery', { ...asked, chemistry: 'lithium', charge: '0', low: '-25' })).not.toContain(warned);
  });
});

describe('the fuel desk', () => {
  const STEADY = { low: '18', high: '23', air: 'inland', shelter: 'heated' };

  it.each([
    ['e10', 'no', 'covered'],
    ['e0', 'yes', 'unheated'],
    ['diesel', 'no', 'open'],
  ] as const)('answers %s (stabilized: %s, %s) as the model does', async (blend, stabilized, shelter) => {
    const place = { ...ASSUMED, winterLow: -5, summerHigh: 30, shelter };
    const facts = {
      fuel: blend,
      stabilized: stabilized === 'yes',
      filled: { from: '2026-09-01', to: '2026-09-01' } as const,
      fullness: 60,
      container: 'vehicle tank' as const,
      tank: 50,
    };
    const { watch, stop, water } = fuelOutlook(facts, place, '2026-11-25');
    const asked = {
      blend,
      stabilized,
      shelter,
      bought: '1 September 2026',
      tank: '50',
      fullness: '60',
      low: '-5',
      high: '30',
    };
    expect(await days('fuel', asked)).toEqual([
      daysInWords(watch, '', '2026-11-25'),
      daysInWords(stop, '', '2026-11-25'),
    ]);
    const said = await told('fuel', asked);
    if (water?.perYear) expect(said).toContain(spanInWords(water.perYear, 'g', 0));
    else expect(blend).toBe('diesel');
    if (blend === 'e10') expect(said).toContain(`${tolerance(10, coldestNight(place))?.toFixed(2)} %`);
  });

  it('E10 keeps 3 to 6 months near 20 °C', async () => {
    // Published: doubt at three months, no use past six. The place is 19 to 22 °C all year.
    const [soon, drain] = await days('fuel', { blend: 'e10', bought: '15 January 2026', on: '2026-01-15', ...STEADY });
    expect(soon).toBe('in mid April 2026');
    expect(drain).toMatch(/^in (early|mid) July 2026$/);
    expect(section(await get('fuel', { blend: 'e10', ...STEADY }))).toContain('3 to 6 months at 20 °C');
  });

  it('needs to know the fuel, and reads when it was bought as people write it', async () => {
    expect(faultAt(await refused('fuel', { tank: '50' }), 'blend')).toBeTruthy();
    expect(faultAt(await refused('fuel', { blend: 'e10', bought: 'once' }), 'bought')).toBeTruthy();
    expect(faultAt(await refused('fuel', { blend: 'e10', bought: 'unknown' }), 'bought')).toBeTruthy();
    const [early, late] = await days('fuel', { blend: 'e10', bought: 'June 2026', on: '2026-07-01', ...STEADY });
    expect([early, late].every((day) => day?.includes('2026'))).toBe(true);
  });

  it('does not count on the cold to lengthen a life', async () => {
    const cold = section(await get('fuel', { blend: 'e10', low: '-20', high: '15' }));
    expect(tags(cold, 'svg')[0]?.['aria-label']).toContain('3 to 6 months at 10 °C, 3 to 6 months at 20 °C');
    expect(text(cold)).toContain('Where the calendar of the trade ends sooner, it rules.');
  });

  it('says whether the water measured parts it, now and in the coldest night', async () => {
    const asked = { blend: 'e10', low: '-10', high: '30' };
    // 10 percent ethanol holds half a percent at 15 °C and 0.3 at −12.
    expect(await told('fuel', { ...asked, water: '0.2' })).toMatch(/is held\. In the coldest night.*still be held/);
    expect(await told('fuel', { ...asked, water: '0.4' })).toMatch(/is held\. In the coldest night.*two layers/);
    expect(await told('fuel', { ...asked, water: '0.6' })).toContain('it has parted');
    const unplaced = await told('fuel', { blend: 'e10', water: '0.4' });
    expect(unplaced).toContain('Whether it parts in the coldest night is not judged');
    expect(unplaced).not.toContain('On the coldest night');
    expect(await told('fuel', { ...asked, blend: 'e0', water: '0.1' })).toContain('without ethanol it holds none');
    expect(await told('fuel', { ...asked, blend: 'e85', water: '3' })).toContain('does not part');
    expect(await told('fuel', { ...asked, blend: 'diesel', water: '0.1' })).toContain('next to none');
  });

  it('without a day was bought today', async () => {
    const today = await days('fuel', { blend: 'e10', ...STEADY });
    expect(today).toEqual(await days('fuel', { blend: 'e10', bought: '25 November 2026', ...STEADY }));
    expect(today).not.toEqual(await days('fuel', { blend: 'e10', on: addDays('2026-11-25', 60), ...STEADY }));
  });
});

describe('the rubber desk', () => {
  it.each([
    ['NBR', 'June 2020', { from: '2020-06-01', to: '2020-06-30' }],
    ['FKM', 'July 2009 to September 2009', { from: '2009-07-01', to: '2009-09-30' }],
    ['AU', '2024', { from: '2024-01-01', to: '2024-12-31' }],
  ] as const)('answers %s made %s as the model does', async (rubber, made, range) => {
    const life = shelfLife(rubber, range);
    if (!life) throw new Error('No shelf life');
    expect(await days('rubber', { rubber, made })).toEqual([
      daysInWords(life.inspect, '', '2026-11-25'),
      daysInWords(life.end, '', '2026-11-25'),
    ]);
  });

  it('does not judge storage nobody told, and needs rubber and date', async () => {
    expect(await told('rubber', { rubber: 'NBR', made: '2020' })).toContain('not judged');
    expect(faultAt(await refused('rubber', { made: '2020' }), 'rubber')).toBeTruthy();
    expect(faultAt(await refused('rubber', { rubber: 'NBR', made: '' }), 'made')).toBeTruthy();
    expect(faultAt(await refused('rubber', { rubber: 'NBR', made: 'unknown' }), 'made')).toBeTruthy();
  });
});

describe('where it stands, at the desks', () => {
  const BATTERY_ASKED = { chemistry: 'antimony', capacity: '60', charge: '95', drain: '30' };
  const WHOLE = { shelter: 'unheated', low: '-10', high: '30', winter: 'january', air: 'inland' };

  it('says by name what was left open, and no more', async () => {
    expect(await told('battery', { ...BATTERY_ASKED, ...WHOLE })).not.toContain('assumed');
    const words = {
      shelter: 'unheated room, dry floor',
      low: 'coldest night −10 °C',
      high: 'hottest day 32 °C',
      winter: 'winter around January',
      air: 'air inland',
    };
    for (const [key, word] of Object.entries(words))
      for (const [desk, asked] of [
        ['battery', BATTERY_ASKED],
        ['fuel', { blend: 'e10' }],
        ['rubber', { rubber: 'NBR', made: '2020' }],
      ] as const)
        expect(await told(desk, { ...asked, ...WHOLE, [key]: '' }), desk).toContain(`Not told and assumed: ${word}.`);
  });

  it('refuses a hottest day no warmer than the coldest night, told or assumed', async () => {
    for (const told of [{ low: '10', high: '10' }, { low: '35' }, { high: '-15' }])
      for (const [desk, asked] of [
        ['battery', BATTERY_ASKED],
        ['fuel', { blend: 'e10' }],
        ['rubber', { rubber: 'NBR', made: '2020' }],
      ] as const)
        expect(faultAt(await refused(desk, { ...asked, ...(told as Asked) }), 'high'), desk).toBeTruthy();
  });

  it('reckons with a southern winter, with heating and with the humidity told', async () => {
    const asked = { ...BATTERY_ASKED, ...WHOLE, from: '2026-06-01', until: '2026-09-01' };
    const north = await days('battery', asked);
    expect(await days('battery', { ...asked, winter: 'july' })).not.toEqual(north);
    const heated = { ...WHOLE, shelter: 'heated', low: '-20' };
    const fuel = { blend: 'e10', bought: '1 June 2026', tank: '50' };
    expect(await told('fuel', { ...fuel, ...heated, heatedTo: '18' })).toContain(
      `On the coldest night, ${coldestNight({ ...ASSUMED, winterLow: -20, summerHigh: 30, shelter: 'heated', heatedTo: 18 }).toFixed(0)} °C`,
    );
    expect(await told('fuel', { ...fuel, ...heated, heatedTo: '59', 'heatedTo-unit': '°F' })).toContain('15 °C');
    const dry = await told('rubber', { rubber: 'NBR', made: '2020', ...WHOLE, humidity: '20' });
    const wet = await told('rubber', { rubber: 'NBR', made: '2020', ...WHOLE, humidity: '95' });
    expect(wet).toContain('about 95 % humidity');
    expect(dry).not.toContain('humidity, more');
  });
});

describe('a refused desk', () => {
  it('says that nothing typed is lost, and speaks of no saving', async () => {
    for (const { desk, asked, wrong } of DESKS) {
      const [summary] =
        /<div class="fault" role="alert">(.*?)<\/p>/s.exec(await refused(desk, { ...asked, ...wrong })) ?? [];
      expect(text(summary ?? ''), desk).toMatch(/^Nothing you typed is lost\./);
      expect(summary).not.toContain('saved');
    }
  });

  it('names hint and fault of a field together, and a lone unit within its label', async () => {
    const asked = { capacity: '900', charge: '95', chemistry: 'antimony' };
    const html = await refused('battery', asked);
    expect(field(html, 'capacity')['aria-describedby']).toBe('capacity-hint capacity-fault');
    expect(field(await get('battery'), 'capacity')['aria-describedby']).toBe('capacity-hint');
    for (const id of ['capacity-hint', 'capacity-fault']) expect(html.split(` id="${id}"`)).toHaveLength(2);
    expect(inside(html, 'label')).toContain('Capacity in Ah');
  });

  it('asks a day back where it can be two', async () => {
    await site.post(`/members/${site.personId}`, { name: 'Ada', email: '', dateOrder: 'ask' });
    const html = await refused('rubber', { rubber: 'NBR', made: '3/4/2019' });
    expect(choices(html, 'made')).toHaveLength(2);
    for (const madeChoice of choices(html, 'made')) {
      const sent = { ...filledIn(html, '/desks/rubber#answers'), madeChoice } as Asked;
      expect(section(await get('rubber', sent))).not.toBe('');
      expect(filledIn(await get('rubber', sent), '/desks/rubber#answers')).toMatchObject({ madeChoice });
    }
  });
});

describe('on paper', () => {
  it.each([
    ['brake-fluid', { grade: 'dot-4', filled: 'June 2024' }, 'filled: June 2024'],
    ['fuel', { blend: 'e10', bought: 'May 2026' }, 'bought: May 2026'],
    ['rubber', { rubber: 'NBR', made: '3Q19' }, 'made: 3Q19'],
    [
      'battery',
      { capacity: '60', charge: '95', from: '2026-12-01', until: '2027-02-01' },
      'from: 2026-12-01; until: 2027-02-01',
    ],
  ])('the %s desk repeats the days it was asked with', async (desk, asked, words) => {
    const paper =
      /<p class="print-only">(.*?)<\/p>/s.exec(section(await get(desk, asked as unknown as Asked)))?.[1] ?? '';
    expect(text(paper)).toContain(words);
  });
});

describe('the list of desks', () => {
  it('leads to each of them, and each leads to the others', async () => {
    const html = await (await site.get('/desks')).text();
    const paths = [...DESKS.map(({ desk }) => `/desks/${desk}`), '/date-codes'];
    for (const path of paths) expect(tags(html, 'a').map(({ href }) => href)).toContain(path);
    for (const here of paths) {
      const links = tags(await (await site.get(here)).text(), 'a').map(({ href }) => href);
      for (const path of paths.filter((one) => one !== here)) expect(links, here).toContain(path);
    }
  });
});
