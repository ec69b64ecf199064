/** The round at the end that a joint with a gasket or many bolts wants: its bolts are tight, and some may still turn on. */
import { stillOver } from '../../job/judge/marks/blocked.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { passesAt } from '../../piece/passes.ts';

/** Holes that were not gone round with yet; none where nobody gets at them any more, or where it was tested before any had it. */
export function roundLeft(job: Job, piece: PieceNow): string[] {
  // What was begun is not over by a test: some bolts had it, and some had not.
  const begun = piece.holes.some((h) => h.passes.includes('final'));
  const open = piece.where === 'tight' || (piece.where === 'tested' && begun);
  if (!open || stillOver(job, piece).length > 0) return [];
  const { kinds } = job.upper;
  const wants = (hole: string) => passesAt(piece.spec, kinds, hole).some((p) => p.name === 'final');
  return piece.holes
    .filter((h) => h.state === 'tight' && h.trouble === null && !h.passes.includes('final'))
    .map((h) => h.name)
    .filter(wants);
}
