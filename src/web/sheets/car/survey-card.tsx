/** The card for a first look at a sleeper, also at one that may be bought: everything to ask, to tick, to write. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { codedParts } from '../../../acts/survey-sleeper.ts';
import { allTraits } from '../../../catalogue/traits.ts';
import { SURVEY } from '../../../revival/looks/survey.ts';
import { lookOf } from '../../../revival/looks.ts';
import { isFor } from '../../../revival/step-state.ts';
import { nameOf } from '../../pages/part-name.ts';
import { Blank } from '../sheet.tsx';
import { LookBoxes } from './look-boxes.tsx';

export const SurveyCard = ({ here, prices }: { here: RevivalHere; prices: boolean }) => {
  const traits = allTraits(here.found.car.traits);
  const looks = (Object.keys(SURVEY) as (keyof typeof SURVEY)[]).filter((key) => isFor(lookOf(key), traits));
  return (
    <>
      <p class="never">
        <b>Start nothing, charge nothing, jump nothing, clean nothing.</b> Photograph before you touch. What you don’t
        see stays “not looked”.
      </p>
      <h2>What you see</h2>
      <ul class="asks">
        {looks.map((look) => (
          <li>
            <LookBoxes look={look} />
          </li>
        ))}
      </ul>
      <h2>Codes on the tires: the last four digits, or three before 2000; inner sides too</h2>
      <ul class="codes">
        {codedParts(here.found.parts).map((part) => (
          <li>
            {nameOf(part)} <Blank />
          </li>
        ))}
        <li>
          Odometer <Blank />
        </li>
      </ul>
      <h2>Story</h2>
      <div class="lines-to-write">
        <p>
          Last ran <Blank /> Who says so <Blank />
        </p>
        <p>
          Why parked <Blank /> Who says so <Blank />
        </p>
        <p>
          Done since, with dates <Blank />
        </p>
        <p>
          Notes <Blank />
        </p>
        <p>
          <Blank />
        </p>
        <p>
          {prices && (
            <>
              Most it may cost <Blank />{' '}
            </>
          )}
          Looked at by <Blank /> on <Blank />
        </p>
      </div>
    </>
  );
};
