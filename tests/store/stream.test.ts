import { describe, expect, it } from 'vitest';
import { findingsOf } from '../../src/findings/car.ts';
import { carsOf, carWithParts, recordOdometer, replacePart, retirePart, withdrawClaim } from '../../src/store/cars.ts';
import { eachCar } from '../../src/store/stream.ts';
import { type Barn, carIn, claim, date, openBarn, partOf, TODAY, traitsOf } from '../support/cars.ts';

/** Cars with everything a car can carry: no dates, several dates of a part, words, closed parts, withdrawn dates. */
const fullBarn = (): Barn => {
  const barn = openBarn();
  const { store, acting } = barn;
  const carId = carIn(barn, { km: 87_400 });
  recordOdometer(store, acting.collectionId, carId, { day: '2020-05-01', km: 80_000 });
  date(barn, carId, 'tires-road', claim('made', '2318', { km: 79_000 }), 'front left');
  date(barn, carId, 'tires-road', claim('fitted', 'about 2019', { evidence: 'own memory' }), 'front left');
  date(barn, carId, 'tires-road', claim('made', 'unknown'), 'rear right');
  date(barn, carId, 'wiring', claim('fitted', 'original'));
  date(barn, carId, 'spark-plugs', claim('fitted', 'not looked yet'));
  date(barn, carId, 'dampers', claim('fitted', 'before 1998'));
  const fluid = date(barn, carId, 'brake-fluid-glycol', claim('filled', 'June 2025'));
  const slip = partOf(barn, carId, 'brake-fluid-glycol').claims[0]?.id ?? '';
  withdrawClaim(store, acting.collectionId, fluid, slip, TODAY);
  date(barn, carId, 'v-belt', claim('fitted', '2015'));
  replacePart(store, partOf(barn, carId, 'v-belt'), TODAY, 'Renewed.', '', [], {});
  retirePart(store, acting.collectionId, partOf(barn, carId, 'overdrive').id, TODAY, 'None.');
  carIn(barn, { name: 'Alder Coupe', built: 'unknown', traits: traitsOf('coupe-injection-abs') });
  return barn;
};

describe('walking a collection car by car', () => {
  it('yields the same facts as asking for each car', () => {
    const barn = fullBarn();
    const { store, acting } = barn;
    const streamed = [...eachCar(store, acting.collectionId)];
    expect(streamed).toHaveLength(2);
    for (const { name, traits, facts, parts } of streamed) {
      const asked = carWithParts(store, acting.collectionId, facts.id);
      expect({ name, traits, facts }).toEqual({
        name: asked?.car.name,
        traits: asked?.car.traits,
        facts: asked?.facts,
      });
      expect(parts).toEqual(
        asked?.parts.map(({ id, kind, position, claims }) => ({
          id,
          kind,
          position,
          claims: claims.map(({ clock, said, from, to, evidence, km }) => ({ clock, said, from, to, evidence, km })),
        })),
      );
    }
  });

  it('leads to the same standings as asking for each car', () => {
    const { store, acting } = fullBarn();
    const standings = [...eachCar(store, acting.collectionId)].map(({ facts, parts }) =>
      findingsOf(facts, parts, [], TODAY).map(({ standing, began }) => [standing, began]),
    );
    const asked = carsOf(store, acting.collectionId)
      .flatMap(({ id }) => carWithParts(store, acting.collectionId, id) ?? [])
      .toSorted((a, b) => (a.car.id < b.car.id ? -1 : 1))
      .map(({ facts, parts }) => findingsOf(facts, parts, [], TODAY).map(({ standing, began }) => [standing, began]));
    expect(standings).toEqual(asked);
    expect(new Set(standings.flat().map(([standing]) => standing)).size).toBeGreaterThan(2);
  });

  it('yields no car of another collection', () => {
    const { store } = fullBarn();
    expect([...eachCar(store, openBarn(store, 'The shed').acting.collectionId)]).toEqual([]);
  });

  it('can be left in the middle, and the store still takes writes', () => {
    const barn = fullBarn();
    for (const { name } of eachCar(barn.store, barn.acting.collectionId)) if (name) break;
    carIn(barn, { name: 'Third' });
    expect([...eachCar(barn.store, barn.acting.collectionId)].map(({ name }) => name)).toContain('Third');
  });
});
