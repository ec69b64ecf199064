/** What lies in the tray of a piece: what came out of it, less what has gone back in. */
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, PieceNow, RowItem } from '../../model/types.ts';
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

/** Takes one of this kind away; false when there is none. */
function takeOne(lies: (RowItem | null)[], item: RowItem | null): boolean {
  const at = lies.findLastIndex((other) => other?.kind === item?.kind);
  if (at >= 0) lies.splice(at, 1);
  return at >= 0;
}
