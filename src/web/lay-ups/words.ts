import { monthsBetween } from '../../dates/civil.ts';
import { dayInWords, monthsInWords } from '../../dates/words.ts';
import type { LayUpRow } from '../../store/lay-ups.ts';

/** “Parked on 1 November 2026 until 1 April 2027 (5 months).” */
export const spanOf = ({ parkedOn, returnOn, closedOn, closedHow }: LayUpRow): string => {
  if (closedHow === 'called off') return `Called off on ${closedOn ? dayInWords(closedOn) : ''}.`;
  const from = `Parked on ${dayInWords(parkedOn)}`;
  const end = closedOn ?? returnOn;
  const length = end ? ` (${monthsInWords(monthsBetween(parkedOn, end))})` : '';
  if (closedOn) return `${from}, back on ${dayInWords(closedOn)}${length}.`;
  return returnOn ? `${from} until ${dayInWords(returnOn)}${length}.` : `${from}, with an open end.`;
};
