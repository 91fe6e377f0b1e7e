import { CAUTIONS, type CautionKey, DEFERS } from '../catalogue/cautions.ts';

/** The usual cautions of the work at hand, and to whom they defer. */
export const Cautions = ({ keys }: { keys: readonly CautionKey[] }) =>
  keys.length === 0 ? null : (
    <section class="cautions" aria-labelledby="cautions">
      <h2 id="cautions">Before you work</h2>
      <ul>
        {keys.map((key) => (
          <li>{CAUTIONS[key]}</li>
        ))}
        <li>{DEFERS}</li>
      </ul>
    </section>
  );
