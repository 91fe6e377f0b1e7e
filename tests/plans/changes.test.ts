import { describe, expect, it } from 'vitest';
import { changesBetween, type Outline, outlineOf } from '../../src/plans/changes.ts';
import { keysOf, layUpWith, PARKED, placeOf, type StayGiven, tick } from '../support/stays.ts';

const outline = (given: StayGiven = {}): Outline => outlineOf(layUpWith(given));
const changes = (before: StayGiven, after: StayGiven): string[] => changesBetween(outline(before), outline(after));

describe('what changed in a plan', () => {
  it('is nothing where nothing did', () => expect(changes({}, {})).toEqual([]));

  it('tells one sentence for a parking day that moved, from the first to the last', () => {
    const [first, ...more] = changes({}, { parkedOn: '2026-11-08' });
    expect(first).toMatch(
      /^\d+ steps moved: the first from 20 September 2026 to 27 September 2026, the last from 1 November 2026 to 8 November 2026\.$/,
    );
    expect(more).toEqual([]);
  });

  it('tells up to three moved steps each by its name', () => {
    const [before] = [outline()];
    const after = before.map((step, n) => (n < 3 ? { ...step, day: '2026-09-30' as const } : step));
    expect(changesBetween(before, after)).toEqual(
      before.slice(0, 3).map(({ title }) => expect.stringMatching(`to 30 September 2026: ${title}.`)),
    );
    const four = before.map((step, n) => (n < 4 ? { ...step, day: '2026-10-01' as const } : step));
    expect(changesBetween(before, four)).toEqual([expect.stringMatching(/^4 steps moved: /)]);
  });

  it('tells what came and what went', () => {
    expect(changes({}, { circumstances: ['lift'] })).toContain(
      'New, on 1 November 2026: A drip tray over the car below.',
    );
    expect(changes({ circumstances: ['lift'] }, {})).toContain('No longer needed: A drip tray over the car below.');
    const tank = changes({ months: 5 }, { months: 26 });
    expect(tank).toContain('No longer needed: Fill up with fresh fuel and put the stabilizer in.');
    expect(tank).toContainEqual(expect.stringMatching(/^New, on 1 November 2026: Outdoors, battery off: drain tank/));
  });

  it('tells a figure that is another', () =>
    expect(changes({}, { place: placeOf({ winterLow: -35 }) })).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^Measure the coolant.*: now coolant strength, glycol by volume: 5\d to 60/),
        expect.stringMatching(/^Washer fluid.*: now washer fluid that bears: −?-?40/),
      ]),
    ));

  it('does not tell of a figure that is gone: nothing is to be done about it', () => {
    const after = outline();
    const before = after.map((step) => ({ ...step, figures: [...step.figures, 'Of old: 1 L'] }));
    expect(changesBetween(before, after)).toEqual([]);
    expect(changesBetween(after, before)).toHaveLength(after.length);
  });

  it('does not tell of a step as gone that was ticked: it stays in the plan', () => {
    const ticked: StayGiven = { ticks: [tick('lay-up', 'drip-tray', PARKED)] };
    const [was, is] = [{ ...ticked, circumstances: ['lift'] as const }, ticked];
    expect(changes(was, is).filter((text) => text.includes('drip tray'))).toEqual([]);
    expect(keysOf(layUpWith(is))).toContain('drip-tray');
    expect(layUpWith(is).steps.find(({ key }) => key === 'drip-tray')).toMatchObject({ applies: false, because: [] });
  });
});
