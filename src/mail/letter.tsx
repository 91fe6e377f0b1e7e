/** A digest as the two parts of a letter: plain text first, HTML second, with links back to the pages. */
import { ANSWER_WORDS, type AnswerWord } from '../notices/answers.ts';
import type { Digest, DigestCar, DigestLine, RevivalLine, StayLine } from '../notices/digest.ts';
import type { YearCar } from '../notices/yearly.ts';

export interface LetterFrame {
  person: string;
  collection: string;
  /** Day in words. */
  day: string;
  /** Address of a page, absolute. */
  href(path: string): string;
  /** Signed addresses: to answer about a part, about all of them at once, and to stop all letters to this person. */
  answer(partId: string): string;
  seen: string;
  stop: string;
  /** Where this person's letters are chosen. */
  wishes: string;
}

/** Answers as they stand in a letter. */
export const ANSWERS_SAID: Readonly<Record<AnswerWord, string>> = {
  seen: 'Seen',
  waiting: 'Waiting for parts',
  done: 'Done',
  'not here': 'Not on this car',
};

const answerAddress = (address: string, word: AnswerWord): string => `${address}?answer=${word.replace(' ', '-')}`;

const STAGE_WORDS = {
  past: 'Past',
  due: 'Due',
  look: 'Look',
  act: 'Act on its reading',
  watch: 'Watch its reading',
  estimate: 'Measure it',
} as const;

const SORT_WORDS = {
  warning: 'While it stands',
  found: 'Found',
  round: 'Round',
  return: 'Return',
  step: 'Lay-up',
  wake: 'Wake-up',
  task: 'Return to road',
} as const;

const stayPath = (line: StayLine | RevivalLine): string => {
  const plan = 'layUpId' in line ? `/lay-ups/${line.layUpId}` : `/revivals/${line.revivalId}`;
  return `${plan}${line.news.page && `/${line.news.page}`}`;
};

/** Whether anything in it can be answered. */
const asksIn = ({ cars }: Digest): boolean => cars.some(({ lines }) => lines.length > 0);

const openingOf = ({ cars, year }: Digest, { collection, day }: LetterFrame): string => {
  const again = cars.some(({ lines }) => lines.some((line) => line.again !== null));
  if (year && cars.length === 0) return `once a year, the whole of “${collection}”, as on ${day}.`;
  return `this is new in “${collection}” on ${day}. What was said before is not repeated${again ? ', but for what can hurt somebody and has no answer yet' : ''}.`;
};

export const letterText = (digest: Digest, frame: LetterFrame): string => {
  const { cars, year } = digest;
  return [
    `${frame.person}, ${openingOf(digest, frame)}`,
    ...(cars.length > 1 ? [contentsText(digest)] : []),
    ...cars.map((car) => carText(car, frame)),
    ...(year ? [['THE WHOLE COLLECTION', ...year.cars.map((car) => yearText(car, frame.href))].join('\n\n')] : []),
    ...(asksIn(digest) ? [`All of it seen: ${frame.seen}`] : []),
    `Everything by car: ${frame.href('/')}\nThe intervals and their sources: ${frame.href('/practice')}`,
    DEFERRING,
    closingText(frame),
  ].join('\n\n');
};

const DEFERRING =
  'Figures are common practice, standards or your own; the vehicle’s handbook rules. Age is one reason to act; no letter is no proof of condition.';

/** The end of every letter: how to get fewer, and how to get none. */
export const closingText = ({ wishes, stop }: LetterFrame): string =>
  `Which letters you get, and when: ${wishes}\nStop all of them: ${stop}`;

const yearText = ({ carId, name, standings, state, ahead }: YearCar, href: LetterFrame['href']): string =>
  [
    `${name}  ${href(`/cars/${carId}`)}`,
    `  ${standings}`,
    ...(state ? [`  ${state}`] : []),
    ...ahead.map((line) => `  ${line}`),
  ].join('\n');

/** What is in a long letter, a line a car. */
const contentsText = ({ cars }: Digest): string => cars.map(({ name, summary }) => `- ${name}: ${summary}`).join('\n');

const carText = (car: DigestCar, frame: LetterFrame): string =>
  [
    `${car.name.toUpperCase()}  ${frame.href(`/cars/${car.carId}`)}`,
    ...car.stay.map((line) => stayText(line, frame.href)),
    ...car.lines.map((line) => lineText(line, frame)),
    ...(car.unproven > 0 ? [unprovenLine(car)] : []),
    ...(car.unjudged > 0 ? [unjudgedLine(car)] : []),
    ...(car.cautions.length > 0
      ? [`Before you work:\n${car.cautions.map((caution) => `- ${caution}`).join('\n')}`]
      : []),
  ].join('\n\n');

const stayText = (line: StayLine | RevivalLine, href: LetterFrame['href']): string =>
  [
    `[${SORT_WORDS[line.news.sort]}] ${line.news.title}`,
    ...line.news.lines.map((text) => `  ${text}`),
    `  ${href(stayPath(line))}`,
  ].join('\n');

const lineText = (line: DigestLine, { href, answer }: LetterFrame): string =>
  [
    `[${STAGE_WORDS[line.stage]}${line.safety ? ', safety' : ''}] ${line.title}`,
    ...(line.again ? [`  ${toldBefore(line.again)}`] : []),
    `  ${line.age}`,
    ...line.why.map((why) => `  ${why}`),
    ...line.doubts.map((doubt) => `  Doubt: ${doubt}`),
    `  Do: ${line.todo}`,
    `  ${href(`/parts/${line.partId}`)}`,
    `  Answer (${ANSWER_WORDS.map((word) => ANSWERS_SAID[word].toLowerCase()).join(', ')}): ${answer(line.partId)}`,
  ].join('\n');

