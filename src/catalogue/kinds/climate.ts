import type { Kind } from '../kind.ts';

export const CLIMATE = [
  {
    key: 'ac-system',
    name: 'Air-conditioning seals, hoses, refrigerant',
    system: 'climate',
    applies: ['air-con'],
    clock: 'used',
    interval: { lookFrom: 12, lookEvery: 12, replaceBy: null, sources: ['memory', 'engineering-explainer-5'] },
    severity: 'nuisance',
    agesBy: ['standing unused', 'time'],
    findDate:
      'The label by the service ports gives type and weight of refrigerant; date the last run from your notes and the last refill from its invoice.',
    tests: [
      {
        name: 'Air at the vent',
        gauge: {
          key: 'vent',
          unit: '°C',
          also: ['°F'],
          decimals: 0,
          range: [-20, 50],
          usual: [0, 30],
          bands: { good: { from: 4, to: 10 }, watch: { to: 15 } },
          minutes: 20,
        },
        how: 'Outdoors, engine warm, fan at middle speed on recirculation for 10 minutes, thermometer in a center vent, about 25 °C outside.',
        good: '4 to 10',
        watch: '10 to 15; under 4 the evaporator may ice up',
        act: 'above 15',
        sources: ['memory'],
      },
      {
        name: 'Oil trace',
        how: 'Look over the compressor shaft, fittings and condenser with an ultraviolet lamp.',
        good: 'no trace',
        watch: 'a dry stain',
        act: 'wet oil, above all at the shaft',
        sources: ['engineering-explainer-5', 'memory'],
      },
    ],
    ignored: 'The shaft seal dries and leaks, and a compressor that loses its oil with the gas seizes.',
    varies:
      'While the car is in use, ten minutes of running a month keeps the seals oiled. Older refrigerants may be handled only by licensed shops, and the drier is renewed every time the circuit is opened.',
    cautions: ['refrigerant', 'fan-and-belts', 'carbon-monoxide'],
  },
  {
    key: 'cabin-filter',
    name: 'Cabin filter and intake drains',
    system: 'climate',
    applies: ['cabin-filter'],
    clock: 'fitted',
    interval: { lookFrom: 12, lookEvery: 12, replaceBy: 24, sources: ['memory'] },
    severity: 'nuisance',
    agesBy: ['moisture', 'rodents', 'leaves'],
    findDate: 'Write the date on the filter’s frame when you fit it; otherwise use the service invoice.',
    tests: [
      {
        name: 'Smell and look',
        how: 'Open the housing, look at the filter and clear the drains of the intake below the windshield.',
        good: 'no smell, dry filter, free drains',
        watch: 'musty smell',
        act: 'nest, droppings or standing water',
        sources: ['collected-owner-tips', 'memory'],
      },
    ],
    ignored: 'Mold blows into the cabin, and blocked drains let rain into the footwells and the electronics there.',
    varies: 'Cars parked under trees or in barns need it far more often than the calendar says.',
    cautions: ['droppings'],
  },
] as const satisfies readonly Kind[];
