/** What comes next, as far as the whole job lets it: a piece that waits for a part or a task is not the next thing. */
import type { Job } from '../job/types.ts';
import { list } from '../job/words.ts';
import type { Cure } from './cure.ts';
import { sayTime } from './days.ts';
import { nextWork } from './next.ts';
import type { Plan } from './plan.ts';
import { sayStepName } from './say.ts';

/** What the plan and the joints of a job say at a time; `now` is RFC 3339. */
export interface Told {
  plan: Plan;
  cures: readonly Cure[];
  now: string;
}

export interface NextOnJob {
  /** One of the two it is about. */
  piece: string | null;
  task: string | null;
  /** It is not to be done yet, and nothing else is. */
  waits: boolean;
  say: string;
}

/** Null where nothing is left that anybody could do. */
export function nextOnJob(job: Job, told: Told): NextOnJob | null {
  const step = nextWork(job);
  // Nothing of it went back yet.
  const stillOff = step !== null && job.pieces.get(step.piece)?.where === 'open';
  const waits = stillOff ? waitsFor(job, `${step.piece} on`, told) : '';
  if (step && waits === '') return { piece: step.piece, task: null, waits: false, say: step.say };
  const task = told.plan.canDo.find((c) => job.tasks.has(c.step));
  if (task) return { piece: null, task: task.step, waits: false, say: task.say };
  if (!step) return null;
  const name = job.pieces.get(step.piece)?.spec.name ?? step.piece;
  return { piece: step.piece, task: null, waits: true, say: `${name} waits for ${waits}.` };
}

/** What has to be done, had or out before a step, in words; empty where nothing is in the way. */
export function waitsFor(job: Job, step: string, { plan, cures, now }: Told): string {
  const held = plan.heldBy.find((h) => h.step === step);
  if (!held) return '';
  const names = held.for.map((name) => job.upper.buys.get(name)?.what ?? sayStepName(job, name));
  // Of which piece stands under the list.
  if (names.length === 0 && cures.some((cure) => cure.until === held.until)) names.push('the cure');
  const until = held.until === null ? '' : `until ${sayTime(held.until, now)}`;
  return [list(names), until].filter((t) => t !== '').join(', ');
}
