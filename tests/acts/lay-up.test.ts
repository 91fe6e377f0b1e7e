import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/acts/fault.ts';
import {
  addOwnStepAct,
  type ClosingGiven,
  changeLayUpAct,
  chooseSide,
  closeLayUp,
  type LayUpGiven,
  reopenLayUp,
  understand,
} from '../../src/acts/lay-up.ts';
import { renewPart } from '../../src/acts/parts.ts';
import { skipStep } from '../../src/acts/tick.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { changesBetween, outlineOf } from '../../src/plans/changes.ts';
import { isDone } from '../../src/plans/plan.ts';
import { layUpsOf } from '../../src/store/lay-ups.ts';
import { putCar } from '../../src/store/places.ts';
import { type Barn, carIn, carOf, claim, date, must, openBarn, partOf } from '../support/cars.ts';
import {
  BACK,
  closeOn,
  everythingIn,
  layUpGiven,
  layUpIn,
  onDayIn,
  PARKED,
  PLANNED,
  personIn,
  placeIn,
  planIn,
  stayIn,
  stepOn,
  tickOn,
  titleOf,
  tryLayUp,
  winterBarn,
} from '../support/lay-ups.ts';
import { record, typed } from '../support/readings.ts';
import { keysOf } from '../support/stays.ts';

const fields = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.faults.map(({ field }) => field));
const change = (barn: Barn, id: string, on: CivilDate, more: Partial<LayUpGiven>): Outcome<null> =>
  changeLayUpAct(barn.store, { ...barn.acting, today: on }, stayIn(barn, id, on), layUpGiven(more));
const skip = (barn: Barn, id: string, key: string, on: CivilDate, reason: string): Outcome<null> =>
  skipStep(
    barn.store,
    { ...barn.acting, today: on },
    stayIn(barn, id, on),
    stepOn(barn, id, key, on),
    'lay-up',
    reason,
  );

/** What the plan’s page says changed, as on a day. */
const changes = (barn: Barn, id: string, on: CivilDate): string[] => {
  const { record: kept, view } = stayIn(barn, id, on);
  return changesBetween(kept.row.seen, outlineOf(view.layUp));
};

/** A winter with everything it needs. */
const winter = (more: Partial<LayUpGiven> = {}) => {
  const { barn, carId, placeId } = winterBarn();
  return { barn, carId, placeId, id: layUpIn(barn, carId, { place: placeId, ...more }) };
};

