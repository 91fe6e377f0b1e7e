import { describe, expect, it } from 'vitest';
import { LOOKS } from '../../src/plans/looks.ts';
import { NO_PAPERS } from '../../src/plans/stay.ts';
import { TOPICS } from '../../src/plans/topics.ts';
import { addLayUp } from '../../src/store/lay-ups.ts';
import { addMember } from '../../src/store/people.ts';
import { addPlace } from '../../src/store/places.ts';
import { apiCar, type CarDocument, document, type PartDocument, pointers, problemOf } from '../support/api.ts';
import { type Barn, carIn, openBarn } from '../support/cars.ts';
import { FROSTY } from '../support/readings.ts';
import { openSite } from '../support/site.ts';

const NO_ID = '01900000-0000-7000-8000-000000000000';
const BARN = { name: 'Barn', winterLow: -12, summerHigh: 33, air: 'inland', shelter: 'unheated' };
/** The site's day is 25 November 2026. */
const AHEAD = { parkedOn: '2026-12-20', returnOn: '2027-04-20' };
const STANDING = { parkedOn: '2026-09-20', returnOn: '2027-04-20' };

interface Step {
  key: string;
  phase: string;
  day: string;
  title: string;
  because: string[];
  figures: { what: string; amount: { low: number; high: number } | null; unit: string; text: string }[];
  topic: { key: string; side: string; sides: { key: string }[] } | null;
  records: { effects: { key: string; does: string; part: string }[]; reads: { part: string; gauge: string }[] };
  cautions: string[];
  sources: { title: string; grade: string }[];
  tick: { state: string; day: string; by: string; note: string; cost: number | null } | null;
}
interface Plan {
  steps: Step[];
  supplies: string[];
}
interface LayUp {
  id: string;
  state: string;
  place: string | null;
  note: string;
  pattern: boolean;
  closedOn: string | null;
  choices: Record<string, string>;
  changes: string[];
  plan: Plan;
  wakeUp: Plan;
  roadCheck: { answer: string; unchecked: { part: string }[] } | null;
  looks: string[];
  rounds: { month: number; due: string; state: string; made: { id: string } | null }[];
  found: { look: string; answer: string; verdict: string; todo: string | null }[];
  warnings: { key: string; title: string; cautions: string[] }[];
}
interface Listed {
  open: { id: string; state: string; nextRound: unknown; missed: number }[];
  past: { id: string; state: string; closedOn: string | null }[];
}

const stepOf = ({ steps }: Plan, key: string): Step => {
  const found = steps.find((step) => step.key === key);
  if (!found) throw new Error(`There is no step ${key}`);
  return found;
};

/** A car on a site, and ways to put it away. */
const open = async () => {
  const site = openSite();
  const { car, part, parts } = await apiCar(site);
  const add = (given: object, query = '') => site.send('POST', `/api/v1/lay-ups${query}`, { car: car.id, ...given });
  const added = async (given: object, query = '') => document<LayUp>(await add(given, query), 201);
  const list = async (query = '') => document<Listed>(await site.get(`/api/v1/lay-ups${query}`));
  const letters = () => site.store.$client.prepare('select kind, recipient, day from letters').all();
  const placed = async () => (await document<{ id: string }>(await site.send('POST', '/api/v1/places', BARN), 201)).id;
  return { site, car, part, parts, add, added, list, letters, placed };
};

/** A car put away, and ways to change that. */
const away = async (given: object = AHEAD) => {
  const here = await open();
  const { site } = here;
  const { id } = await here.added(given);
  const send = (method: string, path: string, sent: unknown = {}) =>
    site.send(method, `/api/v1/lay-ups/${id}${path}`, sent);
  const now = async (query = '') => document<LayUp>(await site.get(`/api/v1/lay-ups/${id}${query}`));
  const tick = (sent: object, query = '') => send('POST', `/ticks${query}`, { plan: 'lay-up', state: 'done', ...sent });
  return { ...here, id, send, now, tick };
};

