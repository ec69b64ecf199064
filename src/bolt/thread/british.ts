/**
 * British threads: BSW and BSF (BS 84, flanks at 55°), BA (BS 93, 47.5°), BSB (26 to the inch) and CEI or BSC (BS 811,
 * 60°). Known by diameter and pitch, so that none is taken for an inch or metric neighbour; of their strength nothing is
 * reckoned here.
 */
import { pattern } from '../../model/pattern.ts';
import { INCH } from '../read/length.ts';
import { readNumber } from '../read/numbers.ts';

export interface British {
  /** `1/4 BSW`, `2 BA`. */
  name: string;
  series: 'BSW' | 'BSF' | 'BSB' | 'CEI' | 'BA';
  /** Outside diameter and pitch, mm; null for a size that is not in the table. */
  d: number | null;
  pitch: number | null;
  /** Between the flanks, degrees. */
  flanks: number;
}

/** Threads to the inch. */
const WHITWORTH = {
  BSW: {
    '1/16': 60,
    '3/32': 48,
    '1/8': 40,
    '5/32': 32,
    '3/16': 24,
    '7/32': 24,
    '1/4': 20,
    '5/16': 18,
    '3/8': 16,
    '7/16': 14,
    '1/2': 12,
    '9/16': 12,
    '5/8': 11,
    '11/16': 11,
    '3/4': 10,
    '7/8': 9,
    '1': 8,
  },
  BSF: {
    '3/16': 32,
    '7/32': 28,
    '1/4': 26,
    '5/16': 22,
    '3/8': 20,
    '7/16': 18,
    '1/2': 16,
    '9/16': 16,
    '5/8': 14,
    '11/16': 14,
    '3/4': 12,
    '7/8': 11,
    '1': 10,
  },
} as const satisfies Record<string, Record<string, number>>;
const FLANKS = { BSW: 55, BSF: 55, BSB: 55, CEI: 60, BA: 47.5 } as const;

const SERIES: readonly [British['series'], string][] = [
  ['BSW', 'BSW|Whitworth|Whit\\.?|W(?:hit)?'],
  ['BSF', 'BSF'],
  ['BSB', 'BSB'],
  ['CEI', 'CEI|BSC'],
];
const SIZE = String.raw`(\d+\/\d+|1)["″]?(?:\s?-\s?(\d{1,2}))?`;
const PATTERNS = SERIES.flatMap(([series, words]) => [
  [series, pattern(() => `^${SIZE}\\s*(?:TPI\\s*)?(?:${words})$`, 'i')] as const,
  [series, pattern(() => `^(?:${words})\\s*${SIZE}$`, 'i')] as const,
]);
const BA = /^(?:(?:no\.?\s?)?(\d{1,2})\s?B\.?A\.?|B\.?A\.?\s?(\d{1,2}))$/i;

/** Each pitch is 0.9 of the one before, the diameter 6 p^1.2: BS 93, both rounded as there. */
function ba(number: number): British {
  const pitch = Math.round(0.9 ** number * 100) / 100;
  const d = Number((6 * pitch ** 1.2).toPrecision(2));
  return { name: `${number} BA`, series: 'BA', d, pitch, flanks: FLANKS.BA };
}

function perInch(series: British['series'], size: string, said: string | undefined): number | null {
  if (said !== undefined) return Number(said);
  if (series === 'BSB') return 26;
  const table: Readonly<Record<string, number>> =
    series === 'BSW' || series === 'BSF' ? WHITWORTH[series] : {};
  return table[size] ?? null;
}

/** A British thread by its name; null for any other. */
export function britishOf(text: string): British | null {
  const said = text.trim();
  const [, before, behind] = BA.exec(said) ?? [];
  const number = before ?? behind;
  if (number !== undefined && Number(number) <= 25) return ba(Number(number));
  for (const [series, named] of PATTERNS) {
    const [, size, tpi] = named.exec(said) ?? [];
    if (size === undefined) continue;
    const d = readNumber(size);
    const n = perInch(series, size, tpi);
    const usual = tpi === undefined || n === perInch(series, size, undefined);
    return {
      name: `${usual ? size : `${size}-${tpi}`} ${series}`,
      series,
      d: d === null ? null : d * INCH,
      pitch: n === null ? null : INCH / n,
      flanks: FLANKS[series],
    };
  }
  return null;
}
