/** Practice: every interval, where it comes from, and your own in its place. */

import type { Fault } from '../../acts/fault.ts';
import { clearInterval as clearIntervalAct, setInterval as setIntervalAct } from '../../acts/override.ts';
import { BRAKE_FLUID_GRADES } from '../../catalogue/brake-fluid-grades.ts';
import type { Kind } from '../../catalogue/kind.ts';
import { KINDS } from '../../catalogue/kinds.ts';
import { SYSTEMS, type System } from '../../catalogue/systems.ts';
import { CLOCK_WORDS, rulingLine } from '../../findings/explain.ts';
import { practiceOf, rulingOf } from '../../findings/ruling.ts';
import { carsOf } from '../../store/cars.ts';
import { type OverrideRow, overridesOf } from '../../store/overrides.ts';
import { Cautions } from '../cautions.tsx';
import { notADistance, OVERRIDE_FORM, type OverrideForm, readDistance, readForm } from '../forms.ts';
import { A, DistanceField, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { Sources } from '../sources.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { Tests } from './tests.tsx';

/** No car: an id no override for a car carries. */
const COLLECTION = '';

export const practice = (c: Ctx) => {
  const overrides = overridesOf(c.get('around').store, c.get('visit').collection.id);
  return page(c, 'Practice', <Practice overrides={overrides} />);
};

const Practice = ({ overrides }: { overrides: OverrideRow[] }) => (
  <>
    <h1>Practice</h1>
    <p class="lede">
      {KINDS.size} kinds of part and fluid: the clock that limits each, from when the trade looks at it and by when it
      is renewed, and where the figures come from. A label on the part rules first, then the car’s handbook, then your
      own interval, then practice.
    </p>
    <nav class="systems" aria-label="Systems">
      {(Object.keys(SYSTEMS) as System[]).map((system) => (
        <a href={`#${system}`}>{SYSTEMS[system]}</a>
      ))}
    </nav>
    {(Object.keys(SYSTEMS) as System[]).map((system) => (
      <section class="system" aria-labelledby={system}>
        <h2 id={system}>{SYSTEMS[system]}</h2>
        {[...KINDS.values()]
          .filter((kind) => kind.system === system)
          .map((kind) => (
            <article class="part">
              <h3>
                <A to={`/practice/${kind.key}`}>{kind.name}</A>
              </h3>
              <p class="ruling">
                Counts from: {CLOCK_WORDS[kind.clock].toLowerCase()}.{' '}
                {rulingLine(rulingOf(kind, overrides, COLLECTION))}
              </p>
              {overrides.some((override) => override.kind === kind.key && override.carId !== null) && (
                <p class="doubt">Some cars have their own interval.</p>
              )}
            </article>
          ))}
      </section>
    ))}
  </>
);

export const kindPage = (c: Ctx) => {
  const kind = KINDS.get(c.req.param('kind') ?? '');
  if (!kind) return notFound(c, 'kind of part');
  const car = c.req.query('car') ?? '';
  const set = standing(c)
    .filter((override) => override.kind === kind.key && (override.carId ?? '') === car)
    .sort(byRule)[0];
  // What is set is shown figure by figure, an empty one as empty; without it, practice is where to start from.
  const { lookFrom, replaceBy, replaceByKm } = set ?? practiceOf(kind);
  const given: OverrideForm = {
    scope: car,
    authority: set?.authority ?? 'own',
    lookFrom: String(lookFrom ?? ''),
    replaceBy: String(replaceBy ?? ''),
    distance: replaceByKm === null ? '' : `${replaceByKm} km`,
    note: set?.note ?? '',
    end: '',
  };
  return show(c, kind, given, []);
};

const standing = (c: Ctx): OverrideRow[] => overridesOf(c.get('around').store, c.get('visit').collection.id);

export const changeInterval = async (c: Ctx) => {
  const kind = KINDS.get(c.req.param('kind') ?? '');
  if (!kind) return notFound(c, 'kind of part');
  const visit = c.get('visit');
  const { store } = c.get('around');
  const form = await readForm(c, OVERRIDE_FORM);
  const carId = form.scope || null;
  if (carId && !carsOf(store, visit.collection.id).some(({ id }) => id === carId)) return notFound(c, 'car');
  const back = at(visit, `/practice/${kind.key}${carId ? `?car=${carId}` : ''}`);
  if (form.end) {
    clearIntervalAct(store, actingIn(visit), kind, { carId, authority: form.authority });
    return c.redirect(back, 303);
  }
  const { figures, faults } = figuresOf(form);
  const outcome =
    faults.length > 0
      ? { ok: false as const, faults }
      : setIntervalAct(store, actingIn(visit), kind, { carId, authority: form.authority, note: form.note, ...figures });
  return outcome.ok ? c.redirect(back, 303) : show(c, kind, form, outcome.faults);
};

/** 100 years: longer than any interval means. */
const MOST_MONTHS = 1200;

const figuresOf = (form: OverrideForm) => {
  const faults: Fault[] = [];
  const months = (field: 'lookFrom' | 'replaceBy'): number | null => {
    if (form[field] === '') return null;
    const value = Number(form[field]);
    if (Number.isInteger(value) && value > 0 && value <= MOST_MONTHS) return value;
    faults.push({ field, message: `Whole months from 1 to ${MOST_MONTHS}; six years are 72.` });
    return null;
  };
  const replaceByKm = form.distance === '' ? null : readDistance(form.distance);
  if (form.distance !== '' && !replaceByKm) faults.push(notADistance(form.distance));
  return { figures: { lookFrom: months('lookFrom'), replaceBy: months('replaceBy'), replaceByKm }, faults };
};

const show = (c: Ctx, kind: Kind, given: OverrideForm, faults: readonly Fault[]) => {
  const cars = carsOf(c.get('around').store, c.get('visit').collection.id);
  return page(
    c,
    kind.name,
    <KindShown kind={kind} overrides={standing(c)} cars={cars} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );
};

interface Shown {
  kind: Kind;
  overrides: OverrideRow[];
  cars: { id: string; name: string }[];
  given: OverrideForm;
  faults: readonly Fault[];
}

/** In the order in which they rule: the car’s handbook, the car’s own, the collection’s. */
const byRule = (a: OverrideRow, b: OverrideRow): number => rankOf(a) - rankOf(b);
const rankOf = ({ carId, authority }: OverrideRow): number => (carId === null ? 2 : authority === 'handbook' ? 0 : 1);

const KindShown = ({ kind, overrides, cars, given, faults }: Shown) => {
  const own = overrides.filter((override) => override.kind === kind.key).sort(byRule);
  return (
    <>
      <p class="crumb">
        <A to={`/practice#${kind.system}`}>Practice: {SYSTEMS[kind.system]}</A>
      </p>
      <h1>{kind.name}</h1>
      <FaultSummary faults={faults} />
      <p class="lede">{rulingLine(practiceOf(kind))}</p>
      <p>
        Counts from: {CLOCK_WORDS[kind.clock].toLowerCase()}
        {kind.fallback && `, or, where that can’t be read, ${CLOCK_WORDS[kind.fallback].toLowerCase()}`}. Looks are
        repeated every {kind.interval.lookEvery} months. Ages by {kind.agesBy.join(', ')}.
      </p>
      <h2>Where the figures come from</h2>
      <Sources keys={kind.interval.sources} />
      <p>{kind.varies}</p>
      <h2>Which interval rules</h2>
      <p>A label on the part comes first. Then:</p>
      <ul>
        {own.map((override) => (
          <li>
            {override.carId === null
              ? 'All cars of the collection'
              : (cars.find(({ id }) => id === override.carId)?.name ?? 'A car')}
            : {rulingLine(rulingOf(kind, [override], override.carId ?? COLLECTION))}
          </li>
        ))}
        <li>Everything else: {rulingLine(practiceOf(kind))}</li>
      </ul>
      <h2>Set another interval</h2>
      <Post to={`/practice/${kind.key}`} class="stacked">
        <label>
          For
          <select name="scope">
            <option value="">All cars of the collection</option>
            {cars.map(({ id, name }) => (
              <option value={id} selected={id === given.scope}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <fieldset class="targets">
          <legend>On whose word</legend>
          {(
            [
              ['own', 'Your own'],
              ['handbook', 'The car’s handbook'],
            ] as const
          ).map(([value, name]) => (
            <label>
              <input type="radio" name="authority" value={value} checked={given.authority === value} />{' '}
              <span>{name}</span>
            </label>
          ))}
        </fieldset>
        <Faults faults={faults} field="authority" />
        <label>
          Look from, months
          <input name="lookFrom" inputmode="numeric" value={given.lookFrom} {...faultsOf(faults, 'lookFrom')} />
        </label>
        <Faults faults={faults} field="lookFrom" />
        <label>
          Replace by, months
          <input name="replaceBy" inputmode="numeric" value={given.replaceBy} {...faultsOf(faults, 'replaceBy')} />
        </label>
        <Faults faults={faults} field="replaceBy" />
        <DistanceField label="Or by distance" value={given.distance} faults={faults} />
        <label>
          Why, or where it stands
          <input name="note" value={given.note} {...faultsOf(faults, 'note')} />
        </label>
        <Faults faults={faults} field="note" />
        {kind.severity === 'safety' && (
          <p class="caution">
            This is a safety part: a longer interval than practice is your own decision, and the page will say so.
          </p>
        )}
        <div class="actions">
          <button>Set this interval</button>
          <button name="end" value="1" class="quiet">
            Remove this interval
          </button>
        </div>
      </Post>
      {kind.system === 'brakes' && kind.key.startsWith('brake-fluid') && <Grades />}
      <h2>Where its date stands</h2>
      <p>{kind.findDate}</p>
      <h2>If ignored</h2>
      <p>{kind.ignored}</p>
      <h2>How to test it</h2>
      <Tests kind={kind} />
      <Cautions keys={kind.cautions} />
    </>
  );
};

const Grades = () => (
  <>
    <h2>Grades of fluid and their least boiling points</h2>
    <div class="scroll">
      <table>
        <thead>
          <tr>
            <th>Grade</th>
            <th>Dry, °C</th>
            <th>Wet, °C</th>
          </tr>
        </thead>
        <tbody>
          {BRAKE_FLUID_GRADES.map((grade) => (
            <tr>
              <td>{grade.name}</td>
              <td>{grade.dryMinC}</td>
              <td>{grade.wetMinC}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
    <Sources keys={[...new Set(BRAKE_FLUID_GRADES.flatMap(({ sources }) => sources))]} />
  </>
);
