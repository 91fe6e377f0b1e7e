// Bundles an entry (a fraction of a second; there is no build step to forget) and runs it:
//   node src/boot.mjs src/server.ts [arguments]
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

if (Number(process.versions.node.split('.')[0]) < 22) {
  console.error(
    `Node ${process.versions.node} is too old. On x64 Linux "npm ci" brings Node 24 and npm's scripts use it; elsewhere install Node 22 or newer.`,
  );
  process.exit(1);
}

const [entry, ...rest] = process.argv.slice(2);
if (!entry) throw new Error('Name the file to run: node src/boot.mjs src/server.ts');
const root = fileURLToPath(new URL('..', import.meta.url));
const outfile = join(root, 'dist', `${basename(entry).replace(/\.tsx?$/, '')}.mjs`);

const { build } = await import('esbuild');
const { outputFiles } = await build({
  absWorkingDir: root,
  entryPoints: [entry],
  outfile,
  write: false,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node22',
  // One file starts several times faster than many small modules. Outside stays what brings a binary, and what lives by
  // the names of its classes, which bundling may change.
  external: ['better-sqlite3', 'esbuild', 'edtf'],
  banner: {
    js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
  },
  jsx: 'automatic',
  jsxImportSource: 'hono/jsx',
  sourcemap: true,
  logLevel: 'warning',
});
// Another process may be starting the same bundle: it must never read half of it.
mkdirSync(dirname(outfile), { recursive: true });
for (const { path, contents } of outputFiles) {
  writeFileSync(`${path}.${process.pid}`, contents);
  renameSync(`${path}.${process.pid}`, path);
}
process.setSourceMapsEnabled(true);
process.argv = [process.argv[0], outfile, ...rest];
await import(pathToFileURL(outfile).href);
