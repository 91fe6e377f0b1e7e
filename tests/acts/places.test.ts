import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/acts/fault.ts';
import { addPlaceAct, changePlaceAct, type PlaceGiven, putCarAct } from '../../src/acts/places.ts';
import { findPlace, type PlaceRow, placesOf, removePlace } from '../../src/store/places.ts';
import { carIn, carOf, must, openBarn } from '../support/cars.ts';

const given = (more: Partial<PlaceGiven> = {}): PlaceGiven => ({
  name: 'Barn',
  winterLow: '−14',
  summerHigh: '34',
  air: 'inland',
  shelter: 'unheated',
  humidity: '',
  heatedTo: '',
  hemisphere: 'north',
  months: [],
  unit: '°C',
  note: '',
  ...more,
});

/** The place as it is kept, or what is wrong with it; then nothing is kept. */
const readPlace = (described: PlaceGiven): Outcome<Omit<PlaceRow, 'collectionId' | 'id'>> => {
  const { store, acting } = openBarn();
  const outcome = addPlaceAct(store, acting, described);
  const [row] = placesOf(store, acting.collectionId);
  expect(row?.id).toBe(outcome.ok ? outcome.value : undefined);
  if (!row || !outcome.ok) return outcome.ok ? { ok: false, faults: [] } : outcome;
  const { collectionId, id, ...place } = row;
  expect(collectionId).toBe(acting.collectionId);
  expect(id).toBe(outcome.value);
  return { ok: true, value: place };
};

const fields = (more: Partial<PlaceGiven>): string[] => {
  const read = readPlace(given(more));
  return read.ok ? [] : read.faults.map(({ field }) => field);
};

describe('a place as a person describes it', () => {
  it('is kept in °C, with nothing for what was left empty', () => {
    expect(must(readPlace(given()))).toEqual({
      name: 'Barn',
      note: '',
      winterLow: -14,
      summerHigh: 34,
      air: 'inland',
      shelter: 'unheated',
      humidity: null,
      heatedTo: null,
      hemisphere: 'north',
      months: Array<null>(12).fill(null),
    });
  });

  it('can be told in °F, in all its temperatures; a unit written with one counts before', () => {
    const place = must(
      readPlace(
        given({
          unit: '°F',
          winterLow: '14',
          summerHigh: '30 °C',
          shelter: 'heated',
          heatedTo: '50',
          months: ['41', '', '59'],
        }),
      ),
    );
    expect(place).toMatchObject({ winterLow: -10, summerHigh: 30, heatedTo: 10 });
    expect(place.months.slice(0, 4)).toEqual([5, null, 15, null]);
  });

  it('has a heating only where it is heated', () => {
    expect(must(readPlace(given({ heatedTo: '12' }))).heatedTo).toBeNull();
    expect(must(readPlace(given({ shelter: 'heated' }))).heatedTo).toBeNull();
    expect(must(readPlace(given({ shelter: 'heated', heatedTo: '8,5' }))).heatedTo).toBe(8.5);
  });

  it('lies in the north unless it is told otherwise', () => {
    expect(must(readPlace(given({ hemisphere: 'south' }))).hemisphere).toBe('south');
    expect(must(readPlace(given({ hemisphere: '' }))).hemisphere).toBe('north');
  });

  it.each<[string, Partial<PlaceGiven>, string[]]>([
    ['without a name', { name: '' }, ['name']],
    ['without its temperatures', { winterLow: '', summerHigh: 'hot' }, ['winterLow', 'summerHigh']],
    ['with a summer no warmer than its winter', { winterLow: '20', summerHigh: '20' }, ['summerHigh']],
    ['beyond what any place has', { winterLow: '-61' }, ['winterLow']],
    ['in °F where °C was picked', { summerHigh: '95' }, ['summerHigh']],
    ['in no such air or shelter', { air: 'sea', shelter: 'tent' }, ['air', 'shelter']],
    ['with a humidity that can’t be', { humidity: '101' }, ['humidity']],
    ['with a humidity in words', { humidity: 'damp' }, ['humidity']],
    ['with a month that can’t be', { months: ['', '70'] }, ['month1']],
    ['with several faults', { name: '', air: '', humidity: '1' }, ['name', 'air', 'humidity']],
  ])('is refused %s', (_, more, wanted) => expect(fields(more)).toEqual(wanted));
});

describe('the places of a collection', () => {
  it('are added and changed, or left as they are where something is wrong', () => {
    const { store, acting } = openBarn();
    const id = must(addPlaceAct(store, acting, given()));
    expect(addPlaceAct(store, acting, given({ name: '' })).ok).toBe(false);
    must(changePlaceAct(store, acting, id, given({ name: 'Shed', humidity: '60' })));
    expect(changePlaceAct(store, acting, id, given({ name: 'Loft', air: 'sea' })).ok).toBe(false);
    expect(placesOf(store, acting.collectionId)).toMatchObject([{ id, name: 'Shed', humidity: 60, winterLow: -14 }]);
  });

  it('of another collection are neither changed nor stood in', () => {
    const barn = openBarn();
    const shed = openBarn(barn.store, 'The shed');
    const theirs = must(addPlaceAct(shed.store, shed.acting, given({ name: 'Theirs' })));
    const carId = carIn(barn);
    must(changePlaceAct(barn.store, barn.acting, theirs, given({ name: 'Mine' })));
    expect(findPlace(barn.store, shed.acting.collectionId, theirs)?.name).toBe('Theirs');
    expect(putCarAct(barn.store, barn.acting, carId, theirs)).toMatchObject({
      ok: false,
      faults: [{ field: 'place' }],
    });
    expect(carOf(barn, carId).place).toBeUndefined();
  });
});

describe('putting a car into a place', () => {
  it('tells its findings the climate there; nowhere takes it back', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    expect(carOf(barn, carId).facts.place).toBeNull();
    const place = must(addPlaceAct(barn.store, barn.acting, given()));
    must(putCarAct(barn.store, barn.acting, carId, place));
    expect(carOf(barn, carId).facts.place).toMatchObject({ winterLow: -14, summerHigh: 34, shelter: 'unheated' });
    must(putCarAct(barn.store, barn.acting, carId, ''));
    expect(carOf(barn, carId).facts.place).toBeNull();
  });

  it('is of the day it is done', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const place = must(addPlaceAct(barn.store, barn.acting, given()));
    must(putCarAct(barn.store, { ...barn.acting, today: '2026-04-09' }, carId, place));
    expect(carOf(barn, carId).facts.placedOn).toBe('2026-04-09');
  });

  it('moves it: a car stands in one place', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    for (const name of ['Barn', 'Shed'])
      must(putCarAct(barn.store, barn.acting, carId, must(addPlaceAct(barn.store, barn.acting, given({ name })))));
    expect(carOf(barn, carId).place?.name).toBe('Shed');
  });

  it('that is gone is refused, and leaves it where it stands', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const [barnId, gone] = ['Barn', 'Gone'].map((name) => must(addPlaceAct(barn.store, barn.acting, given({ name }))));
    must(putCarAct(barn.store, barn.acting, carId, barnId ?? ''));
    removePlace(barn.store, barn.acting.collectionId, gone ?? '');
    expect(putCarAct(barn.store, barn.acting, carId, gone ?? '').ok).toBe(false);
    expect(carOf(barn, carId).place?.name).toBe('Barn');
  });
});
