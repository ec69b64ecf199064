/** More bolts of one kind than the job has: what came out, counted against what is in. */
import type { HoleNow, Job, PieceNow, Warning } from '../../../model/types.ts';
import { list, namesOf } from '../base/verdict.ts';
import type { InHand } from './hand.ts';
import { newBoltsHere } from './used-once.ts';

/**
 * Why these holes cannot all have this kind: `3 M came out, and 2, 3 and 4 have them.` Null where they can, where of
 * some hole of the job nobody knows its bolt, and where new ones were noted as here.
 */
export function noMore(
  job: Job,
  piece: PieceNow,
  open: readonly HoleNow[],
  { kind }: InHand,
): string | null {
  const spec = job.upper.kinds.get(kind);
  if (!spec || newBoltsHere(job, spec)) return null;
  const pieces = [...job.pieces.values()];
  const all = pieces.flatMap((p) => p.holes);
  if (all.some((h) => !h.found && !h.belongs)) return null;
  // What goes into a hole that was found empty came from elsewhere.
  const elsewhere = (h: HoleNow) => h.trouble === 'empty' && h.belongs?.kind === kind;
  // What came out is there, whatever belongs in its hole.
  const own = all.filter((h) => !elsewhere(h) && (h.found ?? h.belongs)?.kind === kind).length;
  const asked = open.filter((h) => !elsewhere(h)).length;
  const used = pieces.map((p) => {
    const has = (h: HoleNow) => h.holds?.kind === kind && !elsewhere(h) && !open.includes(h);
    return { name: p === piece ? null : p.spec.name, holes: namesOf(p.holes.filter(has)) };
  });
  const over = used.reduce((sum, { holes }) => sum + holes.length, 0) + asked - own;
  if (over <= 0) return null;
  const where = used
    .filter(({ holes }) => holes.length > 0)
    .map(({ name, holes }) => (name === null ? list(holes) : `${list(holes)} of ${name}`));
  const has = where.length === 0 ? '' : `, in ${list(where)}`;
  const there = `The job has ${own === 0 ? 'no' : own} ${kind}${has}`;
  return `${there}: where does ${over > 1 || asked > 1 ? 'the rest' : 'this one'} come from?`;
}

/** A hole that was found empty gets a bolt, and nobody noted a new one. */
export function intoEmpty(job: Job, open: readonly HoleNow[], { kind }: InHand): Warning[] {
  const empty = open.filter((h) => h.trouble === 'empty');
  const spec = job.upper.kinds.get(kind);
  if (empty.length === 0 || (spec && newBoltsHere(job, spec))) return [];
  const [was, them] = empty.length === 1 ? ['was', 'this one'] : ['were', 'these'];
  const say = `${list(namesOf(empty))} ${was} found empty: ${them} did not come out of there. The length by hand, then.`;
  return [{ code: 'found-empty', say }];
}
