/** How long something takes, out of a text: `24 h, sealant cures`, `2 days`, `1 h 30 min`. */

export interface Duration {
  seconds: number;
  /** The text without it: `sealant cures`. */
  rest: string;
}

const UNITS: readonly [RegExp, number][] = [
  [/^s/i, 1],
  [/^m/i, 60],
  [/^h/i, 3600],
  [/^d/i, 86_400],
  [/^w/i, 604_800],
];
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
/** Single letters small only: `2 S` are two bolts. */
const UNIT =
  '(?:[Ss]ec(?:ond)?s?|s|[Mm]in(?:ute)?s?|[Hh](?:ours?|rs?)?|[Dd]ays?|d|[Ww](?:eeks?|ks?))';
const RANGE = String.raw`(?:${NUMBER}\s*(?:\.{2,3}|–|—|-|to)\s*)?`;
/** A figure or a range of figures, its unit, and no letter behind it: `24-48 h`, `24-hour`. */
const PART = String.raw`${RANGE}${NUMBER}[\s-]*${UNIT}(?![\p{L}\d])`;
const WHOLE = new RegExp(String.raw`(?<![\p{L}\d.,])${PART}(?:\s*(?:and\s+)?${PART})*`, 'u');
const EACH = new RegExp(String.raw`${RANGE}(${NUMBER})[\s-]*(${UNIT})(?![\p{L}\d])`, 'gu');

/**
 * The first duration in the text, several parts added up; of a range the longer end, because nothing is cured
 * too long. Null when there is none (`until the paint is dry`).
 */
export function readDuration(text: string): Duration | null {
  const found = WHOLE.exec(text);
  if (!found) return null;
  let seconds = 0;
  for (const [, figure = '', unit = ''] of found[0].matchAll(EACH)) {
    const worth = UNITS.find(([pattern]) => pattern.test(unit))?.[1] ?? 0;
    seconds += Number(figure.replace(',', '.')) * worth;
  }
  const before = text.slice(0, found.index).replace(/[\s,;:]+$/, '');
  const behind = text.slice(found.index + found[0].length).replace(/^[\s,;:]+/, '');
  return { seconds, rest: [before, behind.trimEnd()].filter((t) => t !== '').join(' ') };
}

/** `45 s`, `20 min`, `1 h 30 min`, `24 h`, `2 days`, to the minute from one minute up. */
export function sayDuration(seconds: number): string {
  if (seconds < 60) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (hours >= 48 && minutes % 1440 === 0) return `${minutes / 1440} days`;
  const parts = [hours > 0 ? `${hours} h` : '', minutes % 60 > 0 ? `${minutes % 60} min` : ''];
  return parts.filter((p) => p !== '').join(' ');
}
