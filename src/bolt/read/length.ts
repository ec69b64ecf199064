/** Lengths and depths of thread as people write them, in mm. */
import { pattern } from '../../model/pattern.ts';
import type { ThreadDepth } from '../../model/types.ts';
import { isFraction, isOddFraction, NUMBER, plainFractions, readNumber, tidy } from './numbers.ts';

/** mm in an inch, exact since 1959. */
export const INCH = 25.4;

/** The source of a regular expression that finds a unit of length; no groups of its own. */
export const LENGTH_UNIT = String.raw`(?:mm\b|cm\b|in(?:ch(?:es)?)?\b\.?|"|″|'')`;

const LENGTH = pattern(() => `^(${NUMBER})\\s*(${LENGTH_UNIT})?$`, 'i');

/** mm of one such unit; null when it is not a unit of length. */
function mmOf(unit: string): number | null {
  const name = unit.toLowerCase().replace('.', '');
  if (name === 'mm') return 1;
  if (name === 'cm') return 10;
  return ['in', 'inch', 'inches', '"', '″', "''"].includes(name) ? INCH : null;
}

/**
 * A length in mm: `25`, `25 mm`, `12,5`, `2.5 cm`, `1-1/2 in`, `3/8"`. A fraction without a unit is in
 * inches, any other bare figure in `bare` (mm unless said). Null when it is not a length.
 */
export function readLength(text: string, bare: 'mm' | 'in' = 'mm'): number | null {
  const said = plainFractions(text).trim();
  const found = /^\d+$/.test(said) ? [said, said] : LENGTH.exec(said);
  const value = found?.[1] === undefined ? null : readNumber(found[1]);
  if (!found || value === null || isOddFraction(found[1] ?? '')) return null;
  const unit = found[2] ?? (isFraction(found[1] ?? '') ? 'in' : bare);
  const mm = mmOf(unit);
  return mm === null ? null : tidy(value * mm);
}

/** mm: no bolt is shorter. `1` begins a length, or is an inch without its sign. */
const SHORTEST = 3;

/** Length of a bolt in mm, as it is said without its kind: `25`, `1-1/4`, `1.5"`; null for one that no bolt has. */
export function readBoltLength(text: string): number | null {
  const mm = readLength(text);
  return mm !== null && mm >= SHORTEST ? mm : null;
}

/** What stands between the two ends of a range; a bare hyphen comes last, because `1-1/2` is one figure. */
const RANGES = [/^(.*?)\s*(?:\.{2,3}|…|–|—|\bto\b)\s*(.*)$/i, /^(.*?)\s*-\s*(.*)$/];
const UNIT_AT_END = pattern(() => `(${LENGTH_UNIT})$`, 'i');

/**
 * Usable thread below the joint face: `3..19`, `19` (from the face), `3..` (only the start is known),
 * `1/4..3/4 in`. Null when it cannot be read or no thread would be left.
 */
export function readDepth(text: string): ThreadDepth | null {
  const said = plainFractions(text).trim().replace(/\s+/g, ' ');
  const whole = readLength(said);
  if (whole !== null) return whole > 0 ? { from: 0, to: whole } : null;
  const ends = RANGES[0]?.exec(said) ?? RANGES[1]?.exec(said);
  if (!ends) return null;
  const [, a = '', b = ''] = ends;
  if (a === '' && b === '') return null;
  const unit = UNIT_AT_END.exec(b)?.[1] ?? '';
  const from = a === '' ? 0 : readLength(UNIT_AT_END.test(a) ? a : `${a} ${unit}`);
  const to = b === '' ? null : readLength(b);
  if (from === null || (b !== '' && to === null)) return null;
  return to !== null && to <= from ? null : { from, to };
}
