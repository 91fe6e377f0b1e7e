/** The leak map: places, fluids and how much, seen cold, hot and the next morning, over two heat cycles. */
export const LEAK_PLACES = {
  tank: 'Tank, sender, filler hose',
  'fuel-lines': 'Fuel lines and hoses',
  'fuel-pump': 'Fuel pump',
  carburetor: 'Carburetor or injectors',
  'radiator-place': 'Radiator',
  'coolant-hoses': 'Coolant and heater hoses',
  'water-pump': 'Water pump',
  'core-plugs': 'Core plugs, block',
  'valve-cover': 'Valve cover',
  'front-crank': 'Front crank seal, timing cover',
  'oil-pan': 'Oil pan and drain plug',
  'oil-filter': 'Oil filter, oil lines',
  'rear-main': 'Rear main seal, bell housing',
  gearbox: 'Gearbox, tail shaft',
  pinion: 'Pinion, axle housing',
  'axle-ends': 'Axle ends, inside of a wheel',
  'steering-box': 'Steering box or rack, its pump and hoses',
  'master-cylinder': 'Brake or clutch master cylinder',
  'brake-wheels': 'Caliper, wheel cylinder, brake hose',
  other: 'Somewhere else',
} as const;
export type LeakPlace = keyof typeof LEAK_PLACES;

export const LEAK_FLUIDS = {
  fuel: 'Fuel',
  brake: 'Brake or clutch fluid',
  coolant: 'Coolant',
  oil: 'Engine oil',
  gear: 'Gear or axle oil',
  hydraulic: 'Power steering or other hydraulic fluid',
  unknown: 'Not known',
} as const;
export type LeakFluid = keyof typeof LEAK_FLUIDS;

/** Military leak classes: seepage; drops that form; drops that fall. */
export const LEAK_CLASSES = {
  seeps: { words: 'Wet or discolored, no drops', class: 'I' },
  forms: { words: 'Drops form and do not fall', class: 'II' },
  falls: { words: 'Drops fall', class: 'III' },
} as const;
export type LeakClass = keyof typeof LEAK_CLASSES;

export const MOMENTS = {
  cold: 'Cold, before the start',
  hot: 'Hot, after twenty minutes of soak',
  morning: 'Next morning',
} as const;
export type Moment = keyof typeof MOMENTS;
export const CYCLES = [1, 2] as const;
export type Cycle = (typeof CYCLES)[number];

export interface Spot {
  place: LeakPlace;
  fluid: LeakFluid;
  how: LeakClass;
}
