/** What was done in rounds before the last one: it stands in the diary alone, and belongs into the record. */
import { livingEntries } from '../job/diary/living.ts';
import type { Entry, Job } from '../model/types.ts';
import { dayOf } from './said.ts';

/** `2026-10-03, Valve shim gap: before 0.16 mm, set to 0.10 mm`; of each piece what was set at last in each of its rounds. */
export function earlierRounds(job: Job): string[] {
  const living = livingEntries(job.entries);
  const last = new Map(living.map((e): [string, Entry] => [key(e, job), e]));
  return living.flatMap((e) => {
    if (last.get(key(e, job)) !== e) return [];
    return (e.verb === 'done' ? taskSaid(e, job, living) : tightSaid(e, job)) ?? [];
  });
}

/** Marks of one piece in one round are told by the last of them, each mark of a task by itself. */
function key(e: Entry, job: Job): string {
  return e.verb === 'tight' ? `${e.piece} ${job.rounds.get(e.id)}` : e.id;
}

/** A task that is open again, or was done once more. */
function taskSaid(e: Entry, job: Job, living: readonly Entry[]): string | null {
  const task = job.tasks.get(e.task ?? '');
  // What failed stands with the tests.
  if (!task || e.value === 'failed') return null;
  const newest = living.findLast((other) => other.verb === 'done' && other.task === e.task);
  if (newest === e && task.done !== null) return null;
  const told = [
    e.was === undefined ? null : `before ${e.was}`,
    e.set === undefined ? null : `set to ${e.set}`,
    e.result ?? (e.value === 'done' || e.value === 'passed' ? null : e.value),
    e.says ?? null,
  ].filter((text, i, all) => text !== null && all.indexOf(text) === i);
  const how = told.length === 0 ? (e.value === 'passed' ? 'passed' : 'done') : told.join(', ');
  return `${dayOf(e.at)}, ${task.spec.say.text}: ${how}`;
}

function tightSaid(e: Entry, job: Job): string | null {
  const piece = job.pieces.get(e.piece ?? '');
  const round = job.rounds.get(e.id) ?? 1;
  if (e.verb !== 'tight' || !piece || round >= piece.round) return null;
  const set = e.set === undefined ? '' : `, ${e.set} set`;
  return `${dayOf(e.at)}, ${piece.spec.name}, round ${round}: tightened, last pass ${e.value}${set}`;
}
