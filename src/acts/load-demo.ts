/** Loads a demo through the doors people use, so that a slip in it is refused like anybody's. */
import { KINDS } from '../catalogue/kinds.ts';
import { QUICK_STARTS } from '../catalogue/quick-starts.ts';
import { STATED_TRAITS } from '../catalogue/traits.ts';
import type { CivilDate } from '../dates/civil.ts';
import { type CarWithParts, carWithParts, findPart, type PartOnRecord, recordOdometer } from '../store/cars.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { addCollection, addMember, findCollection } from '../store/people.ts';
import { addCarAct } from './add-car.ts';
import type { Demo, DemoCar, DemoClaim, DemoEnded, DemoOverride, DemoPart, DemoPlace, DemoReading } from './demo.ts';
import { actingOn, fail, type Loading, must } from './demo-loading.ts';
import { setDetailsAct } from './details.ts';
import { loadRevival } from './load-demo-revivals.ts';
import { loadLayUp } from './load-demo-stays.ts';
import { setInterval } from './override.ts';
import { addPartAct, changePartAct, datePart, renewPart } from './parts.ts';
import { addPlaceAct, putCarAct } from './places.ts';
import { recordReadingsAct } from './record-reading.ts';

/** All of the demo or nothing; a store that already has its collection is left as it is. */
export const loadDemo = (store: Store, demo: Demo, today: CivilDate): void =>
  inTransaction(store, (tx) => {
    const { collection, people, places, cars, overrides, layUps, revivals } = demo;
    if (findCollection(tx, collection.id)) return;
    const [owner, ...others] = people;
    addCollection(tx, { name: collection.name, timeZone: collection.timeZone }, personOf(owner), {
      collectionId: collection.id,
      personId: owner.id,
    });
    for (const { id, ...member } of others) addMember(tx, collection.id, member, id);
    for (const place of places) loadPlace({ store: tx, demo, today }, place);
    for (const car of cars) loadCar({ store: tx, demo, today }, car);
    for (const override of overrides) loadOverride({ store: tx, demo, today }, override);
    for (const layUp of layUps) loadLayUp({ store: tx, demo, today }, layUp);
    for (const revival of revivals) loadRevival({ store: tx, demo, today }, revival);
  });

const personOf = ({ name, email, dateOrder }: Demo['people'][0]) => ({ name, email, dateOrder });

const loadPlace = (loading: Loading, { id, ...given }: DemoPlace): void => {
  const acting = actingOn(loading, loading.today, loading.demo.people[0].id, given.name);
  must(addPlaceAct(loading.store, acting, given, id), `The place ${given.name}`);
};

const loadCar = (loading: Loading, car: DemoCar): void => {
  const { store, demo, today } = loading;
  const { id, name, built, note, addedOn, addedBy } = car;
  const traits = traitsOf(car);
  const acting = actingOn(loading, addedOn, addedBy, name);
  must(addCarAct(store, acting, { name, built, note, traits, km: null }, id), `${name}, built “${built}”`);
  if (car.place) must(putCarAct(store, acting, id, car.place), `${name}, where it stands`);
  for (const reading of car.odometer) {
    if (reading.day > today) fail(`${name}, odometer ${reading.km}`, `${reading.day} lies ahead.`);
    recordOdometer(store, demo.collection.id, id, reading);
  }
  const known = carWithParts(store, demo.collection.id, id);
  if (!known) fail(name, 'The car was not found again.');
  for (const part of car.parts) loadPart({ ...loading, car, known }, part);
};

/** The quick start's traits, put right; a trait that changes nothing is a slip. */
const traitsOf = ({ name, start, without, having }: DemoCar): string[] => {
  const usual: readonly string[] = QUICK_STARTS.find(({ key }) => key === start)?.traits ?? [];
  const idle = [
    ...without.filter((trait) => !usual.includes(trait)),
    ...having.filter((trait) => usual.includes(trait)),
  ];
  if (idle.length > 0) fail(`${name}, “${start}”`, `Changes nothing: ${idle.join(', ')}.`);
  const has = new Set([...usual, ...having]);
  for (const trait of without) has.delete(trait);
  return STATED_TRAITS.filter((trait) => has.has(trait));
};

interface LoadingPart extends Loading {
  car: DemoCar;
  known: CarWithParts;
}

