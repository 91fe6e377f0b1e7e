/** Status: what the server does by itself, and how it went. */
import { type Backup, nightlyBackups } from '../../store/backup.ts';
import { outboxCounts } from '../../store/letters.ts';
import { isBad, JOBS, type Job, runsOf } from '../../store/runs.ts';
import { Instant, page } from '../layout.tsx';
import { FilesOnly } from '../letters/list.tsx';
import type { Ctx } from '../visit.ts';

const JOB_WORDS: Readonly<Record<Job, string>> = {
  sweep: 'Looking over the collections, each morning',
  deliver: 'Sending letters, every five minutes',
  backup: 'Copying the database, each night',
  integrity: 'Checking the database, each week',
};

export const statusPage = (c: Ctx) => {
  const { store, dataDir, now, hasMailServer } = c.get('around');
  return page(
    c,
    'Status',
    <Status
      runs={runsOf(store)}
      outbox={outboxCounts(store)}
      copies={dataDir ? nightlyBackups(dataDir) : []}
      now={now()}
      hasMailServer={hasMailServer}
    />,
  );
};

interface Shown {
  runs: ReturnType<typeof runsOf>;
  outbox: ReturnType<typeof outboxCounts>;
  copies: Backup[];
  now: Date;
  hasMailServer: boolean;
}

const Status = ({ runs, outbox, copies, now, hasMailServer }: Shown) => (
  <>
    <h1>Status</h1>
    <p class="lede">What the server does by itself, when it last went well, and what it has to say.</p>
    <dl class="runs">
      {JOBS.map((job) => {
        const { goodAt, badAt, trouble } = runs[job];
        return (
          <>
            <dt>{JOB_WORDS[job]}</dt>
            <dd>
              {goodAt ? (
                <>
                  Last went well on <Instant at={goodAt} />.
                </>
              ) : (
                'Has not gone well yet.'
              )}
              {isBad(runs[job]) && badAt && (
                <strong>
                  {' '}
                  Trouble on <Instant at={badAt} />: {trouble}
                </strong>
              )}
            </dd>
          </>
        );
      })}
    </dl>
    <h2>Letters</h2>
    <p>
      {[...outbox.counts].map(([state, n]) => `${n} ${state === 'cancelled' ? 'called off' : state}`).join(', ') ||
        'None yet'}
      .
      {outbox.oldest && (
        <>
          {' '}
          The longest waiting was written on <Instant at={outbox.oldest} />.
        </>
      )}
    </p>
    {!hasMailServer && <FilesOnly />}
    <h2>Copies of the database</h2>
    <Copies copies={copies} now={now} />
  </>
);

const HOUR = 3_600_000;

const Copies = ({ copies, now }: Pick<Shown, 'copies' | 'now'>) => {
  const [newest] = copies;
  if (!newest)
    return (
      <p class="fault">
        There is none yet. The first is made in the coming night; <code>npm run backup</code> makes one now.
      </p>
    );
  const hours = Math.floor((now.getTime() - Date.parse(newest.madeAt)) / HOUR);
  return (
    <>
      <p>
        The last one is {hours < 1 ? 'less than an hour' : hours === 1 ? 'an hour' : `${hours} hours`} old. Each was
        checked when it was made; seven days and four weeks are kept, on this same disk: copy them elsewhere.
      </p>
      <ul>
        {copies.map(({ day, bytes, file }) => (
          <li>
            {day}, {Math.ceil(bytes / 1024)} KiB: <code class="long">{file}</code>
          </li>
        ))}
      </ul>
      <p class="hint">
        To go back: stop the server, then, with the same DATA_DIR,{' '}
        <code class="long">npm run restore -- {newest.file}</code>
      </p>
    </>
  );
};
