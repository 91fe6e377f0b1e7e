/** Published tables read between their rows. */

/** A row: argument and value. */
export type Row = readonly [x: number, y: number];

/** Linear between rows of rising argument; beyond the first and last row their values hold. */
export const interpolate = (rows: readonly Row[], x: number): number => {
  const above = rows.findIndex(([at]) => at >= x);
  const [high, low] = [rows[above], rows[above - 1]];
  if (!high) return (rows.at(-1) as Row)[1];
  if (!low) return high[1];
  return low[1] + ((high[1] - low[1]) * (x - low[0])) / (high[0] - low[0]);
};

/** The table read the other way: argument from value. Values must rise or fall throughout. */
export const inverse = (rows: readonly Row[]): Row[] => rows.map(([x, y]): Row => [y, x]).sort(([a], [b]) => a - b);
