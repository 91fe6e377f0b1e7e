/** What was wrong with something a person gave: which field, and what to do about it. */
export interface Fault {
  field: string;
  message: string;
  /** Where the text can mean several things: what to choose from. */
  choices?: { value: string; label: string }[];
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

export const done = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const refused = (...faults: Fault[]): Outcome<never> => ({ ok: false, faults });
