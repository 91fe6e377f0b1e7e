import { describe, expect, it } from 'vitest';
import { QUICK_STARTS, type QuickStart } from '../../src/catalogue/quick-starts.ts';
import { FACETS, STATED_TRAITS } from '../../src/catalogue/traits.ts';

const starts: readonly QuickStart[] = QUICK_STARTS;
const ones = FACETS.filter((facet) => facet.choose === 'one');

describe('quick starts', () => {
  it('have keys and names of their own', () => {
    expect(new Set(starts.map((start) => start.key)).size).toBe(starts.length);
    expect(new Set(starts.map((start) => start.name)).size).toBe(starts.length);
    for (const start of starts) expect(start.key).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('are a short list', () => {
    expect(starts.length).toBeGreaterThanOrEqual(14);
    expect(starts.length).toBeLessThanOrEqual(16);
  });

  describe.each(starts)('$name', ({ traits }) => {
    const states = new Set<string>(traits);

    it.each(ones)('states exactly one of: $name', (facet) => {
      expect(Object.keys(facet.traits).filter((trait) => states.has(trait))).toHaveLength(1);
    });

    it('states known traits only, each once, in the order they are asked', () => {
      expect(traits).toEqual(STATED_TRAITS.filter((trait) => states.has(trait)));
    });

    it('is a car that can exist', () => {
      const never = (premise: string, excluded: readonly string[]) => {
        if (states.has(premise)) expect(excluded.filter((trait) => states.has(trait))).toEqual([]);
      };
      const always = (premise: string, needed: readonly string[]) => {
        if (states.has(premise)) expect(needed.filter((trait) => !states.has(trait))).toEqual([]);
      };
      always('diesel', ['compression-ignition', 'fuel-injection']);
      always('compression-ignition', ['diesel']);
      always('air-cooled', ['no-coolant']);
      always('no-coolant', ['air-cooled']);
      never('air-cooled', ['plastic-coolant-tank']);
      never('diesel', ['evap-system', 'lpg-tank', 'cng-tank']);
      never('cable-brakes', ['front-discs', 'rear-discs', 'abs', 'vacuum-servo', 'high-pressure-brakes']);
      always('no-front-brakes', ['cable-brakes']);
      never('automatic-gearbox', ['hydraulic-clutch']);
      never('no-battery', ['electric-fuel-pump', 'distributor', 'coil-ignition', 'battery-maintainer', 'airbags']);
      always('central-hydraulics', ['hydropneumatic']);
      never('silicone-fluid', ['abs']);
    });
  });

  it('cover every choice that shapes an era', () => {
    const stated = new Set<string>(starts.flatMap((start) => start.traits));
    for (const trait of ['diesel', 'air-cooled', 'cable-brakes', 'central-hydraulics', 'abs', 'airbags', 'harness-fia'])
      expect(stated).toContain(trait);
  });
});
