/** What can’t wait while the car stands: readings and projections against the next visit, fuel, papers, months gone by. */
import { BATTERY } from '../ageing/battery/chemistry.ts';
import { milestones } from '../ageing/battery/outlook.ts';
import { goodUntil } from '../ageing/fuel/life.ts';
import { ASSUMED } from '../ageing/place.ts';
import type { CautionKey } from '../catalogue/cautions.ts';
import { addDays, addMonths, type CivilDate, latest } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { Finding } from '../findings/assess.ts';
import { factsOf as batteryFacts, startOf } from '../findings/outlook/battery-facts.ts';
import { factsOf as fuelFacts } from '../findings/outlook/fuel.ts';
import { batteryOf } from './battery-charge.ts';
import { roundsOf } from './rounds.ts';
import { endOf, type Stay } from './stay.ts';

export interface Warning {
  /** Own among the warnings of a stay. */
  key: string;
  /** First day it is to be heard. */
  begins: CivilDate;
  title: string;
  todo: string;
  cautions: readonly CautionKey[];
}

/** How far past the planned end an open stay is looked at, in months. */
const AHEAD = 18;

/** Those that have begun by a day and still hold, gravest first. */
export const warningsOf = (stay: Stay, findings: readonly Finding[], on: CivilDate, drained = false): Warning[] =>
  [
    ...ofBattery(stay, findings, on),
    ...(drained ? [] : ofFuel(stay, findings)),
    ...ofPapers(stay, on),
    ...ofMonths(stay),
  ]
    .filter(({ begins }) => begins <= on)
    .map((warning) => ({ ...warning, begins: latest(warning.begins, stay.parkedOn) }));

/** The last day somebody is expected before a day comes: it is then that it has to be done. */
const lastVisitBefore = (stay: Stay, day: CivilDate): CivilDate =>
  roundsOf({ ...stay, returnOn: null }, [], day).findLast(({ due }) => due <= day)?.due ?? stay.parkedOn;

const ofBattery = (stay: Stay, findings: readonly Finding[], on: CivilDate): Warning[] => {
  const battery = batteryOf(findings);
  const start = battery && startOf(battery);
  if (!battery) return [];
  if (!start) return battery.kind.key === 'battery-lithium' ? [] : [{ ...UNREAD, begins: addMonths(stay.parkedOn, 1) }];
  const facts = batteryFacts(battery, start);
  if (facts.maintained) return [];
  const until = stay.returnOn ?? addMonths(on, AHEAD);
  const { recharge, freezes } = milestones(facts, stay.place ?? ASSUMED, until);
  const read = `read on ${dayInWords(start.reading.day)}`;
  return [
    ...(freezes?.earliest
      ? [
          {
            key: 'battery-freezes',
            begins: lastVisitBefore(stay, freezes.earliest),
            title: `The battery could freeze there from ${dayInWords(freezes.earliest)} (${read}${stay.place ? '' : '; nobody has said where it stands, nights of −10 °C are taken'})`,
            todo: 'Charge it, or take it indoors, before that night. One that may be frozen is not charged or carried.',
            cautions: ['battery-gas'] as const,
          },
        ]
      : []),
    ...(recharge.earliest
      ? [
          {
            key: 'battery-recharge',
            begins: lastVisitBefore(stay, recharge.earliest),
            title: `The battery may fall to three quarters ${recharge.earliest <= on ? 'already' : `by ${dayInWords(recharge.earliest)}`}, before the visit after this one (${read})`,
            todo: BATTERY[facts.chemistry].acid
              ? 'Charge it at this visit, disconnect it, or put it on a maintainer that fits.'
              : 'Disconnect it, or charge it to half with its own charger, above 0 °C.',
            cautions: ['battery-gas'] as const,
          },
        ]
      : []),
  ];
};

const UNREAD = {
  key: 'battery-unread',
  title: 'The battery was not read since it stands',
  todo: 'Read its voltage at rest: without that nothing tells when it will be flat.',
  cautions: ['battery-gas'],
} as const;

const ofFuel = (stay: Stay, findings: readonly Finding[]): Warning[] => {
  const fuel = findings.find(({ kind }) => kind.key === 'fuel-gasoline' || kind.key === 'fuel-diesel');
  const facts = fuel && fuelFacts(fuel);
  if (!facts) return [];
  const { watch, stop } = goodUntil(facts, stay.place ?? ASSUMED);
  const warn = (key: string, day: CivilDate | null, title: string, todo: string): Warning[] =>
    day === null ? [] : [{ key, begins: day, title, todo, cautions: ['fuel-vapor'] }];
  return stop.earliest
    ? [
        ...warn(
          'fuel-stop',
          stop.earliest,
          `By its age the fuel is over since ${dayInWords(stop.earliest)}`,
          'Plan to drain it before the engine is started. A second dose only where the label allows one; it restores nothing.',
        ),
        ...warn(
          'fuel-watch',
          watch.earliest !== stop.earliest ? watch.earliest : null,
          `The fuel is getting old since ${watch.earliest ? dayInWords(watch.earliest) : ''}`,
          'Smell it at the filler on the next round; use it soon after the car comes back, mixed with fresh.',
        ),
      ]
    : [];
};

/** Days before a policy ends. */
const NOTICE = 30;

const ofPapers = ({ papers: { renewsOn, roadUntil, noticeFrom }, returnOn }: Stay, on: CivilDate): Warning[] => [
  ...(renewsOn && addDays(renewsOn, NOTICE) >= on
    ? [
        {
          key: 'policy',
          begins: addDays(renewsOn, -NOTICE),
          title: `The policy ${renewsOn < on ? 'ran out or renewed' : 'runs out or renews'} on ${dayInWords(renewsOn)}`,
          todo: 'Ask the insurer for cover for as long as it stands, and note the new day.',
          cautions: [],
        },
      ]
    : []),
  ...(roadUntil && noticeFrom && noticeFrom > roadUntil
    ? [
        {
          key: 'papers-gap',
          begins: addDays(roadUntil, -NOTICE),
          title: `Cover for the road ends on ${dayInWords(roadUntil)}, the notice takes effect on ${dayInWords(noticeFrom)} only`,
          todo: 'Ask insurer and registry to close the gap: it draws letters and fines in some places.',
          cautions: [],
        },
      ]
    : []),
  ...(returnOn && addDays(returnOn, 14) <= on
    ? [
        {
          key: 'overdue',
          begins: addDays(returnOn, 14),
          title: `It was to come back on ${dayInWords(returnOn)}`,
          todo: 'Close the lay-up when it is back, or say a later day: its plan is then made anew.',
          cautions: [],
        },
      ]
    : []),
];

/** What the months ask of any car that stands: practice of the trade. */
const MONTHS = [
  {
    months: 9,
    title: 'It has stood nine months',
    todo: 'Settle now whether it comes back or stays: fuel, brake fluid, cover and papers are renewed for another year, or the wake-up is booked.',
  },
  {
    months: 12,
    title: 'It has stood a year',
    todo: 'Treat it as a sleeper from now on: weight off the tires, bores oiled, fuel drained or without ethanol, brake fluid when it falls due, a dated plan to wake it.',
  },
] as const;

const ofMonths = (stay: Stay): Warning[] =>
  MONTHS.flatMap(({ months, title, todo }) => {
    const begins = addMonths(stay.parkedOn, months);
    return stay.returnOn !== null && endOf(stay) <= begins
      ? []
      : [{ key: `stood-${months}`, begins, title, todo, cautions: [] }];
  });
