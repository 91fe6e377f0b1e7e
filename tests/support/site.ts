/** A whole site on a store in memory, with a clock the test holds. */

import { siteAt } from '../../src/links.ts';
import { createLog } from '../../src/log.ts';
import type { DeliveryResult } from '../../src/mail/deliver.ts';
import { openMemoryStore, type Store } from '../../src/store/open.ts';
import { allCollections, changeMember, ensureCollection, membersOf } from '../../src/store/people.ts';
import { createApp } from '../../src/web/app.tsx';

export interface TestSite {
  store: Store;
  collectionId: string;
  personId: string;
  get(path: string, headers?: Record<string, string>): Promise<Response>;
  post(path: string, form: Record<string, string | string[]>, headers?: Record<string, string>): Promise<Response>;
  send(method: string, path: string, document: unknown): Promise<Response>;
  /** Any request at all. */
  raw(path: string, init: RequestInit): Promise<Response>;
}

interface Options {
  baseUrl?: string;
  now?: string;
  deliver?: () => Promise<DeliveryResult>;
  log?: (line: string) => void;
  hasMailServer?: boolean;
}

export const openSite = ({
  baseUrl,
  now = '2026-11-25T10:00:00Z',
  deliver,
  log = () => {},
  hasMailServer = true,
}: Options = {}): TestSite => {
  const store = openMemoryStore();
  ensureCollection(store, 'Europe/Lisbon');
  const [collection] = allCollections(store);
  const collectionId = collection?.id ?? '';
  const personId = membersOf(store, collectionId)[0]?.id ?? '';
  changeMember(store, collectionId, personId, {
    name: 'Ada',
    email: 'ada@example.org',
    dateOrder: 'day first',
    letters: true,
  });
  const app = createApp({
    store,
    site: siteAt(baseUrl ? new URL(baseUrl) : null, 3000),
    log: createLog('debug', log),
    now: () => new Date(now),
    dataDir: null,
    hasMailServer,
    metricsToken: null,
    deliver: deliver ?? (async () => ({ sent: 0, waiting: 0, failed: 0, calledOff: 0 })),
  });
  const ask = async (path: string, init?: RequestInit): Promise<Response> =>
    app.request(`http://localhost:3000${path}`, init);
  return {
    store,
    collectionId,
    personId,
    get: (path, headers = {}) => ask(path, { headers }),
    post: (path, form, headers = {}) => {
      const body = new URLSearchParams();
      for (const [name, value] of Object.entries(form)) for (const one of [value].flat()) body.append(name, one);
      return ask(path, { method: 'POST', body, headers: { origin: 'http://localhost:3000', ...headers } });
    },
    raw: ask,
    send: (method, path, document) =>
      ask(path, { method, body: JSON.stringify(document), headers: { 'content-type': 'application/json' } }),
  };
};
