/** The sheet that hangs behind the windshield: what stops whoever holds the key. One page, legible at arm's length. */
import { dayInWords } from '../../dates/words.ts';
import type { Line } from './measured-lines.ts';
import { Blank, Box, Call, carClass, isClosed, type OnPaper, printedOn, SheetCode } from './sheet.tsx';
import { linesOf } from './windshield-lines.ts';

export const WindshieldSheet = (made: OnPaper) => {
  const { here } = made;
  const { row } = here.record;
  const { facts, measured, open, skipped, undone } = linesOf(here);
  const closed = isClosed(here);
  return (
    <>
      <h1>
        {closed ? <span class="stop over">LAY-UP OVER</span> : <span class="stop">DO NOT START</span>}{' '}
        <span class={carClass(here)}>{here.found.car.name}</span>
      </h1>
      {closed ? (
        <p class="call">
          This lay-up was {row.closedHow === 'called off' ? 'called off' : 'closed'} on{' '}
          {dayInWords(row.closedOn ?? here.view.on)}. Take the sheet down.
        </p>
      ) : (
        <div class={rowsOf([...facts, ...open]) > ROOMY ? 'as-is' : 'as-is roomy'}>
          <Group title="As it stands, ticked in the plan" lines={facts} done />
          {measured.map(({ name, so, below }) => (
            <p class="measured">
              {name} <b>{so}</b> <span>{below}</span>
            </p>
          ))}
          <Group title="Planned: tick by hand once it is so" lines={open} />
          {skipped.length > 0 && <p class="left-out">Left out this time: {skipped.join(', ')}.</p>}
          {undone.length > 0 && <p class="left-out">Undone again for the wake-up: {undone.join(', ')}.</p>}
        </div>
      )}
      <footer>
        <div>
          <Call {...made} />
          <p class="when">
            Parked <b>{dayInWords(row.parkedOn)}</b>
          </p>
          <p class="when">Back {row.returnOn ? <b>{dayInWords(row.returnOn)}</b> : <Blank size="rest" />}</p>
          <p class="printed">{printedOn(made)} Not ticked is not known.</p>
        </div>
        <SheetCode visit={made.visit} here={here} sheet={made.sheet} />
      </footer>
    </>
  );
};

/** Up to so many rows the lines are set larger, each in a row of its own. */
const ROOMY = 10;

/** What has words beneath it takes half as much again. */
const rowsOf = (lines: readonly Line[]): number => lines.reduce((rows, { below }) => rows + (below ? 1.5 : 1), 0);

/** A state in capitals; a figure keeps its unit. */
const loud = (so: string): string => (/\d/.test(so) ? so : so.toUpperCase());

const Group = ({ title, lines, done = false }: { title: string; lines: readonly Line[]; done?: boolean }) =>
  lines.length === 0 ? null : (
    <section class={done ? 'facts' : 'open'}>
      <h2>{title}</h2>
      <ul>
        {[...lines]
          .sort((a, b) => Number(a.half ?? false) - Number(b.half ?? false))
          .map((line) => (
            <li class={line.half ? 'half' : undefined}>
              <Box state={done ? 'done' : 'open'} />
              <p class="line">
                {line.name} {done ? <b>{loud(line.so)}</b> : line.so}
              </p>
              {line.below && (
                <p class="below">
                  {line.below} {line.blank && <Blank size="rest" />}
                </p>
              )}
            </li>
          ))}
      </ul>
    </section>
  );
