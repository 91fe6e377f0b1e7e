import { Hono } from 'hono';
import { etag } from 'hono/etag';
import { feedBehind, feedText } from '../acts/calendar-feed.ts';
import type { Surroundings } from './visit.ts';

const FILE = /^(?<secret>[\w-]{20,64})\.ics$/;

/** /feed/<secret>.ics: one person's calendar, for whoever has its address; nothing else is to be had by it. */
export const feed = (around: Surroundings): Hono =>
  new Hono().use('/feed/*', etag()).get('/feed/:file', (c) => {
    const secret = FILE.exec(c.req.param('file'))?.groups?.['secret'];
    const found = secret ? feedBehind(around.store, secret) : undefined;
    const text = found && feedText(around.store, found, around.now(), around.site.href);
    if (!text) return c.text('There is no such calendar, or it has ended.', 404);
    return c.body(text, 200, { 'content-type': 'text/calendar; charset=utf-8', 'cache-control': 'private, no-cache' });
  });
