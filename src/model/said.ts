/** Texts of the file that a manual can have wrong: see `TextSaid`. */
import type { TextSaid } from './types.ts';

/** A text that is so, as it stands in the file. */
export function asPrinted(text: string): TextSaid {
  return { text, printed: null };
}

/** What counts, without what is printed. */
export function textsIn(said: readonly TextSaid[]): string[] {
  return said.map(({ text }) => text);
}
