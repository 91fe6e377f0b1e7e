/** Stays with what was ticked, added, seen on rounds. Every query names the collection. */
import { and, asc, desc, eq, gt, isNull, lte, or, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import type { Outline } from '../plans/changes.ts';
import type { OwnStep, PlanName, Tick } from '../plans/plan.ts';
import type { RoundMade } from '../plans/rounds.ts';
import { newId } from './ids.ts';
import { inTransaction, type Store } from './open.ts';
import { people } from './schema.ts';
import { layUps, ownSteps, rounds, ticks } from './stay-schema.ts';

export type LayUpRow = typeof layUps.$inferSelect;
export type NewLayUp = Omit<LayUpRow, 'id' | 'seen' | 'closedOn' | 'closedHow' | 'closedBy'>;
type TickRow = typeof ticks.$inferSelect;
type RoundRow = typeof rounds.$inferSelect;

export interface LayUpOnRecord {
  row: LayUpRow;
  ticks: Tick[];
  own: OwnStep[];
  rounds: RoundMade[];
}

/** Not called off, made by that day and not closed by it. */
const isOpenOn = (on: CivilDate) => and(lte(layUps.madeOn, on), or(isNull(layUps.closedOn), gt(layUps.closedOn, on)));

/** The open stays of a collection by car, as on a day: no more of each than can’t be damaged. */
export const openLayUps = (
  store: Store,
  collectionId: string,
  on: CivilDate,
): Map<string, Pick<LayUpRow, 'id' | 'parkedOn' | 'visitorId'>> => {
  const rows = store
    .select({ id: layUps.id, carId: layUps.carId, parkedOn: layUps.parkedOn, visitorId: layUps.visitorId })
    .from(layUps)
    .where(and(eq(layUps.collectionId, collectionId), isOpenOn(on)))
    .orderBy(asc(layUps.parkedOn))
    .all();
  return new Map(rows.map(({ carId, ...row }) => [carId, row]));
};

/** Every stay of a collection, or of one of its cars; the last parked first. */
export const layUpsOf = (store: Store, collectionId: string, carId?: string): LayUpRow[] =>
  store
    .select()
    .from(layUps)
    .where(and(eq(layUps.collectionId, collectionId), carId === undefined ? undefined : eq(layUps.carId, carId)))
    .orderBy(desc(layUps.parkedOn), desc(layUps.id))
    .all();

export const findLayUp = (store: Store, collectionId: string, id: string): LayUpOnRecord | undefined => {
  const row = store
    .select()
    .from(layUps)
    .where(and(eq(layUps.collectionId, collectionId), eq(layUps.id, id)))
    .get();
  return row && onRecord(store, row);
};

const NOBODY = 'somebody';

const onRecord = (store: Store, row: LayUpRow): LayUpOnRecord => {
  const of = (table: typeof ticks | typeof rounds | typeof ownSteps) =>
    and(eq(table.collectionId, row.collectionId), eq(table.layUpId, row.id));
  const ticked = store
    .select({ tick: ticks, by: people.name })
    .from(ticks)
    .leftJoin(people, eq(people.id, ticks.recordedBy))
    .where(and(of(ticks), isNull(ticks.withdrawnOn)))
    .orderBy(sql`+${ticks.id}`)
    .all();
  const made = store
    .select({ round: rounds, by: people.name })
    .from(rounds)
    .leftJoin(people, eq(people.id, rounds.recordedBy))
    .where(and(of(rounds), isNull(rounds.withdrawnOn)))
    .orderBy(rounds.day, sql`+${rounds.id}`)
    .all();
  return {
    row,
    ticks: ticked.map(({ tick, by }) => ({ ...tick, by: tick.doneBy || (by ?? NOBODY) })),
    own: store.select().from(ownSteps).where(of(ownSteps)).orderBy(sql`+${ownSteps.id}`).all(),
    rounds: made.map(({ round, by }) => ({ ...round, by: by ?? NOBODY })),
  };
};

/** Opens a stay with the steps its owner brings along. */
export const addLayUp = (
  store: Store,
  layUp: NewLayUp,
  brought: { own: readonly Omit<OwnStep, 'id'>[]; skipped: readonly NewTick[] } = { own: [], skipped: [] },
  id = newId(),
): string =>
  inTransaction(store, (tx) => {
    const { collectionId } = layUp;
    tx.insert(layUps)
      .values({ ...layUp, id, seen: [], closedOn: null, closedHow: null, closedBy: null })
      .run();
    for (const step of brought.own) addOwnStep(tx, collectionId, id, step);
    for (const tick of brought.skipped) tickStep(tx, collectionId, id, tick);
    return id;
  });

export const changeLayUp = (
  store: Store,
  collectionId: string,
  id: string,
  change: Partial<Omit<LayUpRow, 'collectionId' | 'id' | 'carId'>>,
): void => {
  store
    .update(layUps)
    .set(change)
    .where(and(eq(layUps.collectionId, collectionId), eq(layUps.id, id)))
    .run();
};

export const seePlan = (store: Store, collectionId: string, id: string, seen: Outline): void =>
  changeLayUp(store, collectionId, id, { seen: [...seen] });

export type NewTick = Pick<TickRow, 'plan' | 'step' | 'state' | 'day' | 'note' | 'cost' | 'recordedOn' | 'recordedBy'> &
  Partial<Pick<TickRow, 'doneBy'>>;

/** Says what became of a step; what was said before of it is withdrawn. */
export const tickStep = (store: Store, collectionId: string, layUpId: string, tick: NewTick): void =>
  inTransaction(store, (tx) => {
    untickStep(tx, collectionId, layUpId, tick, tick.recordedOn);
    tx.insert(ticks)
      .values({ ...tick, collectionId, layUpId, id: newId(), withdrawnOn: null })
      .run();
  });

export const untickStep = (
  store: Store,
  collectionId: string,
  layUpId: string,
  { plan, step }: { plan: PlanName; step: string },
  today: CivilDate,
): void => {
  store
    .update(ticks)
    .set({ withdrawnOn: today })
    .where(
      and(
        eq(ticks.collectionId, collectionId),
        eq(ticks.layUpId, layUpId),
        eq(ticks.plan, plan),
        eq(ticks.step, step),
        isNull(ticks.withdrawnOn),
      ),
    )
    .run();
};

export const addOwnStep = (
  store: Store,
  collectionId: string,
  layUpId: string,
  { plan, title, days, note }: Omit<OwnStep, 'id'>,
): string => {
  const id = newId();
  store.insert(ownSteps).values({ collectionId, layUpId, id, plan, title, days, note }).run();
  return id;
};

/** Takes a step the owner added off the plan again, with what was ticked of it. */
export const removeOwnStep = (
  store: Store,
  collectionId: string,
  layUpId: string,
  own: { plan: PlanName; id: string },
  today: CivilDate,
): void =>
  inTransaction(store, (tx) => {
    untickStep(tx, collectionId, layUpId, { plan: own.plan, step: own.id }, today);
    tx.delete(ownSteps)
      .where(and(eq(ownSteps.collectionId, collectionId), eq(ownSteps.layUpId, layUpId), eq(ownSteps.id, own.id)))
      .run();
  });

export type NewRound = Pick<RoundRow, 'day' | 'answers' | 'note' | 'recordedOn' | 'recordedBy'>;

export const recordRound = (store: Store, collectionId: string, layUpId: string, round: NewRound): void => {
  store
    .insert(rounds)
    .values({ ...round, collectionId, layUpId, id: newId(), withdrawnOn: null })
    .run();
};

export const withdrawRound = (
  store: Store,
  collectionId: string,
  layUpId: string,
  roundId: string,
  today: CivilDate,
): void => {
  store
    .update(rounds)
    .set({ withdrawnOn: today })
    .where(and(eq(rounds.collectionId, collectionId), eq(rounds.layUpId, layUpId), eq(rounds.id, roundId)))
    .run();
};
