import { describe, expect, it } from 'vitest';
import {
  addPart,
  carsOf,
  carWithParts,
  changeCar,
  changePart,
  closedParts,
  findPart,
  lastAnswers,
  type NewClaim,
  recordClaim,
  recordOdometer,
  replacePart,
  retirePart,
  withdrawClaim,
} from '../../src/store/cars.ts';
import { endOverride, overridesOf, setOverride } from '../../src/store/overrides.ts';
import { type Barn, carIn, carOf, claim, date, openBarn, partOf, TODAY } from '../support/cars.ts';

const newClaim = (more: Partial<NewClaim> = {}): NewClaim => ({
  clock: 'filled',
  said: 'date',
  typed: 'June 2025',
  edtf: '2025-06',
  from: '2025-06-01',
  to: '2025-06-30',
  evidence: 'receipt',
  km: null,
  note: '',
  recordedOn: TODAY,
  recordedBy: null,
  ...more,
});

const FLUID = 'brake-fluid-glycol';

/** A store with two collections; each has a car with a dated brake fluid and an odometer reading. */
const twoBarns = () => {
  const ours = openBarn();
  const theirs = openBarn(ours.store, 'The shed');
  const [ourCar, theirCar] = [carIn(ours, { km: 1000 }), carIn(theirs, { name: 'Their Six', km: 2000 })];
  const [ourPart, theirPart] = [ours, theirs].map((barn, index) =>
    date(barn, index === 0 ? ourCar : theirCar, FLUID, claim('filled', 'June 2025')),
  ) as [string, string];
  return { store: ours.store, ours, theirs, ourCar, theirCar, ourPart, theirPart };
};

/** Everything of a collection that the store hands out. */
const all = ({ store, acting: { collectionId } }: Barn) =>
  carsOf(store, collectionId).map(({ id }) => ({
    ...carWithParts(store, collectionId, id),
    closed: closedParts(store, collectionId, id),
    answers: lastAnswers(store, collectionId, id, 99),
  }));

describe('one collection', () => {
  it('lists its own cars only, by name', () => {
    const { ours, theirs } = twoBarns();
    carIn(ours, { name: 'Alder Coupe' });
    const names = (barn: Barn) => carsOf(barn.store, barn.acting.collectionId).map(({ name }) => name);
    expect(names(ours)).toEqual(['Alder Coupe', 'Merle Tourer']);
    expect(names(theirs)).toEqual(['Their Six']);
  });

  it('finds nothing by another one’s ids', () => {
    const { store, ours, theirs, theirCar, theirPart } = twoBarns();
    replacePart(store, partOf(theirs, theirCar, FLUID), TODAY, 'Renewed.', '', [], {});
    const id = ours.acting.collectionId;
    expect(carWithParts(store, id, theirCar)).toBeUndefined();
    expect(findPart(store, id, theirPart)).toBeUndefined();
    expect(closedParts(store, id, theirCar)).toEqual([]);
    expect(lastAnswers(store, id, theirCar, 10)).toEqual([]);
    expect(closedParts(store, theirs.acting.collectionId, theirCar)).toHaveLength(1);
    expect(lastAnswers(store, theirs.acting.collectionId, theirCar, 10)).toHaveLength(1);
  });

  it('changes nothing of another one’s, whatever id it is given', () => {
    const { store, ours, theirs, theirCar, theirPart } = twoBarns();
    const before = all(theirs);
    const id = ours.acting.collectionId;
    const [theirClaim] = findPart(store, theirs.acting.collectionId, theirPart)?.claims ?? [];
    const { car } = carOf(theirs, theirCar);
    changeCar(
      store,
      { ...car, collectionId: id, name: 'Ours now' },
      { open: [], close: [{ id: theirPart, why: 'Gone.' }], drop: [] },
      TODAY,
    );
    changeCar(
      store,
      { ...car, collectionId: id },
      { open: [], close: [], drop: [partOf(theirs, theirCar, 'wiring').id] },
      TODAY,
    );
    changePart(store, id, theirPart, 'Ours now', []);
    retirePart(store, id, theirPart, TODAY, 'Gone.');
    withdrawClaim(store, id, theirPart, theirClaim?.id ?? '', TODAY);
    expect(all(theirs)).toEqual(before);
  });

  it.each<[string, (barns: ReturnType<typeof twoBarns>, id: string) => unknown]>([
    ['an odometer reading', ({ store, theirCar }, id) => recordOdometer(store, id, theirCar, { day: TODAY, km: 1 })],
    [
      'a part',
      ({ store, theirCar }, id) => addPart(store, id, theirCar, TODAY, { kind: 'wiring', position: 'second' }, []),
    ],
    ['a date', ({ store, theirPart }, id) => recordClaim(store, id, theirPart, newClaim(), null)],
    ['a date with a note', ({ store, theirPart }, id) => changePart(store, id, theirPart, 'x', [newClaim()])],
  ])('cannot hang %s on another one’s car', (_, hang) => {
    const barns = twoBarns();
    const before = [all(barns.ours), all(barns.theirs)];
    expect(() => hang(barns, barns.ours.acting.collectionId)).toThrow(/FOREIGN KEY/);
    expect([all(barns.ours), all(barns.theirs)]).toEqual(before);
  });

  it('cannot hang a successor on another one’s car', () => {
    const { store, ours, theirs, theirCar } = twoBarns();
    const before = [all(ours), all(theirs)];
    const part = { ...partOf(theirs, theirCar, FLUID), collectionId: ours.acting.collectionId };
    expect(replacePart(store, part, TODAY, '', '', [], {})).toBeNull();
    expect([all(ours), all(theirs)]).toEqual(before);
  });

  it('withdraws no claim of another part, even of its own', () => {
    const { store, ours, ourCar, ourPart } = twoBarns();
    const [own] = findPart(store, ours.acting.collectionId, ourPart)?.claims ?? [];
    withdrawClaim(store, ours.acting.collectionId, partOf(ours, ourCar, 'wiring').id, own?.id ?? '', TODAY);
    expect(findPart(store, ours.acting.collectionId, ourPart)?.claims).toEqual([own]);
  });

  it('has intervals of its own', () => {
    const { store, ours, theirs } = twoBarns();
    const [id, other] = [ours.acting.collectionId, theirs.acting.collectionId];
    const row = {
      carId: null,
      kind: FLUID,
      authority: 'own' as const,
      lookFrom: null,
      replaceBy: 12,
      replaceByKm: null,
      note: 'Damp barn',
      setOn: TODAY,
    };
    setOverride(store, { ...row, collectionId: other });
    expect(overridesOf(store, id)).toEqual([]);
    endOverride(store, id, FLUID, null, 'own', TODAY);
    expect(overridesOf(store, other)).toHaveLength(1);
  });
});

