/** Figures as the trade writes them: `10`, `1.5`, `1,5`, `.25`, `3/8`, `1-1/2`, `1 1/2`. */

/** The source of a regular expression that finds one figure; no groups of its own. */
export const NUMBER = String.raw`(?:\d+[- ]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+)`;

/** Fractions that are one character: `½`. */
export const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const FRACTION = /(\d?) ?([½¼¾⅓⅔⅛⅜⅝⅞])(?!\d)/g;

/** Fractions in figures and strokes: `2½` is `2 1/2`, `5⁄8` is `5/8`. */
export function plainFractions(text: string): string {
  if (!/[⁄½¼¾⅓⅔⅛⅜⅝⅞]/.test(text)) return text;
  return text.replaceAll('⁄', '/').replace(FRACTION, (_, before: string, sign: string) => {
    return `${before}${before === '' ? '' : ' '}${VULGAR[sign]}`;
  });
}

const MIXED = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/;
const DECIMAL = /^(\d*)(?:([.,])(\d+))?$/;

/**
 * A figure, never negative. Null when it is none, or when it could be two: `1,500` is one and a half to
 * some and fifteen hundred to others.
 */
export function readNumber(text: string): number | null {
  const said = text.trim();
  const mixed = MIXED.exec(said);
  if (mixed) {
    const [, whole = '0', over = '', under = ''] = mixed;
    return Number(under) === 0 ? null : Number(whole) + Number(over) / Number(under);
  }
  const decimal = DECIMAL.exec(said);
  if (!decimal || said === '') return null;
  const [, whole = '', sign = '', part = ''] = decimal;
  if (sign === ',' && part.length === 3 && Number(whole) > 0) return null;
  const value = Number(`${whole || '0'}.${part || '0'}`);
  return Number.isFinite(value) ? value : null;
}

/** Parts of an inch: of `M6x25/18` nobody knows what it says. */
const OF_AN_INCH: ReadonlySet<string | undefined> = new Set(['2', '4', '8', '16', '32', '64']);

/** A fraction that no rule has; false for what is none. */
export function isOddFraction(text: string): boolean {
  const [, over, under] = /(\d+)\/(\d+)/.exec(text) ?? [];
  return under !== undefined && (!OF_AN_INCH.has(under) || Number(over) >= Number(under));
}

/** Written as a fraction, as only inches are. */
export function isFraction(text: string): boolean {
  return text.includes('/');
}

/** `12.5 mm`. */
export function mm(value: number): string {
  return `${printNumber(value, 3)} mm`;
}

/** Without what binary fractions add: 1.5 × 25.4 is 38.1, not 38.099999999999994. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

/** A figure for the eye: at most `digits` significant ones, no trailing noughts, never an exponent for what fits a line. */
export function printNumber(value: number, digits = 6): string {
  return String(Number(value.toPrecision(digits)));
}
