/** The site: who may ask, what every answer carries, and which address leads to which page. */
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { csrf } from 'hono/csrf';
import { createMiddleware } from 'hono/factory';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import { fault } from '../log.ts';
import { fromRoot } from '../root.ts';
import { api } from './api/api.ts';
import { problem } from './api/problem.ts';
import { batteryDesk } from './desks/battery.tsx';
import { brakeFluidDesk } from './desks/brake-fluid.tsx';
import { coolantDesk } from './desks/coolant.tsx';
import { desksPage } from './desks/desk.tsx';
import { fuelDesk } from './desks/fuel.tsx';
import { rubberDesk } from './desks/rubber.tsx';
import { feed } from './feed.ts';
import { BadForm } from './forms.ts';
import { fromHere, ownOrigin } from './gate.ts';
import { health } from './health.ts';
import { closePage, closeStay, reopen } from './lay-ups/close.tsx';
import { layUpsPage } from './lay-ups/list.tsx';
import { addOwn, layUpPage, removeOwn, seen, takeSide } from './lay-ups/plan.tsx';
import { makeRoundPage, roundOfStay, takeBackRound } from './lay-ups/round.tsx';
import { sidesPage } from './lay-ups/sides.tsx';
import { addLayUp, changeLayUp, changeLayUpPage, newLayUp } from './lay-ups/start.tsx';
import { skip, stepPage, tickStepPage, untick } from './lay-ups/step.tsx';
import { wakeUpPage } from './lay-ups/wake-up.tsx';
import { A, page } from './layout.tsx';
import { answerPage, giveAnswer } from './letters/answer.tsx';
import { letterHtmlPage, letterPage, seenLetter, tryLetterAgain } from './letters/letter.tsx';
import { letters, sendTest, writeLetters } from './letters/list.tsx';
import { seenAll, seenAllPage } from './letters/seen-all.tsx';
import { stopLetters, stopPage } from './letters/stop.tsx';
import { endCalendar, saveCalendar, saveWishes, wishesPage } from './letters/wishes.tsx';
import { notFound } from './not-found.tsx';
import { addCar, changeCar, changeCarPage, newCar } from './pages/car-form.tsx';
import { backInCollection, carLeft } from './pages/car-left.tsx';
import { addPart, newPart, recordReading } from './pages/car-records.tsx';
import { carSheet } from './pages/car-sheet.tsx';
import { actAs, collectionPage, newCollection, saveCollection, saveMember } from './pages/collection.tsx';
import { dateCodes } from './pages/date-codes.tsx';
import { datePartPage, datingRound, recordDate } from './pages/date-part.tsx';
import { lineUp } from './pages/line-up.tsx';
import { moneyPage, saveMoney } from './pages/money-form.tsx';
import { partPage } from './pages/part.tsx';
import { forgetPlace, newPlace, placePage, placesPage, putCar, savePlace } from './pages/places.tsx';
import { changeInterval, kindPage, practice } from './pages/practice.tsx';
import { recordReadings, roundPage, takeBackReading } from './pages/record-readings.tsx';
import { looked, renew, renewPage, retire, unretire, withdraw } from './pages/renew.tsx';
import { saveDetails } from './pages/save-details.ts';
import { shoppingPage } from './pages/shopping.tsx';
import { statusPage } from './pages/status.tsx';
import { yearAheadPage } from './pages/year-ahead.tsx';
import { addRevival, changeRevival, changeRevivalPage, newRevival } from './revivals/begin.tsx';
import { endPage, endRevivalPage, reopenPage } from './revivals/end.tsx';
import { journalPage } from './revivals/journal.tsx';
import { recordLeaksPage } from './revivals/leaks.tsx';
import { revivalsPage } from './revivals/list.tsx';
import { decideStopPage, revivalPage } from './revivals/plan.tsx';
import { recordRunPage } from './revivals/run.tsx';
import { passGatePage, stagePage } from './revivals/stage.tsx';
import { leaveOutPage, revivalStepPage, takeBackPage, tickPage } from './revivals/step.tsx';
import { recordSurveyPage, surveyPage } from './revivals/survey.tsx';
import { takeOnPage, verdictPage } from './revivals/verdict.tsx';
import { guestPage, guestWalk } from './road-check/guest.tsx';
import { endLink, lend, recordWalk, roadCheckPage, takeBackWalk } from './road-check/page.tsx';
import { carFilePage } from './sheets/car/car-file.tsx';
import { revivalSheetPage } from './sheets/car/revival-sheets.tsx';
import { roadCheckSheet } from './sheets/car/road-check-sheet.tsx';
import { sheetPage } from './sheets/sheet-page.tsx';
import { BadDay, type Ctx, type Env, NoCollection, type Surroundings, visiting } from './visit.ts';

