/** Lay-ups of contrasting cars and lengths, line by line against what is published: what is done, on which day, and what is not. */
import { describe, expect, it } from 'vitest';
import {
  ALL_OF_IT,
  BY_LENGTH,
  DAY,
  describePlans,
  GASOLINE,
  type PlanCase,
  TB_29,
  TB_TANKS,
  TIMELINE,
  VARIATION,
} from '../support/plan-cases.ts';
import { aged, HEATED, keysOf, layUpWith } from '../support/stays.ts';

const CASES: readonly PlanCase[] = [
  {
    name: 'a carburetor roadster in a cold, unheated garage for five months',
    stay: { parts: { 'brake-fluid-glycol': aged('brake-fluid-glycol', 20) } },
    has: {
      ...ALL_OF_IT,
      ...GASOLINE,
      'measure-humidity': [42, `${TIMELINE}; dehumidifier maker: under 60 percent`],
      'coolant-strength': [14, TIMELINE],
      washer: [14, TIMELINE],
      'brake-fluid': [14, `${TIMELINE}: older than 18 months`],
      grease: [14, TIMELINE],
      'close-holes': [14, 'pest-control pages: gaps over 6 mm'],
      hinges: [7, BY_LENGTH],
      pressure: [0, 'classic workshop’s essay: half a bar more; restoration writer: 10 psi'],
      'in-gear': [0, DAY],
      'clutch-free': [0, BY_LENGTH],
      'carburetor-dry': [0, DAY],
      'battery-maintainer': [0, 'classic workshop’s essay: on all winter'],
      desiccant: [0, DAY],
      windows: [0, DAY],
      'soft-top': [0, DAY],
      traps: [0, DAY],
    },
    not: {
      'cylinder-oil': `${VARIATION}: from six months, or three in damp`,
      'drain-tank': `${VARIATION}: from a year`,
      stands: `${VARIATION}: from a year`,
      'belts-slack': `${BY_LENGTH}: from a year`,
      'salt-off': VARIATION,
      sunshade: VARIATION,
      'ground-sheet': 'motoring organization: on gravel or soil',
      'drip-tray': VARIATION,
      'bay-contract': VARIATION,
      'in-park': `${VARIATION}: automatics`,
      'battery-off': 'a maintainer keeps it',
      'diesel-fill': 'it burns gasoline',
    },
  },
  {
    name: 'the same with brake fluid of a year, and no longer than that',
    stay: { parts: { 'brake-fluid-glycol': aged('brake-fluid-glycol', 12) } },
    has: {},
    not: { 'brake-fluid': `${TIMELINE}: older than 18 months` },
  },
  {
    name: 'the roadster for three weeks, drawing 10 mA',
    stay: { months: 0, days: 21, car: { drain: 10 } },
    has: {
      wash: [1, BY_LENGTH],
      'last-drive': [0, BY_LENGTH],
      pressure: [0, BY_LENGTH],
      chocks: [0, BY_LENGTH],
      'in-gear': [0, DAY],
      'battery-left': [0, `${BY_LENGTH}: off under a month only where it draws more than 50 mA`],
    },
    not: Object.fromEntries(
      [
        ...['oil-change', 'brake-fluid', 'insurer', 'registry', 'fuel-low', 'fuel-fill', 'treat-drive', 'close-holes'],
        ...['grease', 'hinges', 'carburetor-dry', 'cylinder-oil', 'pipes-blocked', 'desiccant', 'cover', 'wipers-off'],
        ...['clutch-free', 'settle-place', 'fault-drive', 'photographs', 'battery-maintainer', 'stands', 'soft-top'],
      ].map((key) => [key, BY_LENGTH]),
    ),
  },
  {
    name: 'three weeks, drawing 80 mA',
    stay: { months: 0, days: 21, car: { drain: 80 } },
    has: { 'battery-maintainer': [0, `${BY_LENGTH}: more than 50 mA`] },
    not: { 'battery-left': BY_LENGTH },
  },
  {
    name: 'the roadster for six weeks',
    stay: { months: 1, days: 14 },
    has: {
      ...GASOLINE,
      photographs: [21, BY_LENGTH],
      'coolant-strength': [14, BY_LENGTH],
      'close-holes': [14, BY_LENGTH],
      'empty-inside': [1, BY_LENGTH],
      wash: [1, BY_LENGTH],
      'last-drive': [0, BY_LENGTH],
      pressure: [0, VARIATION],
      chocks: [0, `${VARIATION}: parking brake off`],
      'carburetor-dry': [0, BY_LENGTH],
      'battery-maintainer': [0, VARIATION],
      'pipes-blocked': [0, BY_LENGTH],
      'soft-top': [0, BY_LENGTH],
      sheet: [0, BY_LENGTH],
      cover: [0, BY_LENGTH],
    },
    not: {
      'oil-change': `${VARIATION}: not for one to two months unless due`,
      'brake-fluid': BY_LENGTH,
      'clutch-free': BY_LENGTH,
      grease: BY_LENGTH,
      insurer: BY_LENGTH,
      registry: BY_LENGTH,
      'cylinder-oil': BY_LENGTH,
      'drain-tank': BY_LENGTH,
    },
  },
  {
    name: 'six weeks on oil of eight months',
    stay: { months: 1, days: 14, parts: { 'engine-oil': aged('engine-oil', 8) } },
    has: { 'oil-change': [2, `${BY_LENGTH}: from one month where the oil is older than six`] },
    not: {},
  },
  {
    name: 'an injection coupe in a rented bay',
    stay: { start: 'coupe-injection-abs', circumstances: ['rented-bay'] },
    has: {
      ...ALL_OF_IT,
      ...GASOLINE,
      'bay-contract': [10, `${VARIATION}: lock photographed, clause read`],
      codes: [0, BY_LENGTH],
      'battery-out': [0, `${VARIATION}: no live maintainer`],
      'air-con': [0, BY_LENGTH],
    },
    not: {
      'battery-maintainer': `${VARIATION}: no live maintainer`,
      'battery-left': VARIATION,
      'carburetor-dry': `${DAY}: treated fuel stays in injection`,
      dehumidifier: 'nothing live in a rented bay',
      grease: 'it has no nipples',
    },
  },
  {
    name: 'an air-cooled car',
    stay: { start: 'rear-engine-air-cooled' },
    has: { ...ALL_OF_IT, ...GASOLINE, 'carburetor-dry': [0, DAY], 'clutch-free': [0, BY_LENGTH] },
    not: { 'coolant-strength': 'it has no coolant', 'coolant-change': 'it has no coolant' },
  },
  {
    name: 'a diesel wagon',
    stay: { start: 'diesel-wagon', months: 7 },
    has: {
      ...ALL_OF_IT,
      'fuel-low': [10, BY_LENGTH],
      'diesel-fill': [3, `${BY_LENGTH}: separator drained, full, winter grade, biocide`],
      'coolant-strength': [14, TIMELINE],
    },
    not: {
      'fuel-fill': 'stabilizer is for gasoline',
      'treat-drive': 'stabilizer is for gasoline',
      'carburetor-dry': 'it has none',
      'cylinder-oil': `${TB_29}; ${BY_LENGTH}: not diesels without the injectors out`,
    },
  },
  {
    name: 'a grand tourer, automatic, with powered top and air springs',
    stay: { start: 'grand-tourer-powered-top', place: HEATED },
    has: {
      ...ALL_OF_IT,
      'sprung-by-gas': [0, 'air-spring supplier: full height, on stands, never let down'],
      'in-park': [0, `${VARIATION}: Park, chocks and no brake`],
      'soft-top': [0, `${VARIATION}: up, dry, window not creased`],
      'coolant-strength': [14, `${BY_LENGTH}: heated may skip frost, never corrosion`],
    },
    not: {
      stands: 'air springs have their own supports',
      'in-gear': 'it is an automatic',
      'clutch-free': 'it has no clutch pedal',
      washer: 'it cannot freeze there',
      desiccant: `${BY_LENGTH}: unheated and outdoors`,
      traps: VARIATION,
      'hard-top': 'its top is of cloth',
    },
  },
  {
    name: 'an injection sports car for 13 months',
    stay: { start: 'sports-car-early-injection', months: 13 },
    has: {
      ...ALL_OF_IT,
      ...GASOLINE,
      'cylinder-oil': [0, TB_29],
      stands: [0, 'manual publisher: under the suspension'],
      'belts-slack': [0, 'US Army TB 740-97-4 pars. 32 to 40'],
    },
    not: { pressure: 'no weight is on them', 'drain-tank': `${VARIATION}: or full of treated fuel without ethanol` },
  },
  {
    name: 'a roadster for 26 months',
    stay: { months: 26 },
    has: { ...ALL_OF_IT, 'drain-tank': [0, TB_TANKS], 'cylinder-oil': [0, TB_29], stands: [0, VARIATION] },
    not: { 'fuel-fill': TB_TANKS, 'fuel-low': TB_TANKS, 'treat-drive': TB_TANKS },
  },
  {
    name: 'a car with a lithium battery',
    stay: { without: ['battery-flooded'], with: ['battery-lithium'] },
    has: { 'battery-lithium-off': [0, 'lithium battery’s manual: half charged, disconnected'] },
    not: { 'battery-maintainer': 'no ordinary charger', 'battery-off': 'it is not charged full' },
  },
  {
    name: 'a tourer with a magneto and no battery',
    stay: { start: 'tourer-rod-brakes' },
    has: { ...ALL_OF_IT, 'carburetor-dry': [0, DAY] },
    not: Object.fromEntries(
      ['maintainer', 'off', 'out', 'left', 'lithium-off']
        .map((key) => [`battery-${key}`, 'it has none'])
        .concat([['brake-fluid', 'it has rods']]),
    ),
  },
  {
    name: 'a roadster driven hot every month, for 14 months',
    stay: { choices: { running: 'drive' }, months: 14 },
    has: {
      'settle-running': [42, 'US Army exercise manuals: a real drive, or none'],
      'keep-road-cover': [10, 'it is on the road every month'],
      'fuel-fill': [3, 'it burns fuel every month'],
      pressure: [0, 'it stands on its wheels'],
      'note-the-day': [0, DAY],
    },
    not: {
      'cylinder-oil': 'nothing is oiled that is driven',
      'carburetor-dry': 'nothing is run dry that is driven',
      'belts-slack': 'nothing is slackened that is driven',
      'pipes-blocked': 'nothing is closed that is driven',
      insurer: 'its cover for the road goes on',
      registry: 'it is not off the road',
      stands: 'it is driven off its place',
      'drain-tank': 'it needs fuel',
    },
  },
  {
    name: 'a roadster left alone for 14 months',
    stay: { choices: { running: 'rest' }, months: 14 },
    has: {
      'settle-running': [42, TIMELINE],
      'cylinder-oil': [0, TB_29],
      'belts-slack': [0, 'US Army TB 740-97-4 pars. 32 to 40'],
      'pipes-blocked': [0, DAY],
      insurer: [10, TIMELINE],
    },
    not: { 'keep-road-cover': 'it is not driven' },
  },
  {
    name: 'a roadster on old coolant',
    stay: { parts: { 'coolant-iat': aged('coolant-iat', 60) } },
    has: { 'coolant-change': [14, TIMELINE], 'coolant-strength': [14, `${TIMELINE}: measured after the change`] },
    not: {},
  },
  {
    name: 'a roadster on silicone brake fluid',
    stay: { without: ['glycol-fluid'], with: ['silicone-fluid'] },
    has: { 'silicone-fluid': [14, 'forum posts: water pools; the reservoir is labeled'] },
    not: { 'brake-fluid': 'it takes up no water' },
  },
];

describePlans(CASES);

describe('the length of a stay', () => {
  // Common practice by length; bores US Army TB 740-97-4 par. 29; each from its first day and not the day before.
  it.each([
    ['oil-change', 3],
    ['insurer', 3],
    ['fuel-fill', 1],
    ['carburetor-dry', 1],
    ['cylinder-oil', 6],
    ['stands', 12],
    ['belts-slack', 12],
    // Its tank breathes freely: full of fuel it stands no year.
    ['drain-tank', 12],
  ])('brings in %s from %d months, and not a day earlier', (key, months) => {
    expect(keysOf(layUpWith({ months }))).toContain(key);
    expect(keysOf(layUpWith({ months, days: -1 }))).not.toContain(key);
  });

  it('with an open end is that of a year', () => {
    expect(keysOf(layUpWith({ months: null }))).toEqual(keysOf(layUpWith({ months: 12 })));
  });
});
