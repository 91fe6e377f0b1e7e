import { describe, expect, it } from 'vitest';
import { sweepCollection } from '../../src/acts/sweep.ts';
import { addMonths } from '../../src/dates/civil.ts';
import { siteAt } from '../../src/links.ts';
import { answersTo } from '../../src/store/answers.ts';
import { findCollection, membersOf } from '../../src/store/people.ts';
import { barnOf, carIn, carOf, claim, date, partOf, TODAY } from '../support/cars.ts';
import { filledIn, tags, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const { href } = siteAt(null, 3000);

/** A site whose one letter speaks of a brake fluid long past and of plugs, with the links in it. */
const openWithLetter = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn, { name: 'Merle <Tourer>' });
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2024'));
  date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
  const sweepOn = (today = TODAY) => {
    const collection = findCollection(site.store, site.collectionId);
    if (!collection) throw new Error('No collection');
    return sweepCollection(site.store, collection, { today, now: `${today}T07:00:00.000Z`, href, dryRun: false });
  };
  sweepOn();
  const letter = site.store.$client.prepare('select text from letters').pluck().get() as string;
  const fluid = partOf(barn, carId, 'brake-fluid-glycol');
  const link = (path: RegExp): string => {
    const found = path.exec(letter)?.[1];
    if (!found) throw new Error(`No ${path} in the letter`);
    return found;
  };
  const about = (partId: string) => link(new RegExp(`http://localhost:3000(/answers/[^/]+/${partId}/\\S+)`));
  return {
    site,
    barn,
    carId,
    fluid,
    answer: about(fluid.id),
    seen: link(/http:\/\/localhost:3000(\/seen\/\S+)/),
    stop: link(/http:\/\/localhost:3000(\/stop\/\S+)/),
    sweepOn,
    answers: () => answersTo(site.store, site.collectionId, fluid.id),
    me: () => membersOf(site.store, site.collectionId)[0],
  };
};

const rows = (site: { store: { $client: { prepare(sql: string): { all(): unknown[] } } } }): unknown[] =>
  ['answers', 'parts', 'claims', 'memberships'].map((table) =>
    site.store.$client.prepare(`select * from ${table}`).all(),
  );

describe('a link in a letter', () => {
  it('changes nothing when it is followed, whatever it asks', async () => {
    const { site, answer, seen, stop } = openWithLetter();
    const before = rows(site);
    for (const path of [
      answer,
      ...['seen', 'waiting', 'done', 'not-here'].map((word) => `${answer}?answer=${word}`),
      seen,
      stop,
    ]) {
      const shown = await site.get(path);
      expect(shown.status, path).toBe(200);
      expect(shown.headers.get('set-cookie'), path).toBeNull();
      expect(shown.headers.get('cache-control'), path).toBe('no-store');
      expect((await site.raw(path, { method: 'HEAD' })).status, path).toBe(200);
    }
    expect(rows(site)).toEqual(before);
  });

  it('shows what was asked for first, with the cautions of the work and no word that it is in order', async () => {
    const { site, answer } = openWithLetter();
    const html = await (await site.get(`${answer}?answer=done`)).text();
    expect(text(html)).toMatch(/Brake fluid.*Merle <Tourer>.*Done.*Seen.*Waiting for parts.*Not on this car/);
    expect(text(html)).toContain('Brakes are work for someone trained in them.');
    expect(text(html)).toContain('No answer here says that it is in order.');
  });

  it.each([
    ['another part', (path: string) => path.replace(/\/[^/]+\/([^/]+)$/, '/some-other-part/$1')],
    ['another signature', (path: string) => `${path.slice(0, -1)}${path.endsWith('A') ? 'B' : 'A'}`],
    ['a longer signature', (path: string) => `${path}A`],
  ])('for %s leads nowhere and does nothing', async (_, forge) => {
    const { site, answer } = openWithLetter();
    const before = rows(site);
    expect((await site.get(forge(answer))).status).toBe(404);
    expect((await site.post(forge(answer), { word: 'not here' })).status).toBe(404);
    expect(rows(site)).toEqual(before);
  });

  it('of one purpose is none of another', async () => {
    const { site, seen, stop } = openWithLetter();
    const [, , letterId, signature] = seen.split('/');
    expect((await site.get(`/stop/${letterId}/x/${signature}`)).status).toBe(404);
    expect((await site.post(stop.replace('/stop/', '/answers/'), { word: 'seen' })).status).toBe(404);
  });

  it('ends about a year after its letter', async () => {
    const { site, answer } = openWithLetter();
    site.store.$client.exec(`update letters set day = '${addMonths(TODAY, -14)}'`);
    expect((await site.get(answer)).status).toBe(404);
  });
});

