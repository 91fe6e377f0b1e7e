import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { Owed, Stage } from '../../src/notices/owed.ts';
import { heardWhileStanding } from '../../src/notices/silence.ts';
import { finding } from '../support/parts.ts';

const owedOf = (kind: string, ...told: [Stage, ...Stage[]]): Owed => ({
  ...finding(kind, [], '2027-01-15'),
  told,
  lastSaid: null,
});
const heard = (kind: string, ...told: [Stage, ...Stage[]]): readonly Stage[] =>
  heardWhileStanding([owedOf(kind, ...told)])[0]?.told ?? [];

describe('of a car that stands', () => {
  it.each(['look', 'due', 'past'] as const)('“%s” of what ages on the road anyway waits until it is back', (stage) => {
    for (const kind of ['tires-road', 'brake-fluid-glycol', 'engine-oil', 'timing-belt'])
      expect(heard(kind, stage)).toEqual([]);
  });

  it.each([...KINDS.keys()])('a reading of %s is heard, good news or bad', (kind) => {
    expect(heard(kind, 'act')).toEqual(['act']);
    expect(heard(kind, 'watch')).toEqual(['watch']);
  });

  it.each(['battery-flooded', 'battery-agm', 'battery-lithium', 'coolant-iat', 'coolant-oat'])(
    'what is estimated of %s is heard',
    (kind) => expect(heard(kind, 'estimate')).toEqual(['estimate']),
  );

  it.each(['tires-road', 'brake-fluid-glycol'])('what is estimated of %s is not', (kind) =>
    expect(heard(kind, 'estimate')).toEqual([]),
  );

  it.each(['coolant-iat', 'coolant-oat', 'lpg-tank', 'cng-tank', 'extinguisher'])(
    'the age of %s can’t wait',
    (kind) => {
      for (const stage of ['look', 'due', 'past'] as const) expect(heard(kind, stage)).toEqual([stage]);
    },
  );

  it.each(['battery-flooded', 'maintainer', 'desiccant', 'trim-care'])(
    'the rounds ask after %s: its age is no news',
    (kind) => {
      expect(heard(kind, 'due')).toEqual([]);
      expect(heard(kind, 'past', 'act')).toEqual(['act']);
    },
  );

  it('what waits is told by nobody, so that it can be told in full later', () => {
    const owed = [owedOf('tires-road', 'past', 'watch'), owedOf('brake-hoses', 'past'), owedOf('extinguisher', 'due')];
    expect(heardWhileStanding(owed).map(({ kind, told }) => [kind.key, told])).toEqual([
      ['tires-road', ['watch']],
      ['extinguisher', ['due']],
    ]);
    expect(owed[0]?.told).toEqual(['past', 'watch']);
  });
});
