import { describe, expect, it } from 'vitest';
import { COOLANT_FAMILIES } from '../../src/ageing/coolant/families.ts';
import { type Place, SHELTERS } from '../../src/ageing/place.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { RUBBER_KINDS } from '../../src/catalogue/rubber.ts';
import { findingsOf } from '../../src/findings/car.ts';
import type { Answers, Override } from '../../src/findings/facts.ts';
import { rulingHere } from '../../src/findings/here.ts';
import { leadFor, practiceOf, type Ruling, rulingOf } from '../../src/findings/ruling.ts';
import { CAR_ID, carOf, dated, kindOf, override, partOf } from '../support/parts.ts';
import { COOL, FROSTY, HOT } from '../support/readings.ts';

const ruling = (
  kind: string,
  { details = {}, place = null, overrides = [] }: { details?: Answers; place?: Place | null; overrides?: Override[] },
): Ruling =>
  rulingHere(rulingOf(kindOf(kind), overrides, CAR_ID), kindOf(kind), partOf(kind, [], { details }), carOf({ place }));

describe('the ruling of fuel', () => {
  it('is practice as it stands where the blend is not told', () => {
    for (const details of [{}, { stabilized: 'yes' }, { tank: 60 }] as Answers[])
      expect(ruling('fuel-gasoline', { details })).toEqual(practiceOf(kindOf('fuel-gasoline')));
  });

  it.each([
    ['fuel-gasoline', 'e0', 'no', 6, 12],
    ['fuel-gasoline', 'e0', 'yes', 12, 24],
    ['fuel-gasoline', 'e10', 'no', 3, 6],
    ['fuel-gasoline', 'e10', 'yes', 12, 12],
    ['fuel-gasoline', 'e85', 'no', 2, 3],
    ['fuel-gasoline', 'premix', 'no', 2, 3],
    ['fuel-diesel', 'b20', 'no', 3, 6],
    ['fuel-diesel', 'diesel', 'yes', 18, 24],
  ])('%s: %s, stabilized %s: look from %i, replace by %i months', (kind, blend, stabilized, lookFrom, replaceBy) => {
    const found = ruling(kind, { details: { blend, stabilized } });
    expect(found).toMatchObject({ by: 'practice', lookFrom, replaceBy, lead: leadFor(replaceBy) });
    expect(found.note).toMatch(stabilized === 'yes' ? /, stabilized while fresh\.$/ : /, not stabilized\.$/);
  });

  it('gives a blend no figures are known of with stabilizer its plain life, and says so', () => {
    const found = ruling('fuel-gasoline', { details: { blend: 'aviation', stabilized: 'yes' } });
    expect(found).toMatchObject({ lookFrom: 12, replaceBy: 12 });
    expect(found.note).toMatch(/^For .+, for which no longer life is published with a stabilizer\.$/);
  });

  it('is left alone where a handbook or its owner set it', () => {
    for (const authority of ['handbook', 'own'] as const) {
      const overrides = [override('fuel-gasoline', { authority, replaceBy: 4 })];
      const plain = rulingOf(kindOf('fuel-gasoline'), overrides, CAR_ID);
      expect(ruling('fuel-gasoline', { details: { blend: 'e0' }, overrides })).toEqual(plain);
    }
  });

  it('sets the days of the part', () => {
    const claims = [dated('filled', '2026-01-15')];
    const past = (details: Answers) =>
      findingsOf(carOf(), [partOf('fuel-gasoline', claims, { details })], [], '2026-02-01')[0]?.past?.worst;
    expect(past({ blend: 'e85' })).toBe('2026-04-16');
    expect(past({})).toBe('2026-07-16');
    expect(past({ blend: 'e0' })).toBe('2027-01-16');
  });
});

describe('the ruling of coolant', () => {
  it.each<[string, Answers, number]>([
    ['nothing', {}, 160_000],
    ['a hybrid family', { family: 'hoat' }, 160_000],
    ['the family that lasts longest', { family: 'oat' }, 240_000],
  ])('of organic acid, told %s: as far as that is known to last', (_, details, km) => {
    expect(ruling('coolant-oat', { details })).toMatchObject({ by: 'practice', replaceBy: 60, replaceByKm: km });
  });

  it('names its family where that is told', () => {
    expect(ruling('coolant-oat', { details: { family: 'oat' } }).note).toBe(`For ${COOLANT_FAMILIES.oat.name}.`);
    expect(ruling('coolant-oat', {}).note).toBeNull();
  });

  it('is left alone where a handbook or its owner set it', () => {
    for (const authority of ['handbook', 'own'] as const) {
      const overrides = [override('coolant-oat', { authority, replaceBy: 24 })];
      const own = ruling('coolant-oat', { details: { family: 'oat' }, overrides });
      expect(own).toEqual(rulingOf(kindOf('coolant-oat'), overrides, CAR_ID));
    }
  });
});

describe('the look at rubber', () => {
  const rubber = [...RUBBER_KINDS].map((key) => kindOf(key)).filter(({ interval }) => interval.lookFrom !== null);

  it('comes sooner in a hot place, and its ruling says why', () => {
    const found = ruling('v-belt', { place: HOT });
    expect(found.lookFrom).toBeLessThan(kindOf('v-belt').interval.lookFrom ?? 0);
    expect(found.note).toMatch(/^Looked at sooner than the usual .+, for the place it stands in\.$/);
  });

  it('comes later in a cool one, where no safety rests on it', () => {
    const found = ruling('door-seals', { place: COOL });
    expect(found.lookFrom).toBeGreaterThan(kindOf('door-seals').interval.lookFrom ?? 0);
    expect(found.note).toMatch(/^Looked at later/);
  });

  it.each(rubber.map((kind) => [kind.key, kind] as const))('%s: no place moves a limit or passes it', (key, kind) => {
    const practice = practiceOf(kind);
    for (const place of [HOT, COOL, FROSTY, ...SHELTERS.map((shelter) => ({ ...COOL, shelter }))]) {
      const found = ruling(key, { place });
      expect(found).toEqual({ ...practice, lookFrom: found.lookFrom, note: found.note });
      if (practice.replaceBy !== null) expect(found.lookFrom).toBeLessThanOrEqual(practice.replaceBy);
      if (kind.severity === 'safety') expect(found.lookFrom).toBeLessThanOrEqual(practice.lookFrom ?? 0);
      expect(found.lookFrom).toBeGreaterThanOrEqual(0);
    }
  });

  it('stays where nobody has said where the car stands, and of what is no rubber', () => {
    for (const kind of KINDS.values()) {
      expect(ruling(kind.key, {})).toEqual(practiceOf(kind));
      if (!RUBBER_KINDS.has(kind.key)) expect(ruling(kind.key, { place: HOT })).toEqual(practiceOf(kind));
    }
  });

  it('stays where a handbook or its owner set it', () => {
    for (const authority of ['handbook', 'own'] as const) {
      const overrides = [override('v-belt', { authority, lookFrom: 24, replaceBy: 60 })];
      expect(ruling('v-belt', { place: HOT, overrides })).toEqual(rulingOf(kindOf('v-belt'), overrides, CAR_ID));
    }
  });

  it('moves the day of the part’s look, and no other', () => {
    const belt = (place: Place | null) =>
      findingsOf(carOf({ place }), [partOf('v-belt', [dated('made', '2026-01-15')])], [], '2026-02-01')[0];
    const [plain, hot] = [belt(null), belt(HOT)];
    expect(String(hot?.look?.worst) < String(plain?.look?.worst)).toBe(true);
    expect([hot?.due, hot?.past]).toEqual([plain?.due, plain?.past]);
  });
});
