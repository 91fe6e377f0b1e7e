import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { messageOf } from '../src/acts/judge.ts';
import { ConfigError, readConfig } from '../src/config.ts';
import type { CivilDate } from '../src/dates/civil.ts';
import { type House, OWNER_ONLY, openHouse } from '../src/house.ts';
import { SchemaError } from '../src/store/migrate.ts';
import { DATABASE } from '../src/store/open.ts';

export interface JobOptions {
  /** Another day than today, for every collection. */
  on: CivilDate | null;
  dryRun: boolean;
}

const OPTIONS = z.object({
  on: z.iso.date('--on takes a day such as 2027-04-01').optional(),
  'dry-run': z.boolean().default(false),
});

/** Runs a job once by hand: reads its options, prints one JSON line of what it did, exits 0 or 1. */
export const runOnce = async (work: (house: House, options: JobOptions) => Promise<object> | object): Promise<void> => {
  process.umask(OWNER_ONLY);
  let house: House | undefined;
  try {
    const swallowed = ['on', 'dry_run'].filter((name) => process.env[`npm_config_${name}`] !== undefined);
    if (swallowed.length > 0)
      throw new MissedOptions(
        'npm kept the options for itself, so nothing was done. Put -- before them: npm run sweep -- --dry-run',
      );
    const { values } = parseArgs({ options: { on: { type: 'string' }, 'dry-run': { type: 'boolean' } } });
    const { on, 'dry-run': dryRun } = OPTIONS.parse(values);
    const { dataDir } = readConfig(process.env);
    if (!existsSync(join(dataDir, DATABASE)))
      throw new NoDatabase(
        `There is no database in the folder ${dataDir}. Name the server’s folder in DATA_DIR; nothing was done.`,
      );
    house = openHouse({ LOG_LEVEL: 'warn', ...process.env });
    console.log(JSON.stringify(await work(house, { on: (on as CivilDate | undefined) ?? null, dryRun })));
  } catch (error) {
    console.error(explain(error));
    process.exitCode = 1;
  } finally {
    house?.close();
  }
};

/** A job works on what is there: an empty house would only look as if all were well. */
class NoDatabase extends Error {}

/** Options that npm took, because the two dashes before them were left out. */
class MissedOptions extends Error {}

/** What a database says that can't be written, for people; nothing was changed by it. */
const DATABASE_SAYS: readonly (readonly [code: string, words: string])[] = [
  ['SQLITE_BUSY', 'Another process held the database for too long. Nothing was changed; run it again.'],
  ['SQLITE_FULL', 'The disk is full. Nothing was changed; make room and run it again.'],
  ['SQLITE_IOERR', 'The disk is full or failing. Nothing was changed; see to the disk and run it again.'],
  ['SQLITE_READONLY', 'The database can’t be written by this user. Nothing was changed; see to whom DATA_DIR belongs.'],
  ['SQLITE_CANTOPEN', 'The database can’t be opened. See that DATA_DIR exists and belongs to this user.'],
];

const explain = (error: unknown): string => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const said = DATABASE_SAYS.find(([begins]) => code.startsWith(begins));
  if (said) return said[1];
  if (code === 'EACCES' || code === 'EROFS' || code === 'ENOSPC')
    return `The data folder can’t be written: ${messageOf(error)}. Nothing was changed.`;
  if (error instanceof z.ZodError) return error.issues.map((issue) => issue.message).join('\n');
  if (
    error instanceof ConfigError ||
    error instanceof SchemaError ||
    error instanceof MissedOptions ||
    error instanceof NoDatabase
  )
    return error.message;
  if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS'))
    return `${error.message}. Options: --on YYYY-MM-DD, --dry-run.`;
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
};
