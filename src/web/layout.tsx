/** The frame of every page, links that keep the day, and the small pieces of forms. */
import { type Child, createContext, type PropsWithChildren, useContext } from 'hono/jsx';
import type { Fault } from '../acts/fault.ts';
import { instantInWords } from '../clock.ts';
import { dayInWords } from '../dates/words.ts';
import { Patterns } from './patterns.tsx';
import { at, type Ctx, type Visit } from './visit.ts';

const VisitContext = createContext<Visit | null>(null);

export const useVisit = (): Visit => {
  const visit = useContext(VisitContext);
  if (!visit) throw new Error('Rendered outside a page');
  return visit;
};

export const A = ({ to, children, ...rest }: PropsWithChildren<{ to: string; class?: string }>) => (
  <a href={at(useVisit(), to)} {...rest}>
    {children}
  </a>
);

/** "25 November 2026, 10:00", by the collection's time zone. */
export const Instant = ({ at: instant }: { at: string }) => {
  const { timeZone } = useVisit().collection;
  return <time datetime={instant}>{instantInWords(instant, timeZone)}</time>;
};

/** A form that posts to a path of the site; it works without script and keeps the day. */
export const Post = ({ to, children, ...rest }: PropsWithChildren<{ to: string; class?: string; id?: string }>) => (
  <form method="post" action={at(useVisit(), to)} {...rest}>
    {children}
  </form>
);

const NAV = [
  ['/', 'Line-up'],
  ['/lay-ups', 'Lay-ups'],
  ['/revivals', 'Return to road'],
  ['/year-ahead', 'Year ahead'],
  ['/desks', 'Desks'],
  ['/places', 'Places'],
  ['/practice', 'Practice'],
  ['/letters', 'Letters'],
  ['/collection', 'Collection'],
] as const;

const isHere = (path: string, to: string): boolean => {
  if (to === '/') return path === '/' || path.startsWith('/cars') || path.startsWith('/parts');
  return (
    path.startsWith(to) || (to === '/desks' && path === '/date-codes') || (to === '/year-ahead' && path === '/shopping')
  );
};

const DAY_AND_A_HALF = 36 * 3_600_000;

/** A collection is looked over each morning: later than this, something keeps the server from it. */
const isStale = ({ lastSweep, now }: Visit): boolean =>
  lastSweep !== null && Date.parse(now) - Date.parse(lastSweep) > DAY_AND_A_HALF;

/** This page without its day. */
const pageToday = ({ site, page, query }: Visit): string => {
  const rest = new URLSearchParams(query).toString();
  return `${site.base}${page}${rest && `?${rest}`}`;
};

const Frame = ({ visit, title, children }: PropsWithChildren<{ visit: Visit; title: string }>) => (
  <html lang="en">
    <head>
      <meta charset="utf-8" />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <title>{`${title} · Standstill`}</title>
      <link rel="icon" type="image/svg+xml" href={`${visit.site.base}/static/icon.svg`} />
      <link rel="stylesheet" href={`${visit.site.base}/static/style.css`} />
      <script type="module" src={`${visit.site.base}/static/reads.js`} />
    </head>
    <body data-base={visit.site.base}>
      <Patterns />
      <a class="skip" href="#main">
        Skip to the page
      </a>
      <header class="head">
        <A to="/" class="mark">
          Standstill
        </A>
        <nav aria-label="Pages">
          {NAV.map(([to, name]) => (
            <a href={at(visit, to)} aria-current={isHere(visit.path, to) ? 'page' : undefined}>
              {name}
            </a>
          ))}
        </nav>
      </header>
      {visit.on !== visit.today && (
        <p class="elsewhen" role="status">
          Seen as on <strong>{dayInWords(visit.on)}</strong>; what you record here counts as recorded that day.{' '}
          <a href={pageToday(visit)}>Back to today</a>
        </p>
      )}
      {visit.failed > 0 && (
        <p class="elsewhen" role="alert">
          {visit.failed === 1 ? 'A letter was' : `${visit.failed} letters were`} given up and nobody has seen that yet.{' '}
          <A to="/letters">See Letters</A>
        </p>
      )}
      {(visit.trouble.length > 0 || isStale(visit)) && (
        <p class="elsewhen" role="alert">
          {visit.trouble.length > 0
            ? 'Something this server does by itself went wrong. '
            : 'Nobody has looked over this collection for more than a day. '}
          <A to="/status">See Status</A>
        </p>
      )}
      <main id="main">{children}</main>
      <footer class="foot">
        <form method="get" action={`${visit.site.base}${visit.page}`} class="day">
          {Object.entries(visit.query).map(([name, value]) => (
            <input type="hidden" name={name} value={value} />
          ))}
          <label>
            See this page as on <input type="date" name="on" value={visit.on} required />
          </label>
          <button>Show</button>
        </form>
        <p>
          {visit.collection.name}.{' '}
          {visit.lastSweep ? (
            <>
              Last looked over for letters without trouble: <Instant at={visit.lastSweep} />.
            </>
          ) : (
            'Not yet looked over for letters without trouble.'
          )}{' '}
          <A to="/status">Status</A>. Ages are reasons to act, never proof of condition.
        </p>
      </footer>
    </body>
  </html>
);

