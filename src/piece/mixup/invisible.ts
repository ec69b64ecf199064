/** What no tray can show. */
import { sameBolt, threadsAgree } from '../../bolt/fit/same.ts';
import type { Kind } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import type { Tray } from './tray.ts';

function canHold(tray: Tray, from: number, kind: number): boolean {
  return (tray.full[from] ?? []).some((hole) => hole.may === null || hole.may[kind] === true);
}

/** Whether two bolts of these kinds could stand in each other's holes, by all that is known. */
function swappable(tray: Tray, a: number, b: number, kinds: ReadonlyMap<string, Kind>): boolean {
  const [s, t] = [kinds.get(tray.letters[a] ?? ''), kinds.get(tray.letters[b] ?? '')];
  if (s && t && (sameBolt(s, t) === true || threadsAgree(s, t) === false)) return false;
  return canHold(tray, a, b) && canHold(tray, b, a);
}

/** Says which kinds could stand in each other's holes and nobody would know from the tray; null when none could. */
export function invisible(tray: Tray, kinds: ReadonlyMap<string, Kind>): string | null {
  const all = tray.letters.map((_, kind) => kind);
  const open = all.filter((a) => all.some((b) => a !== b && swappable(tray, a, b, kinds)));
  if (open.length === 0) return null;
  const names = list(open.map((kind) => tray.letters[kind] ?? ''));
  return `Two bolts swapped for each other leave no trace in a tray: of ${names} it cannot say that each is in its own hole.`;
}
