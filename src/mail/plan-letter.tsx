/** A plan as the two parts of a letter: plain text first, HTML second. */
import type { PlanLetter } from '../notices/plan-letter.ts';
import { Closing, closingText, type LetterFrame } from './letter.tsx';

const CLOSING =
  'Tick each step off on its page: what it renews gets its new date there. Amounts are worked out from what was entered and from practice of the trade; the vehicle’s handbook, the bottle’s label and the law of the place come first.';

export const planText = (letter: PlanLetter, frame: LetterFrame): string => {
  const { person, collection, href } = frame;
  return [
    `${person}, this is the plan for putting away “${letter.car}” (${collection}).`,
    letter.opening,
    `The plan with its sheets: ${href(`/lay-ups/${letter.layUpId}`)}`,
    ...letter.days.map(({ day, steps }) =>
      [
        day.toUpperCase(),
        ...steps.map(({ title, why, lines }) =>
          [`- ${title}`, `  ${why}`, ...lines.map((line) => `  · ${line}`)].join('\n'),
        ),
      ].join('\n'),
    ),
    `Before you work:\n${letter.cautions.map((caution) => `- ${caution}`).join('\n')}`,
    CLOSING,
    closingText(frame),
  ].join('\n\n');
};

export const planHtml = (letter: PlanLetter, frame: LetterFrame): string =>
  `<!DOCTYPE html>${<Letter letter={letter} frame={frame} />}`;

const Letter = ({ letter, frame }: { letter: PlanLetter; frame: LetterFrame }) => (
  <html lang="en">
    <head>
      <meta charset="utf-8" />
      <title>{letter.subject}</title>
    </head>
    <body style="font-family: Georgia, serif; color: #1c1b19; max-width: 40rem; margin: 1rem; line-height: 1.45">
      <p>
        {frame.person}, this is the plan for putting away “{letter.car}” ({frame.collection}).
      </p>
      <p>{letter.opening}</p>
      <p>
        <a style="color: #1c1b19" href={frame.href(`/lay-ups/${letter.layUpId}`)}>
          The plan with its sheets
        </a>
      </p>
      {letter.days.map(({ day, steps }) => (
        <section>
          <h2 style="border-bottom: 2px solid #1c1b19; font-size: 1.1rem">{day}</h2>
          {steps.map(({ title, why, lines }) => (
            <div style="margin: 0 0 0.9rem">
              <strong>{title}</strong>
              <p style="margin: 0.1rem 0">{why}</p>
              {lines.length > 0 && (
                <ul style="margin: 0.1rem 0">
                  {lines.map((line) => (
                    <li>{line}</li>
                  ))}
                </ul>
              )}
            </div>
          ))}
        </section>
      ))}
      <h3>Before you work</h3>
      <ul>
        {letter.cautions.map((caution) => (
          <li>{caution}</li>
        ))}
      </ul>
      <p>{CLOSING}</p>
      <Closing frame={frame} />
    </body>
  </html>
);
