import { fileURLToPath } from 'node:url';

/** The project's folder: this file's bundle (dist/) and its source (src/) both lie one level below it. */
export const fromRoot = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));
