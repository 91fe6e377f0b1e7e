import type { Step } from '../step.ts';

export const DRAINS = [
  {
    key: 'oil-drain',
    stage: 'drains',
    ways: [
      {
        act: 'look',
        title: 'Engine oil: a sample from the bottom into a jar',
        why: 'Water lies under the oil, metal in it tells of bearings.',
        when: [],
      },
      {
        act: 'flush',
        title: 'Drain the engine oil into a clean pan, look, keep a jar',
        why: 'Acids and water stood on the bearings; what comes out tells where the money goes.',
        when: [{ asleep: { from: 0.5 } }, { seen: { look: 'oil-stick', is: ['milky', 'fuel', 'none', 'black'] } }],
      },
    ],
    expects: [
      {
        finding: 'Water drops or a milky film',
        odds: { 0: 'seldom', 2: 'sometimes', 10: 'often' },
        worse: ['damp', 'open', 'covered'],
      },
      { finding: 'Sludge in the pan', odds: { 10: 'sometimes', 20: 'often' } },
    ],
    test: 'An hour in a jar: two layers is water; a magnet and a lamp for metal; the nose for fuel.',
    asks: ['engine-oil'],
    tools: ['drain pan', 'glass jar', 'magnet', 'gloves'],
    fails:
      'Milky: head gasket or years of damp, pressure-test before more money. Glitter: bearings, pan off. Fuel: pump diaphragm or a stuck needle.',
    after: ['stands', 'photographs'],
    cautions: ['lifting'],
    sources: ['restorers-journal', 'repair-shop-article-2', 'classic-repair'],
  },
  {
    key: 'oil-cause',
    stage: 'drains',
    ways: [
      {
        act: 'test',
        title: 'Find why the oil is foul',
        why: 'Clean oil over the same fault is foul again in an hour.',
        when: [{ seen: { look: 'engine-oil', is: ['milky', 'glitter'] } }],
        leaves: [{ look: 'engine-oil', answer: 'cause found' }],
      },
    ],
    expects: [{ finding: 'Condensation only, in a damp place', odds: { 0: 'sometimes', 5: 'often' } }],
    test: 'Cooling system pumped to its cap’s rating for a quarter of an hour, plugs out: a wet plug hole or falling pressure is a gasket or a crack.',
    tools: ['pressure pump', 'borescope'],
    fails: 'Head or pan comes off: think of the ceiling first.',
    after: ['oil-drain'],
    cautions: ['lifting', 'hot-coolant'],
    sources: ['classic-repair', 'common-practice'],
  },
  {
    key: 'coolant-drain',
    stage: 'drains',
    traits: ['liquid-cooled'],
    ways: [
      {
        act: 'look',
        title: 'Coolant: strength and color, a jar of it',
        why: 'It tells whether the block has frozen or rusted.',
        when: [{ asleep: { under: 2 } }],
        services: ['coolant-iat', 'coolant-oat'],
      },
      {
        act: 'flush',
        title: 'Drain radiator and block, keep a jar',
        why: 'After two years asleep nothing in it protects any more.',
        when: [{ asleep: { from: 2 } }, { seen: { look: 'coolant-seen', is: ['rusty', 'oily', 'empty', 'water'] } }],
      },
    ],
    expects: [
      { finding: 'Rust in it', odds: { 0: 'seldom', 2: 'sometimes', 5: 'often' } },
      { finding: 'A block tap that is blocked with scale', odds: { 5: 'sometimes', 20: 'often' } },
    ],
    test: 'Refractometer: colder than the place by ten degrees. Stray current under 0.3 V.',
    tools: ['drain pan', 'glass jar', 'refractometer'],
    fails:
      'Oil in it: gasket or cooler. Plain water after a frost: core plugs and a cracked block are looked for first.',
    cautions: ['poison', 'hot-coolant'],
    sources: ['television-workshop-segment', 'trade-student-magazine', 'army-coolant-limits'],
  },
  {
    key: 'brake-fluid-look',
    stage: 'drains',
    traits: ['hydraulic-brakes'],
    ways: [
      {
        act: 'look',
        title: 'Brake fluid: a jar from the reservoir, a few drops from a wheel',
        why: 'Rust, crystals or gel say that the cylinders come apart.',
        when: [],
      },
    ],
    expects: [
      { finding: 'Dark fluid, rust or gel at the wheels', odds: { 0.5: 'sometimes', 2: 'often', 5: 'nearly always' } },
    ],
    test: 'Color proves nothing; grit between the fingers, gel in the reservoir or a level far down do.',
    tools: ['syringe', 'glass jar', 'gloves'],
    fails: 'Nothing is bled through old seals: the brakes stage strips or renews them.',
    cautions: ['brake-fluid'],
    sources: ['workshop-trade-press', 'marque-forum-2', 'workshop-blog-brakes'],
  },
  {
    key: 'gear-oils-look',
    stage: 'drains',
    ways: [
      {
        act: 'look',
        title: 'Gearbox and axle: level plugs open, a finger in, a jar if it is foul',
        why: 'Water in an axle pits its bearings; nobody looks there for decades.',
        when: [],
      },
    ],
    expects: [
      {
        finding: 'Water or cream in the axle',
        odds: { 2: 'seldom', 10: 'sometimes' },
        worse: ['flooded', 'open', 'damp'],
      },
    ],
    test: 'Open the filler before the drain: what can’t be filled is not drained.',
    tools: ['plug wrenches', 'glass jar'],
    fails: 'Milky or with chips: drained, flushed, drained again, and watched on the road.',
    after: ['stands'],
    cautions: ['lifting'],
    sources: ['common-practice', 'memory'],
  },
] as const satisfies readonly Step[];
