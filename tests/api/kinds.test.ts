import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { document } from '../support/api.ts';
import { openSite } from '../support/site.ts';

interface Kinds {
  key: string;
  gauges: {
    key: string;
    usualBy: unknown;
    how: string;
    good: string;
    act: string;
    sources: unknown[];
  }[];
  details: unknown[];
}

describe('GET /kinds', () => {
  it('lists every kind with its interval and sources', async () => {
    const { kinds } = await document<{ kinds: Record<string, unknown>[] }>(await openSite().get('/api/v1/kinds'));
    expect(kinds.map(({ key }) => key)).toEqual([...KINDS.keys()]);
    expect(kinds.find(({ key }) => key === 'brake-fluid-glycol')).toMatchObject({
      name: 'Brake fluid, glycol (DOT 3, 4, 5.1)',
      severity: 'safety',
      clock: 'filled',
      lookFrom: 18,
      replaceBy: 24,
      replaceByKm: null,
      appliesWhen: ['hydraulic-brakes', 'glycol-fluid'],
    });
    for (const { key, sources } of kinds) expect((sources as unknown[]).length, String(key)).toBeGreaterThan(0);
  });

  it('names the gauges of a kind and what is asked about it', async () => {
    const { kinds } = await document<{ kinds: Kinds[] }>(await openSite().get('/api/v1/kinds'));
    const kind = (key: string) => kinds.find((one) => one.key === key);
    expect(kind('brake-fluid-glycol')?.gauges.find(({ key }) => key === 'boiling-point')).toMatchObject({
      unit: '°C',
      also: ['°F'],
      range: { low: 60, high: 350 },
      usual: { low: 100, high: 300 },
      usualBy: null,
      minutes: 15,
      round: false,
    });
    expect(kind('battery-flooded')?.gauges.find(({ key }) => key === 'rest-voltage')?.usualBy).toMatchObject({
      detail: 'volts',
      of: { '6': { low: 5.25, high: 6.6 }, '12': { low: 10.5, high: 13.2 } },
    });
    expect(kind('tires-road')?.gauges.find(({ key }) => key === 'cold-pressure')).toMatchObject({
      round: true,
      warmth: 'the tire',
    });
    expect(kind('battery-flooded')?.details.slice(0, 4)).toMatchObject([
      { key: 'chemistry' },
      { key: 'volts', choices: { '6': '6 volts', '12': '12 volts' }, unit: null, range: null, stays: true },
      { key: 'capacity', choices: null, unit: 'Ah', also: [], range: { low: 5, high: 250 }, stays: false },
      { key: 'connection' },
    ]);
    for (const { key, gauges } of kinds)
      for (const gauge of gauges) {
        expect(gauge.sources.length, `${key} ${gauge.key}`).toBeGreaterThan(0);
        for (const words of [gauge.how, gauge.good, gauge.act]) expect(words, `${key} ${gauge.key}`).not.toBe('');
      }
    expect(kinds.filter(({ gauges }) => gauges.length > 0).length).toBeGreaterThan(10);
  });
});
