/** A stay with its sheets: a car put away by the acts people use, ticked and rounded as the test says. */
import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import { type LayUpGiven, startLayUp } from '../../src/acts/lay-up.ts';
import { makeRound } from '../../src/acts/make-round.ts';
import { addPlaceAct } from '../../src/acts/places.ts';
import { type StayHere, stayHere } from '../../src/acts/stays.ts';
import { skipStep, stepIn, tickDone } from '../../src/acts/tick.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { PlanName } from '../../src/plans/plan.ts';
import { type Barn, barnOf, carIn, carOf, must, traitsOf } from './cars.ts';
import { typed } from './readings.ts';
import { openSite, type TestSite } from './site.ts';

const NOT_TOLD = { storageFrom: '', roadUntil: '', noticeFrom: '', renewsOn: '', rules: '' };

const GARAGE = {
  name: 'Mill Lane garage',
  winterLow: '-12',
  summerHigh: '31',
  air: 'inland',
  shelter: 'unheated',
  humidity: '',
  heatedTo: '',
  hemisphere: 'north',
  months: Array<string>(12).fill(''),
  unit: '°C',
  note: '',
};

export interface SheetStay {
  site: TestSite;
  barn: Barn;
  carId: string;
  id: string;
  here(on: CivilDate): StayHere;
  tick(step: string, day: CivilDate, more?: { plan?: PlanName; note?: string; read?: Record<string, string> }): void;
  skip(step: string, day: CivilDate, reason: string): void;
  /** A round with its answers, and readings as kind, gauge and text. */
  round(day: CivilDate, answers: Record<string, string>, read?: [string, string, string][], note?: string): void;
  path(sheet: string, more?: string): string;
  get(sheet: string, more?: string): Promise<string>;
}

interface Given {
  site?: TestSite;
  base?: string;
  start?: Parameters<typeof traitsOf>[0];
  more?: readonly string[];
  name?: string;
  place?: boolean;
  today?: CivilDate;
  layUp?: Partial<LayUpGiven>;
}

export const openStay = ({
  site = openSite(),
  base = '',
  start = 'roadster-disc-drum-overdrive',
  more = [],
  name = 'Merle Tourer',
  place = true,
  today = '2026-09-01',
  layUp = {},
}: Given = {}): SheetStay => {
  const barn = barnOf(site);
  const { store } = site;
  const acting = (on: CivilDate) => ({ ...barn.acting, today: on });
  const carId = carIn(barn, { name, traits: [...traitsOf(start), ...more] });
  const placeId = place ? must(addPlaceAct(store, barn.acting, GARAGE)) : '';
  const id = must(
    startLayUp(
      store,
      acting(today),
      carOf(barn, carId),
      {
        parkedOn: '2026-11-01',
        returnOn: '2027-04-01',
        place: placeId,
        visitor: '',
        phone: '',
        circumstances: [],
        numbers: { dose: '', engine: '', cylinders: '' },
        papers: NOT_TOLD,
        note: '',
        ...layUp,
      },
      '',
    ),
  );
  const here = (on: CivilDate): StayHere => {
    const found = stayHere(store, barn.acting.collectionId, id, on);
    if (!found) throw new Error('no such stay');
    return found;
  };
  const stepOf = (plan: PlanName, key: string, on: CivilDate) => {
    const step = stepIn(here(on).view, plan, key);
    if (!step) throw new Error(`no step ${key} in the ${plan}`);
    return step;
  };
  /** Readings by kind and gauge, of every part of the kind. */
  const readings = (day: CivilDate, read: readonly [string, string, string][]) =>
    read.flatMap(([kind, gauge, text]) =>
      carOf(barn, carId)
        .parts.filter((part) => part.kind === kind)
        .map((part) => typed(part.id, gauge, text, { day, sure: true })),
    );
  const path = (sheet: string, rest = ''): string => `${base}/lay-ups/${id}/sheets/${sheet}${rest && `?${rest}`}`;
  return {
    site,
    barn,
    carId,
    id,
    here,
    tick: (step, day, { plan = 'lay-up', note = '', read = {} } = {}) => {
      must(
        tickDone(
          store,
          acting(day),
          here(day),
          stepOf(plan, step, day),
          plan,
          {
            day,
            note,
            cost: '',
            evidence: 'receipt',
            km: null,
            effects: [],
            answers: {},
            readings: readings(
              day,
              Object.entries(read).map(([at, text]) => [...(at.split('.') as [string, string]), text]),
            ),
          },
          ({ gauge }) => gauge,
        ),
      );
    },
    skip: (step, day, reason) => {
      must(skipStep(store, acting(day), here(day), stepOf('lay-up', step, day), 'lay-up', reason));
    },
    round: (day, answers, read = [], note = '') => {
      must(
        makeRound(
          store,
          acting(day),
          here(day),
          { day, note, answers, readings: readings(day, read) },
          ({ gauge }) => gauge,
        ),
      );
    },
    path,
    get: async (sheet, rest) => (await site.get(path(sheet, rest))).text(),
  };
};

/** The site on a port of its own, for a browser. */
export const serveSite = async (site: TestSite): Promise<{ url: string; stop(): void }> => {
  const server = serve({
    port: 0,
    hostname: '127.0.0.1',
    fetch: (request: Request) => {
      const { pathname, search } = new URL(request.url);
      return site.raw(`${pathname}${search}`, {});
    },
  });
  if (!server.listening) await new Promise((resolve) => server.once('listening', resolve));
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, stop: () => server.close() };
};
