/**
 * Where things stand: the diary folded over the upper part.
 *
 * Total: history is never refused. What a merge or an editor brought together and cannot be becomes a
 * conflict on its hole; what names a piece or hole that the upper part does not have is kept beside it.
 */

import type { Entry, Job, TaskNow, Upper } from '../../model/types.ts';
import { verbRow } from '../../model/verbs.ts';
import { inLettersNow } from '../diary/letters.ts';
import { livingEntries } from '../diary/living.ts';
import { barePiece } from '../form/bare.ts';
import { correctedUpper } from '../truth/corrections.ts';
import { countsOf } from './inside.ts';
import { apply, begin, close, finish, type Making, reopened } from './piece.ts';
import { taskNow } from './tested.ts';

/** What each fold was made of, so that one more entry need not read all the others again. */
const made = new WeakMap<Job, ReadonlyMap<string, Making>>();

/** `printed`: what the file says. */
export function fold(printed: Upper, entries: readonly Entry[]): Job {
  const living = inLettersNow(livingEntries(entries));
  const truth = correctedUpper(printed, living);
  const { upper } = truth;
  const pieces = new Map<string, Making>();
  for (const spec of upper.pieces.values()) pieces.set(spec.key, begin(spec, upper));
  const tasks = new Map<string, TaskNow>();
  for (const spec of upper.tasks.values()) tasks.set(spec.key, taskNow(spec));

  const rounds = new Map<string, number>();
  for (const entry of living) {
    if (entry.task !== undefined) finish(tasks.get(entry.task), entry);
    if (entry.piece === undefined) continue;
    let making = pieces.get(entry.piece);
    if (!making) {
      making = begin(barePiece(entry.piece), upper);
      pieces.set(entry.piece, making);
    }
    apply(making, entry, tasks);
    rounds.set(entry.id, making.now.round);
  }
  for (const making of pieces.values()) close(making, tasks);
  const inside = countsOf(living).filter((thing) => thing.count > 0);
  const ids = new Set(living.map((entry) => entry.id));
  return jobOf({ ...truth, printed, entries, living: ids, rounds, tasks, inside }, pieces);
}

/**
 * The same as the fold of all entries of `job` and one more, `entries` being all of them: only the piece that the
 * entry is about is read on. What takes others back or speaks of the whole machine is folded anew.
 */
export function foldOn(job: Job, entries: readonly Entry[], entry: Entry): Job {
  const { printed } = job;
  const before = made.get(job);
  const making = before?.get(entry.piece ?? '');
  if (
    !before ||
    !making ||
    verbRow(entry.verb).kind !== 'piece' ||
    job.entries.some((e) => e.id === entry.id)
  ) {
    return fold(printed, entries);
  }
  const next = reopened(making);
  const tasks = new Map([...job.tasks].map(([key, task]) => [key, { ...task }]));
  apply(next, entry, tasks);
  close(next, tasks);
  const pieces = new Map(before).set(next.now.spec.key, next);
  if (next.now.round !== making.now.round) {
    // Another round opens tests that other pieces wait for too.
    return fold(printed, entries);
  }
  const living = new Set(job.living).add(entry.id);
  const rounds = new Map(job.rounds).set(entry.id, next.now.round);
  return jobOf({ ...job, entries, living, rounds, tasks }, pieces);
}

function jobOf(rest: Omit<Job, 'pieces' | 'conflicts'>, pieces: ReadonlyMap<string, Making>): Job {
  const job: Job = { ...rest, pieces: new Map(), conflicts: [] };
  for (const [key, { now }] of pieces) {
    job.pieces.set(key, now);
    for (const hole of now.holes) if (hole.conflict) job.conflicts.push(hole.conflict);
  }
  made.set(job, pieces);
  return job;
}
