import { describe, expect, it } from 'vitest';
import { kindOf } from '../../src/acts/parts.ts';
import { CAUTIONS, DEFERS } from '../../src/catalogue/cautions.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { LOOKS } from '../../src/plans/looks.ts';
import { carOf, claim, date, must, partOf } from '../support/cars.ts';
import { faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import { BACK, everythingIn, PARKED, stayIn, tickOn, winterSite } from '../support/lay-ups.ts';

const DAY: CivilDate = '2026-12-02';
const GOOD = { 'look.smell': 'none', 'look.mice': 'none', 'look.drips': 'none', 'look.wet': 'dry' };

const standing = async (more: Record<string, string | string[]> = {}) => {
  const made = await winterSite(more);
  const part = (kind: string, position: string | null = null) => partOf(made.barn, made.carId, kind, position);
  const volts = `${part('battery-flooded').id}.rest-voltage.`;
  const tire = `${part('tires-road', 'front left').id}.cold-pressure.`;
  const keep = (fields: Record<string, string>, on: CivilDate = DAY) => made.send('/round', '/round', fields, on);
  /** The looks asked on a day, by their keys. */
  const asked = async (on: CivilDate): Promise<string[]> => [
    ...new Set(
      tags(await made.page('/round', on), 'input').flatMap(({ name = '' }) =>
        name.startsWith('look.') ? [name.slice('look.'.length)] : [],
      ),
    ),
  ];
  /** The rows of the table of rounds on the plan’s page. */
  const rows = async (on: CivilDate): Promise<string[]> =>
    inside(/<table class="rounds">(.*?)<\/table>/s.exec(await made.page('', on))?.[1] ?? '', 'tr').slice(1);
  return { ...made, part, volts, tire, keep, asked, rows };
};

describe('the page of a round', () => {
  it('asks each look with its answers to choose from, none chosen, and each number with its unit', async () => {
    const { page, at, volts, tire } = await standing();
    const html = await page('/round', DAY);
    const smell = LOOKS.find(({ key }) => key === 'smell');
    const radios = tags(html, 'input').filter(({ name }) => name === 'look.smell');
    expect(radios.map(({ type, value }) => [type, value])).toEqual(
      Object.keys(smell?.answers ?? {}).map((key) => ['radio', key]),
    );
    expect(ticked(html, 'look.smell')).toEqual([]);
    expect(inside(html, 'legend')).toContain(smell?.name);
    // Every radio stands within its label, to be hit with a thumb.
    for (const { name, value } of tags(html, 'input').filter(({ type }) => type === 'radio'))
      expect(html, `${name} ${value}`).toMatch(
        new RegExp(`<label>\\s*<input type="radio" name="${name}" value="${value}"[^>]*/> <span>[^<]+</span>`),
      );
    expect(field(html, `${volts}typed`)).toMatchObject({ inputmode: 'decimal', value: '' });
    expect(filledIn(html, at('/round', DAY))).toMatchObject({ [`${tire}unit`]: 'bar', day: '', note: '' });
    const names = tags(html, 'input').flatMap(({ name = '', type }) => (type === 'radio' ? [] : [name]));
    expect(names.filter((name) => name !== 'on')).toEqual([...new Set(names.filter((name) => name !== 'on'))]);
    expect(inside(html, 'button')).toContain('Save the round');
    expect(text(html)).toContain('Due since 1 December 2026.');
  });

  it('before the parking day says kindly that it is too early, and asks nothing', async () => {
    const { page } = await standing();
    const html = await page('/round', '2026-10-20');
    expect(text(html)).toContain('It is parked on 1 November 2026; the first round comes a month later.');
    expect(html).not.toContain('name="look.');
    expect(inside(html, 'h1')).toHaveLength(1);
  });

  it('asks more in the third and the sixth month', async () => {
    const { asked } = await standing({ returnOn: '2027-10-01' });
    const [first, third, sixth] = [await asked('2026-12-02'), await asked('2027-02-02'), await asked('2027-05-02')];
    expect(third).toEqual(expect.arrayContaining(['desiccant', 'under-hood']));
    expect(sixth).toEqual(expect.arrayContaining(['desiccant', 'under-hood', 'oil-smell']));
    for (const key of ['desiccant', 'under-hood', 'oil-smell']) expect(first, key).not.toContain(key);
    expect(third).not.toContain('oil-smell');
    expect(await asked('2027-01-02')).toEqual(first);
  });

  it('made early asks what it counts for', async () => {
    const { asked } = await standing();
    expect(await asked('2027-01-25')).toEqual(await asked('2027-02-02'));
    expect(await asked('2027-01-20')).not.toContain('under-hood');
  });

  it('follows the car and the sides taken', async () => {
    const { asked, send } = await standing();
    expect(await asked(DAY)).toEqual(expect.arrayContaining(['lamp', 'clutch', 'rolled']));
    await send('/steps/battery-maintainer', '/sides', { topic: 'battery', side: 'isolator' });
    expect(await asked(DAY)).not.toContain('lamp');
  });

  it('names the rounds that were missed', async () => {
    const { page } = await standing();
    expect(text(await page('/round', DAY))).not.toContain('Missed:');
    expect(text(await page('/round', '2027-02-02'))).toContain('Missed: 1 December 2026; 1 January 2027.');
  });

  it('warns of what its looks can do, and of a short start', async () => {
    const { page } = await standing();
    const html = await page('/round', DAY);
    const [before = '', form = '', after = ''] = html.split(
      /<form[^>]* class="round">|(?<=<button class="big">.*?)<\/form>/s,
    );
    expect(text(before)).toContain('Do not start it for a short while');
    const fields = [...form.matchAll(/<fieldset class="look">(.*?)<\/fieldset>/gs)].map(([, inner]) => inner ?? '');
    expect(fields.length).toBeGreaterThan(5);
    // Each caution beside the look it belongs to, and what comes before all of them below.
    for (const field of fields) {
      const look = LOOKS.find(({ name }) => name === inside(field, 'legend')[0]);
      const cautions = [...field.matchAll(/<p class="caution">(.*?)<\/p>/gs)].map(([, words]) => text(words ?? ''));
      expect(cautions, look?.key).toEqual(look?.cautions.map((key) => CAUTIONS[key]));
    }
    expect(text(after)).toContain(DEFERS);
  });
});

describe('keeping a round', () => {
  it('keeps looks, note and readings with one button, of that day', async () => {
    const { keep, id, barn, part, volts, tire, rows } = await standing();
    const form = {
      ...GOOD,
      [`${volts}typed`]: '12,6',
      [`${tire}typed`]: '36',
      [`${tire}unit`]: 'psi',
      note: 'Cold <snap>',
    };
    const answer = await keep(form);
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/lay-ups/${id}?on=${DAY}#standing`]);
    expect(part('battery-flooded').readings).toMatchObject([{ value: 12.6, day: DAY, recordedOn: DAY }]);
    expect(part('tires-road', 'front left').readings[0]?.value).toBeCloseTo(2.482, 3);
    expect(stayIn(barn, id, DAY).record.rounds).toMatchObject([
      { day: DAY, by: 'Ada', note: 'Cold <snap>', answers: { smell: 'none', mice: 'none', drips: 'none', wet: 'dry' } },
    ]);
    expect((await rows(DAY))[0]).toBe(
      '1 December 2026 made 2 December 2026, Ada. 4 looked at, nothing found. Cold <snap> Take it back',
    );
  });

  it('with one number that can’t be keeps all that was typed and chosen, and stores nothing', async () => {
    const { keep, at, barn, volts, tire } = await standing();
    const before = everythingIn(barn);
    const typed = {
      ...GOOD,
      'look.rolled': 'done',
      [`${volts}typed`]: '126',
      [`${tire}typed`]: '2.4',
      note: 'With <Nell>',
    };
    const answer = await keep(typed);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, at('/round', DAY))).toMatchObject(typed);
    expect(faultAt(html, `${volts}typed`)).toBeTruthy();
    expect(faultAt(html, `${tire}typed`)).toBeUndefined();
    expect(everythingIn(barn)).toEqual(before);
    expect((await keep({ ...typed, [`${volts}typed`]: '12.6' })).status).toBe(303);
  });

  it('asks back a number seldom seen, and keeps it once it is confirmed', async () => {
    const { site, keep, at, volts, part } = await standing();
    const html = await (await keep({ ...GOOD, [`${volts}typed`]: '9.8' })).text();
    expect(part('battery-flooded').readings).toEqual([]);
    const sure = { ...filledIn(html, at('/round', DAY)), [`${volts}typedChoice`]: 'sure' };
    expect((await site.post(at('/round', DAY), sure)).status).toBe(303);
    expect(part('battery-flooded').readings).toMatchObject([{ value: 9.8 }]);
  });

  it('sent empty says that one answer is enough, and keeps nothing', async () => {
    const { keep, barn, id } = await standing();
    const answer = await keep({});
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(text(html)).toContain('one look or one number makes a round');
    expect(html).toContain('id="looks-fault"');
    expect(stayIn(barn, id, DAY).record.rounds).toEqual([]);
  });

  it.each(['2026-12-03', '2026-10-31', '2026-02-30'])('refuses the day %s beside its field', async (day) => {
    const { keep, barn, id } = await standing();
    const answer = await keep({ ...GOOD, day });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('id="day-fault"');
    expect(field(html, 'day')['value']).toBe(day);
    expect(stayIn(barn, id, DAY).record.rounds).toEqual([]);
  });

  it('rolled on, says since when the tires stand there', async () => {
    const { keep, part } = await standing();
    await keep({ 'look.rolled': 'done' });
    expect(part('tires-road', 'rear right').claims).toMatchObject([{ clock: 'used', from: DAY, to: DAY }]);
  });

  it('that found something says on the plan what to do; a better one ends that', async () => {
    const { keep, page } = await standing();
    await keep({ ...GOOD, 'look.smell': 'fuel' });
    const plan = text(await page('', DAY));
    expect(plan).toContain('What can’t wait');
    expect(plan).toContain('Smell, inside and around it: fuel (seen on 2 December 2026). Switch nothing on');
    await keep(GOOD, '2027-01-02');
    expect(text(await page('', '2027-01-02'))).not.toContain('seen on 2 December 2026');
  });

  it('is shown with the missed ones and those ahead, and can be taken back', async () => {
    const { site, at, keep, rows, barn, id } = await standing();
    await keep(GOOD, '2027-01-02');
    expect((await rows('2027-01-05')).map((row) => row.replace(/ \d+ January 2027, Ada.*/, ''))).toEqual([
      '1 December 2026 missed',
      '1 January 2027 made',
      '1 February 2027 ahead',
      '1 March 2027 ahead',
    ]);
    const made = stayIn(barn, id, '2027-01-05').record.rounds[0]?.id;
    expect((await site.post(at(`/rounds/${made}/withdraw`, '2027-01-05'), {})).status).toBe(303);
    expect((await rows('2027-01-05'))[1]).toBe('1 January 2027 due');
  });

  it('between the monthly ones is shown by its day, and can be taken back', async () => {
    const { site, at, keep, rows, page, barn, id } = await standing();
    await keep(GOOD);
    await keep({ ...GOOD, 'look.wet': 'damp', note: 'After the <storm>' }, '2026-12-15');
    const on: CivilDate = '2026-12-16';
    const shown = await rows(on);
    expect(shown.slice(0, 3).map((row) => row.replace(/(made|ahead).*/, '$1'))).toEqual([
      '1 December 2026 made',
      '2 December 2026 made',
      '1 January 2027 ahead',
    ]);
    // The later one counts for the month; the other is kept and shown as well.
    expect(shown[0]).toMatch(/^1 December 2026 made 15 December 2026, Ada\. .*damp.* After the <storm> Take it back$/);
    expect(shown[1]).toBe(
      '2 December 2026 made between 2 December 2026, Ada. 4 looked at, nothing found. Take it back',
    );
    const between = stayIn(barn, id, on).record.rounds.find(({ day }) => day === DAY)?.id;
    expect(filledIn(await page('', on), at(`/rounds/${between}/withdraw`, on))).toEqual({});
    expect((await site.post(at(`/rounds/${between}/withdraw`, on), {})).status).toBe(303);
    expect((await rows(on)).join()).not.toContain('2 December 2026, Ada');
    expect((await rows(on))[0]).toContain('1 December 2026 made 15 December 2026');
    expect(stayIn(barn, id, on).record.rounds).toHaveLength(1);
  });

  it('before the parking day is refused on a page', async () => {
    const { site, at, barn, id } = await standing();
    const answer = await site.post(at('/round', '2026-10-20'), GOOD);
    expect(answer.status).toBe(422);
    expect(text(await answer.text())).toContain('It is parked on 1 November 2026');
    expect(stayIn(barn, id, PARKED).record.rounds).toEqual([]);
  });
});

