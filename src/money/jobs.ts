/**
 * What work takes: a workshop’s hours and the parts, lowest to highest, for an ordinary car of four to eight cylinders.
 * From memory of common practice; never a quote.
 */
import type { Span } from '../ageing/span.ts';
import type { SourceKey } from '../catalogue/sources.ts';

export interface Job {
  name: string;
  /** Hours of a workshop that does it often. */
  hours: Span;
  /** Parts and materials, US dollars. */
  parts: Span;
  sources: readonly SourceKey[];
}

const job = (name: string, hours: readonly [number, number], parts: readonly [number, number]): Job => ({
  name,
  hours: { low: hours[0], high: hours[1] },
  parts: { low: parts[0], high: parts[1] },
  sources: ['memory'],
});

export const JOBS = {
  transport: job('Transport home on a trailer', [2, 4], [100, 600]),
  survey: job('Survey and photographs', [2, 4], [0, 50]),
  cleaning: job('Cleaning, nests out', [2, 6], [30, 150]),
  weld: job('Welding of sills, floors, jacking points', [8, 60], [100, 1200]),
  'wiring-check': job('Wiring: rodent damage looked for, small repairs', [1, 8], [20, 200]),
  'wiring-mend': job('Wiring mended in several places', [2, 10], [30, 250]),
  'free-engine': job('Engine turned by hand, oiled, pre-oiled, compression read', [2, 6], [50, 150]),
  'soak-engine': job('Stuck engine soaked and freed', [2, 8], [30, 120]),
  'tank-drain': job('Tank drained and flushed in place, filter', [1, 3], [25, 90]),
  'tank-out': job('Tank out, cleaned or sealed, refitted', [3, 6], [100, 350]),
  'tank-new': job('Tank renewed with straps, sender, filler hose', [3, 7], [250, 1100]),
  'pump-mechanical': job('Fuel pump, mechanical', [0.7, 1.5], [30, 150]),
  'pump-electric': job('Fuel pump, electric, with strainer', [1.5, 4], [120, 500]),
  'fuel-hoses': job('Fuel hoses, all rubber', [1, 3], [30, 150]),
  'fuel-lines': job('Fuel lines, steel, tank to engine', [3, 8], [60, 300]),
  'fuel-leak': job('Fuel leak found and put right', [0.5, 2], [10, 80]),
  carburetor: job('Carburetor rebuilt, one', [2, 4], [30, 120]),
  injectors: job('Injectors out, cleaned, flow-tested, new seals', [1.5, 4], [100, 280]),
  'mechanical-injection': job('Mechanical injection: distributor, pump, accumulator', [4, 10], [600, 2200]),
  'diesel-injection': job('Diesel injection: filter, bleeding, injectors tested', [2, 6], [80, 500]),
  'master-cylinder': job('Brake master cylinder, bled', [1, 2.5], [75, 350]),
  'calipers-axle': job('Calipers, one axle', [1.5, 3], [120, 500]),
  linings: job('Shoes or pads, faces cleaned, one axle or two', [2, 5], [60, 300]),
  'cylinder-kits': job('Wheel cylinders stripped, kits', [2, 5], [30, 120]),
  'caliper-kits': job('Calipers stripped, kits', [2, 5], [40, 200]),
  'master-kit': job('Master cylinder stripped, kit', [1, 2.5], [25, 120]),
  'wheel-cylinders-axle': job('Wheel cylinders and shoes, one axle', [2, 4], [60, 250]),
  'brake-hoses': job('Brake hoses, full set', [1.5, 3], [60, 200]),
  'brake-pipes': job('Brake pipes, steel, whole car', [4, 10], [60, 250]),
  'brake-fluid': job('Brake fluid changed', [0.8, 1.5], [15, 40]),
  'parking-brake': job('Parking brake cables and levers freed or renewed', [1, 3], [40, 200]),
  'brake-hydraulics-other': job('Accumulator, spheres or servo of the brakes', [1.5, 5], [100, 600]),
  'clutch-hydraulics': job('Clutch master and slave cylinders', [2, 4], [80, 300]),
  'clutch-plate': job('Stuck clutch, gearbox out, new plate', [8, 16], [200, 800]),
  tires: job('Tires, four, fitted and balanced', [1, 1.5], [400, 1400]),
  'spare-tire': job('Spare tire', [0.3, 0.5], [90, 350]),
  'inner-tubes': job('Inner tubes and rim tapes, a set', [1, 2], [60, 200]),
  battery: job('Battery, terminals cleaned', [0.3, 0.6], [110, 350]),
  'coolant-hoses': job('Coolant hoses and clamps, all', [1.5, 4], [60, 300]),
  radiator: job('Radiator flow-cleaned, recored or renewed', [1.5, 3], [150, 800]),
  'core-plugs': job('Core plugs, all in reach', [2, 8], [20, 80]),
  thermostat: job('Thermostat, gasket, cap', [0.5, 1.5], [20, 80]),
  'water-pump': job('Water pump', [2, 5], [50, 300]),
  'air-cooling': job('Cooling tin off, fins and oil cooler cleaned', [3, 8], [20, 200]),
  coolant: job('Coolant drained, flushed, filled', [1, 1.5], [25, 70]),
  belts: job('Drive belts', [0.5, 1.5], [20, 120]),
  'timing-belt': job('Timing belt kit', [3, 8], [100, 500]),
  'ignition-set': job('Plugs, leads, cap, rotor, points', [1, 2.5], [50, 250]),
  'oil-twice': job('Engine oil and filter twice: before the start, after the first heat', [1, 1.6], [70, 180]),
  'oil-change': job('Engine oil and filter', [0.5, 0.8], [35, 90]),
  'second-oil': job('Engine oil and filter once more', [0.5, 0.8], [35, 90]),
  'gear-oils': job('Gearbox and axle oil', [0.8, 1.5], [40, 150]),
  atf: job('Automatic gearbox fluid and filter', [1, 2], [60, 180]),
  'power-steering': job('Power steering fluid and hoses', [1, 2.5], [40, 250]),
  'wheel-bearings': job('Front wheel bearings repacked, new seals', [1.5, 3], [20, 120]),
  'front-crank-seal': job('Front crank seal', [2, 5], [15, 60]),
  'rear-main-seal': job('Rear main seal, gearbox out', [6, 14], [20, 100]),
  'oil-pan': job('Oil pan off, cleaned, new gasket', [2, 6], [20, 80]),
  'oil-pan-gasket': job('Oil pan gasket', [2, 6], [20, 80]),
  'valve-cover': job('Valve cover gaskets', [0.7, 2], [15, 70]),
  'axle-seals': job('Axle shaft seals, a pair', [2, 4], [20, 90]),
  'pinion-seal': job('Pinion seal', [1.5, 2.5], [15, 50]),
  'tail-shaft-seal': job('Tail-shaft seal', [1, 2], [10, 40]),
  generator: job('Alternator or generator', [0.8, 2], [120, 400]),
  starter: job('Starter or solenoid', [0.8, 2], [90, 350]),
  'air-pump': job('Emission air pump: spin check, belt', [0.3, 0.8], [15, 50]),
  wipers: job('Wiper blades, washer lines', [0.2, 0.5], [20, 60]),
  joints: job('Steering and suspension joints: boots, grease, check', [1, 3], [20, 200]),
  'flex-disc': job('Flex discs, engine mounts, bushings', [5, 12], [150, 800]),
  dampers: job('Dampers, one axle', [1, 3], [80, 400]),
  'gas-suspension': job('Spheres, air springs or displacers', [2, 8], [150, 1200]),
  exhaust: job('Exhaust joints, hangers, a section', [1, 4], [40, 400]),
  legal: job('Inspection, plates, papers', [1, 3], [80, 400]),
  extinguisher: job('Extinguisher', [0.1, 0.2], [25, 120]),
  'seat-belts': job('Seat belts, a pair', [1, 2.5], [80, 350]),
} as const satisfies Readonly<Record<string, Job>>;
export type JobKey = keyof typeof JOBS;

/** Own hands take longer than a workshop that does it often. Judgement. */
export const OWN_HANDS: Span = { low: 1.5, high: 2 };