/** Answers a whole page. */
export const page = (c: Ctx, title: string, body: Child, status: 200 | 400 | 404 | 422 | 500 = 200) => {
  const visit = c.get('visit');
  return c.html(
    `<!DOCTYPE html>${(
      <VisitContext.Provider value={visit}>
        <Frame visit={visit} title={title}>
          {body}
        </Frame>
      </VisitContext.Provider>
    )}`,
    status,
  );
};

interface FaultsShown {
  faults: readonly Fault[];
  field: string;
  /** The meaning picked, the text it was picked for, and the text now. */
  picked?: string | undefined;
  asked?: string;
  text?: string;
}

/**
 * What was wrong with a field, beside it, with the meanings to choose from where there are several. A meaning picked
 * before is sent along again while nothing is wrong with the field itself: it is not asked twice.
 */
export const Faults = ({ faults, field, picked = '', asked = '', text = '' }: FaultsShown) => {
  const own = faults.filter((fault) => fault.field === field);
  const kept = own.length === 0 ? choiceOf(text, asked, picked) : undefined;
  return (
    <>
      {own.map((fault) => (
        <div class="fault" role="alert" id={`${field}-fault`}>
          <p>{fault.message}</p>
          {fault.choices && (
            <fieldset class="choices">
              <legend>Which is it?</legend>
              <input type="hidden" name={`${field}Asked`} value={text} />
              {fault.choices.map(({ value, label }) => (
                <label>
                  <input type="radio" name={`${field}Choice`} value={value} checked={value === picked} /> {label}
                </label>
              ))}
            </fieldset>
          )}
        </div>
      ))}
      {kept && (
        <>
          <input type="hidden" name={`${field}Asked`} value={text} />
          <input type="hidden" name={`${field}Choice`} value={kept} />
        </>
      )}
    </>
  );
};

/** The meaning picked, if the text is still the one it was picked for. */
export const choiceOf = (text: string, asked: string, choice: string): string | undefined =>
  choice !== '' && text === asked ? choice : undefined;

/** What says more about a field: its hint, by the id of that, and what was wrong with it. */
export const faultsOf = (faults: readonly Fault[], field: string, hint?: string): Record<string, string> => {
  const wrong = faults.some((fault) => fault.field === field);
  const described = [...(hint ? [hint] : []), ...(wrong ? [`${field}-fault`] : [])].join(' ');
  return {
    ...(wrong ? { 'aria-invalid': 'true' } : {}),
    ...(described ? { 'aria-describedby': described } : {}),
  };
};

/**
 * At the top of a rejected page, where a phone shows it: what was wrong, and the way to each field. Where the page holds
 * more forms than one, or saves nothing, `kept` says what became of what was typed.
 */
export const FaultSummary = ({
  faults,
  kept = 'Nothing was saved yet and nothing you typed is lost.',
}: {
  faults: readonly Fault[];
  kept?: string;
}) =>
  faults.length > 0 ? (
    <div class="fault" role="alert">
      <p>
        {kept} {faults.length === 1 ? 'One thing needs' : `${faults.length} things need`} your answer:
      </p>
      <ul>
        {faults.map(({ field, message }) => (
          <li>
            <a href={`#${field}-fault`}>{message}</a>
          </li>
        ))}
      </ul>
    </div>
  ) : (
    <></>
  );

/** A field for a distance with its unit, which is asked for and never guessed, and what was wrong with it. */
export const DistanceField = ({ label, value, faults }: { label: string; value: string; faults: readonly Fault[] }) => {
  const { number, unit: given } = /^(?<number>.*?)\s*(?<unit>km|mi(?:les?)?)?$/i.exec(value)?.groups ?? {};
  return (
    <>
      <label>
        {label}
        <input
          name="distance"
          inputmode="numeric"
          value={number ?? value}
          placeholder="54,300"
          autocomplete="off"
          {...faultsOf(faults, 'distance')}
        />
      </label>
      <fieldset class="targets unit">
        <legend>Unit</legend>
        {(['km', 'mi'] as const).map((unit) => (
          <label>
            <input type="radio" name="unit" value={unit} checked={given?.toLowerCase().startsWith(unit) ?? false} />{' '}
            <span>{unit === 'mi' ? 'miles' : unit}</span>
          </label>
        ))}
      </fieldset>
      <Faults faults={faults} field="distance" />
    </>
  );
};
