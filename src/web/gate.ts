/** Who may ask while there is no sign-in: this machine's own browser, by an address that is ours. */
import { createMiddleware } from 'hono/factory';
import type { Site } from '../links.ts';

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Refuses a request by another host name (a page elsewhere that points its own name at this machine), and a change
 * that another site's page tries to make.
 */
export const fromHere = (site: Site) => {
  const hosts = [...LOOPBACK, new URL(site.href('/')).hostname];
  return createMiddleware(async (c, next) => {
    if (!hosts.includes(new URL(c.req.url).hostname))
      return c.text('This server answers by its own name only. Set BASE_URL if it has another.', 421);
    const changes = !['GET', 'HEAD', 'OPTIONS'].includes(c.req.method);
    if (changes && c.req.header('sec-fetch-site') === 'cross-site')
      return c.text('Changes are made from this site’s own pages only.', 403);
    await next();
  });
};

/** True for an Origin header that is ours: the public address, or this machine on any port. */
export const ownOrigin =
  (site: Site) =>
  (origin: string): boolean => {
    if (!URL.canParse(origin)) return false;
    const url = new URL(origin);
    return origin === new URL(site.href('/')).origin || LOOPBACK.includes(url.hostname);
  };
