/** One number to read off a gauge: its unit, its temperature where that counts, and what was wrong with it. */

import type { Fault } from '../../acts/fault.ts';
import { unitsOf } from '../../acts/record-reading.ts';
import type { Gauged } from '../../findings/measured.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { LoneUnit, UnitChoice } from '../answer-field.tsx';
import type { ReadingsForm } from '../forms.ts';
import { Faults, faultsOf } from '../layout.tsx';

type Given = Readonly<Record<string, string | undefined>>;

/** Beginning of the names of a reading’s fields. */
export const fieldOf = (partId: string, gauge: string): string => `${partId}.${gauge}.`;

export const ReadingField = ({
  part,
  test,
  label,
  given,
  faults,
  warmth = true,
}: {
  part: PartOnRecord;
  test: Gauged;
  label: string;
  given: Given;
  faults: readonly Fault[];
  /** Whether its temperature is asked beside it; the round asks once for all. */
  warmth?: boolean;
}) => {
  const { gauge } = test;
  const at = fieldOf(part.id, gauge.key);
  const typed = given[`${at}typed`] ?? '';
  // Whoever read in psi last time reads in psi again.
  const usual = part.readings.findLast((reading) => reading.gauge === gauge.key)?.unit ?? gauge.unit;
  return (
    <div class="reading">
      <label>
        {label}
        <LoneUnit units={unitsOf(gauge)} />
        <input
          name={`${at}typed`}
          inputmode="decimal"
          autocomplete="off"
          value={typed}
          {...faultsOf(faults, `${at}typed`)}
        />
      </label>
      <UnitChoice name={`${at}unit`} units={unitsOf(gauge)} picked={given[`${at}unit`] ?? usual} of={label} />
      {warmth && gauge.warmth && (
        <>
          <label>
            Temperature of {gauge.warmth.of}
            <input
              name={`${at}warmth`}
              inputmode="decimal"
              autocomplete="off"
              value={given[`${at}warmth`] ?? ''}
              {...faultsOf(faults, `${at}warmth`)}
            />
          </label>
          <UnitChoice
            name={`${at}warmthUnit`}
            units={['°C', '°F']}
            picked={given[`${at}warmthUnit`] ?? '°C'}
            of="temperature"
          />
        </>
      )}
      <Faults
        faults={faults}
        field={`${at}typed`}
        picked={given[`${at}typedChoice`]}
        asked={given[`${at}typedAsked`] ?? ''}
        text={typed}
      />
      {warmth && gauge.warmth && <Faults faults={faults} field={`${at}warmth`} />}
    </div>
  );
};

/** Day, instrument and note hold for every number of the form. */
export const ReadingRest = ({ given, faults }: { given: Partial<ReadingsForm>; faults: readonly Fault[] }) => {
  const days = faults.filter(({ field }) => field === 'day');
  return (
    <details open={days.length > 0 || Boolean(given.day || given.instrument || given.note)}>
      <summary>Another day, the instrument, a note</summary>
      <label>
        Day it was read; empty is today
        <input name="day" type="date" value={given.day ?? ''} {...faultsOf(days, days[0]?.field ?? '')} />
      </label>
      {days.slice(0, 1).map(({ field }) => (
        <Faults faults={days} field={field} />
      ))}
      <label>
        Instrument
        <input name="instrument" value={given.instrument ?? ''} placeholder="pocket multimeter" autocomplete="off" />
      </label>
      <label>
        Note
        <textarea name="note" rows={2}>
          {given.note ?? ''}
        </textarea>
      </label>
    </details>
  );
};
