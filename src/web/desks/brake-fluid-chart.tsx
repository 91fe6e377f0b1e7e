/** Least boiling point of a grade along the months since it was filled dry: slow and fast as a band. */
import { boilingAt, ROAD_HEAT, WET_WATER } from '../../ageing/brake-fluid/boiling.ts';
import type { BrakeFluidFacts } from '../../ageing/brake-fluid/outlook.ts';
import { monthsTo, waterAfter } from '../../ageing/brake-fluid/water.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { type CivilDate, daysBetween } from '../../dates/civil.ts';
import { Chart } from '../chart.tsx';

/** Drawn, °C and months: more where a limit or a reading lies beyond. */
const SHOWN = { from: 100, to: 280, months: 60 };
const DAYS_A_MONTH = 365.25 / 12;

type Fluid = Pick<BrakeFluidFacts, 'grade' | 'pace'>;

/** Least boiling point at a month; the low end is null where the fast end may hold more water than the curve reaches. */
const leastAt = ({ grade, pace }: Fluid, month: number): { low: number | null; high: number } => {
  const { low, high } = waterAfter(month, pace);
  return {
    low: month > monthsTo(WET_WATER, pace).low ? null : boilingAt(grade, high),
    high: boilingAt(grade, low) ?? 0,
  };
};

/** From where the low end is not known, and where the slow end, too, has passed the curve, in months. */
const endsOf = ({ pace }: Fluid) => {
  const { low: unknownFrom, high } = monthsTo(WET_WATER, pace);
  return { unknownFrom, end: Math.min(high, SHOWN.months) };
};

/** The band: down to the floor from where its low end is not known, and no further than its high end is. */
const bandOf = (fluid: Fluid, floor: number) => {
  const { unknownFrom, end } = endsOf(fluid);
  const months = [...Array(SHOWN.months + 1).keys(), unknownFrom, end].filter((month) => month <= end);
  const points = [...new Set(months)]
    .sort((a, b) => a - b)
    .map((month) => {
      const { low, high } = leastAt(fluid, month);
      return { x: month, low: low ?? floor, high };
    });
  const drop = points.find(({ x }) => x === unknownFrom);
  return drop ? points.flatMap((point) => (point === drop ? [point, { ...point, low: floor }] : [point])) : points;
};

const inWords = (fluid: Fluid, month: number): string => {
  const { low, high } = leastAt(fluid, month);
  if (month > endsOf(fluid).end) return `not known after ${month} months`;
  return low === null
    ? `at best ${inUnit(high, '°C', 0)} after ${month} months, below that not known`
    : `${spanInWords({ low, high }, '°C', 0)} after ${month} months`;
};

export const WetChart = ({ facts, on }: { facts: BrakeFluidFacts; on: CivilDate }) => {
  const { grade, ownLimit, measured } = facts;
  const boiling = measured.boiling?.value;
  const months = monthsSince(facts, on);
  const dotted = boiling !== undefined && months !== null;
  const heights = [boiling, ownLimit].filter((height) => typeof height === 'number');
  const side = { from: Math.min(SHOWN.from, ...heights.map((one) => one - 10)), to: Math.max(SHOWN.to, ...heights) };
  const { unknownFrom } = endsOf(facts);
  const byWater = measured.water && measured.water.value <= WET_WATER ? boilingAt(grade, measured.water.value) : null;
  return (
    <Chart
      says={`Least boiling point of ${grade.name} after filling: ${[12, 24, 36].map((month) => inWords(facts, month)).join(', ')}${boiling === undefined ? '' : `; measured ${inUnit(boiling, '°C', 0)}`}`}
      foot={{ from: 0, to: SHOWN.months, unit: 'months since filled dry' }}
      side={{ ...side, unit: '°C' }}
      bands={[
        {
          name: 'least boiling point, from the fast to the slow pace of its water',
          points: bandOf(facts, side.from),
        },
      ]}
      {...(dotted ? { dots: { name: 'boiling point measured', points: [{ x: months, y: boiling }] } } : {})}
      levels={[
        { at: grade.wetMinC, name: `wet minimum ${grade.wetMinC} °C` },
        ...(ownLimit === null ? [] : [{ at: ownLimit, name: `your limit ${inUnit(ownLimit, '°C', 0)}` }]),
        ...(boiling === undefined || dotted ? [] : [{ at: boiling, name: `measured ${inUnit(boiling, '°C', 0)}` }]),
        ...(byWater === null ? [] : [{ at: byWater, name: `least by its water ${inUnit(byWater, '°C', 0)}` }]),
        ...bindingBrake([grade.wetMinC, ownLimit, boiling ?? null]),
      ]}
      uprights={unknownFrom < SHOWN.months ? [{ at: unknownFrom, name: 'below: not known' }] : []}
    />
  );
};

/** Months since it was filled, where that is known and drawn. */
const monthsSince = ({ filled }: BrakeFluidFacts, on: CivilDate): number | null => {
  if (!filled?.from || !filled.to || filled.from > on) return null;
  const to = filled.to < on ? filled.to : on;
  const months = (daysBetween(filled.from, on) + daysBetween(to, on)) / 2 / DAYS_A_MONTH;
  return months <= SHOWN.months ? months : null;
};

/** Lines as close as this, °C, leave no room for a name between them. */
const CLOSE = 12;

const bindingBrake = (others: readonly (number | null)[]) => {
  const at = ROAD_HEAT.bindingBrake;
  return others.some((one) => one !== null && Math.abs(one - at) <= CLOSE)
    ? []
    : [{ at, name: `binding brake ${at} °C` }];
};
