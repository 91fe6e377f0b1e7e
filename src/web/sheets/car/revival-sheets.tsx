/** One sheet of a return to the road, made for a paper. */
import type { Child } from 'hono/jsx';
import { z } from 'zod';
import type { CautionKey } from '../../../catalogue/cautions.ts';
import { notFound } from '../../not-found.tsx';
import { pathOf, revivalInPath } from '../../revivals/in-path.ts';
import { sleptInWords } from '../../revivals/words.tsx';
import type { Ctx } from '../../visit.ts';
import { FirstStartCard } from './first-start-card.tsx';
import { CarSheetFrame, paperIn } from './frame.tsx';
import { RoadTestCard } from './road-test-card.tsx';
import { StageSheets } from './stage-sheets.tsx';
import { SurveyCard } from './survey-card.tsx';
import { VerdictSheet } from './verdict-sheet.tsx';

const SHEETS = {
  survey: { name: 'Survey card', page: '/survey', cautions: ['fuel-vapor', 'droppings', 'rolling', 'lifting'] },
  verdict: { name: 'Verdict', page: '/verdict', cautions: [] },
  stages: { name: 'Stage sheets', page: '', cautions: null },
  'first-start': {
    name: 'First-start card',
    page: '/stages/first-start',
    cautions: ['carbon-monoxide', 'fuel-vapor', 'rolling', 'fan-and-belts', 'battery-gas'],
  },
  'road-tests': {
    name: 'Road-test card',
    page: '/stages/road',
    cautions: ['brake-work', 'steering', 'hot-work', 'wheel-nuts', 'hot-coolant'],
  },
} as const satisfies Readonly<Record<string, { name: string; page: string; cautions: readonly CautionKey[] | null }>>;
type SheetName = keyof typeof SHEETS;
const SHEET = z.enum(Object.keys(SHEETS) as [SheetName, ...SheetName[]]);

export const revivalSheetPage = (c: Ctx) => {
  const sheet = SHEET.safeParse(c.req.param('sheet'));
  const here = revivalInPath(c);
  if (!sheet.success || !here) return notFound(c, 'sheet');
  const paper = paperIn(c);
  const visit = c.get('visit');
  const { name, page, cautions } = SHEETS[sheet.data];
  const prices = c.req.query('prices') !== 'no';
  const stages = here.plan.stages.filter(({ key }) => {
    const wanted = c.req.query('stage');
    return wanted === undefined || wanted === key;
  });
  if (stages.length === 0) return notFound(c, 'stage');
  const inside: Readonly<Record<SheetName, () => Child>> = {
    survey: () => <SurveyCard here={here} />,
    verdict: () => <VerdictSheet here={here} />,
    stages: () => <StageSheets here={here} stages={stages} prices={prices} />,
    'first-start': () => <FirstStartCard here={here} />,
    'road-tests': () => <RoadTestCard here={here} />,
  };
  const own = (to: SheetName, more = ''): string => pathOf(here, `/sheets/${to}?paper=${paper}${more}`);
  return c.html(
    `<!DOCTYPE html>${(
      <CarSheetFrame
        visit={visit}
        paper={paper}
        kind={name}
        car={here.found.car.name}
        page={pathOf(here, page)}
        line={sleptInWords(here.plan)}
        links={[
          ...(Object.keys(SHEETS) as SheetName[]).map((to) => ({
            name: SHEETS[to].name,
            to: own(to),
            here: to === sheet.data,
          })),
          ...(sheet.data === 'stages'
            ? [
                {
                  name: prices ? 'Without prices' : 'With prices',
                  to: own('stages', prices ? '&prices=no' : ''),
                },
              ]
            : []),
        ]}
        cautions={cautions ?? stages.flatMap(({ steps }) => steps.flatMap((step) => step.cautions))}
      >
        {inside[sheet.data]()}
      </CarSheetFrame>
    )}`,
  );
};
