/** Sources of the plans: putting a car away, looking after it while it stands, waking it. */
import type { Source } from './grades.ts';

export const STORAGE_SOURCES = {
  'tb-740-97-4': {
    grade: 'authority',
    title:
      'US Army TB 740-97-4 paragraphs 28 to 40, 70 to 74, 100 to 102: preserving engines by displacement, tanks, belts, brakes; tags',
  },
  'army-storage-manuals': {
    grade: 'authority',
    title:
      'US Army TM 5-3805-264-13&P and TM 9-2330 series: service and mend first, clean, cover with air below; look weekly in the open, monthly under cover',
  },
  'army-exercise-manuals': {
    grade: 'authority',
    title:
      'US Army TM 9-2330-267-14&P and TM 9-6115-464-12: driving 40 km, running until the coolant has held 71 °C for half an hour',
  },
  'mil-hdbk-1130': {
    grade: 'authority',
    title: 'MIL-HDBK-1130 paragraph 2.2.3: the whole fuel system drained and dried, a tag with the date',
  },
  'tm-38-260': { grade: 'authority', title: 'TM 38-260 paragraph 5-6: at most 50 percent humidity keeps machines' },
  'army-leak-classes': {
    grade: 'authority',
    title:
      'US Army TM 5-5420-227-24 2-7: leak classes I to III; any fuel leak in the engine compartment is mended first',
  },
  'extension-winter-storage': {
    grade: 'authority',
    title: 'University extension text on winter storage (January 2024): changing weather harms more than cold itself',
  },
  'tire-maker-care': {
    grade: 'authority',
    title: 'Tire maker’s care page: storing tires on the vehicle (weight, movement, pressure, ozone)',
  },
  'tire-maker-care-2': {
    grade: 'authority',
    title: 'Second tire maker’s care page: storage on the vehicle, monthly movement, reset pressure',
  },
  'tire-maker-letter': {
    grade: 'owners',
    title: 'Marque forum relaying a tire maker’s letter: ozone sources, pressure of mounted wheels in storage',
  },
  'restoration-writer': { grade: 'trade', title: 'Restoration writer: seasonal calendar, plus 10 psi' },
  'car-dealer-tips': { grade: 'trade', title: 'Car-dealer tips: 45 to 50 psi for storage' },
  'classic-dealer-storage': {
    grade: 'trade',
    title: 'Classic dealer’s storage advice: breathable cover, dry air, the debate on the tank',
  },
  'mailing-list-storage': {
    grade: 'owners',
    title: 'Mailing-list post: hanging suspension twists bushings; do not start it',
  },
  'workshop-blog-brakes': {
    grade: 'trade',
    title: 'Classic workshop blog: brakes are the costliest system after dormancy; leave the parking brake off',
  },
  'phone-in-parking-brake': {
    grade: 'trade',
    title: 'Radio phone-in: parking brake rusted solid after three cold months',
  },
  'household-stabilizer-guide': { grade: 'trade', title: 'Household guide: dose the tank, run ten minutes' },
  'do-it-yourself-stabilizer-guide': {
    grade: 'trade',
    title: 'Do-it-yourself guide: dose a day or two early, five minutes usually enough',
  },
  'storage-explainer-fuel': {
    grade: 'explainer',
    title: 'Storage explainer: full for six months or less, empty for longer',
  },
  'fuel-chemists-quoted': {
    grade: 'trade',
    title: 'Fuel chemists quoted on a club forum: winter octane loss is small, near-empty tanks draw water',
  },
  'restorers-journal': { grade: 'trade', title: 'Restorers’ journal Q&A: waking a vehicle after twenty years' },
  'idling-explainer': { grade: 'explainer', title: 'Explainer: monthly idling is a harmful habit' },
  'off-road-notice-texts': {
    grade: 'authority',
    title: 'UK newspaper and specialist insurer: off-road notification for classics',
  },
  'insurer-case-note': {
    grade: 'trade',
    title: 'UK insurer case note: laid-up cover without the off-road notice triggered a warning',
  },
  'storage-cover-explainers': {
    grade: 'explainer',
    title: 'US explainers: comprehensive-only storage cover and registration status',
  },
  'agreed-value-photographs': {
    grade: 'trade',
    title: 'Valuation specialist: agreed value and the photographs it needs',
  },
  'first-start-outdoors': {
    grade: 'trade',
    title: 'Restoration shop: roll it outside for the first start, fuel-leak fire risk',
  },
  'fluid-forum-post': { grade: 'owners', title: 'Forum glossary post: properties of DOT 3, 4 and 5' },
} as const satisfies Readonly<Record<string, Source>>;
