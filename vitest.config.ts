import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

if (Number(process.versions.node.split('.')[0]) < 22)
  throw new Error(`Node ${process.versions.node} is too old: start the tests with "npm test".`);

export default defineConfig({
  test: {
    reporters: ['default', './tests/plain-line.ts'],
    projects: [
      {
        test: {
          name: 'unit',
          setupFiles: ['tests/support/tidy.ts'],
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          pool: 'threads',
          // By default one core stays unused: on a machine with two that is half of it.
          maxWorkers: Math.max(2, availableParallelism() - 1),
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          setupFiles: ['tests/support/tidy.ts'],
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
