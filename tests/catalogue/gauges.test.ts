import { describe, expect, it } from 'vitest';
import { judge, type Verdict } from '../../src/ageing/judge.ts';
import type { Bands, Detail, Gauge, Stretch, Zone } from '../../src/catalogue/gauge.ts';
import type { Kind, Test } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { convert } from '../../src/catalogue/units.ts';

interface Read {
  kind: Kind;
  test: Test;
  gauge: Gauge;
}

const reads: readonly Read[] = [...KINDS.values()].flatMap((kind) =>
  kind.tests.flatMap((test) => (test.gauge ? [{ kind, test, gauge: test.gauge }] : [])),
);
const named = reads.map((read) => [`${read.kind.key}, ${read.test.name}`, read] as const);
const details: readonly [string, Kind, Detail][] = [...KINDS.values()].flatMap((kind) =>
  (kind.details ?? []).map((detail): [string, Kind, Detail] => [`${kind.key}, ${detail.name}`, kind, detail]),
);

/** An unknown grade is judged as DOT 3; where the voltage is not told, bands of 12 volts find a 6-volt battery flat. */
const UNKNOWN_BY_RULE: readonly string[] = ['grade', 'volts'];

const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const variants = ({ bands }: Gauge): [string, Bands][] =>
  'by' in bands ? Object.entries(bands.of) : [['any answer', bands]];
const edges = (zone: Zone | undefined): number[] => Object.values(zone ?? {});
const isAbsolute = ({ against, reads: through }: Gauge): boolean => !against && !through?.startsWith('coolant');
const topOf = ({ to, under }: Zone): number => to ?? under ?? Number.POSITIVE_INFINITY;
const bottomOf = ({ from }: Zone): number => from ?? Number.NEGATIVE_INFINITY;
const isWithin = (inner: Zone, outer: Zone): boolean =>
  bottomOf(inner) >= bottomOf(outer) && topOf(inner) <= topOf(outer);

/** Every figure in a text, with its minus. */
const figures = (text: string): number[] =>
  [...text.matchAll(/(−?)(\d+(?:\.\d+)?)/g)].map(([, minus, digits]) => Number(digits) * (minus ? -1 : 1));

describe('gauges', () => {
  it('are on more than seventy tests', () => expect(reads.length).toBeGreaterThan(70));

  it('have a key of their own within the kind, and keep it in a form that never changes', () => {
    for (const kind of KINDS.values()) {
      const keys = kind.tests.flatMap(({ gauge }) => gauge?.key ?? []);
      expect(keys.filter((key) => !KEBAB.test(key))).toEqual([]);
      expect(new Set(keys).size).toBe(keys.length);
    }
  });

  it('of the monthly round are those of batteries, tires and the air inside', () => {
    expect(reads.filter(({ gauge }) => gauge.round).map(({ kind, gauge }) => `${kind.key} ${gauge.key}`)).toEqual([
      'tires-road cold-pressure',
      'tire-spare cold-pressure',
      'tire-compact-spare cold-pressure',
      'battery-flooded rest-voltage',
      'battery-agm rest-voltage',
      'battery-lithium rest-voltage',
      'trim-care humidity',
      'desiccant humidity',
    ]);
    for (const { kind, gauge } of reads.filter((read) => read.gauge.round)) {
      expect(gauge.minutes).toBeLessThanOrEqual(2);
      if (gauge.key === 'cold-pressure') expect(kind.tests.map(({ how }) => how).join()).not.toMatch(/lift|stands/i);
    }
  });

  it('ask for the warmth of what it shifts', () => {
    expect(reads.filter(({ gauge }) => gauge.warmth).map(({ kind, gauge }) => `${kind.key} ${gauge.key}`)).toEqual([
      'tires-road cold-pressure',
      'tire-spare cold-pressure',
      'tire-compact-spare cold-pressure',
      'coolant-iat density',
      'coolant-oat density',
      'battery-flooded density',
    ]);
  });
});

const usuals = (usual: Gauge['usual']): Stretch[] => ('of' in usual ? Object.values(usual.of) : [usual]);