describe('POST /lay-ups', () => {
  it('makes a plan, answers it whole, says where it is, and writes its letter', async () => {
    const { site, car, add, placed, letters } = await open();
    const place = await placed();
    const papers = { storageFrom: '2026-12-20', roadUntil: '2026-12-20', rules: 'Ask the registry' };
    const given = {
      ...AHEAD,
      place,
      visitor: site.personId,
      phone: '555 0100',
      circumstances: ['mice'],
      numbers: { dose: 30, cylinders: '4' },
      papers,
      note: 'Third bay',
    };
    const answer = await add(given);
    const location = answer.headers.get('location');
    const layUp = await document<LayUp>(answer, 201);
    expect(layUp).toMatchObject({
      ...given,
      car: { id: car.id, name: car.name },
      on: '2026-11-25',
      state: 'ahead',
      plannedUntil: '2027-04-20',
      numbers: { dose: 30, cylinders: 4 },
      papers: { ...papers, noticeFrom: null, renewsOn: null },
      choices: {},
      madeOn: '2026-11-25',
      closedOn: null,
      changes: [],
      roadCheck: null,
      looks: [],
      rounds: [],
      found: [],
      warnings: [],
    } satisfies Record<string, unknown> & { numbers: object });
    expect(location).toBe(`/api/v1/lay-ups/${layUp.id}`);
    expect(await document(await site.get(location ?? ''))).toEqual(layUp);
    expect(letters()).toEqual([{ kind: 'plan', recipient: 'ada@example.org', day: '2026-11-25' }]);
  });

  it('is enough with a car and a day, and is then open, with nobody’s word on its place', async () => {
    const { added } = await open();
    expect(await added({ parkedOn: '2026-11-25' })).toMatchObject({
      state: 'standing',
      returnOn: null,
      plannedUntil: '2027-11-25',
      place: null,
      visitor: null,
      numbers: {},
    });
  });

  it('puts a car that stands already where it is said to stand', async () => {
    const { site, car, added, placed } = await open();
    const place = await placed();
    await added({ ...STANDING, place });
    expect((await document<CarDocument>(await site.get(`/api/v1/cars/${car.id}`))).place).toBe(place);
  });

  it('begins like an earlier one, with its sides, own steps and what was left out', async () => {
    const { send, id, added, now } = await away(STANDING);
    await document(await send('POST', '/sides', { topic: 'cover', side: 'none' }));
    await document(await send('POST', '/steps', { title: 'Sing to it' }), 201);
    const skipped = { plan: 'lay-up', step: 'wax', state: 'skipped', note: 'Lacquer is new' };
    await document(await send('POST', '/ticks', skipped), 201);
    await document(await send('POST', '/close', { how: 'back' }));
    expect(await now()).toMatchObject({ state: 'back', pattern: true });
    const next = await added({ ...AHEAD, like: id });
    expect(next.choices).toEqual({ cover: 'none' });
    expect(next.plan.steps.map(({ title }) => title)).toContain('Sing to it');
    expect(stepOf(next.plan, 'wax').tick).toMatchObject({ state: 'skipped', note: 'As last time: Lacquer is new' });
  });

  it.each<[object, string[]]>([
    [{ parkedOn: undefined }, ['#/parkedOn']],
    [{ parkedOn: 'soon', returnOn: 3 }, ['#/parkedOn', '#/returnOn']],
    [{ parkedOn: '2031-01-01', returnOn: null }, ['#/parkedOn']],
    [{ returnOn: '2026-12-20' }, ['#/returnOn']],
    [{ place: NO_ID, visitor: NO_ID }, ['#/place', '#/visitor']],
    [{ place: 'barn' }, ['#/place']],
    [{ circumstances: ['mice', 'ghosts'] }, ['#/circumstances/1']],
    [
      { numbers: { dose: 900, engine: 'big', cylinders: 3.5 } },
      ['#/numbers/dose', '#/numbers/engine', '#/numbers/cylinders'],
    ],
    [{ papers: { storageFrom: 'May', renewsOn: '2026-02-30' } }, ['#/papers/storageFrom', '#/papers/renewsOn']],
    [{ car: NO_ID }, ['#/car']],
    [{ car: 'Merle' }, ['#/car']],
    [{ like: NO_ID }, ['#/like']],
  ])('of %j points at what is wrong, and keeps nothing', async (wrong, where) => {
    const { add, list, letters } = await open();
    expect(pointers(await problemOf(await add({ ...AHEAD, ...wrong }), 422))).toEqual(where);
    expect(await list()).toEqual({ open: [], past: [] });
    expect(letters()).toEqual([]);
  });

  it('is refused while another lay-up of the car is open', async () => {
    const { add } = await away();
    expect(pointers(await problemOf(await add({ parkedOn: '2027-10-01' }), 422))).toEqual(['#/car']);
  });
});

describe('GET /lay-ups', () => {
  it('lists open and past ones, as on a day, with the next round', async () => {
    const { list, id, car, send } = await away({ parkedOn: '2026-08-10' });
    const listed = {
      id,
      car: { id: car.id, name: car.name },
      parkedOn: '2026-08-10',
      returnOn: null,
      closedOn: null,
      state: 'standing',
      nextRound: { month: 3, due: '2026-11-10', state: 'due' },
      // Those of before it was made nobody was asked for.
      missed: 0,
    };
    expect(await list()).toEqual({ open: [listed], past: [] });
    expect(await list('?on=2026-11-24')).toEqual({ open: [], past: [] });
    await document(await send('POST', '/close?on=2027-01-05', { how: 'back' }));
    expect(await list()).toEqual({ open: [listed], past: [] });
    const over = { ...listed, state: 'back', closedOn: '2027-01-05', nextRound: null, missed: 0 };
    expect(await list('?on=2027-01-05')).toEqual({ open: [], past: [over] });
  });

  it('shows no other collection’s', async () => {
    const { site, id, list } = await away();
    const barn = openBarn(site.store, 'The shed');
    const query = `?collection=${barn.acting.collectionId}`;
    expect(await list(query)).toEqual({ open: [], past: [] });
    await problemOf(await site.get(`/api/v1/lay-ups/${id}${query}`), 404);
  });

  it('says where one is in the collection it was asked for', async () => {
    const { site } = await open();
    const barn = openBarn(site.store, 'The shed');
    const query = `?collection=${barn.acting.collectionId}`;
    const answer = await site.send('POST', `/api/v1/lay-ups${query}`, { car: carIn(barn), ...AHEAD });
    expect(answer.status).toBe(201);
    expect((await site.get(answer.headers.get('location') ?? '')).status).toBe(200);
  });
});