describe('starting a lay-up', () => {
  it('takes a car, a day and a place, and has a plan for them at once', () => {
    const { barn, id, carId, placeId } = winter();
    const { record: kept, view, place } = stayIn(barn, id);
    expect(kept.row).toMatchObject({
      carId,
      parkedOn: PARKED,
      returnOn: BACK,
      placeId,
      madeOn: PLANNED,
      closedOn: null,
    });
    expect(place?.name).toBe('Garage');
    expect(view.state).toBe('ahead');
    expect(keysOf(view.layUp)).toEqual(expect.arrayContaining(['settle-place', 'washer', 'park', 'cover']));
    expect(changes(barn, id, PLANNED)).toEqual([]);
    // It is not parked yet.
    expect(carOf(barn, carId).place).toBeUndefined();
  });

  it('without a place takes frost for possible', () => {
    const { barn, carId } = winterBarn();
    const id = layUpIn(barn, carId);
    expect(stepOn(barn, id, 'washer', PLANNED).because).toContain('nobody has said where it stands');
    const mild = placeIn(barn, 'Orangery', { winterLow: 8, summerHigh: 27 });
    const other = layUpIn(barn, carIn(barn, { name: 'Alder Coupe' }), { place: mild });
    expect(keysOf(planIn(barn, other, PLANNED))).not.toContain('washer');
  });

  it('of a car that was parked before stands it there from that day, and its steps keep their days', () => {
    const { barn, carId, placeId } = winterBarn();
    const today: CivilDate = '2027-01-20';
    const id = layUpIn(onDayIn(barn, today), carId, { place: placeId });
    expect(carOf(barn, carId).facts).toMatchObject({ placedOn: PARKED, place: { name: 'Garage' } });
    expect(stayIn(barn, id, today).view.state).toBe('standing');
    expect(stepOn(barn, id, 'settle-place', today).day).toBe('2026-09-20');
    expect(stepOn(barn, id, 'fuel-fill', today).day).toBe('2026-10-29');
    expect(stepOn(barn, id, 'park', today).day).toBe(PARKED);
  });

  it('made late puts on its own day what should have come before it', () => {
    const { barn, carId } = winterBarn();
    const id = layUpIn(onDayIn(barn, '2026-10-25'), carId);
    expect(stepOn(barn, id, 'settle-place', '2026-10-25').day).toBe('2026-10-25');
    expect(stepOn(barn, id, 'fuel-fill', '2026-10-25').day).toBe('2026-10-29');
  });

  it('with an open return is planned for a year', () => {
    const { barn, id } = winter({ returnOn: '' });
    const { record: kept, view } = stayIn(barn, id);
    expect(kept.row.returnOn).toBeNull();
    expect(stepOn(barn, id, 'belts-slack', PLANNED).because).toContain('it stands 1 year or longer');
    expect(view.wakeUp.steps.every(({ day }) => day === PARKED)).toBe(true);
    const short = layUpIn(barn, carIn(barn, { name: 'Alder Coupe' }));
    expect(keysOf(planIn(barn, short, PLANNED))).not.toContain('belts-slack');
  });

  it('keeps circumstances, numbers, papers and who looks in', () => {
    const { barn, carId } = winterBarn();
    const bram = personIn(barn, 'Bram', 'bram@example.org', false);
    const id = layUpIn(barn, carId, {
      visitor: bram,
      phone: '0170 555',
      circumstances: ['no-mains', 'mice', 'no such thing'],
      numbers: { dose: '32,5', engine: '1.8', cylinders: '4' },
      papers: { storageFrom: '2026-11-02', roadUntil: '', noticeFrom: '', renewsOn: '2027-02-01', rules: 'Ask <them>' },
      note: 'Key with Bram',
    });
    expect(stayIn(barn, id).record.row).toMatchObject({
      visitorId: bram,
      phone: '0170 555',
      circumstances: ['no-mains', 'mice'],
      numbers: { dose: 32.5, engine: 1.8, cylinders: 4 },
      papers: {
        storageFrom: '2026-11-02',
        roadUntil: null,
        noticeFrom: null,
        renewsOn: '2027-02-01',
        rules: 'Ask <them>',
      },
      note: 'Key with Bram',
    });
  });

  it.each<[string, Partial<LayUpGiven>, string[]]>([
    ['no day', { parkedOn: '' }, ['parkedOn']],
    ['a day that is none', { parkedOn: '2026-02-30' }, ['parkedOn']],
    ['a return that is no day', { returnOn: 'spring' }, ['returnOn']],
    ['a return before it is parked', { returnOn: '2026-10-31' }, ['returnOn']],
    ['a return on the parking day', { returnOn: PARKED }, ['returnOn']],
    ['a return after more than ten years', { returnOn: '2036-11-02' }, ['returnOn']],
    ['a parking day more than five years ago', { parkedOn: '2021-09-09', returnOn: '' }, ['parkedOn']],
    ['a parking day more than two years ahead', { parkedOn: '2028-09-11', returnOn: '' }, ['parkedOn']],
    ['a place that is not there', { place: 'no-place' }, ['place']],
    ['a person who is not there', { visitor: 'nobody' }, ['visitor']],
    ['a dose in words', { numbers: { dose: 'some', engine: '', cylinders: '' } }, ['dose']],
    ['half a cylinder', { numbers: { dose: '', engine: '', cylinders: '4.5' } }, ['cylinders']],
    ['an engine of 100 liters', { numbers: { dose: '', engine: '100', cylinders: '' } }, ['engine']],
    [
      'paper days that are none, each by itself',
      { papers: { storageFrom: 'x', roadUntil: '2026-11-01', noticeFrom: 'y', renewsOn: '', rules: '' } },
      ['storageFrom', 'noticeFrom'],
    ],
  ])('is refused for %s, and nothing is kept', (_, given, wrong) => {
    const { barn, carId } = winterBarn();
    expect(fields(tryLayUp(barn, carId, given))).toEqual(wrong);
    expect(layUpsOf(barn.store, barn.acting.collectionId)).toEqual([]);
  });

  it.each(['2021-09-10', '2028-09-10'])('takes the last day in reach, %s', (parkedOn) => {
    const { barn, carId } = winterBarn();
    expect(tryLayUp(barn, carId, { parkedOn, returnOn: '' }).ok).toBe(true);
  });

  it('of a car that has an open one is refused; once that is closed it is not', () => {
    const { barn, carId, id } = winter();
    expect(fields(tryLayUp(barn, carId))).toEqual(['car']);
    expect(layUpsOf(barn.store, barn.acting.collectionId)).toHaveLength(1);
    must(closeOn(barn, id, '2027-03-28'));
    const next = onDayIn(barn, '2027-09-01');
    expect(tryLayUp(next, carId, { parkedOn: '2027-11-01', returnOn: '' }).ok).toBe(true);
  });

  it('is refused while another is open on that day, though it is closed today', () => {
    const { barn, carId, id } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    const next = onDayIn(barn, '2027-04-02');
    const before = everythingIn(barn);
    const outcome = tryLayUp(next, carId, { parkedOn: '2027-03-27', returnOn: '' });
    expect(fields(outcome)).toEqual(['car']);
    expect(outcome.ok ? '' : outcome.faults[0]?.message).toContain('is not closed by then');
    expect(everythingIn(barn)).toEqual(before);
    // The day it came back it can go away again.
    must(tryLayUp(next, carId, { parkedOn: '2027-03-28', returnOn: '' }));
  });

  it('without a place is planned for where the car stands', () => {
    const { barn, carId } = winterBarn();
    const mild = placeIn(barn, 'Orangery', { winterLow: 8, summerHigh: 27 });
    putCar(barn.store, barn.acting.collectionId, carId, mild, PLANNED);
    const id = layUpIn(barn, carId);
    expect(stayIn(barn, id).record.row.placeId).toBeNull();
    expect(stayIn(barn, id).place?.name).toBe('Orangery');
    expect(stayIn(barn, id).view.stay.place).toMatchObject({ winterLow: 8 });
    expect(keysOf(planIn(barn, id, PLANNED))).not.toContain('washer');
  });

  it('takes neither place nor person nor pattern of another collection', () => {
    const { barn, carId, placeId } = winterBarn();
    const shed = onDayIn(openBarn(barn.store, 'The shed'), PLANNED);
    const theirs = layUpIn(shed, carIn(shed));
    expect(fields(tryLayUp(barn, carId, { place: placeIn(shed, 'Shed') }))).toEqual(['place']);
    expect(fields(tryLayUp(barn, carId, { visitor: shed.acting.personId }))).toEqual(['visitor']);
    expect(fields(tryLayUp(barn, carId, {}, theirs))).toEqual(['like']);
    expect(fields(tryLayUp(shed, carIn(shed, { name: 'Their Six' }), { place: placeId }))).toEqual(['place']);
    expect(layUpsOf(barn.store, barn.acting.collectionId)).toEqual([]);
  });
});

