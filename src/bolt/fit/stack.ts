/** What lies under a head: `clip`, `washer-1.6mm`. Thickness in mm where it is known, never guessed. */

/** A word may carry its thickness: a figure with `mm` at its end. */
const OWN_THICKNESS = /(?:^|[^\d.])(\d+(?:\.\d+)?)mm$/i;

/** Thickness of one thing; null when nobody has said it. */
function thicknessOf(word: string, known: ReadonlyMap<string, number> = new Map()): number | null {
  const own = OWN_THICKNESS.exec(word)?.[1];
  return own === undefined ? (known.get(word) ?? null) : Number(own);
}

function sum(
  words: readonly string[],
  known: ReadonlyMap<string, number> | undefined,
): number | null {
  return words.reduce<number | null>((total, word) => {
    const t = thicknessOf(word, known);
    return total === null || t === null ? null : total + t;
  }, 0);
}

/** w, the sum of what is under the head; 0 for nothing, null when one thickness is not known. */
export function stackOf(
  words: readonly string[],
  known?: ReadonlyMap<string, number>,
): number | null {
  return sum(words, known);
}

/** By how much one stack is thicker than another; what lies in both needs no thickness. */
export function stackDifference(
  a: readonly string[],
  b: readonly string[],
  known?: ReadonlyMap<string, number>,
): number | null {
  if (a === b) return 0;
  const rest = [...b];
  const onlyA = a.filter((word) => {
    const i = rest.indexOf(word);
    if (i >= 0) rest.splice(i, 1);
    return i < 0;
  });
  const [more, less] = [sum(onlyA, known), sum(rest, known)];
  return more === null || less === null ? null : more - less;
}
