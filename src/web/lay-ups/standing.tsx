/** While it stands: what can’t wait, what the last round found, and every round, missed ones too. */
import type { StayHere } from '../../acts/stays.ts';
import { CAUTIONS, type CautionKey, DEFERS } from '../../catalogue/cautions.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { LOOKS } from '../../plans/looks.ts';
import type { Round, RoundMade } from '../../plans/rounds.ts';
import { A, Post } from '../layout.tsx';

export const Standing = ({ here: { record, view }, closed }: { here: StayHere; closed: boolean }) => {
  const { warnings, found, rounds } = view;
  const cautions = [...new Set([...warnings, ...found.map(({ look }) => look)].flatMap((one) => [...one.cautions]))];
  const due = rounds.find(({ state }) => state === 'due');
  return (
    <section aria-labelledby="standing">
      <h2 id="standing">While it stands</h2>
      {!closed && (
        <p class="call">
          <A to={`/lay-ups/${record.row.id}/round`} class="button">
            Make the round
          </A>{' '}
          {due ? `Due since ${dayInWords(due.due)}: ten minutes at the car.` : nextIn(rounds)}
        </p>
      )}
      {!closed && (warnings.length > 0 || found.length > 0) && (
        <div class="todo">
          <h3>What can’t wait</h3>
          <ul>
            {warnings.map(({ title, todo }) => (
              <li>
                <strong>{title}.</strong> {todo}
              </li>
            ))}
            {found.map(({ look, answer, day }) => (
              <li>
                <strong>
                  {look.name}: {answer.name.toLowerCase()}
                </strong>{' '}
                (seen on {dayInWords(day)}). {answer.todo}
              </li>
            ))}
          </ul>
          <CautionList keys={cautions} />
        </div>
      )}
      {!closed && (
        <p class="hint">
          Letters about this car are silent until it is back, but for the round, what was read, and what ages by
          standing.
        </p>
      )}
      <Rounds layUpId={record.row.id} rounds={withOthers(rounds, record.rounds)} closed={closed} />
    </section>
  );
};

const CautionList = ({ keys }: { keys: readonly CautionKey[] }) =>
  keys.length === 0 ? null : (
    <ul class="caution">
      {keys.map((key) => (
        <li>{CAUTIONS[key]}</li>
      ))}
      <li>{DEFERS}</li>
    </ul>
  );

const nextIn = (rounds: readonly Round[]): string => {
  const next = rounds.find(({ state }) => state === 'ahead');
  return next ? `The next is on ${dayInWords(next.due)}.` : 'None is left before it comes back.';
};

const STATE_WORDS = { done: 'made', due: 'due', missed: 'missed', ahead: 'ahead', between: 'made between' } as const;

interface RoundLine {
  due: CivilDate;
  state: keyof typeof STATE_WORDS;
  made: RoundMade | null;
}

/** Rounds beside the monthly ones are kept and shown as well: each by its day. */
const withOthers = (rounds: readonly Round[], made: readonly RoundMade[]): RoundLine[] => {
  const counted = new Set(rounds.map((round) => round.made?.id));
  const others = made.filter(({ id }) => !counted.has(id));
  return [...rounds, ...others.map((one): RoundLine => ({ due: one.day, state: 'between', made: one }))].toSorted(
    (a, b) => a.due.localeCompare(b.due),
  );
};

const Rounds = ({ layUpId, rounds, closed }: { layUpId: string; rounds: readonly RoundLine[]; closed: boolean }) =>
  rounds.length === 0 ? null : (
    <div class="scroll">
      <table class="rounds">
        <caption>Rounds</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">State</th>
            <th scope="col">What was seen</th>
          </tr>
        </thead>
        <tbody>
          {rounds.map(({ due, state, made }) => (
            <tr class={state}>
              <th scope="row">{dayInWords(due)}</th>
              <td>
                <span class={`standing ${state}`}>{STATE_WORDS[state]}</span>
              </td>
              <td>
                {made && (
                  <>
                    {dayInWords(made.day)}, {made.by}. {answersIn(made.answers)} {made.note}{' '}
                    {!closed && (
                      <Post to={`/lay-ups/${layUpId}/rounds/${made.id}/withdraw`} class="inline">
                        <button class="link">Take it back</button>
                      </Post>
                    )}
                  </>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );

/** Answers that are not good in words; all good in two. */
const answersIn = (answers: Readonly<Record<string, string>>): string => {
  const told = LOOKS.flatMap((look) => {
    const answer = look.answers[answers[look.key] ?? ''];
    return answer ? [{ look, answer }] : [];
  });
  const bad = told.filter(({ answer }) => answer.verdict !== 'good');
  if (told.length === 0) return '';
  return bad.length === 0
    ? `${told.length} looked at, nothing found.`
    : `${bad.map(({ look, answer }) => `${look.name}: ${answer.name.toLowerCase()}`).join('; ')}${bad.length < told.length ? '; the rest good' : ''}.`;
};
