import { describe, expect, it } from 'vitest';
import type { Kind } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { SourceKey } from '../../src/catalogue/sources.ts';
import { rulingHere } from '../../src/findings/here.ts';
import { rulingOf } from '../../src/findings/ruling.ts';
import { CAR_ID, carOf, partOf } from '../support/parts.ts';

interface Published {
  kind: string;
  figure: 'lookFrom' | 'lookEvery' | 'replaceBy';
  months: number;
  /** What was published, in words. */
  says: string;
  source: SourceKey;
}

/** What was published of these ages, copied here from the text named, so that a slip in the catalogue shows. */
const PUBLISHED: readonly Published[] = [
  ...['tires-road', 'tire-spare'].flatMap((kind): Published[] => [
    {
      kind,
      figure: 'lookFrom',
      months: 60,
      says: 'Japanese tire association: inspect after 5 years of use; counted here from manufacture, which comes first',
      source: 'jatma',
    },
    {
      kind,
      figure: 'replaceBy',
      months: 120,
      says: 'Japanese tire association: replace tires 10 years after manufacture',
      source: 'jatma',
    },
  ]),
  ...['tires-road', 'tire-spare', 'tire-compact-spare'].flatMap((kind): Published[] => [
    {
      kind,
      figure: 'replaceBy',
      months: 120,
      says: 'owner handbook: replace every tire, the spare too, ten years from manufacture whatever its tread',
      source: 'owner-handbooks',
    },
    {
      kind,
      figure: 'lookEvery',
      months: 12,
      says: 'tire makers’ common text: after five years in use, inspect at least once a year',
      source: 'tire-maker-common-text',
    },
  ]),
  {
    kind: 'extinguisher',
    figure: 'replaceBy',
    months: 144,
    says: 'service firms on NFPA 10: non-rechargeable extinguishers leave service 12 years after manufacture',
    source: 'nfpa-10',
  },
  {
    kind: 'extinguisher',
    figure: 'lookEvery',
    months: 1,
    says: 'service firms on NFPA 10: inspected when put in service and every month from then on',
    source: 'nfpa-10',
  },
  {
    kind: 'harness-fia',
    figure: 'replaceBy',
    months: 60,
    says: 'FIA 8853/98: not valid after 31 December of the year of manufacture plus five',
    source: 'fia-8853-98',
  },
  {
    kind: 'harness-sfi',
    figure: 'replaceBy',
    months: 24,
    says: 'SFI 16.1 and 16.5: two years after manufacture',
    source: 'sfi-16-1',
  },
  {
    kind: 'fuel-cell-bladder',
    figure: 'replaceBy',
    months: 60,
    says: 'FIA Appendix J article 253: no bladder is used more than 5 years after its manufacture, unless recertified',
    source: 'fia-appendix-j-253',
  },
  {
    kind: 'coolant-iat',
    figure: 'replaceBy',
    months: 24,
    says: 'DTIC AD1112055: conventional inorganic coolant serves two years at most',
    source: 'dtic-ad1112055',
  },
  {
    kind: 'coolant-oat',
    figure: 'replaceBy',
    months: 60,
    says: 'DTIC AD1112055: organic-acid coolant serves five years',
    source: 'dtic-ad1112055',
  },
  {
    kind: 'lpg-tank',
    figure: 'replaceBy',
    months: 120,
    says: 'workshop pages on UN ECE R67-01 tanks: ten years in Italy and Slovakia',
    source: 'ece-r67-01',
  },
  {
    kind: 'cng-tank',
    figure: 'lookEvery',
    months: 36,
    says: 'summaries of 49 CFR 571.304: inspect visually every 36 months or 36,000 miles, up to 10,000 lb gross weight',
    source: '49-cfr-571-304',
  },
  {
    kind: 'cng-tank',
    figure: 'replaceBy',
    months: 180,
    says: 'summaries of 49 CFR 571.304: life by design is 15 to 25 years; the shorter one is the cautious one',
    source: '49-cfr-571-304',
  },
  {
    kind: 'child-seat',
    figure: 'replaceBy',
    months: 72,
    says: 'child-seat trade association: six years from manufacture where nothing is marked',
    source: 'child-seat-association',
  },
  {
    kind: 'brake-fluid-glycol',
    figure: 'replaceBy',
    months: 24,
    says: 'common practice of the trade: glycol brake fluid every two years',
    source: 'common-practice',
  },
  {
    kind: 'first-aid',
    figure: 'replaceBy',
    months: 60,
    says: 'inspection bodies: a kit runs out after about five years',
    source: 'german-inspection-bodies',
  },
  {
    kind: 'first-aid',
    figure: 'lookEvery',
    months: 12,
    says: 'inspection bodies: check the kit once a year',
    source: 'german-inspection-bodies',
  },
];

