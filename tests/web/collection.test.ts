import { describe, expect, it } from 'vitest';
import { carsOf } from '../../src/store/cars.ts';
import { allCollections, membersOf } from '../../src/store/people.ts';
import { carIn, openBarn } from '../support/cars.ts';
import { faultAt, field, filledIn, inside, text, ticked } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const open = () => {
  const site = openSite();
  const read = async (cookie = '') => (await site.get('/collection', cookie ? { cookie } : {})).text();
  const members = () => membersOf(site.store, site.collectionId);
  return { site, read, members };
};

const cookieOf = (answer: Response): string => answer.headers.get('set-cookie')?.split(';')[0] ?? '';

describe('the collection', () => {
  it('takes a new name and time zone', async () => {
    const { site, read } = open();
    const answer = await site.post('/collection', { name: 'Barn & <shed>', timeZone: 'America/Denver' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/collection?saved=yes']);
    expect(allCollections(site.store)).toMatchObject([{ name: 'Barn & <shed>', timeZone: 'America/Denver' }]);
    const html = await read();
    expect(filledIn(html, '/collection')).toEqual({ name: 'Barn & <shed>', timeZone: 'America/Denver' });
    expect(html).not.toContain('<shed>');
  });

  it('rejects an empty name and a time zone there is none of, and keeps both as typed', async () => {
    const { site } = open();
    const answer = await site.post('/collection', { name: '', timeZone: 'Mars/Base' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'name')).toBe('Give the collection a name.');
    expect(faultAt(html, 'timeZone')).toBe(
      '“Mars/Base” is no time zone. Write one such as Europe/Lisbon or America/Denver.',
    );
    expect(filledIn(html, '/collection')).toEqual({ name: '', timeZone: 'Mars/Base' });
    expect(allCollections(site.store)).toMatchObject([{ name: 'My cars', timeZone: 'Europe/Lisbon' }]);
  });
});

describe('a member', () => {
  it('is added, and changed', async () => {
    const { site, members } = open();
    const bram = { name: 'Bram', email: 'bram@example.org', dateOrder: 'month first', letters: 'on' };
    expect((await site.post('/members/new', bram)).status).toBe(303);
    expect(members()).toMatchObject([{ name: 'Ada' }, { ...bram, letters: true }]);
    const id = members()[1]?.id ?? '';
    expect((await site.post(`/members/${id}`, { name: 'Bram', email: '', dateOrder: 'ask' })).status).toBe(303);
    expect(members()[1]).toMatchObject({ id, name: 'Bram', email: null, dateOrder: 'ask', letters: false });
    expect(members()[0]).toMatchObject({ name: 'Ada', email: 'ada@example.org', letters: true });
  });

  it('stands on the page with a form of their own', async () => {
    const { site, read } = open();
    await site.post('/members/new', { name: 'Bram', email: '', dateOrder: 'month first' });
    const html = await read();
    expect(inside(html, 'h3')).toEqual(['Ada', 'Bram', 'Add a person']);
    expect(filledIn(html, `/members/${site.personId}`)).toEqual({
      name: 'Ada',
      email: 'ada@example.org',
      dateOrder: 'day first',
      letters: 'on',
    });
  });

  it.each([
    ['new', { name: '', email: 'bram at home', dateOrder: 'ask' }],
    ['their own form', { name: '', email: 'ada at home', dateOrder: 'ask' }],
  ])('with a fault is rejected at the fields of %s, and the other forms stay as they were', async (which, given) => {
    const { site, members } = open();
    const before = members();
    const id = which === 'new' ? 'new' : site.personId;
    const answer = await site.post(`/members/${id}`, given);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, `/members/${id}`)).toEqual(given);
    for (const [name, why] of [
      ['name', 'Give a name.'],
      ['email', `“${given.email}” is no mail address.`],
    ])
      expect(text(html.split(`id="${id}-${name}-fault"`)[1]?.split('</div>')[0]?.slice(1) ?? ''), name).toBe(why);
    expect(html.match(new RegExp(`aria-describedby="${id}-(name|email)-fault"`, 'g'))).toHaveLength(2);
    const other = id === 'new' ? site.personId : 'new';
    expect(html).not.toContain(`${other}-name-fault`);
    expect(members()).toEqual(before);
  });
});

describe('this browser', () => {
  it('remembers for whom it acts, for nobody else', async () => {
    const { site, read, members } = open();
    await site.post('/members/new', { name: 'Bram', email: '', dateOrder: 'ask' });
    const bram = members()[1]?.id ?? '';
    const answer = await site.post('/acting', { person: bram });
    expect(answer.headers.get('set-cookie')).toMatch(/^person=.*; Path=\/; HttpOnly; SameSite=Lax$/);
    expect(filledIn(await read(cookieOf(answer)), '/acting')).toEqual({ person: bram });
    expect(filledIn(await read(), '/acting')).toEqual({ person: site.personId });
  });

  it('that names somebody unknown acts for the first member', async () => {
    const { site, read } = open();
    const answer = await site.post('/acting', { person: 'nobody', collection: 'none' });
    expect(answer.status).toBe(303);
    expect(filledIn(await read('person=nobody; collection=none'), '/acting')).toEqual({ person: site.personId });
  });
});

describe('another collection', () => {
  it('is started by whoever acts, and shown from then on', async () => {
    const { site, read } = open();
    carIn(openBarn(site.store));
    const answer = await site.post('/collections', { name: 'Shed', timeZone: 'Asia/Tokyo' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/collection']);
    const shed = allCollections(site.store).find(({ name }) => name === 'Shed');
    const html = await read(cookieOf(answer));
    expect(field(html, 'name')['value']).toBe('Shed');
    expect(inside(html, 'h3')[0]).toBe('Ada');
    expect(membersOf(site.store, shed?.id ?? '')).toMatchObject([{ name: 'Ada', email: 'ada@example.org' }]);
  });

  it('takes the cars added while it is shown; the first one’s stay apart', async () => {
    const { site } = open();
    const cookie = cookieOf(await site.post('/collections', { name: 'Shed', timeZone: 'Asia/Tokyo' }));
    const car = { name: 'Shed Six', built: '1930', start: 'tourer-rod-brakes' };
    expect((await site.post('/cars', car, { cookie })).status).toBe(303);
    expect(carsOf(site.store, site.collectionId)).toEqual([]);
    expect(inside(await (await site.get('/', { cookie })).text(), 'h2')[0]).toContain('Shed Six');
    expect(text(await (await site.get('/')).text())).toContain('No cars in “My cars” yet');
  });

  it('with a fault is rejected in its own form', async () => {
    const { site } = open();
    const answer = await site.post('/collections', { name: '', timeZone: 'Mars/Base' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, '/collections')).toEqual({ name: '', timeZone: 'Mars/Base' });
    expect(html).toContain('aria-describedby="another-name-fault"');
    expect(html).toContain('aria-describedby="another-timeZone-fault"');
    expect(filledIn(html, '/collection')).toEqual({ name: 'My cars', timeZone: 'Europe/Lisbon' });
    expect(ticked(html, 'dateOrder')).toEqual(['day first', 'ask']);
    expect(allCollections(site.store)).toHaveLength(1);
  });
});