describe('GET /lay-ups/{id}', () => {
  it('has every step with its day, reasons, figures, sides, cautions and sources', async () => {
    const { site, part, now, placed, send } = await away();
    const { id } = await part('fuel-gasoline');
    await document(await site.send('PATCH', `/api/v1/parts/${id}`, { details: { tank: 50 } }));
    await document(await send('PATCH', '', { place: await placed(), numbers: { dose: 30 } }));
    const { plan, wakeUp } = await now();
    const fuel = plan.steps.find(({ topic }) => topic?.key === 'tank');
    expect(fuel?.topic).toMatchObject({
      side: 'full',
      sides: [{ key: 'full' }, { key: 'ethanol-free' }, { key: 'drained' }],
    });
    expect(fuel?.cautions[0]).toContain('Fuel vapor');
    expect(fuel?.sources[0]?.grade).not.toBe('');
    const figures = plan.steps.flatMap((step) => step.figures);
    expect(figures).toContainEqual(
      expect.objectContaining({
        what: 'Fill the tank to',
        amount: { low: 45, high: 48 },
        unit: 'L',
        text: 'Fill the tank to: 45 to 48 L',
      }),
    );
    for (const { amount } of figures) if (amount) expect(amount.low).toBeLessThanOrEqual(amount.high);
    const days = plan.steps.map(({ day }) => day);
    expect(days).toEqual(days.toSorted());
    expect(stepOf(plan, 'park').day).toBe('2026-12-20');
    expect(plan.supplies.length).toBeGreaterThan(0);
    expect(wakeUp.steps.length).toBeGreaterThan(10);
    expect(new Set(plan.steps.map(({ phase }) => phase))).toEqual(new Set(['settle', 'order', 'book', 'do', 'day']));
  });

  it('has what a round found against the road in the road check, until a better round', async () => {
    const { send, now } = await away(STANDING);
    await document(
      await send('POST', '/rounds', { day: '2026-11-20', answers: { smell: 'fuel', drips: 'spots' } }),
      201,
    );
    const { roadCheck } = await now();
    expect(roadCheck).toMatchObject({
      answer: 'no',
      found: [expect.stringMatching(/^[Ss]mell, inside and around it: fuel/)],
    });
    await document(await send('POST', '/rounds', { day: '2026-11-24', answers: { smell: 'none' } }), 201);
    expect((await now()).roadCheck).toMatchObject({ found: [] });
  });

  it('takes back with a tick what it said of the battery', async () => {
    const { site, car, tick, send } = await away(STANDING);
    await document(await tick({ step: 'battery-maintainer', day: '2026-09-20' }), 201);
    const connection = async () => {
      const answer = await site.get(`/api/v1/cars/${car.id}/parts`);
      const { parts } = await document<{ parts: { kind: string; details: Record<string, unknown> }[] }>(answer);
      return parts.find(({ kind }) => kind === 'battery-flooded')?.details['connection'];
    };
    expect(await connection()).toBe('maintainer');
    expect((await send('DELETE', '/ticks/lay-up/battery-maintainer')).ok).toBe(true);
    expect(await connection()).toBeUndefined();
  });

  it('is as on the day asked for: rounds and warnings come, and the road check', async () => {
    const { now } = await away();
    const later = await now('?on=2027-02-25');
    expect(later).toMatchObject({ on: '2027-02-25', state: 'standing' });
    expect(later.rounds.map(({ state }) => state)).toEqual(['missed', 'due', 'ahead']);
    expect(later.warnings.map(({ key }) => key)).toContain('battery-unread');
    expect(later.warnings[0]?.cautions[0]).toContain('hydrogen');
    expect(later.roadCheck).toMatchObject({ answer: 'no', found: [] });
    expect(later.looks).toEqual(expect.arrayContaining(['smell', 'mice', 'drips']));
    expect(later.looks).not.toContain('oil-smell');
  });

  it('tells what changed since it was looked at, until it was', async () => {
    const { now, send } = await away();
    await document(await send('PATCH', '', { returnOn: '2028-12-20' }));
    const { changes } = await now();
    expect(changes.length).toBeGreaterThan(0);
    expect(await document(await send('POST', '/seen'))).toMatchObject({ changes: [] });
    expect((await now()).changes).toEqual([]);
  });
});

