import { globSync } from 'node:fs';
import { join } from 'node:path';
import { ConfigError, readConfig } from '../src/config.ts';
import { OWNER_ONLY } from '../src/house.ts';
import { nightlyBackups } from '../src/store/backup.ts';
import { RestoreError, restoreBackup } from '../src/store/restore.ts';

/** Every copy there is: the nights', those made before the program was updated, and databases that were replaced. */
const copiesIn = (dataDir: string): string[] => [
  ...nightlyBackups(dataDir).map(({ file }) => file),
  ...globSync(['backups/*.db', 'standstill-replaced-*.db'], { cwd: dataDir })
    .map((name) => join(dataDir, name))
    .toSorted(),
];

/** Puts a copy in the database's place: npm run restore -- data/backups/nightly/2027-04-01.db */
process.umask(OWNER_ONLY);
try {
  const { dataDir } = readConfig(process.env);
  const [file, ...more] = process.argv.slice(2);
  if (!file || more.length > 0) {
    const copies = copiesIn(dataDir);
    throw new RestoreError(
      [
        'Name one file: npm run restore -- <file>',
        ...(copies.length > 0 ? ['There are:', ...copies.map((copy) => `  ${copy}`)] : ['There is no copy yet.']),
      ].join('\n'),
    );
  }
  console.log(JSON.stringify({ job: 'restore', ...restoreBackup(dataDir, file, new Date()) }));
} catch (error) {
  console.error(error instanceof ConfigError || error instanceof RestoreError ? error.message : error);
  process.exitCode = 1;
}
