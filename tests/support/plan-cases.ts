/** Lay-up plans checked line by line: what must be there, on which day, what must not, and in which order. */
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/dates/civil.ts';
import { keysOf, layUpWith, PARKED, type StayGiven, stepIn } from './stays.ts';

/** Days before the parking day, or null where the sources name none; and where it is from. */
export type Wanted = Readonly<Record<string, readonly [days: number | null, source: string]>>;

export interface PlanCase {
  name: string;
  stay: StayGiven;
  has: Wanted;
  /** Steps that must not be there, and why. */
  not: Readonly<Record<string, string>>;
}

export const TIMELINE = 'common practice: timeline of a winter’s lay-up';
export const DAY = 'common practice: the parking day, in order';
export const BY_LENGTH = 'common practice: steps by length, under 1, 1 to 3, 3 to 12, over 12 months';
export const VARIATION = 'common practice: changes by place and car';
export const TB_29 = 'US Army TB 740-97-4 par. 29';
export const TB_TANKS = 'US Army TB 740-97-4 pars. 70 to 73; MIL-HDBK-1130 2.2.3';
export const TIRE_MAKERS = 'tire makers’ care pages and a letter of one: storage';
export const SHOP = 'restoration shop: earth floors';

export const ALL_OF_IT: Wanted = {
  'settle-place': [42, TIMELINE],
  'book-lift': [42, TIMELINE],
  'order-supplies': [35, TIMELINE],
  'review-ages': [28, TIMELINE],
  'fault-drive': [21, `${TIMELINE}; US Army TM 5-3805-264-13&P: faults corrected before storage`],
  photographs: [21, BY_LENGTH],
  insurer: [10, 'US explainers of storage cover; common practice'],
  registry: [7, 'UK texts on the off-road notice'],
  'oil-change': [2, 'restorers’ journal; mailing list: old acids out before'],
  wash: [1, 'UK classic magazine; US Army TM 5-3805-264-13&P'],
  wax: [1, TIMELINE],
  'empty-inside': [1, 'UK classic magazine'],
  'last-drive': [0, DAY],
  park: [0, 'trade magazine: cardboard as a tell-tale'],
  chocks: [0, 'workshop blog: parking brake off'],
  'pipes-blocked': [0, DAY],
  'wipers-off': [0, DAY],
  sheet: [0, DAY],
  'note-the-day': [0, DAY],
  cover: [0, 'classic dealer: breathable, on a clean dry car'],
};

export const GASOLINE: Wanted = {
  'fuel-low': [10, BY_LENGTH],
  'fuel-fill': [3, TIMELINE],
  'treat-drive': [2, 'do-it-yourself guides: 5 to 10 minutes at least'],
};

/**
 * The order of the work: common practice. Coolant is measured after a change. On the parking day fuel is seen to outdoors,
 * before it is pushed in; what is turned by hand is not in gear yet; what needs current comes before the battery is off;
 * the cover goes on last.
 */
const ORDER: readonly string[] = [
  ...['coolant-change', 'coolant-strength', 'wash', 'last-drive', 'air-con', 'carburetor-dry', 'drain-tank'],
  ...['boards', 'ground-sheet', 'park', 'drip-tray', 'pressure', 'stands', 'sprung-by-gas', 'wheels-off', 'chocks'],
  ...['cylinder-oil', 'belts-slack', 'in-gear', 'in-park', 'clutch-free', 'pipes-blocked', 'desiccant'],
  ...['windows', 'soft-top', 'hard-top', 'traps', 'wipers-off', 'note-the-day', 'codes'],
  ...['battery-maintainer', 'battery-off', 'battery-lithium-off', 'battery-out', 'battery-left'],
  ...['sheet', 'cover', 'sealed-bag'],
];

export const describePlans = (cases: readonly PlanCase[]): void =>
  describe.each(cases)('$name', ({ stay, has, not }) => {
    const plan = layUpWith(stay);
    const keys = keysOf(plan);

    it.each(Object.entries(has))('has %s (days before; source: %o)', (key, [days]) => {
      expect(keys).toContain(key);
      if (days !== null) expect(stepIn(plan, key).day).toBe(addDays(PARKED, -days));
    });

    it.each(Object.entries(not))('has no %s: %s', (key) => expect(keys).not.toContain(key));

    it('keeps the order of the work', () => {
      const wanted = ORDER.filter((key) => keys.includes(key));
      expect(keys.filter((key) => wanted.includes(key))).toEqual(wanted);
    });
  });
