/** Every reading of the parts a car has, oldest first. */
import { kindOf } from '../../../acts/parts.ts';
import type { CivilDate } from '../../../dates/civil.ts';
import { dayInWords } from '../../../dates/words.ts';
import type { Reading } from '../../../findings/facts.ts';
import type { PartOnRecord } from '../../../store/cars.ts';
import { nameOf } from '../../pages/part-name.ts';

export const FileReadings = ({ parts, on }: { parts: readonly PartOnRecord[]; on: CivilDate }) => {
  const read = parts
    .flatMap((part) => part.readings.map((reading) => ({ part, reading })))
    .filter(({ reading }) => reading.day <= on)
    .toSorted((a, b) => a.reading.day.localeCompare(b.reading.day));
  return (
    <section>
      <h2>Readings</h2>
      {read.length === 0 ? (
        <p>Nothing was ever measured on it, as far as is recorded.</p>
      ) : (
        <ul class="two">
          {read.map(({ part, reading }) => (
            <li>{readInWords(part, reading)}</li>
          ))}
        </ul>
      )}
    </section>
  );
};

const readInWords = (part: PartOnRecord, { day, gauge, value, warmth }: Reading): string => {
  const test = kindOf(part).tests.find((one) => one.gauge?.key === gauge);
  const { decimals, unit } = test?.gauge ?? { decimals: 0, unit: '' };
  const at = warmth === null ? '' : ` at ${Math.round(warmth)} °C`;
  return `${dayInWords(day)}: ${nameOf(part)}, ${test?.name.toLowerCase() ?? gauge} ${value.toFixed(decimals)} ${unit}${at}`;
};