describe('the way back', () => {
  it('before it stands is a promise, while it stands work and a road check', async () => {
    const { page, at } = await standing();
    const ahead = text(await page('/wake-up'));
    expect(ahead).toContain('It comes back on 1 April 2027. As it would be if every step before it stands is done');
    expect(await page('/wake-up')).not.toContain('class="road-check"');
    const html = await page('/wake-up', '2027-03-20');
    expect(inside(html, 'h2')[0]).toBe('Before the road: not on the road until these are put right, or dated');
    expect(text(html)).toContain('What was not ticked before it stood comes back here as work.');
    expect(html).toContain('id="brake-stuck"');
    expect(text(html)).toMatch(/Against it .*Road tire, front left: unproven/);
    expect(tags(html, 'a').map(({ href }) => href)).toContain(at('/close', '2027-03-20'));
  });

  /** Every part young by the clock of its kind: nothing of the car speaks against the road. */
  const dated = async () => {
    const made = await standing();
    for (const part of carOf(made.barn, made.carId).parts) {
      const { clock } = kindOf(part);
      date(
        made.barn,
        made.carId,
        part.kind,
        claim(clock, clock === 'printed' ? 'June 2032' : 'August 2026'),
        part.position,
      );
    }
    return made;
  };

  it('says how many steps come first, and once they are done that a local drive is the most', async () => {
    const { barn, id, page } = await dated();
    const on: CivilDate = '2027-03-31';
    const open = stayIn(barn, id, on).view.wakeUp.steps.filter(({ key }) => key !== 'road-check');
    expect(inside(await page('/wake-up', on), 'h2')[0]).toBe(
      `Before the road: not before the ${open.length} open steps below are done`,
    );
    for (const { key } of open) must(tickOn(barn, id, key, on, {}, 'wake-up'));
    expect(inside(await page('/wake-up', on), 'h2')[0]).toBe('Before the road: a local drive at most');
  });

  it('has what the rounds found against the road, on its page and on paper', async () => {
    const { page, keep } = await dated();
    await keep({ ...GOOD, 'look.smell': 'fuel' }, '2027-03-02');
    const on: CivilDate = '2027-03-20';
    for (const path of ['/wake-up', '/sheets/wake-up']) {
      const html = await page(path, on);
      expect(inside(html, 'h3'), path).toContain('Found on the rounds');
      expect(text(html), path).toMatch(/[Nn]ot on the road until these are put right/);
      expect(text(html), path).toMatch(/Found on the rounds .*[Ss]mell, inside and around it: fuel/);
    }
    await keep(GOOD, '2027-03-21');
    expect(inside(await page('/wake-up', '2027-03-21'), 'h3')).not.toContain('Found on the rounds');
  });

  it('steps are ticked on pages of their own', async () => {
    const { send, page, barn, id } = await standing();
    await send('/wake-up/battery', '/wake-up/battery/done', {}, '2027-03-30');
    expect(stayIn(barn, id, BACK).record.ticks).toMatchObject([{ plan: 'wake-up', step: 'battery', state: 'done' }]);
    expect(text(await page('/wake-up', BACK))).toMatch(/1 of \d+ steps done\./);
    expect(text(await page('/steps/battery-maintainer', BACK))).toContain('Tick it off');
  });
});
