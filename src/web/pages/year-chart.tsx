import { coldestNight, type Month, monthsOf, type Place } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import { MONTHS } from '../../dates/words.ts';
import { Chart } from '../chart.tsx';

/** The year of a place: mean, coldest night and hottest hour of each month, where the car stands. */
export const YearChart = ({ place }: { place: Place }) => {
  const months = monthsOf(place);
  const at = (of: (month: Month) => number) => months.map((month, index) => ({ x: index + 1, y: of(month) }));
  const low = Math.min(...months.map((month) => month.low), 0);
  const high = Math.max(...months.map((month) => month.high));
  const coldest = coldestNight(place);
  return (
    <Chart
      says={`Mean temperature where the car stands, month by month: ${months.map(({ mean }) => inUnit(mean, '°C', 0)).join(', ')}; coldest night ${inUnit(coldest, '°C', 0)}`}
      foot={{
        from: 1,
        to: 12,
        unit: '',
        ticks: MONTHS.map((name, index) => ({ at: index + 1, words: name.slice(0, 3) })),
      }}
      side={{ from: Math.floor(low - 3), to: Math.ceil(high + 3), unit: '°C' }}
      bands={[
        {
          name: 'from coldest night to hottest hour',
          points: months.map((month, index) => ({ x: index + 1, low: month.low, high: month.high })),
        },
      ]}
      lines={[{ name: 'mean', points: at(({ mean }) => mean) }]}
      levels={[{ at: coldest, name: `coldest night ${inUnit(coldest, '°C', 0)}` }]}
    />
  );
};
