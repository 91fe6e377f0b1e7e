/** Where every figure comes from: one list, told by kind of text, never by brand or person. */
export const GRADES = {
  regulation: 'Law or regulation',
  standard: 'Published standard',
  authority: 'Agency, inspection body, vehicle or part maker’s text',
  trade: 'Trade press, specialist workshop, magazine',
  owners: 'Club, forum, owners',
  explainer: 'General explainer page',
  practice: 'Common practice',
  memory: 'From memory',
} as const;
export type Grade = keyof typeof GRADES;

export interface Source {
  grade: Grade;
  title: string;
}

export const SOURCES = {
  'common-practice': { grade: 'practice', title: 'Common practice of the trade; no single source' },
  memory: { grade: 'memory', title: 'From memory; nobody here has seen a text for it' },
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
  '49-cfr-571-139': {
    grade: 'regulation',
    title: '49 CFR 571.139 (FMVSS 139), new pneumatic tires: which sidewall carries the full number (from memory)',
  },
  '49-cfr-571-304': {
    grade: 'regulation',
    title: '49 CFR 571.304 (FMVSS 304), CNG container inspection label, as summarized',
  },
  'iso-4925': { grade: 'standard', title: 'ISO 4925, brake fluid classes (from memory)' },
  'iso-2230': {
    grade: 'standard',
    title: 'ISO 2230, storage of rubber products: groups, as reprinted by a seal supplier',
  },
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
  'dvsa-2021': {
    grade: 'authority',
    title: 'DVSA notice, 1 February 2021: tires over ten years on steered axles of heavy vehicles',
  },
  'trl-2019': {
    grade: 'authority',
    title: 'TRL for the UK Department for Transport, 2019: 31 aged coach tires cut open',
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
  'magazine-road-test': {
    grade: 'trade',
    title: 'Magazine road test: never-used 32-year-old tires against a new set, lane change and braking from 60 mph',
  },
  'collector-car-journal-article': {
    grade: 'trade',
    title: 'Collector-car journal article: tires might look safe, beware as the years go by',
  },
  'car-club-note': {
    grade: 'owners',
    title: 'Car-club note: how old are your tires (code may face inward; six to seven years)',
  },
  'general-interest-magazine': {
    grade: 'trade',
    title: 'General-interest magazine: how old are your tires (six and ten years, hot dry climates)',
  },
  'owner-column': {
    grade: 'owners',
    title: 'Owner’s column: front tire failure on a spring cruise, ancient spare, only a bumper jack',
  },
  'marque-forum-sticky': {
    grade: 'owners',
    title: 'Marque forum sticky: replace any tire over seven years; bend-test the valve stems',
  },
  'tire-retailer-guide-2': {
    grade: 'trade',
    title: 'Tire-retailer guide: three-digit codes, the small triangle, full number on one sidewall only',
  },
  'government-trade-press': {
    grade: 'authority',
    title:
      'Government/trade press: tyres over ten years banned on steered axles of heavy vehicles, legible date mark required',
  },
  'press-summary': {
    grade: 'authority',
    title: 'Press summary of a UK government tyre-ageing study: stiffness rises, elasticity falls with age',
  },
  'rubber-industry-press': {
    grade: 'trade',
    title: 'Rubber-industry press: consultation after a fatal coach crash on a 19-year-old tyre',
  },
  'news-agency': {
    grade: 'authority',
    title: 'News agency with a German inspection body: swap classic-car tyres at ten years at the latest, 3 mm tread',
  },
  'german-classic-car-magazine': {
    grade: 'trade',
    title: 'German classic-car magazine: how old are your tyres (stopping distance, three-digit codes)',
  },
  'german-event-site': {
    grade: 'trade',
    title: 'German event site: when to change classic tyres (risk from six years, trailer age law)',
  },
  'uk-classic-weekly': {
    grade: 'trade',
    title: 'UK classic weekly: federation survey of tyre-age knowledge, plus a braking test on old rubber',
  },
  'uk-classic-weekly-2': {
    grade: 'trade',
    title: 'UK classic weekly: federation says age alone is not the only factor, crossplies lack steel belts',
  },
  'marque-forum': { grade: 'owners', title: 'Marque forum: hardness-meter readings on tyres of known age' },
  'oil-and-tire-forum': {
    grade: 'owners',
    title: 'Oil-and-tire forum: do tires harden with age, meter readings and temperature',
  },
  'tire-maker-care-page': {
    grade: 'authority',
    title: 'Tire maker’s care page: storing tires on the vehicle (weight, movement, pressure, ozone)',
  },
  'second-tire-maker-care': {
    grade: 'authority',
    title: 'Second tire maker’s care page (Italian): storage on the vehicle, monthly movement, reset pressure',
  },
  'marque-forum-relaying': {
    grade: 'owners',
    title: 'Marque forum relaying a tire maker’s letter: ozone sources, mounted-wheel storage pressure',
  },
  'us-federal-research-report': {
    grade: 'authority',
    title: 'US federal research report to Congress on tire aging (2007): field damage worst in the hottest state',
  },
  'tire-trade-magazine': {
    grade: 'trade',
    title: 'Tire trade magazine: reading the agency’s tire-aging report, no age rule adopted',
  },
  'question-and-answer-pages': {
    grade: 'explainer',
    title: 'Question-and-answer pages: rubber valve stems last three to five years',
  },
  'tyre-guides': { grade: 'explainer', title: 'Tyre guides: sealant bottle shelf life about four years' },
  'wheel-fastener-guides': { grade: 'explainer', title: 'Wheel-fastener guides: re-torque after 50 to 100 miles' },
  'repair-shop-faq': {
    grade: 'trade',
    title: 'Repair-shop FAQ: when to change brake fluid (two years, 200 ppm copper)',
  },
  'workshop-trade-press': {
    grade: 'trade',
    title: 'Workshop trade press: brake-fluid testing (colour is no guide, copper, corrosion)',
  },
  'restorers-journal': { grade: 'trade', title: 'Restorers’ journal: a look at brake-fluid testers' },
  'lubricant-supplier-page': {
    grade: 'trade',
    title: 'Lubricant supplier page: DOT 3/4/5.1 dry and wet boiling points',
  },
  'uk-classic-guide': {
    grade: 'trade',
    title: 'UK classic guide: brake-fluid ratings, silicone versus conventional, bleeding',
  },
  'forum-glossary-post': {
    grade: 'owners',
    title: 'Forum glossary post: DOT 3/4/5 properties, 1 to 2 percent water a year',
  },
  'marque-club-paper': { grade: 'owners', title: 'Marque-club paper: DOT 3, 4, 5 and 5.1 in vintage cars' },
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
  'classic-workshop-blog': {
    grade: 'trade',
    title: 'Classic workshop blog: brakes are the costliest system after dormancy; leave the parking brake off',
  },
  'radio-phone-in': { grade: 'trade', title: 'Radio phone-in: parking brake rusted solid after three cold months' },
  'marque-forum-3': {
    grade: 'owners',
    title: 'Marque forum: drums locked after six humid months, freed with hammer taps',
  },
  'factory-service-text': {
    grade: 'authority',
    title: 'Factory service text: vacuum-servo tests (pedal drop, ten-minute hold)',
  },
  'us-environmental-agency-booklet': {
    grade: 'authority',
    title: 'US environmental agency booklet: controlling brake dust in the garage',
  },
  'classic-car-magazine-correction': {
    grade: 'trade',
    title: 'Classic-car magazine correction: never blow out brakes, wet method only',
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
  'repair-cost-pages': { grade: 'explainer', title: 'Repair-cost pages: master-cylinder replacement price ranges' },
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
  'battery-shop-faq': {
    grade: 'trade',
    title: 'Battery-shop FAQ: letter for month, digit for year, ten-year ambiguity',
  },
  'occupational-safety-agency': {
    grade: 'authority',
    title: 'Occupational-safety agency: hydrogen from charging batteries, 4.1 to 72 percent',
  },
  'battery-maker-advice': {
    grade: 'trade',
    title: 'Battery-maker advice: check the battery is not frozen before charging',
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
  'motoring-organisation-advice': {
    grade: 'authority',
    title: 'Motoring-organisation advice: dos and don’ts of winter storage (30 to 45 days of shelf life)',
  },
  'fuel-chemists-quoted': {
    grade: 'trade',
    title: 'Fuel chemists quoted on a club forum: winter octane loss is small, near-empty tanks draw water',
  },
  'storage-explainer': {
    grade: 'explainer',
    title: 'Storage explainer: full for six months or less, empty for longer',
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
  'owner-project-page': {
    grade: 'owners',
    title: 'Owner’s project page: gum from a long-dead tank glued the valves and ruined a head',
  },
  'antique-car-forum': { grade: 'owners', title: 'Antique-car forum: rust in the tank, sealers disputed' },
  'engineering-explainer-4': { grade: 'explainer', title: 'Engineering explainer: cleaning a tank safely' },
  mechanics: { grade: 'trade', title: 'Mechanics’ Q&A: year-old fuel, injector filter baskets, pump strainer' },
  'household-guide': { grade: 'trade', title: 'Household guide: dose the tank, run ten minutes' },
  'do-it-yourself-guide': {
    grade: 'trade',
    title: 'Do-it-yourself guide: dose a day or two early, five minutes usually enough',
  },
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
  'restorers-journal-2': { grade: 'trade', title: 'Restorers’ journal Q&A: waking a vehicle after twenty years' },
  'magazine-workshop-article': {
    grade: 'trade',
    title: 'Magazine workshop article: back from the dead, what five years of storage does',
  },
  'marque-parts-specialist': {
    grade: 'trade',
    title: 'Marque-parts specialist: eight-step minimum for a dormant car, rust ring in cylinders',
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
  'uk-engineering-firm': { grade: 'trade', title: 'UK engineering firm: oil ageing explained, once a year' },
  'newspaper-motor-column': { grade: 'trade', title: 'Newspaper motor column: change at least annually' },
  'collector-car-journal-2': { grade: 'trade', title: 'Collector-car journal: to start or not to start in storage' },
  explainer: { grade: 'explainer', title: 'Explainer: monthly idling is a harmful habit' },
  'uk-tips-page-restorers': {
    grade: 'owners',
    title: 'UK tips page, restorers’ Q&A and owners’ threads: clutch stuck to the flywheel',
  },
  'car-club-technical-page': { grade: 'owners', title: 'Car-club technical page: axle oil, breather moisture' },
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
  'maintenance-article': { grade: 'trade', title: 'Maintenance article: power-steering fluid and its hoses' },
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
  'restoration-blog': {
    grade: 'owners',
    title: 'Restoration blog: suspension sphere lost its gas through the diaphragm',
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
  'classic-dealer-storage-advice': {
    grade: 'trade',
    title: 'Classic dealer’s storage advice: breathable cover, dry air, tank debate',
  },
  'classic-workshop-essay': { grade: 'trade', title: 'Classic workshop essay: winter storage, plus half a bar' },
  'uk-restoration-shop': {
    grade: 'trade',
    title: 'UK restoration shop: putting a classic to bed, storage prices and floor types',
  },
  'trade-magazine': { grade: 'trade', title: 'Trade magazine: ten storage tips, cardboard as tell-tale' },
  'mailing-list-post': {
    grade: 'owners',
    title: 'Mailing-list post: hanging suspension twists bushings; do not start it',
  },
  'dehumidifier-maker-article': {
    grade: 'authority',
    title: 'Dehumidifier maker’s article: keep storage air under 60 percent',
  },
  'storage-explainers': { grade: 'explainer', title: 'Storage explainers: about 50 percent as rust threshold' },
  'restoration-writer': { grade: 'trade', title: 'Restoration writer: seasonal maintenance calendar, plus 10 psi' },
  'car-dealer-tips': { grade: 'trade', title: 'Car-dealer tips: 45-50 psi for storage' },
  'desert-detailer-guide': { grade: 'trade', title: 'Desert detailer’s guide: summer storage order of work' },
  'collected-owner-tips': {
    grade: 'owners',
    title: 'Collected owner tips and an environment explainer: rodent repellents and the lack of proof',
  },
  'uk-newspaper-and-specialist': {
    grade: 'authority',
    title: 'UK newspaper and specialist insurer: off-road notification for classics',
  },
  'uk-insurer-case-note': {
    grade: 'trade',
    title: 'UK insurer case note: laid-up cover without the off-road notice triggered a warning',
  },
  'us-explainers': {
    grade: 'explainer',
    title: 'US explainers: comprehensive-only storage cover and registration status',
  },
  'us-health-agency-figures': {
    grade: 'authority',
    title: 'US health-agency figures in a newspaper: garage doors open did not prevent deaths',
  },
  'university-extension-advice': {
    grade: 'authority',
    title: 'University extension advice: 500 ppm after two minutes with the door open',
  },
  'classic-insurer-magazine-3': {
    grade: 'trade',
    title: 'Classic insurer’s magazine: eleven checks before the first spring drive',
  },
  'classic-insurer-magazine-4': { grade: 'trade', title: 'Classic insurer’s magazine: spring start-up' },
  'restoration-shop-2': {
    grade: 'trade',
    title: 'Restoration shop: roll it outside for the first start, fuel-leak fire risk',
  },
  'dealer-opinion-piece': { grade: 'trade', title: 'Dealer’s opinion piece: provenance is the asset' },
  'pre-war-club-article': { grade: 'owners', title: 'Pre-war club article: paperwork has value and gets thrown away' },
  'dealer-column': { grade: 'trade', title: 'Dealer column: records nobody could find after the owner was gone' },
  'owners-forum-2': { grade: 'owners', title: 'Owners’ forum: appraisal goes faster with a dated summary of receipts' },
  'valuation-specialist': { grade: 'trade', title: 'Valuation specialist: agreed value and the photographs it needs' },
  'german-valuers': { grade: 'trade', title: 'German valuers: restoration value needs invoices or time sheets' },
  'motorists-association-column': {
    grade: 'trade',
    title: 'Motorists’ association column: a spiral notebook and a pile of receipts',
  },
  'collector-journal': { grade: 'trade', title: 'Collector’s journal: buyer’s inspection with letter grades' },
  'affordable-classics-guide-page': {
    grade: 'trade',
    title: 'Affordable-classics guide page: do the tires match and how old are they',
  },
  'buyer-column': { grade: 'trade', title: 'Buyer’s column: assume the worst about past maintenance' },
  'newspaper-used-car-guide': {
    grade: 'trade',
    title: 'Newspaper used-car guide: find gaps in the history and fill them',
  },
  'antique-car-forum-2': {
    grade: 'owners',
    title: 'Antique-car forum: shakedown before delivery, the missing last ten percent',
  },
  'marque-parts-magazine': {
    grade: 'trade',
    title: 'Marque-parts magazine: sorting a restored car, about 10 percent of budget',
  },
  'uk-workshop-trade-magazine': {
    grade: 'trade',
    title: 'UK workshop trade magazine: owners who no longer do their own work',
  },
  'classic-adviser-and-club': {
    grade: 'trade',
    title: 'Classic adviser and club magazine: US labor about 80 to 100 dollars an hour',
  },
  'uk-classic-weekly-3': { grade: 'trade', title: 'UK classic weekly: workshop hours, from 40 pounds an hour' },
  'repair-cost-explainers': {
    grade: 'explainer',
    title: 'Repair-cost explainers: carburetor kit 20 to 100 dollars, two to four hours',
  },
  'owner-restoration-blog-2011': {
    grade: 'owners',
    title: 'Owner’s restoration blog (2011): crossply set with tubes 870 pounds',
  },
  'french-motoring-press': { grade: 'trade', title: 'French motoring press: precautions after long immobilisation' },
} as const satisfies Readonly<Record<string, Source>>;
export type SourceKey = keyof typeof SOURCES;
