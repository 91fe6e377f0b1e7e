import { describe, expect, it } from 'vitest';
import { ASSUMED } from '../../src/ageing/place.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import {
  addPlace,
  carsByPlace,
  changePlace,
  findPlace,
  type NewPlace,
  placeOfCar,
  placesOf,
  putCar,
  removePlace,
} from '../../src/store/places.ts';
import { type Barn, carIn, carOf, openBarn, TODAY } from '../support/cars.ts';

const named = (name: string, more: Partial<NewPlace> = {}): NewPlace => ({ ...ASSUMED, name, note: '', ...more });
const add = ({ store, acting }: Barn, name: string, more: Partial<NewPlace> = {}): string =>
  addPlace(store, acting.collectionId, named(name, more));
const put = ({ store, acting }: Barn, carId: string, placeId: string | null, on: CivilDate = TODAY): void =>
  putCar(store, acting.collectionId, carId, placeId, on);

describe('places in the store', () => {
  it('come by name, with all that was said of them', () => {
    const barn = openBarn();
    const { store, acting } = barn;
    const months = Array.from({ length: 12 }, (_, month) => (month === 3 ? 8.5 : null));
    add(barn, 'Shed', { humidity: 62.5, months, hemisphere: 'south', shelter: 'heated', heatedTo: 9 });
    add(barn, 'Barn');
    expect(placesOf(store, acting.collectionId).map(({ name }) => name)).toEqual(['Barn', 'Shed']);
    expect(placesOf(store, acting.collectionId)[1]).toMatchObject({
      humidity: 62.5,
      months,
      hemisphere: 'south',
      shelter: 'heated',
      heatedTo: 9,
    });
  });

  it('can be changed, each alone', () => {
    const barn = openBarn();
    const [shed, other] = [add(barn, 'Shed'), add(barn, 'Barn')];
    changePlace(barn.store, barn.acting.collectionId, shed, named('Loft', { winterLow: -3 }), TODAY);
    expect(findPlace(barn.store, barn.acting.collectionId, shed)).toMatchObject({ name: 'Loft', winterLow: -3 });
    expect(findPlace(barn.store, barn.acting.collectionId, other)).toMatchObject({ name: 'Barn', winterLow: -10 });
  });

  it('know their cars, and a car its place; moved, it stands in one', () => {
    const barn = openBarn();
    const { store, acting } = barn;
    const [one, two] = [carIn(barn), carIn(barn, { name: 'Alder Coupe' })];
    const [shed, other] = [add(barn, 'Shed'), add(barn, 'Barn')];
    put(barn, one, shed);
    put(barn, two, shed);
    expect(new Set(carsByPlace(store, acting.collectionId).get(shed))).toEqual(new Set([one, two]));
    put(barn, two, other);
    expect([...carsByPlace(store, acting.collectionId)].toSorted()).toEqual(
      [
        [shed, [one]],
        [other, [two]],
      ].toSorted(),
    );
    expect(placeOfCar(store, acting.collectionId, two)?.place.name).toBe('Barn');
    put(barn, two, null);
    expect(placeOfCar(store, acting.collectionId, two)).toBeUndefined();
  });

  it('keep since when a car stands there: a move begins anew, nowhere has no day', () => {
    const barn = openBarn();
    const { store, acting } = barn;
    const carId = carIn(barn);
    const [shed, other] = [add(barn, 'Shed'), add(barn, 'Barn')];
    expect(carOf(barn, carId).facts.placedOn).toBeNull();
    put(barn, carId, shed, '2026-03-01');
    expect(placeOfCar(store, acting.collectionId, carId)).toMatchObject({ place: { id: shed }, since: '2026-03-01' });
    expect(carOf(barn, carId).facts.placedOn).toBe('2026-03-01');
    put(barn, carId, other, '2026-05-01');
    expect(carOf(barn, carId).facts).toMatchObject({ placedOn: '2026-05-01', place: { name: 'Barn' } });
    put(barn, carId, null, '2026-06-01');
    expect(carOf(barn, carId).facts).toMatchObject({ placedOn: null, place: null });
  });

  it('that a car is put into again keep the day it was put there first', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const shed = add(barn, 'Shed');
    put(barn, carId, shed, '2026-03-01');
    put(barn, carId, shed, '2026-05-01');
    expect(placeOfCar(barn.store, barn.acting.collectionId, carId)?.since).toBe('2026-03-01');
  });

  it('that are removed leave their cars standing nobody has said where', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const [shed, other] = [add(barn, 'Shed'), add(barn, 'Barn')];
    put(barn, carId, shed);
    removePlace(barn.store, barn.acting.collectionId, shed);
    expect(placesOf(barn.store, barn.acting.collectionId).map(({ id }) => id)).toEqual([other]);
    expect(carOf(barn, carId)).toMatchObject({ place: undefined, facts: { place: null } });
  });

  it('belong to one collection: no other reads, changes, removes or stands in them', () => {
    const barn = openBarn();
    const shed = openBarn(barn.store, 'The shed');
    const [mine, theirs] = [add(barn, 'Barn'), add(shed, 'Shed')];
    expect(placesOf(barn.store, barn.acting.collectionId).map(({ id }) => id)).toEqual([mine]);
    expect(findPlace(barn.store, barn.acting.collectionId, theirs)).toBeUndefined();
    changePlace(barn.store, barn.acting.collectionId, theirs, named('Taken'), TODAY);
    removePlace(barn.store, barn.acting.collectionId, theirs);
    expect(findPlace(barn.store, shed.acting.collectionId, theirs)?.name).toBe('Shed');
    const carId = carIn(barn);
    put(barn, carId, mine);
    expect(() => put(barn, carId, theirs)).toThrow(/FOREIGN KEY/);
    expect(placeOfCar(barn.store, barn.acting.collectionId, carId)?.place.id).toBe(mine);
  });
});
