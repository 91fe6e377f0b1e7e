import { describe, expect, it } from 'vitest';
import { setDetailsAct } from '../../src/acts/details.ts';
import { addPartAct, changePartAct, datePart, renewPart } from '../../src/acts/parts.ts';
import { closedParts, findPart } from '../../src/store/cars.ts';
import { type Barn, carIn, carOf, claim, date, must, openBarn, partOf } from '../support/cars.ts';
import { record, typed } from '../support/readings.ts';

const FLUID = 'brake-fluid-glycol';

const barnWithCar = (): { barn: Barn; carId: string } => {
  const barn = openBarn();
  return { barn, carId: carIn(barn) };
};

const at = (barn: Barn, carId: string, kind: string, position: string | null = null) => ({
  part: partOf(barn, carId, kind, position),
  car: carOf(barn, carId).facts,
});

describe('dating a part', () => {
  it('records who said what, when, how surely, and at how many km', () => {
    const { barn, carId } = barnWithCar();
    const given = claim('filled', ' June  2025 ', { evidence: 'own memory', km: 86_000, note: 'At home' });
    date(barn, carId, FLUID, given);
    expect(partOf(barn, carId, FLUID).claims).toEqual([
      expect.objectContaining({
        clock: 'filled',
        said: 'date',
        typed: 'June  2025',
        edtf: '2025-06',
        from: '2025-06-01',
        to: '2025-06-30',
        evidence: 'own memory',
        km: 86_000,
        note: 'At home',
        recordedOn: barn.acting.today,
        recordedBy: barn.acting.personId,
      }),
    ]);
  });

  it('instead of a slip judges the new date without it', () => {
    const { barn, carId } = barnWithCar();
    date(barn, carId, 'tires-road', claim('made', '2320'), 'rear left');
    const here = at(barn, carId, 'tires-road', 'rear left');
    const fitted = claim('fitted', 'May 2019');
    expect(datePart(barn.store, barn.acting, here, fitted).ok).toBe(false);
    const [slip] = here.part.claims;
    must(datePart(barn.store, barn.acting, here, claim('made', '2318'), slip?.id));
    must(datePart(barn.store, barn.acting, at(barn, carId, 'tires-road', 'rear left'), fitted));
    expect(partOf(barn, carId, 'tires-road', 'rear left').claims.map(({ typed }) => typed)).toEqual([
      '2318',
      'May 2019',
    ]);
  });
});

describe('renewing a part', () => {
  it('closes its record and opens one with what is known of the new part', () => {
    const { barn, carId } = barnWithCar();
    const oldId = date(barn, carId, 'tires-road', claim('made', '2312'), 'rear left');
    const renewal = { why: 'Cracked.', note: '', claims: [claim('fitted', '1 June 2026'), claim('made', '0426')] };
    const id = must(renewPart(barn.store, barn.acting, at(barn, carId, 'tires-road', 'rear left'), renewal));
    expect(partOf(barn, carId, 'tires-road', 'rear left')).toMatchObject({
      id,
      replaces: oldId,
      claims: [
        { clock: 'fitted', from: '2026-06-01' },
        { clock: 'made', from: '2026-01-25' },
      ],
    });
    const history = closedParts(barn.store, barn.acting.collectionId, carId);
    expect(history).toMatchObject([{ id: oldId, closedWhy: 'Cracked.', claims: [{ typed: '2312' }] }]);
  });

  it('is not held against the old part’s dates, only against its own', () => {
    const { barn, carId } = barnWithCar();
    date(barn, carId, 'tires-road', claim('made', '2320'), 'rear left');
    const here = at(barn, carId, 'tires-road', 'rear left');
    const renewal = (made: string) => ({ why: '', note: '', claims: [claim('fitted', '2019'), claim('made', made)] });
    const refused = renewPart(barn.store, barn.acting, here, renewal('2320'));
    expect(refused).toMatchObject({ faults: [{ field: 'dates/1/typed' }] });
    expect(renewPart(barn.store, barn.acting, here, renewal('2318')).ok).toBe(true);
  });

  it('tells the faults of all its dates, each by its place, and renews nothing', () => {
    const { barn, carId } = barnWithCar();
    const here = at(barn, carId, FLUID);
    const renewal = {
      why: '',
      note: '',
      claims: [claim('filled', 'soon'), claim('filled', '2025'), claim('filled', '')],
    };
    expect(renewPart(barn.store, barn.acting, here, renewal)).toMatchObject({
      ok: false,
      faults: [{ field: 'dates/0/typed' }, { field: 'dates/2/typed' }],
    });
    expect(partOf(barn, carId, FLUID)).toEqual(here.part);
  });

  it('keeps what is true of the car, drops what was true of the old part, and starts without readings', () => {
    const { barn, carId } = barnWithCar();
    const answers = { volts: '12', connection: 'connected', capacity: '60', chemistry: 'calcium', fill: '1.280' };
    const given = Object.fromEntries(Object.entries(answers).map(([key, text]) => [key, { typed: text, unit: '' }]));
    must(setDetailsAct(barn.store, barn.acting, partOf(barn, carId, 'battery-flooded'), given));
    const old = partOf(barn, carId, 'battery-flooded');
    must(record(barn, carId, [typed(old.id, 'rest-voltage', '12.2')]));
    must(renewPart(barn.store, barn.acting, at(barn, carId, 'battery-flooded'), { why: '', note: '', claims: [] }));
    expect(partOf(barn, carId, 'battery-flooded')).toMatchObject({
      replaces: old.id,
      details: { volts: '12', connection: 'connected' },
      readings: [],
    });
    expect(partOf(barn, carId, 'battery-flooded').details).toEqual({ volts: '12', connection: 'connected' });
    expect(findPart(barn.store, barn.acting.collectionId, old.id)).toMatchObject({
      details: { ...answers, capacity: 60 },
      readings: [{ value: 12.2 }],
    });
  });

  it('is refused where the part was closed already', () => {
    const { barn, carId } = barnWithCar();
    const here = at(barn, carId, FLUID);
    const renewal = { why: 'Renewed.', note: '', claims: [] };
    const next = must(renewPart(barn.store, barn.acting, here, renewal));
    const old = findPart(barn.store, barn.acting.collectionId, here.part.id);
    if (!old) throw new Error('The old part is gone');
    expect(renewPart(barn.store, barn.acting, { ...here, part: old }, renewal)).toMatchObject({
      faults: [
        { field: 'part', message: expect.stringContaining('its successor is the one to date or renew') as string },
      ],
    });
    expect(partOf(barn, carId, FLUID).id).toBe(next);
  });
});