/** Largest form or document taken, in bytes; the largest of ours has a few thousand. */
const MOST_BYTES = 256 * 1024;

const NONE = ["'none'"];
const SELF = ["'self'"];
const POLICY = {
  defaultSrc: NONE,
  scriptSrc: SELF,
  styleSrc: SELF,
  imgSrc: SELF,
  connectSrc: SELF,
  formAction: SELF,
  baseUri: NONE,
  frameAncestors: NONE,
};
/** A letter's HTML part brings its own inline styles and nothing else. */
const LETTER_POLICY = {
  defaultSrc: NONE,
  styleSrc: ["'unsafe-inline'"],
  baseUri: NONE,
  formAction: NONE,
  frameAncestors: NONE,
};
const LETTER_HTML = /\/letters\/[^/]+\/html$/;

/**
 * Whether a whole domain speaks https only is its proxy's to say. Without a referrer browsers would not say of a form
 * either where it came from, and over plain http it would be turned away.
 */
const COMMON = { referrerPolicy: 'same-origin', strictTransportSecurity: false } as const;
const pageHeaders = secureHeaders({ ...COMMON, contentSecurityPolicy: POLICY });
const letterHeaders = secureHeaders({ ...COMMON, contentSecurityPolicy: LETTER_POLICY });

export const createApp = (around: Surroundings): Hono<Env> => {
  const { site, log } = around;
  // Not strict: below a base path the line-up has its address with and without a slash at the end.
  const app = new Hono<Env>({ strict: false }).basePath(site.base);

  app.use(fromHere(site));
  app.use((c, next) => (LETTER_HTML.test(c.req.path) ? letterHeaders : pageHeaders)(c, next));
  app.use(bodyLimit({ maxSize: MOST_BYTES }));
  // One click of a mail program comes from no page of ours, and without a session: the signature alone counts.
  app.use('/stop/*', letIn(around));
  app.post('/stop/:collectionId/:personId/:signature', stopLetters);
  app.use(csrf({ origin: ownOrigin(site) }));
  app.route('/', health(around));
  app.use(
    '/static/*',
    serveStatic({ root: fromRoot('src/web'), rewriteRequestPath: (path) => path.slice(site.base.length) }),
  );
  app.route('/', feed(around));
  // Whoever comes by a link has no collection and no menu: the link alone says what it is about.
  for (const by of ['/look/*', '/answers/*', '/seen/*']) app.use(by, letIn(around));
  app.get('/stop/:collectionId/:personId/:signature', stopPage);
  app.get('/seen/:letterId/:signature', seenAllPage);
  app.post('/seen/:letterId/:signature', seenAll);
  app.get('/answers/:letterId/:partId/:signature', answerPage);
  app.post('/answers/:letterId/:partId/:signature', giveAnswer);
  app.get('/look/:secret', guestPage);
  app.post('/look/:secret', guestWalk);
  app.use(visiting(around));
  app.use(async (c, next) => {
    await next();
    c.header('Cache-Control', 'no-store');
  });

  pages(app);
  app.route('/api/v1', api());

  app.notFound((c) =>
    isApi(c)
      ? problem(c, { status: 404, title: 'There is nothing at this address' })
      : c.get('visit')
        ? notFound(c, 'page')
        : c.text('Not found', 404),
  );
  app.onError((error, c) => {
    if (error instanceof BadDay || error instanceof BadForm) return refused(c, error.message);
    if (error instanceof NoCollection)
      return isApi(c) ? problem(c, { status: 404, title: error.message }) : c.text(error.message, 404);
    if (error instanceof HTTPException) return stopped(c, error);
    const id = crypto.randomUUID();
    log.error('request failed', { id, method: c.req.method, path: withoutSecret(c.req.path), ...fault(error) });
    if (isApi(c))
      return problem(c, { status: 500, title: 'Something went wrong here', detail: `It is in the log under ${id}.` });
    return c.text(
      `Something went wrong here, and it is not your doing. It is in the log under ${id}. What you sent may not have been saved: go back and look.`,
      500,
    );
  });
  return app as unknown as Hono<Env>;
};

