import { describe, expect, it } from 'vitest';
import { addMonths, type CivilDate } from '../../src/dates/civil.ts';
import { findingsOf } from '../../src/findings/car.ts';
import type { Reading } from '../../src/findings/facts.ts';
import { type RoadCheck, roadCheck } from '../../src/plans/road-check.ts';
import { type StayView, viewOf } from '../../src/plans/standing.ts';
import {
  aged,
  GARAGE,
  keysOf,
  PARKED,
  type PartGiven,
  roundMade,
  type StartKey,
  type StayGiven,
  stayOf,
  stepIn,
  undated,
} from '../support/stays.ts';

const check = (given: StayGiven): RoadCheck => {
  const { stay, car, parts } = stayOf(given);
  return roadCheck(stay, findingsOf(car, parts, [], stay.returnOn ?? addMonths(PARKED, 12)), []);
};
const kinds = (findings: RoadCheck['against']): string[] => [...new Set(findings.map(({ kind }) => kind.key))];
const withPart = (kind: string, part: PartGiven, more: StayGiven = {}): StayGiven => ({
  ...more,
  parts: { [kind]: part },
});

const volume = (value: number, day: CivilDate): Reading => ({
  gauge: 'water',
  day,
  value,
  unit: '%',
  warmth: null,
  recordedOn: day,
});

describe('the road check', () => {
  it('is never a plain yes: of a car young in all its parts it says local only', () => {
    const { answer, against, unchecked } = check({ months: 1, place: GARAGE });
    expect(answer).toBe('local only');
    expect(against).toEqual([]);
    expect(unchecked).toEqual([]);
  });

  // Tires and safety parts past their day, and a belt that is: practice of the trade, from memory but for the tires’ ages.
  it.each([
    ['tires-road', 121, {}],
    ['brake-hoses', 200, {}],
    ['brake-fluid-glycol', 40, {}],
    ['timing-belt', 200, { start: 'hatchback-timing-belt' }],
  ] as const)('says no to %s of %d months', (kind, months, more) => {
    const { answer, against } = check(withPart(kind, aged(kind, months), more));
    expect(answer).toBe('no');
    expect(kinds(against)).toContain(kind);
  });

  it('says no to tires that nobody can date, and not to other safety parts without a date', () => {
    expect(check(withPart('tires-road', undated('tires-road')))).toMatchObject({ answer: 'no' });
    expect(check(withPart('inner-tubes', undated('inner-tubes')))).toMatchObject({ answer: 'no' });
    const hoses = check(withPart('brake-hoses', undated('brake-hoses')));
    expect(hoses.answer).toBe('local only');
    expect(kinds(hoses.unchecked)).toEqual(['brake-hoses']);
  });

  it('says no to brake fluid that nobody can date after two years, and not a day earlier', () => {
    const fluid = undated('brake-fluid-glycol');
    expect(kinds(check(withPart('brake-fluid-glycol', fluid, { months: 24 })).against)).toContain('brake-fluid-glycol');
    const sooner = check(withPart('brake-fluid-glycol', fluid, { months: 24, days: -1 }));
    expect(kinds(sooner.against)).not.toContain('brake-fluid-glycol');
    expect(kinds(sooner.unchecked)).toContain('brake-fluid-glycol');
  });

  it('says no to a reading that condemns a safety part, however young it is', () => {
    const wet: PartGiven = { readings: [volume(4, PARKED)] };
    expect(kinds(check(withPart('brake-fluid-glycol', wet, { months: 1 })).against)).toEqual(['brake-fluid-glycol']);
  });

  it('says no to no part that only strands: an old fuel filter is for another list', () =>
    expect(kinds(check(withPart('fuel-filter', aged('fuel-filter', 300))).against)).not.toContain('fuel-filter'));

  it('names safety parts that are merely due, and clears none of them by a missing date', () => {
    const due = check(withPart('tires-road', aged('tires-road', 119), { months: 1 }));
    expect(due.answer).toBe('local only');
    expect(kinds(due.due)).toContain('tires-road');

    const starts: StartKey[] = ['roadster-disc-drum-overdrive', 'gas-sphere-mineral-hydraulics', 'tourer-rod-brakes'];
    for (const start of starts) {
      const facts = stayOf({ start });
      const parts = facts.parts.map((part) => ({ ...part, claims: [] }));
      const findings = findingsOf(facts.car, parts, [], '2027-04-01');
      const { answer, against, unchecked, due: asked } = roadCheck(facts.stay, findings, []);
      expect(answer).toBe('no');
      const told = new Set([...against, ...unchecked, ...asked]);
      for (const finding of findings)
        if (finding.kind.severity === 'safety') expect(told.has(finding), finding.kind.key).toBe(true);
    }
  });
});

describe('what rounds found', () => {
  const on = '2027-03-20';
  const view = (...rounds: NonNullable<StayGiven['rounds']>[number][]): StayView => viewOf(stayOf({ rounds }), on);

  it.each([
    ['pedal', 'sinks', 'Sinks or spongy'],
    ['smell', 'fuel', 'Fuel'],
  ])('%s: %s speaks against any drive, and is put right first', (look, answer, name) => {
    const { roadCheck: check, wakeUp } = view(roundMade('2027-02-01', { [look]: answer }));
    expect(check.answer).toBe('no');
    expect(check.against).toEqual([]);
    expect(check.found.map((one) => [one.look.key, one.answer.name])).toEqual([[look, name]]);
    const step = stepIn(wakeUp, 'found-on-rounds');
    expect(step.lines).toEqual([expect.stringContaining('(seen on 1 February 2027)')]);
    expect(keysOf(wakeUp).indexOf('found-on-rounds')).toBeLessThan(keysOf(wakeUp).indexOf('first-start'));
  });

  it('counts until a later round says otherwise', () => {
    const seen = roundMade('2027-02-01', { pedal: 'sinks' });
    expect(view(seen, roundMade('2027-03-01', { smell: 'none' })).roadCheck.answer).toBe('no');
    const firm = view(seen, roundMade('2027-03-01', { pedal: 'firm' }));
    expect(firm.roadCheck).toMatchObject({ answer: 'local only', found: [] });
    expect(keysOf(firm.wakeUp)).not.toContain('found-on-rounds');
  });

  it('to watch only is put right, and forbids nothing', () => {
    const { roadCheck: check, wakeUp } = view(roundMade('2027-02-01', { smell: 'must' }));
    expect(check).toMatchObject({ answer: 'local only', found: [] });
    expect(keysOf(wakeUp)).toContain('found-on-rounds');
  });
});

describe('a stay that went on', () => {
  const fluid = withPart('brake-fluid-glycol', undated('brake-fluid-glycol'));
  const against = (given: StayGiven, on: CivilDate): string[] => kinds(viewOf(stayOf(given), on).roadCheck.against);

  it.each([
    ['overdue', { ...fluid, months: 2 }],
    ['with an open end', { ...fluid, months: null }],
  ])('%s counts by the day it is seen: two years and not a day earlier', (_, given) => {
    expect(against(given, '2028-10-31')).not.toContain('brake-fluid-glycol');
    expect(against(given, '2028-11-01')).toContain('brake-fluid-glycol');
  });
});
