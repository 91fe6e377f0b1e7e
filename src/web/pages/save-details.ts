/** Keeping what was answered about a part. */
import { setDetailsAct } from '../../acts/details.ts';
import { partInPath } from '../find-part.ts';
import { DETAILS_FORM, type DetailsForm, readForm } from '../forms.ts';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { showPart } from './part.tsx';

export const saveDetails = async (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const visit = c.get('visit');
  const given = await readForm(c, DETAILS_FORM);
  const outcome = setDetailsAct(c.get('around').store, actingIn(visit), here.part, answersIn(given));
  if (!outcome.ok) return showPart(c, here.part, here.found, { faults: outcome.faults, details: given });
  return c.redirect(at(visit, `/parts/${here.part.id}#details`), 303);
};

const answersIn = (given: DetailsForm): Record<string, { typed: string; unit: string }> =>
  Object.fromEntries(
    Object.entries(given).flatMap(([name, typed]) => {
      const key = /^answer\.(.+)$/.exec(name)?.[1];
      return key ? [[key, { typed, unit: given[`unit.${key}`] ?? '' }]] : [];
    }),
  );
