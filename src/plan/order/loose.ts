/** Bolts that are in and not tight: by fingers only, or with some of their passes. */
import type { HoleNow, Job, PieceNow } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { passesAt } from '../../piece/passes.ts';

interface Loose {
  holes: string[];
  /** `snug and part done, full not yet`; null: by fingers only. */
  lacks: string | null;
}

/** Bolts that are in and not tight, those that have come equally far together; by fingers only first. */
export function looseOf(job: Job, piece: PieceNow): Loose[] {
  const { kinds } = job.upper;
  const had = (hole: HoleNow): string => {
    if (hole.passes.length === 0) return '';
    const own = passesAt(piece.spec, kinds, hole.name).filter((p) => p.after === null);
    const names = own.map((p) => p.name).filter((name) => name !== 'final');
    const left = names.slice(names.findLastIndex((name) => hole.passes.includes(name)) + 1);
    return `${list(hole.passes)} done${left.length === 0 ? '' : `, ${list(left)} not yet`}`;
  };
  const alike = Map.groupBy(
    piece.holes.filter((h) => h.state === 'in'),
    had,
  );
  return [...alike]
    .map(([lacks, holes]) => ({ holes: holes.map((h) => h.name), lacks: lacks || null }))
    .toSorted((a, b) => Number(a.lacks !== null) - Number(b.lacks !== null));
}
