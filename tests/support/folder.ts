import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

const made: string[] = [];
afterAll(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A new empty folder, gone again when the file's tests are over. */
export const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'standstill-'));
  made.push(folder);
  return folder;
};
