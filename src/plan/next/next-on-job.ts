/** What comes next, as far as the whole job lets it: a piece that waits for a part or a task is not the next thing. */

import { sayThing } from '../../job/fold/inside.ts';
import { byNoFigure, noFigureSaid } from '../../job/fold/no-figure.ts';
import { otherFigure, otherFigureSaid } from '../../job/fold/other-figure.ts';
import { inWords, type Words } from '../../job/truth/said.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { caresOf } from '../care/care.ts';
import { sayStepName, stepWords } from '../order/say.ts';
import type { Plan } from '../plan.ts';
import type { Cure } from '../seal/cure.ts';
import { roundAgain } from '../tests/again.ts';
import { testsNow } from '../tests/testlist.ts';
import { sayTime } from '../time/days.ts';
import { faultTask, wayToFound } from '../trace/found.ts';
import { checkSaid, traced } from '../trace/traced.ts';
import { workInWords } from './next.ts';

/** What the plan and the joints of a job say at a time; `now` is RFC 3339. */
export interface NextTold {
  plan: Plan;
  cures: readonly Cure[];
  now: string;
}

export interface NextOnJob {
  /** One of the two it is about; neither: the look for the fault that is next. */
  piece: string | null;
  task: string | null;
  /** It is not to be done yet, and nothing else is. */
  waits: boolean;
  say: string;
}

/** Null where nothing is left that anybody could do. */
export function nextOnJob(job: Job, told: NextTold): NextOnJob | null {
  const next = nextInWords(job, told);
  if (next === null) return null;
  const { words, ...about } = next;
  return { ...about, say: inWords(words) };
}

/** The same with its sentence in parts. */
export function nextInWords(
  job: Job,
  told: NextTold,
): (Omit<NextOnJob, 'say'> & { words: Words }) | null {
  const again = roundBegun(job, told.now);
  if (again) return again;
  const step = workInWords(job);
  const fault = toTheFault(job);
  if (fault) return fault.piece === step?.piece ? { ...fault, words: step.words } : fault;
  const look = step === null || rests(job, step.piece) ? lookNext(job) : null;
  if (look) return look;
  const mending = faultTask(job);
  const mend = told.plan.canDo.find((c) => c.step === mending);
  // A test proves it, and is made only when all that came off is back.
  const proves = mend && job.tasks.get(mend.step)?.spec.verb === 'test';
  const lies = step !== null && job.pieces.get(step.piece)?.where !== 'home';
  if (mend && !(proves && lies)) {
    const words = stepWords(job, mend.step, mend.say);
    return { piece: null, task: mend.step, waits: false, words };
  }
  const waits =
    step && goesOn(job.pieces.get(step.piece)) ? waitsBefore(job, `${step.piece} on`, told) : '';
  if (step && waits === '') {
    return { piece: step.piece, task: null, waits: false, words: step.words };
  }
  const { canDo } = told.plan;
  const mayNotRun = testsNow(job, told.now).flatMap((t) => (t.stops.length > 0 ? [t.test] : []));
  const task = canDo.find(
    (c) => job.tasks.has(c.step) && !mayNotRun.includes(c.step) && !isPast(job, told.plan, c.step),
  );
  if (task) {
    const words = stepWords(job, task.step, task.say);
    return { piece: null, task: task.step, waits: false, words };
  }
  const other = canDo.find((c) => c.step.endsWith(' on'));
  if (other) {
    const piece = other.step.slice(0, -' on'.length);
    return { piece, task: null, waits: false, words: [other.say] };
  }
  if (!step) return figureToLookUp(job);
  const name = job.pieces.get(step.piece)?.spec.name ?? step.piece;
  return { piece: step.piece, task: null, waits: true, words: [`${name} waits for ${waits}.`] };
}

/** A test failed and the next round has begun: what came off for it is not put back before the rest is off too. */
function roundBegun(job: Job, now: string): ReturnType<typeof nextInWords> {
  const failed = [...job.tasks.values()].find((task) => task.done === 'failed');
  const begun = [...job.pieces.values()].some((p) => p.round > 1 && p.away !== 'no');
  if (!failed || !begun) return null;
  const off = roundAgain(job, failed.spec.key, now)?.off ?? [];
  const piece = off.map((key) => job.pieces.get(key)).find((p) => p && p.away === 'no');
  if (!piece) return null;
  const words = [`${piece.spec.name}: off for the next round.`];
  return { piece: piece.spec.key, task: null, waits: false, words };
}

