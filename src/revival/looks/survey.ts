/** What a first look at the car answers, in ten minutes and without tools. */
import type { Look } from '../look.ts';

export const SURVEY = {
  title: {
    name: 'Papers',
    how: 'Title or registration, its numbers against the car’s; who signs.',
    answers: {
      'in hand': { words: 'In hand, and the numbers match', verdict: 'good' },
      'can be had': { words: 'Not here, but the way to get them is known', verdict: 'watch' },
      unclear: { words: 'Missing, or the numbers don’t match', verdict: 'act' },
    },
    survey: true,
  },
  floor: {
    name: 'Floor, sills, spare-wheel well',
    how: 'Mats up, a thumb on the metal, a lamp under the sills. No jack yet.',
    answers: {
      sound: { words: 'Sound', verdict: 'good' },
      'surface rust': { words: 'Rust on the surface', verdict: 'watch' },
      soft: { words: 'Soft, patched or holed', verdict: 'act' },
    },
    survey: true,
  },
  'fuel-smell': {
    name: 'Smell of the fuel',
    how: 'Cap off, outdoors, no flame and no lamp that gets hot. Do not breathe it in.',
    answers: {
      fresh: { words: 'Like fuel', verdict: 'good' },
      stale: { words: 'Sour or weak', verdict: 'watch' },
      varnish: { words: 'Like varnish or paint', verdict: 'act' },
      empty: { words: 'Empty or dry', verdict: 'watch' },
    },
    survey: true,
  },
  'oil-stick': {
    name: 'Oil on the stick',
    how: 'Wipe, dip, smell; look under the filler cap too.',
    answers: {
      clean: { words: 'Amber to brown, at its mark', verdict: 'good' },
      black: { words: 'Black, or low', verdict: 'watch' },
      milky: { words: 'Milky, or water under it', verdict: 'act' },
      fuel: { words: 'Over its mark, or smells of fuel', verdict: 'act' },
      none: { words: 'None, or the stick is rusty', verdict: 'act' },
    },
    survey: true,
  },
  'coolant-seen': {
    name: 'Coolant in the neck',
    how: 'Only on a cold system.',
    answers: {
      clear: { words: 'Clear, at its mark', verdict: 'good' },
      rusty: { words: 'Rusty or brown', verdict: 'watch' },
      oily: { words: 'Oily or like cream', verdict: 'act' },
      water: { words: 'Plain water, by its look or by what is said', verdict: 'act' },
      empty: { words: 'Empty', verdict: 'watch' },
    },
    survey: true,
    traits: ['liquid-cooled'],
  },
  'brake-reservoir': {
    name: 'Brake fluid in its reservoir',
    how: 'Lamp through it; cap off only if dirt can’t fall in.',
    answers: {
      full: { words: 'Full and clear', verdict: 'good' },
      dark: { words: 'Dark, or with a crust', verdict: 'watch' },
      empty: { words: 'Low or empty', verdict: 'act' },
    },
    survey: true,
    without: ['cable-brakes'],
  },
  rodents: {
    name: 'Rodents',
    how: 'Smell, droppings, nests: trunk, under seats, engine bay. Gloves and mask.',
    answers: {
      none: { words: 'No trace', verdict: 'good' },
      droppings: { words: 'Droppings or smell', verdict: 'watch' },
      nest: { words: 'A nest, or chewed wires', verdict: 'act' },
    },
    survey: true,
  },
  rubber: {
    name: 'Rubber to the touch',
    how: 'Hoses, belts, boots, door seals: bend and squeeze what is in reach.',
    answers: {
      supple: { words: 'Supple, which proves little', verdict: 'watch' },
      hard: { words: 'Hard, glossy or crazed', verdict: 'watch' },
      cracked: { words: 'Open cracks, soft or sticky', verdict: 'act' },
    },
    survey: true,
  },
  rolls: {
    name: 'Does it roll?',
    how: 'On level ground, chocks ready, one person at each end, out of gear. Don’t drag it.',
    answers: {
      freely: { words: 'Freely', verdict: 'good' },
      stiffly: { words: 'Stiffly, or one wheel drags', verdict: 'watch' },
      no: { words: 'A wheel is stuck', verdict: 'act' },
    },
    survey: true,
  },
  complete: {
    name: 'Is it all there?',
    how: 'Keys, carburetor or injection, generator, trim, glass, tools, boxes of parts.',
    answers: {
      complete: { words: 'As far as seen', verdict: 'good' },
      small: { words: 'Small things are missing', verdict: 'watch' },
      dear: { words: 'Something dear is missing', verdict: 'act' },
    },
    survey: true,
  },
  tried: {
    name: 'Has anybody tried to start it?',
    how: 'Ask whoever has it. A jump lead or fresh fuel on an old tank does harm.',
    answers: {
      no: { words: 'No, by what is said', verdict: 'good' },
      turned: { words: 'Turned by the starter', verdict: 'watch' },
      ran: { words: 'It ran on its old tank', verdict: 'act' },
    },
    survey: true,
  },
} as const satisfies Readonly<Record<string, Look>>;
