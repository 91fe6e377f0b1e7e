/** The battery against the next visit: what it falls to by itself, by what drains it, or where its maintainer failed. */
import { BATTERY } from '../../ageing/battery/chemistry.ts';
import { milestones } from '../../ageing/battery/outlook.ts';
import { ASSUMED } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import { addMonths, type CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { factsOf, startOf } from '../../findings/outlook/battery-facts.ts';
import { batteryOf } from '../battery-charge.ts';
import { roundsOf } from '../rounds.ts';
import type { Stay } from '../stay.ts';
import type { Warning, Watched } from './warning.ts';

/** How far ahead of the day it is seen on, in months. */
const AHEAD = 18;

const SHARED = { forVisitor: true, cautions: ['battery-gas'], sources: ['army-recharge-rule', 'memory'] } as const;

export const ofBattery = ({ stay, on, findings, found }: Watched): Warning[] => {
  const battery = batteryOf(findings);
  if (!battery) return [];
  const start = startOf(battery);
  if (!start) return battery.kind.key === 'battery-lithium' ? [] : [{ ...UNREAD, begins: addMonths(stay.parkedOn, 1) }];
  const facts = factsOf(battery, start);
  // One whose lamp showed a fault keeps nothing up.
  const failed = found.some(({ look, answer }) => look.key === 'lamp' && answer.verdict === 'act');
  if (facts.maintained && !failed) return [];
  const { recharge, freezes } = milestones(
    { ...facts, maintained: false },
    stay.place ?? ASSUMED,
    addMonths(on, AHEAD),
  );
  const read = `read on ${dayInWords(start.reading.day)}`;
  const where = stay.place
    ? ''
    : `; nobody has said where it stands, nights of ${inUnit(ASSUMED.winterLow, '°C', 0)} are taken`;
  return [
    ...(freezes?.earliest
      ? [
          {
            ...SHARED,
            key: 'battery-freezes',
            begins: lastVisitBefore(stay, freezes.earliest),
            title: `The battery could freeze there from ${dayInWords(freezes.earliest)} (${read}${where})`,
            todo: 'Charge it, or take it indoors, before that night. One that may be frozen is not charged or carried.',
          },
        ]
      : []),
    ...(recharge.earliest
      ? [
          {
            ...SHARED,
            key: 'battery-recharge',
            begins: lastVisitBefore(stay, recharge.earliest),
            title:
              recharge.earliest <= on
                ? `The battery may be down to three quarters or less by now (${read})`
                : `The battery may fall to three quarters by ${dayInWords(recharge.earliest)}, before the visit after this one (${read})`,
            todo: todoFor(BATTERY[facts.chemistry].acid, facts.drain.high === 0),
          },
        ]
      : []),
  ];
};

const todoFor = (acid: boolean, disconnected: boolean): string => {
  if (!acid) return 'Disconnect it, or charge it to half with its own charger, above 0 °C.';
  return disconnected
    ? 'Charge it where it is kept. One that falls so soon with nothing on it is worn: have it load-tested.'
    : 'Charge it at this visit, disconnect it, or put it on a maintainer that fits.';
};

const UNREAD = {
  ...SHARED,
  key: 'battery-unread',
  title: 'The battery was not read since it stands',
  todo: 'Read its voltage at rest: without that nothing tells when it will be flat.',
} as const;

/** The last day somebody is expected before a day comes: it is then that it has to be done. */
const lastVisitBefore = (stay: Stay, day: CivilDate): CivilDate =>
  roundsOf({ parkedOn: stay.parkedOn, returnOn: null }, [], day).findLast(({ due }) => due <= day)?.due ??
  stay.parkedOn;
