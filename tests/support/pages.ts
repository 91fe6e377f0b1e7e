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

/** A car with a brake fluid of 1 December 2024 (due on the site's day), a tire of 2018 (to look at) and an open list. */
export const openFullSite = async (options: Parameters<typeof openSite>[0] = {}): Promise<FullSite> => {
  const site = openSite(options);
  const base = options.baseUrl ? new URL(options.baseUrl).pathname.replace(/\/$/, '') : '';
  const barn = barnOf(site);
  const carId = carIn(barn, { name: 'Merle <Tourer>', km: 87_400 });
  const fluidId = date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
  const tireId = date(barn, carId, 'tires-road', claim('made', '2318', { evidence: 'read on the part' }), 'front left');
  const waitingId = partOf(barn, carId, 'wiring').id;
  await site.post(`${base}/letters`, {});
  const letterId = site.store.$client.prepare('select id from letters').pluck().get() as string;
  const paths = {
    'the line-up': '/',
    'a new car': '/cars/new',
    'a car': `/cars/${carId}`,
    'changing a car': `/cars/${carId}/change`,
    'a new part': `/cars/${carId}/parts/new`,
    'a part': `/parts/${tireId}`,
    'a part without a date': `/parts/${waitingId}`,
    'dating a tire': `/parts/${tireId}/date`,
    'dating in a round': `/parts/${waitingId}/date?round=1&done=${fluidId}`,
    'renewing a part': `/parts/${fluidId}/renew`,
    'date codes': '/date-codes',
    'date codes read': '/date-codes?fl=2318&fr=417&rl=4B7+C2DE1F&mark=battery&typed=C7',
    practice: '/practice',
    'a kind': '/practice/brake-fluid-glycol',
    'a kind for a car': `/practice/brake-fluid-glycol?car=${carId}`,
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