describe('PATCH /lay-ups/{id}', () => {
  it('changes only what is named, and null forgets it', async () => {
    const { send, now, placed, site } = await away({
      ...AHEAD,
      numbers: { dose: 30, engine: 2 },
      circumstances: ['mice'],
    });
    const before = await now();
    const patch = async (given: object) => document<LayUp>(await send('PATCH', '', given));
    expect(await patch({})).toEqual(before);
    expect(await patch({ note: 'Under the blue cover' })).toEqual({ ...before, note: 'Under the blue cover' });
    const place = await placed();
    expect(await patch({ place, visitor: site.personId, phone: '555', numbers: { dose: null } })).toMatchObject({
      ...AHEAD,
      place,
      visitor: site.personId,
      phone: '555',
      circumstances: ['mice'],
      numbers: { engine: 2 },
      note: 'Under the blue cover',
    });
    expect((await now())['plan'].steps.length).toBeGreaterThan(0);
    const papers = { renewsOn: '2027-03-01', rules: 'None' };
    expect(await patch({ papers })).toMatchObject({ papers: { ...papers, storageFrom: null } });
    expect(await patch({ papers: { renewsOn: null } })).toMatchObject({ papers: { renewsOn: null, rules: 'None' } });
    expect(await patch({ returnOn: null, place: null, circumstances: [] })).toMatchObject({
      returnOn: null,
      place: null,
      circumstances: [],
    });
  });

  it('keeps what was ticked', async () => {
    const { send, tick } = await away();
    await document(await tick({ step: 'insurer', note: 'Policy 7' }), 201);
    const { plan } = await document<LayUp>(await send('PATCH', '', { returnOn: '2027-06-01' }));
    expect(stepOf(plan, 'insurer').tick).toMatchObject({ state: 'done', note: 'Policy 7', by: 'Ada', cost: null });
  });

  it.each<[object, string[]]>([
    [{ parkedOn: null }, ['#/parkedOn']],
    [{ returnOn: '2026-12-01' }, ['#/returnOn']],
    [{ place: NO_ID, numbers: { dose: 1 } }, ['#/place', '#/numbers/dose']],
    [{ papers: { noticeFrom: 5 } }, ['#/papers/noticeFrom']],
    [{ phone: 'x'.repeat(300) }, ['#/phone']],
  ])('of %j points at what is wrong, and changes nothing', async (wrong, where) => {
    const { send, now } = await away();
    const before = await now();
    expect(pointers(await problemOf(await send('PATCH', '', { note: 'New', ...wrong }), 422))).toEqual(where);
    expect(await now()).toEqual(before);
  });
});

