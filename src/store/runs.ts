/** What the server does by itself: the last good and the last bad run of each job. */
import { runs } from './letter-schema.ts';
import type { Store } from './open.ts';

export type RunRow = typeof runs.$inferSelect;
export const JOBS = ['sweep', 'deliver', 'backup', 'integrity'] as const;
export type Job = (typeof JOBS)[number];

/** Keeps how a run ended: `trouble` is null where it was good. */
export const recordRun = (store: Store, job: Job, at: string, trouble: string | null): void => {
  const ended = trouble === null ? { goodAt: at } : { badAt: at, trouble };
  store
    .insert(runs)
    .values({ job, ...ended })
    .onConflictDoUpdate({ target: runs.job, set: ended })
    .run();
};

const NEVER = { goodAt: null, badAt: null, trouble: null };

export const runsOf = (store: Store): Record<Job, Omit<RunRow, 'job'>> => {
  const rows = store.select().from(runs).all();
  const of = (job: Job): Omit<RunRow, 'job'> => rows.find((row) => row.job === job) ?? NEVER;
  return { sweep: of('sweep'), deliver: of('deliver'), backup: of('backup'), integrity: of('integrity') };
};

/** Whether the last run of a job was a bad one. */
export const isBad = ({ goodAt, badAt }: Omit<RunRow, 'job'>): boolean =>
  badAt !== null && (goodAt === null || badAt > goodAt);
