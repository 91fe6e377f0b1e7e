/** The trade's practice as it applies to one part here: by what is in it, and by where the car stands. */
import { COOLANT_FAMILIES } from '../ageing/coolant/families.ts';
import { FUELS } from '../ageing/fuel/fuels.ts';
import { lookFrom } from '../ageing/rubber/place.ts';
import type { Kind } from '../catalogue/kind.ts';
import { RUBBER_KINDS } from '../catalogue/rubber.ts';
import { lengthInWords } from '../dates/words.ts';
import type { CarFacts, PartFacts } from './facts.ts';
import { blendOf } from './outlook/fuel.ts';
import { leadFor, type Ruling } from './ruling.ts';

/** An owner's or a handbook's figure is left as it is. */
export const rulingHere = (ruling: Ruling, kind: Kind, part: PartFacts, car: CarFacts): Ruling => {
  if (ruling.by !== 'practice') return ruling;
  if (part.details.blend !== undefined) return byBlend(ruling, kind, part);
  if (part.details.family !== undefined) return byFamily(ruling, String(part.details.family));
  return car.place && RUBBER_KINDS.has(kind.key) ? byPlace(ruling, kind, car.place) : ruling;
};

const byBlend = (ruling: Ruling, kind: Kind, part: PartFacts): Ruling => {
  const { name, plain, stabilized } = FUELS[blendOf({ kind, part })];
  const treated = part.details.stabilized === 'yes' && stabilized !== null;
  const life = treated ? stabilized : plain;
  return {
    ...ruling,
    lookFrom: life.watch,
    replaceBy: life.stop,
    lead: leadFor(life.stop),
    note: `For ${name}, ${treated ? 'stabilized while fresh' : part.details.stabilized === 'yes' ? 'for which no longer life is published with a stabilizer' : 'not stabilized'}.`,
  };
};

const byFamily = (ruling: Ruling, answer: string): Ruling => {
  const family = Object.entries(COOLANT_FAMILIES).find(([key]) => key === answer)?.[1];
  return family
    ? {
        ...ruling,
        replaceBy: family.months,
        replaceByKm: family.km,
        lead: leadFor(family.months),
        note: `For ${family.name}.`,
      }
    : ruling;
};

/** The place shifts the first look, and never the replace-by. */
const byPlace = (ruling: Ruling, kind: Kind, place: NonNullable<CarFacts['place']>): Ruling => {
  if (ruling.lookFrom === null) return ruling;
  const shifted = lookFrom(ruling.lookFrom, ruling.replaceBy, place, kind.severity === 'safety');
  if (shifted === ruling.lookFrom) return ruling;
  const why = shifted < ruling.lookFrom ? 'Looked at sooner' : 'Looked at later';
  return {
    ...ruling,
    lookFrom: shifted,
    note: `${why} than the usual ${lengthInWords(ruling.lookFrom)}, for the place it stands in.`,
  };
};
