/** The frame of a sheet to print: the paper, what stands at its head, and the bar that is seen on screen only. */
import type { Child, PropsWithChildren } from 'hono/jsx';
import type { StayHere } from '../../acts/stays.ts';
import { CAUTIONS, type CautionKey, DEFERS } from '../../catalogue/cautions.ts';
import { dayInWords } from '../../dates/words.ts';
import { at, type Visit } from '../visit.ts';
import { Code } from './code.tsx';

/** The sheets of a stay, each with the page its code leads to, below the page of the lay-up. */
const SHEETS = {
  plan: { name: 'Lay-up plan', page: '' },
  windshield: { name: 'Windshield sheet', page: '' },
  monthly: { name: 'Monthly card', page: '/round' },
  'wake-up': { name: 'Wake-up plan', page: '/wake-up' },
} as const;
export type SheetName = keyof typeof SHEETS;
export const SHEET_NAMES = Object.keys(SHEETS) as [SheetName, ...SheetName[]];

const PAPERS = { a4: 'A4', letter: 'US Letter' } as const;
export type Paper = keyof typeof PAPERS;
export const PAPER_NAMES = Object.keys(PAPERS) as [Paper, ...Paper[]];

/** All that a sheet is made from. */
export interface OnPaper {
  visit: Visit;
  here: StayHere;
  sheet: SheetName;
  paper: Paper;
}

export const Sheet = ({ children, ...made }: PropsWithChildren<OnPaper>) => {
  const { visit, here, sheet, paper } = made;
  const of = (name: string): string => `${visit.site.base}/static/${name}`;
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${SHEETS[sheet].name}: ${here.found.car.name} · Standstill`}</title>
        <link rel="icon" type="image/svg+xml" href={of('icon.svg')} />
        <link rel="stylesheet" href={of('sheet.css')} />
        <link rel="stylesheet" href={of(`sheet-${paper}.css`)} />
      </head>
      <body>
        <Bar {...made} />
        <main class={`sheet ${sheet}`}>{children}</main>
      </body>
    </html>
  );
};

/** Seen on screen only. */
const Bar = ({ visit, here, sheet, paper }: OnPaper) => {
  const layUp = `/lay-ups/${here.record.row.id}`;
  const to = (name: SheetName, on: Paper): string => at(visit, `${layUp}/sheets/${name}?paper=${on}`);
  return (
    <nav class="bar" aria-label="Sheets">
      <a href={at(visit, layUp)}>Back to the lay-up</a>
      <span>
        {SHEET_NAMES.map((name) => (
          <a href={to(name, paper)} aria-current={name === sheet ? 'page' : undefined}>
            {SHEETS[name].name}
          </a>
        ))}
      </span>
      <span>
        {PAPER_NAMES.map((one) => (
          <a href={to(sheet, one)} aria-current={one === paper ? 'true' : undefined}>
            {PAPERS[one]}
          </a>
        ))}
      </span>
      <span>Print from your browser, at 100 percent.</span>
    </nav>
  );
};

/** Name, car, stay and code, above everything but the sheet that hangs in the car. */
export const Head = ({ children, ...made }: PropsWithChildren<OnPaper>) => {
  const { visit, here, sheet } = made;
  return (
    <header class="head">
      <div>
        <h1>
          <span class="kind">{SHEETS[sheet].name}</span> <span class={carClass(here)}>{here.found.car.name}</span>
        </h1>
        <p class="stay">
          <b>{stayInWords(here)}</b>
          {here.place && <> {here.place.name}.</>}
        </p>
        {children}
        <p class="printed">{printedOn(made)}</p>
        <Closed here={here} />
      </div>
      <SheetCode visit={visit} here={here} sheet={sheet} />
    </header>
  );
};

export const SheetCode = ({ visit, here, sheet }: Omit<OnPaper, 'paper'>) => (
  <Code address={visit.site.href(`/lay-ups/${here.record.row.id}${SHEETS[sheet].page}`)} />
);

export const printedOn = ({ visit }: Pick<OnPaper, 'visit'>): string =>
  `${visit.collection.name}. Printed as on ${dayInWords(visit.on)}.`;

/** Long names are set smaller, so that they leave the page its room. */
export const carClass = ({ found }: StayHere): string =>
  `car ${found.car.name.length > 60 ? 'longest' : found.car.name.length > 22 ? 'long' : ''}`.trim();

const stayInWords = ({ record: { row } }: StayHere): string =>
  `Parked ${dayInWords(row.parkedOn)}, ${row.returnOn ? `back ${dayInWords(row.returnOn)}` : 'open end'}.`;

export const isClosed = ({ record: { row }, view }: StayHere): boolean =>
  row.closedOn !== null && row.closedOn <= view.on;

const Closed = ({ here }: { here: StayHere }) => {
  const { closedOn, closedHow } = here.record.row;
  if (!isClosed(here) || closedOn === null) return null;
  return (
    <p class="closed">
      This lay-up was {closedHow === 'called off' ? 'called off' : 'closed'} on {dayInWords(closedOn)}.
    </p>
  );
};

const STATES = { open: 'To do', done: 'Done', skipped: 'Left out' } as const;
export type BoxState = keyof typeof STATES;

/** A box to tick by hand; filled where it is done, struck where it is left out. */
export const Box = ({ state = 'open' }: { state?: BoxState }) => (
  <svg class="box" viewBox="0 0 20 20" role="img" aria-label={STATES[state]}>
    <rect
      x="1.2"
      y="1.2"
      width="17.6"
      height="17.6"
      fill={state === 'done' ? '#000' : '#fff'}
      stroke="#000"
      stroke-width="1.8"
    />
    {state === 'done' && <path d="M4.5 10.5 8.6 14.6 15.8 5.8" fill="none" stroke="#fff" stroke-width="2.6" />}
    {state === 'skipped' && <path d="M1.5 18.5 18.5 1.5" fill="none" stroke="#000" stroke-width="1.8" />}
  </svg>
);

/** A line to write on, as wide as what is to be written. */
export const Blank = ({ size = 'short' }: { size?: 'tiny' | 'short' | 'long' | 'rest' }) => (
  <span class={`blank ${size}`}>{'\u00a0'}</span>
);

/** Who to call, as it was said; or else who looks in or made the plan, and a line to write on. */
export const Call = ({ visit, here }: Pick<OnPaper, 'visit' | 'here'>) => {
  const { visitorId, madeBy, phone } = here.record.row;
  const name = visit.members.find(({ id }) => id === (visitorId ?? madeBy))?.name;
  return (
    <p class="call">
      Call{' '}
      {phone ? (
        <b>{phone}</b>
      ) : (
        <>
          {name ? <b>{name}</b> : <Blank />} <Blank size="rest" />
        </>
      )}
    </p>
  );
};

/** The usual cautions of the work, each once, and to whom they defer. */
export const SheetCautions = ({ keys, children }: { keys: readonly CautionKey[]; children?: Child }) => (
  <section class="cautions">
    <h2>Before you work</h2>
    {children}
    <ul>
      {[...new Set(keys)].map((key) => (
        <li>{CAUTIONS[key]}</li>
      ))}
      <li>
        <b>{DEFERS}</b>
      </li>
    </ul>
  </section>
);
