/** How many bolts there should be, and what it means when the count does not add up. */
import { lengthSaid } from '../../bolt/read/kind.ts';
import type { Kind } from '../../model/types.ts';
import { list, many } from '../../model/words.ts';
import { compareHoles } from '../names.ts';
import { UNKNOWN } from '../row.ts';
import { byLetter, sayUnderHeads } from '../words.ts';
import type { Tray } from './tray.ts';
import type { Counts, Mixup, TrayHole } from './types.ts';

/** `7 S (25 mm), 3 M (35 mm) and 1 L`: a kind whose length is not known by its letter alone. */
export function sayKinds(counts: Counts, kinds: ReadonlyMap<string, Kind>): string {
  const each = Object.entries(counts).map(([letter, n]) => {
    const length = lengthSaid(kinds.get(letter));
    return `${n} ${letter}${length === null ? '' : ` (${length})`}`;
  });
  return list(each);
}

export interface ShouldHave {
  /** What the empty holes take, shortest first. */
  counts: Counts;
  total: number;
  /** Empty holes of which nobody knows what they take. */
  unknown: string[];
  /** To be read aloud over the tray; null when no hole is empty. */
  say: string | null;
}

/** What should lie in the tray now: before anything goes back, and at any time after. */
export function shouldHave(
  holes: readonly TrayHole[],
  kinds: ReadonlyMap<string, Kind>,
): ShouldHave {
  const empty = holes.filter((h) => h.state === 'out');
  const takes = empty.map((h) => h.takes?.kind ?? UNKNOWN);
  const length = (letter: string) => kinds.get(letter)?.length ?? Number.POSITIVE_INFINITY;
  const letters = [...new Set(takes)]
    .filter((kind) => kind !== UNKNOWN)
    .sort((a, b) => (length(a) === length(b) ? byLetter(a, b) : length(a) - length(b)));
  const counts = Object.fromEntries(letters.map((k) => [k, takes.filter((t) => t === k).length]));
  const unknown = empty.filter((_, i) => takes[i] === UNKNOWN).map((h) => h.name);
  const count =
    letters.length > 0 ? many(unknown.length, 'more bolt') : many(unknown.length, 'bolt');
  const more = unknown.length > 0 ? [count] : [];
  const parts = list([...(letters.length > 0 ? [sayKinds(counts, kinds)] : []), ...more]);
  const all = letters.length + more.length > 1 ? `, ${many(empty.length, 'bolt')} in all` : '';
  const under = sayUnderHeads(empty.map((h) => h.takes));
  const heads = under === null ? '' : `; ${under}`;
  return {
    counts,
    total: empty.length,
    unknown: unknown.sort(compareHoles),
    say: empty.length === 0 ? null : `You should have ${parts}${all}${heads}.`,
  };
}

type CountFault = NonNullable<Mixup['count']>;

/** Kinds with more in the tray than their full holes could have left there. */
function strangers(tray: Tray): string[] {
  return tray.letters.filter((_, kind) => {
    const holes = [...(tray.full[kind] ?? []), ...tray.sure.filter((h) => h.from === kind)];
    return (tray.over[kind] ?? 0) > holes.length;
  });
}

/** Over (1) or missing (−1), by letter. */
export function countsByKind(tray: Tray, sign: 1 | -1): Counts {
  const pairs = tray.letters.map((k, i) => [k, sign * (tray.over[i] ?? 0)] as const);
  return Object.fromEntries(pairs.filter(([, n]) => n > 0));
}

function tooMany(n: number, surplus: string, missing: string): string {
  const besides =
    missing === '' ? '' : ` ${missing} is missing besides: ask again when that is found.`;
  return `${many(n, 'bolt')} too many; over is ${surplus}. A hole was passed over, or it comes from elsewhere.${besides}`;
}

function tooFew(n: number, surplus: string, missing: string): string {
  const besides = surplus === '' ? '' : ` ${surplus} is over besides: ask again when it is found.`;
  return `${many(n, 'bolt')} too few; missing is ${missing}. Look in the case, on the floor and in the other trays before anything is closed.${besides}`;
}

function noWay(tray: Tray, surplus: string, missing: string): string {
  const odd = strangers(tray);
  if (odd.length === 0) {
    return 'No bolts in wrong holes make this tray at the heights that were measured: count and measure again.';
  }
  return `The number is right, but over is ${surplus} and missing is ${missing}, and there are more ${list(odd)} than this piece could have left. Measure them: one was taken for another kind, or comes from another tray.`;
}

/**
 * Why wrong holes cannot be the whole of it: a bolt missing, one too many, one from elsewhere, or a hole of which nobody
 * knows what it takes. Null when the count adds up. `explained`: wrong holes that
 * make this tray were found, or there were too many ways to try them all.
 */
export function countFault(
  tray: Tray,
  kinds: ReadonlyMap<string, Kind>,
  explained: boolean,
): CountFault | null {
  const outside = tray.sure.filter((h) => h.outside).length;
  const nameless = tray.unknownEmpty.length;
  const over = tray.over.reduce((sum, n) => sum + n, 0) - outside - nameless;
  if (nameless > 0) {
    const holes = `${nameless === 1 ? 'hole' : 'holes'} ${list(tray.unknownEmpty)}`;
    return { over, say: `Nobody has said what ${holes} takes: settle that first, then count.` };
  }
  const [surplus, missing] = [
    sayKinds(countsByKind(tray, 1), kinds),
    sayKinds(countsByKind(tray, -1), kinds),
  ];
  if (over > 0) return { over, say: tooMany(over, surplus, missing) };
  if (over < 0) return { over, say: tooFew(-over, surplus, missing) };
  const settled = tray.over.every((n) => n === 0) && tray.sure.length === 0;
  return explained || settled ? null : { over, say: noWay(tray, surplus, missing) };
}
