/** Which model tells the condition of which kind. */
import type { Kind } from '../catalogue/kind.ts';
import { RUBBER_KINDS } from '../catalogue/rubber.ts';
import type { CivilDate } from '../dates/civil.ts';
import { battery, lithium } from './outlook/battery.ts';
import { brakeFluid, siliconeFluid } from './outlook/brake-fluid.ts';
import { coolant } from './outlook/coolant.ts';
import { fuel } from './outlook/fuel.ts';
import type { Known, Model, Outlook } from './outlook/outlook.ts';
import { rubber } from './outlook/rubber.ts';
import { tire } from './outlook/tire.ts';

const MODELS: ReadonlyMap<string, Model> = new Map(
  Object.entries({
    'brake-fluid-glycol': brakeFluid,
    'brake-fluid-silicone': siliconeFluid,
    'battery-flooded': battery,
    'battery-agm': battery,
    'battery-lithium': lithium,
    'coolant-iat': coolant,
    'coolant-oat': coolant,
    'fuel-gasoline': fuel,
    'fuel-diesel': fuel,
    'tires-road': tire,
    'tire-spare': tire,
  }),
);

const modelOf = ({ key }: Kind): Model | undefined => MODELS.get(key) ?? (RUBBER_KINDS.has(key) ? rubber : undefined);

export const outlookOf = (known: Known): Outlook | null => modelOf(known.kind)?.tell(known) ?? null;

/** Days from which its estimate asks for a look, in order: each worse than the one before. */
export const asksOf = (known: Known): CivilDate[] => modelOf(known.kind)?.asks?.since(known) ?? [];

/** Day until which, at the worst, the estimate still bears what was measured; null: it bears nothing. */
export const holdsUntil = (known: Known): CivilDate | null => modelOf(known.kind)?.holdsUntil?.(known) ?? null;

/** Gauges that would make its estimate surer, the best first; undefined: any of its own. */
export const surestGauges = (kind: Kind): readonly string[] | undefined => modelOf(kind)?.surest;

/** What its estimate asks to be done; null where it never asks. */
export const askedOf = (kind: Kind): string | null => modelOf(kind)?.asks?.what ?? null;
