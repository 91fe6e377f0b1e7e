/** Which model tells the condition of which kind. */
import type { Kind } from '../catalogue/kind.ts';
import type { CivilDate } from '../dates/civil.ts';
import { battery } from './outlook/battery.ts';
import { brakeFluid, siliconeFluid } from './outlook/brake-fluid.ts';
import { coolant } from './outlook/coolant.ts';
import { fuel } from './outlook/fuel.ts';
import type { Known, Model, Outlook } from './outlook/outlook.ts';
import { tire } from './outlook/tire.ts';

const MODELS: ReadonlyMap<string, Model> = new Map(
  Object.entries({
    'brake-fluid-glycol': brakeFluid,
    'brake-fluid-silicone': siliconeFluid,
    'battery-flooded': battery,
    'battery-agm': battery,
    'battery-lithium': battery,
    'coolant-iat': coolant,
    'coolant-oat': coolant,
    'fuel-gasoline': fuel,
    'fuel-diesel': fuel,
    'tires-road': tire,
    'tire-spare': tire,
  }),
);

export const outlookOf = (known: Known): Outlook | null => MODELS.get(known.kind.key)?.tell(known) ?? null;

/** Days from which its estimate asks for a look, in order: each worse than the one before. */
export const asksOf = (known: Known): CivilDate[] => MODELS.get(known.kind.key)?.asks?.(known) ?? [];

/** Day until which, at the worst, the estimate still bears what was measured; null: it bears nothing. */
export const holdsUntil = (known: Known): CivilDate | null => MODELS.get(known.kind.key)?.holdsUntil?.(known) ?? null;

/** Gauges that would make its estimate surer, the best first; undefined: any of its own. */
export const surestGauges = (kind: Kind): readonly string[] | undefined => MODELS.get(kind.key)?.surest;
