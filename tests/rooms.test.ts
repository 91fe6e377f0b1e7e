import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

interface Room {
  name: string;
  /** Paths that begin so belong to the room; the longest beginning wins. */
  at: readonly string[];
  /** Rooms it may import from besides itself. */
  imports: readonly string[] | 'everything';
  /** Rooms it may import types from, and nothing that runs. */
  types?: readonly string[];
}

const CORE = ['dates', 'catalogue', 'ageing', 'findings', 'money', 'plans', 'revival', 'notices'];

/** Who may import from whom, from the inside out. */
const ROOMS: readonly Room[] = [
  { name: 'dates', at: ['src/dates/'], imports: [] },
  { name: 'catalogue', at: ['src/catalogue/'], imports: ['dates'] },
  { name: 'ageing', at: ['src/ageing/'], imports: ['dates', 'catalogue'] },
  { name: 'findings', at: ['src/findings/'], imports: ['dates', 'catalogue', 'ageing'] },
  { name: 'money', at: ['src/money/'], imports: ['dates', 'catalogue', 'ageing', 'findings'] },
  { name: 'plans', at: ['src/plans/'], imports: ['dates', 'catalogue', 'ageing', 'findings'] },
  { name: 'revival', at: ['src/revival/'], imports: ['dates', 'catalogue', 'ageing', 'findings', 'money', 'plans'] },
  {
    name: 'notices',
    at: ['src/notices/'],
    imports: ['dates', 'catalogue', 'ageing', 'findings', 'money', 'plans', 'revival'],
  },
  { name: 'root', at: ['src/root.ts'], imports: [] },
  { name: 'log', at: ['src/log.ts'], imports: [] },
  { name: 'links', at: ['src/links.ts'], imports: [] },
  { name: 'clock', at: ['src/clock.ts'], imports: [], types: ['dates'] },
  { name: 'config', at: ['src/config.ts'], imports: ['log', 'clock'] },
  { name: 'store', at: ['src/store/'], imports: ['root', 'dates'], types: CORE },
  {
    name: 'letter',
    at: ['src/mail/letter.tsx', 'src/mail/plan-letter.tsx', 'src/mail/test-letter.tsx', 'src/mail/calendar.ts'],
    imports: ['dates', 'notices'],
    types: ['notices', 'store'],
  },
  { name: 'post', at: ['src/mail/post.ts'], imports: [] },
  { name: 'transport', at: ['src/mail/transport.ts', 'src/mail/hooks.ts'], imports: ['post'], types: ['store'] },
  { name: 'deliver', at: ['src/mail/deliver.ts'], imports: ['dates', 'store', 'log'], types: ['notices', 'transport'] },
  { name: 'acts', at: ['src/acts/'], imports: [...CORE, 'store', 'letter', 'clock'], types: ['transport'] },
  {
    name: 'web',
    at: ['src/web/'],
    imports: [...CORE, 'store', 'letter', 'acts', 'root', 'log', 'links', 'clock'],
    types: ['deliver'],
  },
  { name: 'seeds', at: ['seeds/'], imports: ['dates'], types: ['catalogue', 'findings', 'store', 'acts'] },
  { name: 'the wiring', at: ['src/house.ts', 'src/server.ts', 'jobs/'], imports: 'everything' },
];

/** Packages one room only may load: name, and the beginnings of the paths that may. */
const KEPT_IN: Readonly<Record<string, readonly string[]>> = {
  'better-sqlite3': ['src/store/'],
  'drizzle-orm': ['src/store/'],
  nodemailer: ['src/mail/transport.ts'],
  'node-cron': ['jobs/'],
};

/** The only packages the core may load: they read no clock, no file and no environment by themselves. */
const CORE_PACKAGES = ['date-fns', '@date-fns/utc', 'edtf'];
const CORE_NEVER = ['zod', 'drizzle-orm', 'better-sqlite3', 'hono', 'nodemailer'];

interface Import {
  from: string;
  /** A path from the project's folder, or a package's name. */
  to: string;
  typeOnly: boolean;
}

