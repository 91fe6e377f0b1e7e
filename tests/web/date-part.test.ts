import { describe, expect, it } from 'vitest';
import { SEVERITIES } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { barnOf, carIn, carOf, claim, date, partOf } from '../support/cars.ts';
import { choices, faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const siteWithCar = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const tire = partOf(barn, carId, 'tires-road', 'front left').id;
  /** The dating form of a part as the page has it, with some of it filled in. */
  const fill = async (partId: string, form: Record<string, string>, query = '') => {
    const path = `/parts/${partId}/date`;
    const page = await (await site.get(`${path}${query}`)).text();
    return site.post(path, { ...filledIn(page, path), ...form });
  };
  const claims = (kind = 'tires-road', position: string | null = 'front left') =>
    partOf(barn, carId, kind, position).claims;
  return { site, barn, carId, tire, fill, claims };
};

describe('dating a part', () => {
  it('records the date and leads back to the part, which shows it as typed and as understood', async () => {
    const { site, tire, fill, claims } = siteWithCar();
    const answer = await fill(tire, { typed: '2318', distance: '54,300 mi', note: 'Inner side' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${tire}`]);
    expect(claims()).toMatchObject([
      {
        clock: 'made',
        typed: '2318',
        from: '2018-06-10',
        evidence: 'read on the part',
        km: 87_387,
        note: 'Inner side',
      },
    ]);
    const html = await (await site.get(`/parts/${tire}`)).text();
    expect(inside(html, 'h1')).toEqual(['Road tire, front left look']);
    expect(text(html)).toContain(
      'Made: “2318”, understood as 2018-06-10/2018-06-16 read on the part at 87,387 km. Inner side',
    );
  });

  it('that is rejected keeps everything typed and picked and says beside the field why', async () => {
    const { tire, fill, claims } = siteWithCar();
    const given = { typed: '54<17', distance: 'far', note: 'Inner & outer', evidence: 'dated photo', clock: 'fitted' };
    const answer = await fill(tire, given);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'distance')).toContain('“far” is no distance');
    expect(filledIn(html, `/parts/${tire}/date`)).toEqual({ ...given, round: '' });
    const second = await (await fill(tire, { ...given, distance: '' })).text();
    expect(faultAt(second, 'typed')).toContain('“54<17” was not understood as a date');
    expect(field(second, 'typed')).toMatchObject({ value: '54<17', 'aria-invalid': 'true' });
    expect(claims()).toEqual([]);
  });

  it('asks which date is meant, beside the field, and takes the one picked', async () => {
    const { site, tire, fill, claims } = siteWithCar();
    const answer = await fill(tire, { typed: '2015' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(choices(html, 'typed')).toEqual(['2015-05-17/2015-05-23', '2015']);
    const sent = filledIn(html, `/parts/${tire}/date`);
    expect(sent['typedAsked']).toBe('2015');
    const picked = await site.post(`/parts/${tire}/date`, { ...sent, typedChoice: '2015' });
    expect(picked.status).toBe(303);
    expect(claims()).toMatchObject([{ typed: '2015', edtf: '2015', from: '2015-01-01' }]);
  });

  it('drops a choice once the text is another one', async () => {
    const { site, tire, claims } = siteWithCar();
    const stale = { clock: 'made', evidence: 'read on the part', typedAsked: '2015', typedChoice: '2015' };
    const asked = await site.post(`/parts/${tire}/date`, { ...stale, typed: '2016' });
    expect(asked.status).toBe(422);
    expect(choices(await asked.text(), 'typed')).toEqual(['2016-05-15/2016-05-21', '2016']);
    await site.post(`/parts/${tire}/date`, { ...stale, typed: '2318' });
    expect(claims()).toMatchObject([{ typed: '2318', from: '2018-06-10' }]);
  });

  it('keeps a choice while another field is put right', async () => {
    const { site, tire, claims } = siteWithCar();
    const picked = { clock: 'made', evidence: 'own memory', typed: '2015', typedAsked: '2015', typedChoice: '2015' };
    const html = await (await site.post(`/parts/${tire}/date`, { ...picked, distance: 'far' })).text();
    const again = { ...filledIn(html, `/parts/${tire}/date`), distance: '' };
    expect((await site.post(`/parts/${tire}/date`, again)).status).toBe(303);
    expect(claims()).toMatchObject([{ typed: '2015', edtf: '2015' }]);
  });

  it('asks for the small triangle where a tire has three digits, and goes by the answer', async () => {
    const { site, barn, tire, fill, claims } = siteWithCar();
    expect(barn.acting.today).toBe('2026-11-25');
    const html = await (await fill(tire, { typed: '417' })).text();
    expect(text(html)).toContain('Is there a small triangle after the three digits?');
    expect(choices(html, 'typed')).toHaveLength(4);
    const sent = filledIn(html, `/parts/${tire}/date`);
    expect((await site.post(`/parts/${tire}/date`, { ...sent, ninetiesMark: 'seen' })).status).toBe(303);
    expect(claims()).toMatchObject([{ typed: '417', from: '1997-10-12' }]);
  });

  it('with one touch answers in place of the text', async () => {
    const { fill, claims, barn, carId } = siteWithCar();
    const dampers = partOf(barn, carId, 'dampers').id;
    await fill(dampers, { typed: 'nonsense', quick: 'original' });
    expect(claims('dampers', null)).toMatchObject([{ said: 'original', typed: 'original' }]);
  });

  it('offers again what was typed last for parts alike, not codes of other kinds', async () => {
    const { site, barn, carId, tire } = siteWithCar();
    date(barn, carId, 'tires-road', claim('made', '2318'), 'rear left');
    date(barn, carId, 'spark-plugs', claim('fitted', 'May 2019', { evidence: 'workshop statement' }));
    const offered = async (partId: string) => {
      const html = await (await site.get(`/parts/${partId}/date`)).text();
      const quick = tags(html, 'button').filter((button) => button['class'] === 'again');
      return { again: quick.map(({ value }) => value), evidence: ticked(html, 'evidence') };
    };
    expect(await offered(tire)).toEqual({ again: ['2318'], evidence: ['read on the part'] });
    expect(await offered(partOf(barn, carId, 'dampers').id)).toEqual({
      again: ['May 2019'],
      evidence: ['own memory'],
    });
  });

  it('refuses a date that cannot stand beside the part’s others, with the reason', async () => {
    const { tire, fill, claims } = siteWithCar();
    await fill(tire, { typed: '2320' });
    const answer = await fill(tire, { typed: 'May 2019', clock: 'fitted', evidence: 'receipt' });
    expect(answer.status).toBe(422);
    expect(faultAt(await answer.text(), 'typed')).toContain('before it was made: made not before 7 June 2020');
    expect(claims()).toHaveLength(1);
  });

  it('is done by the person this browser acts for, in their order of day and month', async () => {
    const { site, barn, carId } = siteWithCar();
    await site.post('/members/new', { name: 'Bram', email: '', dateOrder: 'month first' });
    const bram = site.store.$client.prepare("select id from people where name = 'Bram'").pluck().get() as string;
    const acting = await site.post('/acting', { person: bram });
    const cookie = acting.headers.get('set-cookie')?.split(';')[0] ?? '';
    const dampers = partOf(barn, carId, 'dampers').id;
    const form = { clock: 'fitted', evidence: 'receipt', typed: '3/4/2015' };
    await site.post(`/parts/${dampers}/date`, form, { cookie });
    await site.post(`/parts/${dampers}/date`, form);
    expect(partOf(barn, carId, 'dampers').claims).toMatchObject([
      { from: '2015-03-04', recordedBy: bram },
      { from: '2015-04-03', recordedBy: site.personId },
    ]);
  });

  it('sent without a way of knowing is no form of ours', async () => {
    const { site, tire } = siteWithCar();
    expect((await site.post(`/parts/${tire}/date`, { clock: 'made', typed: '2318' })).status).toBe(400);
  });
});

describe('the dating round', () => {
  const partIn = (location: string | null): string =>
    /^\/parts\/([^/]+)\/date\?round=1/.exec(location ?? '')?.[1] ?? '';

  it('walks every part once, gravest first, and ends at the car', async () => {
    const { site, barn, carId } = siteWithCar();
    const waiting = carOf(barn, carId).parts.length;
    const walked: string[] = [];
    let next = (await site.get(`/cars/${carId}/dating`)).headers.get('location');
    while (partIn(next) && walked.length <= waiting) {
      const id = partIn(next);
      walked.push(carOf(barn, carId).parts.find((part) => part.id === id)?.kind ?? '');
      const answered = await site.post(`/parts/${id}/date`, {
        clock: 'made',
        evidence: 'own memory',
        quick: 'unknown',
        round: '1',
      });
      const onward = answered.headers.get('location') ?? '';
      expect(onward).toBe(`/cars/${carId}/dating?done=${id}`);
      next = (await site.get(onward)).headers.get('location');
    }
    expect(next).toBe(`/cars/${carId}`);
    expect(walked).toHaveLength(waiting);
    const weights = walked.map((kind) => SEVERITIES.indexOf(KINDS.get(kind)?.severity ?? 'cosmetic'));
    expect(weights).toEqual(weights.toSorted((a, b) => a - b));
  });

  it('says what was just recorded and how it was understood', async () => {
    const { site, tire, fill } = siteWithCar();
    const answer = await fill(tire, { typed: '2318' }, '?round=1');
    const next = await site.get(answer.headers.get('location') ?? '');
    const html = await (await site.get(next.headers.get('location') ?? '')).text();
    expect(text(html)).toContain('Recorded: Road tire, front left, understood as 10 to 16 June 2018. Change it');
    expect(field(html, 'round')['value']).toBe('1');
  });

  it('passes over what is skipped and comes back to it at the end', async () => {
    const { site, barn, carId } = siteWithCar();
    const first = partIn((await site.get(`/cars/${carId}/dating`)).headers.get('location'));
    const second = partIn((await site.get(`/cars/${carId}/dating?skip=${first}`)).headers.get('location'));
    expect(second).not.toBe(first);
    const skipped = partOf(barn, carId, 'wiring').id;
    const waiting = carOf(barn, carId).parts.filter(({ id }) => id !== skipped);
    for (const { id } of waiting)
      await site.post(`/parts/${id}/date`, { clock: 'made', evidence: 'own memory', quick: 'unknown' });
    const last = (await site.get(`/cars/${carId}/dating?done=${waiting.at(-1)?.id}`)).headers.get('location');
    expect(partIn(last)).toBe(skipped);
  });

  it('still waits for what was only “not looked yet”', async () => {
    const { site, barn, carId } = siteWithCar();
    for (const { id, kind } of carOf(barn, carId).parts)
      await site.post(`/parts/${id}/date`, {
        clock: 'made',
        evidence: 'own memory',
        quick: kind === 'wiring' ? 'not looked yet' : 'unknown',
      });
    const next = (await site.get(`/cars/${carId}/dating`)).headers.get('location');
    expect(partIn(next)).toBe(partOf(barn, carId, 'wiring').id);
    expect(text(await (await site.get(`/cars/${carId}`)).text())).toContain('One part waits for a date');
  });
});
