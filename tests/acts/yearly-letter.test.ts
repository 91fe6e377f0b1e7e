/** The yearly letter on its way: in its month, once, whole, by whatever doors. */
import { simpleParser } from 'mailparser';
import { afterEach, describe, expect, it } from 'vitest';
import { sweepCollection } from '../../src/acts/sweep.ts';
import { changeMember, findCollection } from '../../src/store/people.ts';
import { openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, claim, date } from '../support/cars.ts';
import { openWakingHouse } from '../support/house.ts';
import { openListeningPost } from '../support/listening-post.ts';

const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

/** Two cars, one with a fluid that is past; its reader has had the news of it, and a yearly letter each June. */
const open = async (doors: { by: 'mail' | 'mail and more' | 'post alone' } = { by: 'mail' }) => {
  const server = await openBadMailServer('take');
  const post = await openListeningPost((response) => response.end('thanks'));
  const here = openWakingHouse(server, { HOOKS_MAY_BE_PRIVATE: 'true' });
  closing.push(() => here.house.close(), server.close, post.close);
  const { barn, house } = here;
  const { collectionId, personId } = barn.acting;
  date(barn, carIn(barn, { name: 'Alder Coupe' }), 'brake-fluid-glycol', claim('filled', '1 June 2020'));
  carIn(barn, { name: 'Birch Sedan' });
  await here.wakeAt('2026-05-30T07:00:00Z');
  server.taken.splice(0);
  changeMember(house.store, collectionId, personId, {
    yearlyMonth: 6,
    ...(doors.by === 'mail' ? {} : { pushUrl: post.url, webhookUrl: post.url, webhookSecret: 'c2VjcmV0' }),
    ...(doors.by === 'post alone' ? { email: null } : {}),
  });
  const mails = () => Promise.all(server.taken.map(({ raw }) => simpleParser(raw)));
  return { ...here, server, post, mails };
};

const WHOLE = 'The whole collection, 2 cars';

describe('the yearly letter', { timeout: 60_000 }, () => {
  it('comes on the first morning of its month with every car, though nothing is new, and once that year', async () => {
    const { wakeAt, mails, letters } = await open();
    await wakeAt('2026-05-31T07:00:00Z');
    expect(await mails()).toEqual([]);
    for (const day of ['01', '02', '15', '30']) await wakeAt(`2026-06-${day}T07:00:00Z`);
    const [mail, ...more] = await mails();
    expect([mail?.subject, more.length]).toEqual([WHOLE, 0]);
    expect(mail?.text).toMatch(/Alder Coupe[\s\S]*1 past[\s\S]*Birch Sedan/);
    expect(letters().at(-1)?.kind).toBe('yearly');
    await wakeAt('2027-06-01T07:00:00Z');
    expect((await mails()).map(({ subject }) => subject?.includes(WHOLE))).toEqual([true, true]);
  });

  it('is not put off by a look at a later year', async () => {
    const { wakeAt, mails, house, barn } = await open();
    const collection = findCollection(house.store, barn.acting.collectionId);
    const ahead = { today: '2035-06-05', now: '2026-05-31T10:00:00Z', href: house.site.href, dryRun: false } as const;
    if (collection) sweepCollection(house.store, collection, ahead);
    await wakeAt('2026-05-31T11:00:00Z');
    await wakeAt('2026-06-01T07:00:00Z');
    await wakeAt('2027-06-01T07:00:00Z');
    expect((await mails()).map(({ subject, text }) => [subject?.includes(WHOLE), text?.includes('2035')])).toEqual([
      [true, true],
      [true, false],
      [true, false],
    ]);
  });

  it('comes later in its month where nobody was up on the first', async () => {
    const { wakeAt, mails } = await open();
    await wakeAt('2026-06-29T07:00:00Z');
    expect((await mails()).map(({ subject }) => subject)).toEqual([WHOLE]);
  });

  it('is whole by every door: a copy of it does not count as the letter of the year', async () => {
    const { wakeAt, mails, post, letters } = await open({ by: 'mail and more' });
    await wakeAt('2026-06-01T07:00:00Z');
    await wakeAt('2026-06-02T07:00:00Z');
    expect((await mails()).map(({ subject }) => subject)).toEqual([WHOLE]);
    expect(post.heard.map(({ body }) => body).toSorted()).toEqual([
      expect.stringContaining(WHOLE),
      expect.stringContaining('"type":"letter.yearly"'),
    ]);
    expect(letters().filter(({ kind, state }) => kind === 'yearly' && state === 'sent')).toHaveLength(3);
  });

  it('comes by post alone to whoever has no mail address', async () => {
    const { wakeAt, mails, post } = await open({ by: 'post alone' });
    await wakeAt('2026-06-01T07:00:00Z');
    expect(await mails()).toEqual([]);
    expect(post.heard.map(({ body }) => body.includes(WHOLE))).toEqual([true, true]);
  });

  it('waits for a server that says “not now”, and is as of the day it goes', async () => {
    const { server, wakeAt, mails } = await open({ by: 'mail and more' });
    server.behavior = { code: 451, at: 'rcpt' };
    for (const day of ['01', '02', '03']) await wakeAt(`2026-06-${day}T07:00:00Z`);
    server.behavior = 'take';
    await wakeAt('2026-06-04T07:00:00Z');
    await wakeAt('2026-06-05T07:00:00Z');
    const [mail, ...more] = await mails();
    expect([mail?.subject, more.length]).toEqual([WHOLE, 0]);
    expect(mail?.text).toContain('as on 4 June 2026');
  });
});
