import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const made: string[] = [];

export const removeFolders = (): void => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
};
process.once('exit', removeFolders);

/** A new empty folder, gone again when the test file or the process is over. */
export const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'standstill-'));
  made.push(folder);
  return folder;
};
