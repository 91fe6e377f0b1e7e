import type { Step } from '../step.ts';

export const PAPERS = [
  {
    key: 'title',
    stage: 'papers',
    ways: [
      {
        act: 'look',
        title: 'Title, numbers, off-road notice',
        why: 'No money goes into a car that is not clearly yours, or that carries another car’s numbers.',
        when: [],
      },
    ],
    expects: [
      { finding: 'Papers in a former owner’s name', odds: { 0: 'seldom', 2: 'sometimes', 10: 'often' } },
      { finding: 'A notice or tax that ran out unseen', odds: { 0.5: 'sometimes', 5: 'often' } },
    ],
    test: 'Number on the body, on the plate and in the papers: all three the same.',
    asks: ['title'],
    tools: ['lamp', 'camera'],
    fails: 'Missing or wrong papers stop everything: ask the registry what it takes before anything is bought.',
    cautions: [],
    sources: ['antique-car-forum', 'off-road-notice-texts', 'common-practice'],
  },
  {
    key: 'story',
    stage: 'papers',
    ways: [
      {
        act: 'look',
        title: 'Its story: when, why, running or not, whose work last',
        why: 'A car parked for a fault still has it. “Ran when parked” is not a test.',
        when: [],
      },
      {
        act: 'test',
        title: 'Find the fault it was parked for before anything else is bought',
        why: 'What stopped it then stops it again, and can decide whether it is worth waking.',
        when: [{ why: ['fault', 'apart'] }],
      },
    ],
    expects: [
      { finding: 'The reason it was parked is still there', odds: { 0.5: 'often' } },
      { finding: 'Invoices that name parts and dates', odds: { 0: 'often', 5: 'sometimes', 20: 'seldom' } },
    ],
    test: null,
    tools: ['telephone', 'folder for papers'],
    fails: 'Nobody knows: write that down. Then every part counts as old as it can be.',
    after: ['title'],
    cautions: [],
    sources: ['television-workshop-segment-2', 'newspaper-motor-column', 'buyer-column'],
  },
  {
    key: 'transport',
    stage: 'papers',
    ways: [
      {
        act: 'do',
        title: 'Bring it to where it will be worked on: on a trailer, never towed on its wheels',
        why: 'Old tires, stuck brakes and a dry gearbox are no company on a road.',
        when: [{ asleep: { from: 2 } }],
        jobs: ['transport'],
      },
    ],
    expects: [
      { finding: 'A wheel that does not turn', odds: { 0.5: 'sometimes', 5: 'often' }, worse: ['damp', 'open'] },
    ],
    test: null,
    tools: ['trailer with a winch', 'straps over the wheels', 'skates for stuck wheels'],
    fails: 'A wheel that is stuck is skated or lifted: dragging tears drums, joints and tires.',
    after: ['title'],
    cautions: ['rolling', 'lifting'],
    sources: ['common-practice'],
  },
] as const satisfies readonly Step[];
