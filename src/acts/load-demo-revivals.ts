/** The returns to the road of a demo, told through the same doors as everybody’s. */

import { stepIn } from '../revival/plan.ts';
import type { StageKey } from '../revival/stages.ts';
import { findCollection } from '../store/people.ts';
import { beginRevival } from './begin-revival.ts';
import type { DemoRevival, DemoSaid } from './demo.ts';
import { actingOn, fail, type Loading, must } from './demo-loading.ts';
import { effectsOf } from './effects.ts';
import { type RevivalHere, revivalHere } from './revivals.ts';
import { surveySleeper } from './survey-sleeper.ts';
import { answerLooks, leaveOut, passGate, tickRevivalStep } from './work-revival.ts';

const NOTHING_KNOWN = {
  lastRan: '',
  lastRanBy: 'own memory',
  why: 'unknown',
  whyWords: '',
  whyBy: 'own memory',
  stood: [],
  putAway: 'unknown',
  putAwayBy: 'own memory',
  ceiling: '',
  hands: 'both',
  note: '',
  km: null,
} as const;

export const loadRevival = (loading: Loading, revival: DemoRevival): void => {
  const { id, begunOn, begunBy, dates = [], said, ...given } = revival;
  const where = `Return ${id}`;
  must(
    beginRevival(loading.store, actingOn(loading, begunOn, begunBy, where), { ...NOTHING_KNOWN, ...given }, id),
    where,
  );
  if (dates.length > 0) {
    const here = hereOn(loading, id, begunOn);
    const waiting = [...here.found.parts];
    const told = dates.map(({ kind, typed, evidence }) => {
      const at = waiting.findIndex((part) => part.kind === kind);
      const [part] = at < 0 ? fail(where, `No ${kind} is left.`) : waiting.splice(at, 1);
      return { partId: part?.id ?? '', typed, evidence };
    });
    must(
      surveySleeper(loading.store, actingOn(loading, begunOn, begunBy, where), here, {
        day: begunOn,
        by: '',
        note: '',
        looks: {},
        dates: told,
      }),
      where,
    );
  }
  for (const one of said) say(loading, id, one, where);
};

const hereOn = ({ store, demo }: Loading, id: string, day: DemoSaid['day']): RevivalHere => {
  const collection = findCollection(store, demo.collection.id);
  return (collection && revivalHere(store, collection, id, day)) ?? fail(id, 'The return was not found again.');
};

const say = (loading: Loading, id: string, said: DemoSaid, of: string): void => {
  const { day, by, note = '', looks = {}, step, leftOut, cost = '', hours = '', pass } = said;
  const where = `${of}, ${step ?? pass ?? 'looks'} on ${day}`;
  const { store } = loading;
  const acting = actingOn(loading, day, by, where);
  const here = hereOn(loading, id, day);
  const told = { day, by: '', note };
  if (pass) must(passGate(store, acting, here, pass as StageKey, { ...told, inWriting: false }), where);
  else if (step) {
    const planned = stepIn(here.plan, step) ?? fail(where, 'The plan has no such step.');
    if (leftOut) must(leaveOut(store, acting, here, planned, told), where);
    else
      must(
        tickRevivalStep(
          store,
          acting,
          here,
          planned,
          {
            ...told,
            looks,
            cost,
            hours,
            despite: '',
            evidence: 'receipt',
            km: null,
            effects: effectsOf(planned.way, here.found.parts).map(({ key }) => key),
            answers: {},
            readings: [],
          },
          () => '',
        ),
        where,
      );
  } else must(answerLooks(store, acting, here, looks, told), where);
};
