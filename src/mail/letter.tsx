/** A digest as the two parts of a letter: plain text first, HTML second, with links back to the pages. */
import type { Digest, DigestCar, DigestLine, RevivalLine, StayLine } from '../notices/digest.ts';

export interface LetterFrame {
  person: string;
  collection: string;
  /** Day in words. */
  day: string;
  /** Address of a page, absolute. */
  href(path: string): string;
}

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

export const letterText = (digest: Digest, { person, collection, day, href }: LetterFrame): string => {
  const cars = digest.cars.map((car) => carText(car, href));
  return [
    `${person}, this is new in “${collection}” on ${day}. What was said before is not repeated.`,
    ...(cars.length > 1 ? [contentsText(digest)] : []),
    ...cars,
    `Everything by car: ${href('/')}\nThe intervals and their sources: ${href('/practice')}`,
    'Figures are common practice, standards or your own; the vehicle’s handbook rules. Age is one reason to act; no letter is no proof of condition.',
  ].join('\n\n');
};

/** What is in a long letter, a line a car. */
const contentsText = ({ cars }: Digest): string => cars.map(({ name, summary }) => `- ${name}: ${summary}`).join('\n');

const carText = (car: DigestCar, href: LetterFrame['href']): string =>
  [
    `${car.name.toUpperCase()}  ${href(`/cars/${car.carId}`)}`,
    ...car.stay.map((line) => stayText(line, href)),
    ...car.lines.map((line) => lineText(line, href)),
    ...(car.unproven > 0 ? [unprovenLine(car)] : []),
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

const lineText = (line: DigestLine, href: LetterFrame['href']): string =>
  [
    `[${STAGE_WORDS[line.stage]}${line.safety ? ', safety' : ''}] ${line.title}`,
    `  ${line.age}`,
    ...line.why.map((why) => `  ${why}`),
    ...line.doubts.map((doubt) => `  Doubt: ${doubt}`),
    `  Do: ${line.todo}`,
    `  ${href(`/parts/${line.partId}`)}`,
  ].join('\n');

const unprovenLine = ({ unproven }: DigestCar): string =>
  `${unproven === 1 ? 'One more part is' : `${unproven} more parts are`} unproven: their dates can’t clear them. Each needs its date found.`;

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
        {frame.person}, this is new in “{frame.collection}” on {frame.day}. What was said before is not repeated.
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
              <p style="margin: 0.2rem 0">
                <strong>{line.age}</strong>
              </p>
              {[...line.why, ...line.doubts.map((doubt) => `Doubt: ${doubt}`)].map((text) => (
                <p style="margin: 0.2rem 0">{text}</p>
              ))}
              <p style="margin: 0.2rem 0">
                <strong>Do:</strong> {line.todo}
              </p>
            </div>
          ))}
          {car.unproven > 0 && <p>{unprovenLine(car)}</p>}
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
      <p>
        <a style="color: #1c1b19" href={frame.href('/')}>
          Everything by car
        </a>
        {' · '}
        <a style="color: #1c1b19" href={frame.href('/practice')}>
          The intervals and their sources
        </a>
      </p>
      <p>
        Figures are common practice, standards or your own; the vehicle’s handbook rules. Age is one reason to act; no
        letter is no proof of condition.
      </p>
    </body>
  </html>
);
