/** A kind of part as the API's document, with its gauges and what is asked about it. */
import type { z } from '@hono/zod-openapi';
import type { Detail, Gauge, Stretch } from '../../catalogue/gauge.ts';
import type { Kind } from '../../catalogue/kind.ts';
import { type Gauged, gaugesOf } from '../../findings/measured.ts';
import { sourceOut } from './documents.ts';
import type { KindOut } from './schemas/kinds.ts';

type KindDocument = z.infer<typeof KindOut>;

export const kindOut = (kind: Kind): KindDocument => ({
  key: kind.key,
  name: kind.name,
  system: kind.system,
  severity: kind.severity,
  appliesWhen: [...kind.applies],
  positions: [...(kind.positions ?? [])],
  clock: kind.clock,
  lookFrom: kind.interval.lookFrom,
  lookEvery: kind.interval.lookEvery,
  replaceBy: kind.interval.replaceBy,
  replaceByKm: kind.interval.replaceByKm ?? null,
  sources: kind.interval.sources.map(sourceOut),
  findDate: kind.findDate,
  ignored: kind.ignored,
  gauges: gaugesOf(kind).map(gaugeOut),
  details: (kind.details ?? []).map(detailOut),
});

const gaugeOut = ({ name, gauge, how, good, watch, act, sources }: Gauged): KindDocument['gauges'][number] => ({
  key: gauge.key,
  name,
  unit: gauge.unit,
  also: [...(gauge.also ?? [])],
  range: spanOf(gauge.range),
  ...usualOut(gauge),
  warmth: gauge.warmth?.of ?? null,
  minutes: gauge.minutes,
  round: gauge.round ?? false,
  how,
  good,
  watch: watch ?? null,
  act,
  sources: sources.map(sourceOut),
});

const usualOut = ({ usual, bands }: Gauge): Pick<KindDocument['gauges'][number], 'usual' | 'usualBy'> => {
  if (!('of' in usual)) return { usual: spanOf(usual), usualBy: null };
  const of = Object.fromEntries(Object.entries(usual.of).map(([answer, stretch]) => [answer, spanOf(stretch)]));
  return {
    usual: spanOf(usual.of.unknown as Stretch),
    usualBy: 'by' in bands ? { detail: bands.by, of } : null,
  };
};

const detailOut = (detail: Detail): KindDocument['details'][number] => {
  const { key, name, hint = null, stays = false } = detail;
  const about = { key, name, hint, stays };
  return 'choices' in detail
    ? { ...about, choices: { ...detail.choices }, unit: null, also: [], range: null }
    : { ...about, choices: null, unit: detail.unit, also: [...(detail.also ?? [])], range: spanOf(detail.range) };
};

const spanOf = ([low, high]: Stretch) => ({ low, high });
