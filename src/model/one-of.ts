/**
 * Names looked for in a text as words of their own. A pattern of many names takes longest to be made, and most texts
 * have no word that begins as any of them: those are not held against it.
 */
export interface OneOf {
  test(text: string): boolean;
}

/** All that were made, for the test that each can be asked so. */
export const ALL_NAMES: string[] = [];

/** The first three letters of each word of the text that was asked about last. */
let last = { text: '', begins: [''] };

function beginningsOf(text: string): readonly string[] {
  if (last.text !== text) {
    const found = text.match(/(?<![A-Za-z0-9_])[A-Za-z0-9_]{1,3}/g) ?? [];
    last = { text, begins: found.map((letters) => letters.toLowerCase()) };
  }
  return last.begins;
}

const isLetter = (letters: string): boolean => letters >= 'a' && letters < '{';

/** Some name begins with a figure: `\\d{3} ?v`. */
const hasFigures = (names: string): boolean => names.startsWith('\\') || names.includes('|\\');

/**
 * `\b(?:names)\b`, or with `$` for the last `\b`. Each name begins with three small letters, or fewer and a blank or a
 * dash, or with no letter; they stand in the text so, or with the flag `i` in any.
 */
export function oneOf(names: string, flags: '' | 'i' = '', end: '\\b' | '$' = '\\b'): OneOf {
  ALL_NAMES.push(names);
  let pattern: RegExp | null = null;
  // What stands behind the first word of a name begins none.
  let firsts: string | null = null;
  const mayBegin = (letters: string) => {
    if (!isLetter(letters)) return hasFigures(names);
    if (!names.includes(letters)) return false;
    firsts ??= names.replace(/ (?:\(\?:[^()]*\)|[a-z]+)/g, ' ');
    return firsts.includes(letters);
  };
  return {
    test(text) {
      if (!beginningsOf(text).some(mayBegin)) return false;
      pattern ??= new RegExp(`\\b(?:${names})${end}`, flags);
      return pattern.test(text);
    },
  };
}