describe('beginning like an earlier one', () => {
  const NEXT: CivilDate = '2027-09-12';
  const afterAWinter = () => {
    const made = winter();
    const { barn, id } = made;
    const own = must(
      addOwnStepAct(barn.store, barn.acting, stayIn(barn, id), {
        plan: 'lay-up',
        title: 'Lift the hood off its pins',
        days: '5',
        note: 'Both of them',
      }),
    );
    must(chooseSide(barn.store, barn.acting, stayIn(barn, id), 'cover', 'none'));
    must(skip(barn, id, 'wax', PLANNED, 'Wrapped'));
    must(skip(barn, id, own, PLANNED, 'No pins this year'));
    must(tickOn(barn, id, 'photographs', '2026-10-10'));
    must(closeOn(barn, id, '2027-04-02'));
    const next = onDayIn(barn, NEXT);
    const like = layUpIn(next, made.carId, { parkedOn: '2027-11-05', returnOn: '2028-04-01' }, id);
    return { ...made, next, like, own };
  };

  it('takes own steps, skipped ones with their reasons and the sides, and nothing that was done', () => {
    const { next, like, own } = afterAWinter();
    const { record: kept, view } = stayIn(next, like);
    expect(kept.own).toMatchObject([{ title: 'Lift the hood off its pins', days: 5, note: 'Both of them' }]);
    expect(kept.own[0]?.id).not.toBe(own);
    expect(kept.ticks).toMatchObject([{ step: 'wax', state: 'skipped', day: NEXT, note: 'As last time: Wrapped' }]);
    expect(kept.row.choices).toEqual({ cover: 'none' });
    expect(keysOf(view.layUp)).not.toContain('cover');
    expect(view.layUp.steps.filter(isDone)).toEqual([]);
    expect(stepOn(next, like, kept.own[0]?.id ?? '', NEXT)).toMatchObject({ day: '2027-10-31', tick: null });
  });

  it('a second time does not say “as last time” twice', () => {
    const { next, like, carId } = afterAWinter();
    must(closeOn(next, like, '2028-04-02'));
    const third = layUpIn(onDayIn(next, '2028-09-01'), carId, { parkedOn: '2028-11-01', returnOn: '' }, like);
    expect(stayIn(next, third, '2028-09-01').record.ticks.map(({ note }) => note)).toEqual(['As last time: Wrapped']);
  });

  it('leaves the earlier one as it was', () => {
    const { next, id } = afterAWinter();
    const { record: kept } = stayIn(next, id, NEXT);
    expect(kept.ticks.map(({ step, state }) => [step, state]).toSorted()).toEqual(
      [
        ['photographs', 'done'],
        ['wax', 'skipped'],
        [kept.own[0]?.id, 'skipped'],
      ].toSorted(),
    );
  });
});

