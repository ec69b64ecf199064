/** The end of a place of a piece: off complete, on complete, tight, gone round once more. */
import type { PieceNow } from '../../model/types.ts';

export type Milestone = 'off' | 'on' | 'tight' | 'round';

/** The place that a piece has come to the end of by a mark; null when it is still on its way. */
export function milestoneOf(before: PieceNow | undefined, after: PieceNow): Milestone | null {
  const is = placeDone(after);
  return is !== null && (before === undefined || placeDone(before) !== is) ? is : null;
}

function placeDone(piece: PieceNow): Milestone | null {
  if (piece.where === 'open') return 'off';
  if (piece.where === 'tight' || piece.where === 'tested') {
    const round = piece.holes.length > 0 && piece.holes.every((h) => h.passes.includes('final'));
    return round ? 'round' : 'tight';
  }
  const back = piece.holes.every(
    (h) => h.state === 'in' || h.state === 'tight' || h.state === 'home',
  );
  return piece.where === 'on' && back ? 'on' : null;
}

/** `Alternator cover off: 11 bolts, hole 9 stuck`. */
export function milestoneSubject(piece: PieceNow, place: Milestone): string {
  const n = piece.holes.length;
  const parts =
    n > 0 ? [`${n} ${n === 1 ? 'bolt' : 'bolts'}${place === 'on' ? ' in by fingers' : ''}`] : [];
  for (const h of piece.holes) if (h.trouble) parts.push(`hole ${h.name} ${h.trouble}`);
  const said = place === 'round' ? 'gone round once more' : place;
  const round = piece.round > 1 ? ` again (round ${piece.round})` : '';
  return `${piece.spec.name} ${said}${round}${parts.length > 0 ? `: ${parts.join(', ')}` : ''}`;
}
