/** What can’t wait: readings and projections against the next visit, fuel, frost, papers, months gone by. */
import { latest } from '../dates/civil.ts';
import { ofBattery } from './warnings/battery.ts';
import { ofCoolant, ofFuel } from './warnings/fluids.ts';
import { ofMonths } from './warnings/months.ts';
import { ofPapers } from './warnings/papers.ts';
import type { Warning, Watched } from './warnings/warning.ts';

/** Those that have begun by a day and still hold. Before the parking day only the papers can’t wait. */
export const warningsOf = (watched: Watched): Warning[] => {
  const { stay, on } = watched;
  const standing = on >= stay.parkedOn;
  const whileStanding = standing
    ? [ofBattery, ofCoolant, ofFuel, ofMonths]
        .flatMap((of) => of(watched))
        .map((warning) => ({ ...warning, begins: latest(warning.begins, stay.parkedOn) }))
    : [];
  return [...whileStanding, ...ofPapers(watched)].filter(({ begins }) => begins <= on);
};
