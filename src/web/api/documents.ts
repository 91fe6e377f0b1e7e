/** Rows and findings as the API's documents. */
import type { z } from '@hono/zod-openapi';
import { GRADES } from '../../catalogue/grades.ts';
import type { Kind } from '../../catalogue/kind.ts';
import { SOURCES, type SourceKey } from '../../catalogue/sources.ts';
import { ageOf } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { explain } from '../../findings/explain.ts';
import type { CarWithParts, PartOnRecord } from '../../store/cars.ts';
import type { CarOut, FindingOut, KindOut, PartOut } from './schemas.ts';

export const carOut = ({ car, facts }: CarWithParts): z.infer<typeof CarOut> => ({
  id: car.id,
  name: car.name,
  built: { typed: car.builtTyped, edtf: car.builtEdtf, from: car.builtFrom, to: car.builtTo },
  traits: car.traits,
  note: car.note,
  odometer: [...facts.odometer],
});

export const partOut = ({
  id,
  carId,
  kind,
  position,
  note,
  openedOn,
  closedOn,
  closedWhy,
  replaces,
  claims,
}: PartOnRecord): z.infer<typeof PartOut> => ({
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
});

export const findingOut = (finding: Finding): z.infer<typeof FindingOut> => {
  const { part, kind, ruling, standing, began, clock, since, label, look, due, past, on } = finding;
  const { age, reasons, doubts, todo, cautions } = explain(finding);
  return {
    partId: part.id,
    kind: kind.key,
    name: kind.name,
    position: part.position,
    system: kind.system,
    severity: kind.severity,
    standing,
    began,
    clock,
    since: since && { from: since.from, to: since.to },
    ageMonths: since && !label ? ageOf(since, on) : null,
    label,
    look,
    due,
    past,
    ruledBy: label ? 'label' : ruling.by,
    interval: { lookFrom: ruling.lookFrom, replaceBy: ruling.replaceBy, replaceByKm: ruling.replaceByKm },
    age,
    reasons: reasons.map(({ text, sources }) => ({ text, sources: sources.map(sourceOut) })),
    doubts,
    todo,
    cautions,
  };
};

export const kindOut = (kind: Kind): z.infer<typeof KindOut> => ({
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
});

const sourceOut = (key: SourceKey) => ({ title: SOURCES[key].title, grade: GRADES[SOURCES[key].grade] });
