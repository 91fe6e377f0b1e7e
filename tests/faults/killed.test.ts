/**
 * kill -9 at any step of sweep and delivery: nothing is lost; a second copy comes only where the mail server had taken
 * the letter before we could write that down, and then with the same Message-ID and the same content.
 *
 * What is killed are real processes, started from a bundle made once. What repairs runs in this process for the steps
 * one by one (the same code, a fifth of the time), and as processes after several kills in a row.
 */
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sweepCollection } from '../../src/acts/sweep.ts';
import { todayIn } from '../../src/clock.ts';
import { openHouse } from '../../src/house.ts';
import { allCollections } from '../../src/store/people.ts';
import { type BadMailServer, openBadMailServer } from '../support/bad-mail-server.ts';
import { query } from '../support/data-dir.ts';
import { atOnce, barnWithNews, bundle, copyOf, faulty } from '../support/faulty.ts';
import { newFolder } from '../support/folder.ts';
import { type RunningServer, startServer } from '../support/server.ts';

type Job = 'sweep' | 'deliver';

const BOTH = ['ada@example.org', 'bram@example.org'];
/** Past the lease of a sender that died, and past every wait between two tries, in minutes. */
const LEASE_OVER = 11;
const DAYS_LATER = 2 * 24 * 60;
const AT_ONCE = 4;

/** What all cases together came to, for DEVELOPERS.md. */
const figures = { kills: 0, lost: 0, duplicates: 0 };

const servers: BadMailServer[] = [];
const open = async (): Promise<BadMailServer> => {
  const server = await openBadMailServer('take');
  servers.push(server);
  return server;
};

interface Died {
  killed: boolean;
  /** What it had done by then. */
  steps: string[];
}

const runToDeath = async (
  job: Job,
  dataDir: string,
  faults: { smtp?: BadMailServer; killAt?: number; killAfter?: boolean; ahead?: number },
): Promise<Died> => {
  const stepsFile = join(newFolder(), 'steps');
  const { code, err } = await faulty(job, dataDir, { ...faults, stepsFile });
  expect([null, 0], err).toContain(code);
  if (code === null) figures.kills++;
  return { killed: code === null, steps: stepsIn(stepsFile) };
};

const stepsIn = (file: string): string[] => readFileSync(file, 'utf8').split('\n').slice(0, -1);

/** The one window: the end of the text is handed to the mail server, and ‘sent’ is not yet written down. */
const isInWindow = ({ killed, steps }: Died): boolean => {
  const handedOver = steps.lastIndexOf('smtp said end of text');
  return killed && handedOver >= 0 && !steps.slice(handedOver).includes('sql commit');
};

/** Sweeps and delivers in this process, so many minutes from now. */
const goOn = async (dataDir: string, smtp: BadMailServer | null, minutes: number): Promise<void> => {
  const house = openHouse({
    DATA_DIR: dataDir,
    TIME_ZONE: 'Europe/Lisbon',
    LOG_LEVEL: 'error',
    ...(smtp ? { SMTP_URL: smtp.url } : {}),
  });
  const now = new Date(Date.now() + minutes * 60_000);
  Object.assign(house, { now: () => now });
  for (const collection of allCollections(house.store))
    sweepCollection(house.store, collection, {
      today: todayIn(collection.timeZone, now),
      now: now.toISOString(),
      href: house.site.href,
      dryRun: false,
    });
  await house.deliver();
  house.close();
};

/** Two letters of one program differ in the boundary of their parts at least. */
const wordForWord = (mail: string): string => {
  const boundary = /boundary="([^"]+)"/.exec(mail)?.[1];
  return boundary ? mail.replaceAll(boundary, 'boundary') : mail;
};

