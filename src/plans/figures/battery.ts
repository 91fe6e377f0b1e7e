/** What the battery holds by then. */
import { RECHARGE_AT } from '../../ageing/battery/outlook.ts';
import { daysInWords, spanInWords } from '../../ageing/words.ts';
import { drainOf } from '../../findings/outlook/battery-facts.ts';
import { batteryOf, chargeByReturn } from '../battery-charge.ts';
import type { Situation } from '../situation.ts';
import { sideOf } from '../when.ts';
import type { Figure } from './figure.ts';

/** What is worth knowing by the side taken: of a maintainer, what it spares. */
const SHOWN: Readonly<Record<string, readonly ('isolator' | 'connected')[]>> = {
  maintainer: ['isolator', 'connected'],
  isolator: ['isolator'],
  out: ['isolator'],
  connected: ['connected'],
};

export const battery = (situation: Situation): Figure[] => {
  const { stay } = situation;
  const chosen = sideOf('battery', situation);
  return (
    SHOWN[chosen]?.flatMap((side) => {
      const told = chargeByReturn(situation, side === 'connected');
      if (!told) return [];
      const freezes = told.freezes?.earliest ?? null;
      return [
        {
          what: `${chosen === 'maintainer' ? 'Without the maintainer' : 'Charge by then'}, ${side === 'connected' ? 'left connected' : 'disconnected'}`,
          amount: told.charge,
          unit: '%',
          decimals: 0,
          limits: { low: 0, high: 100 },
          says: [
            side === 'connected'
              ? `From full on the parking day, with a drain of ${spanInWords(told.drain, 'mA', 0)}${isMeasured(situation) ? '' : ', where nobody measured it'}.`
              : 'From full on the parking day, by itself only.',
            ...(told.charge.low <= RECHARGE_AT
              ? ['May fall to three quarters or below: it wants charging meanwhile.']
              : []),
            ...(freezes
              ? [`Could freeze there ${daysInWords({ earliest: freezes, latest: null }, '', stay.parkedOn)}.`]
              : []),
          ],
          sources: ['army-recharge-rule', 'standing-drain-bulletin', 'memory'] as const,
        },
      ];
    }) ?? []
  );
};

const isMeasured = ({ atParking }: Situation): boolean => {
  const known = batteryOf(atParking);
  return known !== undefined && drainOf(known) !== undefined;
};
