/** The card that lies on the fender at the first start: ten points, what is known of this car, and what is never done. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { allTraits } from '../../../catalogue/traits.ts';
import { Blank, Box } from '../sheet.tsx';
import { factsOf, gatesOpenInWords } from './first-start-facts.ts';
import { Stopped } from './stopped.tsx';

export const FirstStartCard = ({ here }: { here: RevivalHere }) => {
  const traits = allTraits(here.found.car.traits);
  return (
    <>
      <Stopped plan={here.plan} />
      <p class="stopped">{gatesOpenInWords(here, traits)}</p>
      <ol class="big-points">
        {pointsFor(traits).map((words) => (
          <li>
            <Box />
            <span>{words}</span>
          </li>
        ))}
      </ol>
      <p class="never">
        <b>Never:</b> {neversFor(traits).join(' · ')}.
      </p>
      <h2>This car, by what is recorded</h2>
      <dl class="facts-of">
        {factsOf(here, traits).map(({ name, words }) => (
          <div>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
        <div>
          <dt>Oil grade</dt>
          <dd>
            <Blank />
          </dd>
        </div>
      </dl>
      <h2>Write down</h2>
      <div class="lines-to-write">
        <p>
          Oil pressure after, seconds <Blank /> Volts while it runs <Blank />
        </p>
        <p>
          Knock, ticking <Blank /> Smoke, color <Blank />
        </p>
        <p>
          Leaks: where, what <Blank /> {traits.has('liquid-cooled') ? 'Steam' : 'Hot smell'} <Blank />
        </p>
        <p>
          Ran for, minutes <Blank /> Started by <Blank /> on <Blank />
        </p>
      </div>
    </>
  );
};

/** From memory of common practice, as the steps of the first start have it; each engine in its own words. */
const pointsFor = (traits: ReadonlySet<string>): string[] => {
  const diesel = traits.has('diesel');
  return [
    'Outdoors. Extinguisher in a hand, a helper, tailpipe clear, nobody behind it. Chocks on both sides, out of gear: the brakes are not trusted.',
    'Oil: at its mark, not above it, and no smell of fuel.',
    'Air box open and empty; nothing loose near belts and fan.',
    `Fuel from a clean can. ${fedFor(traits)}: no leak, no smell.`,
    'Turned by hand: two smooth turns, today.',
    `${deadFor(traits)}: turned in bursts of ten seconds until oil pressure shows.`,
    diesel
      ? 'Glow, then start: ten seconds at most, then a minute’s rest. A plate lies ready to shut its intake if it runs away.'
      : 'Start: ten seconds at most, then a minute’s rest for the starter. The helper’s hand on the switch that kills it.',
    'Within ten seconds oil pressure, or OFF.',
    `Look and listen: leaks, knocks, color of the smoke, ${traits.has('liquid-cooled') ? 'steam' : 'smell of hot dust'}.`,
    'At sixty seconds OFF. Look all round. Only then two to five minutes, and only then warm.',
  ];
};

const fedFor = (traits: ReadonlySet<string>): string => {
  if (traits.has('diesel')) return 'Bled to the injectors; ten minutes under its hand pump';
  if (traits.has('gravity-feed')) return 'Hung above the carburetor, tap open ten minutes';
  if (traits.has('electric-fuel-pump')) return 'Pump on ten minutes, engine off';
  return 'Lines and pump filled by hand; ten minutes under the can';
};

const deadFor = (traits: ReadonlySet<string>): string => {
  if (traits.has('diesel')) return 'Fuel shut off';
  if (traits.has('no-battery')) return 'Magneto grounded';
  const coil = traits.has('coil-ignition') ? 'Coil packs unplugged' : 'Coil disconnected';
  return traits.has('fuel-injection') ? `${coil}, injection off` : coil;
};

const neversFor = (traits: ReadonlySet<string>): string[] => [
  'starting fluid as a crutch',
  ...(traits.has('no-battery') ? [] : ['a jump lead on a frozen, cracked or swollen battery']),
  'in a closed garage, or with its door open',
  'on its old tank',
  'alone',
];
