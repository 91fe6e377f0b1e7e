import { describe, expect, it } from 'vitest';
import { findingsOf } from '../../src/findings/car.ts';
import { carsOf, carWithParts, recordOdometer, replacePart, retirePart, withdrawClaim } from '../../src/store/cars.ts';
import { addPlace, putCar } from '../../src/store/places.ts';
import { setDetails, withdrawReading } from '../../src/store/readings.ts';
import { eachCar } from '../../src/store/stream.ts';
import { type Barn, carIn, claim, date, must, openBarn, partOf, TODAY, traitsOf } from '../support/cars.ts';
import { FROSTY, record, typed } from '../support/readings.ts';

/** Cars with everything a car can carry: dates, words, closed parts, readings, details, a place; some of it withdrawn. */
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
  const battery = partOf(barn, carId, 'battery-flooded').id;
  const read = [
    typed(battery, 'rest-voltage', '12.2', { day: '2026-11-20' }),
    typed(battery, 'density', '1.27', { day: '2026-11-10', warmth: '12' }),
    typed(battery, 'rest-voltage', '12.6', { day: '2026-11-20' }),
    typed(partOf(barn, carId, 'v-belt').id, 'deflection', '10'),
    typed(partOf(barn, carId, 'tires-road', 'front left').id, 'tread', '6'),
  ];
  must(record(barn, carId, read));
  const [tread] = partOf(barn, carId, 'tires-road', 'front left').readings;
  withdrawReading(store, acting.collectionId, tread?.partId ?? '', tread?.id ?? '', TODAY);
  const renewed = partOf(barn, carId, 'v-belt');
  replacePart(store, renewed, TODAY, 'Renewed.', '', [], {});
  setDetails(store, acting.collectionId, battery, { volts: '12', capacity: 60 });
  putCar(
    store,
    acting.collectionId,
    carId,
    addPlace(store, acting.collectionId, { ...FROSTY, name: 'Barn', note: '' }),
    TODAY,
  );
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
      expect(asked?.parts).toHaveLength(parts.length);
      expect(parts).toMatchObject(
        (asked?.parts ?? []).map(({ id, kind, position, details, readings, claims }) => ({
          id,
          kind,
          position,
          details,
          readings: readings.map(({ gauge, day, value, unit, warmth, recordedOn }) => ({
            gauge,
            day,
            value,
            unit,
            warmth,
            recordedOn,
          })),
          claims: claims.map(({ clock, said, from, to, evidence, km }) => ({ clock, said, from, to, evidence, km })),
        })),
      );
    }
  });

  it('yields readings oldest first, none withdrawn and none of a closed part, and the place', () => {
    const { store, acting } = fullBarn();
    const [first] = [...eachCar(store, acting.collectionId)];
    const readings = first?.parts.flatMap(({ kind, readings: of }) =>
      of.map(({ gauge, value }) => [kind, gauge, value]),
    );
    expect(readings).toEqual([
      ['battery-flooded', 'density', 1.27],
      ['battery-flooded', 'rest-voltage', 12.2],
      ['battery-flooded', 'rest-voltage', 12.6],
    ]);
    expect(first?.facts).toMatchObject({ place: { winterLow: -20, shelter: 'open' }, placedOn: TODAY });
    expect(first?.parts.find(({ kind }) => kind === 'battery-flooded')?.details).toEqual({ volts: '12', capacity: 60 });
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
