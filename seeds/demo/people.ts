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

export const PLACES = { barn: demoId(31), leanTo: demoId(32), cellar: demoId(33) } as const;

const NO_MONTHS: readonly string[] = Array(12).fill('');

/** A cold lake: hard winters, damp springs. */
const LAKE = {
  winterLow: '-28',
  summerHigh: '33',
  air: 'inland',
  humidity: '',
  heatedTo: '',
  hemisphere: 'north',
  months: NO_MONTHS,
  unit: '°C',
  note: '',
};

export const HESPERING: Demo['places'] = [
  { ...LAKE, id: PLACES.barn, name: 'Barn', shelter: 'damp', note: 'Earth floor; the east door does not close.' },
  { ...LAKE, id: PLACES.leanTo, name: 'Lean-to', shelter: 'covered' },
  { ...LAKE, id: PLACES.cellar, name: 'Garage under the house', shelter: 'heated', heatedTo: '12', humidity: '50' },
];

export const CARS = {
  tindlewick: demoId(21),
  brackwater: demoId(22),
  zwirbel: demoId(23),
  sarrelune: demoId(24),
  norrhalm: demoId(25),
  calvessa: demoId(26),
  ostrelle: demoId(27),
  fennimore: demoId(28),
} as const;

export const LAY_UPS = { calvessa: demoId(41), norrhalm: demoId(42), brackwater: demoId(43) } as const;
export const REVIVALS = { ostrelle: demoId(51), fennimore: demoId(52) } as const;
