/** What is asked when a step is ticked: its day, what it writes into the records, what was read, what it cost. */

import { type Effect, effectsOf } from '../../acts/effects.ts';
import type { Fault } from '../../acts/fault.ts';
import { kindOf } from '../../acts/parts.ts';
import { EVIDENCE } from '../../findings/facts.ts';
import { gaugesOf } from '../../findings/measured.ts';
import type { Records } from '../../plans/step.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { AnswerField, shownAnswer } from '../answer-field.tsx';
import { DistanceField, Faults, faultsOf, useVisit } from '../layout.tsx';
import { nameOf } from '../pages/part-name.ts';
import { ReadingField } from '../pages/reading-field.tsx';
import type { TickForm } from './forms.ts';

interface Fields {
  parts: readonly PartOnRecord[];
  /** What ticking it writes. */
  records: Records;
  given: Partial<TickForm>;
  faults: readonly Fault[];
}

export const TickFields = ({ parts, records, given, faults }: Fields) => {
  const { on, person } = useVisit();
  const effects = effectsOf(records, parts);
  const readings = gauged(records, parts);
  const texts = given as Readonly<Record<string, string | undefined>>;
  return (
    <>
      <label>
        Day
        <input name="day" type="date" value={given.day || on} max={on} {...faultsOf(faults, 'day')} />
      </label>
      <Faults faults={faults} field="day" />
      {effects.length > 0 && <Effects effects={effects} given={given} />}
      {effects
        .filter(({ sort }) => sort === 'renews')
        .map(({ part }) => (
          <Answers part={part} records={records} given={given} faults={faults} />
        ))}
      {readings.map(({ part, test }) => (
        <ReadingField
          part={part}
          test={test}
          label={`${nameOf(part)}: ${test.name.toLowerCase()}`}
          given={texts}
          faults={faults}
        />
      ))}
      {records.odometer && <DistanceField label="Odometer" value={given.distance ?? ''} faults={faults} />}
      <label>
        Who did it
        <input name="by" value={given.by ?? person.name} autocomplete="off" />
      </label>
      <label>
        Note, or what proves it: invoice, batch, who did it
        <input name="note" value={given.note ?? ''} />
      </label>
      <label>
        Cost, in your currency
        <input
          name="cost"
          inputmode="decimal"
          autocomplete="off"
          value={given.cost ?? ''}
          {...faultsOf(faults, 'cost')}
        />
      </label>
      <Faults faults={faults} field="cost" />
    </>
  );
};

const gauged = (records: Records, parts: readonly PartOnRecord[]) =>
  (records.reads ?? []).flatMap(([kind, gauge]) =>
    parts
      .filter((part) => part.kind === kind)
      .flatMap((part) => {
        const test = gaugesOf(kindOf(part)).find((one) => one.gauge.key === gauge);
        return test ? [{ part, test }] : [];
      }),
  );

const WORDS = { renews: 'renewed', services: 'serviced or looked at', uses: 'used' } as const;

/** What the tick writes into the records; each line can be left out. */
const Effects = ({ effects, given }: { effects: readonly Effect[]; given: Partial<TickForm> }) => {
  const chosen = (key: string): boolean => given.effects === undefined || given.effects.includes(key);
  const picked = given.evidence ?? 'own memory';
  return (
    <>
      <fieldset class="choices">
        <legend>Goes into the car’s records with that day</legend>
        {effects.map(({ key, sort, part }) => (
          <label>
            <input type="checkbox" name="effects" value={key} checked={chosen(key)} /> {nameOf(part)}: {WORDS[sort]}
          </label>
        ))}
        <label>
          How that is known
          <select name="evidence">
            {EVIDENCE.filter((one) => one !== 'read on the part').map((one) => (
              <option value={one} selected={one === picked}>
                {one}
              </option>
            ))}
          </select>
        </label>
      </fieldset>
    </>
  );
};

/** What the new fill or part is: asked at once, so that its record is complete. */
const Answers = ({ part, records, given, faults }: Omit<Fields, 'parts'> & { part: PartOnRecord }) => {
  const details = (kindOf(part).details ?? []).filter(({ stays }) => !stays);
  // What was true of the old fill is no answer about the new one.
  const becomes = (key: string): string | number | undefined =>
    records.answers?.find((one) => one.kinds.includes(part.kind) && one.key === key)?.value;
  const texts = given as Readonly<Record<string, string | undefined>>;
  return (
    <>
      {details.map((detail) => (
        <AnswerField
          detail={{ ...detail, name: `${nameOf(part)}, new: ${detail.name.toLowerCase()}` }}
          name={`answer.${part.id}.${detail.key}`}
          unitName={`unit.${part.id}.${detail.key}`}
          value={texts[`answer.${part.id}.${detail.key}`] ?? shownAnswer(detail, becomes(detail.key))}
          unit={texts[`unit.${part.id}.${detail.key}`]}
          faults={faults}
        />
      ))}
    </>
  );
};