const loadPart = (loading: LoadingPart, given: DemoPart): void => {
  const lives: (DemoEnded | DemoPart)[] = [...(given.before ?? []), given];
  let part = given.byHand ? addByHand(loading, given) : listed(loading, given);
  let ended: DemoEnded | undefined;
  for (const life of lives) {
    part = ended ? renew(loading, part, ended, life.note) : part;
    if (!ended && life.note) noteOn(loading, part, life.note);
    for (const claim of life.claims) part = date(loading, part, claim);
    if (life.details) answer(loading, part, life.details);
    for (const reading of life.readings ?? []) read(loading, part, reading);
    ended = 'closedOn' in life ? life : undefined;
  }
};

const listed = ({ car, known }: LoadingPart, { kind, position }: DemoPart): PartOnRecord =>
  known.parts.find((part) => part.kind === kind && part.position === (position ?? null)) ??
  fail(`${car.name}, ${kind} ${position ?? ''}`, 'The car has no such part.');

const addByHand = (loading: LoadingPart, { kind, position }: DemoPart): PartOnRecord => {
  const { store, car, known } = loading;
  const where = `${car.name}, ${kind} ${position ?? ''}`;
  const acting = actingOn(loading, car.addedOn, car.addedBy, where);
  const given = { kind, position: position ?? null, note: '', claims: [] };
  return again(loading, must(addPartAct(store, acting, known, given), where));
};

const noteOn = (loading: LoadingPart, part: PartOnRecord, note: string): void => {
  const { store, car, known } = loading;
  const where = placeOf(loading, part);
  const acting = actingOn(loading, part.openedOn, car.addedBy, where);
  must(changePartAct(store, acting, { part, car: known.facts }, { note, claims: [] }), where);
};

const renew = (loading: LoadingPart, part: PartOnRecord, ended: DemoEnded, note = ''): PartOnRecord => {
  const { store, car, known } = loading;
  const { closedOn, closedWhy: why } = ended;
  const where = `${placeOf(loading, part)}, renewed`;
  if (closedOn < part.openedOn) fail(where, `${closedOn} is before it was opened.`);
  const acting = actingOn(loading, closedOn, car.addedBy, where);
  return again(loading, must(renewPart(store, acting, { part, car: known.facts }, { why, note, claims: [] }), where));
};

const date = (loading: LoadingPart, part: PartOnRecord, claim: DemoClaim): PartOnRecord => {
  const { store, car, known } = loading;
  const { on = part.openedOn, by = car.addedBy, km = null, note = '', ...typed } = claim;
  const where = `${placeOf(loading, part)}, ${claim.clock} “${claim.typed}”`;
  if (on < part.openedOn) fail(where, `${on} is before the part was opened.`);
  const acting = actingOn(loading, on, by, where);
  must(datePart(store, acting, { part, car: known.facts }, { ...typed, km, note }), where);
  return again(loading, part.id);
};

const answer = (loading: LoadingPart, part: PartOnRecord, details: NonNullable<DemoPart['details']>): void => {
  const where = `${placeOf(loading, part)}, details`;
  const acting = actingOn(loading, part.openedOn, loading.car.addedBy, where);
  must(setDetailsAct(loading.store, acting, part, details), where);
};

const read = (loading: LoadingPart, part: PartOnRecord, reading: DemoReading): void => {
  const { store, car, known } = loading;
  const { gauge, typed, day, warmth = '', instrument = '', note = '', by = car.addedBy } = reading;
  const where = `${placeOf(loading, part)}, ${gauge} “${typed}”`;
  const given = {
    partId: part.id,
    gauge,
    typed,
    unit: '',
    day,
    warmth,
    warmthUnit: '°C',
    instrument,
    note,
    sure: false,
  };
  const parts = [again(loading, part.id)];
  must(
    recordReadingsAct(store, actingOn(loading, day, by, where), { facts: known.facts, parts }, [given], () => ''),
    where,
  );
};

const again = ({ store, demo, car }: LoadingPart, partId: string): PartOnRecord =>
  findPart(store, demo.collection.id, partId) ?? fail(car.name, 'A part was not found again.');

const placeOf = ({ car }: LoadingPart, { kind, position }: PartOnRecord): string =>
  `${car.name}, ${kind}${position ? ` ${position}` : ''}`;

const loadOverride = (loading: Loading, { kind: key, setOn, setBy, ...given }: DemoOverride): void => {
  const where = `Interval of ${key}`;
  const kind = KINDS.get(key) ?? fail(where, 'There is no such kind.');
  must(setInterval(loading.store, actingOn(loading, setOn, setBy, where), kind, given), where);
};
