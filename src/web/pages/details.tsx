/** What a part is or holds, as its models and gauges ask. */
import type { Fault } from '../../acts/fault.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { Kind } from '../../catalogue/kind.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { AnswerField, shownAnswer } from '../answer-field.tsx';
import type { DetailsForm } from '../forms.ts';
import { Post } from '../layout.tsx';

interface Shown {
  part: PartOnRecord;
  kind: Kind;
  /** What was typed and refused; otherwise what is stored shows. */
  given: DetailsForm | null;
  faults: readonly Fault[];
}

export const Details = ({ part, kind, given, faults }: Shown) =>
  !kind.details || part.closedOn ? (
    <></>
  ) : (
    <section aria-labelledby="details">
      <h2 id="details">What it is</h2>
      <p class="hint">Answer what you know: estimates get narrower, and readings can be judged.</p>
      <Post to={`/parts/${part.id}/details`} class="stacked">
        {kind.details.map((detail) => (
          <DetailField detail={detail} part={part} given={given} faults={faults} />
        ))}
        <button>Keep the answers</button>
      </Post>
    </section>
  );

const DetailField = ({ detail, part, given, faults }: Omit<Shown, 'kind'> & { detail: Detail }) => {
  const { key } = detail;
  const stored = part.details[key];
  return (
    <AnswerField
      detail={detail}
      name={`answer.${key}`}
      unitName={`unit.${key}`}
      value={given?.[`answer.${key}`] ?? shownAnswer(detail, stored)}
      unit={given?.[`unit.${key}`]}
      faults={faults}
    />
  );
};
