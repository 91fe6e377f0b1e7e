import type { Air, Shelter } from '../ageing/place.ts';

export const AIR_WORDS: Readonly<Record<Air, string>> = {
  coast: 'Coast',
  inland: 'Inland',
  desert: 'Desert',
};

export const SHELTER_WORDS: Readonly<Record<Shelter, string>> = {
  heated: 'Heated room',
  unheated: 'Unheated room, dry floor',
  damp: 'Unheated room, damp or earth floor',
  covered: 'Roof without walls, or a cover outdoors',
  open: 'Open sky',
};