describe('answered', () => {
  it('“seen” ends the reminders of a safety item to whoever answered', async () => {
    const { site, answer, answers, sweepOn } = openWithLetter();
    site.store.$client.exec("update letters set state = 'sent'");
    expect((await site.post(answer, { word: 'seen' })).status).toBe(303);
    expect(answers()).toMatchObject([{ word: 'seen', until: null, answeredOn: TODAY }]);
    expect(sweepOn('2026-12-25').letters).toEqual([]);
  });

  it('not at all, it is told again after thirty days, and says since when', async () => {
    const { site, sweepOn } = openWithLetter();
    site.store.$client.exec("update letters set state = 'sent'");
    expect(sweepOn('2026-12-24').letters).toEqual([]);
    expect(sweepOn('2026-12-25').letters).toMatchObject([{ subject: '1 told again: Merle <Tourer>' }]);
    const last = site.store.$client.prepare('select text from letters order by id desc').pluck().get() as string;
    expect(last).toContain('Told on 25 November 2026, and nobody has answered.');
    expect(last).toContain('but for what can hurt somebody and has no answer yet');
  });

  it('“waiting” holds it back to its day, and brings it back on the day after', async () => {
    const { site, answer, sweepOn, answers } = openWithLetter();
    site.store.$client.exec("update letters set state = 'sent'");
    expect((await site.post(answer, { word: 'waiting', day: '2027-02-10' })).status).toBe(303);
    expect(answers()).toMatchObject([{ word: 'waiting', until: '2027-02-10' }]);
    expect(text(await (await site.get(answer)).text())).toContain('Waiting for parts until 10 February 2027');
    for (const day of ['2026-12-25', '2027-01-31', '2027-02-10'] as const)
      expect(
        sweepOn(day).letters.filter(({ subject }) => subject.includes('told again')),
        day,
      ).toEqual([]);
    expect(sweepOn('2027-02-11').letters).toMatchObject([{ subject: '1 told again: Merle <Tourer>' }]);
  });

  it.each(['', '2026-11-25', '2020-01-01', '2028-01-01', '2027-02-31', 'soon'])(
    '“waiting” until “%s” is asked back, and nothing is lost',
    async (day) => {
      const { site, answer, answers } = openWithLetter();
      const html = await (await site.post(answer, { word: 'waiting', day })).text();
      expect(text(html)).toContain('Say until when: a day after today, and at most a year ahead');
      expect(filledIn(html, answer)['day']).toBe(day);
      expect(answers()).toEqual([]);
    },
  );

  it('“done” writes the day into the record and begins a new one', async () => {
    const { site, barn, carId, fluid, answer } = openWithLetter();
    expect((await site.post(answer, { word: 'done', day: '2026-11-20', how: 'renewed' })).status).toBe(303);
    const next = partOf(barn, carId, 'brake-fluid-glycol');
    expect(next.id).not.toBe(fluid.id);
    expect(next.claims).toMatchObject([
      { clock: 'filled', from: '2026-11-20', to: '2026-11-20', evidence: 'own memory' },
    ]);
    const again = await (await site.get(answer)).text();
    expect(text(again)).toContain('nothing is asked of it any more');
    expect(tags(again, 'a').map(({ href }) => href)).toContain(`/parts/${next.id}`);
    expect((await site.post(answer, { word: 'seen' })).status).toBe(422);
  });

  it('“done” by a look leaves the part where it is', async () => {
    const { site, barn, carId, fluid, answer } = openWithLetter();
    await site.post(answer, { word: 'done', day: '2026-11-20', how: 'looked' });
    const same = partOf(barn, carId, 'brake-fluid-glycol');
    expect(same.id).toBe(fluid.id);
    expect(same.claims.map(({ clock }) => clock)).toContain('serviced');
  });

  it('“done” on a day that can’t be is told at its field', async () => {
    const { site, answer, answers } = openWithLetter();
    const refused = await site.post(answer, { word: 'done', day: '2031-01-01', how: 'renewed' });
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('id="done-fault"');
    expect(answers()).toEqual([]);
  });

  it('“not on this car” takes it off the list and keeps its history', async () => {
    const { site, barn, carId, fluid, answer } = openWithLetter();
    await site.post(answer, { word: 'not here' });
    expect(carOf(barn, carId).parts.map(({ id }) => id)).not.toContain(fluid.id);
    expect(text(await (await site.get(`/parts/${fluid.id}`)).text())).toContain('as answered to a letter');
  });

  it('“not on this car” by a slip is taken back on the page of the part, and told again', async () => {
    const { site, barn, carId, fluid, answer, sweepOn } = openWithLetter();
    await site.post(answer, { word: 'not here' });
    const page = await (await site.get(`/parts/${fluid.id}`)).text();
    expect(text(page)).toContain('It is on this car after all');
    expect((await site.post(`/parts/${fluid.id}/reopen`, {})).status).toBe(303);
    expect(partOf(barn, carId, 'brake-fluid-glycol')).toMatchObject({ id: fluid.id, closedOn: null, closedWhy: null });
    site.store.$client.exec("update letters set state = 'sent'");
    expect(sweepOn('2026-12-25').letters).toMatchObject([{ subject: expect.stringContaining('told again') }]);
  });

  it('a part that was renewed is not opened again: something stands in its place', async () => {
    const { site, barn, carId, fluid, answer } = openWithLetter();
    await site.post(answer, { word: 'done', day: '2026-11-20', how: 'renewed' });
    await site.post(`/parts/${fluid.id}/reopen`, {});
    const next = partOf(barn, carId, 'brake-fluid-glycol');
    expect(next.id).not.toBe(fluid.id);
    const page = await (await site.get(`/parts/${fluid.id}`)).text();
    expect(text(page)).not.toContain('It is on this car after all');
    expect(tags(page, 'a').map(({ href }) => href)).toContain(`/parts/${next.id}`);
  });

  it('all at once as seen leaves what waits for parts to its day', async () => {
    const { site, answer, seen, answers, sweepOn } = openWithLetter();
    site.store.$client.exec("update letters set state = 'sent'");
    await site.post(answer, { word: 'waiting', day: '2027-02-10' });
    await site.post(seen, {});
    expect(answers().at(-1)).toMatchObject({ word: 'waiting', until: '2027-02-10' });
    expect(sweepOn('2027-02-11').letters).toMatchObject([{ subject: expect.stringContaining('told again') }]);
  });

  it('all at once as seen: every open part of the letter, and a word on its page', async () => {
    const { site, fluid, seen } = openWithLetter();
    expect(text(await (await site.get(seen)).text())).toContain('speaks of 2 parts still on the list');
    expect((await site.post(seen, {})).status).toBe(200);
    const given = site.store.$client.prepare('select word from answers').pluck().all();
    expect(given).toEqual(['seen', 'seen']);
    expect(text(await (await site.get(`/parts/${fluid.id}`)).text())).toContain(
      'Seen: answered by Ada on 25 November 2026.',
    );
  });
});

describe('stopping the letters', () => {
  it('by the page that asks stops them all, and says so to whoever looks after the collection', async () => {
    const { site, stop, me, sweepOn } = openWithLetter();
    expect((await site.post(stop, {})).status).toBe(200);
    expect(me()).toMatchObject({ letters: false, stoppedOn: TODAY });
    expect(sweepOn('2027-06-01').letters).toEqual([]);
    expect(text(await (await site.get('/collection')).text())).toContain('Ada stopped all letters on 25 November 2026');
  });

  it('by one click of a mail program needs no page, no cookie and no origin (RFC 8058)', async () => {
    const { site, stop, me } = openWithLetter();
    const clicked = await site.raw(stop, {
      method: 'POST',
      body: 'List-Unsubscribe=One-Click',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
    });
    expect(clicked.status).toBe(200);
    expect(me()?.stoppedOn).toBe(TODAY);
  });

  it('is undone by turning them on again', async () => {
    const { site, stop, me } = openWithLetter();
    await site.post(stop, {});
    await site.post(`/members/${site.personId}/letters`, { letters: 'on', severities: 'safety' });
    expect(me()).toMatchObject({ letters: true, stoppedOn: null });
  });
});
