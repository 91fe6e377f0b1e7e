/** What stops a return until somebody decides, above everything else on its sheets. */
import type { RevivalPlan } from '../../../revival/plan.ts';

export const Stopped = ({ plan }: { plan: RevivalPlan }) => {
  const open = plan.stops.filter(({ decided }) => !decided);
  return open.length === 0 ? null : <p class="stopped">Stop. {open.map(({ words }) => words).join(' ')}</p>;
};
