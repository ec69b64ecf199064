/**
 * May this task be noted as done? Before its turn there is a warning; a test is refused then, as a reading beyond its limit
 * is. Whether a test passed is said by its word, or by a reading that its limit judges.
 */

import { holdAgainst, isReading, sayReading } from '../../../bolt/read/reading.ts';
import {
  hasFigure,
  type Limit,
  looksLikeLimit,
  type PrintedFigure,
  readFigure,
  readLimit,
} from '../../../bolt/read/reading-limit.ts';
import { readTestWord } from '../../../model/test-word.ts';
import type { Edit, Job, NewTask, TaskSpec, Verdict, Warning } from '../../../model/types.ts';
import { NO_READING } from '../../../model/verbs/verbs.ts';
import { NAME } from '../../diary/entry.ts';
import {
  already,
  judgedAnew,
  list,
  meant,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';

export function judgeDone(job: Job, said: Wished<'done'>, stamp: Stamp): Verdict {
  return judgeWord(job, worded(job, said), stamp, 'test');
}

/** A look that is a test once more: it was said good already, and may be made before its turn. */
export function judgeLookDone(job: Job, wish: Wished<'done'>, stamp: Stamp): Verdict {
  return judgeWord(job, wish, stamp, 'look');
}

function judgeWord(job: Job, wish: Wished<'done'>, stamp: Stamp, as: 'test' | 'look'): Verdict {
  const { task: key } = wish;
  const task = job.tasks.get(key);
  if (!task && wish.add && NAME.test(key)) return newTask(job, wish, wish.add, stamp);
  if (!task) {
    const say = `No task ${key} in this job.${meant(key, job.tasks.keys())}`;
    return wrong('no-such-task', say, { task: key });
  }
  if (wish.result !== undefined && isBoth(wish.result)) {
    return wrong('bad-result', `“${wish.result}” says passed and failed: which of them?`);
  }
  const right = rightDone(task.spec, wish);
  if (right) return judgedAnew(judgeWord(job, right.wish, stamp, as), right.say);
  const value = doneWord(wish.result);
  const same =
    task.done === value &&
    (wish.was ?? task.was) === task.was &&
    (wish.set ?? task.set) === task.set &&
    (wish.result ?? task.result) === task.result &&
    (wish.says === undefined || wish.says === saidLast(job, key));
  if (same) return already();
  const held = heldAgainst(task.spec, wish);
  const failed = value === 'failed';
  const asTest = task.spec.verb === 'test' && as === 'test';
  const silent = asTest ? unsaid(wish, held) : null;
  if (silent) return silent;
  if (held?.refuse && !failed && wish.because === undefined) {
    const { code, say } = held.refuse;
    return refuse(code, say, { limit: held.limit });
  }
  const early = asTest
    ? notDoneBefore(job, task.spec.after)
    : task.spec.after.filter((step) => !stepDone(job, step));
  const tooSoon = asTest ? tooEarly(wish, early) : null;
  if (tooSoon) return tooSoon;
  const warnings = [
    ...(early.length === 0 ? [] : [{ code: 'early', say: `Before this comes ${list(early)}.` }]),
    ...(held?.warn && !failed ? [held.warn] : []),
  ];
  const judged = held ? { limit: held.limit, judged: held.judged } : {};
  const advised = wish.advised === undefined ? {} : { advised: wish.advised };
  const what = { verb: 'done', value, task: key, ...beside(wish), ...judged, ...advised } as const;
  return write(stamp, wish, what, { warnings });
}

export interface HeldAgainst {
  /** As the file has it. */
  limit: string;
  /** `within`, `beyond`: as the figures say; `by hand`: the program could not tell; or nothing was measured. */
  judged: 'within' | 'beyond' | 'by hand' | typeof NO_READING;
  refuse?: { code: string; say: string };
  warn?: Warning;
}

function saidLast({ entries, living }: Job, task: string): string | undefined {
  return entries.findLast((e) => e.task === task && e.verb === 'done' && living.has(e.id))?.says;
}

/** A test's word taken out of its result: `passed, dry` is `passed`, and `dry` beside it. */
function worded(job: Job, wish: Wished<'done'>): Wished<'done'> {
  const task = job.tasks.get(wish.task);
  const verb = task ? task.spec.verb : wish.add?.verb;
  const read = verb === 'test' && wish.result !== undefined ? readTestWord(wish.result) : null;
  if (!read) return wish;
  const says = [read.says, wish.says].filter((text) => text != null).join(', ');
  return { ...wish, result: read.is, ...(says === '' ? {} : { says }) };
}

/** Words that say neither passed nor failed, and no reading that its limit judged. */
function unsaid({ result }: Wished<'done'>, held: HeldAgainst | null) {
  if (result === undefined || result === 'passed' || result === 'failed') return null;
  if (held?.judged === 'within' || held?.judged === 'beyond') return null;
  const both = `--result 'passed, ${result}', or --result 'failed, ${result}'`;
  const why = held?.refuse ? `${held.refuse.say} ` : '';
  return wrong('say-passed', `${why}“${result}” does not say whether it passed. Say: ${both}.`);
}

/** It would prove nothing of what is done after it. */
function tooEarly({ result, because }: Wished<'done'>, early: readonly string[]) {
  if (early.length === 0 || result === 'failed' || because !== undefined) return null;
  const say = `Before this comes ${list(early)}: a test before it proves nothing.`;
  return refuse('early', say, { before: [...early] });
}

/** What was measured, held against the limit of the file; null where that is no figure. */
function heldAgainst({ limit: said, verb }: TaskSpec, wish: Wished<'done'>): HeldAgainst | null {
  const limit = said?.text ?? null;
  if (limit === null) return null;
  const figure = readFigure(limit);
  const read = readLimit(limit) ?? (figure && alone(figure, limit));
  if (!read && !hasFigure(limit)) return null;
  const hand = { limit, judged: 'by hand' } as const;
  const measured = readingsIn(wish);
  if (!looksLikeLimit(limit)) return { ...hand, ...byHand(limit, wish, measured) };
  // What somebody says of a test may be its reading, or any remark.
  const word = verb === 'test' ? wish.says : undefined;
  if (measured.length === 0 && (word === undefined || !/\d/.test(word))) {
    const say = `No reading to hold against ${limit}. Give what was measured.`;
    return { limit, judged: NO_READING, refuse: { code: 'no-reading', say } };
  }
  if (!read) return { ...hand, ...byHand(limit, wish, measured) };
  const all = [...measured, ...(word === undefined ? [] : [word])].map((t) => holdAgainst(t, read));
  const spoken = word === undefined ? null : all.at(-1);
  const beyond = all.find((held) => held.is === 'beyond');
  if (beyond && figure) {
    const say = `${beyond.say}; whether more or less will do is not said.`;
    return { ...hand, refuse: { code: 'unread-limit', say } };
  }
  if (beyond) {
    const say = `${beyond.say}.`;
    return { limit, judged: 'beyond', refuse: { code: 'out-of-limit', say } };
  }
  // With a reading, the word beside it may be any remark.
  const asked = measured.length > 0 ? all.filter((held) => held !== spoken) : all;
  const odd = asked.find((held) => held.is === 'unread');
  if (odd) {
    const say = odd.noUnit ? `${odd.say}.` : `${odd.say}. Give the figure.`;
    return { ...hand, refuse: { code: 'unread-reading', say } };
  }
  return { limit, judged: 'within' };
}

/** A limit that was not read: whoever measured says whether it is kept; a reading alone says nothing of that. */
function byHand(limit: string, { result }: Wished<'done'>, measured: readonly string[]) {
  const code = 'unread-limit';
  const say = `The limit “${limit}” was not read whole: hold the reading against it yourself`;
  const told = result === 'passed' || result === 'failed';
  return told || measured.length === 0
    ? { warn: { code, say: `${say}.` } }
    : { refuse: { code, say: `${say}, and say passed or failed.` } };
}

/**
 * The right figure, given where a reason was asked for: it takes the place of the reading that was refused. Null where
 * nothing was refused, or the reason is one.
 */
export function rightDone(
  spec: TaskSpec,
  { because, ...wish }: Wished<'done'>,
): { wish: Wished<'done'>; say: string } | null {
  if (because === undefined || spec.limit === null || wish.result === 'failed') return null;
  const limit = readLimit(spec.limit.text);
  if (!heldAgainst(spec, wish)?.refuse || !isReading(because, limit)) return null;
  const reading = because.trim();
  const say = `${sayReading(reading, limit)} is a reading, and no reason`;
  if (wish.set !== undefined) return { wish: { ...wish, set: reading }, say };
  const isWord = wish.result === 'passed';
  // Of a test its word may be the reading.
  if (isWord && spec.verb === 'test') return { wish: { ...wish, says: reading }, say };
  const was = wish.was !== undefined && (wish.result === undefined || isWord);
  return { wish: was ? { ...wish, was: reading } : { ...wish, result: reading }, say };
}

/** `25 mm` alone: nothing but that figure is known to do. */
function alone({ least, most, unit }: PrintedFigure, text: string): Limit {
  return { from: { value: least, with: true }, to: { value: most, with: true }, unit, text };
}

/** What was set; else what came out; else, where nothing had to be changed, what it was. */
function readingsIn({ was, set, result }: Wished<'done'>): string[] {
  if (set !== undefined) return [set];
  if (result !== undefined && result !== 'passed' && result !== 'failed') return [result];
  return was === undefined ? [] : [was];
}

/** A task that the file does not have yet is written into it with its first mark. */
function newTask(
  job: Job,
  wish: Wished<'done'>,
  { verb, say, after }: NewTask,
  stamp: Stamp,
): Verdict {
  const stops =
    verb === 'test' ? (unsaid(wish, null) ?? tooEarly(wish, notDoneBefore(job, [after]))) : null;
  if (stops) return stops;
  const edit: Edit = {
    edit: 'named',
    section: 'tasks',
    key: wish.task,
    fields: { [verb]: say, after },
  };
  const value = doneWord(wish.result);
  const what = { verb: 'done', value, task: wish.task, ...beside(wish) } as const;
  return write(stamp, wish, what, { edits: [edit] });
}

/** Both words and nothing else: no remark, and no result. */
function isBoth(result: string): boolean {
  const words: string[] = result.toLowerCase().match(/[a-z]+/g) ?? [];
  const only = words.every((w) => w === 'passed' || w === 'failed' || w === 'and' || w === 'or');
  return only && words.includes('passed') && words.includes('failed');
}

function doneWord(result: string | undefined): string {
  return result !== undefined && /^(passed|failed)$/.test(result) ? result : 'done';
}

function beside({ was, set, result }: Wished<'done'>) {
  return {
    ...(was === undefined ? {} : { was }),
    ...(set === undefined ? {} : { set }),
    ...(result === undefined ? {} : { result }),
  };
}

/** What is not done of these steps, and of the pieces behind those that are: a task marked too early hides none. */
function notDoneBefore(job: Job, steps: readonly string[]): string[] {
  const reached = new Set(steps);
  // A set is gone through with what is added meanwhile.
  for (const step of reached) {
    for (const before of job.tasks.get(step)?.spec.after ?? []) reached.add(before);
  }
  const direct = steps.filter((step) => !stepDone(job, step));
  const behind = [...reached].filter((step) => step.endsWith(' on') && !stepDone(job, step));
  return [...new Set([...direct, ...(direct.length > 0 ? [] : behind)])];
}

/**
 * Whether a step is done: `alternator off`, `alternator on`, `drain`. What the job does not know, and a wait that
 * runs by itself, is not waited for.
 */
function stepDone(job: Job, step: string): boolean {
  const [key = '', way] = step.split(' ');
  if (way === undefined) {
    const task = job.tasks.get(key);
    return !task || task.spec.verb === 'wait' || (task.done !== null && task.done !== 'failed');
  }
  const piece = job.pieces.get(key);
  if (!piece) return true;
  if (way === 'off') return piece.away !== 'no' || piece.where === 'open' || piece.fitted;
  if (piece.holes.length === 0) return piece.fitted;
  return piece.where === 'tight' || piece.where === 'tested';
}
