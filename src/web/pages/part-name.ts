import { kindOf } from '../../acts/parts.ts';
import type { Finding } from '../../findings/assess.ts';

/** "Road tire, front left". */
export const nameOf = (of: Finding | { kind: string; position: string | null }): string => {
  const [kind, position] = 'part' in of ? [of.kind, of.part.position] : [kindOf(of), of.position];
  return position ? `${kind.name}, ${position}` : kind.name;
};
