/** What lies in the tray of a piece: what came out of it, less what has gone back in. */
import { isOther } from '../../job/fold/say-hole.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, Job, PieceNow, RowItem } from '../../model/types.ts';
import { inPlace, list, listPieces } from '../../model/words.ts';
import { sameItem } from '../../piece/row.ts';
import { sayCounts } from '../../piece/words.ts';
import { toFill } from './piece-now.ts';

/** Bolts that lie there now, null for one of a kind nobody knows. Whatever the file says, what came out lies there. */
export function trayNow(piece: PieceNow): (RowItem | null)[] {
  const moved = piece.holes.filter((h) => h.state !== 'home');
  const lies = moved.filter((h) => h.trouble === null || troubleOf(h.trouble).inTray).map(cameOut);
  for (const hole of moved) if (hole.state !== 'out') takeOne(lies, hole.holds);
  return lies;
}

/** What the empty holes take and the tray has not. */
export function lacking(piece: PieceNow): RowItem[] {
  const lies = trayNow(piece);
  return toFill(piece).flatMap(({ belongs }) =>
    belongs === null || takeOne(lies, belongs) ? [] : [belongs],
  );
}

function cameOut(hole: HoleNow): RowItem | null {
  return hole.found ?? hole.belongs;
}

/** Takes one of this kind away, with the same under its head where there is one; false when there is none. */
function takeOne(lies: (RowItem | null)[], item: RowItem | null): boolean {
  const same = lies.findLastIndex((other) => sameItem(other, item));
  const at = same >= 0 ? same : lies.findLastIndex((other) => other?.kind === item?.kind);
  if (at >= 0) lies.splice(at, 1);
  return at >= 0;
}

/** With every hole full something still lies there. */
export interface LeftOver {
  /** As somebody would type what is left: `1 M, 2 S`. */
  typed: string;
  /** `1 M is left over: which hole has the wrong bolt?` */
  say: string;
  /** `M came out of 6, which takes S.`, where that is why. */
  why: string | null;
}

/** Null where nothing does, where a hole is empty or a bolt never came out, and where nobody knows what lies there. */
export function leftOver(piece: PieceNow): LeftOver | null {
  const full = piece.holes.every((h) => h.state === 'in' || h.state === 'tight');
  const lies = full ? trayNow(piece) : [];
  const known = lies.filter((item) => item !== null);
  if (known.length === 0 || known.length < lies.length) return null;
  const counts = sayCounts(known.map(({ kind }) => ({ kind, with: [] })));
  const kinds = new Set(known.map(({ kind }) => kind));
  const others = piece.holes
    .filter((h) => isOther(h) && kinds.has(h.belongs?.kind ?? ''))
    .map(({ name, holds, belongs }) => `${name} has ${holds?.kind}, not ${belongs?.kind}`);
  const [is, which] =
    known.length === 1 ? ['is', 'hole has the wrong bolt'] : ['are', 'holes have the wrong bolts'];
  // That another was put in was said when it went in.
  const asks = others.length < known.length ? `which ${which}?` : `${list(others)}.`;
  const from = piece.holes.flatMap(({ name, found, belongs }) =>
    found && belongs && found.kind !== belongs.kind && kinds.has(found.kind)
      ? [`${found.kind} came out of ${name}, which takes ${belongs.kind}`]
      : [],
  );
  const why = from.length === 0 ? null : `${list(from)}.`;
  return { typed: counts, say: `${counts} ${is} left over: ${asks}`, why };
}

/** `The bolts of Front caliper lie in cup 1 too: keep them apart.` of the tray in which a piece was just laid; null where none do. */
export function sharesTray(job: Job, piece: PieceNow): string | null {
  const { tray } = piece;
  if (tray === null) return null;
  const same = (other: string | null) => other?.trim().toLowerCase() === tray.trim().toLowerCase();
  const others = [...job.pieces.values()].filter(
    (other) => other !== piece && same(other.tray) && trayNow(other).length > 0,
  );
  if (others.length === 0) return null;
  return `The bolts of ${listPieces(others)} lie ${inPlace(tray)} too: keep them apart.`;
}