/** Letters are sent and wholly recorded, whichever way they went. */
const judgeRecords = (dataDir: string, name: string): void => {
  const letters = query(dataDir, 'select recipient, state, lease_until from letters order by recipient');
  expect(letters, name).toEqual(BOTH.map((recipient) => ({ recipient, state: 'sent', lease_until: null })));
  // What stands in each letter is recorded as said to its reader, both parts.
  const said =
    'select s.person_id, part_id from said s join letters l on l.id = letter_id and l.person_id = s.person_id';
  expect(query(dataDir, `${said} group by 1, 2`), name).toHaveLength(4);
  expect(query(dataDir, 'select distinct letter_id from attempts where ok'), name).toHaveLength(2);
  expect(query(dataDir, 'pragma integrity_check'), name).toEqual([{ integrity_check: 'ok' }]);
  expect(query(dataDir, 'pragma foreign_key_check'), name).toEqual([]);
};

const copiesTo = (mails: readonly ParsedMail[], address: string): ParsedMail[] =>
  mails.filter(({ to }) => to && !Array.isArray(to) && to.text === address);

/** Each person got every notice; what came twice was in the window, and is word for word the same. */
const judge = async (dataDir: string, smtp: BadMailServer, windows: number, name: string): Promise<void> => {
  judgeRecords(dataDir, name);
  const mails = await Promise.all(smtp.taken.map(({ raw }) => simpleParser(raw)));
  for (const address of BOTH) {
    const copies = copiesTo(mails, address);
    if (copies.length === 0) figures.lost++;
    else figures.duplicates += copies.length - 1;
    expect(copies.length, `${name}: ${address} got it`).toBeGreaterThan(0);
    expect(copies[0]?.text, name).toMatch(/Brake fluid[\s\S]*Spark plugs/);
  }
  const words = new Set(smtp.taken.map(({ raw }) => wordForWord(raw.toString('latin1'))));
  expect(words.size, `${name}: copies are the same message`).toBe(BOTH.length);
  expect(new Set(smtp.taken.map(({ messageId }) => messageId)).size, name).toBe(BOTH.length);
  expect(mails.length - BOTH.length, `${name}: second copies`).toBeLessThanOrEqual(windows);
};

let fresh: string;
let swept: string;

beforeAll(async () => {
  await bundle('sweep', 'deliver');
  fresh = barnWithNews();
  swept = copyOf(fresh);
  expect((await faulty('sweep', swept)).code).toBe(0);
});

afterAll(async () => {
  await Promise.all(servers.map((server) => server.close()));
  console.log(`kills survived: ${figures.kills}, letters lost: ${figures.lost}, second copies: ${figures.duplicates}`);
});

