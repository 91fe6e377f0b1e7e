/** A return to the road made through the forms people use, with its sheets. */
import type { IntakeGiven } from '../../src/acts/begin-revival.ts';
import { openSite, type TestSite } from './site.ts';

type Form = Record<string, string | string[]>;

export interface Sleeper {
  site: TestSite;
  id: string;
  carId: string;
  post(path: string, form: Form): Promise<void>;
  /** Ticks a step done, though others come before it. */
  tick(step: string, form?: Form): Promise<void>;
  /** Passes a gate in writing. */
  passInWriting(stage: string, reason: string): Promise<void>;
  path(sheet: string, more?: string): string;
  get(sheet: string, more?: string): Promise<string>;
  file(more?: string): Promise<string>;
}

interface Given {
  site?: TestSite;
  base?: string;
  name?: string;
  start?: string;
  intake?: Form;
  /** Answers of the first look, by look. */
  looks?: Record<string, string>;
}

export const openSleeper = async ({
  site = openSite(),
  base = '',
  name = 'Quillon Sedan',
  start = 'sedan-drums-all-round',
  intake = {},
  looks = {},
}: Given = {}): Promise<Sleeper> => {
  const send = async (path: string, form: Form): Promise<string> => {
    const answer = await site.post(`${base}${path}`, form);
    if (answer.status !== 303)
      throw new Error(`${path}: ${answer.status} ${(await answer.text()).replace(/<[^>]*>/g, ' ')}`);
    return answer.headers.get('location') ?? '';
  };
  const begun = await send('/revivals', {
    name,
    built: '1959',
    start,
    ours: 'ours',
    lastRan: '2004',
    stood: ['damp'],
    ...intake,
  });
  const id = /revivals\/([^/]+)\//.exec(begun)?.[1] ?? '';
  const carId = site.store.$client.prepare('select car_id from revivals where id = ?').pluck().get(id) as string;
  const post = async (path: string, form: Form): Promise<void> => {
    await send(`/revivals/${id}${path}`, form);
  };
  if (Object.keys(looks).length > 0)
    await post('/survey', Object.fromEntries(Object.entries(looks).map(([look, is]) => [`look.${look}`, is])));
  const path = (sheet: string, more = ''): string => `${base}/revivals/${id}/sheets/${sheet}${more && `?${more}`}`;
  const read = async (address: string): Promise<string> => (await site.get(address)).text();
  return {
    site,
    id,
    carId,
    post,
    tick: (step, form = {}) => post(`/steps/${step}/done`, { despite: 'it was at hand', ...form }),
    passInWriting: (stage, reason) => post(`/stages/${stage}/pass`, { by: 'Ada', note: reason, writing: 'on' }),
    path,
    get: (sheet, more) => read(path(sheet, more)),
    file: (more = '') => read(`${base}/cars/${carId}/file${more && `?${more}`}`),
  };
};

/** What an intake says where nobody knows much. */
export const INTAKE: Omit<IntakeGiven, 'car'> = {
  lastRan: '2004',
  lastRanBy: 'receipt',
  why: 'unknown',
  whyWords: '',
  whyBy: 'own memory',
  stood: [],
  putAway: 'unknown',
  putAwayBy: 'own memory',
  ceiling: '',
  hands: 'both',
  note: '',
  km: null,
};
