/** The walk round before a drive: what is looked at on the very day, and which parts it counts as a look at. */
import type { Verdict } from '../ageing/verdict.ts';
import type { CautionKey } from '../catalogue/cautions.ts';
import type { SourceKey } from '../catalogue/sources.ts';

export interface WalkLook {
  name: string;
  how: string;
  answers: Readonly<Record<string, { words: string; verdict: Verdict }>>;
  /** Unanswered, there is no drive at all. */
  critical?: true;
  /** Kinds it counts as a look at, for that day. */
  sees: readonly string[];
  cautions: readonly CautionKey[];
  sources: readonly SourceKey[];
}

const answers = (well: string, badly: string): WalkLook['answers'] => ({
  well: { words: well, verdict: 'good' },
  badly: { words: badly, verdict: 'act' },
});

export const WALKROUND = {
  pedal: {
    name: 'Brake pedal',
    how: 'Three strokes, then hard for half a minute or a whole one, engine running where it has a servo.',
    answers: answers('Hard, and stays', 'Sinks, spongy, or pulls'),
    critical: true,
    sees: [
      'brake-master',
      'wheel-cylinders',
      'calipers',
      'brake-lines',
      'brake-hoses',
      'brake-servo',
      'servo-hose',
      'brake-accumulator',
      'abs-unit',
    ],
    cautions: ['brake-work'],
    sources: ['part-maker-page'],
  },
  release: {
    name: 'Brakes let go',
    how: 'Pressed and let go, parking brake on and off: it rolls by hand on level ground, chocks ready.',
    answers: answers('Rolls freely at once', 'Drags, or stays on'),
    critical: true,
    sees: ['brake-hoses', 'parking-brake', 'brake-friction', 'drums-discs'],
    cautions: ['rolling'],
    sources: ['marque-specialist-blog', 'common-practice'],
  },
  fuel: {
    name: 'Fuel: smell and drips',
    how: 'Nose at the hood, the tank and the cabin; a lamp along hoses, pump and carburetor, pump running.',
    answers: answers('No smell, all dry', 'Smells or is wet'),
    critical: true,
    sees: ['fuel-hose-low', 'fuel-hose-high', 'tank-hoses', 'fuel-tank', 'lpg-tank', 'cng-tank', 'fuel-cell-bladder'],
    cautions: ['fuel-vapor'],
    sources: ['marque-club-forum', 'common-practice'],
  },
  under: {
    name: 'Levels, and what lies under it',
    how: 'Oil, coolant, brake fluid at their marks; the floor where it stood.',
    answers: answers('At their marks, floor dry or as always', 'A level fell, or a new puddle'),
    sees: ['oil-seals', 'transmission-seals'],
    cautions: ['hot-coolant'],
    sources: ['classic-insurer-magazine-3', 'common-practice'],
  },
  steering: {
    name: 'Steering and boots',
    how: 'Rocked left and right by a helper: no dead travel, no knock; boots and coupling whole.',
    answers: answers('No play, no split boot', 'Play, a knock, or a split boot'),
    critical: true,
    sees: ['steering-coupling', 'joint-boots', 'ps-hoses', 'dampers', 'flex-disc', 'wheel-bearings'],
    cautions: ['steering'],
    sources: ['common-practice'],
  },
  tires: {
    name: 'Tires, both sides, and pressures',
    how: 'Cold, by gauge; a lamp on the inner sides; no crack a thumbnail opens, no bulge, no cord.',
    answers: answers('At pressure, whole', 'Low, cracked, bulged or cord to be seen'),
    critical: true,
    sees: ['valve-stems'],
    cautions: ['tire-fitting'],
    sources: ['collector-car-journal-article', 'tire-maker-common-text'],
  },
  nuts: {
    name: 'Wheel nuts or spinners',
    how: 'By wrench, cold; after a wheel was off by torque wrench.',
    answers: answers('Tight', 'One turned, or a stud is bad'),
    sees: ['wheel-fasteners'],
    cautions: ['wheel-nuts'],
    sources: ['wheel-fastener-guides'],
  },
  lamps: {
    name: 'Lamps, brake lights, horn',
    how: 'Walk round with a helper at the pedal and the switches.',
    answers: answers('All work', 'One is out'),
    critical: true,
    sees: ['lamps', 'brake-light-switch', 'wiring'],
    cautions: ['electrical'],
    sources: ['classic-insurer-magazine-3', 'common-practice'],
  },
  belts: {
    name: 'Seat belts',
    how: 'Full length out, no fray; a sharp pull locks. A car that never had any: they count as well.',
    answers: answers('Hold and let go, or none were ever fitted', 'Frayed, slow, or loose'),
    critical: true,
    sees: ['seat-belts', 'airbags'],
    cautions: ['webbing'],
    sources: ['child-seat-technicians', 'common-practice'],
  },
  sight: {
    name: 'Wipers, glass, mirrors, exhaust',
    how: 'Wipers wipe, the hood latches, the exhaust sounds tight and nothing of it comes inside.',
    answers: answers('As they should', 'Something does not'),
    sees: ['wipers', 'exhaust'],
    cautions: ['carbon-monoxide'],
    sources: ['parts-maker-faq', 'common-practice'],
  },
} as const satisfies Readonly<Record<string, WalkLook>>;
export type WalkKey = keyof typeof WALKROUND;
export const WALK_KEYS = Object.keys(WALKROUND) as WalkKey[];
export const walkLook = (key: WalkKey): WalkLook => WALKROUND[key];

/** A walk round as it was made, on its day. */
export interface Walkround {
  answers: Readonly<Partial<Record<WalkKey, string>>>;
  by: string;
}
