import { beforeEach, describe, expect, it } from 'vitest';
import { WALK_KEYS } from '../../src/plans/walkround.ts';
import { openSite, type TestSite } from '../support/site.ts';

interface Gate {
  state: string;
  lacks: { key: string; words: string }[];
}
interface Revival {
  id: string;
  car: string;
  ours: boolean;
  spent: number;
  closedHow: string | null;
  stops: { key: string; decidedBy: string | null }[];
  stages: { key: string; gate: Gate; steps: { key: string; act: string; state: string; waits: { key: string }[] }[] }[];
}
interface Problem {
  status: number;
  detail: string;
  errors: { pointer: string }[];
}

let site: TestSite;
beforeEach(() => {
  site = openSite();
});

const send = async <T>(path: string, given: unknown, status = 200): Promise<T> => {
  const answer = await site.send('POST', `/api/v1${path}`, given);
  expect(answer.status, await answer.clone().text()).toBe(status);
  return (await answer.json()) as T;
};
const SLEEPER = {
  newCar: { name: 'Merle Tourer', built: '1967', quickStart: 'roadster-disc-drum-overdrive', ours: true },
  lastRan: '2004',
  lastRanBy: 'receipt',
  stood: ['damp'],
  ceiling: 50_000,
};
const begun = (more: object = {}): Promise<Revival> => send('/revivals', { ...SLEEPER, ...more }, 201);
const stage = (revival: Revival, key: string) => {
  const found = revival.stages.find((one) => one.key === key);
  if (!found) throw new Error(`no stage ${key}`);
  return found;
};
const step = (revival: Revival, key: string) =>
  revival.stages.flatMap(({ steps }) => steps).find((one) => one.key === key);

