import type { Step } from '../step.ts';

export const STRUCTURE = [
  {
    key: 'probe',
    stage: 'structure',
    ways: [
      {
        act: 'test',
        title: 'Probe sills, floors, jacking points, mounts of springs and subframe',
        why: 'It is about to stand on these points with people under it.',
        when: [],
      },
    ],
    expects: [
      {
        finding: 'Soft sills, floors or jacking points',
        odds: { 0: 'seldom', 2: 'sometimes', 10: 'often' },
        worse: ['damp', 'open', 'coast', 'flooded'],
      },
    ],
    test: 'A blunt screwdriver pushed hard: sound metal rings and gives nothing; a jacking point bears the car without creaking.',
    asks: ['structure'],
    tools: ['blunt screwdriver', 'lamp', 'hammer for sounding'],
    fails:
      'Weak places are welded by somebody trained before it is lifted there. A structure that fails ends it, or makes it another project.',
    safety: true,
    after: ['photographs'],
    cautions: ['lifting', 'dust'],
    sources: ['uk-restoration-shop', 'common-practice'],
  },
  {
    key: 'weld',
    stage: 'structure',
    ways: [
      {
        act: 'do',
        title: 'Weak structure put right by a welder who certifies it',
        why: 'Everything that follows hangs on it.',
        when: [{ seen: { look: 'structure', is: ['weak', 'fails'] } }],
        jobs: ['weld'],
        leaves: [{ look: 'structure', answer: 'surface rust' }],
      },
    ],
    expects: [{ finding: 'More behind it than could be seen', odds: { 0: 'often' } }],
    test: 'Probed again afterwards, all round the repair.',
    tools: [],
    fails: 'Then the car is for parts, or for a body shop and a new ceiling.',
    safety: true,
    after: ['probe'],
    cautions: ['lifting', 'fuel-vapor', 'dust'],
    sources: ['common-practice'],
  },
  {
    key: 'pipe-runs',
    stage: 'structure',
    ways: [
      {
        act: 'look',
        title: 'Follow brake and fuel pipes along their whole length',
        why: 'They rust where clips hold water, and burst at the first hard stop.',
        when: [],
      },
    ],
    expects: [
      {
        finding: 'Scaled brake pipes over the axle or behind the tank',
        odds: { 0: 'seldom', 5: 'sometimes', 10: 'often' },
        worse: ['coast', 'open', 'damp', 'flooded'],
      },
    ],
    test: 'Wiped clean, a fingernail run along: rust that wipes off is a film, a pit or a flake is a new pipe.',
    asks: ['brake-pipes'],
    tools: ['lamp', 'mirror', 'wire wool'],
    fails: 'Scaled: renew the whole run, not the spot.',
    safety: true,
    after: ['probe'],
    cautions: ['lifting'],
    sources: ['us-road-safety-agency', 'nhtsa-2008-advisory', 'common-practice'],
  },
  {
    key: 'brake-pipes-renew',
    stage: 'structure',
    without: ['cable-brakes'],
    ways: [
      {
        act: 'renew',
        title: 'Renew the brake pipes',
        why: 'A scaled pipe holds in the garage and bursts in the first emergency.',
        when: [{ seen: { look: 'brake-pipes', is: ['scaled'] } }],
        jobs: ['brake-pipes'],
        supplies: ['brake-pipes'],
        renews: ['brake-lines'],
        leaves: [{ look: 'brake-pipes', answer: 'clean' }],
      },
    ],
    expects: [{ finding: 'Unions that shear instead of turning', odds: { 5: 'often' } }],
    test: 'Filled later, pedal held hard for a minute: every union dry.',
    tools: ['flaring tool', 'flare-nut wrenches', 'pipe bender'],
    fails: 'A union that won’t seal is cut and flared anew, never sealed with paste.',
    safety: true,
    after: ['pipe-runs'],
    cautions: ['brake-work', 'brake-fluid', 'lifting'],
    sources: ['us-road-safety-agency', 'common-practice'],
  },
] as const satisfies readonly Step[];
