import { once } from 'node:events';
import { existsSync, readdirSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { filledDataDir, fromTheFuture } from './support/data-dir.ts';
import { newFolder } from './support/folder.ts';
import { inside, text } from './support/html.ts';
import { run } from './support/run.ts';
import { type RunningServer, startServer } from './support/server.ts';

const running: RunningServer[] = [];
const start = async (...given: Parameters<typeof startServer>): Promise<RunningServer> => {
  const server = await startServer(...given);
  running.push(server);
  return server;
};
afterEach(() => {
  for (const { process: child } of running.splice(0)) child.kill('SIGKILL');
});

const events = (server: RunningServer): Record<string, unknown>[] =>
  server
    .log()
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as Record<string, unknown>);

const page = async (address: string): Promise<string> => (await fetch(address)).text();

describe('the server', { timeout: 60_000 }, () => {
  it('starts on an empty folder with nothing set, answers, and ends with 0 when it is told to', async () => {
    const server = await start([], { LETTER_HOUR: '0' });
    expect(await (await fetch(`${server.url}/healthz`)).json()).toEqual({ status: 'up' });
    expect(await (await fetch(`${server.url}/readyz`)).json()).toMatchObject({ status: 'ready', collections: 1 });
    expect(inside(await page(`${server.url}/`), 'h1')).toEqual(['Line-up']);
    expect((await fetch(`${server.url}/static/style.css`)).headers.get('content-type')).toContain('text/css');
    expect(existsSync(join(server.dataDir, 'standstill.db'))).toBe(true);
    expect(await server.stop()).toBe(0);

    const log = events(server);
    expect(log.map(({ event }) => event)).toEqual(expect.arrayContaining(['listening', 'swept']));
    expect(log.slice(-2)).toMatchObject([{ event: 'stopping', signal: 'SIGTERM' }, { event: 'stopped' }]);
    for (const line of log)
      expect(line).toMatchObject({ time: expect.stringMatching(/^\d{4}-.*Z$/) as string, level: 'info' });
    expect(log.find(({ event }) => event === 'listening')).toMatchObject({
      address: `${server.url}/`,
      dataDir: server.dataDir,
    });
  });

  it('ends with 0 on Ctrl-C, too, and while a browser keeps a connection open', async () => {
    const server = await start();
    const socket = connect(Number(new URL(server.url).port), '127.0.0.1');
    await once(socket, 'connect');
    socket.write('GET /healthz HTTP/1.1\r\nHost: localhost\r\nConnection: keep-alive\r\n\r\n');
    await once(socket, 'data');
    const ended = once(server.process, 'exit');
    server.process.kill('SIGINT');
    expect(await ended).toEqual([0, null]);
    socket.destroy();
  });

  it('keeps what it was given when it is started again', async () => {
    const dataDir = newFolder();
    const first = await start([], { DATA_DIR: dataDir });
    const car = { name: 'Merle Tourer', built: 'about 1967', start: 'roadster-disc-drum-overdrive' };
    const added = await fetch(`${first.url}/cars`, {
      method: 'POST',
      body: new URLSearchParams(car),
      headers: { origin: first.url },
      redirect: 'manual',
    });
    expect(added.status).toBe(303);
    await first.stop();
    const second = await start([], { DATA_DIR: dataDir });
    expect(inside(await page(`${second.url}/`), 'h2')).toEqual(['Merle Tourer built 1966 to 1968']);
    expect(await second.stop()).toBe(0);
  });

  it('writes and sends the letter of a day it was not up in the morning of', async () => {
    const dataDir = filledDataDir();
    const server = await start([], { DATA_DIR: dataDir, LETTER_HOUR: '0' });
    await vi.waitUntil(() => events(server).some(({ event }) => event === 'letter sent'), { timeout: 30_000 });
    expect(readdirSync(join(dataDir, 'mail'))).toHaveLength(1);
    expect(text(await page(`${server.url}/letters`))).toContain('1 past: Merle Tourer');
    expect(server.log()).not.toContain('ada@example.org');
    expect(await server.stop()).toBe(0);
  });

  it('lives below a path where its public address has one', async () => {
    const server = await start([], { BASE_URL: 'http://localhost:3000/cars-here/' });
    expect(server.url).toBe('http://localhost:3000/cars-here');
    const { port } = events(server).find(({ event }) => event === 'listening') ?? {};
    const html = await page(`http://localhost:${port}/cars-here/`);
    expect(html).toContain('<link rel="stylesheet" href="/cars-here/static/style.css"');
    expect(await server.stop()).toBe(0);
  });

  it('shows invented cars where it is asked for a demo, in a folder of their own', async () => {
    const server = await start(['--demo']);
    expect(inside(await page(`${server.url}/`), 'h2').length).toBeGreaterThan(3);
    expect(await server.stop()).toBe(0);
    expect(readdirSync(server.dataDir)).toEqual(['demo']);
  });
});

describe('a server that cannot start', { timeout: 60_000 }, () => {
  const refused = async (environment: Record<string, string>) => {
    const ended = await run('src/server.ts', [], { DATA_DIR: newFolder(), PORT: '0', ...environment });
    expect(ended.code).toBe(1);
    return ended.err;
  };

  it('because its port is taken ends with 1 and says which', async () => {
    const other = createServer();
    await new Promise<void>((listening) => other.listen(0, '127.0.0.1', listening));
    const address = other.address();
    const port = typeof address === 'object' && address ? address.port : 0;
    expect(await refused({ PORT: String(port) })).toBe(
      `Port ${port} is taken. Set PORT to another, or stop what uses it.\n`,
    );
    other.close();
  });

  it('because it would be open to others ends with 1 and the reason, and touches nothing', async () => {
    const dataDir = join(newFolder(), 'none');
    expect(await refused({ DATA_DIR: dataDir, HOST: '0.0.0.0' })).toBe(
      'The environment has a fault:\n  HOST must be one of 127.0.0.1, ::1, localhost: there is no sign-in yet, so the server answers this machine only\n',
    );
    expect(existsSync(dataDir)).toBe(false);
  });

  it('because the database is of a later version ends with 1 and what to do', async () => {
    const dataDir = filledDataDir();
    fromTheFuture(dataDir);
    expect(await refused({ DATA_DIR: dataDir })).toMatch(
      /^The database holds 1 change\(s\) this version does not know: .* Start that version, or restore a backup made before it\.\n$/,
    );
  });
});
