/** One quiet line of last time: what hurts most, first. */
import { MONTHS } from '../model/time.ts';
import { list } from '../model/words.ts';
import type { About, Known } from './remember.ts';

/** `November`, or `November 2024` where that is more than a year ago. */
export function sayMonth(day: string, now: string): string {
  const name = MONTHS[Number(day.slice(5, 7)) - 1] ?? day;
  const ago = Number(now.slice(0, 4)) * 12 + Number(now.slice(5, 7));
  const then = Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7));
  return ago - then < 12 ? name : `${name} ${day.slice(0, 4)}`;
}

/** What is told in a few words, in this order. */
const TOLD: readonly [About, (all: readonly Known[]) => string][] = [
  ['stuck', (all) => `${holes(all)} stuck`],
  ['broke', (all) => all.map((k) => short(k.text)).join(', ')],
  ['part', (all) => short(all[0]?.text ?? '')],
  ['insert', (all) => `mended at ${holes(all)}`],
  ['true', (all) => short(all[0]?.text ?? '')],
  ['not', (all) => `did not fit: ${short(all[0]?.text ?? '')}`],
  ['failed', (all) => `failed: ${short(all[0]?.text ?? '')}`],
  ['kept', (all) => short(all[0]?.text ?? '')],
];
const MOST = 3;
const LONGEST = 40;

function short(text: string): string {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1).trimEnd()}…`;
}

const holes = (all: readonly Known[]): string =>
  list([...new Set(all.flatMap((k) => k.hole?.split(', ') ?? []))]);

/** `You had this off in November: 9 stuck, BK-500-2103 gasket, mended at 5.` Null where nothing was learnt. */
export function quietLine(known: readonly Known[], day: string | null, now: string): string | null {
  const parts = TOLD.flatMap(([about, say]) => {
    const all = known.filter((k) => k.about === about);
    return all.length === 0 ? [] : [say(all)];
  });
  if (day === null) return null;
  const said = parts.slice(0, MOST).join(', ');
  const more = parts.length > MOST ? ', and more' : '';
  return `You had this off in ${sayMonth(day, now)}${said === '' ? '.' : `: ${said}${more}.`}`;
}
