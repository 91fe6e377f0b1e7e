/**
 * The clocks a part or fluid can carry, each with its own dates.
 * `serviced` is the last time it was serviced or looked at; `printed` is a last valid day stated on the part itself.
 */
export const CLOCKS = ['made', 'fitted', 'filled', 'serviced', 'used', 'printed'] as const;
export type Clock = (typeof CLOCKS)[number];
