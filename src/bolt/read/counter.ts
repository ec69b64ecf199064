/** What a machine has run, as people write it: `41230 km`, `41.230 km`, `1,204 h`, `120 operating hours`. */
import { pattern } from '../../model/pattern.ts';

export interface CounterReading {
  value: number;
  unit: 'km' | 'h';
}

/** km in a mile, exact. */
const MILE = 1.609344;
const UNIT = '(km|kms|kilomet(?:er|re)s?|mi|miles?|h|hrs?|hours?|operating hours?)';
/** Groups of three digits may be parted; a part of one or two digits behind a dot or comma is a fraction. */
const FIGURE = String.raw`(\d{1,3}(?:[.,' ’]\d{3})+|\d+)(?:[.,](\d{1,2}))?`;
const READING = pattern(() => String.raw`(?<![\p{L}\d.,])${FIGURE}\s*${UNIT}(?![\p{L}\d/])`, 'iu');

/** The first reading in a text, miles as km; null when there is none. */
export function readReading(text: string): CounterReading | null {
  const [, whole, part = '0', unit = ''] = READING.exec(text) ?? [];
  if (whole === undefined) return null;
  const value = Number(`${whole.replace(/\D/g, '')}.${part}`);
  if (/^mi/i.test(unit)) return { value: value * MILE, unit: 'km' };
  return { value, unit: /^k/i.test(unit) ? 'km' : 'h' };
}

/** The same as it is written there: `41.230 km`. */
export function readingText(text: string): string | null {
  return READING.exec(text)?.[0] ?? null;
}

/** What a counter can show: nothing runs farther, or longer. */
const MOST: Readonly<Record<CounterReading['unit'], number>> = { km: 10_000_000, h: 1_000_000 };

/** A text that is a reading from its first character on, with no figure behind it, as a counter shows it; else null. */
export function readCounter(text: string): CounterReading | null {
  const said = text.trim();
  const found = READING.exec(said);
  const read = readReading(said);
  if (!found || !read || found.index !== 0 || read.value > MOST[read.unit]) return null;
  return /\d/.test(said.slice(found[0].length)) ? null : read;
}

/** The text without its reading. */
export function withoutReading(text: string): string {
  return text.replace(new RegExp(READING.made, 'giu'), ' ');
}

export function sayCounter({ value, unit }: CounterReading): string {
  return `${Math.round(value * 10) / 10} ${unit}`;
}
