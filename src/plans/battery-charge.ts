/** What a charged battery still holds when the car comes back, by how it is left. */
import { type BatteryFacts, chargeOn, milestones, RECHARGE_AT } from '../ageing/battery/outlook.ts';
import { ASSUMED } from '../ageing/place.ts';
import type { DaySpan, Span } from '../ageing/span.ts';
import type { Finding } from '../findings/assess.ts';
import { capacityOf, chemistryOf, connectedDrain } from '../findings/outlook/battery-facts.ts';
import type { Situation } from './situation.ts';
import { endOf } from './stay.ts';

/** Charged for the lay-up, rested, %. */
const CHARGED: Span = { low: 95, high: 100 };

const BATTERIES = ['battery-flooded', 'battery-agm', 'battery-lithium'];

export const batteryOf = (findings: readonly Finding[]): Finding | undefined =>
  findings.find(({ kind }) => BATTERIES.includes(kind.key));

export interface ChargeByReturn {
  charge: Span;
  /** When it may freeze there; null: it cannot. */
  freezes: DaySpan | null;
  /** mA. */
  drain: Span;
}

/** From a full charge on the parking day to the last day planned; connected, what the car draws counts. */
export const chargeByReturn = ({ stay, atParking }: Situation, connected: boolean): ChargeByReturn | null => {
  const battery = batteryOf(atParking);
  if (!battery) return null;
  const facts: BatteryFacts = {
    chemistry: chemistryOf(battery),
    capacity: capacityOf(battery),
    drain: connected ? connectedDrain(battery) : { low: 0, high: 0 },
    maintained: false,
    charge: CHARGED,
    from: stay.parkedOn,
  };
  const place = stay.place ?? ASSUMED;
  return {
    charge: chargeOn(facts, place, endOf(stay)),
    freezes: milestones(facts, place, endOf(stay)).freezes,
    drain: facts.drain,
  };
};

/** Whether even at the worst it stays above the charge at which it is to be recharged. */
export const holdsCharge = (situation: Situation, connected: boolean): boolean => {
  const told = chargeByReturn(situation, connected);
  return told !== null && told.charge.low > RECHARGE_AT;
};
