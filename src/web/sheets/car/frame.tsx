/** The frame of a sheet that is about one car: paper, head with a code to its page, and the bar seen on screen only. */
import type { Child } from 'hono/jsx';
import { z } from 'zod';
import { type CautionKey, DEFERS } from '../../../catalogue/cautions.ts';
import { dayInWords } from '../../../dates/words.ts';
import { BadForm } from '../../forms.ts';
import { at, type Ctx, type Visit } from '../../visit.ts';
import { Code } from '../code.tsx';
import { PAPER_NAMES, type Paper, SheetCautions } from '../sheet.tsx';

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
  /** Of the work, each once. None: only to whom the sheet defers. Null: it sets its own beside the work. */
  cautions: readonly CautionKey[] | null;
  /** It can have several pages, and papers get parted: each says of which car it is. */
  long?: boolean;
  children?: Child;
}

export const CarSheetFrame = (framed: Framed) => {
  const { visit, paper, kind, car, page, line, cautions, long, children } = framed;
  const of = (name: string): string => `${visit.site.base}/static/${name}`;
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
        <Bar {...framed} />
        <main class={`sheet car-sheet ${long ? 'long' : ''}`.trim()}>
          {long && (
            <div class="running" aria-hidden="true">
              <p>
                {car} · {kind} · {dayInWords(visit.on)}
              </p>
            </div>
          )}
          <div class="whole">
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
            {cautions && cautions.length > 0 && <SheetCautions keys={cautions} />}
            {cautions?.length === 0 && <p class="defers">{DEFERS}</p>}
          </div>
        </main>
      </body>
    </html>
  );
};

const Bar = ({ visit, paper, page, links }: Framed) => {
  const { path, query } = visit;
  const on = (one: Paper): string => at(visit, `${path}?${new URLSearchParams({ ...query, paper: one })}`);
  return (
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
  );
};
