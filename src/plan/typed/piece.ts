/** A piece as somebody names it with it in the hand: its name, and its bolts behind it if it has any. */
import { slug } from '../../model/slug.ts';

export interface TypedPiece {
  /** `left-cover`; empty where nothing of the text makes a name. */
  key: string;
  /** As for a row that came out; null where nothing is said of bolts. */
  row: string | null;
}

/** Most bolts that are counted instead of named. */
const MOST = 99;
/** A kind with what lies under its head, a length, still in, nobody knows. */
const WORD = /^(?:[a-z](?:\+[\w+-]*\w)?|\.\d[\d.]*|[!?])$/i;

/** `left cover 10` has ten bolts that nobody named yet; `left cover s s m+clip` has its row; `fuel pipe` is a name. */
export function typedPiece(text: string): TypedPiece {
  // `left cover, 10 bolts` is said as often as `left cover 10`.
  const words = text
    .trim()
    .replace(/[\s,]+(\d{1,2}) (?:bolts?|screws?)$/i, ' $1')
    .split(/\s+/);
  const last = words.at(-1) ?? '';
  const count = /^\d{1,2}$/.test(last) ? Number(last) : 0;
  if (words.length > 1 && count > 0 && count <= MOST) {
    return { key: slug(words.slice(0, -1).join(' ')), row: Array(count).fill('?').join(' ') };
  }
  let from = words.length;
  while (from > 1 && WORD.test(words[from - 1] ?? '')) from -= 1;
  const row = words.slice(from);
  return {
    key: slug(words.slice(0, from).join(' ')),
    row: row.length > 0 ? row.join(' ') : null,
  };
}
