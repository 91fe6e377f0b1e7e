/** The monthly rounds of a stay: when each is due, what became of it, what the last one found. */
import { addDays, type CivilDate } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import { dayInWords } from '../dates/words.ts';
import { LOOKS, type Look } from './looks.ts';
import type { Stay } from './stay.ts';

/** A round somebody made; answers by look. */
export interface RoundMade {
  id: string;
  day: CivilDate;
  by: string;
  answers: Readonly<Record<string, string>>;
  note: string;
}

export interface Round {
  /** Months since the parking day. */
  month: number;
  due: CivilDate;
  state: 'done' | 'due' | 'missed' | 'ahead';
  made: RoundMade | null;
}

/** Made up to so many days before its day, a round counts for it. */
const EARLY = 10;

/** The most rounds looked at: twenty years of them. */
const MOST = 240;

/**
 * Every round from the first month to the day it comes back (or, with an open end, the next one), by what became of it on
 * a day. A missed round stays missed: it is shown, not hidden. What was over before the lay-up was made nobody was asked for.
 */
export const roundsOf = (
  { parkedOn, returnOn, madeOn = parkedOn }: Pick<Stay, 'parkedOn' | 'returnOn'> & Partial<Pick<Stay, 'madeOn'>>,
  made: readonly RoundMade[],
  on: CivilDate,
): Round[] => {
  const dueOn = (month: number): CivilDate => limitOn(parkedOn, month);
  const rounds: Round[] = [];
  for (let month = 1; month <= MOST; month++) {
    const due = dueOn(month);
    if (returnOn !== null && due >= returnOn) break;
    const [opens, closes] = [addDays(due, -EARLY), addDays(dueOn(month + 1), -EARLY)];
    const own = made.findLast(({ day }) => day >= opens && day < closes && day <= on) ?? null;
    if (own !== null || closes > madeOn)
      rounds.push({
        month,
        due,
        made: own,
        state: own ? 'done' : due > on ? 'ahead' : closes <= on ? 'missed' : 'due',
      });
    if (returnOn === null && due > on) break;
  }
  return rounds;
};

/** The next day somebody is expected to look in, after a day; the day it comes back where no round is left. */
export const nextVisit = (stay: Pick<Stay, 'parkedOn' | 'returnOn'>, on: CivilDate): CivilDate | null =>
  roundsOf(stay, [], on).find(({ due }) => due > on)?.due ??
  (stay.returnOn && stay.returnOn > on ? stay.returnOn : null);

export interface Found {
  look: Look;
  answer: Look['answers'][string];
  day: CivilDate;
  roundId: string;
}

/** “Smell, inside and around it: fuel (seen on 1 February 2027). Switch nothing on …” */
export const foundInWords = ({ look, answer, day }: Found): string =>
  `${look.name}: ${answer.name.toLowerCase()} (seen on ${dayInWords(day)}). ${answer.todo ?? ''}`;

/** What the last answer to each look says that is not good: it stands until a later round says otherwise. */
export const foundBy = (made: readonly RoundMade[], on: CivilDate): Found[] =>
  LOOKS.flatMap((look) => {
    const last = made.findLast(({ day, answers }) => day <= on && answers[look.key] !== undefined);
    const answer = last && look.answers[last.answers[look.key] ?? ''];
    return last && answer && answer.verdict !== 'good' && answer.todo
      ? [{ look, answer, day: last.day, roundId: last.id }]
      : [];
  });
