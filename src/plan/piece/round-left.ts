/** The round at the end that a joint with a gasket or many bolts wants: its bolts are tight, and some may still turn on. */
import { stillOver } from '../../job/judge/blocked.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { passesAt } from '../../piece/passes.ts';

/** Holes that were not gone round with yet; none where nobody gets at them any more, or where it was run and tested. */
export function roundLeft(job: Job, piece: PieceNow): string[] {
  if (piece.where !== 'tight' || stillOver(job, piece).length > 0) return [];
  const { kinds } = job.upper;
  const wants = (hole: string) => passesAt(piece.spec, kinds, hole).some((p) => p.name === 'final');
  return piece.holes
    .filter((h) => h.state === 'tight' && h.trouble === null && !h.passes.includes('final'))
    .map((h) => h.name)
    .filter(wants);
}
