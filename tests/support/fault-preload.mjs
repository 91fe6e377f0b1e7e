// Loaded into a real process of the program (node --import), which knows nothing of it. By environment variables it
//   CLOCK_SHIFT=<minutes>   lets the process's clock run so much ahead of the machine's (or behind it),
//   KILL_AT=<n>             kills the process (SIGKILL) right before its n-th step; with KILL_AFTER=1 right after it,
//   STEPS_FILE=<path>       writes down the steps it made, for a run that comes to its end,
//   SMTP_PORT=<port>        names the mail server whose talk counts as steps,
//   BUSY_TIMEOUT=<ms>       shortens the wait for a locked database, MAX_PAGES=<n> lets the disk be full at that size.
// A step is a statement that writes, the beginning or end of a transaction, and whatever goes to or comes from the mail
// server.
import { appendFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Socket } from 'node:net';
import { join } from 'node:path';

const { env } = process;
const killAt = Number(env.KILL_AT ?? 0);
const steps = [];

const step = (name, go) => {
  steps.push(name);
  const dies = steps.length === killAt;
  if (dies && !env.KILL_AFTER) process.kill(process.pid, 'SIGKILL');
  const done = go();
  if (dies) process.kill(process.pid, 'SIGKILL');
  return done;
};

const Database = createRequire(join(process.cwd(), 'package.json'))('better-sqlite3');
const probe = new Database(':memory:');
const Statement = Object.getPrototypeOf(probe.prepare('select 1'));
probe.close();
const WRITES = /^\s*(begin|commit|rollback|savepoint|release|insert|update|delete)\b/i;
for (const method of ['run', 'get', 'all']) {
  const plain = Statement[method];
  Statement[method] = function (...values) {
    const verb = WRITES.exec(this.source)?.[1];
    return verb ? step(`sql ${verb.toLowerCase()}`, () => plain.apply(this, values)) : plain.apply(this, values);
  };
}
if (env.BUSY_TIMEOUT || env.MAX_PAGES) {
  const { pragma } = Database.prototype;
  Database.prototype.pragma = function (text, options) {
    if (env.BUSY_TIMEOUT && /^busy_timeout/.test(text)) return pragma.call(this, `busy_timeout = ${env.BUSY_TIMEOUT}`);
    const answer = pragma.call(this, text, options);
    if (env.MAX_PAGES && /^journal_mode/.test(text)) pragma.call(this, `max_page_count = ${env.MAX_PAGES}`);
    return answer;
  };
}

const port = Number(env.SMTP_PORT ?? 0);
const { write, emit } = Socket.prototype;
Socket.prototype.write = function (...said) {
  if (!port || this.remotePort !== port) return write.apply(this, said);
  return step('smtp said', () => write.apply(this, said));
};
Socket.prototype.emit = function (event, ...told) {
  if (event !== 'data' || !port || this.remotePort !== port) return emit.call(this, event, ...told);
  return step('smtp heard', () => emit.call(this, event, ...told));
};

const shift = Number(env.CLOCK_SHIFT ?? 0) * 60_000;
if (shift !== 0) {
  const Clock = Date;
  globalThis.Date = class extends Clock {
    constructor(...given) {
      if (given.length === 0) super(Clock.now() + shift);
      else super(...given);
    }
    static now() {
      return Clock.now() + shift;
    }
  };
}

if (env.STEPS_FILE) process.once('exit', () => appendFileSync(env.STEPS_FILE, `${steps.join('\n')}\n`));
