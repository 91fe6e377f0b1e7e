/** The real processes of sweep and delivery, killed at every step they make, and at random ones in a row. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BadMailServer, openBadMailServer } from '../support/bad-mail-server.ts';
import { query } from '../support/data-dir.ts';
import { atOnce, barnWithNews, bundle, copyOf, faulty } from '../support/faulty.ts';
import { newFolder } from '../support/folder.ts';

const ADA = 'ada@example.org';
const BRAM = 'bram@example.org';
/** Past the lease of a sender that died, and past every wait between two tries, in minutes. */
const LEASE_OVER = 11;
const DAYS_LATER = 3 * 24 * 60;

/** What all cases together came to. */
const figures = { kills: 0, lost: 0, duplicates: 0 };

const stepsOf = async (job: 'sweep' | 'deliver', dataDir: string, smtp?: BadMailServer): Promise<string[]> => {
  const stepsFile = join(newFolder(), 'steps');
  const ended = await faulty(job, dataDir, { stepsFile, ...(smtp ? { smtp } : {}) });
  expect([ended.code, ended.err]).toEqual([0, '']);
  return readFileSync(stepsFile, 'utf8').trim().split('\n');
};

/** Lets everything come to its end: the morning is swept, and what waits is sent once it may be. */
const finish = async (dataDir: string, smtp: BadMailServer): Promise<void> => {
  expect((await faulty('sweep', dataDir, { smtp })).code).toBe(0);
  expect((await faulty('deliver', dataDir, { smtp, ahead: DAYS_LATER })).code).toBe(0);
};

interface Case {
  job: 'sweep' | 'deliver';
  killAt: number;
  killAfter: boolean;
}

/** Whether anything is lost, or comes a second time outside the one window. */
const judge = async (dataDir: string, smtp: BadMailServer, unrecorded: ReadonlySet<string>, name: string) => {
  const states = query(dataDir, 'select state, message_id as messageId, recipient from letters') as {
    state: string;
    messageId: string;
    recipient: string;
  }[];
  expect(states.map(({ recipient, state }) => `${recipient} ${state}`).toSorted(), name).toEqual([
    `${ADA} sent`,
    `${BRAM} sent`,
  ]);
  const mails: ParsedMail[] = await Promise.all(smtp.taken.map(({ raw }) => simpleParser(raw)));
  for (const { messageId, recipient } of states) {
    const copies = mails.filter((mail) => mail.messageId === messageId);
    if (copies.length === 0) figures.lost++;
    expect(copies.length, `${name}: ${recipient} got it`).toBeGreaterThan(0);
    expect(copies[0]?.text, name).toMatch(/Brake fluid[\s\S]*Spark plugs/);
    // The one window: taken by the mail server, and not yet written down here.
    expect(copies.length, `${name}: copies to ${recipient}`).toBeLessThanOrEqual(unrecorded.has(messageId) ? 2 : 1);
    expect(new Set(copies.map(({ text }) => text)).size, `${name}: the same words`).toBe(1);
    figures.duplicates += copies.length - 1;
  }
  expect(mails, name).toHaveLength(
    mails.filter(({ messageId }) => states.some((one) => one.messageId === messageId)).length,
  );
  expect(query(dataDir, 'select distinct person_id, part_id, stage from said'), name).toHaveLength(4);
  expect(query(dataDir, 'pragma integrity_check'), name).toEqual([{ integrity_check: 'ok' }]);
};

/** Messages the mail server has, which no row here says were sent. */
const unrecordedIn = (dataDir: string, smtp: BadMailServer): string[] => {
  const sent = new Set(
    (query(dataDir, "select message_id from letters where state = 'sent'") as { message_id: string }[]).map(
      ({ message_id }) => message_id,
    ),
  );
  return smtp.taken.map(({ messageId }) => messageId).filter((id) => !sent.has(id));
};

