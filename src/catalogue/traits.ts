/**
 * Traits: what a car has, so that its list of parts holds what it can have and nothing else.
 * Facets group them for people; a facet of `one` lets exactly one of its traits be true.
 */
export interface Facet {
  key: string;
  name: string;
  choose: 'one' | 'any';
  traits: Readonly<Record<string, string>>;
}

export const FACETS = [
  {
    key: 'fuel',
    name: 'Fuel',
    choose: 'one',
    traits: { gasoline: 'Gasoline (petrol)', diesel: 'Diesel' },
  },
  {
    key: 'mixture',
    name: 'Mixture',
    choose: 'one',
    traits: { carburetor: 'Carburetor', 'fuel-injection': 'Injection' },
  },
  {
    key: 'fuel-pump',
    name: 'Fuel pump',
    choose: 'one',
    traits: {
      'mechanical-fuel-pump': 'Mechanical, on the engine',
      'electric-fuel-pump': 'Electric',
      'gravity-feed': 'None: gravity',
    },
  },
  {
    key: 'fuel-system',
    name: 'Also in the fuel system',
    choose: 'any',
    traits: {
      'evap-system': 'Charcoal canister',
      'sealed-tank-coating': 'Tank sealed with a coating',
      'lpg-tank': 'LPG tank',
      'cng-tank': 'CNG container',
      'fuel-cell': 'Competition fuel cell',
    },
  },
  {
    key: 'ignition',
    name: 'Ignition',
    choose: 'one',
    traits: {
      'points-ignition': 'Contact points',
      distributor: 'Distributor without points',
      'coil-ignition': 'Coil packs, no distributor',
      'compression-ignition': 'None: diesel',
    },
  },
  {
    key: 'cooling',
    name: 'Cooling',
    choose: 'one',
    traits: { 'liquid-cooled': 'Liquid', 'air-cooled': 'Air' },
  },
  {
    key: 'coolant',
    name: 'Coolant in it',
    choose: 'one',
    traits: {
      'coolant-iat': 'Traditional inorganic (or not known)',
      'coolant-oat': 'Organic or hybrid',
      'coolant-waterless': 'Waterless',
      'no-coolant': 'None: air-cooled',
    },
  },
  {
    key: 'engine',
    name: 'Also on the engine',
    choose: 'any',
    traits: {
      'v-belt': 'V-belts',
      'ribbed-belt': 'Multi-rib belt',
      'timing-belt': 'Timing belt',
      'oil-cooler': 'Oil cooler with hoses',
      'plastic-coolant-tank': 'Plastic expansion tank',
    },
  },
  {
    key: 'front-brakes',
    name: 'Front brakes',
    choose: 'one',
    traits: { 'front-discs': 'Discs', 'front-drums': 'Drums', 'no-front-brakes': 'None' },
  },
  {
    key: 'rear-brakes',
    name: 'Rear brakes',
    choose: 'one',
    traits: { 'rear-drums': 'Drums', 'rear-discs': 'Discs' },
  },
  {
    key: 'brake-fluid',
    name: 'Brake fluid',
    choose: 'one',
    traits: {
      'glycol-fluid': 'Glycol: DOT 3, 4 or 5.1 (or not known)',
      'silicone-fluid': 'Silicone: DOT 5',
      'central-hydraulics': 'Mineral oil, shared with the suspension',
      'cable-brakes': 'None: rods or cables',
    },
  },
  {
    key: 'brake-system',
    name: 'Also in the brakes',
    choose: 'any',
    traits: {
      'vacuum-servo': 'Vacuum servo (booster)',
      abs: 'Anti-lock',
      'high-pressure-brakes': 'Accumulator and electric pump',
    },
  },
  {
    key: 'gearbox',
    name: 'Gearbox',
    choose: 'one',
    traits: { 'manual-gearbox': 'Manual', 'automatic-gearbox': 'Automatic' },
  },
  {
    key: 'driveline',
    name: 'Also in the driveline',
    choose: 'any',
    traits: {
      'hydraulic-clutch': 'Hydraulic clutch',
      overdrive: 'Overdrive',
      propshaft: 'Propshaft to the rear',
      'flex-disc-driveshaft': 'Rubber coupling on the shaft',
      'cv-joints': 'Constant-velocity joints',
    },
  },
  {
    key: 'suspension',
    name: 'Steering and suspension',
    choose: 'any',
    traits: {
      'power-steering-hydraulic': 'Hydraulic power steering',
      'greased-chassis': 'Grease nipples',
      'serviceable-bearings': 'Wheel bearings that can be repacked',
      'air-suspension': 'Air springs',
      hydropneumatic: 'Gas spheres',
      'rubber-or-fluid-springs': 'Rubber or fluid-linked springs',
    },
  },
  {
    key: 'spare',
    name: 'Spare wheel',
    choose: 'one',
    traits: {
      'spare-full': 'Full size',
      'spare-compact': 'Compact temporary',
      'sealant-kit': 'Sealant bottle instead',
      'no-spare': 'None carried',
    },
  },
  {
    key: 'tires',
    name: 'Tires',
    choose: 'one',
    traits: { tubeless: 'Tubeless', 'tube-type': 'With inner tubes' },
  },
  {
    key: 'battery',
    name: 'Battery',
    choose: 'one',
    traits: {
      'battery-flooded': 'Flooded lead-acid (or not known)',
      'battery-agm': 'AGM or gel',
      'battery-lithium': 'Lithium',
      'no-battery': 'None: magneto',
    },
  },
  {
    key: 'roof',
    name: 'Roof',
    choose: 'one',
    traits: {
      'fixed-roof': 'Fixed',
      'soft-top': 'Soft top, by hand',
      'powered-soft-top': 'Soft top, hydraulic',
      'powered-hard-top': 'Folding hard top, hydraulic',
    },
  },
  {
    key: 'restraints',
    name: 'Restraints',
    choose: 'any',
    traits: {
      'seat-belts': 'Seat belts',
      airbags: 'Airbags',
      'harness-fia': 'Harness, international label',
      'harness-sfi': 'Harness, US label',
      'child-seat': 'Child seat',
    },
  },
  {
    key: 'comfort',
    name: 'Comfort',
    choose: 'any',
    traits: { 'air-con': 'Air conditioning', 'cabin-filter': 'Cabin filter', tpms: 'Tire-pressure sensors' },
  },
  {
    key: 'kit',
    name: 'Carried in the car',
    choose: 'any',
    traits: {
      extinguisher: 'Fire extinguisher',
      flares: 'Warning flares',
      'first-aid-kit': 'First-aid kit',
      'battery-maintainer': 'Battery maintainer',
    },
  },
] as const satisfies readonly Facet[];

