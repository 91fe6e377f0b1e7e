/** Several real processes at one outbox, let go at the same moment. */
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { beforeAll, describe, expect, it } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { queueLetters } from '../../src/store/outbox.ts';
import { openBadMailServer } from '../support/bad-mail-server.ts';
import { openBarn } from '../support/cars.ts';
import { query } from '../support/data-dir.ts';
import { barnWithNews, bundle, copyOf, faulty } from '../support/faulty.ts';
import { newFolder } from '../support/folder.ts';
import { justLetter, newLetter } from '../support/letters.ts';

const WORKERS = 4;
const LETTERS = 120;

/** Holds the database until every process stands before it: whoever writes has to wait for this. */
const barrier = (dataDir: string): (() => void) => {
  const sqlite = new Database(join(dataDir, 'standstill.db'));
  sqlite.exec('begin immediate');
  return () => {
    sqlite.exec('rollback');
    sqlite.close();
  };
};

const letGo = async (open: () => void): Promise<void> => {
  await wait(2000);
  open();
};

describe('several workers, let go at the same moment', { timeout: 120_000 }, () => {
  beforeAll(() => bundle('sweep', 'deliver'));

  it('claim each letter once, and every worker gets some', async () => {
    const dataDir = newFolder();
    const store = openStore(dataDir);
    const barn = openBarn(store);
    const now = '2020-01-01T07:00:00.000Z';
    const ids = Array.from({ length: LETTERS }, (_, n) => `letter-${n}`);
    queueLetters(
      store,
      ids.map((id) => justLetter({ ...newLetter(barn.acting, id, now), kind: 'test' })),
    );
    store.$client.close();
    const smtp = await openBadMailServer('take');
    const open = barrier(dataDir);
    const workers = Array.from({ length: WORKERS }, () => faulty('deliver', dataDir, { smtp }));
    await letGo(open);
    const ended = await Promise.all(workers);
    await smtp.close();
    expect(ended.map(({ code }) => code)).toEqual(Array(WORKERS).fill(0));
    expect(smtp.taken.map(({ messageId }) => messageId).toSorted()).toEqual(
      ids.map((id) => `<digest.${id}@localhost>`).toSorted(),
    );
    expect(query(dataDir, 'select distinct state, tries from letters')).toEqual([{ state: 'sent', tries: 1 }]);
    const shares = ended.map(({ out }) => (JSON.parse(out.trim().split('\n').at(-1) ?? '') as { sent: number }).sent);
    expect(shares.reduce((sum, n) => sum + n, 0)).toBe(LETTERS);
    expect(shares.filter((n) => n > 0).length, `shares ${shares}`).toBeGreaterThan(1);
  });

  it('planning at the same time write each letter once', async () => {
    const fresh = barnWithNews();
    for (let round = 0; round < 3; round++) {
      const dataDir = copyOf(fresh);
      const open = barrier(dataDir);
      const sweeps = Array.from({ length: WORKERS }, () => faulty('sweep', dataDir));
      await letGo(open);
      expect((await Promise.all(sweeps)).map(({ code }) => code)).toEqual(Array(WORKERS).fill(0));
      expect(query(dataDir, 'select recipient from letters order by recipient')).toEqual([
        { recipient: 'ada@example.org' },
        { recipient: 'bram@example.org' },
      ]);
      expect(query(dataDir, 'select count(*) as n from said')).toEqual([{ n: 4 }]);
    }
  });
});
