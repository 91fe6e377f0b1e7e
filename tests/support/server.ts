/** The real server as a process of its own, on a free port and an empty folder. */
import { type ChildProcess, spawn } from 'node:child_process';
import { newFolder } from './folder.ts';

export interface RunningServer {
  url: string;
  dataDir: string;
  process: ChildProcess;
  /** Its log so far: what it wrote to standard output. */
  log(): string;
  /** Stops it the way a service manager does; answers its exit code. */
  stop(): Promise<number | null>;
}

export const startServer = async (
  options: string[] = [],
  environment: Record<string, string> = {},
): Promise<RunningServer> => {
  const dataDir = newFolder();
  const child = spawn(process.execPath, ['src/boot.mjs', 'src/server.ts', ...options], {
    // Its own environment only: what the test runner sets (BASE_URL among it) is not meant for it.
    env: { PATH: process.env['PATH'], PORT: '0', DATA_DIR: dataDir, TIME_ZONE: 'Europe/Lisbon', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let log = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    log += chunk;
  });
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk;
      const found = /Standstill is at (\S+)/.exec(said);
      if (found?.[1]) resolve(found[1].replace(/\/$/, ''));
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
  });
  return {
    url,
    dataDir,
    process: child,
    log: () => log,
    stop: () =>
      new Promise((resolve) => {
        child.removeAllListeners('exit');
        child.once('exit', resolve);
        child.kill('SIGTERM');
      }),
  };
};
