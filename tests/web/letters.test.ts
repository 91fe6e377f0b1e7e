import { describe, expect, it } from 'vitest';
import { parcelFor } from '../../src/acts/refresh-letter.ts';
import { siteAt } from '../../src/links.ts';
import { createLog } from '../../src/log.ts';
import { deliver } from '../../src/mail/deliver.ts';
import { smtpTransport, type Transport } from '../../src/mail/transport.ts';
import { changeMember } from '../../src/store/people.ts';
import { barnOf, carIn, claim, date } from '../support/cars.ts';
import { inside, tags, text } from '../support/html.ts';
import { openSite, type TestSite } from '../support/site.ts';

const { href } = siteAt(null, 3000);

/** A site that delivers for real, to a transport that answers as it is told. */
const openWith = (transport: Partial<Transport>) => {
  const judge = smtpTransport('smtp://127.0.0.1:1', 'standstill@example.org').judge;
  const mail = { send: async () => '250 Taken', judge, close: () => {}, ...transport };
  const site: TestSite = openSite({
    deliver: () =>
      deliver({
        store: site.store,
        transports: { mail, push: mail, webhook: mail },
        refresh: (letter, at) => parcelFor(site.store, letter, { now: at, href }),
        log: createLog('error', () => {}),
        now: () => new Date('2026-11-25T10:00:00Z'),
        goOn: () => true,
      }),
  });
  const carId = carIn(barnOf(site), { name: 'Merle <Tourer>' });
  date(barnOf(site), carId, 'brake-fluid-glycol', claim('filled', '1 June 2024'));
  const read = async (path: string) => (await site.get(path)).text();
  const letterId = () => site.store.$client.prepare('select id from letters').pluck().get() as string;
  return { site, carId, read, letterId };
};

describe('the page of the letters', () => {
  it('says that they are files where no mail server is named', async () => {
    for (const hasMailServer of [true, false])
      for (const path of ['/letters', '/status']) {
        const shown = text(await (await openSite({ hasMailServer }).get(path)).text());
        expect(shown.includes('No mail server is named'), path).toBe(!hasMailServer);
      }
  });

  it('says who stopped them, where they are started again, and offers no test to them', async () => {
    const { site, read } = openWith({});
    expect(await read('/letters')).toContain('Send a test');
    changeMember(site.store, site.collectionId, site.personId, { letters: false, stoppedOn: '2026-11-20' });
    const html = await read('/letters');
    expect(text(html)).toContain('Ada stopped all letters by the link in one. Start them again');
    expect(text(html)).not.toMatch(/Send a test|give a member an address/);
    expect(tags(html, 'a').map(({ href }) => href)).toContain(`/members/${site.personId}/letters`);
  });
});

describe('looking over the collection by hand', () => {
  it('writes what is owed, sends it, and lists it as sent', async () => {
    const { site, read } = openWith({});
    const answer = await site.post('/letters', {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/letters?outcome=written']);
    const html = await read('/letters?outcome=written');
    expect(text(html)).toContain('Written. How far it has come stands in the list.');
    expect(inside(html, 'li')).toEqual([
      '1 past: Merle <Tourer> 2026-11-25, news by mail to ada@example.org: sent on 25 November 2026, 10:00.',
    ]);
    expect(html).toContain(
      'Last looked over for letters without trouble: <time datetime="2026-11-25T10:00:00.000Z">25 November 2026, 10:00</time>.',
    );
  });

  it('a second time finds nothing new', async () => {
    const { site, read } = openWith({});
    await site.post('/letters', {});
    const answer = await site.post('/letters', {});
    expect(answer.headers.get('location')).toBe('/letters?outcome=nothing');
    const html = await read('/letters?outcome=nothing');
    expect(text(html)).toContain('Nothing new since the last letter, so none was written.');
    expect(tags(html, 'li')).toHaveLength(1);
  });

  it('says so where nobody has an address', async () => {
    const { site, read } = openWith({});
    const nobody = { name: 'Ada', email: null, dateOrder: 'ask' as const, letters: true };
    changeMember(site.store, site.collectionId, site.personId, nobody);
    const answer = await site.post('/letters', {});
    expect(answer.headers.get('location')).toBe('/letters?outcome=no-address');
    const html = await read('/letters?outcome=no-address');
    expect(text(html)).toContain('There is news for someone who has no address.');
    expect(text(html)).toContain('Nobody gets letters by mail: give a member an address');
    expect(text(html)).toContain('No letter yet.');
  });

  it('as on another day writes the letter of that day', async () => {
    const { site, read } = openWith({});
    await site.post('/letters?on=2026-06-01', {});
    expect(inside(await read('/letters'), 'li')[0]).toMatch(/^1 due: .* 2026-06-01, news by mail to ada@example\.org/);
  });
});

describe('a letter on its way', () => {
  it('shows what the mail server said', async () => {
    const { site, read, letterId } = openWith({ send: () => Promise.reject(new Error('Mailbox <busy>')) });
    await site.post('/letters', {});
    expect(inside(await read('/letters'), 'li')[0]).toContain('waiting to be sent.');
    expect(text(await read(`/letters/${letterId()}`))).toContain('25 November 2026, 10:00, not taken: Mailbox <busy>');
  });

  it('given up is told on every page until it is seen to', async () => {
    const refused = Object.assign(new Error('No such mailbox'), { code: 'EENVELOPE', responseCode: 550 });
    const { site, carId, read } = openWith({ send: () => Promise.reject(refused) });
    expect(await read('/')).not.toContain('given up');
    await site.post('/letters', {});
    for (const path of ['/', `/cars/${carId}`, '/date-codes'])
      expect(text(await read(path)), path).toContain('A letter was given up and nobody has seen that yet. See Letters');
    expect(inside(await read('/letters'), 'li')[0]).toContain('given up: it was refused for good.');
  });
});

describe('the page of a letter', () => {
  it('shows its text as it went out', async () => {
    const { site, read, letterId } = openWith({});
    await site.post('/letters', {});
    const html = await read(`/letters/${letterId()}`);
    expect(inside(html, 'h1')).toEqual(['1 past: Merle <Tourer>']);
    const stored = site.store.$client.prepare('select text from letters').pluck().get() as string;
    expect(inside(html, 'pre')[0]).toBe(stored.replace(/\s+/g, ' ').trim());
  });

  it('shows its HTML part alone, under a policy that lets its own styles in and nothing else', async () => {
    const { site, letterId } = openWith({});
    await site.post('/letters', {});
    const answer = await site.get(`/letters/${letterId()}/html`);
    expect(answer.status).toBe(200);
    const html = await answer.text();
    expect(html).toBe(site.store.$client.prepare('select html from letters').pluck().get());
    expect(html).toContain(' style="');
    expect(answer.headers.get('content-security-policy')).toBe(
      "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    );
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  });
});
