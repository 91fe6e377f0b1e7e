/** Where a link in a letter leads: a page that asks before anything is done, since mail scanners follow links, too. */

import { type AnswerHere, answerHere, answerLetter } from '../../acts/answer-letter.ts';
import type { Fault } from '../../acts/fault.ts';
import { kindOf } from '../../acts/parts.ts';
import { takesLooks } from '../../catalogue/kind.ts';
import { todayIn } from '../../clock.ts';
import { addMonths, type CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { ANSWERS_SAID } from '../../mail/letter.tsx';
import { ANSWER_WORDS, type AnswerWord } from '../../notices/answers.ts';
import { barePage, linkEnded } from '../bare.tsx';
import { Cautions } from '../cautions.tsx';
import { ANSWER_FORM, type AnswerForm, readForm } from '../forms.ts';
import { Faults, faultsOf } from '../layout.tsx';
import { nameOf } from '../pages/part-name.ts';
import type { Ctx } from '../visit.ts';

interface Asked extends AnswerHere {
  today: CivilDate;
  path: string;
}

const askedIn = (c: Ctx): Asked | undefined => {
  const { store, now, site } = c.get('around');
  const { letterId = '', partId = '', signature = '' } = c.req.param() as Record<string, string>;
  const at = now();
  const here = answerHere(store, { letterId, partId, signature }, (timeZone) => todayIn(timeZone, at));
  return (
    here && {
      ...here,
      today: todayIn(here.collection.timeZone, at),
      path: `${site.base}/answers/${letterId}/${partId}/${signature}`,
    }
  );
};

export const answerPage = (c: Ctx) => {
  const asked = askedIn(c);
  if (!asked) return noSuch(c);
  const word = ANSWER_WORDS.find((one) => one.replace(' ', '-') === c.req.query('answer')) ?? null;
  return show(c, asked, word, null, []);
};

export const giveAnswer = async (c: Ctx) => {
  const form = await readForm(c, ANSWER_FORM);
  const asked = askedIn(c);
  if (!asked) return noSuch(c);
  const given = { word: form.word, day: form.day, how: form.how };
  const outcome = answerLetter(c.get('around').store, asked, given, asked.today);
  if (!outcome.ok) return show(c, asked, form.word, form, outcome.faults);
  return c.redirect(`${asked.path}?answer=${form.word.replace(' ', '-')}`, 303);
};

const noSuch = (c: Ctx) =>
  linkEnded(c, 'A letter can be answered for about a year. What the car needs stands on its own page.');

/** What each answer brings. */
const MEANS: Readonly<Record<AnswerWord, string>> = {
  seen: 'You are not reminded of it again until it gets worse. Its standing stays as it is.',
  waiting: 'Nobody is reminded until that day; on the day after it comes back.',
  done: 'Writes the day into its record, as from your own memory. A receipt can be added on its page.',
  'not here': 'Takes it off this car’s list. Its history stays, and its page can take that back.',
};

const show = (c: Ctx, asked: Asked, word: AnswerWord | null, form: AnswerForm | null, faults: readonly Fault[]) => {
  const { part, found, member, given } = asked;
  const { base } = c.get('around').site;
  const successor = found.parts.find(({ replaces }) => replaces === part.id);
  const last = given.at(-1);
  const words = word ? [word, ...ANSWER_WORDS.filter((one) => one !== word)] : ANSWER_WORDS;
  return barePage(
    c,
    `Answer: ${nameOf(part)}`,
    <>
      <h1>
        {nameOf(part)} <small>{found.car.name}</small>
      </h1>
      {last && (
        <p class="understood" role="status">
          {ANSWERS_SAID[last.word]}
          {last.until && ` until ${dayInWords(last.until)}`}: answered on {dayInWords(last.answeredOn)}.
        </p>
      )}
      <Faults faults={faults} field="answer" />
      {part.closedOn ? (
        <p>
          This record was closed on {dayInWords(part.closedOn)}: nothing is asked of it any more.
          {successor && (
            <>
              {' '}
              <a href={`${base}/parts/${successor.id}`}>What took its place</a> counts from its own day.
            </>
          )}
        </p>
      ) : (
        <>
          <p class="lede">
            {member.name}, choose and press: until then nothing is changed. No answer here says that it is in order.
          </p>
          {words.map((one) => (
            <AnswerFields asked={asked} word={one} form={form} faults={faults} wanted={one === word} />
          ))}
        </>
      )}
      <Cautions keys={kindOf(part).cautions} />
      <p>
        <a href={`${base}/parts/${part.id}`}>Its page</a>
      </p>
    </>,
    faults.length > 0 ? 422 : 200,
  );
};

const AnswerFields = ({
  asked: { part, path, today },
  word,
  form,
  faults,
  wanted,
}: {
  asked: Asked;
  word: AnswerWord;
  form: AnswerForm | null;
  faults: readonly Fault[];
  wanted: boolean;
}) => {
  const own = form?.word === word ? form : null;
  const looks = takesLooks(kindOf(part));
  return (
    <form method="post" action={path} class={wanted ? 'stacked answer wanted' : 'stacked answer'}>
      <h2>{ANSWERS_SAID[word]}</h2>
      <p class="hint" id={`${word.replace(' ', '-')}-means`}>
        {MEANS[word]}
      </p>
      <input type="hidden" name="word" value={word} />
      {word === 'waiting' && (
        <>
          <label>
            Until
            <input
              type="date"
              name="day"
              value={own?.day ?? addMonths(today, 1)}
              required
              {...faultsOf(faults, 'waiting', 'waiting-means')}
            />
          </label>
          <Faults faults={faults} field="waiting" />
        </>
      )}
      {word === 'done' && (
        <>
          <fieldset class="targets">
            <legend>What was done</legend>
            <label>
              <input type="radio" name="how" value="renewed" checked={own?.how !== 'looked'} />{' '}
              <span>renewed or replaced</span>
            </label>
            {looks && (
              <label>
                <input type="radio" name="how" value="looked" checked={own?.how === 'looked'} />{' '}
                <span>looked at, and it stays</span>
              </label>
            )}
          </fieldset>
          <label>
            On
            <input
              type="date"
              name="day"
              value={own?.day ?? today}
              required
              {...faultsOf(faults, 'done', 'done-means')}
            />
          </label>
          <Faults faults={faults} field="done" />
        </>
      )}
      <button class={wanted ? undefined : 'quiet'}>{BUTTONS[word]}</button>
    </form>
  );
};

const BUTTONS: Readonly<Record<AnswerWord, string>> = {
  seen: 'I have seen it',
  waiting: 'Remind me after that day',
  done: 'Write it down as done',
  'not here': 'Take it off this car',
};