describe('POST /lay-ups/{id}/ticks', () => {
  it('ticks a step, with what it cost and the car’s records with it', async () => {
    const { tick, part, id, site } = await away();
    const oil = await part('engine-oil');
    await document(
      await site.send('PATCH', `/api/v1/parts/${oil.id}`, { dates: [{ clock: 'filled', typed: '2024' }] }),
    );
    const given = {
      step: 'oil-change',
      day: '2026-11-20',
      note: 'Batch 12',
      cost: '45,50',
      evidence: 'receipt',
      odometer: 87400,
    };
    const layUp = await document<LayUp>(await tick(given), 201);
    expect(layUp.id).toBe(id);
    expect(stepOf(layUp.plan, 'oil-change').tick).toEqual({
      state: 'done',
      day: '2026-11-20',
      by: 'Ada',
      note: 'Batch 12',
      cost: 45.5,
    });
    const renewed = await part('engine-oil');
    expect(renewed).toMatchObject({
      replaces: oil.id,
      dates: [{ clock: 'filled', from: '2026-11-20', to: '2026-11-20' }],
    });
    // Nobody had dated the filter: it is that one, and now has its date.
    expect((await part('oil-filter')).dates).toMatchObject([{ from: '2026-11-20' }]);
  });

  it('leaves out the effects that are not named', async () => {
    const { tick, part, now } = await away();
    const filter = await part('oil-filter');
    const { records } = stepOf((await now()).plan, 'oil-change');
    expect(records.effects.map(({ does }) => does)).toEqual(['renews', 'renews']);
    const key = records.effects.find((effect) => effect.part === filter.id)?.key;
    await document(await tick({ step: 'oil-change', effects: [key] }), 201);
    expect((await part('oil-filter')).dates).toHaveLength(1);
    expect((await part('engine-oil')).dates).toEqual([]);
  });

  it('answers what becomes true by the step, and what is told of what is renewed', async () => {
    const { tick, part, now } = await away();
    const before = await part('fuel-gasoline');
    const step = (await now()).plan.steps.find(({ records }) => records.effects.some((one) => one.part === before.id));
    const answers = { [before.id]: { blend: 'e10', tank: 50 } };
    await document(await tick({ step: step?.key, answers }), 201);
    const { details } = await part('fuel-gasoline');
    expect(details).toMatchObject({ blend: 'e10', tank: 50 });
    expect(Object.keys(details).length).toBeGreaterThan(2);
  });

  it('keeps readings with it, of its day', async () => {
    const { tick, part, now } = await away({ ...AHEAD, parkedOn: '2026-11-24' });
    const { records } = stepOf((await now()).plan, 'pressure');
    expect(records.reads).toHaveLength(4);
    const readings = records.reads.map((one, index) => ({ ...one, value: 2.5 + index / 10, unit: 'bar' }));
    await document(await tick({ step: 'pressure', day: '2026-11-24', readings }), 201);
    const tire = (await part('tires-road', 'front left')).readings;
    expect(tire).toMatchObject([{ gauge: 'cold-pressure', day: '2026-11-24', unit: 'bar' }]);
  });

  it('leaves a step out for a reason', async () => {
    const { tick } = await away();
    const given = { step: 'wax', state: 'skipped', note: 'Lacquer is new' };
    const { plan } = await document<LayUp>(await tick(given), 201);
    expect(stepOf(plan, 'wax').tick).toMatchObject({ state: 'skipped', note: 'Lacquer is new', day: '2026-11-25' });
  });

  it('ticks steps of the way back, and own ones', async () => {
    const { send, now, tick } = await away(STANDING);
    const { plan } = await document<LayUp>(await send('POST', '/steps', { title: 'Sing to it', days: 3 }), 201);
    const own = plan.steps.find(({ phase }) => phase === 'own');
    expect(own).toMatchObject({ title: 'Sing to it', day: '2026-09-17' });
    await document(await tick({ step: own?.key }), 201);
    const [first] = (await now()).wakeUp.steps;
    await document(await tick({ plan: 'wake-up', step: first?.key }), 201);
    const after = await now();
    expect(stepOf(after.plan, own?.key ?? '').tick?.state).toBe('done');
    expect(stepOf(after.wakeUp, first?.key ?? '').tick?.state).toBe('done');
  });

  it.each<[object, string[]]>([
    [{ step: 'no-such-step' }, ['#/step']],
    [{ step: 'a/b' }, ['#/step']],
    [{ plan: 'garden' }, ['#/plan']],
    [{ state: 'begun' }, ['#/state']],
    [{ day: '2026-11-26', cost: 'much' }, ['#/day', '#/cost']],
    [{ day: 'today' }, ['#/day']],
    [{ day: '1960-01-01' }, ['#/day']],
    [{ evidence: 'rumor' }, ['#/evidence']],
    [{ effects: ['renews:the-moon'] }, ['#/effects/0']],
    [{ answers: { [NO_ID]: { grade: 'dot-4' } } }, [`#/answers/${NO_ID}`]],
    [{ answers: { oil: {} } }, ['#/answers/oil']],
    [{ readings: [{ part: NO_ID, gauge: 'rest-voltage', value: 12 }] }, ['#/readings/0/part']],
    [{ readings: [{ gauge: 'rest-voltage' }] }, ['#/readings/0/part', '#/readings/0/value']],
    [{ odometer: -5 }, ['#/odometer']],
    [{ state: 'skipped' }, ['#/note']],
    [{ state: 'skipped', note: 'No', cost: 5, readings: [] }, ['#/cost', '#/readings']],
  ])('of %j points at what is wrong, and writes nothing', async (wrong, where) => {
    const { tick, now, parts } = await away();
    const before = [await now(), await parts()];
    expect(pointers(await problemOf(await tick({ step: 'oil-change', ...wrong }), 422))).toEqual(where);
    expect([await now(), await parts()]).toEqual(before);
  });

  it('points at answers and readings that are wrong, and renews nothing', async () => {
    const { tick, part, parts, site, car } = await away();
    const fuel = await part('fuel-gasoline');
    const battery = await part('battery-flooded');
    await document(
      await site.send('PATCH', `/api/v1/parts/${fuel.id}`, { dates: [{ clock: 'filled', typed: '2024' }] }),
    );
    const before = await parts();
    const step = 'fuel-fill';
    const answers = { [fuel.id]: { blend: 'tea', moon: 1 } };
    expect(pointers(await problemOf(await tick({ step, answers }), 422))).toEqual([
      `#/answers/${fuel.id}/blend`,
      `#/answers/${fuel.id}/moon`,
    ]);
    const readings = [
      { part: battery.id, gauge: 'rest-voltage', value: 12.5 },
      { part: battery.id, gauge: 'rest-voltage', value: 90 },
      { part: battery.id, gauge: 'tea-leaves', value: 1 },
    ];
    expect(pointers(await problemOf(await tick({ step, readings }), 422))).toEqual([
      '#/readings/1/value',
      '#/readings/2/gauge',
    ]);
    await document(await tick({ step: 'park', odometer: 87400 }, '?on=2026-12-20'), 201);
    const lower = await tick({ step, odometer: 90000 });
    expect(pointers(await problemOf(lower, 422))).toEqual(['#/odometer']);
    expect((await parts()).filter(({ kind }) => kind === 'fuel-gasoline')).toEqual(
      before.filter(({ kind }) => kind === 'fuel-gasoline'),
    );
    expect((await document<CarDocument>(await site.get(`/api/v1/cars/${car.id}`))).odometer).toHaveLength(1);
  });

  it('sent twice renews once', async () => {
    const { tick, site, car } = await away();
    await document(await tick({ step: 'oil-change' }), 201);
    const before = await site.get(`/api/v1/cars/${car.id}/parts`);
    expect(pointers(await problemOf(await tick({ step: 'oil-change' }), 422))).toEqual(['#/step']);
    const after = await site.get(`/api/v1/cars/${car.id}/parts`);
    expect(await document(after)).toEqual(await document(before));
  });
});

describe('DELETE /lay-ups/{id}/ticks/{plan}/{step}', () => {
  it('takes a tick back; what it wrote stays', async () => {
    const { tick, send, part } = await away();
    await document(await tick({ step: 'oil-change' }), 201);
    const { plan } = await document<LayUp>(await send('DELETE', '/ticks/lay-up/oil-change'));
    expect(stepOf(plan, 'oil-change').tick).toBeNull();
    expect((await part('engine-oil')).dates).toHaveLength(1);
    await problemOf(await send('DELETE', '/ticks/lay-up/oil-change'), 404);
    await problemOf(await send('DELETE', '/ticks/wake-up/oil-change'), 404);
  });

  it('points at a plan there is none of', async () => {
    const { send } = await away();
    expect(pointers(await problemOf(await send('DELETE', '/ticks/garden/oil-change'), 422))).toEqual(['#/plan']);
  });
});

