/** One survey of the leak map: every wet spot with its fluid and how wet it is, beside what was found before. */
import { recordSurvey } from '../../acts/work-revival.ts';
import { readForm } from '../forms.ts';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { LEAKS_FORM, spotsIn } from './forms.ts';
import { backTo, stepInPath } from './in-path.ts';
import { showStep } from './step.tsx';

export const recordLeaksPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  const survey = found?.step.survey;
  if (!found || !survey) return notFound(c, 'survey');
  const form = await readForm(c, LEAKS_FORM);
  const spots = spotsIn(form);
  const outcome =
    spots.length === 0 && form['dry'] !== 'on'
      ? { ok: false as const, faults: [{ field: 'dry', message: 'Name each wet spot, or say that all was dry.' }] }
      : recordSurvey(
          c.get('around').store,
          actingIn(visit),
          found.here,
          { what: 'survey', ...survey, spots },
          { day: form.day || visit.on, by: form.by === visit.person.name ? '' : form.by, note: form.note },
        );
  if (!outcome.ok) return showStep(c, found, form, outcome.faults);
  return c.redirect(at(visit, backTo(found)), 303);
};
