/** What the coolant desk answers: first ice and its margin, what to exchange, and what mixing does. */
import { freezingPoint, freezingSpan, GLYCOLS, type Glycol } from '../../ageing/coolant/freezing.ts';
import type { CoolantOutlook } from '../../ageing/coolant/outlook.ts';
import type { Span } from '../../ageing/span.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import { convert } from '../../catalogue/units.ts';
import { Chart } from '../chart.tsx';

export interface CoolantAnswer {
  glycol: Glycol | 'unknown';
  /** Null: only the mixing of two families was asked about. */
  sample: { strength: Span; outlook: CoolantOutlook } | null;
  night: number | null;
  /** Liters to drain and to add; null: not asked, or it can't be done. */
  exchange: number | null;
  /** Whether the volume was given in US gallons. */
  inGallons: boolean;
  wanted: number | null;
  mixing: string | null;
}

export const GLYCOL_WORDS: Readonly<Record<Glycol, string>> = {
  ethylene: 'Ethylene glycol',
  propylene: 'Propylene glycol',
};

const VERDICT_WORDS = { good: 'Good for that night.', watch: 'Watch it.', act: 'Act on it.' } as const;

export const CoolantAnswered = ({ glycol, sample, night, exchange, inGallons, wanted, mixing }: CoolantAnswer) => (
  <>
    {sample ? <Frost {...sample} night={night} /> : <MixingAlone mixing={mixing} />}
    {sample && <MixChart glycol={glycol} strength={sample.strength} night={night} />}
    {sample && (
      <ul>
        {sample.outlook.says.map((text) => (
          <li>{text}</li>
        ))}
        {exchange !== null && wanted !== null && (
          <li>
            For {inUnit(wanted, '%', 0)}: drain {volumeInWords(exchange, inGallons)} and add as much. Run it warm so
            that it mixes, let it cool, read it again.
          </li>
        )}
        {mixing && <li>{mixing}</li>}
      </ul>
    )}
    <p class="note">{CAUTIONS['hot-coolant']}</p>
  </>
);

const volumeInWords = (liters: number, inGallons: boolean): string =>
  inGallons
    ? `${inUnit(liters, 'L', 1)} (${inUnit(convert(liters, 'L', 'US gal'), 'US gal', 2)})`
    : inUnit(liters, 'L', 1);

const Frost = ({ strength, outlook, night }: { strength: Span; outlook: CoolantOutlook; night: number | null }) => {
  const { freezes, margin, verdict } = outlook;
  return (
    <>
      <p class="answer">
        <strong>
          {spanInWords(strength, '%', 0)} glycol: first ice at {spanInWords(freezes, '°C', 0)}.
        </strong>{' '}
        {verdict === null ? 'Not judged.' : VERDICT_WORDS[verdict]}
      </p>
      {margin !== null && night !== null && (
        <p>
          Between the coldest night, {inUnit(night, '°C', 0)}, and first ice:{' '}
          {spanInWords(roundedDown(margin), '°C', 0)}.
        </p>
      )}
    </>
  );
};

/** No margin is told larger than it is. */
const roundedDown = ({ low, high }: Span): Span => ({ low: Math.floor(low), high: Math.floor(high) });

const MixingAlone = ({ mixing }: { mixing: string | null }) => (
  <>
    <p class="answer">
      <strong>
        {mixing ?? 'One family and one glycol on both sides: nothing told here speaks against mixing them.'}
      </strong>
    </p>
    <p>No strength was told, so frost is not judged.</p>
  </>
);

/** Freezing point along the strength, both sets of data as a band, the sample as its span. */
const MixChart = ({ glycol, strength, night }: Pick<CoolantAnswer, 'glycol' | 'night'> & { strength: Span }) => {
  const shown = GLYCOLS.filter((one) => glycol === 'unknown' || one === glycol);
  const strengths = Array.from({ length: 61 }, (_, percent) => percent);
  const bands = shown.map((one) => ({
    name: `first ice of ${GLYCOL_WORDS[one].toLowerCase()}`,
    label: one,
    points: strengths.map((percent) => ({ x: percent, ...freezingSpan(one, percent) })),
  }));
  return (
    <Chart
      says={`First ice by strength: ${shown.map((one) => `${GLYCOL_WORDS[one]} ${[30, 40, 50].map((percent) => `${percent} % ${inUnit(freezingPoint(one, percent), '°C', 0)}`).join(', ')}`).join('; ')}`}
      foot={{ from: 0, to: 60, unit: '% glycol' }}
      side={{ from: -60, to: 0, unit: '°C' }}
      bands={bands}
      levels={night === null ? [] : [{ at: night, name: 'coldest night' }]}
      uprights={
        strength.low === strength.high
          ? [{ at: Math.min(strength.low, 60), name: 'this mix' }]
          : [
              { at: Math.min(strength.low, 60), name: 'from' },
              { at: Math.min(strength.high, 60), name: 'to' },
            ]
      }
    />
  );
};