const toldBefore = (day: string): string => `Told on ${day}, and nobody has answered.`;

const unprovenLine = ({ unproven }: DigestCar): string =>
  `${unproven === 1 ? 'One more part is' : `${unproven} more parts are`} unproven: their dates can’t clear them. Each needs its date found.`;

const unjudgedLine = ({ unjudged }: DigestCar): string =>
  `${unjudged === 1 ? 'One record' : `${unjudged} records`} could not be reckoned: something is wrong there, or with this program. Look at the car yourself; the server’s log says more.`;

export const letterHtml = (digest: Digest, frame: LetterFrame): string =>
  `<!DOCTYPE html>${<Letter digest={digest} frame={frame} />}`;

const Letter = ({ digest, frame }: { digest: Digest; frame: LetterFrame }) => (
  <html lang="en">
    <head>
      <meta charset="utf-8" />
      <title>{digest.subject}</title>
    </head>
    <body style="font-family: Georgia, serif; color: #1c1b19; max-width: 40rem; margin: 1rem; line-height: 1.45">
      <p>
        {frame.person}, {openingOf(digest, frame)}
      </p>
      {digest.cars.length > 1 && (
        <ul>
          {digest.cars.map(({ name, summary }) => (
            <li>
              {name}: {summary}
            </li>
          ))}
        </ul>
      )}
      {digest.cars.map((car) => (
        <section>
          <h2 style="border-bottom: 2px solid #1c1b19">
            <a style="color: #1c1b19" href={frame.href(`/cars/${car.carId}`)}>
              {car.name}
            </a>
          </h2>
          {car.stay.map((line) => (
            <div style="margin: 0 0 1rem">
              <h3 style="margin: 0">
                {SORT_WORDS[line.news.sort]}:{' '}
                <a style="color: #1c1b19" href={frame.href(stayPath(line))}>
                  {line.news.title}
                </a>
              </h3>
              {line.news.lines.map((text) => (
                <p style="margin: 0.2rem 0">{text}</p>
              ))}
            </div>
          ))}
          {car.lines.map((line) => (
            <div style="margin: 0 0 1.25rem">
              <h3 style="margin: 0">
                {STAGE_WORDS[line.stage]}
                {line.safety ? ', safety' : ''}:{' '}
                <a style="color: #1c1b19" href={frame.href(`/parts/${line.partId}`)}>
                  {line.title}
                </a>
              </h3>
              {line.again && <p style="margin: 0.2rem 0">{toldBefore(line.again)}</p>}
              <p style="margin: 0.2rem 0">
                <strong>{line.age}</strong>
              </p>
              {[...line.why, ...line.doubts.map((doubt) => `Doubt: ${doubt}`)].map((text) => (
                <p style="margin: 0.2rem 0">{text}</p>
              ))}
              <p style="margin: 0.2rem 0">
                <strong>Do:</strong> {line.todo}
              </p>
              <p style="margin: 0.4rem 0">
                Answer:{' '}
                {ANSWER_WORDS.map((word, n) => (
                  <>
                    {n > 0 && ' · '}
                    <a style="color: #1c1b19" href={answerAddress(frame.answer(line.partId), word)}>
                      {ANSWERS_SAID[word]}
                    </a>
                  </>
                ))}
              </p>
            </div>
          ))}
          {car.unproven > 0 && <p>{unprovenLine(car)}</p>}
          {car.unjudged > 0 && <p>{unjudgedLine(car)}</p>}
          {car.cautions.length > 0 && (
            <>
              <h3>Before you work</h3>
              <ul>
                {car.cautions.map((caution) => (
                  <li>{caution}</li>
                ))}
              </ul>
            </>
          )}
        </section>
      ))}
      {digest.year && (
        <>
          <h2 style="border-bottom: 2px solid #1c1b19">The whole collection</h2>
          {digest.year.cars.map(({ carId, name, standings, state, ahead }) => (
            <div style="margin: 0 0 1rem">
              <h3 style="margin: 0">
                <a style="color: #1c1b19" href={frame.href(`/cars/${carId}`)}>
                  {name}
                </a>
              </h3>
              {[standings, ...(state ? [state] : []), ...ahead].map((text) => (
                <p style="margin: 0.2rem 0">{text}</p>
              ))}
            </div>
          ))}
        </>
      )}
      {asksIn(digest) && (
        <p>
          <a style="color: #1c1b19" href={frame.seen}>
            All of it seen
          </a>
        </p>
      )}
      <p>
        <a style="color: #1c1b19" href={frame.href('/')}>
          Everything by car
        </a>
        {' · '}
        <a style="color: #1c1b19" href={frame.href('/practice')}>
          The intervals and their sources
        </a>
      </p>
      <p>{DEFERRING}</p>
      <Closing frame={frame} />
    </body>
  </html>
);

export const Closing = ({ frame }: { frame: LetterFrame }) => (
  <p style="font-size: 0.9rem">
    <a style="color: #1c1b19" href={frame.wishes}>
      Which letters you get, and when
    </a>
    {' · '}
    <a style="color: #1c1b19" href={frame.stop}>
      Stop all of them
    </a>
  </p>
);
