/** The stages in the order of the trade, each with the gate that ends it. */
import type { LookKey } from './looks.ts';

export interface Stage {
  name: string;
  /** What its gate asks for, in words. */
  gate: string;
  why: string;
  /** Looks the gate rests on, each with the answers that open it. */
  opens: readonly { look: LookKey; is: readonly string[] }[];
  /** A gate of safety: passed on its evidence, or in writing with a name and a reason. */
  safety?: true;
  /** The engine runs or the car moves: none of its steps begins before every gate below is passed. */
  power?: true;
}

export const STAGES = {
  papers: {
    name: 'Papers and story',
    gate: 'The right to own it is clear, and why it was parked is known, or written down as unknown',
    why: 'A car parked for a fault still has it, and one without papers may never see a road.',
    opens: [{ look: 'title', is: ['in hand', 'can be had'] }],
  },
  evidence: {
    name: 'Evidence before cleaning',
    gate: 'Photographs, codes and tags are taken down as it was found',
    why: 'Cleaning destroys what tells its history.',
    opens: [],
  },
  structure: {
    name: 'Structure',
    gate: 'It carries itself on stands, and no brake pipe scales',
    why: 'A rotten car must be neither lifted nor paid for.',
    opens: [
      { look: 'structure', is: ['sound', 'surface rust'] },
      { look: 'brake-pipes', is: ['clean', 'surface rust', 'none fitted'] },
    ],
    safety: true,
  },
  'make-safe': {
    name: 'Make safe',
    gate: 'It stands safely, the battery is out, and an extinguisher is there',
    why: 'Most people are hurt here.',
    opens: [{ look: 'extinguisher', is: ['in date'] }],
    safety: true,
  },
  wiring: {
    name: 'Rodents and wiring',
    gate: 'No nest in the intake, no bare copper',
    why: 'A start sucks the nest in; chewed wires burn.',
    opens: [
      { look: 'air-box', is: ['clean', 'cleared'] },
      { look: 'wires', is: ['sound', 'mended'] },
    ],
    safety: true,
  },
  drains: {
    name: 'Drain and look',
    gate: 'Every fluid was seen, none milky or glittering, or its cause is found',
    why: 'Fluids tell where the money goes.',
    opens: [{ look: 'engine-oil', is: ['clean', 'black', 'cause found'] }],
  },
  free: {
    name: 'Free by hand',
    gate: 'Two smooth turns by hand, both valves and rings free, oil in the bores',
    why: 'A starter can’t feel a stuck valve or a rust ring.',
    opens: [{ look: 'turns', is: ['two smooth turns'] }],
    safety: true,
  },
  'pre-oil': {
    name: 'Oil before spark',
    gate: 'Oil pressure with the plugs out, or oil seen at the rockers',
    why: 'Bearings that stood are dry.',
    opens: [{ look: 'pre-oil', is: ['pressure', 'oil at the rockers'] }],
  },
  fuel: {
    name: 'Fuel',
    gate: 'Ten minutes under pressure without a leak, and clear fuel from a clean can',
    why: 'Never a first start from the old tank: fresh fuel dissolves old tar and glues the valves.',
    opens: [
      { look: 'fuel-leaks', is: ['dry'] },
      { look: 'fuel-supply', is: ['clean can', 'clean tank'] },
    ],
    safety: true,
  },
  spark: {
    name: 'Spark and charge',
    gate: 'A strong spark, or fuel at every injector, and no smoke from the wiring',
    why: 'The cheapest stage; it finds the wiring faults.',
    opens: [{ look: 'ignites', is: ['strong spark', 'diesel ready'] }],
  },
  cooling: {
    name: 'Cooling',
    gate: 'It holds pressure for a quarter of an hour, or the air can pass',
    why: 'Water that leaks at rest beats a warped head.',
    opens: [{ look: 'cooling-holds', is: ['holds', 'air can pass'] }],
  },
  'first-start': {
    name: 'First start and first heat',
    gate: 'Oil pressure within ten seconds, no knock, no fuel or water on the ground, it charges',
    why: 'Outdoors, from a clean can, on chocks: its brakes are not trusted yet.',
    opens: [
      { look: 'oil-pressure', is: ['in time'] },
      { look: 'knock', is: ['none'] },
    ],
    safety: true,
    power: true,
  },
  leaks: {
    name: 'Leak survey',
    gate: 'Seen cold, hot and the next morning, twice, and nothing grew',
    why: 'Seals settle or fail only after they were hot.',
    opens: [],
    safety: true,
  },
  brakes: {
    name: 'Brakes',
    gate: 'Pedal hard for a minute, every wheel free, no weep after a day, parking brake holds',
    why: 'What dormancy ruins most; a good pedal alone proves nothing.',
    opens: [
      { look: 'pedal', is: ['hard for a minute', 'no hydraulics'] },
      { look: 'release', is: ['every wheel free'] },
      { look: 'weep', is: ['dry after a day', 'no hydraulics'] },
      { look: 'parking-brake', is: ['holds and frees'] },
    ],
    safety: true,
  },
  driveline: {
    name: 'Clutch, gearbox, axle, joints',
    gate: 'Gears select, the clutch lets go, no boot is split',
    why: 'A clutch that sticks can’t be stopped quietly on a road.',
    opens: [{ look: 'drive', is: ['selects and lets go'] }],
  },
  steering: {
    name: 'Steering, suspension, bearings',
    gate: 'No play, no split boot, no rumble',
    why: 'Lost steering gives no warning.',
    opens: [
      { look: 'steering-play', is: ['none'] },
      { look: 'bearings', is: ['quiet, no play'] },
    ],
    safety: true,
  },
  tires: {
    name: 'Tires, valves, spare, nuts',
    gate: 'Every tire is dated and young enough, every nut at its torque',
    why: 'Last to be bought, since they age from the day they are made; and before any road speed.',
    opens: [{ look: 'nuts', is: ['at torque'] }],
    safety: true,
  },
  legal: {
    name: 'Lights, belts, papers',
    gate: 'Lamps, horn, wipers, belts; insured, registered, inspection booked',
    why: 'Seen, held and allowed.',
    opens: [
      { look: 'lamps', is: ['all work'] },
      { look: 'belts', is: ['sound', 'none fitted'] },
      { look: 'cover', is: ['in force'] },
    ],
    safety: true,
  },
  yard: {
    name: 'Yard',
    gate: 'Five straight stops at walking pace, no drag, hubs alike',
    why: 'Its first meters are walked.',
    opens: [],
    safety: true,
    power: true,
  },
  road: {
    name: 'Road tests',
    gate: 'Each run ended as planned, and nothing got worse',
    why: 'The step most often skipped: each run is longer and faster than the last, and the car is looked at between them.',
    opens: [],
    safety: true,
    power: true,
  },
  sorting: {
    name: 'Sorting',
    gate: 'What was noted is put right, or accepted in writing',
    why: 'The last tenth of the time, and what makes it a car again.',
    opens: [],
  },
} as const satisfies Readonly<Record<string, Stage>>;
export type StageKey = keyof typeof STAGES;
export const STAGE_KEYS = Object.keys(STAGES) as StageKey[];
