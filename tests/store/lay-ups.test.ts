import { describe, expect, it } from 'vitest';
import {
  addLayUp,
  addOwnStep,
  changeLayUp,
  findLayUp,
  layUpsOf,
  type NewLayUp,
  type NewTick,
  openLayUps,
  recordRound,
  removeOwnStep,
  tickStep,
  untickStep,
  withdrawRound,
} from '../../src/store/lay-ups.ts';
import { type Barn, carIn, openBarn, TODAY } from '../support/cars.ts';

const newLayUp = ({ acting }: Barn, carId: string, more: Partial<NewLayUp> = {}): NewLayUp => ({
  collectionId: acting.collectionId,
  carId,
  parkedOn: '2026-11-01',
  returnOn: '2027-04-01',
  placeId: null,
  visitorId: null,
  phone: '',
  circumstances: ['mice'],
  choices: { tank: 'drained' },
  numbers: { dose: 30 },
  papers: { storageFrom: '2026-11-02', roadUntil: null, noticeFrom: null, renewsOn: null, rules: 'Ask' },
  note: '',
  isTemplate: false,
  madeOn: '2026-09-10',
  madeBy: acting.personId,
  ...more,
});
const tick = (step: string, more: Partial<NewTick> = {}): NewTick => ({
  plan: 'lay-up',
  step,
  state: 'done',
  day: TODAY,
  note: '',
  cost: null,
  recordedOn: TODAY,
  recordedBy: null,
  ...more,
});
const round = (day: '2026-12-01' | '2027-01-01') => ({
  day,
  answers: { smell: 'none' },
  note: '',
  recordedOn: day,
  recordedBy: null,
});

const laidUp = (barn = openBarn()) => {
  const carId = carIn(barn);
  const id = addLayUp(barn.store, newLayUp(barn, carId));
  const { store, acting } = barn;
  const found = () => {
    const one = findLayUp(store, acting.collectionId, id);
    if (!one) throw new Error('No lay-up');
    return one;
  };
  return { barn, store, carId, id, found, collectionId: acting.collectionId, personId: acting.personId };
};

describe('a lay-up in the store', () => {
  it('comes back as it was put there, open and not looked at', () => {
    const { barn, carId, id, found } = laidUp();
    expect(found()).toEqual({
      row: { ...newLayUp(barn, carId), id, seen: [], closedOn: null, closedHow: null, closedBy: null },
      ticks: [],
      own: [],
      rounds: [],
    });
  });

  it('is changed alone', () => {
    const { barn, store, collectionId, id, found } = laidUp();
    const other = laidUp(barn);
    changeLayUp(store, collectionId, id, { note: 'Key at the gate', returnOn: null });
    expect(found().row).toMatchObject({ note: 'Key at the gate', returnOn: null });
    expect(other.found().row).toMatchObject({ note: '', returnOn: '2027-04-01' });
  });

  it('is listed by car, the last parked first', () => {
    const { barn, store, collectionId, carId, id } = laidUp();
    const earlier = addLayUp(store, newLayUp(barn, carId, { parkedOn: '2024-11-01' }));
    const later = addLayUp(store, newLayUp(barn, carId, { parkedOn: '2028-11-01' }));
    const other = laidUp(barn);
    expect(layUpsOf(store, collectionId, carId).map((row) => row.id)).toEqual([later, id, earlier]);
    expect(layUpsOf(store, collectionId).map((row) => row.id)).toHaveLength(4);
    expect(layUpsOf(store, collectionId, other.carId).map((row) => row.id)).toEqual([other.id]);
  });

  it('is open from the day it was made until the day it is closed', () => {
    const { store, collectionId, carId, id } = laidUp();
    const openOn = (day: `${number}-${number}-${number}`) => openLayUps(store, collectionId, day).get(carId)?.id;
    expect(openOn('2026-09-09')).toBeUndefined();
    expect(openOn('2026-09-10')).toBe(id);
    expect(openOn('2029-01-01')).toBe(id);
    changeLayUp(store, collectionId, id, { closedOn: '2027-03-28', closedHow: 'back' });
    expect(openOn('2027-03-27')).toBe(id);
    expect(openOn('2027-03-28')).toBeUndefined();
  });
});

describe('what was said of a step', () => {
  it('takes the place of what was said before; the slip is withdrawn and not lost', () => {
    const { store, collectionId, personId, id, found } = laidUp();
    tickStep(store, collectionId, id, tick('wax', { state: 'skipped', note: 'Wrapped' }));
    tickStep(store, collectionId, id, tick('wax', { note: 'After all', cost: 12.5, recordedBy: personId }));
    expect(found().ticks).toMatchObject([{ step: 'wax', state: 'done', note: 'After all', cost: 12.5, by: 'Ada' }]);
    const rows = store.$client.prepare('select note, withdrawn_on from ticks order by id').all();
    expect(rows).toEqual([
      { note: 'Wrapped', withdrawn_on: TODAY },
      { note: 'After all', withdrawn_on: null },
    ]);
  });

  it('is told apart by plan and by stay', () => {
    const { barn, store, collectionId, id, found } = laidUp();
    const other = laidUp(barn);
    tickStep(store, collectionId, id, tick('brake-fluid'));
    tickStep(store, collectionId, id, tick('brake-fluid', { plan: 'wake-up' }));
    tickStep(store, collectionId, other.id, tick('brake-fluid'));
    untickStep(store, collectionId, id, { plan: 'lay-up', step: 'brake-fluid' }, TODAY);
    expect(found().ticks.map(({ plan }) => plan)).toEqual(['wake-up']);
    expect(other.found().ticks).toHaveLength(1);
  });

  it('by nobody who is known any more is said by somebody', () => {
    const { store, collectionId, id, found } = laidUp();
    tickStep(store, collectionId, id, tick('wax'));
    recordRound(store, collectionId, id, round('2026-12-01'));
    expect([found().ticks[0]?.by, found().rounds[0]?.by]).toEqual(['somebody', 'somebody']);
  });
});

