import { A, page } from './layout.tsx';
import type { Ctx } from './visit.ts';

/** For what is not there, and for what belongs to another collection: the same answer. */
export const notFound = (c: Ctx, what: string) =>
  page(
    c,
    'Not found',
    <>
      <h1>There is no such {what}</h1>
      <p>
        It may have been in another collection, or the address is incomplete. <A to="/">Back to the line-up</A>
      </p>
    </>,
    404,
  );
