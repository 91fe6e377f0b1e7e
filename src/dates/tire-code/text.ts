/** The typed number, folded to upper case and split where the reader split it. */
export interface TireCodeText {
  /** Runs of letters and digits after the prefix. */
  groups: string[];
  /** All of them joined. */
  symbols: string;
  /** DOT was typed: what follows is the number, whatever it looks like. */
  dot: boolean;
  /** DOT-R, the retread prefix. */
  retread: boolean;
  /** The small mark after the digits that some makers used in the 1990s. */
  triangle: boolean;
}

const MARK = /[▲△▴▵◀◁◂◃◄◅▶▷▸▹►▻⊲⊳∆Δ]|\bTRIANGLE\b/iu;
/** Stand-ins from the keyboard count at the end only; elsewhere they are stray punctuation. */
const STAND_IN = /[<>^]\s*$/u;
/** O is no permitted symbol, so DOT can't be the start of a plant code. */
const PREFIX =
  /^[^\p{L}\p{N}]*(?:TIN[^\p{L}\p{N}]+)?(D[.\s]*O[.\s]*T)(?:[^\p{L}\p{N}]+(R)(?![\p{L}\p{N}])|[-‐‑–](R))?/u;
const RETREAD_LENGTH = 7;

const groupsOf = (text: string): string[] => text.match(/[\p{L}\p{N}\p{M}]+/gu) ?? [];

/** Splits any text: blanks, hyphens, slashes, dots, colons and other punctuation separate. Never throws. */
export const splitTireCode = (typed: string): TireCodeText => {
  // To Unicode Δ is a letter, so the mark is taken out before the groups are cut.
  const wide = typed.normalize('NFKC');
  const triangle = MARK.test(wide) || STAND_IN.test(wide);
  const text = wide.replace(new RegExp(MARK.source, 'giu'), ' ').toUpperCase();
  const prefix = PREFIX.exec(text);
  let rest = prefix ? text.slice(prefix[0].length) : text;
  let retread = prefix?.[2] === 'R';
  if (prefix?.[3] === 'R') {
    // "DOT-R1AB2318" is a retread; in "DOT-R1A C2D3E4 2318" the R opens a plant code.
    retread = groupsOf(rest).join('').length === RETREAD_LENGTH;
    if (!retread) rest = `R${rest}`;
  }
  const groups = groupsOf(rest);
  return { groups, symbols: groups.join(''), dot: prefix !== null, retread, triangle };
};
