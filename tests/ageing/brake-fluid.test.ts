import { describe, expect, it } from 'vitest';
import { roadWords } from '../../src/ageing/brake-fluid/boiling.ts';
import { type BrakeFluidFacts, brakeFluidOutlook } from '../../src/ageing/brake-fluid/outlook.ts';
import { waterPace } from '../../src/ageing/brake-fluid/water.ts';
import { BRAKE_FLUID_GRADES } from '../../src/catalogue/brake-fluid-grades.ts';

const gradeOf = (name: string) => {
  const grade = BRAKE_FLUID_GRADES.find((one) => one.name === name);
  if (!grade) throw new Error(`no grade ${name}`);
  return grade;
};

const DOT4: BrakeFluidFacts = {
  grade: gradeOf('DOT 4'),
  filled: { from: '2024-11-25', to: '2024-11-25' },
  pace: waterPace({ damp: false, hoses: 'rubber' }),
  measured: {},
  ownLimit: null,
};

describe('the pace of water', () => {
  it.each([
    ['braided', { slow: 0.7, typical: 1.5, fast: 2 }],
    ['rubber', { slow: 1, typical: 1.5, fast: 2 }],
    ['unknown', { slow: 1, typical: 1.5, fast: 2 }],
  ] as const)('through %s hoses is slower at its slow end alone, and only if they are braided', (hoses, pace) =>
    expect(waterPace({ damp: false, hoses })).toEqual(pace),
  );
});

describe('brake fluid told from its fill', () => {
  it('two years on holds 2 to 4 percent, and boils between the curve’s points for them', () => {
    const { water, boiling, measured, limit } = brakeFluidOutlook(DOT4, '2026-11-25');
    expect(water?.low).toBeCloseTo(2, 2);
    expect(water?.high).toBeCloseTo(4, 2);
    expect(boiling?.low).toBe(155);
    expect(boiling?.high).toBeCloseTo(178.1, 0);
    expect(boiling?.atMost).toBe(true);
    expect(measured).toBe(false);
    expect(limit).toBeNull();
  });

  it('is expected wet 22.2 to 44.4 months after the fill, whatever day is asked', () => {
    const wet = { earliest: '2026-10-01', latest: '2028-08-07' };
    expect(brakeFluidOutlook(DOT4, '2025-01-01').wet).toEqual(wet);
    expect(brakeFluidOutlook(DOT4, '2030-01-01').wet).toEqual(wet);
  });

  it('counts a fill known to a span from its first day for the worse and its last for the better', () => {
    const { water } = brakeFluidOutlook({ ...DOT4, filled: { from: '2022-11-25', to: '2024-11-25' } }, '2026-11-25');
    expect(water?.low).toBeCloseTo(2, 2);
    expect(water?.high).toBeCloseTo(8, 1);
  });

  it('filled nobody knows how long ago may be as wet as fluid gets, and wet already', () => {
    const { water, boiling, wet } = brakeFluidOutlook(
      { ...DOT4, filled: { from: null, to: '2024-11-25' } },
      '2025-11-25',
    );
    expect(water).toEqual({ low: expect.closeTo(1, 2), high: 8 });
    expect(boiling).toMatchObject({ low: 155, atMost: true });
    expect(wet).toEqual({ earliest: null, latest: '2028-08-07' });
  });

  it('filled on some day since is taken as filled today for the better end', () =>
    expect(brakeFluidOutlook({ ...DOT4, filled: { from: '2024-11-25', to: null } }, '2026-11-25').water?.low).toBe(0));

  it('is dry before it is filled', () =>
    expect(brakeFluidOutlook(DOT4, '2024-01-01').water).toEqual({ low: 0, high: 0 }));

  it.each([null, { from: null, to: null }])('tells nothing, and says so, where the fill is %j', (filled) => {
    const { says, ...rest } = brakeFluidOutlook({ ...DOT4, filled }, '2026-11-25');
    expect(rest).toEqual({ water: null, boiling: null, wet: null, limit: null, measured: false });
    expect(says[0]).toContain('Nobody knows when it was filled');
  });

  it('says that age and water have no firm relation', () =>
    expect(brakeFluidOutlook(DOT4, '2025-11-25').says.join(' ')).toContain('no firm relation'));

  it('reaches a limit of its owner before the wet minimum, and one below that with it', () => {
    const at = (ownLimit: number) => brakeFluidOutlook({ ...DOT4, ownLimit }, '2025-01-01');
    expect(at(200).limit?.earliest).toBe('2025-07-20');
    expect(at(230).limit).toEqual({ earliest: '2024-11-25', latest: '2024-11-25' });
    expect(at(140).limit).toEqual(at(140).wet);
  });
});

