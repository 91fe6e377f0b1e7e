/** What becomes of brake fluid that stands: its water and boiling point, by its fill or the newest reading, and when. */
import type { SourceKey } from '../../catalogue/sources.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import { dayInWords } from '../../dates/words.ts';
import type { DaySpan, Span } from '../span.ts';
import { inUnit } from '../words.ts';
import { BOILING_SOURCES, type Boiling, roadWords } from './boiling.ts';
import {
  boilingIn,
  DOUBT,
  daysDownTo,
  type Ends,
  endsOfBoiling,
  endsOfFill,
  endsOfWater,
  type Fluid,
  type FluidReading,
  waterIn,
  wetDays,
} from './ends.ts';
import { WATER_SOURCES } from './water.ts';

export interface BrakeFluidFacts extends Fluid {
  filled: DateRange | null;
  /** Percent by weight, °C. */
  measured: { water?: FluidReading; boiling?: FluidReading };
  /** Lowest boiling point its owner accepts, °C. */
  ownLimit: number | null;
}

/** Null: nothing to tell it from. Days whose earliest is null may have passed already. */
export interface BrakeFluidOutlook {
  water: Span | null;
  boiling: Boiling | null;
  /** Down to the wet minimum of the grade, which goes with 3.7 percent of water. */
  wet: DaySpan | null;
  /** Down to the owner’s limit; with a limit below the wet minimum, down to that: no curve reaches further. */
  limit: DaySpan | null;
  measured: boolean;
  says: readonly string[];
}

export const BRAKE_FLUID_SOURCES: readonly SourceKey[] = [
  ...new Set<SourceKey>([...WATER_SOURCES, ...BOILING_SOURCES]),
];

export const SILICONE_SOURCES: readonly SourceKey[] = ['marque-forum-2', 'uk-classic-guide', 'memory'];

/** Condition on a day. Readings of later days, or of days before the fill, are passed over. */
export const brakeFluidOutlook = (facts: BrakeFluidFacts, on: CivilDate): BrakeFluidOutlook => {
  if (facts.grade.base === 'silicone') return { ...UNTOLD, says: SILICONE };
  const { ends, by } = newestReading(facts, on) ?? {
    ends: facts.filled && endsOfFill(facts, facts.filled, on),
    by: null,
  };
  if (!ends) return { ...UNTOLD, says: [NOT_FILLED, SAMPLE] };
  const boiling = boilingIn(ends, on);
  return {
    water: waterIn(ends, on),
    boiling,
    wet: wetDays(ends),
    limit: facts.ownLimit === null ? null : daysDownTo(ends, facts.ownLimit),
    measured: by !== null,
    says: [roadWords(boiling), by === null ? BAND : `${by} ${GROWS}`, SAMPLE],
  };
};

/** The newest reading that counts; of two on one day the worse. */
const newestReading = (facts: BrakeFluidFacts, on: CivilDate): { ends: Ends; by: string } | null => {
  const { filled, measured } = facts;
  const counts = ({ day }: FluidReading): boolean => day <= on && (filled?.from == null || day >= filled.from);
  const told = [
    measured.water && {
      ...measured.water,
      ends: endsOfWater(facts, measured.water),
      by: `Told from the water measured on ${dayInWords(measured.water.day)}, give or take ${inUnit(DOUBT.water, '%', 1)}.`,
    },
    measured.boiling && {
      ...measured.boiling,
      ends: endsOfBoiling(facts, measured.boiling),
      by: `Told from the boiling point measured on ${dayInWords(measured.boiling.day)}, give or take ${inUnit(DOUBT.boiling, '°C', 0)}.`,
    },
  ];
  const [newest] = told
    .filter((reading) => reading !== undefined)
    .filter(counts)
    .sort((a, b) => b.day.localeCompare(a.day) || boilingIn(a.ends, on).low - boilingIn(b.ends, on).low);
  return newest ?? null;
};

const BAND =
  'A survey of 1,000 cars found no firm relation between the age of the fluid and its water: this one may lie outside what is told here. A measured boiling point settles it.';
const GROWS = 'From there the water grows at the usual pace, which a survey of 1,000 cars found to vary widely.';
const SAMPLE = 'Calipers and wheel cylinders hold more water than the reservoir: measure what comes out of a bleeder.';
const NOT_FILLED =
  'Nobody knows when it was filled, so nothing can be told of its water: measure its boiling point, or change it.';

const SILICONE: readonly string[] = [
  'Silicone fluid does not absorb water: no pace and no curve apply to it.',
  'Water that gets in sinks to the lowest points, boils there at 100 °C and rusts the cylinders.',
  'Boiling testers, water meters and copper strips made for glycol fluid say nothing about it.',
  'Draw a sample at the lowest bleeders every year and look for water in it.',
  'Never mix it with glycol fluid.',
];

const UNTOLD = { water: null, boiling: null, wet: null, limit: null, measured: false } as const;
