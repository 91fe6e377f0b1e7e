import { createHash, timingSafeEqual } from 'node:crypto';
import { Hono } from 'hono';
import { nightlyBackups } from '../store/backup.ts';
import { outboxCounts } from '../store/letters.ts';
import { lastFinishedSweep } from '../store/outbox.ts';
import { allCollections } from '../store/people.ts';
import { isBad, JOBS, runsOf } from '../store/runs.ts';
import type { Surroundings } from './visit.ts';

/** /healthz: the process answers. /readyz: the database answers too, and when it was last swept. /metrics: numbers. */
export const health = (around: Surroundings): Hono =>
  new Hono()
    .get('/healthz', (c) => c.json({ status: 'up' }))
    .get('/readyz', (c) => {
      const { store } = around;
      try {
        const runs = runsOf(store);
        return c.json({
          status: 'ready',
          collections: allCollections(store).length,
          lastSweep: lastFinishedSweep(store),
          lastGoodSweep: runs.sweep.goodAt,
          trouble: JOBS.filter((job) => isBad(runs[job])),
        });
      } catch {
        return c.json({ status: 'the database does not answer' }, 503);
      }
    })
    .get('/metrics', (c) => {
      const { metricsToken } = around;
      if (!metricsToken) return c.text('Not found', 404);
      if (!isSame(c.req.header('authorization') ?? '', `Bearer ${metricsToken}`))
        return c.text('The bearer token of METRICS_TOKEN is needed', 401, { 'www-authenticate': 'Bearer' });
      return c.text(metricsOf(around), 200, { 'content-type': 'text/plain; version=0.0.4; charset=utf-8' });
    });

const isSame = (given: string, wanted: string): boolean => {
  const [a, b] = [given, wanted].map((text) => createHash('sha256').update(text).digest());
  return a !== undefined && b !== undefined && timingSafeEqual(a, b);
};

/** In the text format that monitors read (Prometheus exposition format 0.0.4). */
const metricsOf = ({ store, dataDir }: Surroundings): string => {
  const runs = runsOf(store);
  const { counts, oldest } = outboxCounts(store);
  const [copy] = dataDir ? nightlyBackups(dataDir) : [];
  const metric = (name: string, help: string, samples: readonly [labels: string, value: number][]): string[] =>
    samples.length === 0
      ? []
      : [
          `# HELP standstill_${name} ${help}`,
          `# TYPE standstill_${name} gauge`,
          ...samples.map(([labels, value]) => `standstill_${name}${labels} ${value}`),
        ];
  const seconds = (instant: string | null): number[] => (instant ? [Date.parse(instant) / 1000] : []);
  return [
    ...metric(
      'last_good_run_seconds',
      'When a job last went well, seconds since 1970.',
      JOBS.flatMap((job) => seconds(runs[job].goodAt).map((at) => [`{job="${job}"}`, at] as [string, number])),
    ),
    ...metric(
      'in_trouble',
      'Whether the last run of a job went wrong.',
      JOBS.map((job) => [`{job="${job}"}`, Number(isBad(runs[job]))]),
    ),
    ...metric(
      'letters',
      'Letters in the outbox by state.',
      [...counts].map(([state, n]) => [`{state="${state}"}`, n]),
    ),
    ...metric(
      'oldest_waiting_seconds',
      'Since when the longest waiting letter waits, seconds since 1970.',
      seconds(oldest).map((at) => ['', at]),
    ),
    ...metric(
      'last_backup_seconds',
      'When the last checked copy of the database was made, seconds since 1970.',
      seconds(copy?.madeAt ?? null).map((at) => ['', at]),
    ),
    '',
  ].join('\n');
};