describe('POST /lay-ups/{id}/sides', () => {
  it('takes a side, and with null the usual one again', async () => {
    const { send, now } = await away();
    const { choices, plan } = await document<LayUp>(await send('POST', '/sides', { topic: 'battery', side: 'out' }));
    expect(choices).toEqual({ battery: 'out' });
    expect(plan.steps.find(({ topic }) => topic?.key === 'battery')?.topic?.side).toBe('out');
    await document(await send('POST', '/sides', { topic: 'battery', side: null }));
    expect((await now()).choices).toEqual({});
  });

  it.each<[object, string[]]>([
    [{ topic: 'battery', side: 'eaten' }, ['#/side']],
    [{ topic: 'battery', side: 'toString' }, ['#/side']],
    [{ topic: 'battery' }, ['#/side']],
    [{ topic: 'weather', side: 'out' }, ['#/topic']],
  ])('of %j points at what is wrong', async (wrong, where) => {
    const { send, now } = await away();
    expect(pointers(await problemOf(await send('POST', '/sides', wrong), 422))).toEqual(where);
    expect((await now()).choices).toEqual({});
  });
});

describe('POST /lay-ups/{id}/steps', () => {
  it('adds an own step to either plan, and DELETE takes it off', async () => {
    const { send } = await away();
    const given = { plan: 'wake-up', title: 'Call Ada', days: 7, note: 'She has the key' };
    const { wakeUp } = await document<LayUp>(await send('POST', '/steps', given), 201);
    const own = wakeUp.steps.find(({ phase }) => phase === 'own');
    expect(own).toMatchObject({ title: 'Call Ada', why: 'She has the key', day: '2027-04-13', applies: true });
    const after = await document<LayUp>(await send('DELETE', `/steps/${own?.key}`));
    expect(after.wakeUp.steps.some(({ phase }) => phase === 'own')).toBe(false);
    for (const id of [own?.key, NO_ID]) await problemOf(await send('DELETE', `/steps/${id}`), 404);
  });

  it.each<[object, string[]]>([
    [{}, ['#/title']],
    [{ title: ' ' }, ['#/title']],
    [{ title: 'Call', days: 366 }, ['#/days']],
    [{ title: 'Call', days: 1.5, plan: 'garden' }, ['#/plan', '#/days']],
  ])('of %j points at what is wrong', async (wrong, where) => {
    const { send } = await away();
    expect(pointers(await problemOf(await send('POST', '/steps', wrong), 422))).toEqual(where);
  });
});

describe('POST /lay-ups/{id}/rounds', () => {
  it('keeps what was seen and read, and DELETE takes the round back', async () => {
    const { send, part, now } = await away(STANDING);
    const battery = await part('battery-flooded');
    const given = {
      answers: { smell: 'none', drips: 'spots', mice: 'traces' },
      readings: [{ part: battery.id, gauge: 'rest-voltage', value: '12,45 V', instrument: 'Pocket meter' }],
      note: 'Cold',
    };
    const layUp = await document<LayUp>(await send('POST', '/rounds', given), 201);
    const made = layUp.rounds.find(({ state }) => state === 'done');
    expect(made).toMatchObject({
      month: 2,
      due: '2026-11-20',
      made: { day: '2026-11-25', by: 'Ada', answers: given.answers, note: 'Cold' },
    });
    expect(layUp.found.map(({ look, answer, verdict }) => [look, answer, verdict])).toEqual([
      ['mice', 'Droppings or a nest', 'act'],
      ['drips', 'Spots', 'watch'],
    ]);
    expect((await part('battery-flooded')).readings).toMatchObject([{ day: '2026-11-25', instrument: 'Pocket meter' }]);
    const after = await document<LayUp>(await send('DELETE', `/rounds/${made?.made?.id}`));
    expect([after.found, after.rounds.map((one) => one.made)]).toEqual([[], [null, null, null, null, null]]);
    for (const id of [made?.made?.id, NO_ID]) await problemOf(await send('DELETE', `/rounds/${id}`), 404);
    expect((await now()).found).toEqual([]);
  });

  it('of an earlier day counts for that month, its readings with it', async () => {
    const { send, part } = await away(STANDING);
    const battery = await part('battery-flooded');
    const readings = [{ part: battery.id, gauge: 'rest-voltage', value: 12.6 }];
    const { rounds } = await document<LayUp>(await send('POST', '/rounds', { day: '2026-10-18', readings }), 201);
    expect(rounds.map(({ state }) => state).slice(0, 2)).toEqual(['done', 'due']);
    expect((await part('battery-flooded')).readings).toMatchObject([{ day: '2026-10-18' }]);
  });

  it.each<[object, string[]]>([
    [{}, ['#/answers']],
    [{ answers: { smell: 'roses' } }, ['#/answers/smell']],
    [{ answers: { 'a/b~c': 'none' } }, ['#/answers/a~1b~0c']],
    [{ answers: { constructor: 'none' } }, ['#/answers/constructor']],
    [{ answers: { smell: 'none' }, day: '2026-12-01' }, ['#/day']],
    [{ answers: { smell: 'none' }, day: '2026-09-01' }, ['#/day']],
    [
      { answers: { smell: 'none' }, readings: [{ part: NO_ID, gauge: 'rest-voltage', value: 12 }] },
      ['#/readings/0/part'],
    ],
    [{ answers: 'none', readings: {}, note: 4 }, ['#/answers', '#/readings', '#/note']],
  ])('of %j points at what is wrong, and keeps nothing', async (wrong, where) => {
    const { send, now } = await away(STANDING);
    const before = await now();
    expect(pointers(await problemOf(await send('POST', '/rounds', wrong), 422))).toEqual(where);
    expect(await now()).toEqual(before);
  });

  it('asks back a reading seldom seen, and keeps neither it nor the rest', async () => {
    const { send, part, now } = await away(STANDING);
    const { id } = await part('battery-flooded');
    const readings = [
      { part: id, gauge: 'rest-voltage', value: 12.5 },
      { part: id, gauge: 'rest-voltage', value: 9 },
    ];
    const problem = await problemOf(await send('POST', '/rounds', { answers: { smell: 'none' }, readings }), 422);
    expect(problem.errors).toMatchObject([{ pointer: '#/readings/1/value', choices: [{ value: 'sure' }] }]);
    expect((await part('battery-flooded')).readings).toEqual([]);
    expect((await now()).rounds.every(({ made }) => made === null)).toBe(true);
    const sure = readings.map((one) => ({ ...one, sure: true }));
    await document(await send('POST', '/rounds', { readings: sure }), 201);
  });

  it('is refused before the car is parked', async () => {
    const { send } = await away();
    expect(pointers(await problemOf(await send('POST', '/rounds', { answers: { smell: 'none' } }), 422))).toEqual([
      '#/day',
    ]);
  });
});

