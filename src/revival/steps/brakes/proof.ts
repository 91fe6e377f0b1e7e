/** Brakes: rods, parking brake, and the proof at rest. */
import type { Step } from '../../step.ts';
import { DAMP } from './signs.ts';

export const PROOF = [
  {
    key: 'brake-rods',
    stage: 'brakes',
    traits: ['cable-brakes'],
    ways: [
      {
        act: 'strip',
        title: 'Brake rods, cables and pivots freed, greased, adjusted evenly',
        why: 'A pivot that rusted takes one wheel out of four.',
        when: [],
        jobs: ['parking-brake'],
        supplies: ['grease'],
      },
    ],
    expects: [{ finding: 'Seized pivots, frayed cables', odds: { 0.5: 'sometimes', 5: 'often' }, worse: DAMP }],
    test: 'All wheels begin to drag at the same mark of the pedal, and all let go.',
    tools: ['penetrating oil', 'grease', 'wrenches'],
    fails: 'A frayed cable or worn clevis is renewed.',
    safety: true,
    after: ['linings'],
    cautions: ['brake-work', 'lifting'],
    sources: ['owner-handbooks', 'common-practice'],
  },
  {
    key: 'parking-brake',
    stage: 'brakes',
    ways: [
      {
        act: 'test',
        title: 'Parking brake: freed, tried ten times',
        why: 'It was left on, or its cables rusted where they sag.',
        when: [],
        services: ['parking-brake'],
        jobs: ['parking-brake'],
      },
      {
        act: 'renew',
        title: 'Parking brake cables and levers renewed',
        why: 'They stick or do not hold.',
        when: [{ asleep: { from: 20 } }, { seen: { look: 'parking-brake', is: ['weak', 'sticks'] } }],
        jobs: ['parking-brake'],
        supplies: ['parking-brake'],
        renews: ['parking-brake'],
      },
    ],
    expects: [{ finding: 'A cable that sticks', odds: { 0: 'sometimes', 0.5: 'often' }, worse: DAMP }],
    test: 'Holds on a slope both ways, and each wheel spins the moment it is let off.',
    asks: ['parking-brake'],
    tools: ['penetrating oil', 'wrenches'],
    fails: 'Cable, lever and pivot in turn.',
    safety: true,
    after: ['linings'],
    cautions: ['rolling', 'brake-work'],
    sources: ['phone-in-parking-brake', 'marque-forum-3'],
  },
  {
    key: 'brakes-proved',
    stage: 'brakes',
    ways: [
      {
        act: 'test',
        title: 'Brakes proved at rest: a hard minute, every wheel free, dry after a day',
        why: 'A good pedal alone proves nothing; cylinders leak days later.',
        when: [],
      },
    ],
    expects: [{ finding: 'A weep that shows the next day', odds: { 0.5: 'seldom', 2: 'sometimes', 5: 'often' } }],
    test: 'Hard for sixty seconds; each wheel spins at once when the pedal is let go; white cloth dry after 24 hours.',
    asks: ['pedal', 'release', 'weep'],
    tools: ['helper', 'white cloth', 'stands'],
    fails: 'Sinks: master. Drags: hoses. Weeps: that cylinder and its twin.',
    safety: true,
    after: ['brake-fluid', 'silicone-fluid', 'mineral-fluid', 'brake-rods', 'parking-brake', 'brake-special'],
    cautions: ['brake-work', 'lifting'],
    sources: ['part-maker-page', 'marque-club-technical-note', 'common-practice'],
  },
] as const satisfies readonly Step[];
