import type { Step } from '../step.ts';

export const EVIDENCE = [
  {
    key: 'photographs',
    stage: 'evidence',
    ways: [
      {
        act: 'do',
        title: 'Photograph it as found: all sides, underneath, inside, engine, tags, odometer',
        why: 'Dust, stickers and leaks tell its history until somebody cleans them off.',
        when: [],
        jobs: ['survey'],
      },
    ],
    expects: [{ finding: 'Service tags and dates on filters, hoses, door posts', odds: { 0: 'often' } }],
    test: null,
    tools: ['camera', 'lamp', 'rule or coin for scale'],
    fails: 'What was cleaned before it was photographed can’t be told any more.',
    cautions: [],
    sources: ['agreed-value-photographs', 'antique-car-forum', 'common-practice'],
  },
  {
    key: 'tire-codes',
    stage: 'evidence',
    ways: [
      {
        act: 'look',
        title: 'Read the codes of all five tires, inner sides too',
        why: 'They date the last care it had, and say at once that a set is due. Tread tells nothing of age.',
        when: [],
      },
    ],
    expects: [
      { finding: 'Tires over ten years', odds: { 0: 'sometimes', 5: 'often', 10: 'nearly always' } },
      { finding: 'A spare older than all the others', odds: { 0: 'often' } },
    ],
    test: 'Last four digits: week and year. Three digits: before 2000, the decade is to be found out.',
    tools: ['wire brush', 'cloth', 'lamp', 'mirror'],
    fails: 'No code found on either side: the tire counts as old as it can be.',
    after: ['photographs'],
    cautions: [],
    sources: ['49-cfr-574-5', 'tire-retailer-guide', 'collector-car-journal-article'],
  },
  {
    key: 'missing',
    stage: 'evidence',
    ways: [
      {
        act: 'look',
        title: 'List what is missing, and bag what lies loose',
        why: 'A small part that is no longer made costs more than a tank.',
        when: [],
      },
    ],
    expects: [
      { finding: 'Trim, air cleaner or small fittings missing', odds: { 0: 'seldom', 5: 'sometimes', 10: 'often' } },
    ],
    test: null,
    tools: ['bags', 'labels'],
    fails: 'Order or search now: some parts take months.',
    after: ['photographs'],
    cautions: [],
    sources: ['common-practice'],
  },
] as const satisfies readonly Step[];
