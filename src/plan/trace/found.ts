/** What follows from a suspect being it: its part on the list, its piece next, and the test that proves the repair. */
import { freeKey, mendKey, proofKey } from '../../job/form/trace-keys.ts';
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
  const mend = mendingOf(spec);
  return { do: 'found', suspect, ...(buy ? { buy } : {}), mend, test: proofOf(job, spec) };
}

/** What was found is not put right by that: it is a task of its own, with its piece off where it sits in one. */
function mendingOf({ key, what, piece, takes }: SuspectSpec): Named {
  const where = piece === null ? {} : { while: `${piece} off` };
  const time = takes === null ? {} : { takes };
  return { key: mendKey(key), fields: { do: `Put right: ${what}`, ...where, ...time } };
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
  const after = { after: piece === null ? mendKey(key) : `${piece} on` };
  if (!check) {
    return {
      key: proofKey(key),
      fields: { test: `${upper.complaint ?? upper.job}: try whether it is gone`, ...after },
    };
  }
  const limit = check.limit === null ? {} : { limit: check.limit };
  const fields = { test: `${check.check}, once more`, ...limit, ...after, proves: check.key };
  return { key: proofKey(key), fields };
}

/** Of what was found last, what is still to be done: its mending, then its test. Null where nothing is. */
export function faultTask(job: Job): string | null {
  const found = looksOf(job).found.at(-1);
  if (!found) return null;
  const names = [mendKey(found.suspect), proofKey(found.suspect)];
  return names.find((name) => job.tasks.get(name)?.done === null) ?? null;
}

/** In a word how far the fault of a job is; null where nobody looked for one. */
export function faultStands(job: Job): string | null {
  const { looks, found } = looksOf(job);
  const last = found.at(-1);
  if (!last) return looks.length === 0 ? null : 'finding the fault';
  const [mend, proof] = [mendKey, proofKey].map((name) => job.tasks.get(name(last.suspect)));
  const isDone = (task: typeof mend) => task?.done != null && task.done !== 'failed';
  if (mend && !isDone(mend)) return 'fault found';
  return isDone(proof) ? 'tested' : mend ? 'put right' : 'fault found';
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
