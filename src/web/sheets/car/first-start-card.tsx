/** The card that lies on the fender at the first start. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { Blank, Box } from '../sheet.tsx';

export const FirstStartCard = ({ here }: { here: RevivalHere }) => {
  const has = (trait: string): boolean => here.found.car.traits.includes(trait);
  const diesel = has('diesel');
  const points = [
    'Outdoors. Extinguisher in a hand, a helper, tailpipe clear, nobody behind it. Chocks on both sides, out of gear: the brakes are not trusted.',
    'Oil: at its mark, not above it, and no smell of fuel.',
    'Air box open and empty; nothing loose near belts and fan.',
    'Fuel from a clean can. Pump on, ten minutes: no leak, no smell.',
    'Turned by hand: two smooth turns, today.',
    diesel
      ? 'Fuel shut off: turned in bursts of ten seconds until oil pressure shows.'
      : 'Ignition dead (coil off): turned in bursts of ten seconds until oil pressure shows.',
    diesel
      ? 'Glow, then start: ten seconds at most, then a minute’s rest. A plate lies ready to shut its intake if it runs away.'
      : 'Start: ten seconds at most, then a minute’s rest for the starter.',
    'Within ten seconds oil pressure, or OFF.',
    has('air-cooled')
      ? 'Look and listen: leaks, knocks, color of the smoke, smell of hot dust.'
      : 'Look and listen: leaks, knocks, color of the smoke, steam.',
    'At sixty seconds OFF. Look all round. Only then two to five minutes, and only then warm.',
  ];
  return (
    <>
      <ol class="big-points">
        {points.map((words) => (
          <li>
            <Box />
            <span>{words}</span>
          </li>
        ))}
      </ol>
      <p class="never">
        <b>Never:</b> starting fluid as a crutch · a jump lead on a frozen, cracked or swollen battery · in a closed
        garage, or with the door open · on its old tank · alone.
      </p>
      <h2>Write down</h2>
      <div class="lines-to-write">
        <p>
          Oil pressure after, seconds <Blank /> Volts while it runs <Blank />
        </p>
        <p>
          Knock, ticking <Blank /> Smoke, color <Blank />
        </p>
        <p>
          Leaks: where, what <Blank />
        </p>
        <p>
          Ran for, minutes <Blank /> Started by <Blank /> on <Blank />
        </p>
      </div>
    </>
  );
};
