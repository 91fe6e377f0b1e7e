/** Asleep for decades, and nearly nothing known. */
import type { DemoCar } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { BRAM, CARS, NELL, PLACES } from './people.ts';
import { filled, fitted, gauged, made, part, used } from './tell.ts';
import { after, before, between, counting, everyDecade } from './typed.ts';

export const tindlewick = (today: CivilDate): DemoCar => {
  const ago = counting(today);
  return {
    id: CARS.tindlewick,
    name: 'Tindlewick Eleven runabout',
    note: 'Came with the barn, under hay. Nobody agrees when it last ran.',
    built: 'about 1925',
    start: 'runabout-rear-brakes',
    without: [],
    having: ['sealed-tank-coating'],
    addedOn: ago(1, 1),
    addedBy: NELL,
    place: PLACES.barn,
    odometer: [],
    parts: [
      {
        ...part('tires-road', made('DOT XN K4 339', 'read on the part', { choice: everyDecade(33, 1979, 1999) })),
        position: 'front left',
        note: 'No triangle after the digits, which proves nothing.',
        readings: [
          gauged('hardness', '93', ago(0, 6), {
            warmth: '12',
            instrument: 'pencil gauge',
            note: 'Like knocking on wood.',
            by: BRAM,
          }),
        ],
      },
      {
        ...part(
          'tires-road',
          made('DOT XN K4 349', 'read on the part', { choice: everyDecade(34, 1979, 1999), ninetiesMark: 'not seen' }),
        ),
        position: 'front right',
      },
      { ...part('tires-road', made('not looked yet', 'assumed')), position: 'rear left', note: 'Against the wall.' },
      {
        ...part('tires-road', made('unknown', 'assumed')),
        position: 'rear right',
        note: 'Both sidewalls have cracked away.',
      },
      part('inner-tubes', fitted('unknown', 'assumed')),
      part('brake-friction', fitted('original', 'assumed', { note: 'Woven cotton by the look of it.' })),
      { ...part('fuel-gasoline', filled(before(ago(35)), 'own memory')), note: 'Smells of varnish.' },
      part(
        'tank-coating',
        fitted(between(ago(40), ago(36)), 'seller’s word', { note: 'A tin of sealer stood beside it.' }),
      ),
      part('fuel-hose-low', fitted(after(ago(41)), 'assumed', { note: 'Surely not older than the tank work.' })),
      {
        ...part('extinguisher', made('unknown', 'assumed')),
        note: 'Brass hand pump, contents unknown. It stays shut and on its bracket.',
      },
      part('engine-oil', filled('not looked yet', 'assumed')),
      part('engine-idle', used(before(ago(35)), 'own memory', { note: 'It was asleep already when I first saw it.' })),
      { ...part('soft-top', fitted('original', 'assumed')), note: 'Two bows and some threads.' },
    ],
  };
};