describe('kill -9 at any step: nothing is lost, a second copy only of what was taken and not yet written down', {
  timeout: 240_000,
}, () => {
  interface Case {
    killAt: number;
    killAfter: boolean;
    name: string;
  }

  /** Before each step; right after those that leave the process, and after the last. */
  const casesOf = (job: string, steps: readonly string[], leaves: RegExp): Case[] =>
    steps.flatMap((step, n) => {
      const killAt = n + 1;
      const before = { killAt, killAfter: false, name: `${job}, before step ${killAt} (${step})` };
      const after = { killAt, killAfter: true, name: `${job}, after step ${killAt} (${step})` };
      return leaves.test(step) || killAt === steps.length ? [before, after] : [before];
    });

  const tryOut = async (job: Job, { killAt, killAfter, name }: Case): Promise<boolean> => {
    const smtp = await open();
    const dataDir = copyOf(job === 'sweep' ? fresh : swept);
    const died = await runToDeath(job, dataDir, { smtp, killAt, killAfter });
    // The next run comes at once: what the dead one held has to wait for the end of its lease.
    await goOn(dataDir, smtp, 0);
    const ids = smtp.taken.map(({ messageId }) => messageId);
    expect(new Set(ids).size, `${name}: no copy while the lease holds`).toBe(ids.length);
    await goOn(dataDir, smtp, LEASE_OVER);
    const { length } = smtp.taken;
    await goOn(dataDir, smtp, DAYS_LATER);
    expect(smtp.taken.length, `${name}: all was done by then`).toBe(length);
    await judge(dataDir, smtp, isInWindow(died) ? 1 : 0, name);
    await smtp.close();
    return died.killed;
  };

  /** A mail server's words can come in one piece or in two, so the last step may not be reached. */
  const tryAll = async (job: Job, cases: readonly Case[]): Promise<void> => {
    let kills = 0;
    await atOnce(AT_ONCE, cases, async (one) => {
      if (await tryOut(job, one)) kills++;
    });
    expect(kills).toBeGreaterThan(cases.length - 4);
  };

  it('at each step of the sweep', async () => {
    const { steps } = await runToDeath('sweep', copyOf(fresh), {});
    expect(steps).toContain('sql insert');
    await tryAll('sweep', casesOf('sweep', steps, /^$/));
    expect(figures.duplicates).toBe(0);
  });

  it('at each step of the delivery, and right after each word to the mail server', async () => {
    const { steps } = await runToDeath('deliver', copyOf(swept), { smtp: await open() });
    expect(steps.filter((step) => step === 'smtp said end of text')).toHaveLength(2);
    await tryAll('deliver', casesOf('delivery', steps, /^smtp said/));
    // The window is a real one: a letter taken just before the kill has to go again.
    expect(figures.duplicates).toBeGreaterThan(0);
  });

  it('at each step of the delivery into files, where no second copy can be', async () => {
    const { steps } = await runToDeath('deliver', copyOf(swept), {});
    expect(steps.filter((step) => step.startsWith('file'))).toHaveLength(4);
    await atOnce(AT_ONCE, casesOf('files', steps, /^file/), async ({ name, ...kill }) => {
      const dataDir = copyOf(swept);
      const died = await runToDeath('deliver', dataDir, kill);
      expect(died.killed, name).toBe(true);
      await goOn(dataDir, null, 0);
      await goOn(dataDir, null, LEASE_OVER);
      judgeRecords(dataDir, name);
      const files = readdirSync(join(dataDir, 'mail'));
      if (files.length < BOTH.length) figures.lost++;
      expect(files, name).toHaveLength(BOTH.length);
      const mails = await Promise.all(files.map((file) => simpleParser(readFileSync(join(dataDir, 'mail', file)))));
      for (const address of BOTH)
        expect(copiesTo(mails, address)[0]?.text, name).toMatch(/Brake fluid[\s\S]*Spark plugs/);
    });
  });
});

describe('killed several times in a row, each time at another step', { timeout: 120_000 }, () => {
  const KILL = fc.record({
    job: fc.constantFrom('sweep' as const, 'deliver' as const, 'deliver' as const),
    killAt: fc.integer({ min: 3, max: 80 }),
    killAfter: fc.boolean(),
  });
  // A seed, not chance: a run that fails can be run again.
  const runs = fc.sample(fc.array(KILL, { minLength: 2, maxLength: 4, size: 'max' }), {
    seed: 20_261_125,
    numRuns: 20,
  });

  it('the program comes to its end, and each kill in the window costs one copy at most', async () => {
    await atOnce(AT_ONCE, [...runs.entries()], async ([n, kills]) => {
      const smtp = await open();
      const dataDir = copyOf(fresh);
      let windows = 0;
      // The first is a sweep, or there would be nothing to deliver.
      for (const [turn, { job, killAt, killAfter }] of [{ ...kills[0], job: 'sweep' as const }, ...kills].entries()) {
        // 21 steps have a sweep that has news.
        const at = job === 'sweep' ? 1 + ((killAt ?? 0) % 24) : killAt;
        const faults = { smtp, killAfter: killAfter ?? false, ahead: turn * LEASE_OVER, ...(at ? { killAt: at } : {}) };
        if (isInWindow(await runToDeath(job, dataDir, faults))) windows++;
        if (turn === 0) await faulty('sweep', dataDir, { smtp });
      }
      expect((await faulty('sweep', dataDir, { smtp })).code).toBe(0);
      expect((await faulty('deliver', dataDir, { smtp, ahead: DAYS_LATER })).code).toBe(0);
      await judge(dataDir, smtp, windows, `run ${n}`);
      await smtp.close();
    });
  });
});

