/** The road check on paper, with the walk round to tick where nobody has made it today. */
import { roadCheckHere } from '../../../acts/road-check.ts';
import { WALK_KEYS, walkLook } from '../../../plans/walkround.ts';
import { notFound } from '../../not-found.tsx';
import { AnswerShown } from '../../road-check/answer.tsx';
import type { Ctx } from '../../visit.ts';
import { Blank, Box } from '../sheet.tsx';
import { CarSheetFrame, paperIn } from './frame.tsx';

export const roadCheckSheet = (c: Ctx) => {
  const visit = c.get('visit');
  const here = roadCheckHere(c.get('around').store, visit.collection, c.req.param('carId') ?? '', visit.on);
  if (!here) return notFound(c, 'car');
  const cautions = [...new Set(WALK_KEYS.flatMap((key) => walkLook(key).cautions))];
  return c.html(
    `<!DOCTYPE html>${(
      <CarSheetFrame
        visit={visit}
        paper={paperIn(c)}
        kind="Road check"
        car={here.found.car.name}
        page={`/cars/${here.found.car.id}/road-check`}
        line="Before any drive; it counts for its day only."
        links={[]}
        cautions={cautions}
      >
        <AnswerShown here={here} part={(_, words) => words} />
        <h2>Walk round</h2>
        <ul class="asks">
          {WALK_KEYS.map((key) => {
            const { name, answers } = walkLook(key);
            return (
              <li>
                <b>{name}</b>
                {Object.entries(answers).map(([answer, { words }]) => (
                  <span class="pick">
                    <Box state={here.walk?.answers[key] === answer ? 'done' : 'open'} /> {words}
                  </span>
                ))}
              </li>
            );
          })}
        </ul>
        <p class="signature">
          <span>
            Looked at by <Blank /> on <Blank /> at <Blank size="tiny" />
          </span>
        </p>
      </CarSheetFrame>
    )}`,
  );
};
