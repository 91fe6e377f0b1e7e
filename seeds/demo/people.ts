/** Who looks after the cars. Every name, maker and lake of the demo is invented. */
import type { Demo } from '../../src/acts/demo.ts';

/** Fixed ids, so that loading twice finds the first load; shaped like the app's own, and older than any it makes. */
const demoId = (number: number): string => `01900000-0000-7000-8000-${String(number).padStart(12, '0')}`;

export const ODILE = demoId(11);
export const BRAM = demoId(12);
export const NELL = demoId(13);

export const COLLECTION: Demo['collection'] = {
  id: demoId(1),
  name: 'The barn on Lake Hespering',
  timeZone: 'America/Toronto',
};

export const PEOPLE: Demo['people'] = [
  { id: ODILE, name: 'Odile Fenwharrow', email: 'odile@example.org', dateOrder: 'day first', letters: true },
  { id: BRAM, name: 'Bram Fenwharrow', email: 'bram@workbench.example.net', dateOrder: 'month first', letters: true },
  { id: NELL, name: 'Great-aunt Nell', email: null, dateOrder: 'ask', letters: false },
];

export const CARS = {
  tindlewick: demoId(21),
  brackwater: demoId(22),
  zwirbel: demoId(23),
  sarrelune: demoId(24),
  norrhalm: demoId(25),
  calvessa: demoId(26),
} as const;
