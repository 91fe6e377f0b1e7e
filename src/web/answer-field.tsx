/** A question with its field: a choice, or a number with its unit. */
import type { Fault } from '../acts/fault.ts';
import type { Detail } from '../catalogue/gauge.ts';
import type { Unit } from '../catalogue/units.ts';
import { Faults, faultsOf } from './layout.tsx';

/** A stored answer as it stands in its field. */
export const shownAnswer = (detail: Detail, stored: string | number | undefined): string =>
  typeof stored === 'number' && 'unit' in detail
    ? String(Number(stored.toFixed(detail.decimals)))
    : String(stored ?? '');

export const AnswerField = ({
  detail,
  name,
  unitName,
  value,
  unit,
  faults,
}: {
  detail: Detail;
  name: string;
  unitName: string;
  value: string;
  unit: string | undefined;
  faults: readonly Fault[];
}) => {
  const hint = detail.hint && `${name}-hint`;
  const units = 'unit' in detail ? [detail.unit, ...(detail.also ?? [])] : [];
  return (
    <>
      <div class="reading">
        {'choices' in detail ? (
          <label>
            {detail.name}
            <select name={name} {...faultsOf(faults, detail.key, hint)}>
              <option value="">Not known</option>
              {Object.entries(detail.choices).map(([key, words]) => (
                <option value={key} selected={key === value}>
                  {words}
                </option>
              ))}
            </select>
          </label>
        ) : (
          <label>
            {detail.name}
            <LoneUnit units={units} />
            <input
              name={name}
              inputmode="decimal"
              autocomplete="off"
              value={value}
              {...faultsOf(faults, detail.key, hint)}
            />
          </label>
        )}
        {'unit' in detail && <UnitChoice name={unitName} units={units} picked={unit ?? detail.unit} of={detail.name} />}
      </div>
      {hint && (
        <p class="hint" id={hint}>
          {detail.hint}
        </p>
      )}
      <Faults faults={faults} field={detail.key} />
    </>
  );
};

/** The one unit of a field, within its label for those who can’t see it beside the field. */
export const LoneUnit = ({ units }: { units: readonly Unit[] }) =>
  units.length === 1 ? <span class="unseen"> in {units[0]}</span> : <></>;

export const UnitChoice = ({
  name,
  units,
  picked,
  of,
}: {
  name: string;
  units: readonly Unit[];
  picked: string;
  of: string;
}) =>
  units.length === 1 ? (
    <span class="unit-word" aria-hidden="true">
      {units[0]}
    </span>
  ) : (
    <select name={name} class="unit-choice" aria-label={`Unit of ${of}`}>
      {units.map((unit) => (
        <option value={unit} selected={unit === picked}>
          {unit}
        </option>
      ))}
    </select>
  );