const letIn = (around: Surroundings) =>
  createMiddleware<Env>(async (c, next) => {
    c.set('around', around);
    await next();
    c.header('Cache-Control', 'no-store');
  });

/** Paths whose secret must not stand in a log. */
const withoutSecret = (path: string): string => path.replace(/(\/(?:look|feed|answers|seen|stop)\/).*/, '$1...');

const isApi = (c: Ctx): boolean => c.req.path.includes('/api/v1/');

/** `on=` that is no day, or a form none of our pages sends. */
const refused = (c: Ctx, message: string) => {
  if (isApi(c)) return problem(c, { status: 400, title: 'The request could not be read', detail: message });
  if (!c.get('visit')) return c.text(message, 400);
  return page(
    c,
    'Not understood',
    <>
      <h1>That was not understood</h1>
      <p class="fault">{message}</p>
      <p>
        <A to="/">Back to the line-up</A>
      </p>
    </>,
    400,
  );
};

const STOPPED: Readonly<Record<number, string>> = {
  403: 'Changes are made from this site’s own pages only',
  413: `That is more than is taken at once: ${MOST_BYTES / 1024} KiB`,
};

/** What was stopped on the way in: a foreign page, too large a body, JSON that is none. Not our fault, so not logged. */
const stopped = (c: Ctx, { status, message }: HTTPException) => {
  const title = STOPPED[status] ?? message;
  return isApi(c) ? problem(c, { status, title }) : c.text(`${title}.`, status);
};

