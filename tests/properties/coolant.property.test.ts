import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { strengthen } from '../../src/ageing/coolant/dilution.ts';
import { COOLANT_FAMILIES, type CoolantFamily, mixing } from '../../src/ageing/coolant/families.ts';
import {
  freezingPoint,
  freezingSpan,
  GLYCOLS,
  massFromVolume,
  strengthFor,
} from '../../src/ageing/coolant/freezing.ts';
import { coolantOutlook } from '../../src/ageing/coolant/outlook.ts';
import { brixOfIndex, index, strengthByBrix, strengthByDensity } from '../../src/ageing/coolant/sample.ts';
import { VERDICTS, type Verdict } from '../../src/ageing/judge.ts';

const glycol = fc.constantFrom(...GLYCOLS);
const either = fc.constantFrom(...GLYCOLS, 'unknown' as const);
/** On a grid of 0.001: nobody reads digits beyond, and binary fractions can’t tell strengths apart that differ by less. */
const upTo = (most: number) => fc.integer({ min: 0, max: most * 1000 }).map((thousandths) => thousandths / 1000);
const night = fc.double({ min: -50, max: 20, noNaN: true });
const span = fc.tuple(upTo(100), upTo(100)).map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));
const graveness = (verdict: Verdict | null): number => (verdict === null ? -1 : VERDICTS.indexOf(verdict));

describe('freezing', () => {
  it('more glycol never freezes warmer up to 60 vol %, nor colder beyond', () => {
    fc.assert(
      fc.property(glycol, upTo(60), upTo(60), (one, a, b) => {
        const [weak, strong] = [Math.min(a, b), Math.max(a, b)];
        expect(freezingPoint(one, strong)).toBeLessThanOrEqual(freezingPoint(one, weak));
        expect(freezingSpan(one, strong).high).toBeLessThanOrEqual(freezingSpan(one, weak).high);
        expect(freezingSpan(one, strong).low).toBeLessThanOrEqual(freezingSpan(one, weak).low + 1e-9);
      }),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(glycol, upTo(40), upTo(40), (one, a, b) => {
        const [less, more] = [60 + Math.min(a, b), 60 + Math.max(a, b)];
        expect(freezingPoint(one, more)).toBeGreaterThanOrEqual(freezingPoint(one, less));
      }),
    );
  });

  it('the span runs from low to high, holds the handbook’s figure and is no wider than 4 °C up to 60 vol %', () => {
    fc.assert(
      fc.property(glycol, upTo(60), (one, strength) => {
        const { low, high } = freezingSpan(one, strength);
        const told = freezingPoint(one, strength);
        expect(low <= told && told <= high).toBe(true);
        expect(high - low).toBeLessThan(4);
      }),
    );
  });

  it('strength and freezing point are each other’s inverse', () => {
    fc.assert(
      fc.property(glycol, upTo(60), (one, strength) => {
        expect(strengthFor(one, freezingPoint(one, strength))).toBeCloseTo(strength, 6);
      }),
    );
    fc.assert(
      fc.property(glycol, fc.double({ min: -80, max: 10, noNaN: true }), (one, freezing) => {
        const strength = strengthFor(one, freezing);
        if (strength === null) expect(freezing).toBeLessThan(freezingPoint(one, 60));
        else expect(freezingPoint(one, strength)).toBeCloseTo(Math.min(freezing, 0), 6);
      }),
    );
  });

  it('glycol is heavier than water: more by mass than by volume, none at 0 and all at 100', () => {
    fc.assert(
      fc.property(glycol, upTo(100), (one, strength) => {
        expect(massFromVolume(one, strength)).toBeGreaterThanOrEqual(strength - 1e-9);
        expect(massFromVolume(one, strength)).toBeLessThanOrEqual(100 + 1e-9);
      }),
    );
    for (const one of GLYCOLS) expect([massFromVolume(one, 0), massFromVolume(one, 100)]).toEqual([0, 100]);
  });
});

