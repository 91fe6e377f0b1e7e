/** Sources of the models: chemistry and physics of what ages while it stands. */
import type { Source } from './grades.ts';

export const MODEL_SOURCES = {
  'ashrae-glycol': {
    grade: 'handbook',
    title: 'ASHRAE Handbook (2001), freezing points of glycol mixtures, as carried in an open fluid-property library',
  },
  'secondary-fluids-2010': {
    grade: 'handbook',
    title: 'Refrigeration-institute data on secondary fluids (2010), fit by mass, as carried in an open library',
  },
  'refractive-mixing': {
    grade: 'handbook',
    title: 'Refractive index of a mixture by Lorentz and Lorenz, and the sucrose scale of refractometers (from memory)',
  },
  'army-coolant-table': {
    grade: 'authority',
    title: 'US Army TM 9-6115-464-12 table 2-1: pints of ethylene glycol a gallon, density, lowest temperature',
  },
  'army-coolant-limits': {
    grade: 'authority',
    title: 'US Army TM 5-3820-245-14&P and TM 5-3805-254-14&P-2: at least 33, at most 67 percent glycol',
  },
  'astm-d3321': { grade: 'standard', title: 'ASTM D3321, coolant by refractometer to 1 °C; significance text' },
  'astm-d1287': {
    grade: 'standard',
    title: 'ASTM D1287 section 4.4: pH of used coolant proves neither effectiveness nor remaining life',
  },
  'army-battery-manual': {
    grade: 'authority',
    title: 'US Army TM 9-6140-200-14: self-discharge by temperature, cell spread, charging, care of batteries',
  },
  'army-battery-tables': {
    grade: 'authority',
    title:
      'US Army TM 5-1185 series tables II to IV and OD1002: density, its temperature correction, freezing, cranking',
  },
  'army-recharge-rule': {
    grade: 'authority',
    title: 'US Army TM 5-3820-256-24-4: recharge at a density of 1.225 (three quarters), look every 30 days',
  },
  'battery-charge-table': {
    grade: 'trade',
    title: 'Table of charge, voltage and density credited to a battery trade council, on two battery reference pages',
  },
  'powersports-battery-charts': {
    grade: 'authority',
    title: 'Powersports maker’s charts: freezing by density, AGM voltage by charge',
  },
  'stationary-agm-manual': {
    grade: 'authority',
    title: 'Stationary AGM battery manual: 2 to 3 percent a month at 25 °C',
  },
  'lithium-battery-manual': {
    grade: 'authority',
    title: 'LiFePO4 battery manual: 2 percent a month at most, no charging below 0 °C, storage half full',
  },
  'standing-drain-bulletin': {
    grade: 'authority',
    title: 'Vehicle maker’s service bulletin on standing drain: no start after about 40 percent of the capacity',
  },
  'uk-fuel-life': {
    grade: 'trade',
    title: 'UK press quoting a motoring body: gasoline keeps six months at 20 °C and three at 30 °C',
  },
  'epa-phase-separation': {
    grade: 'authority',
    title: 'EPA memo on water in oxygenated gasoline (opening seen, figures through a web summary)',
  },
  'nebraska-ethanol': {
    grade: 'authority',
    title: 'University of Nebraska extension page: water measured in E10 and E15 until they separate',
  },
  'biodiesel-storage': {
    grade: 'trade',
    title: 'Fleet trade magazine quoting a laboratory report on stored biodiesel',
  },
  magnus: { grade: 'handbook', title: 'Magnus formula for the vapor pressure of water, meteorological practice' },
  'sae-j1707': {
    grade: 'trade',
    title: 'European refractometer study quoting SAE J1707: brake fluid takes up 1 to 2 percent water a year',
  },
  'dot-3-and-water': {
    grade: 'trade',
    title: 'Two trade articles: typical DOT 3 fluid boils at 205, 187, 160 and 145 °C with 0, 1, 2 and 3 percent water',
  },
  'rubber-activation': {
    grade: 'paper',
    title: 'Rubber Chemistry and Technology 74(1) 79: natural rubber aged in air, 90 ± 4 kJ/mol (abstract)',
  },
  'tire-permeation': {
    grade: 'paper',
    title:
      'Tire Science and Technology 13(1) 16: a tire loses 0.5 to 1.0 psi a month at 21 °C, 1.5 at 32 °C (abstract)',
  },
  'gas-law': { grade: 'handbook', title: 'Gas law at constant volume, absolute pressure and temperature' },
  'tire-storage-guides': {
    grade: 'authority',
    title: 'Tire makers’ storage guides: move it every three months, every 30 days with a cap ply',
  },
  'army-tire-manual': {
    grade: 'authority',
    title: 'US Army TM 9-2610-200-14 2-52 and 2-53: sun, snow, sand and asphalt; wrap, block, look twice a year',
  },
  'vehicle-storage-bulletin': {
    grade: 'authority',
    title: 'Vehicle maker’s storage bulletin: tires to 40 psi or the sidewall maximum, a roofed dry place',
  },
  'iso-2230': {
    grade: 'standard',
    title: 'ISO 2230:2002, storage of rubber parts, groups A, B and C, as quoted by the seal trade',
  },
  'hose-heat': { grade: 'trade', title: 'Hose trade articles: damage doubles with every 10 °C (18 °F)' },
} as const satisfies Readonly<Record<string, Source>>;
