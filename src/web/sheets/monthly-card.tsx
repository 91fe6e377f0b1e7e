/** The monthly card: a row a round, filled by hand with gloves on, and what to look at, in the order of the months. */
import { dayInWords } from '../../dates/words.ts';
import type { Round } from '../../plans/rounds.ts';
import { sideOf } from '../../plans/when.ts';
import { type Column, columnsOf, remarksOf } from './monthly-columns.ts';
import { callsOf, everyRound, looksByMonth, openNow, roundsOnCard } from './monthly-words.ts';
import { Call, Head, type OnPaper, SheetCautions } from './sheet.tsx';

/** Up to so many rows all is set larger. */
const FEW_ROWS = 6;

export const MonthlyCard = (made: OnPaper) => {
  const { here } = made;
  const rounds = roundsOnCard(here);
  const every = everyRound(here);
  const some = looksByMonth(here, rounds);
  const open = openNow(here);
  return (
    <div class={rounds.length > FEW_ROWS ? 'full' : 'few'}>
      <Head {...made}>
        <Call {...made} />
      </Head>
      <Grid columns={columnsOf(here)} rounds={rounds} />
      <div class="below-grid">
        <section>
          <h2>Each round</h2>
          <ul>
            {every.map(({ name, how }) => (
              <li>
                <b>{name}.</b> {how}
              </li>
            ))}
          </ul>
        </section>
        {open.length > 0 && (
          <section>
            <h2>Open as on {dayInWords(here.view.on)}</h2>
            <ul>
              {open.map((line) => (
                <li>{line}</li>
              ))}
            </ul>
          </section>
        )}
        <section>
          <h2>At these figures, act</h2>
          <ul>
            {callsOf(here).map((call) => (
              <li>{call}</li>
            ))}
          </ul>
        </section>
        {some.length > 0 && (
          <section>
            <h2>In these months also</h2>
            <ul>
              {some.map(({ months, looks }) => (
                <li>
                  <b class="months">{months}</b>{' '}
                  {looks.map(({ name, how }) => (
                    <>
                      <b>{name}.</b> {how}{' '}
                    </>
                  ))}
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <SheetCautions keys={[...every, ...some.flatMap(({ looks }) => looks)].flatMap(({ cautions }) => cautions)}>
        <p class="no-starts">
          {sideOf('running', here.view.situation) === 'drive'
            ? 'No short starts: a drive until everything is hot, or none.'
            : 'No short starts: it stays off until the wake-up.'}
        </p>
      </SheetCautions>
    </div>
  );
};

/** Rows to write on where no round falls into the stay. */
const LEAST_ROWS = 3;

const Grid = ({ columns, rounds }: { columns: readonly Column[]; rounds: readonly Round[] }) => (
  <section class="scroll" tabindex={0} aria-label="Rounds">
    <table class="grid">
      <thead>
        <tr>
          <th scope="col" class="due">
            Round
          </th>
          <th scope="col" class="on">
            Day
          </th>
          {columns.map(({ name, unit }) => (
            <th scope="col" class={unit ? 'reading' : undefined}>
              {name} {unit && <small>{unit}</small>}
            </th>
          ))}
          <th scope="col">Initials</th>
        </tr>
      </thead>
      {rounds.map((round) => (
        <Row round={round} columns={columns} />
      ))}
      {Array.from({ length: Math.max(LEAST_ROWS - rounds.length, 0) }, () => (
        <tbody>
          <tr>
            {Array.from({ length: columns.length + 3 }, () => (
              <td />
            ))}
          </tr>
        </tbody>
      ))}
    </table>
  </section>
);

const Row = ({ round, columns }: { round: Round; columns: readonly Column[] }) => {
  const { month, due, state, made } = round;
  const remarks = made ? remarksOf(made) : '';
  return (
    <tbody class={state}>
      <tr>
        <th scope="row" class="due">
          <b>{month}</b> <span>{dayInWords(due)}</span>
        </th>
        {state === 'missed' ? (
          <td colspan={columns.length + 2} class="was-missed">
            missed
          </td>
        ) : (
          <>
            <td>{made && dayInWords(made.day)}</td>
            {columns.map((column) => (
              <td>{made && column.of(made)}</td>
            ))}
            <td>{made?.by}</td>
          </>
        )}
      </tr>
      {remarks && (
        <tr class="remarks">
          <td colspan={columns.length + 3}>{remarks}</td>
        </tr>
      )}
    </tbody>
  );
};
