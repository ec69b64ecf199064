/** Parts of which a solid steel bolt's strength says nothing: hollow ones, plugs that only have to seal, other metals. */
import { oneOf } from '../../model/one-of.ts';

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

const ANYWHERE = oneOf(NAMES, 'i');
/** A piece may be named after what it covers: only the last word says what it is. */
const LAST = oneOf(NAMES, 'i', '$');

/**
 * Whether the words of a bolt and its hole, or the name of its piece, name such a part. It only takes away what would be
 * reckoned for a solid bolt: a torque is never called too low for it, and never sure.
 */
export function maybeHollow(words: readonly (string | null)[], piece: string | null): boolean {
  return words.some((text) => text !== null && ANYWHERE.test(text)) || LAST.test(piece ?? '');
}

const METALS = 'alumini?um|alloy|brass|bronze|copper|nylon|plastic|titanium|magnesium|polyamide';
const METAL = oneOf(METALS, 'i');

/** Whether the words of a bolt say that it is made of something else than steel. */
export function notSteel(words: readonly (string | null)[]): boolean {
  const otherThanSteel = () => new RegExp(`\\b(?:${METALS})\\b(?! steel)`, 'i');
  return words.some((text) => text !== null && METAL.test(text) && otherThanSteel().test(text));
}

/** The mark that a bolt most likely has, by its words, where none is noted: stainless steel is rarely stronger than 70. */
export function likelyMark(mark: string | null, words: readonly (string | null)[]): string | null {
  const grade = /^A[1-5]$/i.exec(mark?.trim() ?? '')?.[0];
  if (grade) return `${grade.toUpperCase()}-70`;
  const stainless = words.some((text) => /\bstainless\b/i.test(text ?? ''));
  return mark === null && stainless ? 'A2-70' : null;
}
