declare module 'edtf' {
  /** Parses an EDTF string; throws where it is none. The package ships no types. */
  export default function edtf(text: string): unknown;
}
