/** The API of a test site, asked the way programs do. */
import { expect } from 'vitest';
import type { TestSite } from './site.ts';

export interface Problem {
  type: string;
  title: string;
  status: number;
  detail?: string;
  code?: string;
  errors?: { pointer: string; detail: string; choices?: { value: string; label: string }[] }[];
}

/** The document an answer carries; it must be JSON and of the status wanted. */
export const document = async <T>(answer: Response, status = 200): Promise<T> => {
  const text = await answer.text();
  expect(answer.status, text).toBe(status);
  expect(answer.headers.get('content-type')).toContain('application/json');
  return JSON.parse(text) as T;
};

/** The problem an answer is, with the headers and members RFC 9457 wants. */
export const problemOf = async (answer: Response, status: number): Promise<Problem> => {
  const text = await answer.text();
  expect(answer.status, text).toBe(status);
  expect(answer.headers.get('content-type')).toBe('application/problem+json');
  const problem = JSON.parse(text) as Problem;
  expect(problem).toMatchObject({ type: 'about:blank', status });
  expect(problem.title).not.toBe('');
  return problem;
};

export const pointers = ({ errors = [] }: Problem): string[] => errors.map(({ pointer }) => pointer);

export interface CarDocument {
  id: string;
  name: string;
  built: { typed: string; edtf: string | null; from: string | null; to: string | null };
  traits: string[];
  note: string;
  odometer: { day: string; km: number }[];
  place: string | null;
}
export interface PartDocument {
  id: string;
  carId: string;
  kind: string;
  position: string | null;
  note: string;
  closedOn: string | null;
  closedWhy: string | null;
  replaces: string | null;
  dates: { clock: string; said: string; typed: string; edtf: string | null; from: string | null; to: string | null }[];
  details: Record<string, string | number>;
  readings: ReadingDocument[];
}
interface ReadingDocument {
  id: string;
  gauge: string;
  day: string;
  value: number;
  unit: string;
  typed: string;
  typedUnit: string;
  warmth: number | null;
  instrument: string;
  note: string;
  recordedOn: string;
  verdict: string | null;
  wants: string | null;
}

export const ROADSTER_DOCUMENT = {
  name: 'Merle Tourer',
  built: 'June 1967',
  quickStart: 'roadster-disc-drum-overdrive',
};

/** A car made through the API, and a way to its parts. */
export const apiCar = async (site: TestSite) => {
  const car = await document<CarDocument>(await site.send('POST', '/api/v1/cars', ROADSTER_DOCUMENT), 201);
  const parts = async () =>
    (await document<{ parts: PartDocument[] }>(await site.get(`/api/v1/cars/${car.id}/parts`))).parts;
  const part = async (kind: string, position: string | null = null): Promise<PartDocument> => {
    const found = (await parts()).find((one) => one.kind === kind && one.position === position);
    if (!found) throw new Error(`The car has no ${kind}`);
    return found;
  };
  return { car, parts, part };
};
