/** One commit of the job file at the end of a place of a piece, where the bench asks for it. */
import { dirname } from 'node:path';
import type { Job, PieceNow } from '../model/types.ts';
import { type Milestone, milestoneOf, milestoneSubject } from '../plan/next/milestone.ts';
import { findBench, oddIn } from './bench.ts';

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
  if (!place) return null;
  const bench = findBench(dirname(file));
  // Whether to commit may be just what was not read.
  if (bench?.commit !== 'milestones') return bench && oddIn(bench);
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
  // Nothing to commit: somebody else committed this mark already.
  return !done.ok && done.why === 'nothing' ? null : done.say;
}
