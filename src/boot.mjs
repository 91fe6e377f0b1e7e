// Bundles an entry (a fraction of a second; there is no build step to forget) and runs it:
//   node src/boot.mjs src/server.ts [arguments]
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';

if (Number(process.versions.node.split('.')[0]) < 22) {
  console.error(
    `Node ${process.versions.node} is too old. On x64 Linux "npm ci" brings Node 24 and npm's scripts use it; elsewhere install Node 22 or newer.`,
  );
  process.exit(1);
}

const [entry, ...rest] = process.argv.slice(2);
if (!entry) throw new Error('Name the file to run: node src/boot.mjs src/server.ts');
const root = new URL('..', import.meta.url);
const outfile = new URL(`dist/${basename(entry).replace(/\.tsx?$/, '')}.mjs`, root);

const { build } = await import('esbuild');
await build({
  absWorkingDir: new URL('.', root).pathname,
  entryPoints: [entry],
  outfile: outfile.pathname,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node22',
  packages: 'external',
  jsx: 'automatic',
  jsxImportSource: 'hono/jsx',
  sourcemap: true,
  logLevel: 'warning',
});
process.setSourceMapsEnabled(true);
process.argv = [process.argv[0], outfile.pathname, ...rest];
await import(pathToFileURL(outfile.pathname).href);
