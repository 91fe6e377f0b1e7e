/** A site with something on each of its pages, and where they are. */
import { type Barn, barnOf, carIn, claim, date, partOf } from './cars.ts';
import { openSite, type TestSite } from './site.ts';

export interface FullSite {
  site: TestSite;
  barn: Barn;
  carId: string;
  tireId: string;
  fluidId: string;
  /** Every page, by what it shows. */
  pages: Record<string, string>;
}

/** As the form of a new place sends it. */
const BARN_PLACE = {
  name: 'Barn of the <Tourer>',
  shelter: 'unheated',
  air: 'inland',
  degrees: '°C',
  winterLow: '-12',
  summerHigh: '33',
  hemisphere: 'north',
};

/** The desks with enough told to answer. */
export const DESKS_ANSWERED = {
  'the brake fluid desk': '/desks/brake-fluid?grade=dot-4&filled=June+2024&boiling=200&limit=356&limit-unit=%C2%B0F',
  'the coolant desk': '/desks/coolant?glycol=ethylene&strength=40&night=-20&volume=8&wanted=50&concentrate=100',
  'the battery desk': '/desks/battery?chemistry=antimony&capacity=60&charge=95&drain=30&low=-10&high=30',
  'the fuel desk': '/desks/fuel?blend=e10&bought=June+2026&tank=50&fullness=60&low=-10&high=30',
  'the rubber desk': '/desks/rubber?rubber=EPDM&made=July+2019&low=-10&high=30',
} as const;

/** A car with a brake fluid of 1 December 2024 (due on the site's day), a tire of 2018 (to look at) and an open list. */
export const openFullSite = async (options: Parameters<typeof openSite>[0] = {}): Promise<FullSite> => {
  const site = openSite(options);
  const base = options.baseUrl ? new URL(options.baseUrl).pathname.replace(/\/$/, '') : '';
  const barn = barnOf(site);
  const carId = carIn(barn, { name: 'Merle <Tourer>', km: 87_400 });
  const fluidId = date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
  const tireId = date(barn, carId, 'tires-road', claim('made', '2318', { evidence: 'read on the part' }), 'front left');
  const waitingId = partOf(barn, carId, 'wiring').id;
  const battery = partOf(barn, carId, 'battery-flooded').id;
  const readings = { [`${battery}.rest-voltage.typed`]: '12.31', note: 'After a <Tourer>’s week' };
  await site.post(`${base}/cars/${carId}/readings`, readings);
  await site.post(`${base}/places`, { ...BARN_PLACE });
  const placeId = site.store.$client.prepare('select id from places').pluck().get() as string;
  await site.post(`${base}/cars/${carId}/place`, { place: placeId });
  await site.post(`${base}/letters`, {});
  const letterId = site.store.$client.prepare('select id from letters').pluck().get() as string;
  const note = 'Key at the <Tourer>’s gate';
  await site.post(`${base}/lay-ups`, { car: carId, parkedOn: '2026-12-15', place: placeId, note });
  const layUpId = site.store.$client.prepare('select id from lay_ups').pluck().get() as string;
  await site.post(`${base}/revivals`, {
    name: 'Sleeper of the <Tourer>',
    built: '1961',
    start: 'roadster-disc-drum-overdrive',
    ours: 'looking',
    lastRan: 'about 2010',
    whyWords: 'A <Tourer> broke down',
  });
  const revivalId = site.store.$client.prepare('select id from revivals').pluck().get() as string;
  await site.post(`${base}/revivals/${revivalId}/survey`, {
    'look.title': 'unclear',
    'look.fuel-smell': 'varnish',
    note: 'Smells of <Tourer>',
  });
  const paths = {
    'the line-up': '/',
    'a new car': '/cars/new',
    'a car': `/cars/${carId}`,
    'the round of a car': `/cars/${carId}/readings`,
    'changing a car': `/cars/${carId}/change`,
    'a new part': `/cars/${carId}/parts/new`,
    'a part': `/parts/${tireId}`,
    'a part without a date': `/parts/${waitingId}`,
    'a part with readings': `/parts/${battery}`,
    'dating a tire': `/parts/${tireId}/date`,
    'dating in a round': `/parts/${waitingId}/date?round=1&done=${fluidId}`,
    'renewing a part': `/parts/${fluidId}/renew`,
    'date codes': '/date-codes',
    'date codes read': '/date-codes?fl=2318&fr=417&rl=4B7+C2DE1F&mark=battery&typed=C7',
    places: '/places',
    'a new place': '/places/new',
    'a place': `/places/${placeId}`,
    desks: '/desks',
    ...DESKS_ANSWERED,
    practice: '/practice',
    'a kind': '/practice/brake-fluid-glycol',
    'a kind for a car': `/practice/brake-fluid-glycol?car=${carId}`,
    'lay-ups': '/lay-ups',
    'a new lay-up': `/lay-ups/new?car=${carId}`,
    'a lay-up': `/lay-ups/${layUpId}`,
    'the sides of a lay-up': `/lay-ups/${layUpId}/sides`,
    'changing a lay-up': `/lay-ups/${layUpId}/change`,
    'a step': `/lay-ups/${layUpId}/steps/oil-change`,
    'the way back': `/lay-ups/${layUpId}/wake-up`,
    'a step of the way back': `/lay-ups/${layUpId}/wake-up/battery`,
    'a round': `/lay-ups/${layUpId}/round`,
    'closing a lay-up': `/lay-ups/${layUpId}/close`,
    revivals: '/revivals',
    'a new revival': '/revivals/new',
    'a revival': `/revivals/${revivalId}`,
    'changing a revival': `/revivals/${revivalId}/change`,
    'a first look': `/revivals/${revivalId}/survey`,
    'a verdict': `/revivals/${revivalId}/verdict`,
    'a stage': `/revivals/${revivalId}/stages/fuel`,
    'a step of a return': `/revivals/${revivalId}/steps/tank`,
    'a road test': `/revivals/${revivalId}/steps/run-b`,
    'a leak survey': `/revivals/${revivalId}/steps/leaks-1-hot`,
    'a journal': `/revivals/${revivalId}/journal`,
    'ending a revival': `/revivals/${revivalId}/end`,
    'a road check': `/cars/${carId}/road-check`,
    'the year ahead': '/year-ahead',
    shopping: '/shopping',
    money: '/collection/money',
    letters: '/letters',
    'letters just written': '/letters?outcome=written',
    'a letter': `/letters/${letterId}`,
    'the collection': '/collection',
  };
  const pages = Object.fromEntries(Object.entries(paths).map(([name, path]) => [name, `${base}${path}`]));
  return { site, barn, carId, tireId, fluidId, pages };
};

/** An address with the day it is seen as on. */
export const onDay = (path: string, day: string): string => `${path}${path.includes('?') ? '&' : '?'}on=${day}`;
