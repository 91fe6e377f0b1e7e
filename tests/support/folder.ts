import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const made: string[] = [];
process.once('exit', () => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

/** A new empty folder, gone again when the process is over. */
export const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'standstill-'));
  made.push(folder);
  return folder;
};
