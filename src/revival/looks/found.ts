/** What the work of the first stages finds, from the papers to the fuel. */
import type { Look } from '../look.ts';

export const FOUND = {
  'tank-inside': {
    name: 'Tank, inside',
    how: 'Drained and aired, scope and cold lamp through the sender hole.',
    answers: {
      clean: { words: 'Clean', verdict: 'good' },
      film: { words: 'A film of varnish', verdict: 'watch' },
      rust: { words: 'Rust, scale or a tarry floor', verdict: 'act' },
      coating: { words: 'An old coating lifts', verdict: 'act' },
    },
  },
} as const satisfies Readonly<Record<string, Look>>;
