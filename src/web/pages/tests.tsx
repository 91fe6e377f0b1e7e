import type { Kind } from '../../catalogue/kind.ts';
import { Sources } from '../sources.tsx';

/** How a kind is tested at home: the reading that is good, wants watching, or wants action. */
export const Tests = ({ kind }: { kind: Kind }) =>
  kind.tests.length === 0 ? (
    <p>No home test: its date is what there is.</p>
  ) : (
    <div class="tests">
      {kind.tests.map(({ name, gauge, how, good, watch, act, sources }) => (
        <section class="test">
          <h3>
            {name}
            {gauge && ` (${gauge.unit})`}
          </h3>
          <p>{how}</p>
          <dl>
            <dt>Good</dt>
            <dd>{good}</dd>
            {watch && (
              <>
                <dt>Watch</dt>
                <dd>{watch}</dd>
              </>
            )}
            <dt>Act</dt>
            <dd>{act}</dd>
          </dl>
          <Sources keys={sources} />
        </section>
      ))}
    </div>
  );
