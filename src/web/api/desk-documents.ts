/** Answers of the desks as the API's documents: the numbers behind their words, with no more digits than they bear. */
import type { z } from '@hono/zod-openapi';
import { CHARGE_SOURCES } from '../../ageing/battery/charge.ts';
import { DISCHARGE_SOURCES } from '../../ageing/battery/discharge.ts';
import { FREEZING_SOURCES } from '../../ageing/battery/freezing.ts';
import { OUTLOOK_SOURCES } from '../../ageing/battery/outlook.ts';
import { BOILING_SOURCES } from '../../ageing/brake-fluid/boiling.ts';
import { MIXING_SOURCES, mayMix } from '../../ageing/brake-fluid/mixing.ts';
import { BRAKE_FLUID_SOURCES, SILICONE_SOURCES } from '../../ageing/brake-fluid/outlook.ts';
import { COOLANT_SOURCES } from '../../ageing/coolant/outlook.ts';
import { SAMPLE_SOURCES } from '../../ageing/coolant/sample.ts';
import { FUELS } from '../../ageing/fuel/fuels.ts';
import { WATER_SOURCES } from '../../ageing/fuel/water.ts';
import { coldestNight, type Place } from '../../ageing/place.ts';
import { RUBBER_SOURCES } from '../../ageing/rubber/families.ts';
import { PLACE_SOURCES, placeFactor } from '../../ageing/rubber/place.ts';
import type { Span } from '../../ageing/span.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { type BatteryAnswer, chargerWords, drainWords, frostWords } from '../desks/battery-answer.tsx';
import type { BrakeFluidAnswer } from '../desks/brake-fluid-answer.tsx';
import { disagreement, judgedLine } from '../desks/brake-fluid-judged.ts';
import type { CoolantAnswer } from '../desks/coolant-answer.tsx';
import { CALENDAR_RULES, type FuelAnswer, partedBy, waterWords } from '../desks/fuel-answer.tsx';
import { type RubberAnswer, storageWords } from '../desks/rubber.tsx';
import { rounded, sourceOut } from './documents.ts';
import type { BatteryOut, BrakeFluidOut, CoolantOut, FuelOut, RubberOut } from './schemas/desks.ts';

const span = ({ low, high }: Span, decimals?: number): Span => ({
  low: rounded(low, decimals),
  high: rounded(high, decimals),
});

const sourcesOut = (...lists: (readonly SourceKey[])[]) => [...new Set(lists.flat())].map(sourceOut);

const placeTold = ({ place, nightTold, assumed }: { place: Place; nightTold: boolean; assumed: string | null }) => ({
  told: nightTold,
  assumed,
  shelter: place.shelter,
  air: place.air,
  coldestNight: rounded(coldestNight(place)),
});

export const brakeFluidOut = (answer: BrakeFluidAnswer): z.infer<typeof BrakeFluidOut> => {
  const { facts, told, judged, added, on, outlook } = answer;
  const { water, boiling, wet, limit, measured, says } = outlook;
  const { grade } = facts;
  const disagree = disagreement(judged);
  return {
    on,
    grade: grade.name,
    gradeTold: told,
    water: water && span(water),
    boiling: boiling && { ...span(boiling, 0), atMost: boiling.atMost },
    wetMinimum: grade.wetMinC,
    wet,
    limit,
    measured,
    verdicts: judged.map((one) => ({
      gauge: one.test.gauge.key,
      value: one.value,
      unit: one.test.gauge.unit,
      verdict: one.verdict,
      says: judgedLine(one),
    })),
    mayMix: added && mayMix(grade.name, added.name),
    says: [...(disagree ? [disagree] : []), ...says],
    sources: sourcesOut(
      grade.base === 'silicone' ? SILICONE_SOURCES : BRAKE_FLUID_SOURCES,
      BOILING_SOURCES,
      added ? MIXING_SOURCES : [],
      judged.flatMap(({ test }) => test.sources),
    ),
  };
};

/** Only the mixing was asked about. */
const NOT_SAMPLED = { freezes: null, margin: null, verdict: null, says: [] };

export const coolantOut = (answer: CoolantAnswer): z.infer<typeof CoolantOut> => {
  const { glycol, sample, night, exchange, mixing } = answer;
  const { freezes, margin, verdict, says } = sample?.outlook ?? NOT_SAMPLED;
  return {
    glycol,
    strength: sample && span(sample.strength),
    freezes: freezes && span(freezes),
    night,
    margin: margin && span(margin),
    verdict,
    exchange: exchange === null ? null : rounded(exchange),
    mixing,
    says,
    sources: sourcesOut(COOLANT_SOURCES, SAMPLE_SOURCES),
  };
};

/** Without a night told, frost is not judged: an assumed one must not rule it out. */
export const batteryOut = (answer: BatteryAnswer): z.infer<typeof BatteryOut> => {
  const { facts, nominal, nightTold, assumed, until, outlook } = answer;
  const { chemistry, charge, drain, maintained, from } = facts;
  const { points, recharge, noCrank, freezes } = outlook;
  return {
    from,
    until,
    charge: span(charge),
    points: points.map((point) => ({ day: point.day, ...span(point.charge) })),
    recharge,
    noCrank,
    frost: !nightTold ? 'not judged' : freezes ? 'judged' : 'does not freeze',
    freezes: nightTold ? freezes : null,
    place: placeTold(answer),
    says: [
      drainWords(drain, maintained),
      ...frostWords(answer),
      chargerWords(chemistry, nominal),
      ...(assumed ? [assumed] : []),
    ],
    sources: sourcesOut(CHARGE_SOURCES, DISCHARGE_SOURCES, FREEZING_SOURCES, OUTLOOK_SOURCES),
  };
};

export const fuelOut = (answer: FuelAnswer): z.infer<typeof FuelOut> => {
  const { facts, on, assumed, outlook } = answer;
  const { watch, stop, water, says } = outlook;
  return {
    on,
    fuel: FUELS[facts.fuel].name,
    watch,
    stop,
    water: water && {
      held: water.held === null ? null : rounded(water.held, 2),
      perYear: water.perYear && span(water.perYear),
      days: water.days && span(water.days, 0),
    },
    parted: partedBy(answer),
    place: placeTold(answer),
    says: [CALENDAR_RULES, ...waterWords(answer), ...says, ...(assumed ? [assumed] : [])],
    sources: sourcesOut(FUELS[facts.fuel].sources, WATER_SOURCES),
  };
};

export const rubberOut = (answer: RubberAnswer, on: CivilDate): z.infer<typeof RubberOut> => {
  const { rubber, group, made, life, place } = answer;
  return {
    on,
    rubber,
    group,
    made: { from: made.from, to: made.to },
    inspect: life.inspect,
    end: life.end,
    pace: place && rounded(placeFactor(place)),
    says: storageWords(answer),
    sources: sourcesOut(RUBBER_SOURCES, PLACE_SOURCES),
  };
};
