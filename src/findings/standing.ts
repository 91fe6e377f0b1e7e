/**
 * Standings, mildest first; a part only moves on along this order until it is replaced, looked at or better dated.
 * `unproven`: the dates can't clear it. It is a task and never a pass.
 */
export const STANDINGS = ['in date', 'look', 'due', 'unproven', 'past'] as const;
export type Standing = (typeof STANDINGS)[number];

export const rankOf = (standing: Standing): number => STANDINGS.indexOf(standing);

export const graver = (a: Standing, b: Standing): Standing => (rankOf(a) >= rankOf(b) ? a : b);

export const STANDING_MEANS: Readonly<Record<Standing, string>> = {
  'in date': 'Nothing is owed by the calendar, and no reading asks. Age alone never proves condition.',
  look: 'Past the age from which the trade looks at it, or a reading or an estimate asks for a look: look, test, note it.',
  due: 'Its replace-by date is close or today, or a reading asks for action: order, book, do it.',
  unproven: 'Its dates can’t clear it. Find the date, or treat it as past.',
  past: 'Past common practice or the date on its label, or a safety part whose reading asks for action.',
};
