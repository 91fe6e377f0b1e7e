// Loaded into a real process of the program (node --import), which knows nothing of it. By environment variables it
//   CLOCK_SHIFT=<minutes>   lets the process's clock run so much ahead of the machine's (or behind it),
//   CLOCK=<instant>         or lets it begin at an instant,
//   KILL_AT=<n>             kills the process (SIGKILL) right before its n-th step; with KILL_AFTER=1 right after it,
//   STEPS_FILE=<path>       writes down the steps it has made, when it ends or is killed here,
//   BARRIER=<folder>        says there that it stands before its first step, and waits for a file "go" to make it,
//   SMTP_PORT=<port>        names the mail server whose talk counts as steps,
//   BUSY_TIMEOUT=<ms>       shortens the wait for a locked database, MAX_PAGES=<n> lets the disk be full at that size.
// A step is a statement that writes, the beginning or end of a transaction, whatever goes to or comes from the mail
// server, and what is done to the file of a letter. The bundle keeps better-sqlite3 outside, so that what is changed of
// it here is what the program uses.
import fs from 'node:fs';
import { createRequire, syncBuiltinESMExports } from 'node:module';
import { Socket } from 'node:net';
import { join } from 'node:path';

const { env } = process;
const { writeFileSync, renameSync } = fs;
const killAt = Number(env.KILL_AT ?? 0);
const steps = [];

const writeDown = () => {
  if (env.STEPS_FILE) writeFileSync(env.STEPS_FILE, steps.map((name) => `${name}\n`).join(''));
};
const die = () => {
  writeDown();
  process.kill(process.pid, 'SIGKILL');
};

const standAndWait = () => {
  writeFileSync(join(env.BARRIER, String(process.pid)), '');
  const nobody = new Int32Array(new SharedArrayBuffer(4));
  while (!fs.existsSync(join(env.BARRIER, 'go'))) Atomics.wait(nobody, 0, 0, 1);
};

const step = (name, go) => {
  if (env.BARRIER && steps.length === 0) standAndWait();
  const dies = steps.length + 1 === killAt;
  if (dies && !env.KILL_AFTER) die();
  steps.push(name);
  const done = go();
  if (dies) die();
  return done;
};

const Database = createRequire(join(process.cwd(), 'package.json'))('better-sqlite3');
const probe = new Database(':memory:');
const Statement = Object.getPrototypeOf(probe.prepare('select 1'));
probe.close();
const WRITES = /^\s*(begin|commit|rollback|savepoint|release|insert|update|delete)\b/i;
const asStep = (sql, go) => {
  const verb = WRITES.exec(sql)?.[1];
  return verb ? step(`sql ${verb.toLowerCase()}`, go) : go();
};
for (const method of ['run', 'get', 'all']) {
  const plain = Statement[method];
  Statement[method] = function (...values) {
    return asStep(this.source, () => plain.apply(this, values));
  };
}
const { exec, pragma } = Database.prototype;
Database.prototype.exec = function (sql) {
  return asStep(sql, () => exec.call(this, sql));
};
if (env.BUSY_TIMEOUT || env.MAX_PAGES) {
  Database.prototype.pragma = function (text, options) {
    if (env.BUSY_TIMEOUT && /^busy_timeout/.test(text)) return pragma.call(this, `busy_timeout = ${env.BUSY_TIMEOUT}`);
    const answer = pragma.call(this, text, options);
    if (env.MAX_PAGES && /^journal_mode/.test(text)) pragma.call(this, `max_page_count = ${env.MAX_PAGES}`);
    return answer;
  };
}

const port = Number(env.SMTP_PORT ?? 0);
const isMail = (socket) => port !== 0 && socket.remotePort === port;
const { write, emit } = Socket.prototype;
const COMMAND = /^(EHLO|MAIL|RCPT|DATA|RSET|QUIT)\b/;
Socket.prototype.write = function (...said) {
  if (!isMail(this)) return write.apply(this, said);
  const words = String(said[0]);
  const name = COMMAND.exec(words)?.[1] ?? (/(^|\n)\.\r\n$/.test(words) ? 'end of text' : 'text');
  return step(`smtp said ${name}`, () => write.apply(this, said));
};
Socket.prototype.emit = function (event, ...told) {
  if (event !== 'data' || !isMail(this)) return emit.call(this, event, ...told);
  return step('smtp heard', () => emit.call(this, event, ...told));
};

const isLetter = (file) => /\.eml(\.part)?$/.test(String(file));
fs.writeFileSync = (file, ...more) =>
  isLetter(file) ? step('file written', () => writeFileSync(file, ...more)) : writeFileSync(file, ...more);
fs.renameSync = (from, to) => (isLetter(to) ? step('file named', () => renameSync(from, to)) : renameSync(from, to));
syncBuiltinESMExports();

const shift = env.CLOCK ? Date.parse(env.CLOCK) - Date.now() : Number(env.CLOCK_SHIFT ?? 0) * 60_000;
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

process.once('exit', writeDown);
