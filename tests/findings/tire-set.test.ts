import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Finding } from '../../src/findings/assess.ts';
import { ROAD_TIRE, SPARE_TIRES, tireSet } from '../../src/findings/tire-set.ts';
import { carOf, dated, finding, kindOf } from '../support/parts.ts';

const TODAY: CivilDate = '2026-11-25';
const PLACES = ['front left', 'front right', 'rear left', 'rear right'] as const;
const UNBUILT = carOf({ built: { from: null, to: null } });

const tire = (position: string | null, made: CivilDate | null, kind: string = ROAD_TIRE): Finding =>
  finding(kind, made ? [dated('made', made)] : [], TODAY, { part: { position } });
const four = (...made: (CivilDate | null)[]): Finding[] =>
  PLACES.map((place, index) => tire(place, made[index] ?? null));
const notes = (findings: Finding[]): string[] => tireSet(findings).notes;

describe('the tires as a set', () => {
  it('knows the kinds it is about', () => {
    for (const key of [ROAD_TIRE, ...SPARE_TIRES]) expect(kindOf(key).system).toBe('tires');
    expect(kindOf(ROAD_TIRE).positions).toEqual(PLACES);
  });

  it('without tires has nothing to say', () => {
    expect(tireSet([])).toEqual({ oldest: null, notes: [] });
    expect(tireSet([finding('engine-oil', [dated('filled', '2001-01-01')], TODAY)])).toEqual({
      oldest: null,
      notes: [],
    });
  });

  it('is ruled by the oldest', () => {
    const findings = four('2020-01-15', '2020-01-15', '2019-11-25', '2020-01-15');
    expect(tireSet(findings).oldest).toBe(findings[2]);
    expect(notes(findings)).toEqual(['The oldest rules the set: rear left, 7 years.']);
  });

  it('counts a range at its oldest, and says both ends', () => {
    const findings = four('2020-01-15', '2020-01-15', '2020-01-15', '2020-01-15');
    findings[1] = finding(ROAD_TIRE, [dated('made', '2019-06-01', '2022-12-31')], TODAY, {
      part: { position: 'front right' },
    });
    expect(notes(findings)[0]).toBe('The oldest rules the set: front right, at least 3 years, could be 7 years.');
  });

  it('does not forget the spare', () => {
    const findings = [
      ...four('2020-01-15', '2020-01-15', '2020-01-15', '2020-01-15'),
      tire(null, '1972-06-15', 'tire-spare'),
    ];
    expect(tireSet(findings).oldest?.kind.key).toBe('tire-spare');
    expect(notes(findings)).toEqual(['The oldest rules the set: spare tire, full size, 54 years.']);
  });

  it.each(SPARE_TIRES)('asks for the missing date of the %s', (kind) => {
    const findings = [...four('2020-01-15', '2020-01-15', '2020-01-15', '2020-01-15'), tire(null, null, kind)];
    expect(notes(findings).at(-1)).toBe('The spare’s date is missing: look at both its sidewalls.');
  });

  it('names the undated ones, which are not new', () => {
    expect(notes(four('2020-01-15', null, '2020-01-15', null))).toContain(
      'No making date yet: front right, rear right. Their age counts as unknown, not as new.',
    );
    expect(notes(four())).toEqual([
      'No making date yet: front left, front right, rear left, rear right. Their age counts as unknown, not as new.',
    ]);
  });

  it('counts one with an open start as undated', () => {
    const open = finding(ROAD_TIRE, [dated('made', null, '1997-12-31')], TODAY, {
      part: { position: 'front left' },
      car: UNBUILT,
    });
    expect(tireSet([open])).toEqual({
      oldest: null,
      notes: ['No making date yet: front left. Their age counts as unknown, not as new.'],
    });
  });
});

describe('ages on one axle', () => {
  it.each<[string, CivilDate[], string | null]>([
    ['twelve months apart are one age', ['2020-01-15', '2021-01-15', '2020-01-15', '2020-01-15'], null],
    [
      'thirteen months apart are said, of the front',
      ['2020-01-15', '2021-02-15', '2020-01-15', '2020-01-15'],
      'Mixed ages on the front axle: made 13 months apart. Tires of one axle are renewed together.',
    ],
    [
      'and of the rear, whichever side is older',
      ['2020-01-15', '2020-01-15', '2023-01-15', '2020-01-15'],
      'Mixed ages on the rear axle: made 3 years apart. Tires of one axle are renewed together.',
    ],
  ])('%s', (_, made, wanted) =>
    expect(notes(four(...made)).filter((note) => note.startsWith('Mixed'))).toEqual(wanted ? [wanted] : []),
  );

  it('are not compared where one is undated', () => {
    expect(notes(four('2010-01-15', null, '2020-01-15', '2020-01-15')).some((note) => note.startsWith('Mixed'))).toBe(
      false,
    );
  });
});

describe('front and rear', () => {
  const handling = (made: (CivilDate | null)[]) =>
    notes(four(...made)).filter((note) => note.startsWith('Front and rear'));

  it('up to four years apart are let be', () => {
    expect(handling(['2016-01-15', '2016-01-15', '2020-01-15', '2020-01-15'])).toEqual([]);
  });

  it('more than four years apart are a caution, whichever end is older', () => {
    const caution = ['Front and rear are 4 years apart: the car may handle unevenly, above all in the wet.'];
    expect(handling(['2016-01-15', '2016-01-15', '2020-02-15', '2020-02-15'])).toEqual(caution);
    expect(handling(['2020-02-15', '2020-02-15', '2016-01-15', '2016-01-15'])).toEqual(caution);
  });

  it('are compared by the older tire of each', () => {
    expect(handling(['2020-01-15', '2010-01-15', '2016-01-15', '2020-01-15'])).toEqual([
      'Front and rear are 6 years apart: the car may handle unevenly, above all in the wet.',
    ]);
  });

  it('leave out a tire whose age is open', () => {
    const open = finding(ROAD_TIRE, [dated('made', null, '1997-12-31')], TODAY, {
      part: { position: 'front left' },
      car: UNBUILT,
    });
    const [, ...others] = four(null, '2019-01-15', '2020-01-15', '2020-01-15');
    expect(notes([open, ...others]).filter((note) => /^(Mixed|Front and rear)/.test(note))).toEqual([]);
  });

  it('are not compared where one end is undated', () => {
    expect(handling(['2010-01-15', '2010-01-15', null, null])).toEqual([]);
  });
});
