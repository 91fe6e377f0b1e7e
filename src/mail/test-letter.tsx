/** A letter that was asked for to see whether letters arrive. */
import { Closing, closingText, type LetterFrame } from './letter.tsx';

const WORDS = ({ person, collection, day }: LetterFrame): string =>
  `${person}, somebody asked on ${day} for a test of the letters of “${collection}”. If you can read this, they arrive. Nothing in it is news of a car.`;

export const testText = (frame: LetterFrame): string => [WORDS(frame), closingText(frame)].join('\n\n');

export const testHtml = (frame: LetterFrame): string =>
  `<!DOCTYPE html>${(
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <title>A test: letters arrive</title>
      </head>
      <body style="font-family: Georgia, serif; color: #1c1b19; max-width: 40rem; margin: 1rem; line-height: 1.45">
        <p>{WORDS(frame)}</p>
        <Closing frame={frame} />
      </body>
    </html>
  )}`;
