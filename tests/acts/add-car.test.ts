import { describe, expect, it } from 'vitest';
import { addCarAct } from '../../src/acts/add-car.ts';
import { partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { carsOf } from '../../src/store/cars.ts';
import { carIn, carOf, newCar, openBarn, ROADSTER, TODAY } from '../support/cars.ts';

const place = ({ kind, position }: { kind: string; position: string | null }): string => `${kind} ${position ?? ''}`;

describe('adding a car', () => {
  it.each(QUICK_STARTS.map(({ key }) => key))('lists every part a “%s” can have, each open from today', (key) => {
    const barn = openBarn();
    const traits = [...(QUICK_STARTS.find((start) => start.key === key)?.traits ?? [])];
    const { car, parts } = carOf(barn, carIn(barn, { traits }));
    expect(car).toMatchObject({ name: 'Merle Tourer', traits, addedOn: TODAY });
    expect(parts.map(place).toSorted()).toEqual(partsFor(traits).map(place).toSorted());
    expect(
      parts.every(({ openedOn, closedOn, claims }) => openedOn === TODAY && !closedOn && claims.length === 0),
    ).toBe(true);
  });

  it('lists nothing the car cannot have: no discs on a car with drums all round', () => {
    const barn = openBarn();
    const drums = ROADSTER.map((trait) => (trait === 'front-discs' ? 'front-drums' : trait));
    const kindsOf = (traits: string[]) => carOf(barn, carIn(barn, { traits })).parts.map(({ kind }) => kind);
    expect(kindsOf(ROADSTER)).toContain('calipers');
    expect(kindsOf(drums)).not.toContain('calipers');
  });

  it('keeps an odometer reading of today, where one is given', () => {
    const barn = openBarn();
    expect(carOf(barn, carIn(barn, { km: 87_400 })).facts.odometer).toEqual([{ day: TODAY, km: 87_400 }]);
    expect(carOf(barn, carIn(barn)).facts.odometer).toEqual([]);
  });

  it.each([
    [[...ROADSTER, 'diesel'], 'Fuel: choose one, 2 were given.'],
    [ROADSTER.filter((trait) => trait !== 'rear-drums'), 'Rear brakes: choose one, 0 were given.'],
  ])('refuses a facet of one with none or two of its traits', (traits, message) => {
    const { store, acting } = openBarn();
    expect(addCarAct(store, acting, newCar({ traits }))).toEqual({ ok: false, faults: [{ field: 'traits', message }] });
    expect(carsOf(store, acting.collectionId)).toEqual([]);
  });

  it('tells all faults at once, the build date first', () => {
    const { store, acting } = openBarn();
    const outcome = addCarAct(store, acting, newCar({ built: '', traits: [] }));
    const fields = outcome.ok ? [] : outcome.faults.map(({ field }) => field);
    expect(fields[0]).toBe('built');
    expect(fields.filter((field) => field === 'traits').length).toBeGreaterThan(5);
  });
});

describe('the build date', () => {
  it.each([
    ['1967', '1967', '1967-01-01', '1967-12-31'],
    ['June 1967', '1967-06', '1967-06-01', '1967-06-30'],
    ['3/4/1967', '1967-04-03', '1967-04-03', '1967-04-03'],
    ['about 1967', '1967~', '1966-01-01', '1968-12-31'],
    ['between 1964 and 1967', '1964/1967', '1964-01-01', '1967-12-31'],
    ['before 1970', '../1969-12-31', null, '1969-12-31'],
    ['after 1965', '1966-01-01/..', '1966-01-01', TODAY],
    ['the 1960s', '196X', '1960-01-01', '1969-12-31'],
    ['196X', '196X', '1960-01-01', '1969-12-31'],
    ['unknown', null, null, null],
    ['not looked yet', null, null, null],
  ])('may be “%s”', (built, builtEdtf, builtFrom, builtTo) => {
    const barn = openBarn();
    const { car, facts } = carOf(barn, carIn(barn, { built }));
    expect(car).toMatchObject({ builtTyped: built, builtEdtf, builtFrom, builtTo });
    expect(facts.built).toEqual({ from: builtFrom, to: builtTo });
  });

  it.each([
    ['', 'Nothing was typed'],
    ['long ago', 'was not understood'],
    ['1884', 'there were no motor cars before'],
    ['2027', 'lies ahead'],
    ['original', 'Type the year'],
    ['between 1970 and 1967', 'ends before it begins'],
  ])('may not be “%s”', (built, why) => {
    const { store, acting } = openBarn();
    const outcome = addCarAct(store, acting, newCar({ built }));
    expect(outcome).toEqual({
      ok: false,
      faults: [{ field: 'built', message: expect.stringContaining(why) as string }],
    });
  });

  it('that can mean two days offers both; the one chosen counts and the text stays as typed', () => {
    const { store, acting } = openBarn();
    const barn = { store, acting: { ...acting, order: 'ask' as const } };
    const outcome = addCarAct(store, barn.acting, newCar({ built: '3/4/1967' }));
    expect(outcome).toMatchObject({
      ok: false,
      faults: [
        {
          field: 'built',
          choices: [
            { value: '1967-04-03', label: '3 April 1967' },
            { value: '1967-03-04', label: '4 March 1967' },
          ],
        },
      ],
    });
    const { car } = carOf(barn, carIn(barn, { built: '3/4/1967', builtChoice: '1967-03-04' }));
    expect(car).toMatchObject({ builtTyped: '3/4/1967', builtEdtf: '1967-03-04', builtFrom: '1967-03-04' });
  });

  it('with two digits for the year offers the centuries it can be of', () => {
    const { store, acting } = openBarn();
    const outcome = addCarAct(store, acting, newCar({ built: 'June ’25' }));
    expect(outcome).toMatchObject({
      faults: [{ choices: [{ label: 'June 1925' }, { label: 'June 2025' }] }],
    });
    const { facts } = carOf({ store, acting }, carIn({ store, acting }, { built: 'June ’67' }));
    expect(facts.built.from).toBe('1967-06-01');
  });
});
