/** The wiring shared by the server and the jobs: configuration, log, store and where letters leave. */
import { join } from 'node:path';
import { type Config, type Environment, readConfig } from './config.ts';
import { type Site, siteAt } from './links.ts';
import { createLog, type Log } from './log.ts';
import { type DeliveryResult, deliver } from './mail/deliver.ts';
import { fileTransport, smtpTransport } from './mail/transport.ts';
import { openStore, type Store } from './store/open.ts';
import { ensureCollection } from './store/people.ts';

/** Names and mail addresses lie in the data folder: what a process makes there is for its owner's eyes only. */
export const OWNER_ONLY = 0o077;

export interface House {
  config: Config;
  log: Log;
  store: Store;
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
  const transport = config.smtpUrl ? smtpTransport(config.smtpUrl) : fileTransport(join(config.dataDir, 'mail'));
  const now = (): Date => new Date();
  const underWay = new Set<Promise<unknown>>();
  const house: House = {
    config,
    log,
    store,
    site: siteAt(config.baseUrl, config.port),
    now,
    stopping: false,
    deliver: (dueBy) => {
      const run = deliver({ store, transport, from: config.mailFrom, log, now, goOn: () => !house.stopping }, dueBy);
      const kept = run.catch(() => {}).finally(() => underWay.delete(kept));
      underWay.add(kept);
      return run;
    },
    idle: () => Promise.all(underWay),
    close: () => {
      transport.close();
      store.$client.close();
    },
  };
  return house;
};