describe('the server killed in its first wake', { timeout: 120_000 }, () => {
  const PRELOAD = pathToFileURL(join('tests', 'support', 'fault-preload.mjs')).href;
  const MORNING = '2026-11-25T08:00:00Z';
  const LATER = '2026-11-25T08:11:00Z';

  const environmentFor = (dataDir: string, smtp: BadMailServer, more: Record<string, string>) => ({
    DATA_DIR: dataDir,
    NODE_OPTIONS: `--import=${PRELOAD}`,
    LETTER_HOUR: '0',
    BASE_URL: 'http://barn.example.org',
    SMTP_URL: smtp.url,
    SMTP_PORT: new URL(smtp.url).port,
    CLOCK: MORNING,
    ...more,
  });

  const untilSent = async (dataDir: string): Promise<void> => {
    const sent = "select count(*) as n from letters where state = 'sent'";
    for (let tries = 0; tries < 400; tries++) {
      if ((query(dataDir, sent) as { n: number }[])[0]?.n === BOTH.length) return;
      await wait(25);
    }
    throw new Error('The letters were not sent within ten seconds.');
  };

  it('does the rest when it is started again, once the lease is over', async () => {
    const learning = { dataDir: copyOf(fresh), stepsFile: join(newFolder(), 'steps'), smtp: await open() };
    const whole = await startServer(
      [],
      environmentFor(learning.dataDir, learning.smtp, { STEPS_FILE: learning.stepsFile }),
    );
    await untilSent(learning.dataDir);
    expect(await whole.stop()).toBe(0);
    const steps = stepsIn(learning.stepsFile);
    const end = steps.indexOf('smtp said end of text');
    // In the sweep, at its end, with a letter claimed, with one handed over, and between two letters.
    const cases = [
      { killAt: steps.indexOf('sql insert') + 3 },
      { killAt: steps.indexOf('sql update') },
      { killAt: steps.indexOf('smtp said DATA') + 1 },
      { killAt: end + 1, killAfter: true },
      { killAt: steps.indexOf('sql commit', end) + 2 },
    ];
    await atOnce(2, cases, async ({ killAt, killAfter }) => {
      const name = `server, ${killAfter ? 'after' : 'before'} step ${killAt} (${steps[killAt - 1]})`;
      expect(killAt, name).toBeGreaterThan(1);
      const smtp = await open();
      const dataDir = copyOf(fresh);
      const stepsFile = join(newFolder(), 'steps');
      await startAndDie(
        environmentFor(dataDir, smtp, {
          STEPS_FILE: stepsFile,
          KILL_AT: String(killAt),
          ...(killAfter ? { KILL_AFTER: '1' } : {}),
        }),
      );
      expect(existsSync(stepsFile), `${name}: it got there`).toBe(true);
      figures.kills++;
      const again = await startServer([], environmentFor(dataDir, smtp, { CLOCK: LATER }));
      await untilSent(dataDir);
      expect(await again.stop()).toBe(0);
      await judge(dataDir, smtp, isInWindow({ killed: true, steps: stepsIn(stepsFile) }) ? 1 : 0, name);
      await smtp.close();
    });
  });

  /** It may die before it has said where it is, or after. */
  const startAndDie = async (environment: Record<string, string>): Promise<void> => {
    let server: RunningServer;
    try {
      server = await startServer([], environment);
    } catch (error) {
      return expect(String(error)).toContain('ended with null');
    }
    const { process: child } = server;
    if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
    expect(child.signalCode).toBe('SIGKILL');
  };
});
