/** One sheet of a return to the road, made for a paper. */
import type { Child } from 'hono/jsx';
import { z } from 'zod';
import { isOver, type RevivalHere } from '../../../acts/revivals.ts';
import type { CautionKey } from '../../../catalogue/cautions.ts';
import { allTraits } from '../../../catalogue/traits.ts';
import type { CivilDate } from '../../../dates/civil.ts';
import { dayInWords } from '../../../dates/words.ts';
import { STAGE_KEYS, type StageKey } from '../../../revival/stages.ts';
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

interface Kind {
  name: string;
  /** Page its code leads to, below that of the return. */
  page: string;
  /** Null: each stage has its own. */
  cautions: ((traits: ReadonlySet<string>) => readonly CautionKey[]) | null;
  /** It speaks of money, and can be had without. */
  priced?: true;
  long?: true;
}

const SHEETS = {
  survey: {
    name: 'Survey card',
    page: '/survey',
    cautions: () => ['fuel-vapor', 'droppings', 'rolling', 'lifting'],
    priced: true,
  },
  verdict: { name: 'Verdict', page: '/verdict', cautions: () => ['fuel-vapor', 'brake-work', 'lifting'], priced: true },
  stages: { name: 'Stage sheets', page: '', cautions: null, priced: true, long: true },
  'first-start': {
    name: 'First-start card',
    page: '/stages/first-start',
    cautions: (traits) => [
      'carbon-monoxide',
      'fuel-vapor',
      'rolling',
      'fan-and-belts',
      ...(traits.has('liquid-cooled') ? (['hot-coolant'] as const) : []),
    ],
  },
  'road-tests': {
    name: 'Road-test card',
    page: '/stages/road',
    cautions: () => ['brake-work', 'steering', 'hot-work', 'wheel-nuts', 'hot-coolant'],
    long: true,
  },
} as const satisfies Readonly<Record<string, Kind>>;
type SheetName = keyof typeof SHEETS;
const SHEET_NAMES = Object.keys(SHEETS) as [SheetName, ...SheetName[]];
const SHEET = z.enum(SHEET_NAMES);
const kindOf = (name: SheetName): Kind => SHEETS[name];

export const revivalSheetPage = (c: Ctx) => {
  const sheet = SHEET.safeParse(c.req.param('sheet'));
  const here = revivalInPath(c);
  if (!sheet.success || !here) return notFound(c, 'sheet');
  const wanted = c.req.query('stage');
  const stage = STAGE_KEYS.find((key) => key === wanted);
  if (wanted !== undefined && !stage) return notFound(c, 'stage');
  const paper = paperIn(c);
  const visit = c.get('visit');
  const { name, page, cautions, long } = kindOf(sheet.data);
  const prices = c.req.query('prices') !== 'no';
  const to = (one: SheetName, more: { prices: boolean; stage?: StageKey | undefined }): string =>
    pathOf(
      here,
      `/sheets/${one}?${new URLSearchParams({
        paper,
        ...(more.stage && one === 'stages' ? { stage: more.stage } : {}),
        ...(more.prices ? {} : { prices: 'no' }),
      })}`,
    );
  const priced = kindOf(sheet.data).priced;
  return c.html(
    `<!DOCTYPE html>${(
      <CarSheetFrame
        visit={visit}
        paper={paper}
        kind={name}
        car={here.found.car.name}
        page={pathOf(here, sheet.data === 'stages' && stage ? `/stages/${stage}` : page)}
        line={lineOf(here, visit.on)}
        links={[
          ...SHEET_NAMES.map((one) => ({
            name: kindOf(one).name,
            to: to(one, { prices }),
            here: one === sheet.data,
          })),
          ...(priced
            ? [{ name: prices ? 'Without prices' : 'With prices', to: to(sheet.data, { prices: !prices, stage }) }]
            : []),
        ]}
        cautions={cautions?.(allTraits(here.found.car.traits)) ?? null}
        long={long ?? false}
      >
        {inside(here, sheet.data, prices, stage)}
      </CarSheetFrame>
    )}`,
  );
};

const inside = (here: RevivalHere, sheet: SheetName, prices: boolean, stage: StageKey | undefined): Child => {
  switch (sheet) {
    case 'survey':
      return <SurveyCard here={here} prices={prices} />;
    case 'verdict':
      return <VerdictSheet here={here} prices={prices} />;
    case 'stages': {
      const stages = here.plan.stages.filter(({ key }) => stage === undefined || key === stage);
      return <StageSheets here={here} stages={stages} prices={prices} />;
    }
    case 'first-start':
      return <FirstStartCard here={here} />;
    case 'road-tests':
      return <RoadTestCard here={here} />;
  }
};

const lineOf = ({ plan, record }: RevivalHere, on: CivilDate): string => {
  const { closedOn, closedHow } = record.row;
  const slept = sleptInWords(plan);
  return isOver(record, on) && closedOn
    ? `${slept} This return ended on ${dayInWords(closedOn)}: ${closedHow}.`
    : slept;
};
