import { describe, expect, it } from 'vitest';
import { type AnswerGiven, readAnswers, setDetailsAct } from '../../src/acts/details.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { findPart, retirePart } from '../../src/store/cars.ts';
import { type Barn, carIn, must, openBarn, partOf, TODAY } from '../support/cars.ts';

const ask = (kind: string, given: Record<string, string | AnswerGiven>) =>
  readAnswers(
    KINDS.get(kind)?.details ?? [],
    Object.fromEntries(
      Object.entries(given).map(([key, one]) => [key, typeof one === 'string' ? { typed: one, unit: '' } : one]),
    ),
  );

describe('answers about a part', () => {
  it('are a choice, or a number in the detail’s unit', () => {
    expect(must(ask('brake-fluid-glycol', { grade: 'dot-4', hoses: '', limit: { typed: '392', unit: '°F' } }))).toEqual(
      { grade: 'dot-4', limit: 200 },
    );
    expect(must(ask('tires-road', { placard: { typed: '2,2', unit: 'bar' }, 'cap-ply': 'yes' }))).toEqual({
      placard: 2.2,
      'cap-ply': 'yes',
    });
    expect(must(ask('tires-road', { placard: '32 psi' })).placard).toBeCloseTo(2.2063, 4);
  });

  it('left open are none', () => {
    expect(must(ask('brake-fluid-glycol', {}))).toEqual({});
    expect(must(ask('brake-fluid-glycol', { grade: '  ', limit: '' }))).toEqual({});
  });

  it('that can’t be are refused with what can, in the unit typed', () => {
    expect(ask('brake-fluid-glycol', { limit: { typed: '100', unit: '°F' } })).toMatchObject({
      ok: false,
      faults: [{ field: 'limit', message: expect.stringMatching(/^100 °F can’t be: .*284 °F to 572 °F/) as string }],
    });
    expect(ask('brake-fluid-glycol', { grade: 'dot-6' })).toMatchObject({
      faults: [{ field: 'grade', message: expect.stringContaining('choose DOT 3, DOT 4,') as string }],
    });
    expect(ask('tires-road', { placard: 'high' })).toMatchObject({ faults: [{ field: 'placard' }] });
  });

  it.each(['toString', 'constructor', 'hasOwnProperty'])('“%s” is a choice of no question', (word) => {
    expect(ask('brake-fluid-glycol', { grade: word })).toMatchObject({ ok: false, faults: [{ field: 'grade' }] });
  });

  it('to a question nobody asks are refused, and every fault is told', () => {
    expect(ask('brake-fluid-glycol', { color: 'amber', grade: 'best', limit: 'hot' })).toMatchObject({
      ok: false,
      faults: [{ field: 'grade' }, { field: 'limit' }, { field: 'color' }],
    });
  });
});

describe('setting them', () => {
  const set = (barn: Barn, carId: string, given: Record<string, AnswerGiven>) =>
    setDetailsAct(barn.store, barn.acting, partOf(barn, carId, 'battery-flooded'), given);

  it('sets all of a part’s details: one left out is taken back', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const details = () => partOf(barn, carId, 'battery-flooded').details;
    expect(details()).toEqual({});
    must(set(barn, carId, { volts: { typed: '12', unit: '' }, capacity: { typed: '60', unit: 'Ah' } }));
    expect(details()).toEqual({ volts: '12', capacity: 60 });
    must(set(barn, carId, { volts: { typed: '6', unit: '' } }));
    expect(details()).toEqual({ volts: '6' });
  });

  it('sets none where one of them is refused', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    must(set(barn, carId, { volts: { typed: '12', unit: '' } }));
    expect(set(barn, carId, { volts: { typed: '6', unit: '' }, capacity: { typed: '9000', unit: '' } }).ok).toBe(false);
    expect(partOf(barn, carId, 'battery-flooded').details).toEqual({ volts: '12' });
  });

  it('is refused for a closed part', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const { id } = partOf(barn, carId, 'battery-flooded');
    retirePart(barn.store, barn.acting.collectionId, id, TODAY, 'None.');
    const part = findPart(barn.store, barn.acting.collectionId, id);
    if (!part) throw new Error('The part is gone');
    expect(setDetailsAct(barn.store, barn.acting, part, { volts: { typed: '12', unit: '' } }).ok).toBe(false);
    expect(findPart(barn.store, barn.acting.collectionId, id)?.details).toEqual({});
  });
});
