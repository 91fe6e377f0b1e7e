/** What the server does by itself: the last good and the last bad run of each job, the sweep's by collection. */
import { eq } from 'drizzle-orm';
import { runs } from './letter-schema.ts';
import type { Store } from './open.ts';

type RunRow = typeof runs.$inferSelect;
export const JOBS = ['sweep', 'deliver', 'backup', 'integrity'] as const;
export type Job = (typeof JOBS)[number];
export type Run = Omit<RunRow, 'job'>;

/** Keeps how a run ended, for one collection where it is named: `trouble` is null where it was good. */
export const recordRun = (
  store: Store,
  job: Job,
  at: string,
  trouble: string | null,
  collectionId: string | null = null,
): void => {
  const ended = trouble === null ? { goodAt: at, trouble } : { badAt: at, trouble };
  store
    .insert(runs)
    .values({ job: collectionId ? `${job} ${collectionId}` : job, ...ended })
    .onConflictDoUpdate({ target: runs.job, set: ended })
    .run();
};

const NEVER: Run = { goodAt: null, badAt: null, trouble: null };

/** How each job stands: by a collection it is in trouble with, else by the last that went well. */
export const runsOf = (store: Store): Record<Job, Run> => {
  const rows = store.select().from(runs).all();
  const of = (job: Job): Run => {
    const own = rows.filter((row) => row.job.split(' ')[0] === job);
    const good = own.toSorted((a, b) => (b.goodAt ?? '').localeCompare(a.goodAt ?? ''));
    return own.find(isBad) ?? good[0] ?? NEVER;
  };
  return { sweep: of('sweep'), deliver: of('deliver'), backup: of('backup'), integrity: of('integrity') };
};

/** Instant of the last sweep of a collection in which nothing went wrong, or null. */
export const lastGoodSweep = (store: Store, collectionId: string): string | null =>
  store
    .select({ at: runs.goodAt })
    .from(runs)
    .where(eq(runs.job, `sweep ${collectionId}`))
    .get()?.at ?? null;

/** Whether the last run of a job was a bad one. */
export const isBad = ({ trouble }: Run): boolean => trouble !== null;
