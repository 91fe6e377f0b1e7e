/** The delivery job against a mail host as people run one: STARTTLS, sign-in, a mailbox. */
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { filledDataDir, query } from '../support/data-dir.ts';
import { MAILBOX, type MailHost, mailHostFound, startMailHost } from '../support/mail-host.ts';
import { run } from '../support/run.ts';

const LATER = ['--on', '2999-01-01'];

/** A data folder in whose outbox one letter waits, word for word what goes out. */
const outboxWith = (name: string, recipient = MAILBOX): string => {
  const dataDir = filledDataDir({ letter: true });
  const written = `kind = 'test', recipient = '${recipient}', message_id = '<${name}@localhost>'`;
  expect(query(dataDir, `update letters set ${written} returning id`)).toHaveLength(1);
  return dataDir;
};

const stateOf = (dataDir: string): unknown => query(dataDir, 'select state, tries from letters')[0];
const answers = (dataDir: string): string =>
  (query(dataDir, 'select answer from attempts order by at') as { answer: string }[])
    .map(({ answer }) => answer)
    .join('\n');

describe.skipIf(!mailHostFound)('a letter through a real mail host', { timeout: 60_000 }, () => {
  let host: MailHost;
  beforeAll(async () => {
    host = await startMailHost();
  }, 60_000);
  afterAll(() => host?.stop());

  const deliver = async (
    DATA_DIR: string,
    { url = host.smtpUrl(), trusted = true, options = [] as string[] } = {},
  ): Promise<unknown> => {
    const trust = trusted ? { NODE_EXTRA_CA_CERTS: host.caFile } : {};
    const mail = { SMTP_URL: url, MAIL_FROM: 'The barn <barn@example.org>' };
    const { code, out } = await run('jobs/deliver.ts', options, { DATA_DIR, ...mail, ...trust });
    expect(code).toBe(0);
    return JSON.parse(out.trim().split('\n').at(-1) ?? '');
  };

  const arrived = async (name: string): Promise<ParsedMail[]> => {
    const mails = await Promise.all((await host.mails()).map((raw) => simpleParser(raw)));
    return mails.filter(({ messageId }) => messageId === `<${name}@localhost>`);
  };

  it('goes out under TLS and with a sign-in, and arrives once and whole', async () => {
    const dataDir = outboxWith('whole');
    expect(await deliver(dataDir)).toMatchObject({ sent: 1, waiting: 0, failed: 0 });
    expect(await deliver(dataDir, { options: LATER })).toMatchObject({ sent: 0 });
    expect(stateOf(dataDir)).toEqual({ state: 'sent', tries: 1 });
    expect(answers(dataDir)).toMatch(/^250 .*queued as/);
    const mails = await arrived('whole');
    expect(mails).toHaveLength(1);
    const [mail] = mails;
    expect(mail).toMatchObject({
      subject: '1 past: Merle Tourer',
      from: { text: '"The barn" <barn@example.org>' },
      to: { text: MAILBOX },
      text: expect.stringContaining('Wörter über Bremsflüssigkeit: “größer” als 24 Monate…') as string,
      html: expect.stringContaining('<p>Wörter über Bremsflüssigkeit: “größer”</p>') as string,
    });
    expect(mail?.headers.get('auto-submitted')).toBe('auto-generated');
    expect(mail?.headers.get('x-auto-response-suppress')).toBe('All');
    // ESMTPSA: over TLS (S), signed in (A).
    expect(String(mail?.headers.get('received'))).toMatch(/using TLSv1\.\d.*with ESMTPSA/s);
  });

  it('to an address the host does not know is given up at once', async () => {
    const dataDir = outboxWith('unknown', 'nobody@example.org');
    expect(await deliver(dataDir)).toMatchObject({ sent: 0, waiting: 0, failed: 1 });
    expect(stateOf(dataDir)).toEqual({ state: 'failed', tries: 1 });
    expect(answers(dataDir)).toContain('550 5.1.1 <nobody@example.org>');
    expect(await deliver(dataDir, { options: LATER })).toMatchObject({ sent: 0, waiting: 0, failed: 0 });
    expect(await arrived('unknown')).toEqual([]);
  });

  it('with a wrong password waits, and goes out once it is right', async () => {
    const dataDir = outboxWith('password');
    expect(await deliver(dataDir, { url: host.smtpUrl(MAILBOX, 'wrong') })).toMatchObject({ sent: 0, waiting: 1 });
    expect(stateOf(dataDir)).toEqual({ state: 'waiting', tries: 1 });
    expect(answers(dataDir)).toContain('535 ');
    expect(await arrived('password')).toEqual([]);
    expect(await deliver(dataDir, { options: LATER })).toMatchObject({ sent: 1 });
    expect(await arrived('password')).toHaveLength(1);
  });

  it('meets a certificate nobody vouches for and waits: neither it nor the password goes out in the clear', async () => {
    const dataDir = outboxWith('stranger');
    const before = host.log().length;
    expect(await deliver(dataDir, { trusted: false })).toMatchObject({ sent: 0, waiting: 1 });
    expect(stateOf(dataDir)).toEqual({ state: 'waiting', tries: 1 });
    expect(answers(dataDir)).toContain('self-signed certificate');
    // The host would have taken both: what it was asked is one EHLO and a STARTTLS that was not gone through with.
    expect(host.log().slice(before)).toContain('lost connection after STARTTLS');
    expect(host.log().slice(before)).not.toMatch(/ (auth|mail)=/);
    expect(await deliver(dataDir, { options: LATER })).toMatchObject({ sent: 1 });
    expect(await arrived('stranger')).toHaveLength(1);
  });

  it('waits while the host is down, and arrives once when it is back', async () => {
    const dataDir = outboxWith('down');
    await host.stop();
    expect(await deliver(dataDir)).toMatchObject({ sent: 0, waiting: 1, failed: 0 });
    expect(answers(dataDir)).toContain('ECONNREFUSED');
    await host.start();
    expect(await deliver(dataDir, { options: LATER })).toMatchObject({ sent: 1 });
    expect(await deliver(dataDir, { options: LATER })).toMatchObject({ sent: 0 });
    expect(stateOf(dataDir)).toEqual({ state: 'sent', tries: 2 });
    expect(await arrived('down')).toHaveLength(1);
  });
});
