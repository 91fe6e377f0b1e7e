import { HUMIDITY } from '../details/humidity.ts';
import type { Kind } from '../kind.ts';

export const STORAGE = [
  {
    key: 'desiccant',
    name: 'Desiccant and hygrometer in the car',
    system: 'storage',
    applies: [],
    clock: 'used',
    interval: {
      lookFrom: 1,
      lookEvery: 1,
      replaceBy: 3,
      sources: ['memory', 'dehumidifier-maker-article', 'motoring-organization-advice'],
    },
    severity: 'cosmetic',
    agesBy: ['moisture'],
    findDate: 'Write on the bag the day it was last dried or put in.',
    tests: [
      {
        name: 'Humidity inside',
        gauge: HUMIDITY,
        how: 'Read the hygrometer or indicator card through the window, before you open a door.',
        good: '40 to 55',
        watch: '55 to 65, or under 40, which dries leather and wood',
        act: 'over 65: renew or dry the desiccant, mold follows within weeks',
        sources: ['dehumidifier-maker-article'],
      },
    ],
    ignored: 'A full bag gives its water back: mold grows on trim, and contacts turn green.',
    varies: 'Rechargeable bags are dried in an oven as their label says. In a leaking or open car no bag keeps up.',
    cautions: [],
  },
  {
    key: 'maintainer',
    name: 'Battery maintainer and its lead',
    system: 'storage',
    applies: ['battery-maintainer'],
    clock: 'fitted',
    interval: {
      lookFrom: 1,
      lookEvery: 1,
      replaceBy: 96,
      sources: ['memory', 'classic-workshop-essay', 'occupational-safety-agency'],
    },
    severity: 'strands',
    agesBy: ['time', 'heat'],
    findDate: 'Look at the rating plate for a date, otherwise hang a tag on the lead with the day you bought it.',
    tests: [
      {
        name: 'Lamp',
        how: 'At every visit read the lamp and feel the case, plug and lead.',
        good: 'shows float or full, barely warm',
        watch: 'still charging after 24 hours',
        act: 'fault lamp, hot case, or a swollen or smelling battery: unplug it at the wall',
        sources: ['memory'],
      },
    ],
    ignored: 'A faulty unit boils the battery dry or starts a fire; a dead one leaves the battery flat all winter.',
    varies:
      'The mode must match the battery’s type. Set it away from fuel vapor in an aired place, and where nobody visits, take the battery out instead.',
    cautions: ['battery-gas', 'lithium-charge', 'electrical', 'fuel-vapor'],
  },
] as const satisfies readonly Kind[];
