import { describe, expect, it } from 'vitest';
import { changeCarAct } from '../../src/acts/add-car.ts';
import { addPartAct } from '../../src/acts/parts.ts';
import { closedParts, retirePart } from '../../src/store/cars.ts';
import {
  type Barn,
  carIn,
  carOf,
  claim,
  date,
  must,
  newCar,
  openBarn,
  partOf,
  ROADSTER,
  TODAY,
} from '../support/cars.ts';

const without = (trait: string): string[] => ROADSTER.filter((one) => one !== trait);
const withBelt = [...ROADSTER, 'timing-belt'];

const barnWithCar = (): { barn: Barn; carId: string } => {
  const barn = openBarn();
  return { barn, carId: carIn(barn) };
};

const change = (barn: Barn, carId: string, traits: readonly string[], more = {}) =>
  must(changeCarAct(barn.store, barn.acting, carOf(barn, carId), newCar({ traits, ...more })));

const kinds = (barn: Barn, carId: string): string[] => carOf(barn, carId).parts.map(({ kind }) => kind);
const closed = (barn: Barn, carId: string) => closedParts(barn.store, barn.acting.collectionId, carId);

describe('changing a car', () => {
  it('changes its name, build date and note and leaves its parts alone', () => {
    const { barn, carId } = barnWithCar();
    const before = carOf(barn, carId).parts;
    change(barn, carId, ROADSTER, { name: 'Merle', built: 'May 1966', note: 'Second body' });
    const { car, parts } = carOf(barn, carId);
    expect(car).toMatchObject({ name: 'Merle', builtFrom: '1966-05-01', note: 'Second body', addedOn: TODAY });
    expect(parts).toEqual(before);
  });

  it('opens the parts of a trait that is added', () => {
    const { barn, carId } = barnWithCar();
    expect(kinds(barn, carId)).not.toContain('timing-belt');
    change(barn, carId, withBelt);
    expect(partOf(barn, carId, 'timing-belt')).toMatchObject({ openedOn: TODAY, claims: [] });
  });

  it('drops the parts of a trait taken away that never had a date', () => {
    const { barn, carId } = barnWithCar();
    change(barn, carId, without('overdrive'));
    expect(kinds(barn, carId)).not.toContain('overdrive');
    expect(closed(barn, carId)).toEqual([]);
  });

  it('closes those that carry a record and keeps it', () => {
    const { barn, carId } = barnWithCar();
    const partId = date(barn, carId, 'overdrive', claim('filled', '2020'));
    change(barn, carId, without('overdrive'));
    expect(kinds(barn, carId)).not.toContain('overdrive');
    expect(closed(barn, carId)).toEqual([
      expect.objectContaining({
        id: partId,
        closedOn: TODAY,
        closedWhy: 'Not on this car any more.',
        claims: [expect.objectContaining({ typed: '2020' })],
      }),
    ]);
  });

  it('opens a new record where a trait comes back', () => {
    const { barn, carId } = barnWithCar();
    const before = date(barn, carId, 'overdrive', claim('filled', '2020'));
    change(barn, carId, without('overdrive'));
    change(barn, carId, ROADSTER);
    const now = partOf(barn, carId, 'overdrive');
    expect(now.id).not.toBe(before);
    expect(now.claims).toEqual([]);
  });

  it('leaves a part added by hand, whatever the traits say', () => {
    const { barn, carId } = barnWithCar();
    const byHand = { kind: 'timing-belt', position: null, note: 'Blower drive', claims: [] };
    const id = must(addPartAct(barn.store, barn.acting, carOf(barn, carId), byHand));
    change(barn, carId, without('overdrive'));
    expect(partOf(barn, carId, 'timing-belt').id).toBe(id);
  });

  it('opens no second one where a part added by hand is there already', () => {
    const { barn, carId } = barnWithCar();
    const byHand = { kind: 'timing-belt', position: null, note: '', claims: [] };
    const id = must(addPartAct(barn.store, barn.acting, carOf(barn, carId), byHand));
    change(barn, carId, withBelt);
    expect(
      carOf(barn, carId)
        .parts.filter(({ kind }) => kind === 'timing-belt')
        .map((part) => part.id),
    ).toEqual([id]);
  });

  it('does not bring back a part somebody took off the list', () => {
    const { barn, carId } = barnWithCar();
    retirePart(barn.store, barn.acting.collectionId, partOf(barn, carId, 'overdrive').id, TODAY, 'Taken out.');
    change(barn, carId, withBelt);
    expect(kinds(barn, carId)).toContain('timing-belt');
    expect(kinds(barn, carId)).not.toContain('overdrive');
  });

  it('opens what the list of its traits has gained since', () => {
    const { barn, carId } = barnWithCar();
    barn.store.$client.prepare(`delete from parts where kind = 'overdrive'`).run();
    change(barn, carId, ROADSTER);
    expect(kinds(barn, carId)).toContain('overdrive');
  });

  it('says what it did', () => {
    const { barn, carId } = barnWithCar();
    const partId = date(barn, carId, 'calipers', claim('fitted', '2020'));
    const drums = ROADSTER.map((trait) => (trait === 'front-discs' ? 'front-drums' : trait));
    expect(change(barn, carId, [...drums, 'timing-belt'])).toEqual({
      open: [{ kind: 'timing-belt', position: null }],
      close: [{ id: partId, why: 'Not on this car any more.' }],
      drop: [],
    });
  });

  it('that is refused changes nothing', () => {
    const { barn, carId } = barnWithCar();
    const before = carOf(barn, carId);
    const outcome = changeCarAct(barn.store, barn.acting, before, newCar({ name: 'New', traits: without('gasoline') }));
    expect(outcome.ok).toBe(false);
    expect(carOf(barn, carId)).toEqual(before);
  });
});
