/** How standings look: the word always, and a pattern that tells them apart in black and white. */
import { count } from '../dates/words.ts';
import { STANDING_MEANS, STANDINGS, type Standing } from '../findings/standing.ts';

export const StandingWord = ({ standing }: { standing: Standing }) => (
  <span class={`standing ${standing.replace(' ', '-')}`} title={STANDING_MEANS[standing]}>
    {standing}
  </span>
);

/** "3 past, 2 unproven, 1 due", gravest first; what is in date is counted last. */
export const countsInWords = (counts: Readonly<Record<Standing, number>>): string =>
  [...STANDINGS]
    .reverse()
    .filter((standing) => counts[standing] > 0)
    .map((standing) => `${counts[standing]} ${standing}`)
    .join(', ');

/** Records nothing could be reckoned of: whatever is shown is shown without them. */
export const Unjudged = ({ records }: { records: number }) =>
  records === 0 ? null : (
    <p class="fault">
      {count(records, 'record')} could not be reckoned: something is wrong there, or with this program; the server’s log
      says more. No news is no good news.
    </p>
  );

/** A bay: one bar a car, as long as its list of parts, filled by standing from the gravest on. */
export const Bay = ({ counts }: { counts: Readonly<Record<Standing, number>> }) => {
  const total = STANDINGS.reduce((sum, standing) => sum + counts[standing], 0);
  let x = 0;
  return (
    <svg class="bay" viewBox="0 0 400 18" preserveAspectRatio="none" role="img" aria-label={countsInWords(counts)}>
      {[...STANDINGS].reverse().map((standing) => {
        const width = total === 0 ? 0 : (counts[standing] / total) * 398;
        const segment = <rect x={x + 1} y="1" width={width} height="16" class={`bay-${standing.replace(' ', '-')}`} />;
        x += width;
        return segment;
      })}
      <rect x="1" y="1" width="398" height="16" class="outline" />
    </svg>
  );
};
