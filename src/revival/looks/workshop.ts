/** What the work of the later stages finds, from the spark to the road. */
import type { Look } from '../look.ts';

export const WORKSHOP = {
  linings: {
    name: 'Brake linings and friction faces',
    how: 'Drums and pads off, damp cloth only; tap the linings, look for rust under them and for fluid or oil.',
    answers: {
      good: { words: 'Dry, bonded, faces clean', verdict: 'good' },
      rusty: { words: 'Faces rusty, linings sound', verdict: 'watch' },
      bad: { words: 'Lifting, soaked, or worn to the rivets', verdict: 'act' },
    },
  },
} as const satisfies Readonly<Record<string, Look>>;
