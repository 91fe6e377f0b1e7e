/** What the monthly card says below its grid, and which rounds the grid holds. */
import { kindOf } from '../../acts/parts.ts';
import type { StayHere } from '../../acts/stays.ts';
import { bandsOf } from '../../ageing/judge.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { HUMIDITY } from '../../catalogue/details/humidity.ts';
import { convert } from '../../catalogue/units.ts';
import { addMonths } from '../../dates/civil.ts';
import { limitOn } from '../../dates/limit.ts';
import { dayInWords } from '../../dates/words.ts';
import { gaugesOf } from '../../findings/measured.ts';
import { type Look, looksOn } from '../../plans/looks.ts';
import { type Round, roundsOf } from '../../plans/rounds.ts';
import { warningsOf } from '../../plans/warnings.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { BATTERY } from './monthly-columns.ts';

/** Rounds to come on the card of an open stay, and behind the next the one to compare with. */
const AHEAD = 12;
const BEHIND = 1;

export const roundsOnCard = ({ record, view }: StayHere): Round[] => {
  const { stay, on } = view;
  const rounds = roundsOf(stay, record.rounds, on);
  if (stay.returnOn !== null) return rounds;
  const past = rounds.filter(({ state }) => state === 'done' || state === 'missed').length;
  const more = Array.from({ length: AHEAD }, (_, n): Round => {
    const month = rounds.length + 1 + n;
    return { month, due: limitOn(stay.parkedOn, month), state: 'ahead', made: null };
  });
  return [...rounds, ...more].slice(Math.max(past - BEHIND, 0), past + AHEAD);
};

export const everyRound = ({ view }: StayHere): Look[] =>
  looksOn(view.situation, 1).filter(({ every }) => every === undefined);

interface InMonths {
  months: string;
  looks: readonly Pick<Look, 'name' | 'how' | 'cautions'>[];
}

/** Looks asked in some months only, and what the months themselves ask, for the rounds on the card. */
export const looksByMonth = ({ view }: StayHere, rounds: readonly Round[]): InMonths[] => {
  const { situation, stay } = view;
  const months = rounds.map(({ month }) => month);
  const looks = [3, 6].map((every) => ({
    hit: months.filter((month) => month % every === 0),
    looks: looksOn(situation, every).filter((look) => look.every === every),
  }));
  const stood = warningsOf({
    stay: { ...stay, returnOn: null },
    on: addMonths(stay.parkedOn, 24),
    findings: [],
    ticks: [],
    found: [],
  })
    .filter(({ key }) => key.startsWith(STOOD))
    .map(({ key, title, todo, cautions }) => ({
      hit: months.filter((month) => month === Number(key.slice(STOOD.length))),
      looks: [{ name: title, how: todo, cautions }],
    }));
  return [...looks, ...stood]
    .filter(({ hit, looks: some }) => hit.length > 0 && some.length > 0)
    .map(({ hit, looks: some }) => ({ months: `Month ${hit.join(', ')}:`, looks: some }));
};
const STOOD = 'stood-';

/** What is open from the rounds before, and what warns now. */
export const openNow = ({ view }: StayHere): string[] => [
  ...view.found.map(
    ({ look, answer, day }) => `${look.name}: ${answer.name} (${dayInWords(day)}). ${answer.todo ?? ''}`,
  ),
  ...view.warnings.filter(({ key }) => !key.startsWith(STOOD)).map(({ title, todo }) => `${title}. ${todo}`),
];

/** Figures at which somebody acts. */
export const callsOf = ({ found, view }: StayHere): string[] => {
  const looks = new Set(everyRound({ view } as StayHere).map(({ key }) => key));
  const battery = found.parts.find(({ kind }) => BATTERY.test(kind));
  return [
    ...(battery ? voltsOf(battery) : []),
    `Humidity over ${HUMIDITY.bands.watch.to} %: dry or renew the desiccant, find where damp gets in.`,
    ...(looks.has('tires') ? pressureOf(found.parts) : []),
    ...(looks.has('lamp') ? ['Maintainer hot, dark or at fault: unplug it at the wall.'] : []),
    'A smell of fuel, or fuel or brake fluid below: switch nothing on, air the room, call.',
  ];
};

const voltsOf = (battery: PartOnRecord): string[] => {
  const gauge = gaugesOf(kindOf(battery)).find((test) => test.gauge.key === 'rest-voltage')?.gauge;
  const least = gauge && bandsOf(gauge, battery.details)?.watch?.from;
  if (!gauge || least === undefined) return [];
  const half =
    'by' in gauge.bands && battery.details['volts'] === undefined
      ? `, a 6-volt one under ${inUnit(least / 2, 'V', 2)}`
      : '';
  return [`Battery at rest under ${inUnit(least, 'V', 2)}${half}: charge it.`];
};

const SINKS =
  'A tire that lost more than 0.2 bar (3 psi) since the last round leaks: pump it up, look again in a week.';

const pressureOf = (parts: readonly PartOnRecord[]): string[] => {
  const told = parts
    .filter(({ kind }) => kind === 'tires-road')
    .flatMap(({ details }) => (typeof details['placard'] === 'number' ? [details['placard']] : []));
  if (told.length === 0) return [SINKS];
  const bar = { low: Math.min(...told), high: Math.max(...told) };
  const psi = { low: convert(bar.low, 'bar', 'psi'), high: convert(bar.high, 'bar', 'psi') };
  return [
    `A tire under its placard, ${spanInWords(bar, 'bar', 1)} (${spanInWords(psi, 'psi', 0)}): pump it up.`,
    SINKS,
  ];
};
