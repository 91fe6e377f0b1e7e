/** Short ways to say what a test knows of a part and its car. */
import type { Clock } from '../../src/catalogue/clock.ts';
import type { Kind } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { assess, type Finding } from '../../src/findings/assess.ts';
import type { CarFacts, Claim, Override, PartFacts } from '../../src/findings/facts.ts';
import { rulingOf } from '../../src/findings/ruling.ts';

export const CAR_ID = 'car';

export const kindOf = (key: string): Kind => {
  const kind = KINDS.get(key);
  if (!kind) throw new Error(`no kind ${key}`);
  return kind;
};

/** A date on a clock: a day, or the first and last day it can be. */
export const dated = (
  clock: Clock,
  from: CivilDate | null,
  to: CivilDate | null = from,
  more: Partial<Claim> = {},
): Claim => ({ clock, said: 'date', from, to, evidence: 'receipt', km: null, ...more });

export const said = (clock: Clock, what: 'original' | 'unknown' | 'not looked', more: Partial<Claim> = {}): Claim => ({
  clock,
  said: what,
  from: null,
  to: null,
  evidence: 'own memory',
  km: null,
  ...more,
});

export const carOf = (facts: Partial<CarFacts> = {}): CarFacts => ({
  id: CAR_ID,
  built: { from: '1972-01-01', to: '1972-12-31' },
  odometer: [],
  place: null,
  placedOn: null,
  ...facts,
});

export const partOf = (kind: string, claims: readonly Claim[], more: Partial<PartFacts> = {}): PartFacts => ({
  id: kind,
  kind,
  position: null,
  claims,
  readings: [],
  details: {},
  ...more,
});

export const override = (kind: string, more: Partial<Override> = {}): Override => ({
  carId: CAR_ID,
  kind,
  authority: 'own',
  lookFrom: null,
  replaceBy: null,
  replaceByKm: null,
  note: '',
  ...more,
});

/** The finding of one part on a day. */
export const finding = (
  kind: string,
  claims: readonly Claim[],
  on: CivilDate,
  { car = carOf(), overrides = [], part = {} }: Known = {},
): Finding => assess(partOf(kind, claims, part), kindOf(kind), car, rulingOf(kindOf(kind), overrides, car.id), on);

interface Known {
  car?: CarFacts;
  overrides?: readonly Override[];
  part?: Partial<PartFacts>;
}
