/** What every benchmark here needs: times, memory, and a table of them. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** Times several ways of doing something in turns, so that a busy moment of the machine hits them alike; medians, in ms. */
export const inTurns = async <Name extends string>(
  rounds: number,
  ways: Readonly<Record<Name, () => unknown>>,
): Promise<Record<Name, number>> => {
  const names = Object.keys(ways) as Name[];
  const taken = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>;
  for (let round = 0; round < rounds; round++)
    for (const name of names) {
      collectGarbage();
      const start = performance.now();
      await ways[name]();
      taken[name].push(performance.now() - start);
    }
  return Object.fromEntries(names.map((name) => [name, median(taken[name])])) as Record<Name, number>;
};

export const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const [below = 0, above = 0] = [sorted[middle - 1], sorted[middle]];
  return sorted.length % 2 === 1 ? above : (below + above) / 2;
};

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

const MB = 2 ** 20;
/** Live heap, garbage collected first. */
export const heapInMb = (): number => {
  collectGarbage();
  return process.memoryUsage().heapUsed / MB;
};
export const residentInMb = (): number => process.memoryUsage.rss() / MB;

export const whole = (value: number): string => Math.round(value).toLocaleString('en-US');
export const tenths = (value: number): string => value.toFixed(1);
export const times = (value: number): string => `${value.toFixed(2)}x`;

/** Prints rows under a title, numbers to the right; the first row is the head. */
export const printTable = (title: string, rows: readonly (readonly string[])[]): void => {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  console.log(`\n${title}`);
  for (const row of rows)
    console.log(
      row
        .map((cell, column) => (column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0)))
        .join('   ')
        .trimEnd(),
    );
};
