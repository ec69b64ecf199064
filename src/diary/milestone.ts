/** The end of a place of a piece, and its one commit where the bench asks for it. */
import { dirname } from 'node:path';
import type { Job, PieceNow } from '../job/types.ts';
import { findBench } from './bench.ts';

export type Milestone = 'off' | 'on' | 'tight';

/** The place that a piece has come to the end of by a mark; null when it is still on its way. */
export function milestoneOf(before: PieceNow | undefined, after: PieceNow): Milestone | null {
  const is = placeDone(after);
  return is !== null && (before === undefined || placeDone(before) !== is) ? is : null;
}

function placeDone(piece: PieceNow): Milestone | null {
  if (piece.where === 'open') return 'off';
  if (piece.where === 'tight' || piece.where === 'tested') return 'tight';
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
  const round = piece.round > 1 ? ` again (round ${piece.round})` : '';
  return `${piece.spec.name} ${place}${round}${parts.length > 0 ? `: ${parts.join(', ')}` : ''}`;
}

/**
 * Commits the job file alone if its bench asks for it and this mark ended a place of the piece.
 * Null when there is nothing to say; otherwise a quiet line. The mark itself is on disk either way.
 */
export async function commitMilestone(
  file: string,
  result: { job: Job; before: Job; changed: boolean },
  key: string,
): Promise<string | null> {
  const after = result.job.pieces.get(key);
  if (!result.changed || !after) return null;
  const place = milestoneOf(result.before.pieces.get(key), after);
  if (!place || findBench(dirname(file))?.commit !== 'milestones') return null;
  return await commitPlace(file, after, place);
}

export async function commitPlace(
  file: string,
  piece: PieceNow,
  place: Milestone,
): Promise<string | null> {
  const { milestone } = await import('./git/milestone.ts');
  const done = await milestone(file, milestoneSubject(piece, place), {
    Piece: piece.spec.key,
    Round: String(piece.round),
  });
  return done.ok ? null : done.say;
}