describe.each(named)('%s', (_, { kind, test, gauge }) => {
  const asked = kind.details ?? [];

  it('has units of one quantity, an honest time, and what is usual within what can be', () => {
    const { unit, also = [], range, usual, minutes, decimals } = gauge;
    for (const other of also) expect(Number.isFinite(convert(1, other, unit)), other).toBe(true);
    expect(new Set([unit, ...also]).size).toBe(also.length + 1);
    expect(Number.isInteger(minutes) && minutes >= 1 && minutes <= 60).toBe(true);
    expect(Number.isInteger(decimals) && decimals >= 0 && decimals <= 3).toBe(true);
    expect(range[0]).toBeLessThan(range[1]);
    for (const [low, high] of usuals(usual)) {
      expect(low).toBeLessThan(high);
      expect(low).toBeGreaterThanOrEqual(range[0]);
      expect(high).toBeLessThanOrEqual(range[1]);
      expect([low, high]).not.toEqual(range);
    }
  });

  it('has zones that lie one in the other, each edge in one of them', () => {
    for (const [, { good, watch }] of variants(gauge))
      for (const zone of [good, ...(watch ? [watch] : [])]) {
        expect(edges(zone).length).toBeGreaterThan(0);
        expect(zone.to === undefined || zone.under === undefined).toBe(true);
        expect(bottomOf(zone)).toBeLessThanOrEqual(topOf(zone));
        expect(isWithin(good, zone)).toBe(true);
      }
  });

  it('has a watch in words where it has one in numbers, and none where it has none', () => {
    for (const [, { watch }] of variants(gauge)) expect(watch !== undefined).toBe(test.watch !== undefined);
  });

  it('asks what its bands depend on, and knows the bands of every answer', () => {
    if (gauge.against?.what === 'detail') {
      const { key } = gauge.against;
      const detail = asked.find((one) => one.key === key);
      expect(detail && 'unit' in detail && detail.unit).toBe(gauge.unit);
      expect(detail && 'also' in detail ? detail.also : undefined).toEqual(gauge.also);
    }
    if ('by' in gauge.bands) {
      const { by, of } = gauge.bands;
      const detail = asked.find((one) => one.key === by);
      const choices = detail && 'choices' in detail ? Object.keys(detail.choices) : [];
      expect(choices.length).toBeGreaterThan(1);
      expect(Object.keys(of).toSorted()).toEqual([...choices, 'unknown'].toSorted());
    }
  });

  it('is no kinder to one who does not know', () => {
    if (!('by' in gauge.bands) || UNKNOWN_BY_RULE.includes(gauge.bands.by)) return;
    const { unknown, ...answered } = gauge.bands.of;
    for (const one of Object.values(answered)) {
      expect(isWithin(unknown?.good ?? {}, one.good)).toBe(true);
      expect(isWithin(unknown?.watch ?? {}, one.watch ?? {})).toBe(true);
    }
  });

  it('can be good, watched where it has a watch, and bad, without leaving what the instrument can show', () => {
    const steps = 4000;
    const known = (answers: Record<string, string | number>) => ({ details: answers, coldest: -30 });
    const reference = asked.find((one) => gauge.against?.what === 'detail' && one.key === gauge.against.key);
    const told =
      reference && 'range' in reference ? { [reference.key]: (reference.range[0] + reference.range[1]) / 2 } : {};
    // A hydrometer tells nothing good of a coolant whose glycol nobody knows.
    const glycol: Record<string, string> = gauge.reads === 'coolant density' ? { glycol: 'ethylene' } : {};
    for (const [answer] of variants(gauge)) {
      const answers = {
        ...told,
        ...glycol,
        ...('by' in gauge.bands && answer !== 'unknown' ? { [gauge.bands.by]: answer } : {}),
      };
      const seen = new Set<Verdict | null>();
      for (let step = 0; step <= steps; step += 1) {
        const value = gauge.range[0] + ((gauge.range[1] - gauge.range[0]) * step) / steps;
        seen.add(judge(gauge, { value, warmth: 26.7 }, known(answers)).verdict);
      }
      expect([...seen].toSorted()).toEqual(test.watch ? ['act', 'good', 'watch'] : ['act', 'good']);
    }
  });

  it('says in words what its bands say in numbers', () => {
    if (!isAbsolute(gauge)) return;
    const told = figures([test.good, test.watch, test.act].join(' '));
    const step = 10 ** -gauge.decimals;
    const halved = 'by' in gauge.bands && gauge.bands.by === 'volts' ? ['6'] : [];
    const shown = variants(gauge).filter(([answer]) => !halved.includes(answer));
    for (const edge of shown.flatMap(([, { good, watch }]) => [...edges(good), ...edges(watch)]))
      if (edge !== 0)
        expect(
          told.some((figure) => Math.abs(figure - edge) <= step * 1.001),
          `${edge}`,
        ).toBe(true);
  });

  it('says in words between which strengths a coolant is kept', () => {
    if (!gauge.reads?.startsWith('coolant')) return;
    expect(figures(test.good)).toEqual(expect.arrayContaining([33, 60]));
    expect(figures(test.watch ?? '')).toEqual(expect.arrayContaining([30, 67]));
    expect(figures(test.act)).toEqual(expect.arrayContaining([30, 67]));
  });

  it('has every edge within its range', () => {
    const all = variants(gauge).flatMap(([, { good, watch }]) => [...edges(good), ...edges(watch)]);
    if (isAbsolute(gauge)) {
      expect(all.filter((edge) => edge < gauge.range[0] || edge > gauge.range[1])).toEqual([]);
    } else if (gauge.against?.what === 'detail' && gauge.against.as === 'percent') {
      expect(all.filter((edge) => edge < 50 || edge > 200)).toEqual([]);
      expect(all.some((edge) => edge <= 100)).toBe(true);
    } else {
      expect(all.filter((edge) => Math.abs(edge) > (gauge.reads ? 10 : gauge.range[1] - gauge.range[0]))).toEqual([]);
    }
  });
});

