/** Parts of which a solid bolt's strength says nothing: hollow ones, and plugs that only have to seal. */

const NAMES = [
  'plugs?',
  'bleed(?:er|ing)?s?(?: (?:screws?|valves?|nipples?))?',
  'banjos?',
  'nipples?',
  'hollow',
  'unions?',
  'senders?',
  'sensors?',
  'switch(?:es)?',
  'jets?',
  'injectors?',
  'breathers?',
  'grub(?: screws?)?',
  'set ?screws?',
].join('|');

const ANYWHERE = new RegExp(String.raw`\b(?:${NAMES})\b`, 'i');
/** A piece may be named after what it covers: only the last word says what it is. */
const LAST = new RegExp(String.raw`\b(?:${NAMES})$`, 'i');

/**
 * Whether the words of a bolt and its hole, or the name of its piece, name such a part. It only takes away what would be
 * reckoned for a solid bolt: a torque is never called too low for it, and never sure.
 */
export function maybeHollow(words: readonly (string | null)[], piece: string | null): boolean {
  return words.some((text) => text !== null && ANYWHERE.test(text)) || LAST.test(piece ?? '');
}
