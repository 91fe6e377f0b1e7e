/** Where the trade disagrees: both sides, what speaks for them, and the side taken until the owner takes another. */
import type { SourceKey } from '../catalogue/sources.ts';
import type { When } from './conditions.ts';

export interface Topic {
  name: string;
  /** The sides, each with what its friends say. */
  sides: Readonly<Record<string, { name: string; says: string }>>;
  /** The first whose conditions hold; the last one has none. */
  defaults: readonly { side: string; when: readonly When[] }[];
  evidence: string;
  sources: readonly SourceKey[];
}

export const TOPICS = {
  running: {
    name: 'Run the engine while it stands?',
    sides: {
      rest: {
        name: 'Leave it alone',
        says: 'Every cold start adds fuel, water and acids; a short idle heats nothing.',
      },
      drive: {
        name: 'Drive it hot once a month',
        says: 'A drive of 25 km or more, until everything is hot, keeps seals, brakes and battery working.',
      },
    },
    defaults: [{ side: 'rest', when: [] }],
    evidence:
      'Exercise manuals ask for a real drive: coolant at 71 °C and half an hour more. Preserved cars are left alone. A short idle is in neither camp.',
    sources: ['collector-car-journal-2', 'idling-explainer', 'army-exercise-manuals', 'uk-classic-magazine-workshop'],
  },
  tank: {
    name: 'Full tank or empty?',
    sides: {
      full: {
        name: 'Full and treated',
        says: 'Less air over the fuel, less loss, less water, less rust above the line.',
      },
      'ethanol-free': {
        name: 'Full of fuel without ethanol, treated',
        says: 'As full, and it keeps about twice as long as E10.',
      },
      drained: { name: 'Drained', says: 'Nothing is in it that could go bad; a steel tank must be oiled or it rusts.' },
    },
    defaults: [
      { side: 'full', when: [{ side: { topic: 'running', is: ['drive'] } }] },
      { side: 'drained', when: [{ traits: ['gasoline'], months: { from: 24 } }] },
      // Its light ends leave through an open vent, and no stabilizer holds them for a year.
      {
        side: 'drained',
        when: [{ traits: ['gasoline', 'carburetor'], without: ['evap-system'], months: { from: 12 } }],
      },
      { side: 'ethanol-free', when: [{ traits: ['gasoline'], months: { from: 6 } }] },
      { side: 'full', when: [] },
    ],
    evidence:
      'Full and treated up to about six months; then without ethanol, or drained; past 24 months, or 12 with a carburetor whose tank breathes freely, drained and oiled, as military long storage does. Claims of 24 months for a stabilizer are for fuel without ethanol; with E10 count on 6 to 12. Air alone hardly separates E10 in a full tank within a winter: a near-empty tank, rain or a bad cap does.',
    sources: ['fuel-chemists-quoted', 'storage-explainer-fuel', 'trade-magazine', 'tb-740-97-4', 'common-practice'],
  },
  weight: {
    name: 'On its wheels or on stands?',
    sides: {
      wheels: { name: 'On its wheels', says: 'Suspension stays as it works; hanging twists its bonded bushings.' },
      stands: { name: 'On stands at ride height', says: 'No flat spots and no creep in the tires.' },
    },
    defaults: [
      { side: 'wheels', when: [{ circumstances: ['lift'] }, { side: { topic: 'running', is: ['drive'] } }] },
      { side: 'stands', when: [{ months: { from: 12 } }] },
      { side: 'wheels', when: [] },
    ],
    evidence:
      'A winter on well-filled tires is borne. For a year and more take the weight off, with stands under the suspension and not the body, so that nothing hangs.',
    sources: ['manual-publisher-tips', 'tire-maker-care', 'mailing-list-storage', 'army-tire-manual'],
  },
  pressure: {
    name: 'How much air in the tires?',
    sides: {
      raised: { name: 'Raised', says: 'Half a bar, or 10 to 15 psi, more: the tire keeps its shape.' },
      placard: { name: 'As on the placard', says: 'Do not overinflate; move the car instead.' },
      sidewall: {
        name: 'The sidewall’s maximum',
        says: 'Only where its tire maker says so, as one does for high-performance tires.',
      },
    },
    defaults: [
      { side: 'placard', when: [{ side: { topic: 'running', is: ['drive'] } }] },
      { side: 'raised', when: [] },
    ],
    evidence:
      'Texts name +0.5 bar, +10 to 15 psi, 40 psi, 45 to 50 psi, the sidewall’s maximum, or the placard. Taken here: 0.7 to 1 bar more, never above nine tenths of the sidewall’s maximum, measured cold, and let down again before driving.',
    sources: [
      'tire-maker-care',
      'classic-workshop-essay',
      'restoration-writer',
      'car-dealer-tips',
      'vehicle-storage-bulletin',
      'memory',
    ],
  },
  oil: {
    name: 'Engine oil before or after?',
    sides: {
      before: { name: 'Before it stands', says: 'Old acids and water do not stand in the bearings all winter.' },
      after: { name: 'In spring', says: 'Moisture that gathered meanwhile goes out with it.' },
    },
    defaults: [{ side: 'before', when: [] }],
    evidence: 'Before; in spring again only after a year or more, or where it was started for short whiles.',
    sources: ['restoration-writer', 'classic-insurer-magazine-4', 'restorers-journal'],
  },
  battery: {
    name: 'What becomes of the battery?',
    sides: {
      maintainer: { name: 'On a maintainer', says: 'Full and ready all winter, under an eye once a month.' },
      isolator: { name: 'Disconnected, in the car', says: 'No live charger, no drain: it loses by itself only.' },
      out: { name: 'Taken out', says: 'Charged, indoors, off the floor: no mains in the car and no frost.' },
      connected: { name: 'Left as it is', says: 'For a few weeks, where its measured drain is small.' },
    },
    defaults: [
      { side: 'isolator', when: [{ traits: ['battery-lithium'] }] },
      { side: 'out', when: [{ circumstances: ['rented-bay'] }] },
      { side: 'isolator', when: [{ circumstances: ['lift'], battery: 'holds by itself' }] },
      { side: 'out', when: [{ circumstances: ['lift'] }, { place: ['heat'], months: { from: 1 } }] },
      { side: 'connected', when: [{ months: { under: 3 }, battery: 'holds as it is' }] },
      { side: 'isolator', when: [{ circumstances: ['no-mains', 'unwatched'], battery: 'holds by itself' }] },
      { side: 'out', when: [{ circumstances: ['no-mains', 'unwatched'] }] },
      { side: 'maintainer', when: [] },
    ],
    evidence:
      'A smart maintainer that fits the battery, with an isolator and a monthly look, is usual; unattended mains are a fire risk, and many rented bays forbid them. Disconnected, a sound charged battery holds for months; a connected one may be flat within weeks.',
    sources: ['classic-workshop-essay', 'occupational-safety-agency', 'army-recharge-rule', 'standing-drain-bulletin'],
  },
  cover: {
    name: 'Cover or none?',
    sides: {
      cover: { name: 'A breathable cover', says: 'Keeps dust and bird lime off.' },
      none: { name: 'None', says: 'A cover traps damp, and grinds dust into paint where wind moves it.' },
    },
    defaults: [{ side: 'cover', when: [] }],
    evidence:
      'Breathable, on a clean dry car. Outdoors only one that breathes and sheds rain, held off the paint; never plastic sheet.',
    sources: ['classic-dealer-storage', 'army-storage-manuals', 'common-practice'],
  },
  windows: {
    name: 'Windows shut or a finger open?',
    sides: {
      shut: { name: 'Shut', says: 'Mice and damp stay out; a desiccant works in closed air only.' },
      open: { name: 'A finger open', says: 'Closed cars get musty; 5 to 10 mm air them.' },
    },
    defaults: [{ side: 'shut', when: [] }],
    evidence: 'Open only in a dry room that no mouse gets into; otherwise shut.',
    sources: ['classic-dealer-storage', 'common-practice'],
  },
  repellents: {
    name: 'What keeps mice away?',
    sides: {
      traps: { name: 'Closed holes, traps, no food', says: 'What cannot get in or eat does not stay.' },
      scents: { name: 'Scents as well', says: 'Mint, soap and dryer sheets are cheap and harm nothing.' },
    },
    defaults: [{ side: 'traps', when: [] }],
    evidence: 'No evidence was found for any scent; mothballs are toxic and the smell stays. Look every month.',
    sources: ['collected-owner-tips'],
  },
  pedal: {
    name: 'Press the brake pedal on each round?',
    sides: {
      press: { name: 'Press it, three strokes', says: 'Seals are moved and do not stick.' },
      leave: { name: 'Leave it', says: 'Seals are pushed over whatever has settled in the bore.' },
    },
    defaults: [
      { side: 'leave', when: [{ part: { kinds: ['brake-fluid-glycol'], asks: 'at parking' } }] },
      { side: 'press', when: [] },
    ],
    evidence: 'Disputed; usually taken as fine where the fluid is fresh, and better left where it is old or undated.',
    sources: ['memory'],
  },
  silicone: {
    name: 'Silicone brake fluid: keep it?',
    sides: {
      keep: { name: 'Keep it', says: 'It takes up no water and spares paint.' },
      glycol: {
        name: 'Back to glycol, by a workshop',
        says: 'Water that gets in pools at the lowest point and rusts it.',
      },
    },
    defaults: [{ side: 'keep', when: [] }],
    evidence:
      'Fine in a system that was wholly rebuilt for it; seized calipers were seen where water had pooled. Label the reservoir. Never with anti-lock brakes.',
    sources: ['fluid-forum-post', 'marque-forum-2'],
  },
} as const satisfies Readonly<Record<string, Topic>>;
export type TopicKey = keyof typeof TOPICS;

export const isTopic = (key: string): key is TopicKey => Object.hasOwn(TOPICS, key);
