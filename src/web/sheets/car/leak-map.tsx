/** The leak map to fill in by hand: places down, cold, hot and next morning across, over two heats. */
import {
  CYCLES,
  type Cycle,
  LEAK_CLASSES,
  LEAK_FLUIDS,
  LEAK_PLACES,
  MOMENTS,
  type Moment,
} from '../../../revival/leaks.ts';

const HEATS: Readonly<Record<Cycle, string>> = { 1: 'First heat', 2: 'Second heat' };
const SHORT: Readonly<Record<Moment, string>> = { cold: 'cold', hot: 'hot, 20 min', morning: 'next morning' };
const COLUMNS = CYCLES.flatMap(() => Object.keys(MOMENTS) as Moment[]);

export const LeakMap = () => (
  <section>
    <h2>Leak map</h2>
    <p>
      Write what it is ({Object.values(LEAK_FLUIDS).map(initial).join(', ')}) and how much:{' '}
      {Object.values(LEAK_CLASSES)
        .map((one) => `${one.class} ${one.words.toLowerCase()}`)
        .join('; ')}
      . <b>Fuel, brake fluid, drops that fall: put right, and that heat again.</b> Nothing may grow between the heats.
    </p>
    <table class="leak-map">
      <thead>
        <tr>
          <th scope="col" rowspan={2}>
            Where
          </th>
          {CYCLES.map((cycle) => (
            <th scope="colgroup" colspan={Object.keys(MOMENTS).length}>
              {HEATS[cycle]}
            </th>
          ))}
        </tr>
        <tr>
          {COLUMNS.map((moment) => (
            <th scope="col">{SHORT[moment]}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {[...Object.values(LEAK_PLACES), 'Day, who'].map((row) => (
          <tr>
            <th scope="row">{row}</th>
            {COLUMNS.map(() => (
              <td />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

/** “F fuel”; of two names the first. What is not known is a question mark. */
const initial = (fluid: string): string =>
  fluid === LEAK_FLUIDS.unknown ? '? not known' : `${fluid[0]} ${fluid.toLowerCase().split(' or ')[0]}`;
