/** Policies that end, and gaps between the papers: heard before it is parked, too. */
import { addDays } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { gapsIn } from '../papers.ts';
import type { Warning, Watched } from './warning.ts';

/** Days before: a letter to an insurer takes its time. Common practice. */
const NOTICE = 30;

export const ofPapers = ({ stay, on }: Watched): Warning[] => [...ofPolicy(stay.papers, on), ...ofGaps(stay)];

const SHARED = { cautions: [], sources: ['common-practice'] } as const;

const ofPolicy = ({ renewsOn }: Watched['stay']['papers'], on: Watched['on']): Warning[] =>
  renewsOn && addDays(renewsOn, NOTICE) >= on
    ? [
        {
          ...SHARED,
          key: 'policy',
          begins: addDays(renewsOn, -NOTICE),
          title: `The policy ${renewsOn < on ? 'ran out or renewed' : 'runs out or renews'} on ${dayInWords(renewsOn)}`,
          todo: 'Ask the insurer for cover for as long as it stands, and note the new day.',
        },
      ]
    : [];

const ofGaps = ({ papers, parkedOn }: Watched['stay']): Warning[] =>
  gapsIn(papers, parkedOn).flatMap(({ key, from, says }) =>
    from === null
      ? []
      : [
          {
            key,
            begins: addDays(from, -NOTICE),
            title: says,
            todo: 'Ask insurer and registry to close the gap, and note the days.',
            cautions: [],
            sources: ['off-road-notice-texts', 'insurer-case-note'] as const,
          },
        ],
  );
