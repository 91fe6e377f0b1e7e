/** What frost and strength make of a coolant. */
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Span } from '../span.ts';
import { VERDICTS, type Verdict } from '../verdict.ts';
import { inUnit, spanInWords } from '../words.ts';
import { FREEZING_SOURCES, freezingSpan, GLYCOLS, type Glycol } from './freezing.ts';

export const COOLANT_SOURCES: readonly SourceKey[] = [...FREEZING_SOURCES, 'army-coolant-limits'];

/** Vol %: less protects too little against corrosion, more cools worse and freezes sooner again. */
const LEAST = 30;
const KEEP = 33;
const OPTIMUM = 60;
const MOST = 67;
/** Kelvin between coldest night and first ice: no less than the sources differ by. */
const MARGIN = 3;
/** Vol % between the ends of a sample, from which a refractometer, which leaves 3, is worth its while. */
const WIDE = 3.5;

interface Sample {
  glycol: Glycol | 'unknown';
  /** Vol % of glycol. */
  strength: Span;
}

export interface CoolantOutlook {
  /** °C of the first ice crystals. */
  freezes: Span;
  /** Kelvin from there up to the coldest night; null: nobody said how cold it gets. */
  margin: Span | null;
  /** Null: nothing speaks against it, but how cold it gets is not known. */
  verdict: Verdict | null;
  says: string[];
}

/**
 * Frost and strength by the cautious end of every span: the weak end of the strength and, of an unknown glycol, the warmer
 * freezing point. Too strong is graver than `watch` only where the weak end is. Coldest night in °C.
 */
export const coolantOutlook = ({ glycol, strength }: Sample, coldest: number | null): CoolantOutlook => {
  const freezes = freezesAt(glycol, strength);
  const margin = coldest === null ? null : { low: coldest - freezes.high, high: coldest - freezes.low };
  const byStrength = ofStrength(strength);
  const worst = graver(byStrength, margin === null ? 'good' : ofMargin(margin));
  return {
    freezes,
    margin,
    verdict: margin === null && worst === 'good' ? null : worst,
    says: [
      ...(margin === null
        ? ['Nobody has said where the car stands: frost is not judged.']
        : saysOfFrost(freezes, margin, { glycol, strength })),
      ...saysOfStrength(strength),
      ...(glycol === 'unknown'
        ? ['The glycol is not known: both are reckoned with, and the warmer freezing point decides.']
        : []),
    ],
  };
};

/** Freezing points fall up to the optimum; beyond, their span only grows at its warm end. So the two ends bound them all. */
const freezesAt = (glycol: Glycol | 'unknown', { low, high }: Span): Span => {
  const spans = GLYCOLS.filter((one) => glycol === 'unknown' || one === glycol).flatMap((one) =>
    [low, high].map((strength) => freezingSpan(one, strength)),
  );
  return { low: Math.min(...spans.map((span) => span.low)), high: Math.max(...spans.map((span) => span.high)) };
};

const graver = (a: Verdict, b: Verdict): Verdict => (VERDICTS.indexOf(a) > VERDICTS.indexOf(b) ? a : b);

const ofMargin = ({ low }: Span): Verdict => (low < 0 ? 'act' : low < MARGIN ? 'watch' : 'good');

const ofStrength = ({ low, high }: Span): Verdict => {
  if (low < LEAST || low > MOST) return 'act';
  return low < KEEP || high > OPTIMUM ? 'watch' : 'good';
};

const saysOfFrost = (freezes: Span, margin: Span, { glycol, strength }: Sample): string[] => {
  if (margin.low >= MARGIN) return [];
  const from = `Slush may form from ${inUnit(freezes.high, '°C', 0)}`;
  const mend = strength.low > OPTIMUM ? 'thin it' : 'make it stronger';
  if (margin.low >= 0) return [`${from}, less than ${MARGIN} °C below the coldest night: ${mend} before winter.`];
  // Said of ethylene glycol only, and not of strengths that freeze through.
  const bursts = glycol !== 'ethylene' || strength.low < LEAST || strength.high > MOST;
  return [
    `${from}, and the coldest night is below that: ${mend} before the frost. Do not start the engine while there is slush, the pump can shear.`,
    bursts
      ? 'Hard ice can burst the block and the radiator.'
      : `From ${LEAST} % glycol on slush does not burst the block.`,
  ];
};

const saysOfStrength = (strength: Span): string[] => {
  const { low, high } = strength;
  const told = `It holds ${spanInWords(strength, '%', 0)} glycol`;
  return [
    ...(low < LEAST ? [`${told}: under ${LEAST} % it protects too little against corrosion, frost or not.`] : []),
    ...(low >= LEAST && low < KEEP ? [`${told}: keep at least ${KEEP} %.`] : []),
    ...(low > MOST
      ? [`${told}: over ${MOST} % it freezes sooner again and cools worse. Thin it with demineralized water.`]
      : []),
    ...(low <= MOST && high > OPTIMUM ? [`${told}: over ${OPTIMUM} % more glycol protects less again.`] : []),
    ...(high - low > WIDE
      ? ['The sample leaves its strength open: a refractometer with the scale of the right glycol tells it closer.']
      : []),
  ];
};
