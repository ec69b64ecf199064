/** Quantities with their units: how they are read, printed and turned into one another. */
import { pattern } from '../../model/pattern.ts';
import type { Quantity } from '../../model/types.ts';
import { NUMBER, printNumber, readNumber, tidy } from './numbers.ts';
import { FACTORS, UNIT, unitOf } from './unit-names.ts';

const RANGE = String.raw`\s*(?:\.{2,3}|…|-|–|—|\bto\b)\s*`;
const SPREAD = String.raw`\s*(?:±|\+\/-)\s*`;
const FIGURE = `(${NUMBER})(?:(${RANGE}|${SPREAD})(${NUMBER}))?\\s*(${UNIT})`;
const WHOLE = pattern(() => `^${FIGURE}$`, 'i');

function quantityFrom(found: RegExpExecArray | null): Quantity | null {
  if (!found) return null;
  const [, first = '', between = '', second, unitText = ''] = found;
  const value = readNumber(first);
  const unit = unitOf(unitText);
  if (value === null || unit === null) return null;
  if (second === undefined) return { value, to: null, unit };
  const other = readNumber(second);
  if (other === null) return null;
  if (/[±+]/.test(between)) {
    return other <= value ? { value: tidy(value - other), to: tidy(value + other), unit } : null;
  }
  return other >= value ? { value, to: other, unit } : null;
}

/**
 * `10 N·m`, `8..12 N·m`, `8-12 Nm`, `10 ± 2 Nm`, `95 lbf·in`, `20..30 mm`, `90°`. The unit comes back as the
 * program prints it. Null without a unit, with one it does not know, or when the range runs backwards.
 */
export function readQuantity(text: string): Quantity | null {
  return quantityFrom(WHOLE.exec(text.trim()));
}

/** `10 N·m`, `8..12 N·m`, `90°`; six significant digits at most. */
export function printQuantity(q: Quantity): string {
  const range = q.to === null ? '' : `..${printNumber(q.to)}`;
  const space = q.unit === '°' ? '' : ' ';
  return `${printNumber(q.value)}${range}${space}${q.unit}`;
}

/**
 * A value in another unit; null when one of the units is not known or they do not measure the same thing.
 * Factors from the definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s².
 */
export function convert(value: number, from: string, to: string): number | null {
  const a = FACTORS.get(unitOf(from) ?? '');
  const b = FACTORS.get(unitOf(to) ?? '');
  if (!a || !b || a.of !== b.of) return null;
  return a === b ? value : (value * a.factor) / b.factor;
}