describe('a return to the road by API', () => {
  it('begins with what is known, and every gate is shut', async () => {
    const revival = await begun();
    expect(revival.stages.length).toBeGreaterThan(18);
    expect(new Set(revival.stages.map(({ gate }) => gate.state))).toEqual(new Set(['shut']));
    expect(step(revival, 'tank')?.act).toBe('renew');
    expect(step(revival, 'first-start')?.waits.map(({ key }) => key)).toContain('step:turn-by-hand');
  });

  it('asks which meaning an ambiguous date has, and says where', async () => {
    const problem = await send<Problem>('/revivals', { ...SLEEPER, newCar: undefined }, 422);
    expect(problem.errors[0]?.pointer).toBe('#/car');
    site = openSite();
    const { errors } = await send<Problem>('/revivals', { ...SLEEPER, lastRan: 'once upon a time' }, 422);
    expect(errors.map(({ pointer }) => pointer)).toEqual(['#/lastRan']);
  });

  it('takes one return of a car at a time', async () => {
    const { car } = await begun();
    const { detail } = await send<Problem>('/revivals', { car }, 422);
    expect(detail).toMatch(/on its way back already/);
  });

  it('ticks a step with its answers, its money and its records', async () => {
    const { id } = await begun();
    const refused = await send<Problem>(`/revivals/${id}/steps/title/done`, {}, 422);
    expect(refused.errors[0]?.pointer).toBe('#/title');
    const after = await send<Revival>(`/revivals/${id}/steps/title/done`, {
      looks: { title: 'in hand' },
      cost: 20,
      hours: 1,
    });
    expect(step(after, 'title')?.state).toBe('done');
    expect(after.spent).toBe(20);
    const again = await send<Problem>(`/revivals/${id}/steps/title/done`, { looks: { title: 'in hand' } }, 422);
    expect(again.detail).toMatch(/settled already/);
    const back = await send<Revival>(`/revivals/${id}/steps/title/take-back`, {});
    expect(step(back, 'title')?.state).toBe('open');
    expect(back.spent).toBe(0);
  });

  it('refuses a step before what it rests on, unless somebody writes why', async () => {
    const { id } = await begun();
    const looks = { 'oil-pressure': 4, knock: 'none' };
    const refused = await send<Problem>(`/revivals/${id}/steps/first-start/done`, { looks }, 422);
    expect(refused.errors.map(({ pointer }) => pointer)).toEqual(['#/despite']);
    expect(refused.detail).toMatch(/Turn it by hand.*the gate of Fuel/);
    const after = await send<Revival>(`/revivals/${id}/steps/first-start/done`, {
      looks,
      despite: 'It was running when it came here',
    });
    expect(step(after, 'first-start')?.state).toBe('done');
    expect(stage(after, 'first-start').gate.state).toBe('shut');
  });

  it('judges a measured number by its band', async () => {
    const { id } = await begun();
    const { stages } = await send<Revival>(`/revivals/${id}/looks`, { looks: { 'oil-pressure': 14 } });
    expect(stages.flatMap(({ steps }) => steps).map(({ key }) => key)).toContain('no-pressure');
    const refused = await send<Problem>(
      `/revivals/${id}/looks`,
      { looks: { 'oil-pressure': 500, 'no such look': 'x' } },
      422,
    );
    expect(refused.errors.map(({ pointer }) => pointer)).toEqual(['#/oil-pressure']);
  });

  it('passes a gate in writing only with a name and a reason, and keeps what lacked', async () => {
    const { id } = await begun();
    const shut = await send<Problem>(`/revivals/${id}/gates/papers/pass`, {}, 422);
    expect(shut.detail).toMatch(/Papers: not answered yet/);
    const unsigned = await send<Problem>(`/revivals/${id}/gates/papers/pass`, { inWriting: true, note: 'no' }, 422);
    expect(unsigned.errors.map(({ pointer }) => pointer)).toEqual(['#/by', '#/note']);
    const passed = await send<Revival>(`/revivals/${id}/gates/papers/pass`, {
      inWriting: true,
      by: 'Ada',
      note: 'Registry is closed until May.',
    });
    expect(stage(passed, 'papers').gate.state).toBe('in writing');
    expect(stage(passed, 'evidence').gate.lacks.map(({ key }) => key)).not.toContain('look:title');
  });

  it('stops for missing papers until somebody decides', async () => {
    const { id } = await begun();
    const stopped = await send<Revival>(`/revivals/${id}/looks`, { looks: { title: 'unclear' } });
    expect(stopped.stops).toMatchObject([{ key: 'title', decidedBy: null }]);
    const decided = await send<Revival>(`/revivals/${id}/stops/title/decide`, {
      by: 'Ada',
      note: 'For parts only, whatever comes.',
    });
    expect(decided.stops).toMatchObject([{ key: 'title', decidedBy: 'Ada' }]);
  });

  it('stops where even the lowest figures pass the ceiling, and asks for a new one', async () => {
    const { id, stops } = await begun({ ceiling: 500 });
    expect(stops.map(({ key }) => key)).toEqual(['ceiling']);
    const low = await send<Problem>(
      `/revivals/${id}/stops/ceiling/decide`,
      { by: 'Ada', note: 'It was my father’s.', ceiling: 600 },
      422,
    );
    expect(low.errors.map(({ pointer }) => pointer)).toEqual(['#/ceiling']);
    const decided = await send<Revival>(`/revivals/${id}/stops/ceiling/decide`, {
      by: 'Ada',
      note: 'It was my father’s.',
      ceiling: 60_000,
    });
    expect(decided.stops).toEqual([]);
  });

  it('is no car of ours while it is only looked at', async () => {
    const { id, ours, car } = await begun({ newCar: { ...SLEEPER.newCar, ours: false } });
    expect(ours).toBe(false);
    expect(await (await site.get('/')).text()).not.toContain('Merle Tourer');
    expect(await (await site.get('/year-ahead')).text()).not.toContain('Merle Tourer');
    expect((await send<Revival>(`/revivals/${id}/take-on`, {})).ours).toBe(true);
    expect(await (await site.get('/')).text()).toContain(`/cars/${car}`);
  });

  it('ends on the road only with its gates passed, or with a reason; then it stays as it is', async () => {
    const { id } = await begun();
    const refused = await send<Problem>(`/revivals/${id}/end`, { how: 'on the road' }, 422);
    expect(refused.errors.map(({ pointer }) => pointer)).toEqual(['#/despite']);
    expect((await send<Revival>(`/revivals/${id}/end`, { how: 'given up' })).closedHow).toBe('given up');
    const late = await send<Problem>(`/revivals/${id}/looks`, { looks: { floor: 'sound' } }, 422);
    expect(late.detail).toMatch(/ended on/);
    expect((await send<Revival>(`/revivals/${id}/reopen`, {})).closedHow).toBeNull();
  });

  it('belongs to its collection', async () => {
    const { id } = await begun();
    await site.post('/collections', { name: 'Another', timeZone: 'Europe/Lisbon' });
    const other = site.store.$client
      .prepare("select id from collections where name = 'Another'")
      .pluck()
      .get() as string;
    expect((await site.get(`/api/v1/revivals/${id}?collection=${other}`)).status).toBe(404);
    expect((await site.get(`/revivals/${id}?collection=${other}`)).status).toBe(404);
  });
});

describe('the road check by API', () => {
  interface Check {
    answer: string;
    against: { words: string }[];
    unchecked: { words: string }[];
    walkedBy: string | null;
  }

  it('is no until somebody has looked, and no further than the records allow', async () => {
    const { car } = await begun();
    const before = (await (await site.get(`/api/v1/cars/${car}/road-check`)).json()) as Check;
    expect(before).toMatchObject({ answer: 'no', walkedBy: null });
    expect(before.unchecked.map(({ words }) => words)).toContain('Brake pedal: not looked at today.');
    const answers = Object.fromEntries(WALK_KEYS.map((key) => [key, 'well']));
    const after = await send<Check>(`/cars/${car}/road-check`, { by: 'Nell', answers });
    expect(after).toMatchObject({ answer: 'no', walkedBy: 'Nell', unchecked: [] });
    expect(after.against.map(({ words }) => words)).toContain('Gate of Brakes: not passed on its return to the road.');
  });
});