describe('steps of one’s own', () => {
  it('come in the order they were added, and go with what was ticked of them', () => {
    const { store, collectionId, id, found } = laidUp();
    const own = (title: string) => addOwnStep(store, collectionId, id, { plan: 'lay-up', title, days: 3, note: '' });
    const [pins, hood] = [own('Pins'), own('Hood')];
    tickStep(store, collectionId, id, tick(pins));
    tickStep(store, collectionId, id, tick(hood));
    expect(found().own.map(({ title }) => title)).toEqual(['Pins', 'Hood']);
    removeOwnStep(store, collectionId, id, { plan: 'lay-up', id: pins }, TODAY);
    expect(found().own.map(({ title }) => title)).toEqual(['Hood']);
    expect(found().ticks.map(({ step }) => step)).toEqual([hood]);
  });
});

describe('rounds', () => {
  it('come by their days, without those that were taken back', () => {
    const { store, collectionId, personId, id, found } = laidUp();
    recordRound(store, collectionId, id, { ...round('2027-01-01'), recordedBy: personId });
    recordRound(store, collectionId, id, round('2026-12-01'));
    expect(found().rounds.map(({ day, by }) => [day, by])).toEqual([
      ['2026-12-01', 'somebody'],
      ['2027-01-01', 'Ada'],
    ]);
    withdrawRound(store, collectionId, id, found().rounds[0]?.id ?? '', TODAY);
    expect(found().rounds.map(({ day }) => day)).toEqual(['2027-01-01']);
    expect(store.$client.prepare('select count(*) from rounds').pluck().get()).toBe(2);
  });
});

describe('a collection', () => {
  it('neither reads nor changes the lay-ups of another', () => {
    const { barn, store, id, found } = laidUp();
    recordRound(store, barn.acting.collectionId, id, round('2026-12-01'));
    const own = addOwnStep(store, barn.acting.collectionId, id, { plan: 'lay-up', title: 'Pins', days: 0, note: '' });
    tickStep(store, barn.acting.collectionId, id, tick('wax'));
    const before = found();
    const theirs = openBarn(store, 'The shed').acting.collectionId;
    expect(findLayUp(store, theirs, id)).toBeUndefined();
    expect(layUpsOf(store, theirs)).toEqual([]);
    expect(openLayUps(store, theirs, TODAY).size).toBe(0);
    changeLayUp(store, theirs, id, { note: 'Taken' });
    untickStep(store, theirs, id, { plan: 'lay-up', step: 'wax' }, TODAY);
    removeOwnStep(store, theirs, id, { plan: 'lay-up', id: own }, TODAY);
    withdrawRound(store, theirs, id, before.rounds[0]?.id ?? '', TODAY);
    expect(found()).toEqual(before);
  });

  it('can hang nothing on a lay-up of another, and no lay-up on its car', () => {
    const { barn, store, carId, id } = laidUp();
    const shed = openBarn(store, 'The shed');
    const theirs = shed.acting.collectionId;
    expect(() => tickStep(store, theirs, id, tick('wax'))).toThrow(/FOREIGN KEY/);
    expect(() => recordRound(store, theirs, id, round('2026-12-01'))).toThrow(/FOREIGN KEY/);
    expect(() => addOwnStep(store, theirs, id, { plan: 'lay-up', title: 'x', days: 0, note: '' })).toThrow(
      /FOREIGN KEY/,
    );
    expect(() => addLayUp(store, newLayUp(shed, carId))).toThrow(/FOREIGN KEY/);
    expect(findLayUp(store, barn.acting.collectionId, id)?.ticks).toEqual([]);
  });

  it('has its open lay-ups found by an index, not by reading all', () => {
    const { store } = laidUp();
    const plan = (query: string) =>
      (store.$client.prepare(`explain query plan ${query}`).all() as { detail: string }[])
        .map(({ detail }) => detail)
        .join('\n');
    expect(plan("select * from lay_ups where collection_id = 'a' and car_id = 'b'")).toContain('lay_ups_of_car');
    expect(plan("select * from ticks where collection_id = 'a' and lay_up_id = 'b'")).toContain('ticks_of_lay_up');
    expect(plan("select * from rounds where collection_id = 'a' and lay_up_id = 'b'")).toContain('rounds_of_lay_up');
  });
});