describe('a replaced part', () => {
  const renewed = () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const oldId = date(barn, carId, 'tires-road', claim('made', '2318'), 'front left');
    const old = partOf(barn, carId, 'tires-road', 'front left');
    const newId = replacePart(barn.store, old, '2026-10-01', 'Worn.', 'Same size', [newClaim({ clock: 'fitted' })], {});
    return { ...barn, barn, carId, oldId, newId, id: barn.acting.collectionId };
  };

  it('is closed with its day and reason, and keeps its claims', () => {
    const { store, id, carId, oldId } = renewed();
    expect(closedParts(store, id, carId)).toEqual([
      expect.objectContaining({
        id: oldId,
        closedOn: '2026-10-01',
        closedWhy: 'Worn.',
        claims: [expect.objectContaining({ typed: '2318', from: '2018-06-10' })],
      }),
    ]);
  });

  it('is succeeded by an open one at the same place that names it', () => {
    const { barn, carId, oldId, newId } = renewed();
    expect(partOf(barn, carId, 'tires-road', 'front left')).toMatchObject({
      id: newId,
      replaces: oldId,
      openedOn: '2026-10-01',
      closedOn: null,
      note: 'Same size',
      claims: [{ clock: 'fitted' }],
    });
  });

  it('can be replaced again: the history is a chain, newest end first', () => {
    const { barn, store, id, carId, oldId, newId } = renewed();
    const third = replacePart(
      store,
      partOf(barn, carId, 'tires-road', 'front left'),
      '2026-11-01',
      'Nail.',
      '',
      [],
      {},
    );
    expect(closedParts(store, id, carId).map((part) => part.id)).toEqual([newId, oldId]);
    expect(findPart(store, id, third ?? '')?.replaces).toBe(newId);
    expect(carOf(barn, carId).parts.filter(({ kind }) => kind === 'tires-road')).toHaveLength(4);
  });

  it('keeps the day and the reason it was closed with', () => {
    const { store, id, oldId } = renewed();
    retirePart(store, id, oldId, TODAY, 'Not fitted to this car.');
    expect(findPart(store, id, oldId)).toMatchObject({ closedOn: '2026-10-01', closedWhy: 'Worn.' });
  });

  it('stays open when its successor cannot be written', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const old = partOf(barn, carId, FLUID);
    const bad = newClaim({ recordedBy: 'nobody' });
    expect(() => replacePart(barn.store, old, TODAY, 'Renewed.', '', [bad], {})).toThrow(/FOREIGN KEY/);
    expect(partOf(barn, carId, FLUID)).toEqual(old);
  });
});

