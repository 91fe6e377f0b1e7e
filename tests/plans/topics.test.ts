import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../src/catalogue/sources.ts';
import { STATED_TRAITS } from '../../src/catalogue/traits.ts';
import { isTopic, TOPICS, type Topic, type TopicKey } from '../../src/plans/topics.ts';
import { sideOf, usualSide } from '../../src/plans/when.ts';
import { placeOf, type StayGiven, situationWith, undated } from '../support/stays.ts';

const ALL = Object.entries(TOPICS) as [TopicKey, Topic][];

describe.each(ALL)('the topic %s', (key, { sides, defaults, evidence, sources }) => {
  it('has at least two sides, each with a name of its own and what its friends say', () => {
    const told = Object.values(sides);
    expect(told.length).toBeGreaterThan(1);
    expect(new Set(told.map(({ name }) => name)).size).toBe(told.length);
    for (const { says } of told) expect(says).toMatch(/\.$/);
  });

  it('takes a side that exists, and always one: the last default has no conditions', () => {
    for (const { side } of defaults) expect(sides).toHaveProperty(side);
    expect(defaults.at(-1)?.when).toEqual([]);
    for (const { when } of defaults.slice(0, -1)) expect(when.length).toBeGreaterThan(0);
  });

  it('goes by no other topic than whether it is driven meanwhile, and by traits that can be stated', () => {
    for (const { when } of defaults)
      for (const list of when) {
        if (key === 'running') expect(list.side).toBeUndefined();
        else if (list.side) expect(list.side).toEqual({ topic: 'running', is: ['drive'] });
        for (const trait of list.traits ?? []) expect(STATED_TRAITS).toContain(trait);
      }
  });

  it('says what speaks for which, from sources that exist', () => {
    expect(evidence).toMatch(/\.$/);
    expect(sources.length).toBeGreaterThan(0);
    for (const source of sources) expect(SOURCES).toHaveProperty(source);
  });
});

describe('the usual side', () => {
  it.each([
    ['tank', { months: 6, days: -1 }, 'full', 'full and treated to six months'],
    ['tank', { months: 6 }, 'ethanol-free', 'then without ethanol, or drained'],
    ['tank', { months: 24 }, 'drained', 'US Army TB 740-97-4: drained and oiled'],
    ['tank', { months: 24, start: 'diesel-wagon' }, 'full', 'a full tank keeps the water out of diesel'],
    ['weight', { months: 12, days: -1 }, 'wheels', 'a winter on its tires is borne'],
    ['weight', { months: 12 }, 'stands', 'stands for a year and more'],
    ['weight', { months: 12, circumstances: ['lift'] }, 'wheels', 'it stands on the lift'],
    ['battery', {}, 'maintainer', 'a smart one, with a monthly look'],
    ['battery', { circumstances: ['rented-bay'] }, 'out', 'no live maintainer in a rented bay'],
    [
      'battery',
      { circumstances: ['no-mains'], parts: { 'battery-flooded': { details: { chemistry: 'calcium' } } } },
      'isolator',
      'by itself it holds for months',
    ],
    [
      'battery',
      { circumstances: ['lift'], parts: { 'battery-flooded': { details: { chemistry: 'calcium' } } } },
      'isolator',
      'no live charger above another car',
    ],
    ['battery', { circumstances: ['unwatched'], months: 36 }, 'out', 'nobody looks at it for years'],
    ['battery', { without: ['battery-flooded'], with: ['battery-lithium'] }, 'isolator', 'no ordinary charger'],
    ['battery', { months: 0, days: 14, car: { drain: 5 } }, 'connected', 'a few weeks on a small drain'],
    ['battery', { months: 3, car: { drain: 0 } }, 'maintainer', 'three months are no few weeks'],
    ['oil', {}, 'before', 'acids out before it stands'],
    ['running', {}, 'rest', 'no cold starts'],
    ['pressure', {}, 'raised', 'half a bar and more'],
    ['pressure', { choices: { running: 'drive' } }, 'placard', 'it is driven every month'],
    ['weight', { choices: { running: 'drive' }, months: 24 }, 'wheels', 'it is driven every month'],
    ['tank', { choices: { running: 'drive' }, months: 24 }, 'full', 'it is driven every month'],
    ['cover', { place: placeOf({ shelter: 'open' }) }, 'cover', 'one that breathes'],
    ['windows', { place: null }, 'shut', 'mice and damp stay out'],
    ['repellents', {}, 'traps', 'nothing proves scents'],
    ['pedal', {}, 'press', 'its fluid is young'],
    ['pedal', { parts: { 'brake-fluid-glycol': undated('brake-fluid-glycol') } }, 'leave', 'its fluid is undated'],
    ['silicone', {}, 'keep', 'in a system rebuilt for it'],
  ] as readonly (readonly [TopicKey, StayGiven, string, string])[])('of %s for %o is %s: %s', (topic, given, side) => {
    expect(usualSide(topic, situationWith(given))).toBe(side);
    expect(sideOf(topic, situationWith(given))).toBe(side);
  });

  it('gives way to the one that was chosen, and to none that does not exist', () => {
    const given = { choices: { tank: 'drained', weight: 'balloons' } };
    expect(sideOf('tank', situationWith(given))).toBe('drained');
    expect(usualSide('tank', situationWith(given))).toBe('full');
    expect(sideOf('weight', situationWith(given))).toBe('wheels');
    expect(sideOf('weight', situationWith({ choices: { weight: 'constructor' } }))).toBe('wheels');
  });

  it('is asked by keys that are topics', () => {
    expect(isTopic('tank')).toBe(true);
    expect(isTopic('toString')).toBe(false);
  });
});
