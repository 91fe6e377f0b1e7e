/** The road tests, each longer and faster than the last, and the notes taken on them. From memory of common practice. */
export interface RunPlan {
  name: string;
  distance: string;
  /** The most it goes, km. */
  km: number;
  speed: string;
  looks: string;
  stopIf: string;
  afterwards: string;
}

export const RUNS = {
  a: {
    name: 'A: yard',
    distance: '20 m, back and forth',
    km: 0.2,
    speed: 'Walking pace, private ground',
    looks: 'Pedal, release, clunks, rubbing, left and right; the parking brake on a slope',
    stopIf: 'It pulls, drags, or the pedal sinks',
    afterwards: 'Touch every hub: they must be alike. Look under it for fluid.',
  },
  b: {
    name: 'B: round the block',
    distance: '1 to 2 km',
    km: 2,
    speed: '30 km/h (20 mph)',
    looks: 'Five gentle stops, two hard ones from 30; steering returns by itself; gauges',
    stopIf: 'A hub is hot, it pulls, a gauge climbs, it smells',
    afterwards: 'Ten minutes to cool; all four wheels within 15 °C by the infrared thermometer; leaks.',
  },
  c: {
    name: 'C: short loop',
    distance: '5 to 10 km',
    km: 10,
    speed: '50 to 60 km/h (30 to 40 mph)',
    looks: 'Vibration, drone, exhaust inside, charging, clutch bite, a temperature that settles',
    stopIf: 'A gauge over its mark, knocks, smoke, brakes that fade',
    afterwards: 'Full leak survey hot, and again cold the next day.',
  },
  d: {
    name: 'D: long loop',
    distance: '20 to 30 km',
    km: 30,
    speed: '80 km/h (50 mph), a hill, one start while hot',
    looks: 'Hot start, fuel vapor, overdrive or top gear, heater',
    stopIf: 'As on the short loop',
    afterwards: 'Levels, clips, wheel nuts once 80 to 160 km are done; head bolts only where the gasket’s maker asks.',
  },
  e: {
    name: 'E: trip',
    distance: '80 to 100 km',
    km: 100,
    speed: 'As the road allows',
    looks: 'Fuel and oil used, hot pressures, everything that was noted before',
    stopIf: 'As on the short loop',
    afterwards: 'Oil and filter again at 300 to 500 km; a look at the brake fluid; tire pressures hot and cold.',
  },
} as const satisfies Readonly<Record<string, RunPlan>>;
export type RunKey = keyof typeof RUNS;

/** What is noted on a run, one tap each. */
export const SENSES = {
  noise: { name: 'Noise', kinds: ['cold', 'hot', 'turning', 'braking', 'over bumps'] },
  smell: {
    name: 'Smell',
    kinds: ['fuel', 'sweet', 'oil', 'rubber', 'electric', 'exhaust inside', 'rotten egg', 'hot metal'],
  },
  look: { name: 'Look', kinds: ['steam', 'drip', 'blue smoke', 'white smoke', 'black smoke'] },
  feel: { name: 'Feel', kinds: ['pulls', 'shakes', 'spongy pedal', 'hard pedal', 'wanders', 'slips'] },
  gauge: { name: 'Gauge', kinds: ['hot', 'low oil pressure', 'not charging', 'charging too high', 'flickers'] },
} as const;
export type Sense = keyof typeof SENSES;

/** Against the last run: colder is less of it. */
export const VERSUS = ['new', 'colder', 'same', 'worse'] as const;
export type Versus = (typeof VERSUS)[number];

export interface RunNote {
  sense: Sense;
  kind: string;
  versus: Versus;
  words: string;
}

/** Hubs further apart than this, °C, after a run: a brake drags or a bearing runs dry. From memory. */
export const HUBS_APART = 15;
