/** One look with its answers to tick by hand, or a line for its number. */
import { type LookKey, lookOf } from '../../../revival/looks.ts';
import { Blank, Box } from '../sheet.tsx';

export const LookBoxes = ({ look }: { look: LookKey }) => {
  const { name, answers, number } = lookOf(look);
  return (
    <>
      <b>{name}</b>{' '}
      {number ? (
        <span class="pick">
          <Blank size="tiny" /> {number.unit}
        </span>
      ) : (
        Object.values(answers).map(({ words }) => (
          <span class="pick">
            <Box /> {words}
          </span>
        ))
      )}
    </>
  );
};
