/** Lay-ups in contrasting places, line by line against what is published. */
import {
  BY_LENGTH,
  DAY,
  describePlans,
  GASOLINE,
  type PlanCase,
  SHOP,
  TIMELINE,
  TIRE_MAKERS,
  VARIATION,
} from '../support/plan-cases.ts';
import { aged, placeOf } from '../support/stays.ts';

const CASES: readonly PlanCase[] = [
  {
    name: 'a roadster by the sea, its brake fluid a year old',
    stay: { place: placeOf({ air: 'coast' }), parts: { 'brake-fluid-glycol': aged('brake-fluid-glycol', 12) } },
    has: {
      'brake-fluid': [14, `${VARIATION}: yearly on the coast`],
      'salt-off': [null, VARIATION],
      'grease-earths': [null, VARIATION],
      dehumidifier: [0, VARIATION],
    },
    not: { sunshade: VARIATION, 'sun-off-tires': VARIATION, 'more-visits': 'it stands under a roof' },
  },
  {
    name: 'a roadster in the desert, under a roof',
    stay: { place: placeOf({ winterLow: 2, summerHigh: 45, air: 'desert', shelter: 'covered' }) },
    has: {
      ...GASOLINE,
      'more-visits': [42, 'US Army TM 9-2330 series: weekly in the open, and after storms'],
      sunshade: [0, VARIATION],
      'sun-off-tires': [0, VARIATION],
      traps: [0, `${VARIATION}: pack rats`],
      'close-holes': [14, VARIATION],
      cover: [0, VARIATION],
    },
    not: {
      washer: 'it does not freeze there',
      'salt-off': VARIATION,
      dehumidifier: VARIATION,
      'drain-tank': VARIATION,
    },
  },
  {
    name: 'a sedan where nights fall to −35 °C',
    stay: { start: 'sedan-drums-all-round', place: placeOf({ winterLow: -35 }) },
    has: {
      'coolant-strength': [14, VARIATION],
      washer: [14, VARIATION],
      'deep-frost': [0, `${VARIATION}: washer empty, battery charged or indoors`],
      'battery-maintainer': [0, `${VARIATION}: charged or indoors`],
    },
    not: { 'battery-left': VARIATION },
  },
  {
    name: 'a tourer in a damp barn on an earth floor for four months',
    stay: {
      start: 'sedan-drums-all-round',
      months: 4,
      place: placeOf({ shelter: 'damp' }),
      circumstances: ['bare-floor'],
    },
    has: {
      boards: [0, SHOP],
      'ground-sheet': [0, `${SHOP}; motoring organization: plastic on gravel or soil`],
      dehumidifier: [0, SHOP],
      'cylinder-oil': [0, `${BY_LENGTH}: from three months where it is damp`],
      'clutch-free': [0, BY_LENGTH],
      'grease-earths': [null, VARIATION],
    },
    not: { sunshade: VARIATION },
  },
  {
    name: 'a hatchback in the open',
    stay: { start: 'hatchback-timing-belt', place: placeOf({ shelter: 'open' }) },
    has: {
      'more-visits': [42, 'US Army TM 9-2330 series: weekly in the open, and after storms'],
      'ground-sheet': [0, BY_LENGTH],
      'sun-off-tires': [0, 'US Army TM 9-2610-200-14 2-52: tires wrapped'],
      cover: [0, `${VARIATION}: breathable, never plastic`],
      chocks: [0, VARIATION],
      'close-holes': [14, BY_LENGTH],
    },
    not: { 'deep-frost': VARIATION, boards: `${SHOP}: a damp room with an earth floor` },
  },
  {
    name: 'a roadster on a lift above another car for 14 months',
    stay: { circumstances: ['lift'], months: 14 },
    has: { 'drip-tray': [0, VARIATION], pressure: [0, 'its wheels stand on the lift'] },
    not: { stands: 'it stands on the lift' },
  },
  {
    name: 'a roadster whose wheels are stored apart',
    stay: { circumstances: ['wheels-off'] },
    has: { 'wheels-off': [0, `${TIRE_MAKERS}: each marked, dark, dry, away from motors`], chocks: [0, DAY] },
    not: { pressure: 'they are off', stands: 'the step for wheels off has them' },
  },
  {
    name: 'a roadster nobody has said the place of',
    stay: { place: null },
    has: {
      'coolant-strength': [14, 'unknown is never free of frost'],
      washer: [14, 'unknown is never free of frost'],
      desiccant: [0, 'unknown is not heated'],
      traps: [0, 'unknown is not heated'],
      'clutch-free': [0, 'unknown is not heated'],
      'measure-humidity': [42, TIMELINE],
    },
    not: { 'salt-off': 'nobody said so', sunshade: 'nobody said so', dehumidifier: 'nobody said so' },
  },
];

describePlans(CASES);
