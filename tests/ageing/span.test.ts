import { expect, it } from 'vitest';
import { clamp } from '../../src/ageing/span.ts';

it.each([
  [-1, 0],
  [0, 0],
  [4, 4],
  [10, 10],
  [11, 10],
])('%d kept between 0 and 10 is %d', (value, wanted) => expect(clamp(value, 0, 10)).toBe(wanted));