describe('a plan made anew', () => {
  it('moves its days with the parking day, keeps what was ticked, and says so until it was understood', () => {
    const { barn, id, placeId } = winter();
    must(tickOn(barn, id, 'photographs', '2026-10-10', { note: 'Forty of them' }));
    must(change(barn, id, '2026-10-12', { parkedOn: '2026-11-15', place: placeId }));
    expect(stepOn(barn, id, 'fuel-fill', '2026-10-12').day).toBe('2026-11-12');
    expect(stepOn(barn, id, 'photographs', '2026-10-12')).toMatchObject({
      day: '2026-10-25',
      tick: { day: '2026-10-10', note: 'Forty of them' },
    });
    const [moved, ...others] = changes(barn, id, '2026-10-13');
    expect(moved).toMatch(
      /^\d+ steps moved: the first from 20 September 2026 to 4 October 2026, the last from 1 November 2026 to 15 November 2026\.$/,
    );
    // Two weeks less to lose charge and air in.
    for (const other of others) expect(other).toMatch(/: now .* (bar|%)/);
    understand(barn.store, barn.acting, stayIn(barn, id, '2026-10-13'));
    expect(changes(barn, id, '2026-10-14')).toEqual([]);
    expect(stepOn(barn, id, 'photographs', '2026-10-14').tick?.day).toBe('2026-10-10');
  });

  it('follows its place: frost brings steps, a mild room takes them away', () => {
    const { barn, id } = winter();
    const mild = placeIn(barn, 'Orangery', { shelter: 'heated', heatedTo: 15, winterLow: 8, summerHigh: 27 });
    must(change(barn, id, '2026-09-12', { place: mild }));
    const gone = changes(barn, id, '2026-09-12');
    expect(gone).toEqual(
      expect.arrayContaining([`No longer needed: ${titleOf('washer')}.`, `No longer needed: ${titleOf('desiccant')}.`]),
    );
    understand(barn.store, barn.acting, stayIn(barn, id, '2026-09-12'));
    must(change(barn, id, '2026-09-13', { place: placeIn(barn, 'Open shed', { winterLow: -30 }) }));
    expect(changes(barn, id, '2026-09-13')).toEqual(
      expect.arrayContaining([
        `New, on 18 October 2026: ${titleOf('washer')}.`,
        expect.stringContaining(`${titleOf('coolant-strength')}: now `),
      ]),
    );
  });

  it('moves a car that is parked to the place it is said to stand in, and no other', () => {
    const { barn, id, carId, placeId } = winter();
    const shed = placeIn(barn, 'Shed');
    must(change(barn, id, '2026-10-01', { place: shed }));
    expect(carOf(barn, carId).place).toBeUndefined();
    must(change(barn, id, '2026-12-01', { place: placeId }));
    expect(carOf(barn, carId).facts).toMatchObject({ place: { name: 'Garage' }, placedOn: '2026-12-01' });
  });

  it('loses a step that a renewal elsewhere makes needless, and says so', () => {
    const { barn, id, carId } = winter();
    const here = { part: partOf(barn, carId, 'brake-fluid-glycol'), car: carOf(barn, carId).facts };
    const acting = { ...barn.acting, today: '2026-09-20' as CivilDate };
    must(renewPart(barn.store, acting, here, { why: '', note: '', claims: [claim('filled', '20 September 2026')] }));
    expect(keysOf(planIn(barn, id, '2026-09-21'))).not.toContain('brake-fluid');
    expect(changes(barn, id, '2026-09-21')).toEqual([`No longer needed: ${titleOf('brake-fluid')}.`]);
  });

  it('gets a step that a date makes needed, with the reason', () => {
    const { barn, carId, placeId } = winterBarn();
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 September 2026'));
    const id = layUpIn(barn, carId, { place: placeId });
    expect(keysOf(planIn(barn, id, PLANNED))).not.toContain('brake-fluid');
    const { claims } = partOf(barn, carId, 'brake-fluid-glycol');
    barn.store.$client
      .prepare("update claims set from_day = '2024-03-01', to_day = '2024-03-01' where id = ?")
      .run(claims[0]?.id);
    expect(changes(barn, id, PLANNED)).toEqual([`New, on 18 October 2026: ${titleOf('brake-fluid')}.`]);
    expect(stepOn(barn, id, 'brake-fluid', PLANNED).because.join()).toContain('18 months old or more');
  });

  it('takes a reading made elsewhere into its figures', () => {
    const { barn, id, carId } = winter();
    const coolant = partOf(barn, carId, 'coolant-iat').id;
    const says = () => stepOn(barn, id, 'coolant-strength', '2026-09-15').figures.flatMap((figure) => figure.says);
    expect(says().join(' ')).toContain('Not measured yet');
    must(record(barn, carId, [typed(coolant, 'freeze-point', '-15', { day: '2026-09-14' })], '2026-09-14'));
    expect(says().join(' ')).toContain('Measured on 14 September 2026: ');
  });

  it('keeps showing a tick whose step no longer applies', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'desiccant', '2026-11-01'));
    const dry = placeIn(barn, 'Hall', { shelter: 'heated', heatedTo: 15, winterLow: 8, summerHigh: 27 });
    must(change(barn, id, '2026-11-02', { place: dry }));
    expect(stepOn(barn, id, 'desiccant', '2026-11-02')).toMatchObject({ applies: false, tick: { state: 'done' } });
    expect(keysOf(planIn(barn, id, '2026-11-02'))).not.toContain('traps');
  });

  it('is refused as a whole where one thing is wrong', () => {
    const { barn, id, placeId } = winter();
    const before = everythingIn(barn);
    expect(fields(change(barn, id, PLANNED, { place: placeId, returnOn: '2026-10-01' }))).toEqual(['returnOn']);
    expect(everythingIn(barn)).toEqual(before);
  });
});

