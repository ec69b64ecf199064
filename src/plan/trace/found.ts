/** What follows from a suspect being it: its part on the list, its piece next, and the test that proves the repair. */
import { freeKey, proofKey } from '../../job/form/typed-trace.ts';
import type { Job, Named, PieceNow, SuspectSpec, Wish } from '../../model/types.ts';
import { readTrace } from '../../trace/read.ts';
import { reach } from '../order/reach.ts';
import { checksOf, suspectsOf } from './input.ts';
import { looksOf } from './looks.ts';

/** The wish that notes it, with what is not in the file yet. */
export function foundWish(job: Job, suspect: string): Extract<Wish, { do: 'found' }> {
  const spec = job.upper.suspects.get(suspect);
  if (!spec) return { do: 'found', suspect };
  const buy = partOf(job, spec);
  return { do: 'found', suspect, ...(buy ? { buy } : {}), test: proofOf(job, spec) };
}

function partOf({ upper }: Job, { part, piece }: SuspectSpec): Named | null {
  if (part === null || upper.buys.has(part)) return null;
  const step = piece === null ? {} : { for: `${piece} on` };
  return { key: freeKey(part, upper.buys), fields: { what: part, ...step } };
}

/** Made from the last look that was bad and shows it; where none was, the complaint itself has to be gone. */
function proofOf(job: Job, { key, piece }: SuspectSpec): Named {
  const { upper } = job;
  const input = { suspects: suspectsOf(upper), checks: checksOf(upper), covers: [], marks: [] };
  const shown = new Map(readTrace(input).checks.map(({ name, shows }) => [name, shows]));
  const bad = looksOf(job).looks.findLast(
    ({ check, says, suspect }) =>
      says === 'bad' && suspect === null && shown.get(check)?.has(key) === true,
  );
  const check = upper.checks.get(bad?.check ?? '');
  const after = piece === null ? {} : { after: `${piece} on` };
  if (!check) {
    return {
      key: proofKey(key),
      fields: { test: `Gone: ${upper.complaint ?? upper.job}`, ...after },
    };
  }
  const limit = check.limit === null ? {} : { limit: check.limit };
  const fields = { test: `${check.check}, once more`, ...limit, ...after, proves: check.key };
  return { key: proofKey(key), fields };
}

/**
 * What has to come off, in its order, for what was found last to be put right; empty when it has no piece, or its
 * piece came off since.
 */
export function wayToFound(
  job: Job,
): { suspect: SuspectSpec; piece: PieceNow; way: string[] } | null {
  const found = looksOf(job).found.at(-1);
  const suspect = job.upper.suspects.get(found?.suspect ?? '');
  const piece = job.pieces.get(suspect?.piece ?? '');
  if (!found || !suspect || !piece) return null;
  const since = job.entries.slice(job.entries.findIndex((e) => e.id === found.id) + 1);
  const off = since.some(
    (e) => e.piece === piece.spec.key && e.verb === 'removed' && job.living.has(e.id),
  );
  const way = off ? [] : reach(job, piece.spec.key);
  return way.length === 0 ? null : { suspect, piece, way };
}
