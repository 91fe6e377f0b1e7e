/** What a reading says of its part, mildest first. */
export const VERDICTS = ['good', 'watch', 'act'] as const;
export type Verdict = (typeof VERDICTS)[number];
