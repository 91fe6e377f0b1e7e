/** The answer and what speaks against it, as the page, the guest’s page and the sheet show it. */
import type { Child } from 'hono/jsx';
import type { RoadCheckHere } from '../../acts/road-check.ts';
import { count } from '../../dates/words.ts';
import { explain } from '../../findings/explain.ts';
import { nameOf } from '../../plans/lists.ts';
import { LOCAL, type RoadAnswer, type RoadReason } from '../../plans/road-answer.ts';

const ANSWER_WORDS: Readonly<Record<RoadAnswer, string>> = {
  no: 'It does not drive, and does not move under its own power on a road.',
  'local only': `A local drive at most: ${LOCAL}.`,
  go: 'Nothing known speaks against a drive. It rests on what stands below.',
};

/** `part` makes a link of a part’s name, where there is one to follow. */
export const AnswerShown = ({
  here: { check, walk },
  part,
}: {
  here: RoadCheckHere;
  part(id: string, words: string): Child;
}) => (
  <>
    <section class={`road-answer ${check.answer.replace(' ', '-')}`} aria-labelledby="answer">
      <h2 id="answer">{check.answer}</h2>
      <p>{ANSWER_WORDS[check.answer]}</p>
      {check.answer === 'no' && (
        <p class="hint">{count(check.against.filter(isNo).length + check.unchecked.filter(isNo).length, 'reason')}.</p>
      )}
    </section>
    <Reasons title="Against it" list={check.against} part={part} none="Nothing that is known." />
    <Reasons
      title="Not checked"
      list={check.unchecked}
      part={part}
      none="Everything the walk round asks was looked at."
    />
    {check.due.length > 0 && (
      <section aria-labelledby="due">
        <h2 id="due">Merely due</h2>
        <ul>
          {check.due.map((finding) => (
            <li>
              {part(finding.part.id, nameOf(finding))}: {finding.standing}. {explain(finding).age}.
            </li>
          ))}
        </ul>
      </section>
    )}
    {check.answer !== 'no' && (
      <section aria-labelledby="rests">
        <h2 id="rests">What it rests on</h2>
        <ul>
          {check.rests.map((words) => (
            <li>{words}</li>
          ))}
        </ul>
      </section>
    )}
    {walk?.note && <p class="note">{walk.note}</p>}
  </>
);

const isNo = ({ answer }: RoadReason): boolean => answer === 'no';

const Reasons = ({
  title,
  list,
  none,
  part,
}: {
  title: string;
  list: readonly RoadReason[];
  none: string;
  part(id: string, words: string): Child;
}) => {
  const id = title.toLowerCase().replaceAll(' ', '-');
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {list.length === 0 ? (
        <p>{none}</p>
      ) : (
        <ul class="reasons">
          {list.map(({ answer, words, partId }) => (
            <li>
              <strong>{answer}</strong> {partId ? part(partId, words) : words}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
};
