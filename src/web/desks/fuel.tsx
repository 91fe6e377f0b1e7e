/** Fuel life: how long it stays good where it is, and when water parts it. */
import { done, type Outcome } from '../../acts/fault.ts';
import { FUELS, type FuelKey } from '../../ageing/fuel/fuels.ts';
import { fuelOutlook } from '../../ageing/fuel/outlook.ts';
import { WATER_SOURCES } from '../../ageing/fuel/water.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { DateOrder } from '../../dates/typed-point.ts';
import type { Answers } from '../../findings/facts.ts';
import { HALF_FULL } from '../../findings/outlook/fuel.ts';
import type { Ctx } from '../visit.ts';
import { type Asked, faultsIn, readDesk } from './asked.ts';
import { showDesk } from './desk.tsx';
import { type FuelAnswer, FuelAnswered } from './fuel-answer.tsx';
import { assumedWords, isNightTold, PLACE_DETAILS, placeIn } from './place.ts';
import { readWhen, WhenField } from './when.tsx';

const FUEL_DETAILS: readonly Detail[] = [
  {
    key: 'blend',
    name: 'Fuel',
    choices: Object.fromEntries(Object.entries(FUELS).map(([key, { name }]) => [key, name])),
  },
  {
    key: 'water',
    name: 'Water in it, if measured',
    unit: '%',
    range: [0, 20],
    decimals: 2,
    hint: 'In volume percent.',
  },
  { key: 'stabilized', name: 'Stabilizer', choices: { yes: 'Put into the fresh fuel', no: 'None, or put in later' } },
];

const TANK_DETAILS: readonly Detail[] = [
  { key: 'container', name: 'It is in', choices: { tank: 'the tank of a car', can: 'a closed can' } },
  { key: 'tank', name: 'That holds', unit: 'L', also: ['US gal'], range: [2, 400], decimals: 0 },
  { key: 'fullness', name: 'Filled to', unit: '%', range: [1, 100], decimals: 0 },
];

export const DETAILS = [...FUEL_DETAILS, ...TANK_DETAILS, ...PLACE_DETAILS];

export const readFuel = (asked: Asked, on: CivilDate, order: DateOrder): Outcome<FuelAnswer> => {
  const read = readDesk(DETAILS, asked, ['blend']);
  // Left open it was bought today.
  const bought = readWhen('bought', asked, { today: on, order, open: done({ from: on, to: on }) });
  const place = read.ok ? placeIn(read.value) : null;
  if (!read.ok || !bought.ok || !place?.ok)
    return { ok: false, faults: faultsIn(read, bought, ...(place ? [place] : [])) };
  const answers = read.value;
  const facts = { ...factsIn(answers), filled: bought.value };
  return done({
    facts,
    place: place.value,
    nightTold: isNightTold(answers),
    assumed: assumedWords(answers),
    measured: typeof answers.water === 'number' ? answers.water : null,
    on,
    outlook: fuelOutlook(facts, place.value, on),
  });
};

const factsIn = ({ blend, stabilized, container, tank, fullness }: Answers) => ({
  fuel: blend as FuelKey,
  stabilized: stabilized === 'yes',
  fullness: typeof fullness === 'number' ? fullness : HALF_FULL,
  container: container === 'can' ? ('closed can' as const) : ('vehicle tank' as const),
  tank: typeof tank === 'number' ? tank : null,
});

export const fuelDesk = (c: Ctx) => {
  const { on, person } = c.get('visit');
  const asked: Asked = c.req.query();
  const started = DETAILS.some(({ key }) => asked[key] !== undefined);
  const answer = started ? readFuel(asked, on, person.dateOrder) : null;
  const faults = answer && !answer.ok ? answer.faults : [];
  return showDesk(c, {
    title: 'Fuel life',
    lede: 'How long the fuel in a tank or can stays good where it is, what water does to it, and what to do when.',
    path: '/desks/fuel',
    groups: [
      { legend: 'The fuel', details: FUEL_DETAILS },
      { legend: 'What it is in', details: TANK_DETAILS },
      { legend: 'Where it stands', details: PLACE_DETAILS },
    ],
    asked,
    more: <WhenField name="bought" label="Bought (empty: today)" asked={asked} faults={faults} />,
    moreTold: [['bought', asked.bought ?? '']],
    faults,
    answer: answer?.ok ? <FuelAnswered {...answer.value} /> : null,
    formula: [
      'Each fuel has a life at 20 °C in a cool, dark, nearly full and closed tank. Heat shortens it, to half for every 10 °C warmer; cold is not counted on to lengthen it. Month by month with the temperature of the place, faster outdoors and in a nearly empty tank. Texts differ by a factor of six on some blends, from one month to six for E10: take these dates as the latest.',
      'Water: every day the air above the fuel swells and shrinks with its temperature and draws in outside air with its humidity. The least is that air alone, the most three times it, for the vapor that pumps along.',
      'Gasoline with 10 percent ethanol holds about half a percent of water at 15 °C and 0.3 at −12 °C; when it cools below what it holds, water and ethanol fall out as a lower layer.',
    ],
    ends: 'Reckoned life is no test. Smell and look at a sample before every start after months; whatever smells sour, is brown or shows two layers is drained, whatever the date says. Draining and cleaning a tank is work for a workshop.',
    sources: [...Object.values(FUELS).flatMap(({ sources }) => sources), ...WATER_SOURCES],
  });
};
