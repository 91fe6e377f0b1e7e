/** What falls due some distance after the first drives, with lines for when it was done. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { dayInWords } from '../../../dates/words.ts';
import { type RevivalStep, stepIn } from '../../../revival/plan.ts';
import { STEPS } from '../../../revival/steps.ts';
import { Blank, Box } from '../sheet.tsx';

export const DueAfter = ({ here }: { here: RevivalHere }) => (
  <>
    <h2>Due after what is driven</h2>
    <ul class="dues">
      {STEPS.filter(({ falls }) => falls).map(({ key, ways: [way] }) => {
        const step = stepIn(here.plan, key);
        const done = step?.state === 'done' ? step.settled : null;
        return (
          <li>
            <Box state={done ? 'done' : 'open'} />
            <span>
              {way.title}
              {!done && step?.due && dueInWords(step.due)}
            </span>{' '}
            {done ? (
              <span>
                Done on {dayInWords(done.day)} by {done.by}
              </span>
            ) : (
              <span>
                at km <Blank size="tiny" /> day <Blank size="tiny" /> who <Blank size="tiny" />
              </span>
            )}
          </li>
        );
      })}
    </ul>
  </>
);

/** The distance stands in its title; here where that is on the odometer, and its last day. */
const dueInWords = ({ odometer, day }: NonNullable<RevivalStep['due']>): string => {
  const at = odometer ? `; odometer ${odometer.map((km) => km.toLocaleString('en-US')).join(' to ')} km` : '';
  return `${at}${day ? `; by ${dayInWords(day)} at the latest` : ''}`;
};
