/** Oil for the bores. */
import type { Span } from '../../ageing/span.ts';
import { inUnit } from '../../ageing/words.ts';
import type { Situation } from '../situation.ts';
import { exactly, type Figure } from './figure.ts';

/** mL a bore by displacement of the cylinder, up to so many cm³ (TB 740-97-4, ounces by cubic inches). */
const CUBIC_INCH = 16.387064;
const BORE_OIL = [
  { upTo: 25 * CUBIC_INCH, oil: 15 },
  { upTo: 50 * CUBIC_INCH, oil: 30 },
  { upTo: 75 * CUBIC_INCH, oil: 44 },
  { upTo: Number.POSITIVE_INFINITY, oil: 59 },
] as const;
const ANY_BORE: Span = { low: 15, high: 59 };

/** Oil for one bore of so many cm³, mL. Source: TB 740-97-4 paragraph 29. */
export const boreOil = (displacement: number): number =>
  BORE_OIL.find(({ upTo }) => displacement <= upTo)?.oil ?? ANY_BORE.high;

export const cylinderOil = ({ stay: { numbers } }: Situation): Figure[] => {
  const { engine, cylinders } = numbers;
  const bore = engine !== undefined && cylinders !== undefined ? (engine * 1000) / cylinders : null;
  return [
    {
      what: 'Oil for each cylinder',
      amount: bore === null ? ANY_BORE : exactly(boreOil(bore)),
      unit: 'mL',
      decimals: 0,
      limits: ANY_BORE,
      says: [
        bore === null
          ? '15 mL to 410 cm³ a cylinder, 30 to 819, 44 to 1,229, 59 above. Tell displacement and cylinders under “Change the lay-up”.'
          : `${inUnit(engine ?? 0, 'L', 1)} in ${cylinders}: ${inUnit(bore, 'cm³', 0)} each.`,
        'Half of it while turning, half after the last turn; plugs back in with oiled threads.',
      ],
      sources: ['tb-740-97-4'],
    },
  ];
};
