/**
 * Where things stand: the diary folded over the upper part.
 *
 * Total: history is never refused. What a merge or an editor brought together and cannot be becomes a
 * conflict on its hole; what names a piece or hole that the upper part does not have is kept beside it.
 */

import { kept } from '../../model/kept.ts';
import type { Entry, Job, TaskNow, Upper, Verb } from '../../model/types.ts';
import { inLettersNow } from '../diary/letters.ts';
import { livingEntries, livingIds } from '../diary/living.ts';
import { barePiece } from '../form/bare.ts';
import { correctedUpper } from '../truth/corrections.ts';
import { countsOf } from './inside.ts';
import { livesOn } from './living-of.ts';
import { apply, begin, beginsRound, close, finish, type Making, unclosed } from './piece.ts';
import { notedBefore, openAgain, taskNow } from './tested.ts';

/** `printed`: what the file says; `unread`: the lines of it that are not in there. */
export function fold(printed: Upper, entries: readonly Entry[], unread: Job['unread'] = []): Job {
  const living = inLettersNow(livingEntries(entries));
  const truth = correctedUpper(printed, living);
  const { upper } = truth;
  const pieces = new Map<string, Making>();
  for (const spec of upper.pieces.values()) pieces.set(spec.key, begin(spec, upper));
  const tasks = new Map<string, TaskNow>();
  for (const spec of upper.tasks.values()) tasks.set(spec.key, taskNow(spec));

  const rounds = new Map<string, number>();
  for (const entry of living) {
    if (entry.task !== undefined) {
      const isOpen = isOpenTask(tasks.get(entry.task));
      for (const task of sameLook(tasks, entry.task)) finish(task, entry);
      // With a reason it was noted by somebody who knew what was not done yet.
      const now = tasks.get(entry.task);
      if (now && isOpen && !isOpenTask(now) && now.spec.verb !== 'wait') {
        openAgain(notedBefore(entry.task, tasks).filter((task) => !task.overruled));
      }
    }
    if (entry.piece === undefined) continue;
    let making = pieces.get(entry.piece);
    if (!making) {
      making = begin(barePiece(entry.piece), upper);
      pieces.set(entry.piece, making);
    }
    if (apply(making, entry, tasks)) openAgain(notedBefore(`${entry.piece} on`, tasks));
    rounds.set(entry.id, making.now.round);
  }
  for (const making of pieces.values()) close(making, tasks);
  const job: Job = {
    ...truth,
    printed,
    entries,
    living: livingIds(entries),
    rounds,
    ...standing(pieces),
    tasks,
    inside: countsOf(living).filter((thing) => thing.count > 0),
    unread,
  };
  stoppedAt(job, pieces);
  return job;
}

type Makings = ReadonlyMap<string, Making>;

/** Where the fold of a job stopped, for the next mark; null of a job that was not folded. */
function stoppedAt(job: Job, makings: Makings | null = null): Makings | null {
  return kept(job, 'where its fold stopped', () => makings);
}

/**
 * The same as `fold`, gone on from `job`, which stays as it is; null where the entries are not those of `job` with one
 * more behind them, or where that one changes more than its piece.
 */
export function foldMore(
  job: Job,
  printed: Upper,
  entries: readonly Entry[],
  unread: Job['unread'],
): Job | null {
  const entry = entries.at(-1);
  const before = stoppedAt(job);
  const more = entries.length === job.entries.length + 1 && printed === job.printed;
  if (!more || !before || job.entries.some((e, i) => e !== entries[i])) return null;
  if (!entry || entry.task !== undefined || ELSEWHERE.has(entry.verb)) return null;
  // An id that stands twice, or that an undo names before it is there, counts otherwise.
  const fresh = !job.entries.some(
    ({ id, verb, value }) => id === entry.id || (verb === 'undo' && value === entry.id),
  );
  if (!fresh) return null;
  const living = new Set(job.living).add(entry.id);
  const next: Job = { ...job, entries, living, unread };
  livesOn(job, next, entry);
  if (entry.piece === undefined) {
    stoppedAt(next, before);
    return next;
  }
  const was = before.get(entry.piece);
  if (!was || beginsRound(was, entry)) return null;
  const making = unclosed(was);
  const isBack = apply(making, entry, job.tasks);
  if (isBack && notedBefore(`${entry.piece} on`, job.tasks).length > 0) return null;
  close(making, job.tasks);
  const pieces = new Map(before).set(entry.piece, making);
  next.rounds = new Map(job.rounds).set(entry.id, making.now.round);
  Object.assign(next, standing(pieces));
  stoppedAt(next, pieces);
  return next;
}

/** What other entries say by it, or what there is beside pieces. */
const ELSEWHERE = new Set<Verb>(['undo', 'renamed', 'corrected', 'inside', 'cleared']);

function standing(makings: Makings): Pick<Job, 'pieces' | 'conflicts'> {
  const pieces = new Map([...makings].map(([key, { now }]) => [key, now]));
  const conflicts = [...pieces.values()].flatMap(({ holes }) =>
    holes.flatMap((h) => h.conflict ?? []),
  );
  return { pieces, conflicts };
}

const isOpenTask = (task: TaskNow | undefined): boolean =>
  !task || task.done === null || task.done === 'failed';

/** A task, and the tests that are the same look once more: made for one fault, it is made for the other. */
function sameLook(tasks: ReadonlyMap<string, TaskNow>, key: string): TaskNow[] {
  const task = tasks.get(key);
  if (!task) return [];
  const [proves, ...more] = task.spec.proves;
  if (proves === undefined || more.length > 0) return [task];
  return [...tasks.values()].filter(({ spec }) => spec.proves.join('\n') === proves);
}
