/** Two torques in one text that need not be two stages: what says so was not read as belonging to one of them. */

/** A part of a printed text, and the characters before it. */
export interface SaidAt {
  text: string;
  at: number;
}

/** Between torques that follow one another; without it they may be one or the other. */
const ONE_AFTER_ANOTHER =
  /\b(?:then|dann|danach|puis|ensuite|poi|quindi|luego|sedan)\b|→|⇒|->|=>|\b(?:step|stage|pass|next|final(?:ly)?|followed|stufe|schritt|étape|etape|fase|paso)\b|loosen|slacken|back/i;

export interface Torques {
  text: string;
  /** Where each stands, and its upper end in N·m. */
  torques: readonly { at: number; worth: number }[];
  /** What is said of the thread. */
  threads: readonly SaidAt[];
}

/** `8 N·m oiled, 10 N·m dry` is one or the other, and no two stages: what is said of the thread belongs to one. */
export function threadOfOne({ text, torques, threads }: Torques): readonly SaidAt[] {
  if (torques.length < 2) return [];
  const [first, last] = [torques[0]?.at ?? 0, torques.at(-1)?.at ?? 0];
  const between = threads.some(({ at }) => at > first && at < last);
  const staged = threads.length < 2 && ONE_AFTER_ANOTHER.test(text.slice(first, last));
  return !staged && (between || threads.length > 1) ? threads : [];
}

/**
 * `10 N·m upper, 8 N·m lower`, `40 N·m, 20 N·m`: nothing says that one torque follows the other, with `words` beside
 * them, or less the second time. Which is whose was not read.
 */
export function whoseTorque(
  { text, torques }: Torques,
  words: readonly SaidAt[],
): readonly SaidAt[] {
  const [first, last] = [torques[0]?.at ?? 0, torques.at(-1)?.at ?? 0];
  if (torques.length < 2 || ONE_AFTER_ANOTHER.test(text.slice(first, last))) return [];
  const said = words.filter((w) => /\p{L}/u.test(w.text));
  if (said.length > 0) return said;
  const falls = torques.some(({ worth }, i) => worth < (torques[i - 1]?.worth ?? 0));
  return falls ? [{ text: text.slice(last), at: last }] : [];
}
