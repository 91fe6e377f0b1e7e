/** Runs around every test file: workers are ended without a word, so their folders are removed here. */
import { afterAll } from 'vitest';
import { removeFolders } from './folder.ts';

afterAll(removeFolders);
