/** From spawning the server on an empty folder to its first answer, beside spawning a bare Node. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { startServer } from '../support/server.ts';
import { median, printTable, times, whole } from './measure.ts';

const ROUNDS = 7;

export const timeStartUp = async (): Promise<void> => {
  const [bares, servers]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    bares.push(await spawnBare());
    servers.push(await startToFirstAnswer());
  }
  const [bare, server] = [median(bares), median(servers)];
  printTable('Start-up, bundling included', [
    ['', 'ms', ': bare Node'],
    ['node -e 0, from spawning to its end', whole(bare), times(1)],
    ['Server on an empty folder, to the first 200 of /healthz', whole(server), times(server / bare)],
  ]);
};

const spawnBare = async (): Promise<number> => {
  const start = performance.now();
  await once(spawn(process.execPath, ['-e', '0'], { stdio: 'ignore' }), 'exit');
  return performance.now() - start;
};

const startToFirstAnswer = async (): Promise<number> => {
  const start = performance.now();
  const server = await startServer();
  try {
    while ((await fetch(`${server.url}/healthz`)).status !== 200) await wait(1);
    return performance.now() - start;
  } finally {
    await server.stop();
    rmSync(server.dataDir, { recursive: true });
  }
};
