/** What a person typed: all that could be read, or every fault with its place. */

export interface TypedFault {
  code:
    | 'no-kind'
    | 'unknown-kind'
    | 'no-figure'
    | 'unknown-hole'
    | 'twice'
    | 'too-many'
    | 'too-few';
  /** Where the word stands in the text, in UTF-16 units from 0. */
  at: number;
  /** The word itself. */
  word: string;
  /** What is wrong with it, and the way out. */
  say: string;
}

/** All that could be read, or every fault. */
export type Typed<T> = { ok: true; value: T } | { ok: false; faults: TypedFault[] };

export function typed<T>(value: T, faults: TypedFault[]): Typed<T> {
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value };
}

export function noFigure(at: number, word: string, where: string): TypedFault {
  const say = `${word || 'Nothing'} is no height for ${where}: type mm, such as 12.5, or - where it was not measured.`;
  return { code: 'no-figure', at, word, say };
}

/** `-` stands for a height that was not measured. */
export function isDash(word: string): boolean {
  return /^[-–—]$/.test(word);
}
