/** Where every figure comes from: one list, told by kind of text, never by brand or person. */
import type { Source } from './grades.ts';
import { MODEL_SOURCES } from './model-sources.ts';
import { STORAGE_SOURCES } from './storage-sources.ts';

export const SOURCES = {
  'common-practice': { grade: 'practice', title: 'No single source: what the trade does' },
  memory: { grade: 'memory', title: 'No text for it was seen here' },
  '49-cfr-574-5': {
    grade: 'regulation',
    title: '49 CFR 574.5, tire identification number: week and year of manufacture',
  },
  '49-cfr-571-106': {
    grade: 'regulation',
    title: '49 CFR 571.106 (FMVSS 106), brake hose labels: month, day and year or month and year',
  },
  '49-cfr-571-116': {
    grade: 'regulation',
    title: '49 CFR 571.116 (FMVSS 116), motor vehicle brake fluids: boiling points, viscosity, color, container label',
  },
  '49-cfr-571-304': {
    grade: 'regulation',
    title: '49 CFR 571.304 (FMVSS 304), CNG container inspection label, as summarized',
  },
  'iso-4925': { grade: 'standard', title: 'ISO 4925, brake fluid classes (from memory)' },
  'nfpa-10': { grade: 'standard', title: 'NFPA 10, portable fire extinguishers, as summarized by service firms' },
  'fia-8853-98': { grade: 'standard', title: 'FIA 8853/98 harness label, as described in a technical bulletin' },
  'sfi-16-1': { grade: 'standard', title: 'SFI 16.1 and 16.5 harness label, as described in a technical bulletin' },
  'fia-appendix-j-253': { grade: 'standard', title: 'FIA Appendix J article 253, fuel cell bladder life' },
  'ece-r67-01': {
    grade: 'standard',
    title: 'UN ECE R67-01, LPG tank plate and national life limits, from workshop pages',
  },
  'nhtsa-2008-advisory': {
    grade: 'authority',
    title: 'NHTSA consumer advisory, 2 June 2008: tire ages from six to ten years',
  },
  'trrl-lr903': { grade: 'authority', title: 'TRRL report LR903: water in brake fluid of 1,000 cars (abstract)' },
  'owner-handbooks': {
    grade: 'authority',
    title: 'Two owner handbooks: all tires including the spare after six, and after ten, years from manufacture',
  },
  jatma: { grade: 'authority', title: 'Japanese tire association: inspect after 5 years, replace after 10' },
  'tire-maker-common-text': {
    grade: 'authority',
    title: 'Tire makers’ common text: yearly inspection after five years in use, ten years from manufacture',
  },
  'repair-association-table': {
    grade: 'authority',
    title: 'US repair-trade association inspection table: 200 ppm copper, fluid color',
  },
  'child-seat-association': {
    grade: 'authority',
    title: 'Child-seat trade association: six years where nothing is marked, from a university page',
  },
  'dtic-ad1112055': { grade: 'authority', title: 'DTIC AD1112055, coolant service life' },
  'trade-pages-parts': { grade: 'trade', title: 'Trade, club and workshop pages on dated parts: hoses, belts, tanks' },
  'tire-retailer-guide': {
    grade: 'trade',
    title:
      'Tire-retailer guide: is your classic’s set too old for another year (4- and 3-digit codes, six and ten years)',
  },
  'collector-car-journal-article': {
    grade: 'trade',
    title: 'Collector-car journal article: tires might look safe, beware as the years go by',
  },
  'general-interest-magazine': {
    grade: 'trade',
    title: 'General-interest magazine: how old are your tires (six and ten years, hot dry climates)',
  },
  'marque-forum-sticky': {
    grade: 'owners',
    title: 'Marque forum sticky: replace any tire over seven years; bend-test the valve stems',
  },
  'news-agency': {
    grade: 'authority',
    title: 'News agency with a German inspection body: swap classic-car tires at ten years at the latest, 3 mm tread',
  },
  'marque-forum': { grade: 'owners', title: 'Marque forum: hardness-meter readings on tires of known age' },
  'oil-and-tire-forum': {
    grade: 'owners',
    title: 'Oil-and-tire forum: do tires harden with age, meter readings and temperature',
  },
  'question-and-answer-pages': {
    grade: 'explainer',
    title: 'Question-and-answer pages: rubber valve stems last three to five years',
  },
  'tire-guides': { grade: 'explainer', title: 'Tire guides: sealant bottle shelf life about four years' },
  'wheel-fastener-guides': { grade: 'explainer', title: 'Wheel-fastener guides: re-torque after 50 to 100 miles' },
  'repair-shop-faq': {
    grade: 'trade',
    title: 'Repair-shop FAQ: when to change brake fluid (two years, 200 ppm copper)',
  },
  'workshop-trade-press': {
    grade: 'trade',
    title: 'Workshop trade press: brake-fluid testing (color is no guide, copper, corrosion)',
  },
  'lubricant-supplier-page': {
    grade: 'trade',
    title: 'Lubricant supplier page: DOT 3/4/5.1 dry and wet boiling points',
  },
  'uk-classic-guide': {
    grade: 'trade',
    title: 'UK classic guide: brake-fluid ratings, silicone versus conventional, bleeding',
  },
  'marque-forum-2': {
    grade: 'owners',
    title: 'Marque forum: water pooling in a silicone-filled system, seized calipers after two to three years',
  },
  'driving-tips-page': {
    grade: 'explainer',
    title: 'Driving-tips page: about 3 percent water in 18 months cuts the boiling point by about 100 F',
  },
  'restoration-club-lesson': {
    grade: 'trade',
    title: 'Restoration-club lesson: flex brake line inspection at least yearly, flush every two to three years',
  },
  'marque-club-technical-note': {
    grade: 'owners',
    title: 'Marque-club technical note: brake hose cut open after decades, pressure that would not release',
  },
  'workshop-column': {
    grade: 'trade',
    title: 'Workshop column: five-year sleeper, hose would not pass air at 100 psi',
  },
  'restoration-shop-column': {
    grade: 'trade',
    title: 'Restoration-shop column: clogged brake and clutch hoses, looks deceive',
  },
  'single-make-club-note': {
    grade: 'owners',
    title: 'Single-make club note: blow-through test, never judge a hose by its appearance',
  },
  'marque-specialist-blog': {
    grade: 'trade',
    title: 'Marque-specialist blog: two-layer hose delaminates into a one-way valve',
  },
  'marque-forum-3': {
    grade: 'owners',
    title: 'Marque forum: drums locked after six humid months, freed with hammer taps',
  },
  'factory-service-text': {
    grade: 'authority',
    title: 'Factory service text: vacuum-servo tests (pedal drop, ten-minute hold)',
  },
  'hydraulic-shop-and-hose': {
    grade: 'trade',
    title: 'Hydraulic shop and hose-maker pages: brake-hose life, four to ten years, most say six to eight',
  },
  'us-road-safety-agency': {
    grade: 'authority',
    title:
      'US road-safety agency advisory in the safety press: brake-pipe rust after seven to eight salty winters, look twice a year',
  },
  'part-maker-page': {
    grade: 'trade',
    title: 'Part maker’s page: master cylinder, pump three times and hold 30 seconds',
  },
  'television-workshop-segment': {
    grade: 'trade',
    title: 'Television workshop segment: yearly coolant check, strips, under 0.4 V at 2,000 rpm',
  },
  'parts-seller-newsletter-quoted': {
    grade: 'owners',
    title: 'Parts-seller newsletter quoted on a forum: coolant voltage on three cars of different coolant age',
  },
  'engineering-explainer': {
    grade: 'explainer',
    title: 'Engineering explainer: traditional coolant two years, organic-acid types longer',
  },
  'trade-student-magazine': {
    grade: 'trade',
    title: 'Trade-student magazine: coolant chemistry history and change intervals',
  },
  'technician-study-guide': {
    grade: 'trade',
    title: 'Technician study guide: coolant testing, 50/50 freeze and boil points',
  },
  'radiator-seller-guide': {
    grade: 'trade',
    title: 'Radiator-seller guide: electrochemical hose decay, squeeze within two inches of the ends',
  },
  'repair-shop-article': {
    grade: 'trade',
    title: 'Repair-shop article: hose makers suggest replacing every four years',
  },
  'local-motoring-guide': {
    grade: 'trade',
    title: 'Local motoring guide: hose failures climb in the fifth year, heat doubles the decay rate',
  },
  'engineering-explainer-2': {
    grade: 'explainer',
    title: 'Engineering explainer: radiator hoses last four to five years',
  },
  'heavy-vehicle-maker-manual': {
    grade: 'authority',
    title: 'Heavy-vehicle maker’s manual: cap must hold within 10 percent of its rating',
  },
  'off-road-magazine': {
    grade: 'trade',
    title: 'Off-road magazine: new cap and thermostat every couple of years if little driven',
  },
  'factory-workshop-text': {
    grade: 'authority',
    title: 'Factory workshop text: cap passes if pressure holds for ten seconds',
  },
  'owners-forum': { grade: 'owners', title: 'Owners’ forum: two stored vehicles lost water pumps on the first outing' },
  'classic-insurer-magazine': {
    grade: 'trade',
    title: 'Classic insurer’s magazine: making the cooling system dependable',
  },
  'belt-maker-technical-page': {
    grade: 'authority',
    title: 'Belt maker’s technical page: modern ribbed belts wear like tread and seldom crack',
  },
  'mechanic-column': {
    grade: 'trade',
    title: 'Mechanic’s column: belt failures climb in the fourth year for V-belts and the fifth for ribbed',
  },
  'belt-supplier-page': { grade: 'explainer', title: 'Belt-supplier page: V-belts three to five years' },
  'repair-advice-site': {
    grade: 'trade',
    title: 'Repair-advice site: three cracks in three inches ends an older ribbed belt',
  },
  'restoration-shop': { grade: 'trade', title: 'Restoration shop: timing belts at six years as rule of thumb' },
  'repair-faq': { grade: 'trade', title: 'Repair FAQ: age against mileage for timing belts' },
  'phone-in-forum': {
    grade: 'owners',
    title: 'Phone-in forum: timing belt by age, seven-year ceiling, one broke at ten years',
  },
  'uk-garage-page': { grade: 'trade', title: 'UK garage page: timing belts every four to ten years' },
  'workshop-notes': { grade: 'trade', title: 'Workshop notes: state-of-charge table with density and freezing points' },
  'recreational-vehicle-magazine': {
    grade: 'trade',
    title: 'Recreational-vehicle magazine Q&A: rest voltage and density',
  },
  'engineering-mailing-list': {
    grade: 'owners',
    title: 'Engineering mailing list: meter error and surface charge in rest-voltage readings',
  },
  'recreational-vehicle-systems-page': {
    grade: 'trade',
    title: 'Recreational-vehicle systems page: rest 8 to 24 hours before an open-circuit test',
  },
  'occupational-safety-agency': {
    grade: 'authority',
    title: 'Occupational-safety agency: hydrogen from charging batteries, 4.1 to 72 percent',
  },
  'collector-car-journal': {
    grade: 'trade',
    title: 'Collector-car journal: waking a classic from summer slumber in a desert state',
  },
  'engineering-explainer-3': {
    grade: 'explainer',
    title: 'Engineering explainer: E10 one to three months, ethanol-free six to twelve, heat doubles the rate',
  },
  'environment-explainer': {
    grade: 'explainer',
    title: 'Environment explainer: untreated gasoline three to six months, treated 12 to 24',
  },
  'motoring-organization-advice': {
    grade: 'authority',
    title: 'Motoring-organization advice: dos and don’ts of winter storage (30 to 45 days of shelf life)',
  },
  'owners-technical-page': {
    grade: 'owners',
    title: 'Owners’ technical page: hose standards, ethanol and perished fuel hose',
  },
  'kit-car-forum': {
    grade: 'owners',
    title: 'Kit-car forum: ten-year-old fuel hose down to the braid; failures follow lay-up',
  },
  'kit-car-register': {
    grade: 'owners',
    title: 'Kit-car register: recommended-grade fuel hose hard and cracked in 3.5 years',
  },
  'marque-club-forum': {
    grade: 'owners',
    title: 'Marque-club forum: fuel-hose warning, cracking in a couple of years, split before three',
  },
  'marque-register': {
    grade: 'owners',
    title: 'Marque register: fuel-hose deterioration from the inside and fire risk',
  },
  'hot-rod-article': {
    grade: 'trade',
    title: 'Hot-rod article: fuel lines of seldom-driven cars fail through wet-dry cycles and cannot be judged by eye',
  },
  'parts-retailer-blog': {
    grade: 'trade',
    title: 'Parts-retailer blog: ten years at most for rubber fuel line, with inspection',
  },
  'workshop-column-2': {
    grade: 'trade',
    title: 'Workshop column: what pump fuel does to a stored carburetor’s diaphragms',
  },
  'antique-car-forum': { grade: 'owners', title: 'Antique-car forum: rust in the tank, sealers disputed' },
  'engineering-explainer-4': { grade: 'explainer', title: 'Engineering explainer: cleaning a tank safely' },
  mechanics: { grade: 'trade', title: 'Mechanics’ Q&A: year-old fuel, injector filter baskets, pump strainer' },
  'insurance-agency-tips': {
    grade: 'trade',
    title: 'Insurance-agency tips: dosing per gallon, three-year shelf life of concentrate',
  },
  'marque-forum-post': {
    grade: 'owners',
    title: 'Marque forum post by a refinery worker: gasoline a month in heat, diesel three to six months',
  },
  'battery-age-guides': {
    grade: 'explainer',
    title: 'Battery-age guides: most last three to five years, date code read-out',
  },
  'small-engine-trade-press': { grade: 'trade', title: 'Small-engine trade press: varnish begins inside 30 days' },
  'television-workshop-segment-2': {
    grade: 'trade',
    title: 'Television workshop segment: ’ran when parked’, oil the bores and turn by hand',
  },
  'marque-technical-pages': {
    grade: 'trade',
    title: 'Marque technical pages: starting after more than a year, stale fuel first',
  },
  'magazine-workshop-article': {
    grade: 'trade',
    title: 'Magazine workshop article: back from the dead, what five years of storage does',
  },
  'classic-repair': { grade: 'owners', title: 'Classic repair Q&A: soak three to five days; drop the pan first' },
  'club-technical-wiki': {
    grade: 'trade',
    title: 'Club technical wiki and test guides: 10 percent spread, adjacent low cylinders',
  },
  'factory-workshop-text-2': {
    grade: 'authority',
    title: 'Factory workshop text: lowest cylinder at least 75 percent of the highest',
  },
  'technician-study-guide-2': { grade: 'trade', title: 'Technician study guide: wet compression test' },
  'repair-shop-article-2': {
    grade: 'trade',
    title: 'Repair-shop article: does oil go bad just sitting (2-4, 6, 12 months)',
  },
  'uk-engineering-firm': { grade: 'trade', title: 'UK engineering firm: oil aging explained, once a year' },
  'newspaper-motor-column': { grade: 'trade', title: 'Newspaper motor column: change at least annually' },
  'collector-car-journal-2': { grade: 'trade', title: 'Collector-car journal: to start or not to start in storage' },
  'uk-tips-page-restorers': {
    grade: 'owners',
    title: 'UK tips page, restorers’ Q&A and owners’ threads: clutch stuck to the flywheel',
  },
  'parts-maker-service-text': {
    grade: 'authority',
    title: 'Parts-maker service text: plug-lead resistance by length, check every 60 months',
  },
  'repair-shop-faq-2': {
    grade: 'trade',
    title: 'Repair-shop FAQ: caps, rotors and leads break down with heat and moisture',
  },
  'restoration-site': {
    grade: 'trade',
    title: 'Restoration site: wheel-bearing repack every 24,000 miles or two years',
  },
  'engineering-explainer-5': {
    grade: 'explainer',
    title: 'Engineering explainer: what idle months do to air-conditioning shaft seals',
  },
  'motoring-assistance-club': {
    grade: 'trade',
    title: 'Motoring-assistance club: air-spring life six to ten years, safe soap test',
  },
  'air-suspension-supplier': {
    grade: 'trade',
    title: 'Air-suspension supplier: at least a decade if treated well, never store deflated',
  },
  'european-car-workshop': {
    grade: 'trade',
    title: 'European-car workshop: flex discs deteriorate with age even at low mileage',
  },
  'owners-club-blog': {
    grade: 'owners',
    title: 'Owners’-club blog: cracked coupling found at the pre-storage inspection',
  },
  'classic-insurer-magazine-2': {
    grade: 'trade',
    title: 'Classic insurer’s magazine: replace rotten rubber, shelf life three to twenty years',
  },
  'parts-retailer-article': {
    grade: 'trade',
    title: 'Parts-retailer article: rubber mounts and bushings age without miles',
  },
  'roof-hydraulics-rebuilder': {
    grade: 'trade',
    title: 'Roof-hydraulics rebuilder: why convertible tops fail, water, heat, stagnant fluid',
  },
  'factory-service-text-2': {
    grade: 'authority',
    title: 'Factory service text: power-top checks (voltage, level, seepage)',
  },
  'garage-blog-and-owners': {
    grade: 'trade',
    title: 'Garage blog and owners’ panel: store the top up; vinyl shrinks when folded',
  },
  'harness-technical-bulletin': {
    grade: 'trade',
    title: 'Harness technical bulletin: five-year and two-year certification dating',
  },
  'racing-club-threads': {
    grade: 'owners',
    title: 'Racing-club threads: harness life rules differ by sanctioning body',
  },
  'event-forum': { grade: 'owners', title: 'Event forum: no evidence that age alone weakens belts' },
  'child-seat-technicians': {
    grade: 'owners',
    title:
      'Child-seat technicians’ and marque forums: road belts at about 15 years, sunlight and 1960s-70s webbing worse',
  },
  'flare-explainers': {
    grade: 'explainer',
    title: 'Flare explainers: 36 to 42 months of shelf life; some say road flares carry no date',
  },
  'car-extinguisher-guides': {
    grade: 'explainer',
    title: 'Car-extinguisher guides: gauge is not a date, up to twelve years for disposables',
  },
  'german-inspection-bodies': {
    grade: 'authority',
    title: 'German inspection bodies via motoring press: kit expires after about five years, check yearly',
  },
  'legal-and-local-news': {
    grade: 'trade',
    title: 'Legal and local-news explainers: early airbags carried 10- to 15-year labels',
  },
  'parts-maker-faq': { grade: 'authority', title: 'Parts-maker FAQ: wiper rubber declines after about six months' },
  'uk-classic-magazine-workshop': { grade: 'trade', title: 'UK classic magazine workshop series: winter storage' },
  'manual-publisher-tips': {
    grade: 'trade',
    title: 'Manual publisher’s tips: five tips for winter storage (axle stands, conditioner)',
  },
  'classic-workshop-essay': { grade: 'trade', title: 'Classic workshop essay: winter storage, plus half a bar' },
  'uk-restoration-shop': {
    grade: 'trade',
    title: 'UK restoration shop: putting a classic to bed, storage prices and floor types',
  },
  'trade-magazine': { grade: 'trade', title: 'Trade magazine: ten storage tips, cardboard as tell-tale' },
  'dehumidifier-maker-article': {
    grade: 'authority',
    title: 'Dehumidifier maker’s article: keep storage air under 60 percent',
  },
  'storage-explainers': { grade: 'explainer', title: 'Storage explainers: about 50 percent as rust threshold' },
  'desert-detailer-guide': { grade: 'trade', title: 'Desert detailer’s guide: summer storage order of work' },
  'collected-owner-tips': {
    grade: 'owners',
    title: 'Collected owner tips and an environment explainer: rodent repellents and the lack of proof',
  },
  'classic-insurer-magazine-3': {
    grade: 'trade',
    title: 'Classic insurer’s magazine: eleven checks before the first spring drive',
  },
  'classic-insurer-magazine-4': { grade: 'trade', title: 'Classic insurer’s magazine: spring start-up' },
  'buyer-column': { grade: 'trade', title: 'Buyer’s column: assume the worst about past maintenance' },
  'marque-parts-magazine': {
    grade: 'trade',
    title: 'Marque-parts magazine: sorting a restored car, about 10 percent of budget',
  },
  ...MODEL_SOURCES,
  ...STORAGE_SOURCES,
} as const satisfies Readonly<Record<string, Source>>;
export type SourceKey = keyof typeof SOURCES;
