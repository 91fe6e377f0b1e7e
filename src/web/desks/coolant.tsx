/** Coolant mix: where it freezes, against the coldest night, and how to make it stronger. */
import { done, type Fault, type Outcome } from '../../acts/fault.ts';
import { strengthen } from '../../ageing/coolant/dilution.ts';
import { COOLANT_FAMILIES, type CoolantFamily, mixing, PH_LIMITS } from '../../ageing/coolant/families.ts';
import { GLYCOLS, type Glycol } from '../../ageing/coolant/freezing.ts';
import { COOLANT_SOURCES } from '../../ageing/coolant/outlook.ts';
import { SAMPLE_SOURCES } from '../../ageing/coolant/sample.ts';
import type { Span } from '../../ageing/span.ts';
import { inUnit } from '../../ageing/words.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { Kind } from '../../catalogue/kind.ts';
import { KINDS } from '../../catalogue/kinds.ts';
import { type CoolantSample, coolantSample } from '../../findings/coolant-sample.ts';
import type { Answers } from '../../findings/facts.ts';
import { gaugesOf } from '../../findings/measured.ts';
import type { Ctx } from '../visit.ts';
import { type Asked, fault, onlyOneOf, readDesk } from './asked.ts';
import { type CoolantAnswer, CoolantAnswered, GLYCOL_WORDS } from './coolant-answer.tsx';
import { showDesk } from './desk.tsx';

const SAMPLE_DETAILS: readonly Detail[] = [
  { key: 'glycol', name: 'Glycol', choices: GLYCOL_WORDS, hint: 'It stands on the canister; color tells nothing.' },
  { key: 'strength', name: 'Strength, if known', unit: '%', range: [0, 100], decimals: 0 },
  {
    key: 'freezing',
    name: 'Or the freezing point a refractometer shows',
    unit: '°C',
    also: ['°F'],
    range: [-70, 2],
    decimals: 0,
  },
  { key: 'brix', name: 'Or its sugar scale', unit: 'Brix', range: [0, 60], decimals: 1 },
  { key: 'density', name: 'Or its density at 20 °C', unit: 'SG', range: [0.99, 1.15], decimals: 3 },
];

const NIGHT_DETAILS: readonly Detail[] = [
  { key: 'night', name: 'Coldest night where the car stands', unit: '°C', also: ['°F'], range: [-60, 40], decimals: 0 },
];

const MIX_DETAILS: readonly Detail[] = [
  { key: 'volume', name: 'The system holds', unit: 'L', also: ['US gal'], range: [0.5, 60], decimals: 1 },
  { key: 'wanted', name: 'Strength wanted', unit: '%', range: [0, 100], decimals: 0 },
  {
    key: 'concentrate',
    name: 'Strength of what you add',
    unit: '%',
    range: [10, 100],
    decimals: 0,
    hint: 'Concentrate is 95 to 100, ready-mixed usually 50.',
  },
  { key: 'there', name: 'Family in the system', choices: familyWords() },
  { key: 'added', name: 'Family of what you add', choices: familyWords() },
];

function familyWords(): Record<string, string> {
  return Object.fromEntries(Object.entries(COOLANT_FAMILIES).map(([key, { name }]) => [key, name]));
}

export const DETAILS = [...SAMPLE_DETAILS, ...NIGHT_DETAILS, ...MIX_DETAILS];

export const readCoolant = (asked: Asked): Outcome<CoolantAnswer> => {
  const read = readDesk(DETAILS, asked, []);
  if (!read.ok) return read;
  const answers = read.value;
  const glycol: Glycol | 'unknown' = GLYCOLS.find((one) => one === answers.glycol) ?? 'unknown';
  const night = typeof answers.night === 'number' ? answers.night : null;
  const inGallons = /gal/i.test(asked['volume-unit'] ?? '') || /gal/i.test(asked.volume ?? '');
  const wanted = typeof answers.wanted === 'number' ? answers.wanted : null;
  const rest = { glycol, night, inGallons, wanted, mixing: mixingIn(answers, glycol) };
  if (asksOfMixingAlone(answers)) return done({ ...rest, sample: null, exchange: null });
  const sample = sampleIn(answers, night);
  if (!sample.ok) return sample;
  const exchange = exchangeIn(sample.value.strength, answers);
  if (!exchange.ok) return exchange;
  return done({ ...rest, sample: sample.value, exchange: exchange.value });
};