describe('a side', () => {
  const choose = ({ barn, id }: { barn: Barn; id: string }, topic: string, side: string): Outcome<null> =>
    chooseSide(barn.store, barn.acting, stayIn(barn, id), topic, side);

  it('that is taken is kept and changes the plan; left empty it is the usual one again', () => {
    const made = winter();
    const { barn, id } = made;
    must(choose(made, 'tank', 'drained'));
    must(choose(made, 'battery', 'isolator'));
    const keys = keysOf(planIn(barn, id, PLANNED));
    expect(keys).toEqual(expect.arrayContaining(['drain-tank', 'battery-off']));
    expect(keys).not.toContain('fuel-fill');
    expect(keys).not.toContain('battery-maintainer');
    expect(changes(barn, id, PLANNED)).toEqual(
      expect.arrayContaining([
        `New, on 1 November 2026: ${titleOf('drain-tank')}.`,
        `No longer needed: ${titleOf('fuel-fill')}.`,
      ]),
    );
    must(choose(made, 'tank', ''));
    expect(stayIn(barn, id).record.row.choices).toEqual({ battery: 'isolator' });
    expect(keysOf(planIn(barn, id, PLANNED))).toContain('fuel-fill');
  });

  it.each([
    ['no such topic', 'full'],
    ['tank', 'half'],
    ['tank', 'toString'],
    ['__proto__', ''],
  ])('there is none: %s, %s', (topic, side) => {
    const made = winter();
    expect(fields(choose(made, topic, side))).toEqual(['side']);
    expect(stayIn(made.barn, made.id).record.row.choices).toEqual({});
  });
});

