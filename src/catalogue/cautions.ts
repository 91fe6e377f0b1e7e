/**
 * The usual cautions for work that can hurt someone. Every sheet, page and mail that asks for such work carries its
 * own; all of them defer to the vehicle's handbook, local law and licensed practice (`DEFERS`).
 */
export const DEFERS =
  'The vehicle’s handbook and the law of the place come first. Where a trade is licensed, leave the work to it; when in doubt, ask a professional before you drive.';

export const CAUTIONS = {
  lifting:
    'Stand the car on axle stands on firm level ground, chock the wheels that stay down, rock it before going under. Never work under a car held by a jack, or by air or fluid springs.',
  'wheel-nuts':
    'Tighten wheel nuts with a torque wrench to the handbook figure, and check them again after 80 to 160 km (50 to 100 miles).',
  'tire-fitting':
    'Tires are fitted and balanced by a tire shop: beads seat with force and an old rim can burst. Never weld or heat a wheel with its tire on.',
  'brake-work':
    'Brakes are work for someone trained in them. After any work: pedal hard for a minute, no weep, every wheel free, then walking pace first.',
  'brake-fluid':
    'Brake fluid harms skin, eyes and paint. Use only the type on the reservoir cap, from a freshly opened container; silicone and mineral fluids never mix with others.',
  'brake-dust':
    'Treat old brake and clutch dust as asbestos: no air line, no dry brush. Wet it, wipe it, bag it, wear a fitted mask.',
  'high-pressure':
    'Hydraulic accumulators and gas spheres hold pressure after the engine stops. Discharge the system by the handbook before opening a pipe.',
  'stored-energy':
    'Springs, struts, torsion bars and belt tensioners store energy. Use the tool made for them, stand to the side.',
  'fuel-vapor':
    'Fuel vapor burns and spreads along the floor. Outdoors or well aired, battery disconnected, no hot lamps, no sparks, extinguisher at hand, metal can grounded.',
  'carbon-monoxide': 'Never run an engine indoors, not even with the door open: carbon monoxide kills within minutes.',
  'hot-coolant':
    'Open no cap on a hot system. Coolant is poisonous and tastes sweet: keep it from children and animals.',
  'fan-and-belts':
    'Electric fans start by themselves. Ignition off and battery disconnected before hands go near belts, fan or timing.',
  'battery-gas':
    'Charging batteries give off hydrogen: air the place, no sparks, goggles on, connect the last clamp away from the battery. Never charge or jump a frozen, cracked or swollen battery.',
  'lithium-charge': 'Charge a lithium battery only with a charger made for it, and never below freezing.',
  electrical: 'Disconnect the battery before working on cables; fuse every temporary supply.',
  'high-voltage-ignition': 'Ignition voltage can stop a heart: switch off before touching coil, leads or cap.',
  webbing:
    'Renew any belt, harness or child seat that was loaded in a crash. Never cut, sew, dye or oil webbing, and never buy it second-hand.',
  linkage: 'A moving roof crushes fingers: keep hands out of its linkage, and prop it before working under it.',
  'wiper-arms':
    'A wiper arm snaps back and breaks glass or a finger: ignition off, and a folded cloth on the glass under it.',
  poison: 'Washer fluid and coolant are poisonous: keep them from children and animals, never in drink bottles.',
  rocking: 'An engine rocked in gear can move the car: parking brake on, wheels chocked, nobody before or behind it.',
  airbags:
    'Airbags and pretensioners are explosive: battery off and wait as the handbook says, no meter on their wires, nobody leans over them. Licensed work in many places.',
  refrigerant: 'Refrigerant freezes skin and harms the air: opening the circuit is licensed work.',
  pressure: 'Pressurized bottles and extinguishers are opened, refilled and tested only by a licensed service.',
  'gas-fuel': 'Gas fuel tanks are inspected, emptied and replaced only by a licensed shop.',
  droppings: 'Rodent droppings carry disease: gloves and mask, damp them, wipe, never sweep or blow.',
  dust: 'Old paint, plating and sealers can hold lead or cadmium: no dry sanding, mask on.',
  flares: 'Never test-light a flare; take old ones to a place that accepts pyrotechnics.',
  rolling:
    'A car without its parking brake rolls: chocks on both sides of a wheel before the brake comes off, and nobody before or behind it.',
  'at-the-pump': 'Fuel vapor burns: engine off, nothing that glows or sparks at the nozzle, and room left in the tank.',
  'hydraulic-lock':
    'Oil over a piston breaks the engine when the starter turns it: spark plugs out, turn it by hand, let the oil come out first.',
  'hot-work': 'Oil, exhaust and brakes are hot after a drive: gloves, and let the exhaust cool before you close it.',
  steering:
    'Lost steering gives no warning. Any play, split boot or torn coupling stops the car until it is put right.',
} as const;
export type CautionKey = keyof typeof CAUTIONS;
