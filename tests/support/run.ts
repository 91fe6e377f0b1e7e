/** A process of the program, run to its end. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { text } from 'node:stream/consumers';

export interface Ended {
  code: number;
  out: string;
  err: string;
}

export const run = async (script: string, options: string[], environment: Record<string, string>): Promise<Ended> => {
  const child = spawn(process.execPath, ['src/boot.mjs', script, ...options], {
    env: { PATH: process.env['PATH'], TIME_ZONE: 'Europe/Lisbon', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const [out, err, [code]] = await Promise.all([text(child.stdout), text(child.stderr), once(child, 'exit')]);
  return { code: code as number, out, err };
};
