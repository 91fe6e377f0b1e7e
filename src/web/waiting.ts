import type { Claim } from '../findings/facts.ts';

/** True while nobody has answered for a part's date: "unknown" is an answer, "not looked yet" is none. */
export const isWaiting = (claims: readonly Pick<Claim, 'said'>[]): boolean =>
  claims.every(({ said }) => said === 'not looked');
