/** Rows as the API's documents: cars, parts with their readings, places. */
import type { z } from '@hono/zod-openapi';
import { kindOf } from '../../acts/parts.ts';
import { judge } from '../../ageing/judge.ts';
import { coldestNight, monthsOf } from '../../ageing/place.ts';
import { GRADES } from '../../catalogue/grades.ts';
import { SOURCES, type SourceKey } from '../../catalogue/sources.ts';
import { gaugesOf } from '../../findings/measured.ts';
import { wantsInWords } from '../../findings/reading-words.ts';
import type { CarWithParts, PartOnRecord } from '../../store/cars.ts';
import type { PlaceRow } from '../../store/places.ts';
import type { CarOut } from './schemas/cars.ts';
import type { PartOut } from './schemas/parts.ts';
import type { PlaceOut } from './schemas/places.ts';

export const sourceOut = (key: SourceKey) => ({ title: SOURCES[key].title, grade: GRADES[SOURCES[key].grade] });

/** A figure with no more digits than an estimate bears. */
export const rounded = (value: number, decimals = 1): number => Number(value.toFixed(decimals));

export const carOut = ({ car, facts, place }: CarWithParts): z.infer<typeof CarOut> => ({
  id: car.id,
  name: car.name,
  built: { typed: car.builtTyped, edtf: car.builtEdtf, from: car.builtFrom, to: car.builtTo },
  traits: car.traits,
  note: car.note,
  odometer: [...facts.odometer],
  place: place?.id ?? null,
});

/** A part and, as a reading is judged by the nights there, the place its car stands in. */
export const partOut = (part: PartOnRecord, place: PlaceRow | undefined): z.infer<typeof PartOut> => {
  const { id, carId, kind, position, note, openedOn, closedOn, closedWhy, replaces, claims, details } = part;
  return {
    id,
    carId,
    kind,
    position,
    note,
    openedOn,
    closedOn,
    closedWhy,
    replaces,
    dates: claims.map(({ id: claimId, clock, said, typed, edtf, from, to, evidence, km, note: about, recordedOn }) => ({
      id: claimId,
      clock,
      said,
      typed,
      edtf,
      from,
      to,
      evidence,
      km,
      note: about,
      recordedOn,
    })),
    details: { ...details },
    readings: readingsOut(part, place),
  };
};

const readingsOut = (part: PartOnRecord, place: PlaceRow | undefined): z.infer<typeof PartOut>['readings'] => {
  const kind = kindOf(part);
  const known = { details: part.details, coldest: place ? coldestNight(place) : null };
  return part.readings.flatMap((reading) => {
    // Keys of gauges are never renamed: what has none was never read on such a part.
    const test = gaugesOf(kind).find(({ gauge }) => gauge.key === reading.gauge);
    if (!test) return [];
    const { id, gauge, day, value, typed, unit: typedUnit, warmth, instrument, note, recordedOn } = reading;
    const judged = judge(test.gauge, reading, known);
    return [
      {
        id,
        gauge,
        day,
        value,
        unit: test.gauge.unit,
        typed,
        typedUnit,
        warmth,
        instrument,
        note,
        recordedOn,
        verdict: judged.verdict,
        wants: judged.wants && wantsInWords(judged, kind),
      },
    ];
  });
};

export const placeOut = (place: PlaceRow, cars: readonly string[]): z.infer<typeof PlaceOut> => {
  const { id, name, winterLow, summerHigh, air, shelter, humidity, heatedTo, hemisphere, months, note } = place;
  return {
    id,
    name,
    winterLow,
    summerHigh,
    air,
    shelter,
    humidity,
    heatedTo,
    hemisphere,
    months,
    note,
    cars: [...cars],
    year: monthsOf(place).map(({ mean, low, high }) => ({
      mean: rounded(mean),
      low: rounded(low),
      high: rounded(high),
    })),
  };
};