const IMPORT = /^(?:import|export)\b(\s+type\b)?(?:[^'";]*\bfrom)?\s*'([^']+)'|\bimport\(\s*'([^']+)'\s*\)/gm;

const sources = ['src', 'jobs', 'seeds'].flatMap((folder) =>
  existsSync(folder)
    ? readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.tsx?$/.test(name))
        .map((name) => join(folder, name))
    : [],
);
const textOf = new Map(sources.map((path) => [path, readFileSync(path, 'utf8')]));

const importsOf = (path: string): Import[] =>
  [...(textOf.get(path) ?? '').matchAll(IMPORT)].map((found) => {
    const target = found[2] ?? found[3] ?? '';
    const to = target.startsWith('.') ? normalize(join(dirname(path), target)) : target;
    return { from: path, to, typeOnly: found[1] !== undefined };
  });

const imports = sources.flatMap(importsOf);
const ours = imports.filter(({ to }) => /^(?:src|jobs|seeds|tests|migrations)\//.test(to));
const packages = imports.filter((one) => !ours.includes(one));

const roomOf = (path: string): Room | undefined =>
  ROOMS.flatMap((room) => room.at.map((beginning) => ({ room, beginning })))
    .filter(({ beginning }) => path.startsWith(beginning))
    .sort((a, b) => b.beginning.length - a.beginning.length)[0]?.room;

const isAllowed = ({ from, to, typeOnly }: Import): boolean => {
  const [room, target] = [roomOf(from), roomOf(to)];
  if (!room || !target) return false;
  if (room === target || room.imports === 'everything') return true;
  return room.imports.includes(target.name) || (typeOnly && (room.types ?? []).includes(target.name));
};

const inWords = ({ from, to, typeOnly }: Import): string => `${from} imports ${typeOnly ? 'types of ' : ''}${to}`;
const isCore = (path: string): boolean => CORE.includes(roomOf(path)?.name ?? '');

/** One ring of files that import each other, or null. */
const ringIn = (edges: readonly Import[]): string[] | null => {
  const targets = Map.groupBy(edges, ({ from }) => from);
  const finished = new Set<string>();
  const walk = (path: string, way: string[]): string[] | null => {
    if (way.includes(path)) return [...way.slice(way.indexOf(path)), path];
    if (finished.has(path)) return null;
    for (const { to } of targets.get(path) ?? []) {
      const ring = walk(to, [...way, path]);
      if (ring) return ring;
    }
    finished.add(path);
    return null;
  };
  for (const path of targets.keys()) {
    const ring = walk(path, []);
    if (ring) return ring;
  }
  return null;
};

describe('the reading of imports', () => {
  it('finds the files of every core room and what they import', () => {
    for (const room of CORE) expect(sources.some((path) => roomOf(path)?.name === room)).toBe(true);
    expect(imports.length).toBeGreaterThan(150);
    for (const { to } of ours) expect(existsSync(to), to).toBe(true);
  });

  it('sees one-line, many-line, re-exported, bare and late imports, and which are of types alone', () => {
    const read = (text: string) => [...text.matchAll(IMPORT)].map((found) => [found[2] ?? found[3], Boolean(found[1])]);
    expect(read(`import { a } from './a.ts';`)).toEqual([['./a.ts', false]]);
    expect(read(`import {\n  a,\n  type B,\n} from './a.ts';`)).toEqual([['./a.ts', false]]);
    expect(read(`import type {\n  A,\n} from './a.ts';`)).toEqual([['./a.ts', true]]);
    expect(read(`export type { A } from './a.ts';`)).toEqual([['./a.ts', true]]);
    expect(read(`export * from './a.ts';`)).toEqual([['./a.ts', false]]);
    expect(read(`import 'side';`)).toEqual([['side', false]]);
    expect(read(`const late = await import('./a.ts');`)).toEqual([['./a.ts', false]]);
    expect(read(`export const from = 'here';\nconst a = 'import';`)).toEqual([]);
  });
});

describe('rooms', () => {
  it('hold every source file, each in one of them', () => {
    expect(sources.filter((path) => !roomOf(path))).toEqual([]);
  });

  it.each(ROOMS.map(({ name }) => name))('%s imports only what the table lets it import', (name) => {
    expect(ours.filter((one) => roomOf(one.from)?.name === name && !isAllowed(one)).map(inWords)).toEqual([]);
  });

  it('the table itself lets no room reach back to one that imports from it', () => {
    const edges = ROOMS.flatMap(({ name, imports: to, types }) =>
      to === 'everything'
        ? []
        : [...to, ...(types ?? [])].map((target) => ({ from: name, to: target, typeOnly: false })),
    );
    expect(ringIn(edges)).toBeNull();
  });

  it('no file imports itself by any detour, not even for types', () => {
    expect(ringIn(ours)).toBeNull();
  });

  it('the search for a ring finds one', () => {
    const edge = (from: string, to: string): Import => ({ from, to, typeOnly: true });
    expect(ringIn([edge('a', 'b'), edge('b', 'c'), edge('c', 'b')])).toEqual(['b', 'c', 'b']);
    expect(ringIn([edge('a', 'b'), edge('a', 'c'), edge('b', 'c')])).toBeNull();
  });
});

describe('packages', () => {
  const isOf = (to: string, name: string): boolean => to === name || to.startsWith(`${name}/`);

  it.each(Object.entries(KEPT_IN))('%s is loaded in %s only', (name, paths) => {
    const loaded = packages.filter(({ to }) => isOf(to, name));
    expect(loaded.length).toBeGreaterThan(0);
    expect(loaded.filter(({ from }) => !paths.some((path) => from.startsWith(path))).map(inWords)).toEqual([]);
  });

  it('the core loads nothing of the outside world', () => {
    const core = packages.filter(({ from }) => isCore(from));
    expect(core.filter(({ to }) => to.startsWith('node:') || CORE_NEVER.some((name) => isOf(to, name)))).toEqual([]);
    expect(core.filter(({ to }) => !CORE_PACKAGES.some((name) => isOf(to, name))).map(inWords)).toEqual([]);
  });
});

describe('the core', () => {
  const core = sources.filter(isCore);

  it.each([
    ['the clock by Date.now', /Date\s*\.\s*now\s*\(/],
    ['the clock by an empty Date', /new\s+(?:UTC)?Date(?:Mini)?\s*\(\s*\)/],
    ['the clock by Date as a function', /(?<!new\s)\bDate\s*\(\s*\)/],
    ['the environment', /\bprocess\s*\./],
    ['chance', /Math\s*\.\s*random/],
  ])('never reads %s', (_, pattern) => {
    expect(core.length).toBeGreaterThan(50);
    expect(core.filter((path) => pattern.test(textOf.get(path) ?? ''))).toEqual([]);
  });
});
