/** Things that seal, by the words of the trade. What becomes of them is common practice, no source. */

/** Under a head: flat for good once it was tight, and it seals once. */
const FLATTENED = /^(?:copper|crush|alumin(?:iu|u)m|alu|fibre|fiber|bonded)\b/i;
/** Rubber and paper may do again: whoever has it in the hand sees it. */
const MAYBE = /^(?:seal(?:ing)?|o-?ring|gasket)s?\b/i;
const MAYBE_AGAIN = /\b(?:o-?rings?|seals?|gaskets?)\b(?![ -]?washer)/i;

/** Whether what lies under a head seals once, or may do again; null where it seals nothing. */
export function sealsUnder(word: string): 'once' | 'maybe' | null {
  if (FLATTENED.test(word)) return 'once';
  if (!MAYBE.test(word)) return null;
  return MAYBE_AGAIN.test(word) ? 'maybe' : 'once';
}