/** Untouched, or away with nothing of it under way: whether it is its turn the fault may say. */
function rests(job: Job, piece: string): boolean {
  const where = job.pieces.get(piece)?.where;
  return where === 'home' || where === 'open';
}

/** While the fault is looked for, and nothing was found yet: the look that leads there soonest, or what is over it. */
function lookNext(job: Job): ReturnType<typeof nextInWords> {
  const { next, found, looks } = traced(job);
  if (next === null || found.length > 0) return null;
  const said = checkSaid(job, next.check);
  const first = job.pieces.get(next.opens[0] ?? '');
  // Nothing was looked at yet, and the way to it is the way down: that is told as it is without a fault.
  if (first) {
    if (looks.length === 0 && first.where === 'home') return null;
    const words = [`${first.spec.name}: take it off to look at: ${said}.`];
    return { piece: first.spec.key, task: null, waits: false, words };
  }
  return { piece: null, task: null, waits: false, words: [`Look for the fault: ${said}.`] };
}

/** What was found wants putting right first: the next piece that comes off on the way to it. */
function toTheFault(job: Job): ReturnType<typeof nextInWords> {
  const found = wayToFound(job);
  const first = job.pieces.get(found?.way[0] ?? '');
  if (!found || !first) return null;
  const { name } = found.piece.spec;
  const way = first === found.piece ? '' : ` on the way to ${name}`;
  const say = `${first.spec.name}: take it off${way}: ${found.suspect.what}.`;
  return { piece: first.spec.key, task: null, waits: false, words: [say] };
}

/** Where all is tight: what was tightened by no figure, or by another. Once it was tested, only what can hurt somebody. */
function figureToLookUp(job: Job): ReturnType<typeof nextInWords> {
  for (const piece of job.pieces.values()) {
    const open = piece.where === 'tight' || isCared(piece);
    const said = open ? figureSaid(job, piece) : null;
    if (said === null) continue;
    const words = [`${piece.spec.name}: ${said}.`];
    return { piece: piece.spec.key, task: null, waits: false, words };
  }
  return null;
}

/** What is to be looked up of its torque, or set again. */
function figureSaid(job: Job, piece: PieceNow): string | null {
  return otherFigureSaid(otherFigure(job, piece)) ?? noFigureSaid(piece, byNoFigure(job, piece));
}

function isCared({ spec }: PieceNow): boolean {
  return caresOf(spec).care.length > 0;
}

/** All that it was to be done before is done: nobody drains what has been filled in again. */
function isPast(job: Job, { steps }: Plan, key: string): boolean {
  const before = job.tasks.get(key)?.spec.before ?? [];
  const isDone = (said: string) =>
    steps.some((s) => s.done && s.step === said.trim().replace(/\s+/g, ' '));
  return before.length > 0 && before.every(isDone);
}

/** Something of it has still to go in. */
function goesOn(piece: PieceNow | undefined): boolean {
  if (piece?.where === 'on') return piece.holes.some((h) => h.state === 'out');
  return piece?.where === 'open';
}

/** What has to be done, had or out before a step, in words; empty where nothing is in the way. */
export function waitsBefore(job: Job, step: string, { plan, cures, now }: NextTold): string {
  const held = plan.heldBy.find((h) => h.step === step);
  if (!held) return '';
  const names = held.for.map((name) => heldSaid(job, name));
  // Of which piece stands under the list.
  if (names.length === 0 && cures.some((cure) => cure.until === held.until)) names.push('the cure');
  const until = held.until === null ? '' : `until ${sayTime(held.until, now)}`;
  return [list(names), until].filter((t) => t !== '').join(', ');
}

/** A thing to buy by its words, a thing inside as what has to come out, a step by its name. */
function heldSaid(job: Job, name: string): string {
  const buy = job.upper.buys.get(name);
  if (buy) return buy.what;
  const count = job.inside.reduce((sum, i) => sum + (i.what === name ? i.count : 0), 0);
  return count === 0 ? sayStepName(job, name) : `${sayThing({ what: name, count })} to come out`;
}
