/** One quiet line of last time: what hurts most, first. */
import { MONTHS } from '../model/time.ts';
import { list } from '../model/words.ts';
import { type About, type Known, PASSED_LATER } from './remember.ts';

/** `November`; `November 2025` where that is another year. */
function sayMonth(day: string, now: string): string {
  const name = MONTHS[Number(day.slice(5, 7)) - 1] ?? day;
  const year = day.slice(0, 4);
  return year === now.slice(0, 4) ? name : `${name} ${year}`;
}

/** What is told in a few words, in this order. */
const TOLD: readonly [About, (all: readonly Known[]) => string][] = [
  ['found', (all) => `it was ${list(all.map((k) => short(k.text)))}`],
  ['stuck', (all) => `${holes(all)} stuck`],
  ['broke', (all) => all.map((k) => short(k.text)).join(', ')],
  ['part', (all) => short(all[0]?.text ?? '')],
  ['insert', (all) => `mended at ${holes(all)}`],
  ['true', (all) => short(all[0]?.text ?? '')],
  ['not', (all) => `did not fit: ${short(all[0]?.text ?? '')}`],
  ['failed', (all) => failed(all[0]?.text ?? '')],
  ['kept', (all) => short(all[0]?.text ?? '')],
];
const MOST = 3;
/** Of one piece, where several are told of. */
const MOST_OF_ONE = 2;
const LONGEST = 40;

/** Cut behind a word. */
function short(text: string): string {
  if (text.length <= LONGEST) return text;
  const start = text.slice(0, LONGEST - 1);
  const whole = start.slice(0, Math.max(start.lastIndexOf(' '), LONGEST / 2));
  return `${whole.replace(/[\s,;:(]+$/, '')}…`;
}

/** A test that passed in the end is not told as failed. */
function failed(text: string): string {
  const end = `; ${PASSED_LATER}`;
  return text.endsWith(end)
    ? `failed at first: ${short(text.slice(0, -end.length))}`
    : `failed: ${short(text)}`;
}

const holes = (all: readonly Known[]): string =>
  list([...new Set(all.flatMap((k) => k.hole?.split(', ') ?? []))]);

function told(known: readonly Known[]): string[] {
  return TOLD.flatMap(([about, say]) => {
    const all = known.filter((k) => k.about === about);
    return all.length === 0 ? [] : [say(all)];
  });
}

function sentence(head: string, parts: readonly string[], between: string): string {
  const said = parts.slice(0, MOST).join(between);
  const more = parts.length > MOST ? `${between}and more` : '';
  const text = `${head}${said === '' ? '' : `: ${said}${more}`}`;
  return text.endsWith('…') ? text : `${text}.`;
}

/**
 * Of one piece: `You had this off in November: 9 stuck, BK-500-2103 gasket, mended at 5.` Null where it was never off.
 */
export function quietLine(known: readonly Known[], day: string | null, now: string): string | null {
  if (day === null) return null;
  return sentence(`You had this off in ${sayMonth(day, now)}`, told(known), ', ');
}

/**
 * Of the whole machine: which job that was, and at which piece: `Last time on this machine, November 2025 (Weeps oil):
 * Left cover: 4 stuck; it was Plugs fouled.` `names`: what each piece is called.
 */
export function quietOfMachine(
  known: readonly Known[],
  job: string,
  day: string,
  now: string,
  names: (piece: string) => string,
): string {
  const pieces = [...new Set(known.map((k) => k.piece))];
  const parts = pieces.flatMap((piece) => {
    const all = told(known.filter((k) => k.piece === piece)).slice(0, MOST_OF_ONE);
    const of = piece === null ? '' : `${names(piece)}: `;
    return all.length === 0 ? [] : [`${of}${all.join(', ')}`];
  });
  return sentence(`Last time on this machine, ${sayMonth(day, now)} (${job})`, parts, '; ');
}