describe('POST /lay-ups/{id}/close', () => {
  it('ends it on a day, with the odometer, and everything but reading it with that', async () => {
    const { site, car, send, now, add, tick } = await away(STANDING);
    const own = await document<LayUp>(await send('POST', '/steps', { title: 'Sing' }), 201);
    const made = await document<LayUp>(await send('POST', '/rounds', { answers: { smell: 'none' } }), 201);
    await document(await tick({ step: 'insurer' }), 201);
    const given = { how: 'back', day: '2026-11-24', odometer: 87412, pattern: false };
    expect(await document(await send('POST', '/close', given))).toMatchObject({
      state: 'back',
      closedOn: '2026-11-24',
      pattern: false,
      changes: [],
      warnings: [],
      roadCheck: null,
    });
    const { odometer } = await document<CarDocument>(await site.get(`/api/v1/cars/${car.id}`));
    expect(odometer).toEqual([{ day: '2026-11-24', km: 87412 }]);
    const before = await now();
    const step = own.plan.steps.find(({ phase }) => phase === 'own')?.key;
    const round = made.rounds.find((one) => one.made)?.made?.id;
    for (const [method, path, document] of [
      ['PATCH', '', { note: 'x' }],
      ['POST', '/seen', {}],
      ['POST', '/sides', { topic: 'cover', side: 'none' }],
      ['POST', '/ticks', { plan: 'lay-up', step: 'wax', state: 'done' }],
      ['DELETE', '/ticks/lay-up/insurer', {}],
      ['POST', '/steps', { title: 'x' }],
      ['DELETE', `/steps/${step}`, {}],
      ['POST', '/rounds', { answers: { smell: 'none' } }],
      ['DELETE', `/rounds/${round}`, {}],
      ['POST', '/close', { how: 'back' }],
    ] as const)
      expect((await problemOf(await send(method, path, document), 422)).title).toContain('its record stays');
    expect(await now()).toEqual(before);
    // Its rounds end with it.
    expect((await now('?on=2027-06-01')).rounds.map(({ due }) => due)).toEqual(['2026-11-20']);
    expect((await add(AHEAD)).status).toBe(201);
  });

  it('calls off one that never began', async () => {
    const { send } = await away();
    expect(await document(await send('POST', '/close', { how: 'called off' }))).toMatchObject({
      state: 'called off',
      closedOn: '2026-11-25',
      // What never was is no pattern, whatever was asked.
      pattern: false,
    });
  });

  it.each<[object, string[]]>([
    [{}, ['#/how']],
    [{ how: 'stolen' }, ['#/how']],
    [{ how: 'back', day: '2026-11-26' }, ['#/day']],
    [{ how: 'back', day: '2026-09-19' }, ['#/day']],
    [{ how: 'back', odometer: 100 }, ['#/odometer']],
  ])('of %j points at what is wrong, and closes nothing', async (wrong, where) => {
    const { send, now, tick } = await away(STANDING);
    await document(await tick({ step: 'park', odometer: 87400, day: '2026-09-20' }), 201);
    const before = await now();
    expect(pointers(await problemOf(await send('POST', '/close', wrong), 422))).toEqual(where);
    expect(await now()).toEqual(before);
  });
});

