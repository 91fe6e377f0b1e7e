import { describe, expect, it } from 'vitest';
import { clearInterval, type OverrideGiven, setInterval } from '../../src/acts/override.ts';
import { kindOf } from '../../src/acts/parts.ts';
import { findingsOf } from '../../src/findings/car.ts';
import { overridesOf } from '../../src/store/overrides.ts';
import { type Barn, carIn, carOf, claim, date, must, openBarn, TODAY } from '../support/cars.ts';

const FLUID = kindOf({ kind: 'brake-fluid-glycol' });

const given = (more: Partial<OverrideGiven> = {}): OverrideGiven => ({
  carId: null,
  authority: 'own',
  lookFrom: null,
  replaceBy: 36,
  replaceByKm: null,
  note: 'Dry barn',
  ...more,
});

/** A barn with a car whose brake fluid was filled in June 2024: past by practice, which is 24 months. */
const barnWithOldFluid = (): { barn: Barn; carId: string } => {
  const barn = openBarn();
  const carId = carIn(barn);
  date(barn, carId, FLUID.key, claim('filled', 'June 2024'));
  return { barn, carId };
};

const ruled = (barn: Barn, carId: string): [string, string] => {
  const { facts, parts } = carOf(barn, carId);
  const overrides = overridesOf(barn.store, barn.acting.collectionId);
  const fluid = findingsOf(facts, parts, overrides, TODAY).find(({ kind }) => kind.key === FLUID.key);
  return [fluid?.ruling.by ?? '', fluid?.standing ?? ''];
};

describe('another interval', () => {
  it('set for the collection rules every car in place of practice', () => {
    const { barn, carId } = barnWithOldFluid();
    expect(ruled(barn, carId)).toEqual(['practice', 'past']);
    must(setInterval(barn.store, barn.acting, FLUID, given()));
    expect(ruled(barn, carId)).toEqual(['own', 'in date']);
    expect(ruled(barn, carIn(barn))).toEqual(['own', 'unproven']);
  });

  it('set for a car rules before the collection’s, the handbook’s before both', () => {
    const { barn, carId } = barnWithOldFluid();
    const other = carIn(barn);
    must(setInterval(barn.store, barn.acting, FLUID, given({ replaceBy: 12 })));
    must(setInterval(barn.store, barn.acting, FLUID, given({ carId, replaceBy: 30 })));
    expect(ruled(barn, carId)).toEqual(['own', 'due']);
    must(setInterval(barn.store, barn.acting, FLUID, given({ carId, authority: 'handbook', replaceBy: 60 })));
    expect(ruled(barn, carId)).toEqual(['handbook', 'in date']);
    expect(ruled(barn, other)[0]).toBe('own');
  });

  it('ended lets the next one rule again', () => {
    const { barn, carId } = barnWithOldFluid();
    must(setInterval(barn.store, barn.acting, FLUID, given({ replaceBy: 60 })));
    must(setInterval(barn.store, barn.acting, FLUID, given({ carId, replaceBy: 12 })));
    clearInterval(barn.store, barn.acting, FLUID, { carId, authority: 'handbook' });
    expect(ruled(barn, carId)).toEqual(['own', 'past']);
    clearInterval(barn.store, barn.acting, FLUID, { carId, authority: 'own' });
    expect(ruled(barn, carId)).toEqual(['own', 'in date']);
    clearInterval(barn.store, barn.acting, FLUID, { carId: null, authority: 'own' });
    expect(ruled(barn, carId)).toEqual(['practice', 'past']);
  });

  it.each<[string, Partial<OverrideGiven>, string]>([
    ['without any figure', { replaceBy: null }, 'replaceBy'],
    ['that looks after it replaces', { lookFrom: 37 }, 'lookFrom'],
    ['without a reason', { note: '' }, 'note'],
    ['of a handbook for all cars', { authority: 'handbook' }, 'authority'],
  ])('%s is refused at its field and sets nothing', (_, more, field) => {
    const { barn } = barnWithOldFluid();
    const outcome = setInterval(barn.store, barn.acting, FLUID, given(more));
    expect(outcome.ok ? [] : outcome.faults.map((fault) => fault.field)).toEqual([field]);
    expect(overridesOf(barn.store, barn.acting.collectionId)).toEqual([]);
  });

  it.each<[string, Partial<OverrideGiven>]>([
    ['a look alone', { lookFrom: 12, replaceBy: null }],
    ['a distance alone', { replaceBy: null, replaceByKm: 10_000 }],
    ['a look on the very day of the limit', { lookFrom: 36 }],
  ])('may be %s', (_, more) => {
    const { barn } = barnWithOldFluid();
    expect(setInterval(barn.store, barn.acting, FLUID, given(more)).ok).toBe(true);
  });
});
