/** Which brake fluids bear being topped up with each other. */
import { BRAKE_FLUID_GRADES } from '../../catalogue/brake-fluid-grades.ts';
import type { SourceKey } from '../../catalogue/sources.ts';

export const MIXING_SOURCES: readonly SourceKey[] = ['common-practice', 'memory'];

const BASES = new Map(BRAKE_FLUID_GRADES.map(({ name, base }) => [name, base]));

/**
 * Two grades by name: glycol with glycol, and the mixture counts as the lower; silicone with silicone alone. Anything
 * else, mineral oil and unknown fluid with it: no.
 */
export const mayMix = (a: string, b: string): boolean => BASES.has(a) && BASES.get(a) === BASES.get(b);
