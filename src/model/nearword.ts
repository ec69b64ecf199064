/**
 * The known word that somebody probably meant: the nearest by the letters typed wrong, left out, put in or
 * swapped (optimal string alignment distance; Damerau 1964, and Levenshtein 1966 for the rest).
 */

/** A third of the letters may be wrong; one always in words of three letters and more. */
const allowed = (length: number): number => (length < 3 ? 0 : Math.max(1, Math.floor(length / 3)));
/** Longer words are not compared: nobody typed them by mistake. */
const LONGEST = 40;
/** A list longer than this was made by no person; its first words must do. */
const MOST_WORDS = 2000;

/** The nearest of `known`, the first of equals; null when none is near. Capitals do not count. */
export function near(word: string, known: Iterable<string>): string | null {
  if (word.length > LONGEST) return null;
  const typed = word.toLowerCase();
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  let left = MOST_WORDS;
  for (const option of known) {
    left -= 1;
    if (left < 0) break;
    const other = option.toLowerCase();
    if (other === typed) return option === word ? null : option;
    const most = allowed(Math.max(typed.length, other.length));
    if (Math.abs(other.length - typed.length) > most) continue;
    const d = distance(typed, other);
    if (d <= most && d < least) {
      best = option;
      least = d;
    }
  }
  return best;
}

/**
 * The known name of which this is most likely a slip of one or two letters, and not another thing with a name like it: names
 * that differ by a figure are two. Null when there is none.
 */
export function slipOf(name: string, known: Iterable<string>): string | null {
  const close = near(name, known);
  if (close === null || figuresIn(close) !== figuresIn(name)) return null;
  const most = Math.max(name.length, close.length) < LONG ? 1 : 2;
  return distance(name.toLowerCase(), close.toLowerCase()) <= most ? close : null;
}

/** In a name as long as this two letters may be wrong. */
const LONG = 8;
const figuresIn = (name: string): string => name.replace(/\D+/g, ' ').trim();

/** Letters put in, left out or replaced, and neighbours swapped, that make one word of the other. */
export function distance(a: string, b: string): number {
  let twoAbove: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let d = Math.min(
        (above[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (above[j - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped && !same) d = Math.min(d, (twoAbove[j - 2] ?? 0) + 1);
      row.push(d);
    }
    twoAbove = above;
    above = row;
  }
  return above[b.length] ?? 0;
}

/** `Did you mean tray? `; nothing for no word. */
export function didYouMean(word: string | null): string {
  return word === null ? '' : `Did you mean ${word}? `;
}
