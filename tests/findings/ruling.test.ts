import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { leadFor, overrideFor, practiceOf, rulingOf } from '../../src/findings/ruling.ts';
import { CAR_ID, kindOf, override } from '../support/parts.ts';

describe('the lead before a replace-by day', () => {
  it.each<[number | null, number, string]>([
    [null, 0, 'nothing to replace by'],
    [1, 0, 'a month of life'],
    [2, 0, 'two months'],
    [3, 1, 'three months'],
    [11, 1, 'eleven months'],
    [12, 2, 'a year'],
    [35, 2, 'just under three years'],
    [36, 3, 'three years'],
    [240, 3, 'twenty years'],
  ])('for a life of %s months is %i: %s', (life, lead) => expect(leadFor(life)).toBe(lead));

  it('is always shorter than the life', () => {
    for (const { interval } of KINDS.values())
      if (interval.replaceBy !== null) expect(leadFor(interval.replaceBy)).toBeLessThan(interval.replaceBy);
  });
});

describe('what rules', () => {
  const hoses = kindOf('brake-hoses');
  const handbook = override('brake-hoses', { authority: 'handbook', replaceBy: 48, note: 'page 12' });
  const own = override('brake-hoses', { replaceBy: 60 });
  const collection = override('brake-hoses', { carId: null, replaceBy: 96 });
  const collectionHandbook = override('brake-hoses', { carId: null, authority: 'handbook', replaceBy: 84 });
  const otherCar = override('brake-hoses', { carId: 'another', authority: 'handbook', replaceBy: 12 });
  const otherKind = override('tires-road', { authority: 'handbook', replaceBy: 12 });

  it('is practice where nothing else was said', () => {
    expect(rulingOf(hoses, [], CAR_ID)).toEqual({
      by: 'practice',
      lookFrom: 48,
      lookEvery: 12,
      replaceBy: 72,
      replaceByKm: null,
      lead: 3,
      note: null,
    });
    expect(rulingOf(hoses, [otherCar, otherKind], CAR_ID)).toEqual(practiceOf(hoses));
  });

  it.each([
    ['the car’s handbook comes before everything', [collection, own, handbook], 'handbook', 48],
    ['the car’s own interval comes before the collection’s', [collection, own], 'own', 60],
    ['even before the collection’s handbook', [collectionHandbook, own], 'own', 60],
    ['the collection’s comes before practice', [collection], 'own', 96],
    ['another car’s and another kind’s count for nothing', [otherCar, otherKind, collection], 'own', 96],
  ] as const)('%s', (_, overrides, by, replaceBy) => {
    for (const list of [overrides, overrides.toReversed()])
      expect(rulingOf(hoses, list, CAR_ID)).toMatchObject({ by, replaceBy });
  });

  it('an override takes the place of every figure, with a lead of its own, and keeps the rhythm of looks', () => {
    expect(rulingOf(hoses, [handbook], CAR_ID)).toEqual({
      by: 'handbook',
      lookFrom: null,
      lookEvery: 12,
      replaceBy: 48,
      replaceByKm: null,
      lead: 3,
      note: 'page 12',
    });
    expect(rulingOf(kindOf('engine-oil'), [override('engine-oil', { replaceBy: 6 })], CAR_ID)).toMatchObject({
      replaceByKm: null,
      lead: 1,
    });
  });

  it('practice keeps its distance', () => {
    expect(practiceOf(kindOf('engine-oil'))).toMatchObject({ replaceBy: 12, replaceByKm: 5000, lead: 2 });
  });

  it('finds no override where there is none for the kind', () => {
    expect(overrideFor([otherKind, otherCar], 'brake-hoses', CAR_ID)).toBeUndefined();
    expect(overrideFor([collection, own], 'brake-hoses', CAR_ID)).toBe(own);
  });
});
