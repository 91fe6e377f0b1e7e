/** The frame of a sheet that is about one car: paper, head with a code to its page, and the bar seen on screen only. */
import type { Child } from 'hono/jsx';
import { z } from 'zod';
import { CAUTIONS, type CautionKey, DEFERS } from '../../../catalogue/cautions.ts';
import { dayInWords } from '../../../dates/words.ts';
import { BadForm } from '../../forms.ts';
import { at, type Ctx, type Visit } from '../../visit.ts';
import { Code } from '../code.tsx';
import { PAPER_NAMES, type Paper } from '../sheet.tsx';

const PAPERS = { a4: 'A4', letter: 'US Letter' } as const;
const PAPER = z.enum(PAPER_NAMES).default('a4');

export const paperIn = (c: Ctx): Paper => {
  const paper = PAPER.safeParse(c.req.query('paper'));
  if (!paper.success) throw new BadForm('There is no such paper: write paper=a4 or paper=letter.');
  return paper.data;
};

interface Link {
  name: string;
  to: string;
  here?: boolean;
}

interface Framed {
  visit: Visit;
  paper: Paper;
  /** What it is, and of which car. */
  kind: string;
  car: string;
  /** Page its code leads to. */
  page: string;
  /** One line under the name. */
  line: Child;
  links: readonly Link[];
  cautions: readonly CautionKey[];
  children?: Child;
}

export const CarSheetFrame = ({ visit, paper, kind, car, page, line, links, cautions, children }: Framed) => {
  const of = (name: string): string => `${visit.site.base}/static/${name}`;
  const { path, query } = visit;
  const on = (one: Paper): string => at(visit, `${path}?${new URLSearchParams({ ...query, paper: one })}`);
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${kind}: ${car} · Standstill`}</title>
        <link rel="icon" type="image/svg+xml" href={of('icon.svg')} />
        <link rel="stylesheet" href={of('sheet.css')} />
        <link rel="stylesheet" href={of('sheet-car.css')} />
        <link rel="stylesheet" href={of(`sheet-${paper}.css`)} />
      </head>
      <body>
        <nav class="bar" aria-label="Sheets">
          <a href={at(visit, page)}>Back to its page</a>
          <span>
            {links.map(({ name, to, here }) => (
              <a href={at(visit, to)} aria-current={here ? 'page' : undefined}>
                {name}
              </a>
            ))}
          </span>
          <span>
            {PAPER_NAMES.map((one) => (
              <a href={on(one)} aria-current={one === paper ? 'true' : undefined}>
                {PAPERS[one]}
              </a>
            ))}
          </span>
          <span>Print from your browser, at 100 percent.</span>
        </nav>
        <main class="sheet car-sheet">
          <header class="head">
            <div>
              <h1>
                <span class="kind">{kind}</span>{' '}
                <span class={`car ${car.length > 60 ? 'longest' : car.length > 22 ? 'long' : ''}`.trim()}>{car}</span>
              </h1>
              <p class="stay">{line}</p>
              <p class="printed">
                {visit.collection.name}. Printed as on {dayInWords(visit.on)}.
              </p>
            </div>
            <Code address={visit.site.href(page)} />
          </header>
          {children}
          {cautions.length > 0 && (
            <section class="cautions">
              <h2>Before you work</h2>
              <ul>
                {[...new Set(cautions)].map((key) => (
                  <li>{CAUTIONS[key]}</li>
                ))}
                <li>
                  <b>{DEFERS}</b>
                </li>
              </ul>
            </section>
          )}
        </main>
      </body>
    </html>
  );
};
