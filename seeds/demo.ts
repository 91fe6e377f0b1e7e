/** A barn of seven cars and one that is only looked at, invented from people to makers, told so that it is true on whatever day it is loaded. */
import type { Demo } from '../src/acts/demo.ts';
import type { CivilDate } from '../src/dates/civil.ts';
import { brackwater } from './demo/brackwater.ts';
import { calvessa } from './demo/calvessa.ts';
import { layUps } from './demo/lay-ups.ts';
import { norrhalm } from './demo/norrhalm.ts';
import { BRAM, CARS, COLLECTION, HESPERING, ODILE, PEOPLE } from './demo/people.ts';
import { revivals } from './demo/revivals.ts';
import { sarrelune } from './demo/sarrelune.ts';
import { tindlewick } from './demo/tindlewick.ts';
import { counting } from './demo/typed.ts';
import { zwirbel } from './demo/zwirbel.ts';

export const demoCollection = (today: CivilDate): Demo => {
  const ago = counting(today);
  return {
    collection: COLLECTION,
    people: PEOPLE,
    places: HESPERING,
    cars: [tindlewick, brackwater, zwirbel, sarrelune, norrhalm, calvessa].map((car) => car(today)),
    layUps: layUps(today),
    revivals: revivals(today),
    overrides: [
      {
        kind: 'overdrive',
        carId: CARS.brackwater,
        authority: 'handbook',
        lookFrom: 12,
        replaceBy: 24,
        replaceByKm: 9_600,
        note: 'Lubrication chart, page 61: every 6,000 miles.',
        setOn: ago(1, 7),
        setBy: BRAM,
      },
      {
        kind: 'tires-road',
        carId: null,
        authority: 'own',
        lookFrom: 48,
        replaceBy: 84,
        replaceByKm: null,
        note: 'House rule since the blowout on the ferry road: seven years, whatever the tread.',
        setOn: ago(2),
        setBy: ODILE,
      },
    ],
  };
};
