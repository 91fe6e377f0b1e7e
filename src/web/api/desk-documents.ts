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
import { type BatteryAnswer, chargerWords, drainWords, frostWords } from '../desks/battery.tsx';
import { type BrakeFluidAnswer, SPENT_COPPER } from '../desks/brake-fluid.tsx';
import type { CoolantAnswer } from '../desks/coolant.tsx';
import type { FuelAnswer } from '../desks/fuel.tsx';
import { type RubberAnswer, storageWords } from '../desks/rubber.tsx';
import { rounded, sourceOut } from './documents.ts';
import type { BatteryOut, BrakeFluidOut, CoolantOut, FuelOut, RubberOut } from './schemas/desks.ts';

const span = ({ low, high }: Span, decimals?: number): Span => ({
  low: rounded(low, decimals),
  high: rounded(high, decimals),
});

const sourcesOut = (...lists: (readonly SourceKey[])[]) => [...new Set(lists.flat())].map(sourceOut);

const placeTold = (place: Place, told: boolean) => ({
  told,
  shelter: place.shelter,
  air: place.air,
  coldestNight: rounded(coldestNight(place)),
});

export const brakeFluidOut = (answer: BrakeFluidAnswer): z.infer<typeof BrakeFluidOut> => {
  const { facts, told, copper, added, on, outlook } = answer;
  const { water, boiling, wet, limit, measured, says } = outlook;
  const { grade } = facts;
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
    copperSpent: copper === null ? null : copper >= SPENT_COPPER,
    mayMix: added && mayMix(grade.name, added.name),
    says: [...says],
    sources: sourcesOut(
      grade.base === 'silicone' ? SILICONE_SOURCES : BRAKE_FLUID_SOURCES,
      BOILING_SOURCES,
      added ? MIXING_SOURCES : [],
      copper === null ? [] : ['repair-association-table'],
    ),
  };
};

export const coolantOut = (answer: CoolantAnswer): z.infer<typeof CoolantOut> => {
  const { glycol, strength, night, outlook, exchange, mixing } = answer;
  const { freezes, margin, verdict, says } = outlook;
  return {
    glycol,
    strength: span(strength),
    freezes: span(freezes),
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
export const batteryOut = (answer: BatteryAnswer, placed: boolean): z.infer<typeof BatteryOut> => {
  const { facts, place, nominal, until, outlook } = answer;
  const { chemistry, charge, drain, maintained, from } = facts;
  const { points, recharge, noCrank, freezes } = outlook;
  const end = points.at(-1)?.charge ?? charge;
  return {
    from,
    until,
    charge: span(charge),
    points: points.map((point) => ({ day: point.day, ...span(point.charge) })),
    recharge,
    noCrank,
    frost: !placed ? 'not judged' : freezes ? 'judged' : 'does not freeze',
    freezes: placed ? freezes : null,
    place: placeTold(place, placed),
    says: [drainWords(drain, maintained), ...frostWords(chemistry, end), chargerWords(chemistry, nominal)],
    sources: sourcesOut(CHARGE_SOURCES, DISCHARGE_SOURCES, FREEZING_SOURCES, OUTLOOK_SOURCES),
  };
};

export const fuelOut = ({ facts, place, placed, on, outlook }: FuelAnswer): z.infer<typeof FuelOut> => {
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
    place: placeTold(place, placed),
    says,
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
    says: place ? storageWords(place, rubber) : ['Where it lies was not told, so its storage is not judged.'],
    sources: sourcesOut(RUBBER_SOURCES, PLACE_SOURCES),
  };
};
