/** Everything that can be seen or measured on a sleeper. */

import type { Look } from './look.ts';
import { FOUND } from './looks/found.ts';
import { GATES } from './looks/gates.ts';
import { SURVEY } from './looks/survey.ts';
import { WORKSHOP } from './looks/workshop.ts';

export const LOOKS = { ...SURVEY, ...GATES, ...FOUND, ...WORKSHOP } as const;
export type LookKey = keyof typeof LOOKS;

export const lookOf = (key: LookKey): Look => LOOKS[key];
export const isLook = (key: string): key is LookKey => Object.hasOwn(LOOKS, key);