describe('a claim', () => {
  const dated = () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const partId = date(barn, carId, FLUID, claim('filled', 'June 2025'));
    const id = barn.acting.collectionId;
    const stored = () =>
      barn.store.$client
        .prepare('select typed, withdrawn_on as withdrawnOn from claims where part_id = ? order by id')
        .all(partId);
    const [first] = findPart(barn.store, id, partId)?.claims ?? [];
    return { barn, store: barn.store, id, carId, partId, firstId: first?.id ?? '', stored };
  };

  it('that was a slip is withdrawn and kept: no page or finding sees it any more', () => {
    const { barn, store, id, carId, partId, firstId, stored } = dated();
    withdrawClaim(store, id, partId, firstId, TODAY);
    expect(partOf(barn, carId, FLUID).claims).toEqual([]);
    expect(lastAnswers(store, id, carId, 10)).toEqual([]);
    expect(stored()).toEqual([{ typed: 'June 2025', withdrawnOn: TODAY }]);
  });

  it('recorded instead of another withdraws that one in the same stroke', () => {
    const { barn, store, id, carId, partId, firstId, stored } = dated();
    recordClaim(store, id, partId, newClaim({ typed: 'July 2025' }), firstId);
    expect(partOf(barn, carId, FLUID).claims.map(({ typed }) => typed)).toEqual(['July 2025']);
    expect(stored()).toEqual([
      { typed: 'June 2025', withdrawnOn: TODAY },
      { typed: 'July 2025', withdrawnOn: null },
    ]);
  });

  it('that cannot be written withdraws nothing', () => {
    const { barn, store, id, carId, partId, firstId } = dated();
    const bad = newClaim({ recordedBy: 'nobody' });
    expect(() => recordClaim(store, id, partId, bad, firstId)).toThrow(/FOREIGN KEY/);
    expect(partOf(barn, carId, FLUID).claims.map(({ id: claimId }) => claimId)).toEqual([firstId]);
  });

  it('that disagrees with another stands beside it', () => {
    const { barn, store, id, carId, partId } = dated();
    recordClaim(store, id, partId, newClaim({ typed: '2019', from: '2019-01-01', to: '2019-12-31' }), null);
    expect(partOf(barn, carId, FLUID).claims.map(({ typed }) => typed)).toEqual(['June 2025', '2019']);
  });

  it('is among the answers last given, newest first, with the kind of its part', () => {
    const { barn, store, id, carId } = dated();
    date(barn, carId, 'spark-plugs', claim('fitted', '2024'));
    const answers = lastAnswers(store, id, carId, 10).map(({ claim: { typed }, kind }) => [typed, kind]);
    expect(answers).toEqual([
      ['2024', 'spark-plugs'],
      ['June 2025', FLUID],
    ]);
    expect(lastAnswers(store, id, carId, 1)).toHaveLength(1);
  });
});

describe('an odometer', () => {
  it('keeps one reading a day, oldest first; a second one takes the first one’s place', () => {
    const barn = openBarn();
    const carId = carIn(barn, { km: 87_400 });
    const id = barn.acting.collectionId;
    recordOdometer(barn.store, id, carId, { day: '2026-01-01', km: 87_000 });
    recordOdometer(barn.store, id, carId, { day: TODAY, km: 87_410 });
    expect(carOf(barn, carId).facts.odometer).toEqual([
      { day: '2026-01-01', km: 87_000 },
      { day: TODAY, km: 87_410 },
    ]);
  });
});

describe('an interval of one’s own', () => {
  it('takes the place of the one for the same kind and car; other cars and the collection keep theirs', () => {
    const barn = openBarn();
    const id = barn.acting.collectionId;
    const carId = carIn(barn);
    const row = {
      collectionId: id,
      kind: FLUID,
      authority: 'own' as const,
      lookFrom: null,
      replaceByKm: null,
      note: 'x',
      setOn: TODAY,
    };
    setOverride(barn.store, { ...row, carId: null, replaceBy: 36 });
    setOverride(barn.store, { ...row, carId, replaceBy: 18 });
    setOverride(barn.store, { ...row, carId, replaceBy: 12 });
    const standing = () => overridesOf(barn.store, id).map((one) => [one.carId, one.replaceBy]);
    expect(standing()).toEqual([
      [null, 36],
      [carId, 12],
    ]);
    endOverride(barn.store, id, FLUID, carId, 'own', TODAY);
    expect(standing()).toEqual([[null, 36]]);
    const kept = barn.store.$client.prepare('select count(*) from overrides').pluck().get();
    expect(kept).toBe(3);
  });
});
