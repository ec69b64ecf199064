/** Counts and lists as one says them. */

/** `1 bolt`, `4 bolts`. */
export function many(n: number, one: string, more = `${one}s`): string {
  return `${n} ${n === 1 ? one : more}`;
}

/** Nothing that anybody can see: no character, blanks of any sort, or signs without width. */
export function isBlank(text: string): boolean {
  return /^[\s\p{Cc}\p{Cf}\p{Z}\u115f\u1160\u2800\u3164\uffa0]*$/u.test(text);
}

/** With a large first letter. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `1`, `1 and 2`, `1, 2 and 3`; or with another word before the last. */
export function list(words: readonly string[], joined = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${joined} ${words.at(-1)}`;
}

/** `3 and 9`: of holes and the like. */
export function listNames(named: readonly { name: string }[]): string {
  return list(named.map(({ name }) => name));
}

/** `Alternator cover and Gear lever`: pieces by what the file calls them. */
export function listPieces(pieces: readonly { spec: { name: string } }[]): string {
  return listNames(pieces.map(({ spec }) => spec));
}

/** With a full stop, where it does not end by itself. */
export function sentence(text: string): string {
  return /[.!?…]$/.test(text) ? text : `${text}.`;
}

/** `in cup 2`; a place that was typed with its own word keeps it: `in the lever`, `on the shelf`. */
export function inPlace(place: string): string {
  return /^(?:in|on|at|under|behind|beside|inside)\b/i.test(place) ? place : `in ${place}`;
}