describe('what is missing', () => {
  it.each(named.filter(([, { gauge }]) => gauge.against))('leaves %s unjudged and never good', (_, { gauge }) => {
    for (const value of usuals(gauge.usual).flatMap(([low, high]) => [low, (low + high) / 2, high]))
      expect(judge(gauge, { value, warmth: 20 }, { details: {}, coldest: null }).verdict).not.toBe('good');
  });
});

describe('details', () => {
  it('have a key and a name of their own within the kind', () => {
    for (const { details: asked = [] } of KINDS.values()) {
      expect(asked.map(({ key }) => key).filter((key) => !KEBAB.test(key))).toEqual([]);
      for (const of of [asked.map(({ key }) => key), asked.map(({ name }) => name)])
        expect(new Set(of).size).toBe(of.length);
    }
  });

  it.each(details)('%s: choices or a number that can be, and words that promise nothing', (_, __, detail) => {
    if ('choices' in detail) {
      expect(Object.keys(detail.choices).length).toBeGreaterThan(1);
      expect(new Set(Object.values(detail.choices)).size).toBe(Object.keys(detail.choices).length);
      expect(detail.choices).not.toHaveProperty('unknown');
    } else {
      const { unit, also = [], range } = detail;
      for (const other of also) expect(Number.isFinite(convert(1, other, unit)), other).toBe(true);
      expect(range[0]).toBeLessThan(range[1]);
    }
    if (detail.hint) expect(detail.hint).toMatch(/^[A-Z].*\.$/);
    const words = [detail.name, detail.hint ?? '', ...('choices' in detail ? Object.values(detail.choices) : [])];
    expect(words.filter((text) => /\b(safe|fine|ok|okay|unknown)\b|[a-z]'[a-z]/i.test(text))).toEqual([]);
  });

  it('of every battery ask what the parked car draws, in the unit of the gauge at the wiring', () => {
    const wiring = reads.find(({ gauge }) => gauge.key === 'standing-drain')?.gauge;
    for (const kind of ['battery-flooded', 'battery-agm', 'battery-lithium'])
      expect(KINDS.get(kind)?.details).toContainEqual(
        expect.objectContaining({ key: 'drain', unit: wiring?.unit, stays: true }),
      );
  });

  it('that a gauge is held against have answers among its usual readings', () => {
    for (const { kind, gauge } of reads)
      if (gauge.against?.what === 'detail') {
        const { key } = gauge.against;
        const detail = kind.details?.find((one) => one.key === key);
        if (!detail || 'choices' in detail) throw new Error(`${kind.key} does not ask for ${key}`);
        for (const [low, high] of usuals(gauge.usual))
          expect(Math.max(detail.range[0], low)).toBeLessThan(Math.min(detail.range[1], high));
      }
  });
});
