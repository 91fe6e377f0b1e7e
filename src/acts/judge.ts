/** The findings of a car, part by part where need be: one broken record must not keep the others from being told. */
import { KINDS } from '../catalogue/kinds.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { findingsOf } from '../findings/car.ts';
import type { Override, PartFacts } from '../findings/facts.ts';
import type { CarStreamed } from '../store/stream.ts';

export interface Judged {
  /** Parts that can be reckoned, and their findings. */
  parts: readonly PartFacts[];
  findings: Finding[];
  /** A line for each part left out. */
  troubles: string[];
}

export const judge = (car: CarStreamed, overrides: readonly Override[], on: CivilDate): Judged => {
  const { name, parts, unreadable } = car;
  const told = (kind: string, why: string): string => `${name}: ${kind}: ${why}`;
  const troubles = [
    ...unreadable.map((kind) => told(kind, 'its record can’t be read')),
    ...parts
      .filter(({ kind }) => !KINDS.has(kind))
      .map(({ kind }) => told(kind, 'this version has no such kind of part')),
  ];
  try {
    return { parts, findings: findingsOf(car.facts, parts, overrides, on), troubles };
  } catch {
    return { ...oneByOne(car, overrides, on, (kind, why) => troubles.push(told(kind, why))), troubles };
  }
};

const oneByOne = (
  { facts, parts }: CarStreamed,
  overrides: readonly Override[],
  on: CivilDate,
  tell: (kind: string, why: string) => void,
): Pick<Judged, 'parts' | 'findings'> => {
  const sound = parts.filter((part) => {
    try {
      findingsOf(facts, [part], overrides, on);
      return true;
    } catch (error) {
      tell(part.kind, messageOf(error));
      return false;
    }
  });
  return { parts: sound, findings: findingsOf(facts, sound, overrides, on) };
};

export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
