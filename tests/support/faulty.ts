/** Real processes of the program with faults injected from outside, and a data folder for them to work on. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { pathToFileURL } from 'node:url';
import { openStore } from '../../src/store/open.ts';
import { addMember, changeMember } from '../../src/store/people.ts';
import { carIn, claim, date, openBarn } from './cars.ts';
import { newFolder } from './folder.ts';
import { type Ended, run } from './run.ts';

const PRELOAD = pathToFileURL(join('tests', 'support', 'fault-preload.mjs')).href;

export interface Faults {
  /** Where letters go. */
  smtp?: { url: string };
  killAt?: number;
  killAfter?: boolean;
  stepsFile?: string;
  /** Minutes the process's clock is ahead. */
  ahead?: number;
  busyTimeout?: number;
  maxPages?: number;
}

const environmentOf = (dataDir: string, faults: Faults): Record<string, string> => ({
  DATA_DIR: dataDir,
  TIME_ZONE: 'Europe/Lisbon',
  NODE_OPTIONS: `--import=${PRELOAD}`,
  ...(faults.smtp ? { SMTP_URL: faults.smtp.url, SMTP_PORT: new URL(faults.smtp.url).port } : {}),
  ...(faults.killAt ? { KILL_AT: String(faults.killAt) } : {}),
  ...(faults.killAfter ? { KILL_AFTER: '1' } : {}),
  ...(faults.stepsFile ? { STEPS_FILE: faults.stepsFile } : {}),
  ...(faults.ahead ? { CLOCK_SHIFT: String(faults.ahead) } : {}),
  ...(faults.busyTimeout ? { BUSY_TIMEOUT: String(faults.busyTimeout) } : {}),
  ...(faults.maxPages ? { MAX_PAGES: String(faults.maxPages) } : {}),
});

/** Bundled once: a start from the bundle takes half the time. */
export const bundle = async (...jobs: readonly string[]): Promise<void> => {
  for (const job of jobs) await run(`jobs/${job}.ts`, ['--dry-run'], { DATA_DIR: newFolder() });
};

/** Runs a job to its end, or to where it is killed; its code is then null. */
export const faulty = async (
  job: 'sweep' | 'deliver',
  dataDir: string,
  faults: Faults = {},
): Promise<Omit<Ended, 'code'> & { code: number | null }> => {
  const child = spawn(process.execPath, [join('dist', `${job}.mjs`)], {
    env: { PATH: process.env['PATH'], ...environmentOf(dataDir, faults) },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const [out, err, [code]] = await Promise.all([text(child.stdout), text(child.stderr), once(child, 'exit')]);
  return { code: code as number | null, out, err };
};

/** A car with news for two people: a brake fluid and plugs long past. */
export const barnWithNews = (): string => {
  const dataDir = newFolder();
  const store = openStore(dataDir);
  const barn = openBarn(store);
  const carId = carIn(barn);
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2004'));
  date(barn, carId, 'spark-plugs', claim('fitted', '2001'));
  const { collectionId, personId } = barn.acting;
  // Processes read the real clock: the yearly letter must not come in between.
  changeMember(store, collectionId, personId, { yearlyMonth: null });
  const bram = { name: 'Bram', email: 'bram@example.org', dateOrder: 'ask' as const, letters: true, yearlyMonth: null };
  addMember(store, collectionId, bram);
  store.$client.close();
  return dataDir;
};

/** The same folder once more, for another fate. */
export const copyOf = (dataDir: string): string => {
  const copy = newFolder();
  cpSync(dataDir, copy, { recursive: true });
  return copy;
};

/** Works through a list, so many at once. */
export const atOnce = async <T>(n: number, list: readonly T[], work: (one: T) => Promise<void>): Promise<void> => {
  const rest = [...list];
  await Promise.all(
    Array.from({ length: n }, async () => {
      for (let one = rest.shift(); one !== undefined; one = rest.shift()) await work(one);
    }),
  );
};
