/** A finding as the API's document. */
import type { z } from '@hono/zod-openapi';
import { ageOf } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { explain } from '../../findings/explain.ts';
import type { Outlook } from '../../findings/outlook/outlook.ts';
import { readingLine } from '../../findings/reading-words.ts';
import { sourceOut } from './documents.ts';
import type { FindingOut } from './schemas/findings.ts';

export const findingOut = (finding: Finding): z.infer<typeof FindingOut> => {
  const { part, kind, ruling, standing, by, began, clock, since, label, look, due, past, on, measured } = finding;
  const { age, reasons, doubts, todo, outlook, surer, cautions } = explain(finding);
  return {
    partId: part.id,
    kind: kind.key,
    name: kind.name,
    position: part.position,
    system: kind.system,
    severity: kind.severity,
    standing,
    by,
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
    readings: measured.map((one) => readingLine(one, kind)),
    outlook: outlook && outlookOut(outlook),
    surer,
    cautions,
  };
};

const outlookOut = ({ now, measured, days, says, ends, sources }: Outlook) => ({
  now,
  measured,
  days: days.map(({ what, when: { earliest, latest } }) => ({ what, earliest, latest })),
  says,
  ends,
  sources: sources.map(sourceOut),
});
