/** What is asked of fuel in the tank. */
import type { Detail } from '../gauge.ts';

export const FUEL_IN_TANK = [
  {
    key: 'stabilized',
    name: 'Stabilizer',
    hint: 'It keeps fresh fuel and restores none.',
    choices: { yes: 'Put into fresh fuel', no: 'None, or put in later' },
  },
  {
    key: 'tank',
    name: 'Tank',
    hint: 'In the handbook.',
    unit: 'L',
    also: ['US gal'],
    range: [2, 400],
    decimals: 0,
    stays: true,
  },
  { key: 'fullness', name: 'Filled to', unit: '%', range: [0, 100], decimals: 0 },
] as const satisfies readonly Detail[];
