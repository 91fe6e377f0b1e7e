/** A house on the disk that wakes at the instants a test names, and sends to the mail server it is given. */
import { wake } from '../../jobs/schedule.ts';
import { type House, openHouse } from '../../src/house.ts';
import { createLog } from '../../src/log.ts';
import { type LetterRow, lettersOf } from '../../src/store/letters.ts';
import { changeMember } from '../../src/store/people.ts';
import { type Barn, openBarn } from './cars.ts';
import { newFolder } from './folder.ts';

/** Little patience with a bad server, by the address, which overrides the usual one. */
const HURRY = '?connectionTimeout=250&greetingTimeout=250&socketTimeout=250';

export interface WakingHouse {
  house: House;
  barn: Barn;
  wakeAt(instant: string): Promise<void>;
  letters(): LetterRow[];
  logged: string[];
}

export const openWakingHouse = (smtp: { url: string } | null, more: Record<string, string> = {}): WakingHouse => {
  const environment = { DATA_DIR: newFolder(), LETTER_HOUR: '7', TIME_ZONE: 'Europe/Lisbon', ...more };
  const house = openHouse({ ...environment, ...(smtp ? { SMTP_URL: `${smtp.url}/${HURRY}` } : {}) }, { empty: false });
  const barn = openBarn(house.store);
  const { collectionId, personId } = barn.acting;
  changeMember(house.store, collectionId, personId, { yearlyMonth: null, repeatDays: 0 });
  const logged: string[] = [];
  const log = createLog('debug', (line) => logged.push(line));
  return {
    house,
    barn,
    logged,
    wakeAt: (instant) => wake(Object.assign(house, { log, now: () => new Date(instant) })),
    letters: () => lettersOf(house.store, collectionId).toReversed(),
  };
};
