/** The readings of a part, gauge by gauge: judged, drawn along their days, and a field for the next one. */
import type { Fault } from '../../acts/fault.ts';
import { bandsOf, judge, referenceOf } from '../../ageing/judge.ts';
import { coldestNight } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import type { Zone } from '../../catalogue/gauge.ts';
import { addDays } from '../../dates/civil.ts';
import type { Finding } from '../../findings/assess.ts';
import { type Gauged, gaugesOf } from '../../findings/measured.ts';
import { capital, readingLine } from '../../findings/reading-words.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import type { ReadingRow } from '../../store/readings.ts';
import { Chart } from '../chart.tsx';
import type { ReadingsForm } from '../forms.ts';
import { Post } from '../layout.tsx';
import { ReadingField, ReadingRest } from './reading-field.tsx';

interface Shown {
  part: PartOnRecord;
  finding: Finding;
  given: Partial<ReadingsForm>;
  faults: readonly Fault[];
}

export const Readings = ({ part, finding, given, faults }: Shown) => {
  const gauges = gaugesOf(finding.kind);
  if (gauges.length === 0) return <></>;
  return (
    <section aria-labelledby="readings">
      <h2 id="readings">Readings</h2>
      {gauges.map((test) => (
        <GaugeRecord part={part} finding={finding} test={test} />
      ))}
      {!part.closedOn && (
        <Post to={`/cars/${part.carId}/readings`} class="round">
          <h3>Read it now</h3>
          <input type="hidden" name="back" value={part.id} />
          {gauges.map((test) => (
            <ReadingField part={part} test={test} label={test.name} given={given} faults={faults} />
          ))}
          <ReadingRest given={given} faults={faults} />
          <button>Keep what was read</button>
        </Post>
      )}
    </section>
  );
};

const GaugeRecord = ({ part, finding, test }: { part: PartOnRecord; finding: Finding; test: Gauged }) => {
  const read = part.readings.filter(({ gauge, day }) => gauge === test.gauge.key && day <= finding.on);
  const told = finding.measured.filter((one) => one.test === test);
  if (told.length === 0) return <></>;
  return (
    <article class="gauge">
      {told.map((one) => (
        <p>{readingLine(one, finding.kind)}</p>
      ))}
      <Trend test={test} read={read} finding={finding} />
      <ul class="claims">
        {read.toReversed().map((reading) => (
          <li>
            <strong>{reading.day}</strong> {withUnit(reading)}:{' '}
            <span class="evidence">{verdictOf(test, reading, finding)}</span>.
            {reading.instrument && ` ${capital(reading.instrument)}.`} {reading.note}{' '}
            {!part.closedOn && (
              <Post to={`/parts/${part.id}/readings/${reading.id}/withdraw`} class="inline">
                <button class="link">Take back: it was a slip</button>
              </Post>
            )}
          </li>
        ))}
      </ul>
    </article>
  );
};

/** As it was typed, with the unit it was taken for where none was typed. */
const withUnit = ({ typed, unit }: ReadingRow): string => (/[^\d.,\s−-]$/.test(typed) ? typed : `${typed} ${unit}`);

const known = ({ part, car }: Finding) => ({ details: part.details, coldest: car.place && coldestNight(car.place) });

const verdictOf = (test: Gauged, reading: ReadingRow, finding: Finding): string =>
  judge(test.gauge, reading, known(finding)).verdict ?? 'not judged';

/** The readings along their days, with the edges of the bands as lines. */
const Trend = ({ test, read, finding }: { test: Gauged; read: readonly ReadingRow[]; finding: Finding }) => {
  const [first] = read;
  if (!first) return <></>;
  const { gauge } = test;
  const levels = gauge.reads ? [] : edgesOf(test, finding);
  const heights = [...read.map(({ value }) => value), ...levels.map(({ at }) => at)];
  const room = Math.max((Math.max(...heights) - Math.min(...heights)) * 0.2, 10 ** -gauge.decimals);
  const days = { from: addDays(first.day, -15), to: addDays(finding.on, 15) };
  const points = read.map(({ day, value }) => ({ x: day, y: value }));
  return (
    <Chart
      says={`${test.name}: ${read.map(({ day, value }) => `${inUnit(value, gauge.unit, gauge.decimals)} on ${day}`).join('; ')}`}
      foot={days}
      side={{
        from: Math.min(...heights) - room,
        to: Math.max(...heights) + room,
        unit: gauge.unit,
        decimals: gauge.decimals,
      }}
      lines={points.length > 1 ? [{ name: 'from one to the next', points }] : []}
      dots={{ name: 'what was read', points }}
      levels={levels}
    />
  );
};

/** Where one band ends and the next begins, in the gauge’s own unit. */
const edgesOf = ({ gauge }: Gauged, finding: Finding): { at: number; name: string }[] => {
  const { details, coldest } = known(finding);
  const [bands, reference] = [bandsOf(gauge, details), referenceOf(gauge, details, coldest)];
  if (bands === null || reference === null) return [];
  const inPercent = gauge.against?.what === 'detail' && gauge.against.as === 'percent';
  const whole = (edge: number): number => (inPercent ? (edge * reference) / 100 : reference + edge);
  const line = (edge: number | undefined, words: string) =>
    edge === undefined
      ? []
      : [{ at: whole(edge), name: `${words} ${inUnit(whole(edge), gauge.unit, gauge.decimals)}` }];
  const { good, watch = good } = bands;
  const top = ({ to, under }: Zone): number | undefined => to ?? under;
  return [
    ...line(good.from, 'good from'),
    ...line(top(good), 'good to'),
    ...(watch.from === good.from ? [] : line(watch.from, 'act under')),
    ...(top(watch) === top(good) ? [] : line(top(watch), 'act over')),
  ];
};
