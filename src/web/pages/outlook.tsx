/** The estimated condition of a part: a line on the car sheet, the whole of it on the part’s page. */
import { daysInWords } from '../../ageing/words.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { Outlook } from '../../findings/outlook/outlook.ts';
import { A } from '../layout.tsx';
import { Sources } from '../sources.tsx';

/** “Estimated: 1.8 to 3.6 % water …”, or “Estimated from its reading: …”. */
export const OutlookLine = ({ outlook }: { outlook: Outlook | null }) =>
  outlook && (
    <p class="outlook">
      <span class="basis">{outlook.measured ? 'Estimated from its reading' : 'Estimated'}:</span> {outlook.now}
    </p>
  );

export const OutlookSection = ({ outlook, on }: { outlook: Outlook | null; on: CivilDate }) =>
  outlook && (
    <section aria-labelledby="condition">
      <h2 id="condition">Condition</h2>
      <OutlookLine outlook={outlook} />
      {outlook.days.length > 0 && (
        <dl class="days">
          {outlook.days.map(({ what, when, never }) => (
            <>
              <dt>{what}</dt>
              <dd>{daysInWords(when, never, on)}</dd>
            </>
          ))}
        </dl>
      )}
      {outlook.says.map((text) => (
        <p>{text}</p>
      ))}
      <p class="note">{outlook.ends}</p>
      {outlook.desk && (
        <p>
          <A to={outlook.desk}>Try other numbers at the desk</A>
        </p>
      )}
      <Sources keys={outlook.sources} />
    </section>
  );
