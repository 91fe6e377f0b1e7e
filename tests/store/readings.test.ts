import { describe, expect, it } from 'vitest';
import { changeCarAct } from '../../src/acts/add-car.ts';
import { closedParts, findPart } from '../../src/store/cars.ts';
import {
  type NewReading,
  readingsOfParts,
  recordReadings,
  setDetails,
  withdrawReading,
} from '../../src/store/readings.ts';
import { type Barn, carIn, carOf, must, newCar, openBarn, partOf, ROADSTER, TODAY } from '../support/cars.ts';
import { record, typed } from '../support/readings.ts';

const setUp = (): { barn: Barn; carId: string; battery: string } => {
  const barn = openBarn();
  const carId = carIn(barn);
  return { barn, carId, battery: partOf(barn, carId, 'battery-flooded').id };
};

const volts = (partId: string, value: number, more: Partial<NewReading> = {}): NewReading => ({
  partId,
  gauge: 'rest-voltage',
  day: TODAY,
  value,
  typed: String(value),
  unit: 'V',
  warmth: null,
  instrument: '',
  note: '',
  recordedOn: TODAY,
  recordedBy: null,
  ...more,
});

describe('readings in the store', () => {
  it('come oldest day first, two of a day as they were recorded, each to its part', () => {
    const { barn, carId, battery } = setUp();
    const { store, acting } = barn;
    const wiring = partOf(barn, carId, 'wiring').id;
    recordReadings(store, acting.collectionId, [
      volts(battery, 12.1, { day: '2026-11-20' }),
      volts(battery, 12.2, { day: '2026-11-10' }),
      volts(battery, 12.3, { day: '2026-11-20' }),
      volts(wiring, 5, { gauge: 'standing-drain', unit: 'mA' }),
    ]);
    const read = readingsOfParts(store, acting.collectionId, [battery, wiring]);
    expect(read.get(battery)?.map(({ value }) => value)).toEqual([12.2, 12.1, 12.3]);
    expect(read.get(wiring)?.map(({ value }) => value)).toEqual([5]);
    expect(readingsOfParts(store, acting.collectionId, [])).toEqual(new Map());
  });

  it('of which one has no part are not recorded at all', () => {
    const { barn, battery } = setUp();
    expect(() =>
      recordReadings(barn.store, barn.acting.collectionId, [volts(battery, 12.1), volts('no such part', 12.2)]),
    ).toThrow(/FOREIGN KEY/);
    expect(readingsOfParts(barn.store, barn.acting.collectionId, [battery])).toEqual(new Map());
  });

  it('that were slips are withdrawn and not deleted', () => {
    const { barn, carId, battery } = setUp();
    const { store, acting } = barn;
    recordReadings(store, acting.collectionId, [volts(battery, 1.21), volts(battery, 12.1)]);
    const [slip] = partOf(barn, carId, 'battery-flooded').readings;
    withdrawReading(store, acting.collectionId, battery, slip?.id ?? '', TODAY);
    expect(partOf(barn, carId, 'battery-flooded').readings.map(({ value }) => value)).toEqual([12.1]);
    const kept = store.$client.prepare('select value, withdrawn_on as day from readings order by id').all();
    expect(kept).toEqual([
      { value: 1.21, day: TODAY },
      { value: 12.1, day: null },
    ]);
  });

  it('of another collection, or another part, are neither read nor withdrawn', () => {
    const { barn, carId, battery } = setUp();
    const { store, acting } = barn;
    const shed = openBarn(store, 'The shed');
    recordReadings(store, acting.collectionId, [volts(battery, 12.1)]);
    const [reading] = partOf(barn, carId, 'battery-flooded').readings;
    const id = reading?.id ?? '';
    withdrawReading(store, shed.acting.collectionId, battery, id, TODAY);
    withdrawReading(store, acting.collectionId, partOf(barn, carId, 'wiring').id, id, TODAY);
    expect(partOf(barn, carId, 'battery-flooded').readings).toHaveLength(1);
    expect(readingsOfParts(store, shed.acting.collectionId, [battery])).toEqual(new Map());
    expect(() => recordReadings(store, shed.acting.collectionId, [volts(battery, 12.1)])).toThrow(/FOREIGN KEY/);
  });

  it('keep the record of a part that leaves the car without ever having had a date', () => {
    const { barn, carId } = setUp();
    const { id } = partOf(barn, carId, 'overdrive');
    must(record(barn, carId, [typed(id, 'engagement', '1')]));
    const traits = ROADSTER.filter((trait) => trait !== 'overdrive');
    must(changeCarAct(barn.store, barn.acting, carOf(barn, carId), newCar({ traits })));
    expect(closedParts(barn.store, barn.acting.collectionId, carId)).toMatchObject([
      { id, readings: [{ gauge: 'engagement' }] },
    ]);
  });
});

describe('details in the store', () => {
  it('are those of one part of one collection', () => {
    const { barn, carId, battery } = setUp();
    const { store, acting } = barn;
    setDetails(store, openBarn(store, 'The shed').acting.collectionId, battery, { volts: '6' });
    expect(findPart(store, acting.collectionId, battery)?.details).toEqual({});
    setDetails(store, acting.collectionId, battery, { volts: '12', capacity: 60.5 });
    expect(findPart(store, acting.collectionId, battery)?.details).toEqual({ volts: '12', capacity: 60.5 });
    const others = carOf(barn, carId).parts.filter(({ id }) => id !== battery);
    expect(others.every(({ details }) => Object.keys(details).length === 0)).toBe(true);
  });
});