describe('killed (SIGKILL), nothing is lost, and a second copy comes only of what was taken and not yet written down', {
  timeout: 240_000,
}, () => {
  let fresh: string;
  let swept: string;
  const servers: BadMailServer[] = [];
  const open = async (): Promise<BadMailServer> => {
    const server = await openBadMailServer('take');
    servers.push(server);
    return server;
  };

  beforeAll(async () => {
    await bundle('sweep', 'deliver');
    fresh = barnWithNews();
    swept = copyOf(fresh);
    expect((await faulty('sweep', swept)).code).toBe(0);
  });
  afterAll(async () => {
    await Promise.all(servers.map((server) => server.close()));
    console.log(
      `kills survived: ${figures.kills}, letters lost: ${figures.lost}, second copies: ${figures.duplicates}`,
    );
  });

  const tryOut = async ({ job, killAt, killAfter }: Case, name: string): Promise<void> => {
    const smtp = await open();
    const dataDir = copyOf(job === 'sweep' ? fresh : swept);
    const killed = await faulty(job, dataDir, { smtp, killAt, killAfter });
    expect(killed.code, `${name} is killed`).toBeNull();
    figures.kills++;
    const unrecorded = new Set(unrecordedIn(dataDir, smtp));
    await finish(dataDir, smtp);
    await judge(dataDir, smtp, unrecorded, name);
    await smtp.close();
  };

  it('before each step of the sweep, and after its last', async () => {
    const steps = await stepsOf('sweep', copyOf(fresh));
    expect(steps).toContain('sql insert');
    const cases = steps.map((_, n) => ({ job: 'sweep' as const, killAt: n + 1, killAfter: n + 1 === steps.length }));
    await atOnce(3, cases, (one) => tryOut(one, `sweep, step ${one.killAt} (${steps[one.killAt - 1]})`));
  });

  // After what is heard comes the next step, and before that it is killed anyway.
  it('before each step of the delivery, and after each word to the mail server', async () => {
    const steps = await stepsOf('deliver', copyOf(swept), await open());
    expect(steps.filter((step) => step === 'smtp heard').length).toBeGreaterThan(4);
    const cases = steps.flatMap((step, n) => [
      { job: 'deliver' as const, killAt: n + 1, killAfter: false },
      ...(step === 'smtp said' ? [{ job: 'deliver' as const, killAt: n + 1, killAfter: true }] : []),
    ]);
    await atOnce(3, cases, (one) =>
      tryOut(one, `delivery, ${one.killAfter ? 'after' : 'before'} step ${one.killAt} (${steps[one.killAt - 1]})`),
    );
    expect(figures.duplicates).toBeGreaterThan(0);
  });

  it('at random steps, four times in a row', async () => {
    // Seeds, not chance: a run that fails can be run again.
    const seeds = Array.from({ length: 8 }, (_, n) => n + 1);
    await atOnce(3, seeds, async (seed) => {
      const smtp = await open();
      const dataDir = copyOf(fresh);
      const unrecorded = new Set<string>();
      let state = seed * 7919;
      const random = (most: number): number => {
        state = (state * 48_271) % 2_147_483_647;
        return 1 + (state % most);
      };
      for (let kill = 0; kill < 4; kill++) {
        const job = kill === 0 ? 'sweep' : 'deliver';
        const ended = await faulty(job, dataDir, {
          smtp,
          killAt: random(job === 'sweep' ? 12 : 40),
          ahead: kill * LEASE_OVER,
        });
        if (ended.code === null) figures.kills++;
        for (const id of unrecordedIn(dataDir, smtp)) unrecorded.add(id);
        if (kill === 0) await faulty('sweep', dataDir, { smtp });
      }
      const before = smtp.taken.length;
      await finish(dataDir, smtp);
      // Each kill in the window can cost one more copy; without one there is no second.
      const mails = await Promise.all(smtp.taken.map(({ raw }) => simpleParser(raw)));
      for (const address of [ADA, BRAM]) {
        const own = mails.filter(({ to }) => JSON.stringify(to).includes(address));
        if (own.length === 0) figures.lost++;
        expect(own.length, `seed ${seed}: ${address} got it`).toBeGreaterThan(0);
        expect(new Set(own.map(({ messageId }) => messageId)).size, `seed ${seed}`).toBe(1);
        expect(new Set(own.map(({ text }) => text)).size, `seed ${seed}`).toBe(1);
        if (!unrecorded.has(own[0]?.messageId ?? '')) expect(own, `seed ${seed}`).toHaveLength(1);
        figures.duplicates += own.length - 1;
      }
      expect(before).toBeLessThanOrEqual(smtp.taken.length);
      expect(query(dataDir, "select count(*) as n from letters where state <> 'sent'")).toEqual([{ n: 0 }]);
      expect(existsSync(join(dataDir, 'standstill.db'))).toBe(true);
      await smtp.close();
    });
  });
});
