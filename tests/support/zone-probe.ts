/** A fixed run through the core; its text must be the same wherever the machine stands. */
import { todayIn } from '../../src/clock.ts';
import {
  addDays,
  addMonths,
  type CivilDate,
  daysBetween,
  isCivilDate,
  monthsBetween,
  weekday,
} from '../../src/dates/civil.ts';
import { limitOn } from '../../src/dates/limit.ts';
import { readEdtf } from '../../src/dates/partial-date.ts';
import { readTireCode } from '../../src/dates/tire-code/read.ts';
import { tireWeekOf } from '../../src/dates/tire-week.ts';
import { readTypedDate } from '../../src/dates/typed-date.ts';
import { ageInWords, ageOf, rangeInWords } from '../../src/dates/words.ts';
import { explain } from '../../src/findings/explain.ts';
import { digestOf } from '../../src/notices/digest.ts';
import { owed } from '../../src/notices/owed.ts';
import { dated, finding, said } from './parts.ts';

const TODAY: CivilDate = '2026-03-29';

/** Days on which clocks were changed, days were skipped or repeated, months and years end. */
const DAYS: readonly CivilDate[] = [
  '1950-01-01',
  '1969-12-31',
  '1970-01-01',
  '1999-12-31',
  '2000-02-29',
  '2011-12-29',
  '2011-12-30',
  '2011-12-31',
  '2016-10-30',
  '2024-03-10',
  '2024-03-31',
  '2024-11-03',
  '2026-03-29',
];

const TYPED = [
  '3 June 2015',
  'June 2015',
  'about 2015',
  'about June 2015',
  'before 1998',
  'after 2011',
  '3/4/2015',
  "'85",
  '1960s',
  '2015-06-03T23:30:00',
  '2015-06-03T00:30:00',
  '2015-06-03T23:30:00Z',
  '29 March 2026',
  '30 March 2026',
];

const EDTF = ['2004-06-XX', '2015~', '2015-06?', '../1998', '[1987-05,1997-05]', '156X-12-25', '2011-12-30'];

const INSTANTS = ['2026-03-29T00:59:59Z', '2026-03-29T01:00:00Z', '2011-12-30T09:59:59Z', '2011-12-30T10:00:00Z'];
const ZONES = ['UTC', 'America/New_York', 'Pacific/Apia', 'Asia/Kolkata', 'Europe/Lisbon'];

export const probe = (): string => {
  const days = DAYS.map((day) => [
    isCivilDate(day),
    addDays(day, 1),
    addDays(day, -1),
    addMonths(day, 1),
    limitOn(day, 25),
    weekday(day),
    daysBetween(day, TODAY),
    monthsBetween(day, TODAY),
    tireWeekOf(day),
    ageInWords(ageOf({ from: day, to: addDays(day, 400) }, TODAY)),
    rangeInWords({ from: day, to: addMonths(day, 7) }),
  ]);
  const findings = DAYS.flatMap((day) => [
    finding('tires-road', [dated('made', day, addDays(day, 6))], TODAY),
    finding('v-belt', [dated('made', day, addDays(day, 500)), dated('serviced', day)], TODAY),
    finding('engine-oil', [dated('filled', day), said('filled', 'unknown')], TODAY),
    finding('harness-fia', [dated('printed', day)], TODAY),
  ]);
  return JSON.stringify([
    days,
    TYPED.map((typed) => readTypedDate(typed, { today: TODAY, order: 'ask' })),
    EDTF.map(readEdtf),
    ['DOT AB C2 DEFH 0126', '0126', '239'].map((code) => readTireCode(code, TODAY)),
    findings.map(({ standing, began, look, due, past }) => ({ standing, began, look, due, past })),
    findings.map(explain),
    digestOf([{ carId: 'car', name: 'Car', owed: owed(findings, new Map()), stay: [], unproven: 0, unjudged: 0 }]),
    INSTANTS.map((instant) => ZONES.map((zone) => todayIn(zone, new Date(instant)))),
  ]);
};
