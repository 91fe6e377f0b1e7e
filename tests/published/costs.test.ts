/**
 * The table of work against its own totals: hours times 90 to 150 dollars an hour plus parts, rounded. All of it from
 * memory of common practice, an independent shop, an ordinary car of four to eight cylinders; never a quote.
 */
import { describe, expect, it } from 'vitest';
import { costOf, type Rates } from '../../src/money/cost.ts';
import { JOBS, type JobKey } from '../../src/money/jobs.ts';
import { spanInWords } from '../../src/money/words.ts';
import { DOLLARS } from '../support/sleepers.ts';

/** Hours, parts and total as the table has them. */
const TABLE: readonly [JobKey, [number, number], [number, number], [number, number]][] = [
  ['tank-drain', [1, 3], [25, 90], [120, 540]],
  ['tank-out', [3, 6], [100, 350], [370, 1250]],
  ['tank-new', [3, 7], [250, 1100], [520, 2150]],
  ['pump-mechanical', [0.7, 1.5], [30, 150], [90, 380]],
  ['pump-electric', [1.5, 4], [120, 500], [260, 1100]],
  ['fuel-hoses', [1, 3], [30, 150], [120, 600]],
  ['fuel-lines', [3, 8], [60, 300], [330, 1500]],
  ['carburetor', [2, 4], [30, 120], [210, 720]],
  ['mechanical-injection', [4, 10], [600, 2200], [960, 3700]],
  ['master-cylinder', [1, 2.5], [75, 350], [160, 720]],
  ['calipers-axle', [1.5, 3], [120, 500], [260, 950]],
  ['wheel-cylinders-axle', [2, 4], [60, 250], [240, 850]],
  ['brake-hoses', [1.5, 3], [60, 200], [200, 650]],
  ['brake-pipes', [4, 10], [60, 250], [420, 1750]],
  ['clutch-plate', [8, 16], [200, 800], [920, 3200]],
  ['tires', [1, 1.5], [400, 1400], [490, 1620]],
  ['coolant-hoses', [1.5, 4], [60, 300], [200, 900]],
  ['radiator', [1.5, 3], [150, 800], [280, 1250]],
  ['timing-belt', [3, 8], [100, 500], [370, 1700]],
  ['wheel-bearings', [1.5, 3], [20, 120], [160, 570]],
  ['rear-main-seal', [6, 14], [20, 100], [560, 2200]],
];

describe.each(TABLE)('%s', (job, hours, parts, total) => {
  it('has the hours and parts of the table', () => {
    expect([JOBS[job].hours.low, JOBS[job].hours.high]).toEqual(hours);
    expect([JOBS[job].parts.low, JOBS[job].parts.high]).toEqual(parts);
  });

  it('comes to its total, no further off than the table rounds', () => {
    const { workshop } = costOf(job, DOLLARS);
    for (const [ours, theirs] of [
      [workshop.low, total[0]],
      [workshop.high, total[1]],
    ] as const)
      expect(Math.abs(ours - (theirs ?? 0))).toBeLessThanOrEqual(Math.max(10, (theirs ?? 0) * 0.02));
  });
});

describe('other money', () => {
  it('takes parts by what a dollar’s worth costs and hours by its own rate', () => {
    const euros: Rates = { currency: 'EUR', perDollar: 0.9, labor: { low: 70, high: 140 } };
    const { own, workshop } = costOf('tires', euros);
    expect(own).toEqual({ low: 360, high: 1260 });
    expect(workshop).toEqual({ low: 360 + 70, high: 1260 + 1.5 * 140 });
  });

  it('own hands pay parts alone and take longer', () => {
    const { own, ownHours, hours } = costOf('brake-hoses', DOLLARS);
    expect(own).toEqual({ low: 60, high: 200 });
    expect(ownHours).toEqual({ low: hours.low * 1.5, high: hours.high * 2 });
  });

  it('is told from low to high, in two figures, never finer', () => {
    expect(spanInWords({ low: 1234, high: 23_456 }, 'USD')).toBe('$1,200 to $23,000');
    expect(spanInWords({ low: 0, high: 0 }, 'USD')).toBe('no cost');
  });
});
