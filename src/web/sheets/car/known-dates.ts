/** Every date of a part in words, each with how it is known. */
import { CLOCKS, type Clock } from '../../../catalogue/clock.ts';
import { rangeInWords } from '../../../dates/words.ts';
import type { Finding } from '../../../findings/assess.ts';
import { CLOCK_WORDS } from '../../../findings/explain.ts';
import type { Claim } from '../../../findings/facts.ts';

/** Of what happens again and again the last one is told; of what happens once, all that was ever said. */
const AGAIN: ReadonlySet<Clock> = new Set(['serviced', 'used']);

export const datesInWords = (claims: readonly Claim[]): string[] =>
  CLOCKS.flatMap((clock) => {
    const said = claims.filter((claim) => claim.clock === clock && isSaid(claim));
    const last = said.toSorted((a, b) => (a.from ?? '').localeCompare(b.from ?? '')).slice(-1);
    return (AGAIN.has(clock) ? last : said).map(
      (claim) =>
        `${CLOCK_WORDS[clock]} ${claim.said === 'original' ? 'with the car' : rangeInWords(claim)} (${claim.evidence})`,
    );
  });

const isSaid = ({ said }: Pick<Claim, 'said'>): boolean => said === 'date' || said === 'original';

/** Nothing tells when it began: neither a date of its own, nor another one, nor a label. */
export const isUndated = ({ since, label }: Finding): boolean => since === null && label === null;
