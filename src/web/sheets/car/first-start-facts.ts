/** What is recorded of a car that matters at its first start; what nobody looked at says so. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { FACETS } from '../../../catalogue/traits.ts';
import { explain } from '../../../findings/explain.ts';
import { type LookKey, lookOf } from '../../../revival/looks.ts';
import type { StageKey } from '../../../revival/stages.ts';
import { isFor } from '../../../revival/step-state.ts';
import { shutBelow } from './shut-below.ts';

interface Fact {
  name: string;
  words: string;
}

export const factsOf = (here: RevivalHere, traits: ReadonlySet<string>): Fact[] => {
  const seen = (look: LookKey): string => {
    const said = here.plan.picture.answers.get(look)?.answer;
    return said === undefined ? 'nobody has looked' : (lookOf(look).answers[said]?.words.toLowerCase() ?? said);
  };
  const diesel = traits.has('diesel');
  return [
    { name: 'Fuel', words: `${chosen('fuel', traits)}, ${chosen('mixture', traits).toLowerCase()}` },
    { name: 'Smell of the fuel', words: seen('fuel-smell') },
    { name: 'Tank, inside', words: seen('tank-inside') },
    { name: 'To be fed from', words: seen('fuel-supply') },
    { name: 'Engine oil', words: oilOf(here) },
    { name: 'Oil before the start', words: seen('pre-oil') },
    { name: 'Turned by hand', words: seen('turns') },
    {
      name: diesel ? 'Fuel at the injectors' : `Ignition: ${chosen('ignition', traits).toLowerCase()}`,
      words: seen('ignites'),
    },
    {
      name: traits.has('air-cooled') ? 'Cooled by air' : 'Cooled by liquid',
      words: seen('cooling-holds'),
    },
    ...(isFor(lookOf('coolant-seen'), traits) ? [{ name: 'Coolant', words: seen('coolant-seen') }] : []),
    { name: 'Air box', words: seen('air-box') },
  ];
};

/** What the car was said to have of a facet. */
const chosen = (key: 'fuel' | 'mixture' | 'ignition', traits: ReadonlySet<string>): string => {
  const names: Readonly<Record<string, string>> = FACETS.find((facet) => facet.key === key)?.traits ?? {};
  return Object.entries(names).find(([trait]) => traits.has(trait))?.[1] ?? 'not known';
};

/** Its date, and what its record says of it, which may be the grade. */
const oilOf = ({ plan, found }: RevivalHere): string => {
  const finding = plan.findings.find(({ kind }) => kind.key === 'engine-oil');
  const note = found.parts.find(({ kind }) => kind === 'engine-oil')?.note;
  return `${finding ? explain(finding).age : 'No date known'}${note ? `; ${note}` : ''}`;
};

/** On a diesel nothing is called after a spark. */
const PLAIN: Readonly<Partial<Record<StageKey, string>>> = {
  'pre-oil': 'Oil before the start',
  spark: 'Injectors and charge',
};

export const gatesOpenInWords = ({ plan }: RevivalHere, traits: ReadonlySet<string>): string => {
  const nameOf = (key: StageKey, name: string): string => (traits.has('diesel') ? (PLAIN[key] ?? name) : name);
  const shut = shutBelow(plan, 'first-start');
  if (shut.length > 0)
    return `Not yet: below it ${shut.length === 1 ? 'this gate is' : 'these gates are'} not passed: ${shut.map(({ key, stage }) => nameOf(key, stage.name)).join(' · ')}.`;
  const written = plan.stages
    .slice(
      0,
      plan.stages.findIndex(({ key }) => key === 'first-start'),
    )
    .filter(({ gate }) => gate.state === 'in writing');
  return written.length > 0
    ? `Every gate below it is passed, but in writing only: ${written.map(({ key, stage }) => nameOf(key, stage.name)).join(' · ')}.`
    : 'Every gate below it is passed, as on the day printed above.';
};