describe('brake fluid told from a reading', () => {
  const boiling = (value: number, day: `${number}-${number}-${number}`) => ({ boiling: { value, day } });

  it('takes a good boiling point for better than an old fill, and says which day', () => {
    const old = { ...DOT4, filled: { from: '2018-05-01', to: '2018-05-01' } as const };
    const told = brakeFluidOutlook({ ...old, measured: boiling(200, '2026-06-01') }, '2026-06-01');
    expect(told.measured).toBe(true);
    expect(told.boiling).toEqual({ low: expect.closeTo(195, 9), high: expect.closeTo(205, 9), atMost: false });
    expect(told.says.join(' ')).toContain('boiling point measured on 1 June 2026, give or take 5 °C');
    expect((told.wet?.earliest ?? '') > '2026-06-01').toBe(true);
  });

  it('finds more water in it than the curve of its grade at its worst: it may have begun higher', () => {
    const { water } = brakeFluidOutlook({ ...DOT4, measured: boiling(200, '2026-06-01') }, '2026-06-01');
    // 205 °C on the curve from 230, 195 °C on one from 280, down to 155 °C.
    expect(water?.low).toBeCloseTo(1.14, 1);
    expect(water?.high).toBeCloseTo(1.97, 1);
  });

  it('below its wet minimum is wet on the day, and never told to boil higher than read', () => {
    const told = brakeFluidOutlook({ ...DOT4, measured: boiling(140, '2026-06-01') }, '2027-06-01');
    expect(told.boiling).toEqual({ low: 135, high: 145, atMost: true });
    expect(told.wet).toEqual({ earliest: '2026-06-01', latest: '2026-06-01' });
  });

  it('of water counts half a percent either way and grows from its day', () => {
    const measured = { water: { value: 1, day: '2025-11-25' } } as const;
    expect(brakeFluidOutlook({ ...DOT4, measured }, '2025-11-25').water).toEqual({ low: 0.5, high: 1.5 });
    const { water, says } = brakeFluidOutlook({ ...DOT4, measured }, '2026-11-25');
    expect(water?.low).toBeCloseTo(1.5, 2);
    expect(water?.high).toBeCloseTo(3.5, 2);
    expect(says.join(' ')).toContain('give or take 0.5 %');
  });

  it('of more water than fluid is thought to hold stays what was read', () =>
    expect(
      brakeFluidOutlook({ ...DOT4, measured: { water: { value: 9, day: '2026-01-01' } } }, '2027-01-01').water?.high,
    ).toBe(9.5));

  it('goes by the newer of two, and by the worse of two on one day', () => {
    const dry = { value: 0.5, day: '2026-06-01' } as const;
    const low = (measured: BrakeFluidFacts['measured']) =>
      brakeFluidOutlook({ ...DOT4, measured }, '2026-07-01').boiling?.low ?? Number.NaN;
    const after = low({ water: dry, boiling: { value: 160, day: '2026-05-01' } });
    expect(after).toBe(low({ water: dry }));
    expect(after).toBeGreaterThan(190);
    expect(low({ water: dry, boiling: { value: 160, day: '2026-06-01' } })).toBeLessThan(160);
    expect(low({ water: { ...dry, value: 4 }, boiling: { value: 220, day: '2026-06-01' } })).toBe(155);
  });

  it('passes over one of a later day, and one of the fluid before', () => {
    const plain = brakeFluidOutlook(DOT4, '2025-11-25');
    expect(brakeFluidOutlook({ ...DOT4, measured: boiling(200, '2025-11-26') }, '2025-11-25')).toEqual(plain);
    expect(brakeFluidOutlook({ ...DOT4, measured: boiling(200, '2024-11-24') }, '2025-11-25')).toEqual(plain);
    expect(brakeFluidOutlook({ ...DOT4, measured: boiling(200, '2024-11-25') }, '2025-11-25').measured).toBe(true);
  });

  it('needs no fill', () =>
    expect(
      brakeFluidOutlook({ ...DOT4, filled: null, measured: boiling(200, '2025-11-01') }, '2025-11-25').water,
    ).not.toBeNull());
});

describe('silicone fluid', () => {
  it('has no water, no curve and no days, whatever was read, and says why', () => {
    const { says, ...rest } = brakeFluidOutlook(
      {
        ...DOT4,
        grade: gradeOf('DOT 5 silicone'),
        measured: { boiling: { value: 240, day: '2025-11-01' } },
        ownLimit: 200,
      },
      '2025-11-25',
    );
    expect(rest).toEqual({ water: null, boiling: null, wet: null, limit: null, measured: false });
    expect(says.join(' ')).toMatch(/does not absorb water.*lowest points.*100 °C.*say nothing.*every year.*Never mix/);
  });
});

describe('the words for the road', () => {
  it('do not rest on a low end that is only the most it can be', () => {
    expect(roadWords({ low: 180, high: 230, atMost: true })).toContain('do not count on it for a long descent');
    expect(roadWords({ low: 180, high: 230, atMost: false })).toContain('a brake in trouble can get hotter');
    expect(roadWords({ low: 140, high: 200, atMost: true })).toContain('binding brake');
  });
});