/** The ways to tell the strength. */
const WAYS_TO_TELL = SAMPLE_DETAILS.filter(({ key }) => key !== 'glycol');

const asksOfMixingAlone = (answers: Answers): boolean =>
  (answers.there !== undefined || answers.added !== undefined) &&
  ![...WAYS_TO_TELL.map(({ key }) => key), 'wanted', 'volume'].some((key) => answers[key] !== undefined);

/** The gauges of glycol coolant, and the questions of the desk that answer them. */
const GAUGES = gaugesOf(KINDS.get('coolant-iat') as Kind);
const ASKED_AS: Readonly<Record<string, string>> = {
  strength: 'strength',
  'freeze-point': 'freezing',
  'sugar-scale': 'brix',
  density: 'density',
};
/** The desk asks for the density at this temperature, °C. */
const DENSITY_AT = 20;

/** The sample, judged by the same bands as on the page of a car. */
const sampleIn = (answers: Answers, night: number | null): Outcome<CoolantSample> => {
  const several = onlyOneOf(WAYS_TO_TELL, answers);
  if (several.length > 0) return { ok: false, faults: several };
  const details: Answers = answers.glycol === undefined ? {} : { glycol: answers.glycol };
  for (const { gauge } of GAUGES) {
    const value = answers[ASKED_AS[gauge.key] ?? ''];
    const sample = typeof value === 'number' && coolantSample(gauge, { value, warmth: DENSITY_AT }, details, night);
    if (sample) return done(sample);
  }
  return fault('strength', 'Give its strength, or what an instrument shows: freezing point, sugar scale or density.');
};

const exchangeIn = ({ low }: Span, { volume, wanted, concentrate }: Answers): Outcome<number | null> => {
  if (typeof volume !== 'number' || typeof wanted !== 'number') return done(null);
  const added = typeof concentrate === 'number' ? concentrate : 100;
  const liters = strengthen(volume, low, wanted, added);
  return liters === null
    ? fault(
        'wanted',
        `From ${inUnit(low, '%', 0)} to ${inUnit(wanted, '%', 0)} with ${inUnit(added, '%', 0)} can’t be done: the strength wanted lies between what is in it and what you add.`,
      )
    : done(liters);
};

const familyIn = (told: string | number | undefined): CoolantFamily =>
  (Object.keys(COOLANT_FAMILIES) as CoolantFamily[]).find((one) => one === told) ?? 'unknown';

const mixingIn = ({ there, added }: Answers, glycol: Glycol | 'unknown'): string | null =>
  there === undefined && added === undefined
    ? null
    : mixing({ family: familyIn(there), glycol }, { family: familyIn(added), glycol });

export const coolantDesk = (c: Ctx) => {
  const asked: Asked = c.req.query();
  const started = DETAILS.some(({ key }) => asked[key] !== undefined);
  const answer = started ? readCoolant(asked) : null;
  const faults: Fault[] = answer && !answer.ok ? answer.faults : [];
  return showDesk(c, {
    title: 'Coolant mix',
    lede: 'Where the mix shows its first ice, how far that is from the coldest night, and what to drain and add.',
    path: '/desks/coolant',
    groups: [
      { legend: 'The coolant', details: SAMPLE_DETAILS },
      { legend: 'The cold', details: NIGHT_DETAILS },
      { legend: 'Making it stronger', details: MIX_DETAILS },
    ],
    asked,
    faults,
    answer: answer?.ok ? <CoolantAnswered {...answer.value} /> : null,
    formula: [
      'The freezing point is that of the first ice crystals: a handbook’s table of inhibited glycol by volume on one side, data of pure glycol by mass on the other. They differ by two to four degrees at half and half, which is the range shown.',
      'A refractometer tells the strength by how the sample bends light, a hydrometer by its weight: inhibitors weigh, too, so a hydrometer can be 4 to 5 percent out, and on propylene glycol it hardly tells anything.',
      'To strengthen: drain liters = system × (wanted − present) ÷ (added − present), and add as much of what you add.',
      'Less than 3 °C between coldest night and first ice wants watching; the sources themselves differ by as much. Slush is not yet a burst block, but the pump can shear if it is started in it.',
      PH_LIMITS.says,
    ],
    ends: 'Frost protection is not corrosion protection. What is left of the inhibitors a laboratory tells; by the calendar they are renewed. Coolant is poison to people and animals, and hot coolant scalds: open the cap cold.',
    sources: [...COOLANT_SOURCES, ...SAMPLE_SOURCES, ...PH_LIMITS.sources],
  });
};