export type StatedTrait = {
  [F in (typeof FACETS)[number] as F['key']]: keyof F['traits'];
}[(typeof FACETS)[number]['key']] &
  string;

/** Traits that follow from stated ones, so that nobody is asked the same thing twice. */
export const IMPLIED = {
  'hydraulic-brakes': ['glycol-fluid', 'silicone-fluid', 'central-hydraulics'],
  'disc-brakes': ['front-discs', 'rear-discs'],
  'drum-brakes': ['front-drums', 'rear-drums'],
  'roof-fabric': ['soft-top', 'powered-soft-top'],
  'roof-hydraulic': ['powered-soft-top', 'powered-hard-top'],
  'any-distributor': ['points-ignition', 'distributor'],
} as const satisfies Readonly<Record<string, readonly StatedTrait[]>>;

export type Trait = StatedTrait | keyof typeof IMPLIED;

/** Every trait a person can state, in the order they are asked. */
export const STATED_TRAITS = FACETS.flatMap((facet) => Object.keys(facet.traits)) as StatedTrait[];

/** The stated traits and all that follow from them. */
export const allTraits = (stated: readonly string[]): ReadonlySet<string> => {
  const has = new Set<string>(stated);
  for (const [implied, any] of Object.entries(IMPLIED)) if (any.some((trait) => has.has(trait))) has.add(implied);
  return has;
};