describe('a step of one’s own', () => {
  const add = ({ barn, id }: { barn: Barn; id: string }, more: Partial<Parameters<typeof addOwnStepAct>[3]> = {}) =>
    addOwnStepAct(barn.store, barn.acting, stayIn(barn, id), {
      plan: 'lay-up',
      title: 'Oil the hood pins',
      days: '',
      note: '',
      ...more,
    });

  it('falls so many days before, or on the day itself', () => {
    const made = winter();
    const [day, week] = [must(add(made)), must(add(made, { days: '7' }))];
    const back = must(add(made, { plan: 'wake-up', days: '2' }));
    expect(stepOn(made.barn, made.id, day, PLANNED).day).toBe(PARKED);
    expect(stepOn(made.barn, made.id, week, PLANNED)).toMatchObject({ day: '2026-10-25', phase: 'own' });
    expect(stepOn(made.barn, made.id, back, PLANNED, 'wake-up').day).toBe('2027-03-30');
    expect(keysOf(planIn(made.barn, made.id, PLANNED))).not.toContain(back);
  });

  it.each([
    ['without a title', { title: '' }, ['title']],
    ['so many days after', { days: '-1' }, ['days']],
    ['half a day before', { days: '1.5' }, ['days']],
    ['more than a year before', { days: '366' }, ['days']],
    ['some days before', { title: '', days: 'some' }, ['title', 'days']],
  ])('is refused %s', (_, more, wrong) => {
    const made = winter();
    expect(fields(add(made, more))).toEqual(wrong);
    expect(stayIn(made.barn, made.id).record.own).toEqual([]);
  });
});

