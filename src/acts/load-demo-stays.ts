/** The stays of a demo, told through the same doors as everybody’s. */
import { carWithParts } from '../store/cars.ts';
import type { DemoLayUp, DemoRound, DemoTick } from './demo.ts';
import { actingOn, fail, type Loading, must } from './demo-loading.ts';
import { closeLayUp, NOTHING_SAID, startLayUp, understand } from './lay-up.ts';
import { makeRound } from './make-round.ts';
import { type StayHere, stayHere } from './stays.ts';
import { skipStep, stepIn, tickDone } from './tick.ts';

export const loadLayUp = (loading: Loading, layUp: DemoLayUp): void => {
  const { store, demo } = loading;
  const { id, carId, madeOn, madeBy, ticks, rounds, back, numbers, papers, ...given } = layUp;
  const found = carWithParts(store, demo.collection.id, carId) ?? fail(id, 'Its car was not found.');
  const where = `Lay-up of ${found.car.name}`;
  const acting = actingOn(loading, madeOn, madeBy, where);
  const whole = {
    ...NOTHING_SAID,
    ...given,
    numbers: { ...NOTHING_SAID.numbers, ...numbers },
    papers: { ...NOTHING_SAID.papers, ...papers },
  };
  must(startLayUp(store, acting, found, whole, '', id), where);
  // What was ticked one day is told to the plan of that day: making it anew for each step would say the same.
  for (const [day, sameDay] of Map.groupBy(ticks, (tick) => tick.day)) {
    const stay = here(loading, id, day);
    for (const tick of sameDay) loadTick(loading, stay, tick, where);
  }
  for (const round of rounds) loadRound(loading, id, round, where);
  if (!back) return;
  const end = actingOn(loading, back, madeBy, where);
  understand(store, end, here(loading, id, back));
  must(closeLayUp(store, end, here(loading, id, back), { day: back, how: 'back', km: null, pattern: true }), where);
};

const here = ({ store, demo }: Loading, id: string, day: DemoLayUp['madeOn']): StayHere =>
  stayHere(store, demo.collection.id, id, day) ?? fail(id, 'The lay-up was not found again.');

/** The records of a demo’s parts are told with the parts: its ticks add nothing to them. */
const loadTick = (
  loading: Loading,
  stay: StayHere,
  { step, day, by, note = '', cost = '', skipped }: DemoTick,
  of: string,
) => {
  const where = `${of}, ${step}`;
  const acting = actingOn(loading, day, by, where);
  const planned = stepIn(stay.view, 'lay-up', step) ?? fail(where, 'The plan has no such step.');
  if (skipped) return must(skipStep(loading.store, acting, stay, planned, 'lay-up', note), where);
  const given = { day, note, cost, evidence: 'own memory' as const, km: null, effects: [], answers: {}, readings: [] };
  return must(
    tickDone(loading.store, acting, stay, planned, 'lay-up', given, () => ''),
    where,
  );
};

const loadRound = (loading: Loading, id: string, { day, by, answers, note = '' }: DemoRound, of: string): void => {
  const where = `${of}, round of ${day}`;
  const acting = actingOn(loading, day, by, where);
  must(
    makeRound(loading.store, acting, here(loading, id, day), { day, note, answers, readings: [] }, () => ''),
    where,
  );
};
