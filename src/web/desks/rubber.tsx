/** Rubber on the shelf: how long an unfitted seal, hose or tube may lie, and whether the place suits it. */
import { done, type Outcome } from '../../acts/fault.ts';
import { humidityOf, monthsOf, type Place } from '../../ageing/place.ts';
import {
  RUBBER_GROUPS,
  RUBBER_SOURCES,
  RUBBER_STORAGE,
  RUBBERS,
  type Rubber,
  type RubberGroup,
  shelfLife,
} from '../../ageing/rubber/families.ts';
import { PLACE_SOURCES, placeFactor } from '../../ageing/rubber/place.ts';
import { daysInWords, inUnit } from '../../ageing/words.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { readPeriodPrint } from '../../dates/marks/period-print.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import type { DateOrder } from '../../dates/typed-point.ts';
import { rangeInWords } from '../../dates/words.ts';
import { Chart } from '../chart.tsx';
import type { Ctx } from '../visit.ts';
import { type Asked, fault, faultsIn, readDesk } from './asked.ts';
import { showDesk } from './desk.tsx';
import { assumedWords, isNightTold, isPlaceTold, PLACE_DETAILS, placeIn } from './place.ts';
import { readWhen, WhenField } from './when.tsx';

const NAMES: Readonly<Record<Rubber, string>> = {
  NR: 'Natural rubber (NR)',
  IR: 'Isoprene (IR)',
  BR: 'Butadiene (BR)',
  SBR: 'Styrene-butadiene (SBR): old brake cups, tires',
  AU: 'Polyurethane, polyester (AU)',
  EU: 'Polyurethane, polyether (EU)',
  NBR: 'Nitrile (NBR): oil seals, fuel hose',
  HNBR: 'Hydrogenated nitrile (HNBR)',
  CR: 'Chloroprene (CR): boots, older belts',
  IIR: 'Butyl (IIR): inner tubes',
  ACM: 'Acrylic (ACM)',
  ECO: 'Epichlorohydrin (ECO)',
  EPDM: 'EPDM: coolant hose, brake cups, door seals',
  FKM: 'Fluoro rubber (FKM): fuel and oil seals',
  FFKM: 'Perfluoro rubber (FFKM)',
  VMQ: 'Silicone (VMQ)',
  FVMQ: 'Fluorosilicone (FVMQ)',
  CSM: 'Chlorosulfonated polyethylene (CSM)',
};

const RUBBER_DETAILS: readonly Detail[] = [{ key: 'rubber', name: 'Rubber', choices: NAMES }];
export const RUBBER_QUESTIONS = [...RUBBER_DETAILS, ...PLACE_DETAILS];

export interface RubberAnswer {
  rubber: Rubber;
  group: RubberGroup;
  made: DateRange;
  life: NonNullable<ReturnType<typeof shelfLife>>;
  /** Null: nothing was told of it, and its storage is not judged. */
  place: Place | null;
  nightTold: boolean;
  /** What of the place was left open and is assumed. */
  assumed: string | null;
}

export const readRubber = (asked: Asked, on: CivilDate, order: DateOrder): Outcome<RubberAnswer> => {
  const read = readDesk(RUBBER_QUESTIONS, asked, ['rubber']);
  const made = readMade(asked, on, order);
  const place = read.ok ? placeIn(read.value) : null;
  if (!read.ok || !made.ok || !place?.ok) return { ok: false, faults: faultsIn(read, made, ...(place ? [place] : [])) };
  const answers = read.value;
  const rubber = answers.rubber as Rubber;
  const life = shelfLife(rubber, made.value);
  if (!life) return fault('made', 'A day, a month or a year is meant here.');
  const told = isPlaceTold(answers);
  return done({
    rubber,
    group: RUBBERS[rubber],
    made: made.value,
    life,
    place: told ? place.value : null,
    nightTold: isNightTold(answers),
    assumed: told ? assumedWords(answers) : null,
  });
};

/** “3Q19” on a hose or a bag of seals is a quarter, and no date as people write them. */
const readMade = (asked: Asked, today: CivilDate, order: DateOrder): Outcome<DateRange> => {
  const typed = asked.made ?? '';
  const print = readPeriodPrint(typed, today);
  return /q/i.test(typed) && print.ok
    ? done({ from: print.candidates[0]?.from ?? null, to: print.candidates.at(-1)?.to ?? null })
    : readWhen<DateRange>('made', asked, {
        today,
        order,
        open: fault('made', 'When it was made: this one is needed.'),
      });
};

