/** Which model tells the condition of which kind. */
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

export const asksFrom = (known: Known): CivilDate | null => MODELS.get(known.kind.key)?.asksFrom?.(known) ?? null;
