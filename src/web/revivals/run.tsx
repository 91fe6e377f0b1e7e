/** A road test written down: how it ended, how far, what was noted, each against the run before. */
import type { Fault } from '../../acts/fault.ts';
import { readPlainNumber } from '../../acts/typed-number.ts';
import { recordRun } from '../../acts/work-revival.ts';
import { notADistance, readDistance, readForm } from '../forms.ts';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { notesIn, RUN_FORM } from './forms.ts';
import { backTo, stepInPath } from './in-path.ts';
import { showStep } from './step.tsx';

export const recordRunPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found?.step.run) return notFound(c, 'road test');
  const form = await readForm(c, RUN_FORM);
  const odometer = form.distance === '' ? null : readDistance(form.distance);
  const km = form.driven === '' ? null : readPlainNumber(form.driven);
  const hubs = form.hubs === '' ? null : readPlainNumber(form.hubs);
  const faults: Fault[] = [
    ...(form.distance !== '' && odometer === null ? [notADistance(form.distance)] : []),
    ...(form.driven !== '' && (km === null || km > 2000)
      ? [{ field: 'driven', message: `“${form.driven}” is no distance in km.` }]
      : []),
    ...(form.hubs !== '' && (hubs === null || hubs > 500)
      ? [{ field: 'hubs', message: `“${form.hubs}” is no difference in °C.` }]
      : []),
  ];
  const outcome =
    faults.length > 0
      ? { ok: false as const, faults }
      : recordRun(
          c.get('around').store,
          actingIn(visit),
          found.here,
          found.step,
          { what: 'run', run: found.step.run, ended: form.ended, km, notes: notesIn(form), hubs },
          {
            day: form.day || visit.on,
            by: form.by === visit.person.name ? '' : form.by,
            note: form.note,
            odometer,
            despite: form.despite,
          },
        );
  if (!outcome.ok) return showStep(c, found, form, outcome.faults);
  return c.redirect(at(visit, backTo(found)), 303);
};
