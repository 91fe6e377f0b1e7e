/** A closed part is history: what is known of it stays as it is. */
import { dayInWords } from '../../dates/words.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { A, page } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { nameOf } from './part-name.ts';

export const closedMessage = ({ closedOn }: PartOnRecord): string =>
  `This part was closed${closedOn ? ` on ${dayInWords(closedOn)}` : ''}: its record stays as it is.`;

export const refuseClosed = (c: Ctx, part: PartOnRecord) =>
  page(
    c,
    nameOf(part),
    <>
      <h1>{nameOf(part)}</h1>
      <p class="fault">{closedMessage(part)}</p>
      <p>
        <A to={`/parts/${part.id}`}>Back to the part</A>
      </p>
    </>,
    422,
  );
