/** A line of text that is being typed: pure, by grapheme. */

/** The text in graphemes and the place of the cursor, 0 … its length; `past` holds what undo goes back to. */
export interface Field {
  text: readonly string[];
  cursor: number;
  past: readonly { text: readonly string[]; cursor: number }[];
}
