/** What is looked at on a round, with the answers to choose from and what each means. */
import type { Verdict } from '../ageing/verdict.ts';
import type { CautionKey } from '../catalogue/cautions.ts';
import type { SourceKey } from '../catalogue/sources.ts';
import type { When } from './conditions.ts';
import type { Situation } from './situation.ts';
import { becauseOf } from './when.ts';

export interface Look {
  /** Own among the looks, and kept with every round. */
  key: string;
  name: string;
  how: string;
  answers: Readonly<Record<string, { name: string; verdict: Verdict; todo?: string }>>;
  when: readonly When[];
  /** What it finds to act on keeps the car off the road. */
  gate?: true;
  /** Asked on every such round, counted from the parking day; absent: on each. */
  every?: number;
  cautions: readonly CautionKey[];
  sources: readonly SourceKey[];
}

const DONE = { done: { name: 'Done', verdict: 'good' }, not: { name: 'Not this time', verdict: 'watch' } } as const;

/** It stands on its own wheels, and can be pushed. */
const ROLLS = {
  side: { topic: 'weight', is: ['wheels'] },
  spared: ['wheels-off', 'lift'],
  without: ['air-suspension', 'hydropneumatic'],
} as const;

export const LOOKS: readonly Look[] = [
  {
    key: 'smell',
    gate: true,
    name: 'Smell, inside and around it',
    how: 'With the first door you open, before anything is switched on.',
    answers: {
      none: { name: 'Nothing', verdict: 'good' },
      must: { name: 'Musty', verdict: 'watch', todo: 'Dry or renew the desiccant, and look for where damp gets in.' },
      fuel: {
        name: 'Fuel',
        verdict: 'act',
        todo: 'Switch nothing on, air the room, find the leak before anything else; a workshop where it is not plain.',
      },
    },
    when: [],
    cautions: ['fuel-vapor'],
    sources: ['common-practice'],
  },
  {
    key: 'mice',
    name: 'Droppings, nests, traps',
    how: 'Seats, footwells, trunk, round the traps.',
    answers: {
      none: { name: 'None', verdict: 'good' },
      caught: {
        name: 'One in a trap',
        verdict: 'watch',
        todo: 'Set the trap anew, and find the hole it came through.',
      },
      traces: {
        name: 'Droppings or a nest',
        verdict: 'act',
        todo: 'Take the nest out, close the holes, set more traps; look along the wiring before the ignition is switched on.',
      },
    },
    when: [],
    cautions: ['droppings'],
    sources: ['collected-owner-tips'],
  },
  {
    key: 'drips',
    gate: true,
    name: 'The cardboard below',
    how: 'Photograph it with the date; mark each spot.',
    answers: {
      none: { name: 'Dry', verdict: 'good' },
      spots: { name: 'Spots', verdict: 'watch', todo: 'Mark them, see next month whether they grow.' },
      pool: {
        name: 'A pool, or any fuel or brake fluid',
        verdict: 'act',
        todo: 'Find out which fluid, top up nothing before the leak is found; fuel and brake fluid are for a workshop.',
      },
    },
    when: [],
    cautions: ['fuel-vapor'],
    sources: ['army-leak-classes', 'trade-magazine'],
  },
  {
    key: 'wet',
    name: 'Roof, cover and floor',
    how: 'Stains above it, a wet cover, puddles on the floor.',
    answers: {
      dry: { name: 'Dry', verdict: 'good' },
      damp: { name: 'Damp', verdict: 'watch', todo: 'Air the cover, dry the floor, look where it comes from.' },
      wet: { name: 'Wet', verdict: 'act', todo: 'Take the cover off and dry the car; mend the roof or move the car.' },
    },
    when: [],
    cautions: [],
    sources: ['army-storage-manuals', 'common-practice'],
  },
  {
    key: 'tires',
    gate: true,
    name: 'Tires, by eye',
    how: 'All corners; by the gauge at least every second month.',
    answers: {
      full: { name: 'All stand up', verdict: 'good' },
      soft: {
        name: 'One looks soft',
        verdict: 'act',
        todo: 'Gauge it and pump it up; one that sinks again has a leak.',
      },
    },
    when: [{ spared: ['wheels-off'] }],
    cautions: [],
    sources: ['tire-maker-care', 'army-storage-manuals'],
  },
  {
    key: 'lamp',
    name: 'Maintainer',
    how: 'Its lamp, and by hand its case, plug and lead.',
    answers: {
      full: { name: 'Shows full, hardly warm', verdict: 'good' },
      charging: {
        name: 'Still charging',
        verdict: 'watch',
        todo: 'Look again within a day; a battery that never fills is failing.',
      },
      fault: {
        name: 'Fault, hot, or dark',
        verdict: 'act',
        todo: 'Unplug it at the wall. Read the battery at rest; do not charge one that is frozen, swollen or smells.',
      },
    },
    when: [{ side: { topic: 'battery', is: ['maintainer'] }, without: ['no-battery'] }],
    cautions: ['battery-gas', 'electrical'],
    sources: ['occupational-safety-agency', 'memory'],
  },
  {
    key: 'rolled',
    name: 'Rolled a quarter turn',
    how: 'By hand, on level ground only: out of gear for it, then chocks and gear back at once. One tire maker says every 30 days for high-performance tires and three months otherwise.',
    answers: DONE,
    when: [ROLLS],
    cautions: ['rolling'],
    sources: ['tire-maker-care', 'tire-maker-care-2', 'tire-storage-guides'],
  },
  {
    key: 'clutch',
    name: 'Clutch pressed',
    how: 'Five strokes, the engine off, chocks in place: with the pedal down the gear holds nothing.',
    answers: DONE,
    when: [{ traits: ['manual-gearbox'] }],
    cautions: ['rolling'],
    sources: ['common-practice'],
  },
  {
    key: 'pedal',
    gate: true,
    name: 'Brake pedal pressed',
    how: 'Three strokes. A pedal that sinks is noted and not tried out.',
    answers: {
      firm: { name: 'Firm', verdict: 'good' },
      sinks: {
        name: 'Sinks or spongy',
        verdict: 'act',
        todo: 'It stays where it is until a workshop has looked at the brakes.',
      },
      not: { name: 'Not this time', verdict: 'watch' },
    },
    when: [{ side: { topic: 'pedal', is: ['press'] }, traits: ['hydraulic-brakes'] }],
    cautions: ['brake-work'],
    sources: ['memory'],
  },
  {
    key: 'drive',
    name: 'Driven hot, as you chose',
    how: 'Tailpipe and intake plugs out first, tires at road pressure. At least 25 km, everything hot, several stops and turns; no short idle.',
    answers: DONE,
    when: [{ side: { topic: 'running', is: ['drive'] } }],
    cautions: ['carbon-monoxide', 'brake-work'],
    sources: ['army-exercise-manuals'],
  },
  {
    key: 'desiccant',
    name: 'Desiccant',
    how: 'Weigh it, or look at its color.',
    answers: {
      good: { name: 'Still takes up', verdict: 'good' },
      renewed: { name: 'Dried or renewed', verdict: 'good' },
      wet: { name: 'Full', verdict: 'act', todo: 'Dry or renew it now: a full bag gives its water back.' },
    },
    when: [{ place: ['not heated'] }],
    every: 3,
    cautions: [],
    sources: ['dehumidifier-maker-article'],
  },
  {
    key: 'under-hood',
    gate: true,
    name: 'Under the hood',
    how: 'Nests on the engine, chewed wires, the plugs and their tags.',
    answers: {
      good: { name: 'Nothing, tags in place', verdict: 'good' },
      traces: {
        name: 'Traces',
        verdict: 'act',
        todo: 'Look along the wiring before the ignition is switched on; close the way in.',
      },
    },
    when: [],
    every: 3,
    cautions: ['droppings'],
    sources: ['collected-owner-tips'],
  },
  {
    key: 'cells',
    name: 'Water in the battery’s cells',
    how: 'Where it has caps: over the plates, up to the mark. Distilled water only, goggles on.',
    answers: {
      good: { name: 'Over the plates', verdict: 'good' },
      filled: { name: 'Filled up', verdict: 'good' },
      dry: {
        name: 'Plates bare',
        verdict: 'act',
        todo: 'Fill it up with distilled water, and have it tested: the maintainer may charge too hard.',
      },
    },
    when: [{ traits: ['battery-flooded'], side: { topic: 'battery', is: ['maintainer', 'out'] } }],
    every: 3,
    cautions: ['battery-gas'],
    sources: ['army-battery-manual', 'occupational-safety-agency'],
  },
  {
    key: 'bores',
    name: 'Bores oiled anew',
    how: 'Plugs out, oil in, two turns by hand, plugs in; the tag stays on.',
    answers: DONE,
    when: [{ traits: ['gasoline'], months: { from: 9 }, side: { topic: 'running', is: ['rest'] } }],
    every: 6,
    cautions: ['hydraulic-lock', 'high-voltage-ignition'],
    sources: ['tb-740-97-4', 'common-practice'],
  },
  {
    key: 'coolant',
    gate: true,
    name: 'Coolant',
    how: 'Level and color, cold.',
    answers: {
      good: { name: 'As it was', verdict: 'good' },
      low: { name: 'Lower', verdict: 'watch', todo: 'Look for where it went: pump, hoses, core plugs.' },
      rusty: { name: 'Rusty or oily', verdict: 'act', todo: 'Have the cause found before it is started.' },
    },
    when: [{ traits: ['liquid-cooled'] }],
    every: 6,
    cautions: ['hot-coolant'],
    sources: ['common-practice'],
  },
  {
    key: 'oil-smell',
    gate: true,
    name: 'Oil on the stick',
    how: 'Wipe it on paper: level, smell, color.',
    answers: {
      good: { name: 'As it was', verdict: 'good' },
      fuel: {
        name: 'Risen, or smells of fuel',
        verdict: 'act',
        todo: 'Do not start it: the pump’s diaphragm or a float leaks into the sump.',
      },
      milky: { name: 'Milky', verdict: 'act', todo: 'Water is in it: find the way in before it is started.' },
    },
    when: [],
    every: 6,
    cautions: [],
    sources: ['common-practice'],
  },
  {
    key: 'fuel-smell',
    name: 'Fuel at the filler',
    how: 'Smell only: clear and sharp is good, sour or like varnish is not.',
    answers: {
      good: { name: 'Smells of fuel', verdict: 'good' },
      sour: { name: 'Sour or varnish', verdict: 'act', todo: 'Plan to drain it before it is started.' },
    },
    when: [{ side: { topic: 'tank', is: ['full', 'ethanol-free'] } }],
    every: 6,
    cautions: ['fuel-vapor'],
    sources: ['common-practice'],
  },
  {
    key: 'drag',
    name: 'Wheels free',
    how: 'Push it a hand’s breadth on level ground: it rolls, or it drags.',
    answers: {
      free: { name: 'Rolls', verdict: 'good' },
      drags: {
        name: 'Drags',
        verdict: 'watch',
        todo: 'Note which wheel: a brake sticks. No force, and no towing in gear.',
      },
    },
    when: [ROLLS],
    every: 6,
    cautions: ['rolling'],
    sources: ['phone-in-parking-brake', 'common-practice'],
  },
];

/** What to look at on the nth round, counted in months from the parking day. */
export const looksOn = (situation: Situation, month: number): Look[] =>
  LOOKS.filter(
    ({ when, every }) =>
      becauseOf(when, situation) !== null && (every === undefined || (month > 0 && month % every === 0)),
  );
