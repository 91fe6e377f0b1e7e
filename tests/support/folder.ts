import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A new empty folder below the machine's own for such things. */
export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'standstill-'));
