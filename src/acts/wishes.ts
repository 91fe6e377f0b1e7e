/** Which letters a person wants, when, and by which doors besides mail. */
import { randomBytes } from 'node:crypto';
import { SEVERITIES } from '../catalogue/kind.ts';
import { MONTHS } from '../dates/words.ts';
import type { Store } from '../store/open.ts';
import { changeMember, type Member } from '../store/people.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';

export interface WishesGiven {
  letters: boolean;
  /** Typed; empty: the server's own hour, none, never. */
  hour: string;
  /** Cars that were asked about, and those of them that are wanted. */
  listed: readonly string[];
  cars: readonly string[];
  severities: readonly string[];
  repeatDays: string;
  quietFromDay: string;
  quietFromMonth: string;
  quietToDay: string;
  quietToMonth: string;
  yearlyMonth: string;
  pushUrl: string;
  webhookUrl: string;
}

const MOST_REPEAT_DAYS = 366;
const SECRET_BYTES = 24;

/** Another address is another reader: it gets a key of its own. */
const newSecret = (): string => randomBytes(SECRET_BYTES).toString('base64');

export const setWishes = (store: Store, collectionId: string, member: Member, given: WishesGiven): Outcome<null> => {
  const faults: Fault[] = [];
  const number = (text: string, field: string, least: number, most: number, message: string): number | null => {
    if (text === '') return null;
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    faults.push({ field, message });
    return null;
  };
  const hour = number(given.hour, 'hour', 0, 23, 'The hour is a whole number from 0 to 23, or left empty.');
  const repeatDays = number(
    given.repeatDays,
    'repeatDays',
    1,
    MOST_REPEAT_DAYS,
    `Say after how many days, 1 to ${MOST_REPEAT_DAYS}, or leave it empty for never.`,
  );
  const yearlyMonth = number(given.yearlyMonth, 'yearlyMonth', 1, 12, 'Choose the month of the yearly letter.');
  const quietFrom = dayOfYear(given.quietFromDay, given.quietFromMonth);
  const quietTo = dayOfYear(given.quietToDay, given.quietToMonth);
  const quietFault = faultOf(quietFrom, quietTo);
  if (quietFault) faults.push({ field: 'quiet', message: quietFault });
  const pushUrl = address(given.pushUrl, 'pushUrl', faults);
  const webhookUrl = address(given.webhookUrl, 'webhookUrl', faults);
  if (faults.length > 0) return refused(...faults);
  changeMember(store, collectionId, member.id, {
    letters: given.letters,
    // Whoever turns them on again has not stopped them any more.
    ...(given.letters ? { stoppedOn: null } : {}),
    hour,
    // Of a car nobody was asked about here, nothing is changed.
    notCars: [
      ...member.notCars.filter((id) => !given.listed.includes(id)),
      ...given.listed.filter((id) => !given.cars.includes(id)),
    ],
    notSeverities: SEVERITIES.filter((one) => one !== 'safety' && !given.severities.includes(one)),
    repeatDays: repeatDays ?? 0,
    quietFrom: quietFrom.day,
    quietTo: quietTo.day,
    yearlyMonth,
    pushUrl,
    webhookUrl,
    webhookSecret: webhookUrl && (webhookUrl === member.webhookUrl ? member.webhookSecret : newSecret()),
  });
  return done(null);
};

/** "12-01", or null where none is given; with a fault where what was typed is no day of a year. */
interface DayOfYear {
  day: string | null;
  fault: string | null;
}

const HALF_TOLD = 'A quiet season has a first and a last day, each with its month; leave all four empty for none.';

const dayOfYear = (day: string, month: string): DayOfYear => {
  if (day === '' && month === '') return { day: null, fault: null };
  if (day === '' || month === '') return { day: null, fault: HALF_TOLD };
  const [date, of] = [Number(day), Number(month)];
  const longest = new Date(Date.UTC(2024, of, 0)).getUTCDate();
  if (!/^\d{1,2}$/.test(day) || !/^\d{1,2}$/.test(month) || of < 1 || of > 12 || date < 1 || date > longest)
    return { day: null, fault: `There is no day ${day} in ${MONTHS[of - 1] ?? 'that month'}.` };
  return { day: `${month.padStart(2, '0')}-${day.padStart(2, '0')}`, fault: null };
};

const faultOf = (from: DayOfYear, to: DayOfYear): string | null =>
  from.fault ?? to.fault ?? ((from.day === null) === (to.day === null) ? null : HALF_TOLD);

const address = (text: string, field: string, faults: Fault[]): string | null => {
  if (text === '') return null;
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url && (url.protocol === 'https:' || url.protocol === 'http:')) return url.href;
  faults.push({ field, message: `“${text}” is no address. Write one that begins with https://.` });
  return null;
};
