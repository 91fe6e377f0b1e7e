import type { Step } from '../step.ts';

export const PRE_OIL = [
  {
    key: 'pan-off',
    stage: 'pre-oil',
    ways: [
      {
        act: 'strip',
        title: 'Oil pan off, pickup and pan washed out',
        why: 'Sludge half an inch deep is sucked into the pickup with the first oil.',
        when: [{ asleep: { from: 20 } }, { seen: { look: 'engine-oil', is: ['thick sludge', 'glitter'] } }],
        jobs: ['oil-pan'],
        supplies: ['seals'],
      },
    ],
    expects: [{ finding: 'Sludge on the pickup', odds: { 10: 'sometimes', 20: 'often' } }],
    test: 'A bearing cap taken down if the oil glittered: copper showing is worn through.',
    tools: ['wrenches', 'drain pan', 'torque wrench'],
    fails: 'Bearings gone: engine out, decision first.',
    after: ['oil-drain', 'turn-by-hand'],
    cautions: ['lifting'],
    sources: ['classic-repair', 'restorers-journal'],
  },
  {
    key: 'oil-fresh',
    stage: 'pre-oil',
    ways: [
      {
        act: 'renew',
        title: 'New engine oil and filter, before it is started',
        why: 'What stood in it is acid and water; oil’s age counts, not its miles.',
        when: [{ asleep: { from: 0.5 } }, { part: { kinds: ['engine-oil'], asks: true } }],
        jobs: ['oil-change'],
        supplies: ['engine-oil'],
        renews: ['engine-oil', 'oil-filter'],
      },
    ],
    expects: [{ finding: 'A filter whose seal stays on the engine', odds: { 2: 'sometimes', 10: 'often' } }],
    test: 'Level at the upper mark, filter filled before it goes on where it hangs.',
    tools: ['filter wrench', 'drain pan'],
    fails: 'It rises or falls by the next day: look for fuel or water again.',
    after: ['oil-drain', 'pan-off', 'oil-cause'],
    cautions: ['lifting'],
    sources: ['repair-shop-article-2', 'restorers-journal', 'uk-engineering-firm'],
  },
  {
    key: 'pre-oil',
    stage: 'pre-oil',
    ways: [
      {
        act: 'test',
        title: 'Oil to the bearings before any spark: plugs out, bursts of ten seconds',
        why: 'Bearings that stood are dry, and the first seconds wear more than a year.',
        when: [],
      },
    ],
    expects: [{ finding: 'Pressure only after several bursts', odds: { 0: 'seldom', 2: 'sometimes', 10: 'often' } }],
    test: 'Gauge or lamp within a minute of cranking in all, or oil at the rockers. A diesel with its fuel shut off.',
    asks: ['pre-oil'],
    tools: ['starter supply with a fuse', 'or a drive for the oil pump'],
    fails: 'None: prime the pump through its gallery, then pickup and relief valve.',
    after: ['turn-by-hand', 'valves-move', 'oil-fresh', 'timing-belt', 'soak'],
    cautions: ['hydraulic-lock', 'electrical', 'fan-and-belts'],
    sources: ['restorers-journal', 'classic-repair', 'common-practice'],
  },
] as const satisfies readonly Step[];
