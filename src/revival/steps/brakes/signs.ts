/** What brings more work into the brakes than years alone. */
export const DAMP = ['damp', 'open', 'coast', 'flooded'] as const;
export const WEEPS = { seen: { look: 'weep', is: ['weeps'] } } as const;
export const DRAGS = { seen: { look: 'release', is: ['drags'] } } as const;
export const SINKS = { seen: { look: 'pedal', is: ['sinks'] } } as const;
export const FOUL = { seen: { look: 'brake-reservoir', is: ['empty', 'dark'] } } as const;
