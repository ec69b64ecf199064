/** What follows from a suspect being it: its part on the list, its piece next, and the test that proves the repair. */
import { freeGoneKey, freeKey, isGoneKey, mendKey, proofKey } from '../../job/form/trace-keys.ts';
import type { Job, Named, PieceNow, SuspectSpec, TaskNow, Wish } from '../../model/types.ts';
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
  const test = proofOf(job, spec);
  const gone = goneOf(job, test);
  return { do: 'found', suspect, ...(buy ? { buy } : {}), mend, test, ...(gone ? { gone } : {}) };
}

const goneSaid = ({ complaint, job }: Job['upper']): string =>
  `${complaint ?? job}: try whether it is gone`;

/** What brought the machine in is tried last; null where the proof is just that, or it waits already. */
function goneOf(job: Job, proof: Named): Named | null {
  const { upper } = job;
  const test = goneSaid(upper);
  const before = goneTask(job);
  if (proof.fields.test === test || (before && !isPassed(before))) return null;
  return { key: freeGoneKey(upper.tasks), fields: { test, after: proof.key } };
}

const isPassed = ({ done }: TaskNow): boolean => done !== null && done !== 'failed';

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
      fields: { test: goneSaid(upper), ...after },
    };
  }
  const limit = check.limit === null ? {} : { limit: check.limit };
  const fields = { test: `${check.check}, once more`, ...limit, ...after, proves: check.key };
  return { key: proofKey(key), fields };
}

/** Of what was found last, what is still to be done: its mending, its test, then that of the complaint. Null where nothing is. */
export function faultTask(job: Job): string | null {
  const found = looksOf(job).found.at(-1);
  if (!found) return null;
  const names = [mendKey(found.suspect), proofKey(found.suspect), goneTask(job)?.spec.key ?? ''];
  return names.find((name) => job.tasks.get(name)?.done === null) ?? null;
}

/** In a word how far the fault of a job is; null where nobody looked for one. */
export function faultStands(job: Job): string | null {
  const { looks, found } = looksOf(job);
  const last = found.at(-1);
  if (!last) return looks.length === 0 ? null : 'finding the fault';
  const [mend, proof] = [mendKey, proofKey].map((name) => job.tasks.get(name(last.suspect)));
  const gone = goneTask(job);
  if (mend && !isPassed(mend)) return 'fault found';
  if (proof && isPassed(proof) && (!gone || isPassed(gone))) return 'tested';
  return mend ? 'put right' : 'fault found';
}

/** The test that the complaint is gone: of several the last. */
export function goneTask({ tasks }: Job): TaskNow | null {
  return [...tasks.values()].findLast(({ spec }) => isGoneKey(spec.key)) ?? null;
}

/** The complaint was there still, when it was tried after what was found last. */
export function isThereStill(job: Job): boolean {
  const gone = goneTask(job);
  if (gone?.done !== 'failed') return false;
  const last = job.entries.findLast(
    (e) => job.living.has(e.id) && (e.verb === 'found' || e.task === gone.spec.key),
  );
  return last?.verb !== 'found';
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