describe('what the API says of every lay-up', () => {
  it('has every look with its answers', async () => {
    const { looks } = await document<{ looks: { key: string; every: number; always: boolean; answers: object[] }[] }>(
      await openSite().get('/api/v1/lay-ups/looks'),
    );
    expect(looks.map(({ key }) => key)).toEqual(LOOKS.map(({ key }) => key));
    expect(looks[0]).toMatchObject({
      every: 1,
      always: true,
      answers: [
        { key: 'none', verdict: 'good', todo: null },
        { key: 'must', verdict: 'watch' },
        { key: 'fuel', verdict: 'act', todo: expect.stringContaining('find the leak') },
      ],
    });
    expect(looks.find(({ key }) => key === 'desiccant')).toMatchObject({ every: 3, always: false });
  });

  it('has every topic with its sides, what speaks for them and sources', async () => {
    interface Topic {
      key: string;
      sides: { key: string; says: string }[];
      evidence: string;
      sources: { grade: string }[];
    }
    const { topics } = await document<{ topics: Topic[] }>(await openSite().get('/api/v1/lay-ups/topics'));
    expect(topics.map(({ key }) => key)).toEqual(Object.keys(TOPICS));
    for (const { sides, evidence, sources } of topics) {
      expect(sides.length).toBeGreaterThan(1);
      expect([evidence, sources[0]?.grade]).not.toContain('');
      for (const { says } of sides) expect(says).not.toBe('');
    }
  });
});

describe('an id the collection has no lay-up by', () => {
  const theirLayUp = ({ store, acting }: Barn): string =>
    addLayUp(store, {
      collectionId: acting.collectionId,
      carId: carIn({ store, acting }),
      parkedOn: '2026-09-20',
      returnOn: null,
      placeId: null,
      visitorId: null,
      phone: '',
      circumstances: [],
      choices: {},
      numbers: {},
      papers: NO_PAPERS,
      note: 'Theirs',
      isTemplate: false,
      madeOn: '2026-09-20',
      madeBy: null,
    });

  it('is a 404 problem, whatever is asked of it', async () => {
    const { site } = await open();
    const barn = openBarn(site.store, 'The shed');
    const theirs = theirLayUp(barn);
    const everything = () =>
      ['lay_ups', 'ticks', 'own_steps', 'rounds'].map((table) =>
        site.store.$client.prepare(`select * from ${table}`).all(),
      );
    const before = everything();
    for (const id of [theirs, NO_ID]) {
      await problemOf(await site.get(`/api/v1/lay-ups/${id}`), 404);
      for (const [method, path, document] of [
        ['PATCH', '', { note: 'Mine' }],
        ['POST', '/seen', {}],
        ['POST', '/sides', { topic: 'cover', side: 'none' }],
        ['POST', '/ticks', { plan: 'lay-up', step: 'wax', state: 'done' }],
        ['DELETE', '/ticks/lay-up/wax', {}],
        ['POST', '/steps', { title: 'Mine' }],
        ['DELETE', `/steps/${NO_ID}`, {}],
        ['POST', '/rounds', { answers: { smell: 'none' } }],
        ['DELETE', `/rounds/${NO_ID}`, {}],
        ['POST', '/close', { how: 'back' }],
      ] as const)
        await problemOf(await site.send(method, `/api/v1/lay-ups/${id}${path}`, document), 404);
    }
    expect(everything()).toEqual(before);
  });

  it('is a fault where a document names it: another collection’s car, place, person, lay-up or part', async () => {
    const { site, add, id, send } = await away(STANDING);
    const barn = openBarn(site.store, 'The shed');
    const car = carIn(barn);
    const { collectionId } = barn.acting;
    const place = addPlace(site.store, collectionId, { ...FROSTY, name: 'Their yard', note: '' });
    const visitor = addMember(site.store, collectionId, {
      name: 'Bo',
      email: null,
      dateOrder: 'day first',
      letters: false,
    } as Parameters<typeof addMember>[2]);
    expect(pointers(await problemOf(await add({ ...AHEAD, car }), 422))).toEqual(['#/car']);
    expect(pointers(await problemOf(await send('PATCH', '', { place, visitor }), 422))).toEqual([
      '#/place',
      '#/visitor',
    ]);
    await document(await send('POST', '/close', { how: 'back' }));
    const like = theirLayUp(barn);
    expect(pointers(await problemOf(await add({ ...AHEAD, like }), 422))).toEqual(['#/like']);
    const mine = await document<LayUp>(await add({ ...AHEAD, like: id }), 201);
    const [theirs] = (
      await document<{ parts: PartDocument[] }>(await site.get(`/api/v1/cars/${car}/parts?collection=${collectionId}`))
    ).parts;
    const readings = [{ part: theirs?.id, gauge: 'rest-voltage', value: 12.5 }];
    const tick = { plan: 'lay-up', step: 'wax', state: 'done', readings };
    const answer = await site.send('POST', `/api/v1/lay-ups/${mine.id}/ticks`, tick);
    expect(pointers(await problemOf(answer, 422))).toEqual(['#/readings/0/part']);
  });
});