describe('closing', () => {
  const close = (barn: Barn, id: string, on: CivilDate, more: Partial<ClosingGiven>): Outcome<null> =>
    closeLayUp(barn.store, { ...barn.acting, today: on }, stayIn(barn, id, on), {
      day: on,
      how: 'back',
      km: null,
      pattern: false,
      ...more,
    });

  it('keeps the odometer of that day, and whether the next can begin like it', () => {
    const { barn, carId, id } = winter();
    must(close(barn, id, '2027-03-28', { km: 87_500, pattern: true }));
    expect(carOf(barn, carId).facts.odometer).toEqual([{ day: '2027-03-28', km: 87_500 }]);
    expect(stayIn(barn, id).record.row).toMatchObject({ closedOn: '2027-03-28', isTemplate: true });
  });

  it('with an odometer that runs backwards is refused whole', () => {
    const { barn, carId, id } = winter();
    must(tickOn(barn, id, 'park', PARKED, { km: 87_400 }));
    const before = everythingIn(barn);
    expect(close(barn, id, '2027-03-28', { km: 87_300, pattern: true }).ok).toBe(false);
    expect(everythingIn(barn)).toEqual(before);
    expect(carOf(barn, carId).facts.odometer).toEqual([{ day: PARKED, km: 87_400 }]);
  });

  it('called off is no pattern, whatever is asked', () => {
    const { barn, id } = winter();
    must(close(barn, id, '2026-10-01', { how: 'called off', pattern: true }));
    expect(stayIn(barn, id).record.row).toMatchObject({ closedHow: 'called off', isTemplate: false });
  });

  it('ends the stay with its day, how and by whom', () => {
    const { barn, id } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    expect(stayIn(barn, id, '2027-03-28').record.row).toMatchObject({
      closedOn: '2027-03-28',
      closedHow: 'back',
      closedBy: barn.acting.personId,
    });
  });

  it('is refused before the parking day, twice, on a day that is none, and on one that lies ahead', () => {
    const { barn, id } = winter();
    expect(fields(closeOn(barn, id, '2026-10-31'))).toEqual(['day']);
    expect(fields(closeOn(barn, id, '2027-03-28', 'back', '2026-10-31'))).toEqual(['day']);
    expect(fields(closeOn(barn, id, '2027-03-28', 'back', 'soon'))).toEqual(['day']);
    expect(fields(closeOn(barn, id, '2027-03-28', 'back', '2027-03-29'))).toEqual(['day']);
    expect(stayIn(barn, id, '2027-03-28').record.row.closedOn).toBeNull();
    must(closeOn(barn, id, '2027-03-28', 'back', PARKED));
    expect(fields(closeOn(barn, id, '2027-03-29'))).toEqual(['day']);
  });

  it('called off can come before the parking day, and not before it was planned', () => {
    const { barn, id } = winter();
    expect(fields(closeOn(barn, id, PLANNED, 'called off', '2026-09-09'))).toEqual(['day']);
    must(closeOn(barn, id, '2026-10-01', 'called off'));
    expect(stayIn(barn, id, '2026-10-01').record.row).toMatchObject({
      closedHow: 'called off',
      closedOn: '2026-10-01',
    });
  });

  it('leaves plan, ticks and rounds where they are', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', '2026-10-10'));
    must(closeOn(barn, id, '2027-03-28'));
    expect(stepOn(barn, id, 'photographs', '2027-06-01').tick).toMatchObject({ day: '2026-10-10', by: 'Ada' });
  });

  it('makes history of it: nothing is changed any more', () => {
    const { barn, id, placeId } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    const before = everythingIn(barn);
    const on: CivilDate = '2027-04-10';
    const here = stayIn(barn, id, on);
    const acting = { ...barn.acting, today: on };
    expect(change(barn, id, on, { place: placeId, note: 'Later' }).ok).toBe(false);
    expect(chooseSide(barn.store, acting, here, 'tank', 'drained').ok).toBe(false);
    const own = { plan: 'lay-up', title: 'Pins', days: '', note: '' } as const;
    expect(addOwnStepAct(barn.store, acting, here, own).ok).toBe(false);
    expect(skip(barn, id, 'wax', on, 'Too late').ok).toBe(false);
    expect(tickOn(barn, id, 'photographs', on).ok).toBe(false);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('seen as on a day in winter it is as it was', () => {
    const { barn, id } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    expect(stayIn(barn, id, '2027-01-05').view.state).toBe('standing');
    expect(stayIn(barn, id, '2027-01-05').view.rounds.find(({ state }) => state === 'due')?.due).toBe('2027-01-01');
  });
});

describe('opening again', () => {
  const reopen = (barn: Barn, id: string, on: CivilDate): Outcome<null> =>
    reopenLayUp(barn.store, { ...barn.acting, today: on }, stayIn(barn, id, on));

  it('takes back a closing that was a slip: it stands on, and its steps are ticked again', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', '2026-10-10'));
    const before = everythingIn(barn);
    must(
      closeLayUp(barn.store, { ...barn.acting, today: '2027-03-01' }, stayIn(barn, id, '2027-03-01'), {
        day: '2027-03-01',
        how: 'back',
        km: null,
        pattern: true,
      }),
    );
    expect(tickOn(barn, id, 'cover-off', '2027-03-02', {}, 'wake-up').ok).toBe(false);
    must(reopen(barn, id, '2027-03-02'));
    expect(everythingIn(barn)).toEqual(before);
    expect(stayIn(barn, id).record.row).toMatchObject({
      closedOn: null,
      closedHow: null,
      closedBy: null,
      isTemplate: false,
    });
    must(tickOn(barn, id, 'cover-off', '2027-03-02', {}, 'wake-up'));
    must(closeOn(barn, id, '2027-03-28'));
  });

  it('takes back a calling off as well', () => {
    const { barn, id } = winter();
    must(closeOn(barn, id, '2026-10-01', 'called off'));
    must(reopen(barn, id, '2026-10-02'));
    expect(stayIn(barn, id, '2026-12-05').view).toMatchObject({ state: 'standing' });
    expect(stayIn(barn, id, '2026-12-05').record.row.closedOn).toBeNull();
  });

  it('is refused once the car was put away again', () => {
    const { barn, carId, id } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    const next = onDayIn(barn, '2027-09-01');
    layUpIn(next, carId, { parkedOn: '2027-11-01', returnOn: '' });
    const before = everythingIn(barn);
    expect(fields(reopen(barn, id, '2027-09-02'))).toEqual(['day']);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('of the later of two is not kept from it by the earlier', () => {
    const { barn, carId, id } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    const next = onDayIn(barn, '2027-09-01');
    const second = layUpIn(next, carId, { parkedOn: '2027-11-01', returnOn: '' });
    must(closeOn(next, second, '2028-03-28'));
    must(reopen(next, second, '2028-03-29'));
    expect(stayIn(barn, id).record.row.closedOn).toBe('2027-03-28');
  });
});