describe('samples', () => {
  it('more glycol bends light more, all the way', () => {
    fc.assert(
      fc.property(glycol, upTo(99), upTo(1), (one, strength, more) => {
        expect(index(one, strength + more)).toBeGreaterThanOrEqual(index(one, strength));
      }),
      { numRuns: 1000 },
    );
  });

  it('the refractometer tells back the strength it was held to, within 1.5 vol % either way', () => {
    fc.assert(
      fc.property(glycol, upTo(100), (one, strength) => {
        const { low, high } = strengthByBrix(one, brixOfIndex(index(one, strength)));
        expect(low <= strength && strength <= high).toBe(true);
        expect(high - low).toBeLessThanOrEqual(3 + 1e-9);
        expect(low >= 0 && high <= 100).toBe(true);
      }),
    );
  });

  it('a heavier sample is never told weaker, and its ends never cross', () => {
    const density = fc.double({ min: 0.98, max: 1.15, noNaN: true });
    fc.assert(
      fc.property(glycol, density, density, (one, a, b) => {
        const [light, heavy] = [strengthByDensity(one, Math.min(a, b)), strengthByDensity(one, Math.max(a, b))];
        expect(heavy.low).toBeGreaterThanOrEqual(light.low);
        expect(heavy.high).toBeGreaterThanOrEqual(light.high);
        expect(light.low).toBeLessThanOrEqual(light.high);
        expect(light.low >= 0 && light.low <= 60 && light.high <= 100).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('strengthening', () => {
  it('gives the strength wanted, by what glycol is left and added, and never drains more than there is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 40, noNaN: true }),
        upTo(100),
        upTo(100),
        upTo(100),
        (liters, from, to, concentrate) => {
          const exchanged = strengthen(liters, from, to, concentrate);
          expect(exchanged === null).toBe(to < from || to >= concentrate);
          if (exchanged === null) return;
          expect(exchanged).toBeGreaterThanOrEqual(0);
          expect(exchanged).toBeLessThanOrEqual(liters);
          expect(((liters - exchanged) * from + exchanged * concentrate) / liters).toBeCloseTo(to, 6);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('the outlook', () => {
  it('a colder night is never judged better', () => {
    fc.assert(
      fc.property(either, span, night, upTo(20), (one, strength, coldest, colder) => {
        const [mild, hard] = [coldest, coldest - colder].map(
          (at) => coolantOutlook({ glycol: one, strength }, at).verdict,
        );
        expect(graveness(hard ?? null)).toBeGreaterThanOrEqual(graveness(mild ?? null));
      }),
    );
  });

  it('what is not known never makes it better: the place, the glycol, the strength', () => {
    fc.assert(
      fc.property(glycol, span, night, fc.double({ min: 0, max: 1, noNaN: true }), (one, strength, coldest, share) => {
        const known = coolantOutlook({ glycol: one, strength }, coldest);
        expect(coolantOutlook({ glycol: one, strength }, null).verdict).not.toBe('good');
        const unknown = coolantOutlook({ glycol: 'unknown', strength }, coldest);
        expect(graveness(unknown.verdict)).toBeGreaterThanOrEqual(graveness(known.verdict));
        expect(unknown.freezes.low <= known.freezes.low && unknown.freezes.high >= known.freezes.high).toBe(true);
        const inside = strength.low + share * (strength.high - strength.low);
        const point = coolantOutlook({ glycol: one, strength: { low: inside, high: inside } }, coldest);
        // Too strong for sure asks for action; perhaps too strong is watched.
        if (inside <= 67) expect(graveness(known.verdict)).toBeGreaterThanOrEqual(graveness(point.verdict));
        else expect(graveness(known.verdict)).toBeGreaterThanOrEqual(graveness('watch'));
        expect(point.freezes.low >= known.freezes.low - 1e-9 && point.freezes.high <= known.freezes.high + 1e-9).toBe(
          true,
        );
      }),
      { numRuns: 1000 },
    );
  });

  it('the margin is what lies between the night and the freezing points', () => {
    fc.assert(
      fc.property(either, span, night, (one, strength, coldest) => {
        const { freezes, margin } = coolantOutlook({ glycol: one, strength }, coldest);
        expect((margin?.low ?? Number.NaN) + freezes.high).toBeCloseTo(coldest, 9);
        expect((margin?.high ?? Number.NaN) + freezes.low).toBeCloseTo(coldest, 9);
      }),
    );
  });
});

describe('mixing', () => {
  const family = fc.constantFrom(...(Object.keys(COOLANT_FAMILIES) as CoolantFamily[]));
  const coolant = fc.record({ family, glycol: either });

  it('is passed without a word only where both are known to be alike, whichever is poured onto which', () => {
    fc.assert(
      fc.property(coolant, coolant, (a, b) => {
        const alike =
          a.family === b.family && a.glycol === b.glycol && a.family !== 'unknown' && a.glycol !== 'unknown';
        expect(mixing(a, b) === null).toBe(alike);
        expect(mixing(b, a) === null).toBe(alike);
      }),
    );
  });
});