const pages = (app: Hono<Env>): void => {
  app.get('/', lineUp);
  app.get('/cars/new', newCar);
  app.post('/cars', addCar);
  app.get('/cars/:carId', carSheet);
  app.post('/cars/:carId', changeCar);
  app.get('/cars/:carId/change', changeCarPage);
  app.post('/cars/:carId/left', carLeft);
  app.post('/cars/:carId/back', backInCollection);
  app.get('/cars/:carId/dating', datingRound);
  app.post('/cars/:carId/odometer', recordReading);
  app.get('/cars/:carId/readings', roundPage);
  app.post('/cars/:carId/readings', recordReadings);
  app.post('/cars/:carId/place', putCar);
  app.get('/cars/:carId/parts/new', newPart);
  app.post('/cars/:carId/parts', addPart);

  app.get('/cars/:carId/road-check', roadCheckPage);
  app.get('/cars/:carId/road-check/sheet', roadCheckSheet);
  app.get('/cars/:carId/file', carFilePage);
  app.post('/cars/:carId/road-check', recordWalk);
  app.post('/cars/:carId/road-check/take-back', takeBackWalk);
  app.post('/cars/:carId/road-check/links', lend);
  app.post('/cars/:carId/road-check/links/:linkId/end', endLink);

  app.get('/parts/:partId', partPage);
  app.get('/parts/:partId/date', datePartPage);
  app.post('/parts/:partId/date', recordDate);
  app.get('/parts/:partId/renew', renewPage);
  app.post('/parts/:partId/renew', renew);
  app.post('/parts/:partId/looked', looked);
  app.post('/parts/:partId/retire', retire);
  app.post('/parts/:partId/reopen', unretire);
  app.post('/parts/:partId/claims/:claimId/withdraw', withdraw);
  app.post('/parts/:partId/readings/:readingId/withdraw', takeBackReading);
  app.post('/parts/:partId/details', saveDetails);

  app.get('/places', placesPage);
  app.get('/places/new', newPlace);
  app.post('/places', savePlace);
  app.get('/places/:placeId', placePage);
  app.post('/places/:placeId', savePlace);
  app.post('/places/:placeId/forget', forgetPlace);

  app.get('/lay-ups', layUpsPage);
  app.get('/lay-ups/new', newLayUp);
  app.post('/lay-ups', addLayUp);
  app.get('/lay-ups/:layUpId', layUpPage);
  app.get('/lay-ups/:layUpId/change', changeLayUpPage);
  app.post('/lay-ups/:layUpId/change', changeLayUp);
  app.post('/lay-ups/:layUpId/seen', seen);
  app.get('/lay-ups/:layUpId/sides', sidesPage);
  app.post('/lay-ups/:layUpId/sides', takeSide);
  app.post('/lay-ups/:layUpId/own', addOwn);
  app.post('/lay-ups/:layUpId/own/:step/remove', removeOwn);
  app.get('/lay-ups/:layUpId/wake-up', wakeUpPage);
  for (const plan of ['steps', 'wake-up']) {
    app.get(`/lay-ups/:layUpId/${plan}/:step`, stepPage);
    app.post(`/lay-ups/:layUpId/${plan}/:step/done`, tickStepPage);
    app.post(`/lay-ups/:layUpId/${plan}/:step/skip`, skip);
    app.post(`/lay-ups/:layUpId/${plan}/:step/untick`, untick);
  }
  app.get('/lay-ups/:layUpId/round', roundOfStay);
  app.post('/lay-ups/:layUpId/round', makeRoundPage);
  app.post('/lay-ups/:layUpId/rounds/:roundId/withdraw', takeBackRound);
  app.get('/lay-ups/:layUpId/sheets/:sheet', sheetPage);
  app.get('/lay-ups/:layUpId/close', closePage);
  app.post('/lay-ups/:layUpId/close', closeStay);
  app.post('/lay-ups/:layUpId/reopen', reopen);

  app.get('/revivals', revivalsPage);
  app.get('/revivals/new', newRevival);
  app.post('/revivals', addRevival);
  app.get('/revivals/:revivalId', revivalPage);
  app.get('/revivals/:revivalId/change', changeRevivalPage);
  app.post('/revivals/:revivalId/change', changeRevival);
  app.get('/revivals/:revivalId/survey', surveyPage);
  app.post('/revivals/:revivalId/survey', recordSurveyPage);
  app.get('/revivals/:revivalId/verdict', verdictPage);
  app.post('/revivals/:revivalId/take-on', takeOnPage);
  app.get('/revivals/:revivalId/journal', journalPage);
  app.post('/revivals/:revivalId/stops/:stop', decideStopPage);
  app.get('/revivals/:revivalId/stages/:stage', stagePage);
  app.post('/revivals/:revivalId/stages/:stage/pass', passGatePage);
  app.get('/revivals/:revivalId/steps/:step', revivalStepPage);
  app.post('/revivals/:revivalId/steps/:step/done', tickPage);
  app.post('/revivals/:revivalId/steps/:step/leave-out', leaveOutPage);
  app.post('/revivals/:revivalId/steps/:step/take-back', takeBackPage);
  app.post('/revivals/:revivalId/steps/:step/run', recordRunPage);
  app.post('/revivals/:revivalId/steps/:step/leaks', recordLeaksPage);
  app.get('/revivals/:revivalId/sheets/:sheet', revivalSheetPage);
  app.get('/revivals/:revivalId/end', endPage);
  app.post('/revivals/:revivalId/end', endRevivalPage);
  app.post('/revivals/:revivalId/reopen', reopenPage);

  app.get('/year-ahead', yearAheadPage);
  app.get('/shopping', shoppingPage);

  app.get('/desks', desksPage);
  app.get('/desks/brake-fluid', brakeFluidDesk);
  app.get('/desks/coolant', coolantDesk);
  app.get('/desks/battery', batteryDesk);
  app.get('/desks/fuel', fuelDesk);
  app.get('/desks/rubber', rubberDesk);
  app.get('/date-codes', dateCodes);
  app.get('/practice', practice);
  app.get('/practice/:kind', kindPage);
  app.post('/practice/:kind', changeInterval);

  app.get('/letters', letters);
  app.post('/letters', writeLetters);
  app.post('/letters/test', sendTest);
  app.get('/letters/:letterId', letterPage);
  app.get('/letters/:letterId/html', letterHtmlPage);
  app.post('/letters/:letterId/seen', seenLetter);
  app.post('/letters/:letterId/retry', tryLetterAgain);
  app.get('/status', statusPage);

  app.get('/collection', collectionPage);
  app.post('/collection', saveCollection);
  app.get('/collection/money', moneyPage);
  app.post('/collection/money', saveMoney);
  app.post('/collections', newCollection);
  app.post('/members/:personId', saveMember);
  app.get('/members/:personId/letters', wishesPage);
  app.post('/members/:personId/letters', saveWishes);
  app.post('/members/:personId/calendar', saveCalendar);
  app.post('/members/:personId/calendar/end', endCalendar);
  app.post('/acting', actAs);
};