const kindOf = (key: string): Kind => {
  const kind = KINDS.get(key);
  if (!kind) throw new Error(`no kind ${key}`);
  return kind;
};
const testOf = (key: string, name: string) => kindOf(key).tests.find((test) => test.name === name);

describe('intervals as published', () => {
  it.each(PUBLISHED)('$kind, $figure $months months: $says', ({ kind, figure, months, source }) => {
    const { interval } = kindOf(kind);
    expect(interval[figure]).toBe(months);
    expect(interval.sources).toContain(source);
  });

  it('tires: the clock runs from manufacture, not from fitting (owner handbooks, tire makers)', () => {
    for (const key of ['tires-road', 'tire-spare', 'tire-compact-spare']) expect(kindOf(key).clock).toBe('made');
  });

  it('tires: six years are named as the other common line (owner handbook; NHTSA, June 2008)', () => {
    expect(kindOf('tires-road').varies).toContain('Six years from manufacture is the common caution line');
    expect(kindOf('tires-road').interval.sources).toContain('nhtsa-2008-advisory');
  });

  it('an international harness is read by its label, a US one by its punched month of making', () => {
    expect(kindOf('harness-fia').clock).toBe('printed');
    expect(kindOf('harness-fia').findDate).toContain('31 December of that year');
    expect(kindOf('harness-sfi').clock).toBe('made');
  });

  it('a fuel cell may be extended once by two years (FIA Appendix J article 253)', () => {
    expect(kindOf('fuel-cell-bladder').varies).toContain('one extension of two years after recertification');
  });

  it('a rechargeable powder extinguisher is opened at 6 years and pressure-tested at 12 (NFPA 10)', () => {
    expect(kindOf('extinguisher').varies).toContain('opened at 6 years and pressure-tested at 12');
  });

  it('brake fluid: 200 ppm of copper or more asks for a change (US repair-trade association table)', () => {
    const copper = testOf('brake-fluid-glycol', 'Copper');
    expect(copper?.gauge).toMatchObject({ unit: 'ppm', bands: { good: { under: 200 } } });
    expect(copper?.act).toMatch(/^200 or more/);
    expect(copper?.sources).toContain('repair-association-table');
  });

  it('brake fluid: a UK trade survey’s 200 °C (soon) and 181 °C (at once) are told beside the grade’s own limit', () => {
    expect(testOf('brake-fluid-glycol', 'Boiling point')?.watch).toContain('soon at 200 and at once at 181');
    expect(testOf('brake-fluid-glycol', 'Boiling point')?.sources).toContain('workshop-trade-press');
  });

  it('brake fluid: 3 percent of water asks for a change, 2 want watching (trade practice, 2.5 to 3)', () => {
    expect(testOf('brake-fluid-glycol', 'Water')).toMatchObject({
      gauge: { unit: '%' },
      good: 'under 2',
      act: expect.stringMatching(/^3 or more: change it\b/),
    });
    expect(testOf('brake-fluid-glycol', 'Water')?.watch).toContain('2 to just under 3');
  });

  it('brake fluid: the rate of 1 to 2 percent a year is told with the survey that found no firm relation (TRRL LR903)', () => {
    expect(kindOf('brake-fluid-glycol').varies).toContain('1 to 2 percent water a year');
    expect(kindOf('brake-fluid-glycol').varies).toContain('a sample of 1,000 cars found no firm relation');
  });

  it('organic coolant: 160,000 km for any of them, 240,000 only where it is told to be purely organic (trade texts)', () => {
    const driven = (details: Record<string, string>): number | null => {
      const part = partOf('coolant-oat', [], { details });
      return rulingHere(rulingOf(kindOf('coolant-oat'), [], CAR_ID), kindOf('coolant-oat'), part, carOf()).replaceByKm;
    };
    expect(kindOf('coolant-oat').interval.replaceByKm).toBe(160_000);
    expect([driven({}), driven({ family: 'hoat' }), driven({ family: 'oat' })]).toEqual([160_000, 160_000, 240_000]);
  });

  it('wheel nuts are checked again after 50 to 100 miles (wheel-fastener guides), converted to km', () => {
    expect(kindOf('wheel-fasteners').varies).toContain('80 to 160 km (50 to 100 miles)');
    expect([50, 100].map((miles) => Math.round((miles * 1.609344) / 10) * 10)).toEqual([80, 160]);
  });
});
