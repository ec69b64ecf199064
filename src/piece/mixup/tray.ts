/** The tray as numbers: kinds by index, what is over, and what every full hole may hold. */
import {
  type HeightHole,
  heightOf,
  notDown,
  type Reference,
  references,
} from '../heights-against.ts';
import { compareHoles } from '../names.ts';
import { sameItem, UNKNOWN } from '../row.ts';
import { byLetter } from '../words.ts';
import type { Candidate } from './among.ts';
import type { TrayHole, TrayInput } from './types.ts';

/** A hole that is wrong for certain: what it can hold, by what was marked or measured. */
export interface SureHole {
  name: string;
  from: number;
  /** Numbers of kinds; `outside` for one that no hole of the piece takes. */
  holds: readonly number[];
  outside: boolean;
  /** As measured; null: marked so when it went in. */
  mm: number | null;
}

export interface Tray {
  /** Letters, sorted: the number of a kind is its place here. */
  letters: string[];
  /** For each kind how many more lie in the tray than empty holes take. */
  over: number[];
  /** Empty holes by kind, full ones that may be wrong by kind. */
  empty: string[][];
  full: Candidate[][];
  sure: SureHole[];
  /** Measured holes whose height narrows nothing, and why. */
  odd: { name: string; mm: number; why: NoUse }[];
  /** Holes of which nobody knows what they take; and the empty ones among them. */
  unknown: string[];
  unknownEmpty: string[];
}

/**
 * Why a height says nothing of what is in its hole: all stand off alike; no kind would stand so; those that take the same
 * stand at several heights; there is nothing to hold it against; another bolt was put in on purpose.
 */
export type NoUse = 'alike' | 'no kind' | 'uneven' | 'alone' | 'marked' | 'nameless';

type KnownHole = TrayHole & { kind: string };

function knownKind(hole: TrayHole): KnownHole | null {
  const kind = hole.takes?.kind ?? UNKNOWN;
  return kind === UNKNOWN ? null : { ...hole, kind };
}

/** The kind that was put in on purpose where another belongs; null for any other hole. */
function marked(hole: KnownHole): string | null {
  const kind = hole.holds?.kind ?? UNKNOWN;
  return hole.state === 'out' || kind === UNKNOWN || kind === hole.kind ? null : kind;
}

/** Height that says something about this hole, mm; null where there is none. */
function measured(hole: KnownHole): number | null {
  return hole.state === 'out' || marked(hole) !== null ? null : (hole.proud ?? null);
}

/** Bolts of a kind in the tray: a whole number, however it was come by. */
function lying(input: TrayInput, letter: string): number {
  const n = input.left.get(letter) ?? 0;
  return n > 0 && Number.isFinite(n) ? Math.floor(n) : 0;
}

function heightsOf(known: readonly KnownHole[], input: TrayInput): HeightHole[] {
  return known.flatMap((h) => {
    const height = measured(h);
    if (height === null) return [];
    // r − a of the hole's own bolt, where the measures of the hole give it.
    const expects = input.fitOf?.(h.kind, h.name)?.proud ?? null;
    return { name: h.name, takes: h.takes, mm: height, expects };
  });
}

/** For each kind whether it would stand at the height measured; kinds that no hole takes are not thought of. */
function byHeight(
  hole: KnownHole,
  height: number,
  reference: Reference,
  input: TrayInput,
  kinds: { letters: readonly string[]; taken: ReadonlySet<string> },
): boolean[] {
  return kinds.letters.map((letter) => {
    const stands = heightOf(reference, hole.kind, letter, input.kinds);
    const near = stands === null || Math.abs(stands - height) <= reference.within;
    return near && kinds.taken.has(letter);
  });
}

const kindAt = ({ letters }: Tray, { kind }: KnownHole): number => letters.indexOf(kind);

/** Its bolt lies in the tray, or should. */
function lies(hole: KnownHole, tray: Tray): void {
  const from = kindAt(tray, hole);
  tray.empty[from]?.push(hole.name);
  tray.over[from] = (tray.over[from] ?? 0) - 1;
}

/** Somebody said that another bolt was put in. */
function putOnPurpose(hole: KnownHole, tray: Tray, taken: ReadonlySet<string>): void {
  const { name } = hole;
  const other = marked(hole) ?? '';
  const holds = [tray.letters.indexOf(other)];
  tray.sure.push({ name, from: kindAt(tray, hole), holds, outside: !taken.has(other), mm: null });
  if (hole.proud != null) tray.odd.push({ name, mm: hole.proud, why: 'marked' });
}

interface Against {
  input: TrayInput;
  heights: ReturnType<typeof heightsOf>;
  taken: ReadonlySet<string>;
  /** All stand as if none were down. */
  alike: boolean;
  reference: Reference | undefined;
}

/** A bolt is in it: by its height another one than belongs there, or it may be any that stands so high. */
function stands(hole: KnownHole, tray: Tray, against: Against): void {
  const { name } = hole;
  const { input, heights, taken, alike, reference } = against;
  const from = kindAt(tray, hole);
  const height = measured(hole);
  if (height === null || !reference) {
    tray.full[from]?.push({ name, may: null });
    if (height === null) return;
    const like = heights.filter((h) => h.takes && hole.takes && sameItem(h.takes, hole.takes));
    tray.odd.push({ name, mm: height, why: like.length > 1 ? 'uneven' : 'alone' });
    return;
  }
  const may = byHeight(hole, height, reference, input, { letters: tray.letters, taken });
  const clear = !alike && may.includes(true);
  if (clear && may[from] === false) {
    const holds = may.flatMap((m, kind) => (m ? [kind] : []));
    tray.sure.push({ name, from, holds, outside: false, mm: height });
    return;
  }
  tray.full[from]?.push({ name, may: clear ? may : null });
  if (!clear) tray.odd.push({ name, mm: height, why: alike ? 'alike' : 'no kind' });
}

/** Sorts holes and bolts by kind. The order in which they come does not matter. */
export function trayOf(input: TrayInput): Tray {
  const holes = [...input.holes].sort((a, b) => compareHoles(a.name, b.name));
  const moved = holes.filter((h) => h.state !== 'home');
  const known = moved.flatMap((h) => knownKind(h) ?? []);
  const nameless = moved.filter((h) => knownKind(h) === null);
  const taken = new Set(known.map((h) => h.kind));
  const others = [
    ...known.flatMap((h) => marked(h) ?? []),
    ...[...input.left.keys()].filter((letter) => lying(input, letter) > 0),
  ];
  const letters = [...new Set([...taken, ...others])].sort(byLetter);
  const tray: Tray = {
    letters,
    over: letters.map((letter) => lying(input, letter)),
    empty: letters.map(() => []),
    full: letters.map(() => []),
    sure: [],
    odd: [],
    unknown: nameless.map((h) => h.name),
    unknownEmpty: nameless.filter((h) => h.state === 'out').map((h) => h.name),
  };
  const heights = heightsOf(known, input);
  const alike = notDown(heights) !== 0;
  const against = references(heights);
  for (const hole of known) {
    if (hole.state === 'out') lies(hole, tray);
    else if (marked(hole) !== null) putOnPurpose(hole, tray, taken);
    else stands(hole, tray, { input, heights, taken, alike, reference: against.get(hole.name) });
  }
  for (const { name, proud } of nameless) {
    if (proud != null) tray.odd.push({ name, mm: proud, why: 'nameless' });
  }
  return tray;
}
