import { type CivilDate, monthsBetween } from '../../dates/civil.ts';
import { dayInWords, monthsInWords } from '../../dates/words.ts';
import type { LayUpRow } from '../../store/lay-ups.ts';

/** Whether it has ended by a day. */
export const isClosed = ({ closedOn }: Pick<LayUpRow, 'closedOn'>, on: CivilDate): boolean =>
  closedOn !== null && closedOn <= on;

/** “Parked on 1 November 2026 until 1 April 2027 (5 months).” */
export const spanOf = ({ parkedOn, returnOn, closedOn, closedHow }: LayUpRow, on: CivilDate): string => {
  if (closedHow === 'called off') return `Called off on ${closedOn ? dayInWords(closedOn) : ''}.`;
  const from = `${parkedOn > on ? 'To be parked' : 'Parked'} on ${dayInWords(parkedOn)}`;
  const end = closedOn ?? returnOn;
  const length = end ? ` (${monthsInWords(monthsBetween(parkedOn, end))})` : '';
  if (closedOn) return `${from}, back on ${dayInWords(closedOn)}${length}.`;
  return returnOn ? `${from} until ${dayInWords(returnOn)}${length}.` : `${from}, with an open end.`;
};
