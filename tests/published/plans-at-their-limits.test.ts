/** What published practice asks where conditions meet: fuel and years, weight and springs, damp and mains. */
import { describe, expect, it } from 'vitest';
import { addMonths } from '../../src/dates/civil.ts';
import { looksOn } from '../../src/plans/looks.ts';
import { nextVisit } from '../../src/plans/rounds.ts';
import { viewOf } from '../../src/plans/standing.ts';
import { usualSide } from '../../src/plans/when.ts';
import {
  aged,
  keysOf,
  layUpWith,
  PARKED,
  placeOf,
  type StayGiven,
  situationWith,
  stayOf,
  stepIn,
  tick,
  wakeUpWith,
} from '../support/stays.ts';

const wellDone = (stay: StayGiven): string[] => keysOf(wakeUpWith(stay, { done: keysOf(layUpWith(stay)) }));
const FILLED = { 'fuel-gasoline': aged('fuel-gasoline', 0) };

describe('fuel', () => {
  // Common practice: prepared, up to half a year, treated fuel is good; E10 treated is drained at 12, without ethanol at 24.
  it('treated and a winter old is left in the tank', () =>
    expect(wellDone({ parts: FILLED })).not.toContain('fuel-drain'));
  it('without ethanol, treated and eight months old is left in the tank', () =>
    expect(
      wellDone({
        months: 8,
        parts: { 'fuel-gasoline': { ...aged('fuel-gasoline', 0), details: { blend: 'e0', stabilized: 'yes' } } },
      }),
    ).not.toContain('fuel-drain'));
  it('is not drained from a tank that was drained', () => expect(wellDone({ months: 26 })).not.toContain('fuel-drain'));
  // Common practice by length: stabilized fill not over 12 months in an open-vented carburetor car.
  it('does not stand a year and more in a carburetor car', () =>
    expect(usualSide('tank', situationWith({ months: 13 }))).toBe('drained'));
  it('warns no more where the tank was drained', () => {
    const facts = stayOf({ months: 26, ticks: [tick('lay-up', 'drain-tank', PARKED)] });
    expect(viewOf(facts, '2028-06-01').warnings.map(({ key }) => key)).not.toContain('fuel-stop');
  });
});

describe('the engine', () => {
  // A red gate of the trade from a year on: two turns by hand at the crank before the starter, whatever it burns.
  it('of a diesel is turned by hand after a year', () =>
    expect(keysOf(wakeUpWith({ start: 'diesel-wagon', months: 26 }))).toContain('turn-diesel'));
});

describe('the battery', () => {
  it('on a lift has no live maintainer, also where it does not hold by itself: common practice', () =>
    expect(usualSide('battery', situationWith({ circumstances: ['lift'] }))).not.toBe('maintainer'));
  it('in the desert is taken out or kept cool: common practice', () =>
    expect(
      usualSide(
        'battery',
        situationWith({ place: placeOf({ winterLow: 2, summerHigh: 45, air: 'desert' }), months: 8 }),
      ),
    ).not.toBe('maintainer'));
  it('that goes flat where nobody said it does not freeze may freeze: judgement of the trade', () => {
    const reading = {
      gauge: 'rest-voltage',
      day: PARKED,
      value: 12.3,
      unit: 'V',
      warmth: null,
      recordedOn: PARKED,
    } as const;
    const stay: StayGiven = {
      place: null,
      car: { drain: 80 },
      parts: { 'battery-flooded': { readings: [reading], details: { connection: 'connected' } } },
    };
    expect(viewOf(stayOf(stay), '2027-01-20').warnings.map(({ key }) => key)).toContain('battery-freezes');
  });
});

describe('weight and rounds', () => {
  it('stands, once chosen, are a step in a stay of two months', () =>
    expect(keysOf(layUpWith({ months: 2, choices: { weight: 'stands' } }))).toContain('stands'));
  it('a car whose air springs are on supports is not rolled', () =>
    expect(looksOn(situationWith({ start: 'grand-tourer-powered-top' }), 6).map(({ key }) => key)).not.toEqual(
      expect.arrayContaining(['rolled']),
    ));
  it('somebody is expected after four years as well', () =>
    expect(nextVisit({ parkedOn: PARKED, returnOn: null }, addMonths(PARKED, 50))).not.toBeNull());
});

describe('the place', () => {
  it('by the sea without mains gets a sealed bag: common practice', () =>
    expect(keysOf(layUpWith({ place: placeOf({ air: 'coast' }), circumstances: ['no-mains'] }))).toContain(
      'sealed-bag',
    ));
});

describe('a short stay', () => {
  it('of three weeks has food and paper taken out: common practice by length, with the wash', () =>
    expect(keysOf(layUpWith({ months: 0, days: 21 }))).toContain('empty-inside'));
});

describe('the wake-up', () => {
  it('of an open end has no days before the day it is asked for', () => {
    const { wakeUp } = viewOf(stayOf({ months: null }), '2027-06-01');
    for (const { day } of wakeUp.steps) expect(day >= '2027-06-01').toBe(true);
  });
  it('orders tires now, in spring, and not in some other spring', () => {
    const plan = wakeUpWith({ parts: { 'tires-road': aged('tires-road', 118) } });
    expect(stepIn(plan, 'order-tires').lines.join()).not.toContain('not now');
  });
  it('seen before the parking day counts fluids as changed that the lay-up is to change', () => {
    const facts = stayOf({ parts: { 'brake-fluid-glycol': aged('brake-fluid-glycol', 20) } });
    expect(keysOf(viewOf(facts, '2026-10-01').wakeUp)).not.toContain('brake-fluid');
  });
  it('brings back mineral hydraulic fluid that was not changed', () => {
    const stay: StayGiven = {
      start: 'gas-sphere-mineral-hydraulics',
      parts: { 'central-hydraulics': aged('central-hydraulics', 60) },
    };
    expect(keysOf(wakeUpWith(stay, { undone: ['mineral-hydraulics'] })).join()).toContain('hydraulics');
  });
  it('brings back clutch fluid that was not changed', () =>
    expect(
      keysOf(wakeUpWith({ parts: { 'clutch-fluid': aged('clutch-fluid', 60) } }, { undone: ['clutch-fluid'] })).join(),
    ).toContain('clutch-fluid'));
});
