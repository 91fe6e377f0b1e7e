/** What the gates rest on. */
import type { Look } from '../look.ts';

export const GATES = {
  structure: {
    name: 'Structure, probed',
    how: 'A blunt screwdriver on sills, floors, jacking points, mounts of subframe and springs.',
    answers: {
      sound: { words: 'Sound', verdict: 'good' },
      'surface rust': { words: 'Rust on the surface, nothing gives', verdict: 'watch' },
      weak: { words: 'Gives in places: to be welded before it is lifted there', verdict: 'act' },
      fails: { words: 'Fails: it can’t be lifted or driven', verdict: 'act' },
    },
  },
  'brake-pipes': {
    name: 'Brake pipes, whole length',
    how: 'Wipe, look, a fingernail: scale or a pit means renewing. Follow them over the axle and behind the tank.',
    answers: {
      clean: { words: 'Clean', verdict: 'good' },
      'surface rust': { words: 'Rust film that wipes off', verdict: 'watch' },
      scaled: { words: 'Scaled, pitted or kinked', verdict: 'act' },
      'none fitted': { words: 'None: rods or cables', verdict: 'good' },
    },
  },
  extinguisher: {
    name: 'Extinguisher',
    how: 'Its date and its gauge; within reach of the work.',
    answers: {
      'in date': { words: 'There, and in date', verdict: 'good' },
      'out of date': { words: 'Out of date, or its gauge is low', verdict: 'act' },
      none: { words: 'None', verdict: 'act' },
    },
  },
  'air-box': {
    name: 'Air box and trunking',
    how: 'Opened, with gloves and mask, before anything turns.',
    answers: {
      clean: { words: 'Clean', verdict: 'good' },
      cleared: { words: 'There was a nest; all of it is out', verdict: 'watch' },
      nest: { words: 'A nest, droppings, or torn trunking', verdict: 'act' },
    },
  },
  wires: {
    name: 'Wiring under the hood, the dash and the seats',
    how: 'Bend it: it must be supple. Look for teeth, bare copper, green joints, home-made joints.',
    answers: {
      sound: { words: 'Sound', verdict: 'good' },
      mended: { words: 'Mended, insulated and fused', verdict: 'watch' },
      bare: { words: 'Chewed, cracked or bare', verdict: 'act' },
    },
  },
  'engine-oil': {
    name: 'Engine oil, drained into a jar',
    how: 'Let it stand; a magnet and a lamp on it.',
    answers: {
      clean: { words: 'Oil and nothing else', verdict: 'good' },
      black: { words: 'Black, thin sludge', verdict: 'watch' },
      milky: { words: 'Milky, or water under it', verdict: 'act' },
      glitter: { words: 'Glitter of metal', verdict: 'act' },
      'thick sludge': { words: 'Sludge a finger thick on the plug or in the pan', verdict: 'act' },
      'cause found': { words: 'Was foul; its cause is found and put right', verdict: 'watch' },
    },
  },
  turns: {
    name: 'Turned by hand',
    how: 'Plugs (or glow plugs, injectors) out, bar on the crank bolt, gently, both ways, two full turns.',
    answers: {
      'two smooth turns': { words: 'Two smooth turns', verdict: 'good' },
      'tight spot': { words: 'A tight spot', verdict: 'watch' },
      stuck: { words: 'It does not turn', verdict: 'act' },
    },
  },
  'pre-oil': {
    name: 'Oil before spark',
    how: 'Plugs out, coil off: turn it in bursts of ten seconds until pressure shows, or drive the pump.',
    answers: {
      pressure: { words: 'Pressure on the gauge, or the lamp goes out', verdict: 'good' },
      'oil at the rockers': { words: 'Oil seen at the rockers', verdict: 'good' },
      none: { words: 'Neither', verdict: 'act' },
    },
  },
  'fuel-leaks': {
    name: 'Fuel system under pressure for ten minutes',
    how: 'Pump running, engine off, a white cloth along every joint.',
    answers: {
      dry: { words: 'Dry', verdict: 'good' },
      weeps: { words: 'It weeps or smells', verdict: 'act' },
    },
  },
  'fuel-supply': {
    name: 'What the first start is fed from',
    how: 'Never its old tank.',
    answers: {
      'clean can': { words: 'A clean can with fresh fuel', verdict: 'good' },
      'clean tank': { words: 'Its tank: out, clean inside, with fresh fuel', verdict: 'good' },
      'old tank': { words: 'Its old tank', verdict: 'act' },
    },
  },
  ignites: {
    name: 'Spark, or fuel at the injectors',
    how: 'Spark across a tester held away from fuel; a diesel: bled, glow plugs read.',
    answers: {
      'strong spark': { words: 'Strong at every plug', verdict: 'good' },
      'diesel ready': { words: 'Diesel: bled, and its glow plugs draw', verdict: 'good' },
      weak: { words: 'Weak, or missing somewhere', verdict: 'watch' },
      smoke: { words: 'A wire or joint gets hot or smokes', verdict: 'act' },
    },
  },
  'cooling-holds': {
    name: 'Cooling',
    how: 'Pumped to the cap’s rating, a quarter of an hour. Air-cooled: shrouds on, fins and fan clear, belt tight.',
    answers: {
      holds: { words: 'Holds', verdict: 'good' },
      'air can pass': { words: 'Air-cooled: clean, shrouds on, belt tight', verdict: 'good' },
      drops: { words: 'Drops, or drips', verdict: 'act' },
      blocked: { words: 'Fins or shrouds blocked or missing', verdict: 'act' },
    },
  },
  'oil-pressure': {
    name: 'Oil pressure after the first start',
    how: 'Seconds until it shows; past ten, off.',
    answers: {
      'in time': { words: 'Within ten seconds', verdict: 'good' },
      late: { words: 'Later, or none', verdict: 'act' },
    },
    number: {
      unit: 's',
      range: [0, 120],
      bands: [
        { under: 10.001, answer: 'in time' },
        { under: 121, answer: 'late' },
      ],
    },
  },
  knock: {
    name: 'Sound of the first minute',
    how: 'One ear for the bottom end, one for the valves.',
    answers: {
      none: { words: 'No knock; ticking that fades', verdict: 'good' },
      ticks: { words: 'Ticks on and on', verdict: 'watch' },
      knocks: { words: 'Knocks, or rattles from below', verdict: 'act' },
    },
  },
  pedal: {
    name: 'Brake pedal, pressed hard',
    how: 'Three strokes, then as hard as in an emergency, a full minute, servo running where there is one.',
    answers: {
      'hard for a minute': { words: 'Hard, and stays', verdict: 'good' },
      'no hydraulics': { words: 'Rods or cables: firm, and returns', verdict: 'good' },
      sinks: { words: 'Sinks or is spongy', verdict: 'act' },
    },
  },
  release: {
    name: 'Wheels after the pedal is let go',
    how: 'Each wheel off the ground: press, let go, spin by hand at once.',
    answers: {
      'every wheel free': { words: 'Every wheel free at once', verdict: 'good' },
      drags: { words: 'A wheel drags or frees late', verdict: 'act' },
    },
  },
  weep: {
    name: 'Weep after a day',
    how: 'Dry cloth at every cylinder, caliper, hose end and the pedal box; look again the next day.',
    answers: {
      'dry after a day': { words: 'Dry', verdict: 'good' },
      'no hydraulics': { words: 'Rods or cables', verdict: 'good' },
      weeps: { words: 'A weep anywhere', verdict: 'act' },
    },
  },
  'parking-brake': {
    name: 'Parking brake',
    how: 'On and off ten times, each wheel tried by hand.',
    answers: {
      'holds and frees': { words: 'Holds, and frees at once', verdict: 'good' },
      weak: { words: 'Does not hold', verdict: 'act' },
      sticks: { words: 'Does not free', verdict: 'act' },
    },
  },
  drive: {
    name: 'Gears and clutch',
    how: 'Every gear by hand, engine off; then the pedal, wheels off the ground.',
    answers: {
      'selects and lets go': { words: 'Selects, and lets go', verdict: 'good' },
      'clutch stuck': { words: 'The clutch does not let go', verdict: 'act' },
      'will not select': { words: 'A gear does not go in, or jumps out', verdict: 'act' },
    },
  },
  'steering-play': {
    name: 'Play in steering and joints',
    how: 'Helper at the wheel, hand on each joint; boots all round.',
    answers: {
      none: { words: 'None, and no boot is split', verdict: 'good' },
      play: { words: 'Play anywhere', verdict: 'act' },
      'split boot': { words: 'A split boot', verdict: 'act' },
    },
  },
  bearings: {
    name: 'Wheel bearings',
    how: 'Rock at twelve and six, spin, listen with a hand on the spring.',
    answers: {
      'quiet, no play': { words: 'Quiet, and no play', verdict: 'good' },
      rumbles: { words: 'Rumble or play', verdict: 'act' },
    },
  },
  nuts: {
    name: 'Wheel nuts',
    how: 'Torque wrench, handbook figure, in a cross; seats clean and dry.',
    answers: {
      'at torque': { words: 'At their torque', verdict: 'good' },
      'not yet': { words: 'Not yet, or a stud is bad', verdict: 'act' },
    },
  },
  lamps: {
    name: 'Lamps, brake lights, horn, wipers',
    how: 'Walk round with a helper at the pedal and the switches.',
    answers: {
      'all work': { words: 'All work', verdict: 'good' },
      'some out': { words: 'One is out, or works by chance', verdict: 'act' },
    },
  },
  belts: {
    name: 'Seat belts',
    how: 'Full length out, webbing soft and whole, anchors sound, a sharp pull locks a reel.',
    answers: {
      sound: { words: 'Sound', verdict: 'good' },
      'none fitted': { words: 'None fitted, and none asked for', verdict: 'watch' },
      bad: { words: 'Frayed, stiff, slow or loose', verdict: 'act' },
    },
  },
  cover: {
    name: 'Insurance, registration, inspection',
    how: 'Road cover first, then registry and tax, then the inspection booked. The law of the place rules.',
    answers: {
      'in force': { words: 'In force, or booked as the law allows', verdict: 'good' },
      'not yet': { words: 'Not yet', verdict: 'act' },
    },
  },
} as const satisfies Readonly<Record<string, Look>>;