describe('adding a part by hand', () => {
  it('puts it on the list with the dates given', () => {
    const { barn, carId } = barnWithCar();
    const given = {
      kind: 'tires-road',
      position: 'second spare',
      note: 'On the roof',
      claims: [claim('made', '2318')],
    };
    must(addPartAct(barn.store, barn.acting, carOf(barn, carId), given));
    expect(partOf(barn, carId, 'tires-road', 'second spare')).toMatchObject({
      note: 'On the roof',
      claims: [{ typed: '2318' }],
    });
  });

  it('that waits for its first date on the list is that part', () => {
    const { barn, carId } = barnWithCar();
    const before = carOf(barn, carId).parts.length;
    const waiting = partOf(barn, carId, 'tires-road', 'rear left');
    const given = { kind: 'tires-road', position: 'rear left', note: '', claims: [claim('made', '2318')] };
    expect(must(addPartAct(barn.store, barn.acting, carOf(barn, carId), given))).toBe(waiting.id);
    expect(partOf(barn, carId, 'tires-road', 'rear left').claims).toHaveLength(1);
    expect(carOf(barn, carId).parts).toHaveLength(before);
  });

  it.each([
    [{ kind: 'flux-capacitor', position: null }, 'kind', 'There is no kind “flux-capacitor”'],
    [{ kind: FLUID, position: null }, 'position', 'already has this part. Renew that one'],
    [{ kind: 'tires-road', position: 'front left' }, 'position', 'already has this part at “front left”'],
  ])('is refused for %j', ({ kind, position }, field, message) => {
    const { barn, carId } = barnWithCar();
    must(changePartAct(barn.store, barn.acting, at(barn, carId, FLUID), { claims: [claim('filled', '2024')] }));
    must(
      changePartAct(barn.store, barn.acting, at(barn, carId, 'tires-road', 'front left'), {
        claims: [claim('made', '2318')],
      }),
    );
    const before = carOf(barn, carId);
    expect(addPartAct(barn.store, barn.acting, before, { kind, position, note: '', claims: [] })).toEqual({
      ok: false,
      faults: [{ field, message: expect.stringContaining(message) as string }],
    });
    expect(carOf(barn, carId)).toEqual(before);
  });
});

describe('changing a part', () => {
  it('adds dates, each judged against those before it, or nothing at all', () => {
    const { barn, carId } = barnWithCar();
    const here = at(barn, carId, 'tires-road', 'rear left');
    const bad = { note: 'New note', claims: [claim('fitted', '2019'), claim('made', '2320')] };
    expect(changePartAct(barn.store, barn.acting, here, bad)).toMatchObject({ faults: [{ field: 'dates/1/typed' }] });
    expect(partOf(barn, carId, 'tires-road', 'rear left')).toEqual(here.part);
    must(changePartAct(barn.store, barn.acting, here, { note: 'New note', claims: [claim('fitted', '2019')] }));
    expect(partOf(barn, carId, 'tires-road', 'rear left')).toMatchObject({
      note: 'New note',
      claims: [{ typed: '2019' }],
    });
  });

  it('leaves the note where none is given, and empties it where an empty one is', () => {
    const { barn, carId } = barnWithCar();
    const here = at(barn, carId, FLUID);
    const note = () => partOf(barn, carId, FLUID).note;
    must(changePartAct(barn.store, barn.acting, here, { note: 'Blue cap', claims: [] }));
    must(changePartAct(barn.store, barn.acting, here, { claims: [] }));
    expect(note()).toBe('Blue cap');
    must(changePartAct(barn.store, barn.acting, here, { note: '', claims: [] }));
    expect(note()).toBe('');
  });
});
