/** Letters of other alphabets as the presses that stand at their place on a Latin keyboard. */
import type { Press } from './press.ts';

/** Rows of keys of a US keyboard, and of others in the same places. */
const LATIN = ['`qwertyuiop[]', "asdfghjkl;'", 'zxcvbnm,./'];
/** The first that has a letter says its place. Russian, as ГОСТ Р 52652 and the keyboards sold have it; Ukrainian and Belarusian differ in a few places. */
const CYRILLIC = [
  ['ёйцукенгшщзхъ', 'фывапролджэ', 'ячсмитьбю.'],
  ['ґйцукенгшщзхї', 'фівапролджє', 'ячсмитьбю.'],
  ["ёйцукенгшўзх'", 'фывапролджэ', 'ячсмітьбю.'],
];
/** Greek, as ΕΛΟΤ 1000 and the keyboards sold have it. */
const GREEK = [['`;ςερτυθιοπ[]', "ασδφγηξκλ΄'", 'ζχψωβνμ,./']];

const BY_PLACE: ReadonlyMap<string, Press> = new Map(
  [...GREEK, ...CYRILLIC.toReversed()].flatMap((rows) =>
    rows.flatMap((row, at) =>
      [...row].flatMap((letter, column): [string, Press][] => {
        const latin = LATIN[at]?.[column] ?? '';
        // What is on a Latin keyboard too is itself.
        return /[a-z`[\];',./]/.test(letter) || latin === '' ? [] : [[letter, latin]];
      }),
    ),
  ),
);

/** The press at the place of this letter, in lower case; null where it is no letter of these alphabets. */
export function atItsPlace(press: Press): Press | null {
  return BY_PLACE.get(press.toLowerCase()) ?? null;
}
