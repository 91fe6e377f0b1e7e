/** The form of a place: the few numbers its climate is told from. */
import type { Fault } from '../../acts/fault.ts';
import { AIRS, type Month, monthsOf, SHELTERS } from '../../ageing/place.ts';
import { MONTHS } from '../../dates/words.ts';
import type { PlaceRow } from '../../store/places.ts';
import type { PlaceForm } from '../forms.ts';
import { Faults, faultsOf, Post } from '../layout.tsx';
import { AIR_WORDS, SHELTER_WORDS } from '../place-words.ts';

interface Shown {
  place: PlaceRow | null;
  given: PlaceForm;
  faults: readonly Fault[];
}

export const PlaceFields = ({ place, given, faults }: Shown) => {
  const months: readonly Month[] | null = place && monthsOf({ ...place, months: Array(12).fill(null) });
  return (
    <Post to={place ? `/places/${place.id}` : '/places'} class="stacked">
      <TextField name="name" label="Name" given={given} faults={faults} placeholder="barn, home garage" />
      <Choices
        legend="Over the car"
        name="shelter"
        words={SHELTER_WORDS}
        keys={SHELTERS}
        given={given}
        faults={faults}
      />
      <Choices legend="The air there" name="air" words={AIR_WORDS} keys={AIRS} given={given} faults={faults} />
      <fieldset class="targets unit">
        <legend>Temperatures in</legend>
        {(['°C', '°F'] as const).map((unit) => (
          <label>
            <input type="radio" name="degrees" value={unit} checked={given.degrees === unit} /> <span>{unit}</span>
          </label>
        ))}
      </fieldset>
      <TextField
        name="winterLow"
        label="Coldest night of an ordinary winter, outdoors"
        given={given}
        faults={faults}
        decimal
      />
      <TextField
        name="summerHigh"
        label="Hottest day of an ordinary summer, outdoors"
        given={given}
        faults={faults}
        decimal
      />
      <TextField name="heatedTo" label="Heated to, if it is heated" given={given} faults={faults} decimal />
      <TextField
        name="humidity"
        label="Humidity where it stands, in %; empty: as usual there"
        given={given}
        faults={faults}
        decimal
      />
      <fieldset class="targets">
        <legend>Winter is around</legend>
        {(['north', 'south'] as const).map((hemisphere) => (
          <label>
            <input type="radio" name="hemisphere" value={hemisphere} checked={given.hemisphere === hemisphere} />{' '}
            <span>{hemisphere === 'north' ? 'January' : 'July'}</span>
          </label>
        ))}
      </fieldset>
      <details open={given.month.some((month) => month !== '')}>
        <summary>Months you know better: mean temperature where the car stands</summary>
        <div class="months">
          {MONTHS.map((month, index) => (
            <label>
              {month}
              <input
                name="month"
                inputmode="decimal"
                autocomplete="off"
                value={given.month[index] ?? ''}
                placeholder={months ? String(Math.round(months[index]?.mean ?? 0)) : ''}
                {...faultsOf(faults, `month${index}`)}
              />
            </label>
          ))}
        </div>
        {MONTHS.map((_, index) => (
          <Faults faults={faults} field={`month${index}`} />
        ))}
      </details>
      <label>
        Note
        <textarea name="note" rows={2}>
          {given.note}
        </textarea>
      </label>
      <button>{place ? 'Keep the place' : 'Add the place'}</button>
    </Post>
  );
};

const TextField = ({
  name,
  label,
  given,
  faults,
  placeholder,
  decimal = false,
}: {
  name: 'name' | 'winterLow' | 'summerHigh' | 'heatedTo' | 'humidity';
  label: string;
  given: PlaceForm;
  faults: readonly Fault[];
  placeholder?: string;
  decimal?: boolean;
}) => (
  <>
    <label>
      {label}
      <input
        name={name}
        value={given[name]}
        placeholder={placeholder}
        inputmode={decimal ? 'decimal' : undefined}
        autocomplete="off"
        {...faultsOf(faults, name)}
      />
    </label>
    <Faults faults={faults} field={name} />
  </>
);

const Choices = <K extends string>({
  legend,
  name,
  words,
  keys,
  given,
  faults,
}: {
  legend: string;
  name: 'air' | 'shelter';
  words: Readonly<Record<K, string>>;
  keys: readonly K[];
  given: PlaceForm;
  faults: readonly Fault[];
}) => (
  <>
    <fieldset class="targets">
      <legend>{legend}</legend>
      {keys.map((key) => (
        <label>
          <input type="radio" name={name} value={key} checked={given[name] === key} /> <span>{words[key]}</span>
        </label>
      ))}
    </fieldset>
    <Faults faults={faults} field={name} />
  </>
);
