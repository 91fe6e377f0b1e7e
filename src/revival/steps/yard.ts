import type { Step } from '../step.ts';

export const YARD = [
  {
    key: 'slope',
    stage: 'yard',
    ways: [
      {
        act: 'test',
        title: 'Parking brake on a slope, both ways, a chock a hand behind the wheel',
        why: 'It is the only other brake.',
        when: [],
      },
    ],
    expects: [],
    test: 'Holds a minute each way, and frees at once.',
    tools: ['chocks', 'helper'],
    fails: 'Back to its cables.',
    safety: true,
    after: ['parking-brake'],
    cautions: ['rolling'],
    sources: ['common-practice'],
  },
  {
    key: 'run-a',
    stage: 'yard',
    ways: [
      {
        act: 'test',
        title: 'Road test A: twenty meters in the yard, five stops',
        why: 'Its first meters are walked: brakes, steering and clutch are met at a pace anybody can stop.',
        when: [],
      },
    ],
    expects: [{ finding: 'A brake that drags or pulls', odds: { 0.5: 'sometimes', 5: 'often' } }],
    test: 'All hubs within 15 °C of each other; it stops straight; gauges where they belong.',
    tools: ['infrared thermometer', 'road-test card', 'phone'],
    fails: 'Stopped: towed home, the cause found, and this run again.',
    safety: true,
    run: 'a',
    after: ['brakes-proved', 'steering-proved', 'drive-proved', 'wheel-nuts'],
    cautions: ['brake-work', 'steering', 'hot-work'],
    sources: ['marque-parts-magazine', 'antique-car-forum', 'common-practice'],
  },
] as const satisfies readonly Step[];
