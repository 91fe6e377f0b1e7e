import { describe, expect, it } from 'vitest';
import { BRAKE_FLUID_GRADES } from '../../src/catalogue/brake-fluid-grades.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { SOURCES } from '../../src/catalogue/sources.ts';

interface Published {
  name: string;
  base: 'glycol' | 'silicone';
  dry: { c: number; f: number };
  wet: { c: number; f: number };
  viscosity: { atMinus40C: number; at100C: number };
}

/**
 * 49 CFR 571.116 S5.1.1 (equilibrium reflux boiling point) and S5.1.2 (the same, wet), as the rule states them in both
 * units; S5.1.3 (kinematic viscosity, mm²/s), from an encyclopedia's table of the rule.
 */
const REGULATION: readonly Published[] = [
  {
    name: 'DOT 3',
    base: 'glycol',
    dry: { c: 205, f: 401 },
    wet: { c: 140, f: 284 },
    viscosity: { atMinus40C: 1500, at100C: 1.5 },
  },
  {
    name: 'DOT 4',
    base: 'glycol',
    dry: { c: 230, f: 446 },
    wet: { c: 155, f: 311 },
    viscosity: { atMinus40C: 1800, at100C: 1.5 },
  },
  {
    name: 'DOT 5.1',
    base: 'glycol',
    dry: { c: 260, f: 500 },
    wet: { c: 180, f: 356 },
    viscosity: { atMinus40C: 900, at100C: 1.5 },
  },
  {
    name: 'DOT 5 silicone',
    base: 'silicone',
    dry: { c: 260, f: 500 },
    wet: { c: 180, f: 356 },
    viscosity: { atMinus40C: 900, at100C: 1.5 },
  },
];

/** ISO 4925, 2005 and (class 7) 2020: dry, wet, viscosity at -40 °C; from memory. */
const ISO_CLASSES: readonly [string, number, number, number][] = [
  ['ISO class 3', 205, 140, 1500],
  ['ISO class 4', 230, 155, 1500],
  ['ISO class 5-1', 260, 180, 900],
  ['ISO class 6', 250, 165, 750],
  ['ISO class 7', 260, 180, 750],
];

/** 49 CFR 571.116 S5.1.14: the color of fluid as sold. */
const COLORS: readonly [string, string][] = [
  ['DOT 3', 'colorless to amber'],
  ['DOT 4', 'colorless to amber'],
  ['DOT 5.1', 'colorless to amber'],
  ['DOT 5 silicone', 'purple'],
];

const fahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;

const gradeOf = (name: string) => {
  const grade = BRAKE_FLUID_GRADES.find((one) => one.name === name);
  if (!grade) throw new Error(`no grade ${name}`);
  return grade;
};

describe('grades of brake fluid', () => {
  it.each(REGULATION)('$name has the limits of 49 CFR 571.116 S5.1.1 to S5.1.3', (rule) => {
    const grade = gradeOf(rule.name);
    expect(grade).toMatchObject({ base: rule.base, dryMinC: rule.dry.c, wetMinC: rule.wet.c });
    expect([fahrenheit(grade.dryMinC), fahrenheit(grade.wetMinC)]).toEqual([rule.dry.f, rule.wet.f]);
    expect(grade.viscosityMaxAtMinus40C).toBe(rule.viscosity.atMinus40C);
    expect(grade.viscosityMinAt100C).toBe(rule.viscosity.at100C);
    expect(grade.sources).toEqual(['49-cfr-571-116']);
  });

  it.each(ISO_CLASSES)('%s has the limits of ISO 4925, and says that they are from memory', (name, dry, wet, thick) => {
    const grade = gradeOf(name);
    expect(grade).toMatchObject({ base: 'glycol', dryMinC: dry, wetMinC: wet, viscosityMaxAtMinus40C: thick });
    expect(grade.viscosityMinAt100C).toBe(1.5);
    expect(grade.sources).toEqual(['iso-4925']);
    expect(SOURCES['iso-4925'].title).toContain('from memory');
  });

  it.each(COLORS)('%s is %s when new, by 49 CFR 571.116 S5.1.14', (name, color) =>
    expect(gradeOf(name).color).toBe(color),
  );

  it('lists these grades and no other, each once', () => {
    const names = [...REGULATION.map(({ name }) => name), ...ISO_CLASSES.map(([name]) => name)];
    expect(BRAKE_FLUID_GRADES.map(({ name }) => name)).toEqual(names);
  });

  it('no grade boils lower dry than wet', () => {
    for (const { dryMinC, wetMinC } of BRAKE_FLUID_GRADES) expect(dryMinC).toBeGreaterThan(wetMinC);
  });

  it.each([
    [140, 284],
    [145, 293],
    [155, 311],
    [200, 392],
    [205, 401],
    [230, 446],
  ])('%i °C is %i °F, F = 9C/5 + 32', (celsius, degrees) => expect(fahrenheit(celsius)).toBe(degrees));
});

describe('the catalogue’s brake fluid rows', () => {
  const glycol = KINDS.get('brake-fluid-glycol');
  const boiling = glycol?.tests.find(({ name }) => name === 'Boiling point');
  const figures = (text: string | undefined): [string, number][] =>
    [...(text ?? '').matchAll(/(DOT [\d.]+?) (?:from|under) (\d+)/g)].map((found) => [
      found[1] ?? '',
      Number(found[2]),
    ]);

  it('act below the wet minimum of each grade', () => {
    expect(figures(boiling?.act)).toEqual(
      REGULATION.filter(({ base }) => base === 'glycol').map(({ name, wet }) => [name, wet.c]),
    );
  });

  it('call it good from 20 °C above the wet minimum', () => {
    expect(figures(boiling?.good)).toEqual(
      REGULATION.filter(({ base }) => base === 'glycol').map(({ name, wet }) => [name, wet.c + 20]),
    );
  });

  it('judge an unknown grade by the lowest of them', () => {
    expect(boiling?.how).toContain('an unknown grade as DOT 3');
    expect(Math.min(...REGULATION.map(({ wet }) => wet.c))).toBe(gradeOf('DOT 3').wetMinC);
  });

  it('name the color that the rule gives silicone and mineral fluid', () => {
    expect(KINDS.get('brake-fluid-silicone')?.findDate).toContain('purple when new');
    // 49 CFR 571.116 S5.1.14: hydraulic system mineral oil is green.
    expect(KINDS.get('central-hydraulics')?.tests[0]?.how).toContain('mineral brake fluid is green when new');
  });
});
