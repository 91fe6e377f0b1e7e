/** Every kind of part and fluid, by key, in the order of the systems. */
import type { Kind } from './kind.ts';
import { BODY } from './kinds/body.ts';
import { BRAKES } from './kinds/brakes.ts';
import { CLIMATE } from './kinds/climate.ts';
import { COOLING } from './kinds/cooling.ts';
import { DRIVELINE } from './kinds/driveline.ts';
import { ELECTRICAL } from './kinds/electrical.ts';
import { ENGINE } from './kinds/engine.ts';
import { FUEL } from './kinds/fuel.ts';
import { IGNITION } from './kinds/ignition.ts';
import { RESTRAINTS } from './kinds/restraints.ts';
import { ROOF } from './kinds/roof.ts';
import { STEERING } from './kinds/steering.ts';
import { STORAGE } from './kinds/storage.ts';
import { TIMING } from './kinds/timing.ts';
import { TIRES } from './kinds/tires.ts';
import { TRANSMISSION } from './kinds/transmission.ts';
import { allTraits } from './traits.ts';

const ALL: readonly Kind[] = [
  ...TIRES,
  ...BRAKES,
  ...STEERING,
  ...FUEL,
  ...RESTRAINTS,
  ...ENGINE,
  ...TIMING,
  ...COOLING,
  ...TRANSMISSION,
  ...DRIVELINE,
  ...IGNITION,
  ...ELECTRICAL,
  ...BODY,
  ...ROOF,
  ...CLIMATE,
  ...STORAGE,
];

export const KINDS: ReadonlyMap<string, Kind> = new Map(ALL.map((kind) => [kind.key, kind]));

/** The kinds a car with these stated traits can have. */
export const kindsFor = (stated: readonly string[]): Kind[] => {
  const has = allTraits(stated);
  return ALL.filter((kind) => kind.applies.every((trait) => has.has(trait)));
};

/** The parts a car with these traits should have: each kind once, or once a position. */
export const partsFor = (stated: readonly string[]): { kind: string; position: string | null }[] =>
  kindsFor(stated).flatMap((kind) => (kind.positions ?? [null]).map((position) => ({ kind: kind.key, position })));