export const rubberDesk = (c: Ctx) => {
  const { on, person } = c.get('visit');
  const asked: Asked = c.req.query();
  const started = asked.made !== undefined || RUBBER_QUESTIONS.some(({ key }) => asked[key] !== undefined);
  const answer = started ? readRubber(asked, on, person.dateOrder) : null;
  const faults = answer && !answer.ok ? answer.faults : [];
  return showDesk(c, {
    title: 'Rubber on the shelf',
    lede: 'How long a seal, hose, cup or tube that was never fitted may lie: “new old stock” has aged, too.',
    path: '/desks/rubber',
    groups: [
      { legend: 'The part', details: RUBBER_DETAILS },
      { legend: 'Where it lies', details: PLACE_DETAILS },
    ],
    asked,
    more: (
      <WhenField name="made" label="Made" asked={asked} faults={faults} placeholder="3Q19, June 2019, about 2015" />
    ),
    moreTold: [['made', asked.made ?? '']],
    faults,
    answer: answer?.ok ? <Answer {...answer.value} on={on} /> : null,
    formula: [
      `Years in storage until a look, and once more after a look that finds nothing: ${(Object.entries(RUBBER_GROUPS) as [RubberGroup, { initial: number; extension: number }][]).map(([group, { initial, extension }]) => `group ${group} ${initial} and ${extension}`).join(', ')}. It holds for packed, unstressed parts, dark, at most ${RUBBER_STORAGE.most} °C and ${RUBBER_STORAGE.humidity} percent humidity (${RUBBER_STORAGE.polyurethaneHumidity} for polyurethane), away from motors, welders and other sources of ozone.`,
      'How fast rubber ages where a car stands: doubling every 10 °C from an effective 15 °C, times what sun, ozone and damp add by the roof over it. On cars that brings the first look forward or puts it off, never past the replace-by.',
    ],
    ends: 'A shelf life says nothing of a part that is fitted, stretched or pressed: that one goes by its own interval. Cups, hoses and seals of brakes and fuel are judged by someone licensed for that work.',
    sources: [...RUBBER_SOURCES, ...PLACE_SOURCES],
  });
};

const Answer = (answer: RubberAnswer & { on: CivilDate }) => {
  const { rubber, group, made, life, place, on } = answer;
  const unknown = 'on a day nobody knows';
  const over = life.end.earliest !== null && life.end.earliest <= on;
  const looked = life.inspect.earliest !== null && life.inspect.earliest <= on;
  return (
    <>
      <p class="answer">
        <strong>
          {NAMES[rubber]}, group {group}, made {rangeInWords(made)}.
        </strong>{' '}
        {over
          ? 'Past its shelf life, at its oldest: do not fit it where anything depends on it.'
          : looked
            ? 'Wants a look before it is used: bend it, look for cracks, stickiness and hardness.'
            : 'Within its first period in storage, if it was kept as below.'}
      </p>
      <dl class="days">
        <dt>Look at it</dt>
        <dd>{daysInWords(life.inspect, unknown, on)}</dd>
        <dt>End of its shelf life</dt>
        <dd>{daysInWords(life.end, unknown, on)}</dd>
      </dl>
      <ul>
        {storageWords(answer).map((text) => (
          <li>{text}</li>
        ))}
      </ul>
      {place && <WarmthChart place={place} />}
    </>
  );
};

/** What speaks against the place; nothing told never reads as good storage. */
export const storageWords = ({ place, rubber, nightTold, assumed }: RubberAnswer): string[] => {
  if (!place) return ['Where it lies was not told, so its storage is not judged.'];
  const { most, warmBelow, warmTo, humidity, polyurethaneHumidity } = RUBBER_STORAGE;
  const months = monthsOf(place);
  const [warmest, coldest] = [Math.max(...months.map(({ high }) => high)), Math.min(...months.map(({ low }) => low))];
  const damp = rubber === 'AU' || rubber === 'EU' ? polyurethaneHumidity : humidity;
  return [
    ...(warmest > most
      ? [`It gets ${inUnit(warmest, '°C', 0)} there, more than the ${most} °C the shelf life supposes.`]
      : []),
    ...(humidityOf(place) > damp
      ? [`The air there holds about ${inUnit(humidityOf(place), '%', 0)} humidity, more than ${damp}.`]
      : []),
    ...(nightTold && coldest < warmBelow
      ? [`Taken from below ${warmBelow} °C, warm it to about ${warmTo} °C before it is bent or fitted.`]
      : []),
    `Beside a dry room of 15 °C rubber ages there about ${inUnit(placeFactor(place), 'times', 1)} as fast.`,
    ...(assumed ? [assumed] : []),
  ];
};

/** The months of the place beside the most that the shelf life supposes. */
const WarmthChart = ({ place }: { place: Place }) => {
  const months = monthsOf(place);
  return (
    <Chart
      says={`Mean temperatures there, January to December: ${months.map(({ mean }) => inUnit(mean, '°C', 0)).join(', ')}`}
      foot={{ from: 1, to: 12, unit: 'month' }}
      side={{
        from: Math.min(-10, ...months.map(({ low }) => low)),
        to: Math.max(35, ...months.map(({ high }) => high)),
        unit: '°C',
      }}
      bands={[
        { name: 'coldest to hottest', points: months.map(({ low, high }, index) => ({ x: index + 1, low, high })) },
      ]}
      levels={[{ at: RUBBER_STORAGE.most, name: 'most for storage' }]}
    />
  );
};
