/** Questions about a piece that several screens ask. */
import { kept } from '../../model/kept.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, Job, Kind, PassSpec, PieceNow } from '../../model/types.ts';
import { type Layout, layout } from '../../piece/map.ts';
import { sameItem, UNKNOWN } from '../../piece/row.ts';
import { loosenNext, nextHole } from '../../piece/sequence/next.ts';
import { stagesOf } from '../../piece/sequence/rounds.ts';
import { sequence } from '../../piece/sequence/sequence.ts';
import type { HandRead } from '../typed/hand.ts';

type Kinds = ReadonlyMap<string, Kind>;

export function names(holes: readonly HoleNow[]): string[] {
  return holes.map((h) => h.name);
}

/** The same geometry for the same piece, so that what is worked out for its arrows is kept with it. */
export function layoutOf(piece: PieceNow): Layout {
  const all = names(piece.holes);
  return kept(piece.spec, 'layout', () => layout(piece.spec, all), all.join(' '));
}

/** What is said beside the order of the whole piece. */
export function tipsOf(piece: PieceNow, kinds: Kinds): { tighten: string[]; loosen: string[] } {
  return kept(piece, 'tips', () => sequence(piece.spec, kinds, names(piece.holes)).tips);
}

// ---------------------------------------------------------------- off

export function stillIn(piece: PieceNow): HoleNow[] {
  return piece.holes.filter((h) => h.state !== 'out');
}

/** What is lit next on the way off: in loosening order, bolts that are stuck last; null when all are out. */
export function nextOut(piece: PieceNow, kinds: Kinds): string | null {
  const inside = stillIn(piece);
  const free = names(inside.filter((h) => h.trouble === null));
  const among = free.length > 0 ? free : names(inside);
  return kept(piece, 'next out', () => loosenNext(piece, kinds, among));
}

/** All that comes out without a fight is out. */
export function onlyStuckLeft(piece: PieceNow): boolean {
  return stillIn(piece).every((h) => h.trouble !== null);
}

// ---------------------------------------------------------------- on

/** File and find differ, or two marks do. */
export function toSettle(piece: PieceNow): HoleNow[] {
  return piece.holes.filter((h) => h.unsettled || h.conflict !== null);
}

/** Empty holes that a bolt can go into. */
export function toFill(piece: PieceNow): HoleNow[] {
  return piece.holes.filter(
    (h) => h.state === 'out' && !(h.trouble && troubleOf(h.trouble).barsBolt),
  );
}

/** Nobody has noted what belongs there: any bolt that is none of the known ones goes in. */
export const isUnnoted = ({ belongs }: HoleNow): boolean =>
  belongs === null || belongs.kind === UNKNOWN;

/** Millimetres: read off a rule at the bench. */
const SAME_LENGTH = 0.5;

/** Empty holes where what is in the hand belongs, in the order of the piece. */
export function fitting(job: Job, piece: PieceNow, read: HandRead): HoleNow[] {
  const fits = fittingAlone(job, piece, read);
  const item = read.is === 'kind' && read.item.with.length > 0 ? read.item : null;
  const just = item ? fits.filter((h) => h.belongs && sameItem(h.belongs, item)) : [];
  return just.length > 0 ? just : fits;
}

/** Whatever lies under its head. */
function fittingAlone(job: Job, piece: PieceNow, read: HandRead): HoleNow[] {
  return toFill(piece).filter((h) => {
    if (h.belongs === null || h.unsettled) return false;
    if (read.is === 'kind') return h.belongs.kind === read.item.kind;
    const length = job.upper.kinds.get(h.belongs.kind)?.length ?? null;
    return read.is === 'length' && length !== null && Math.abs(length - read.mm) <= SAME_LENGTH;
  });
}

// ---------------------------------------------------------------- tight

/** Holes whose bolt can be tightened. */
function toTighten(piece: PieceNow): HoleNow[] {
  return piece.holes.filter(
    (h) => (h.state === 'in' || h.state === 'tight') && h.trouble === null && h.conflict === null,
  );
}

export interface PassNow {
  pass: PassSpec;
  /** From 1. */
  number: number;
  of: number;
  done: string[];
  /** What is left, in its order. */
  rest: string[];
}

/** The pass that is on: the first that some bolt lacks; null when all are through. */
export function passUnderWay(piece: PieceNow, kinds: Kinds): PassNow | null {
  return kept(piece, 'pass under way', () => findPass(piece, kinds));
}

function findPass(piece: PieceNow, kinds: Kinds): PassNow | null {
  const stages = stagesOf(piece.spec, kinds, names(piece.holes));
  for (const [i, { pass, holes: its }] of stages.entries()) {
    const holes = toTighten(piece).filter((h) => its.includes(h.name));
    const open = names(holes.filter((h) => !h.passes.includes(pass.name)));
    if (open.length === 0) continue;
    const order = nextHole(piece, kinds, pass.name)?.rest.filter((n) => open.includes(n)) ?? [];
    const rest = [...order, ...open.filter((n) => !order.includes(n))];
    const done = names(holes).filter((n) => !open.includes(n));
    return { pass, number: i + 1, of: stages.length, done, rest };
  }
  return null;
}
