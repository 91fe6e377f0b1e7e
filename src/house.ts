/** The wiring shared by the server and the jobs: configuration, log, store and where letters leave. */
import { join } from 'node:path';
import { parcelFor } from './acts/refresh-letter.ts';
import { type Config, type Environment, readConfig } from './config.ts';
import { type Site, siteAt } from './links.ts';
import { createLog, type Log } from './log.ts';
import { type DeliveryResult, deliver } from './mail/deliver.ts';
import { pushTransport, webhookTransport } from './mail/hooks.ts';
import { fileTransport, smtpTransport } from './mail/transport.ts';
import type { LetterRow } from './store/letters.ts';
import { openStore, type Store } from './store/open.ts';
import { ensureCollection } from './store/people.ts';

/** Names and mail addresses lie in the data folder: what a process makes there is for its owner's eyes only. */
export const OWNER_ONLY = 0o077;

export interface House {
  config: Config;
  log: Log;
  store: Store;
  /** As pages ask for them. */
  dataDir: string;
  hasMailServer: boolean;
  metricsToken: string | null;
  /** Set again once the server knows its port. */
  site: Site;
  /** The one reading of the clock: an instant. */
  now(): Date;
  /** Sends what is due now, or by a later instant if given. */
  deliver(dueBy?: Date): Promise<DeliveryResult>;
  /** True once the process is asked to stop: no further letter is begun. */
  stopping: boolean;
  /** Resolves when every delivery under way is over. */
  idle(): Promise<unknown>;
  close(): void;
}

/** Opens the house; an `empty` one is given its first collection. */
export const openHouse = (environment: Environment, { empty = true } = {}): House => {
  const config = readConfig(environment);
  const log = createLog(config.logLevel);
  const store = openStore(config.dataDir);
  if (empty) ensureCollection(store, config.timeZone);
  const { smtpUrl, mailFrom, dataDir, hooksMayBePrivate } = config;
  const transports = {
    mail: smtpUrl ? smtpTransport(smtpUrl, mailFrom) : fileTransport(join(dataDir, 'mail'), mailFrom),
    webhook: webhookTransport(hooksMayBePrivate, () => house.now()),
    push: pushTransport(hooksMayBePrivate),
  };
  const underWay = new Set<Promise<unknown>>();
  const house: House = {
    config,
    log,
    store,
    dataDir,
    hasMailServer: smtpUrl !== null,
    metricsToken: config.metricsToken,
    site: siteAt(config.baseUrl, config.port),
    now: () => new Date(),
    stopping: false,
    deliver: (dueBy) => {
      const refresh = (letter: LetterRow, at: string) => parcelFor(store, letter, { now: at, href: house.site.href });
      const now = (): Date => house.now();
      const run = deliver({ store, transports, refresh, log, now, goOn: () => !house.stopping }, dueBy);
      const kept = run.catch(() => {}).finally(() => underWay.delete(kept));
      underWay.add(kept);
      return run;
    },
    idle: () => Promise.all(underWay),
    close: () => {
      for (const transport of Object.values(transports)) transport.close();
      store.$client.close();
    },
  };
  return house;
};
