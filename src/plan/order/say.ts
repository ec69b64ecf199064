/** What can be done next at a step, in words. */
import { inOtherWords, inWords, type Words } from '../../job/truth/said.ts';
import { asPrinted } from '../../model/said.ts';
import type { HoleNow, Job, PieceNow, TaskNow, TaskSpec } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { hurtHoles } from './needed.ts';
import type { PlanStep } from './relations.ts';
import type { Standing } from './standing.ts';

export function sayStep({ job }: Standing, { kind, key }: PlanStep): string {
  if (kind === 'off' || kind === 'on') {
    const piece = job.pieces.get(key);
    if (!piece) return key;
    return kind === 'off' ? sayOff(piece) : sayOn(piece);
  }
  const task = job.tasks.get(key);
  return task ? inWords(taskWords(task)) : key;
}

function sayOff(piece: PieceNow): string {
  const { name } = piece.spec;
  const all = piece.holes.length;
  const out = piece.holes.filter((h) => h.state === 'out').length;
  if (all === 0) return `${name} comes off.`;
  if (out === 0 && troubles(piece.holes) === '') return `${name} comes off: ${bolts(all)}.`;
  if (out === all) return `${name}: ${all} of ${all} out. Take it off.`;
  return `${name} comes off: ${out} of ${all} out${troubles(piece.holes)}.`;
}

function sayOn(piece: PieceNow): string {
  const { name } = piece.spec;
  const all = piece.holes.length;
  const odd = piece.holes.filter((h) => h.unsettled || h.conflict !== null);
  if (odd.length > 0) return `${name}: settle first what belongs in ${names(odd)}.`;
  const inside = piece.holes.filter((h) => h.state !== 'out').length;
  const hurt = troubles(hurtHoles(piece));
  if (hurt !== '') return `${name} goes back on: mend first${hurt.replace(/^,/, '')}.`;
  if (all === 0) return `${name} goes back on.`;
  if (inside === 0) return `${name} goes back on: ${bolts(all)}.`;
  if (inside < all) return `${name}: ${inside} of ${all} in; the rest by fingers.`;
  const tight = piece.holes.filter((h) => h.state === 'tight').length;
  return `${name}: ${tight} of ${all} tight; tighten the rest.`;
}

/** `, 9 stuck`; empty for none. */
function troubles(holes: readonly HoleNow[]): string {
  const bad = holes.filter((h) => h.trouble !== null);
  return bad.length === 0 ? '' : `, ${list(bad.map((h) => `${h.name} ${h.trouble}`))}`;
}

function names(holes: readonly HoleNow[]): string {
  return list(holes.map((h) => h.name));
}

function bolts(count: number): string {
  return count === 1 ? '1 bolt' : `${count} bolts`;
}

/** A task of the file, or a test that follows from the work and stands in none. */
interface ToSay {
  key: string;
  say: string;
  limit: string | null;
  when: string | null;
}

/** What is to be done, within which limit and when: of a task of the file with how each is printed where that is not so. */
export function taskSaid(
  job: Job,
  { key, say, limit, when }: ToSay,
): Pick<TaskSpec, 'say' | 'limit' | 'when'> {
  const said = (text: string | null) => (text === null ? null : asPrinted(text));
  return job.tasks.get(key)?.spec ?? { say: asPrinted(say), limit: said(limit), when: said(when) };
}

/** The sentence of a task that can be done next, in parts. */
export function taskWords({ spec, done }: TaskNow): Words {
  const { say, limit } = spec;
  const text = inOtherWords(say, say.text.replace(/[.\s]+$/, ''));
  const within: Words = limit === null ? [] : [' (', limit, ')'];
  const asks = text.printed === null && limit === null && /[?!]$/.test(text.text);
  const rest: Words = [text, ...within, asks ? '' : '.'];
  switch (spec.verb) {
    case 'do':
      return rest;
    case 'wait':
      return ['Wait: ', text, '. Say when it is over.'];
    case 'adjust':
      return ['Adjust: ', ...rest];
    case 'test':
      return [done === 'failed' ? 'Test again, it failed: ' : 'Test: ', ...rest];
    case 'decide':
      return ['Decide: ', ...rest];
  }
}

/** The same for any step; the sentence about a piece has no text that could be printed otherwise. */
export function stepWords(job: Job, step: string, say: string): Words {
  const task = job.tasks.get(step);
  return task ? taskWords(task) : [say];
}

/** A step, or what else holds one, as one says it: `Alternator cover on` for `alternator on`, the words of a task for its name. */
export function sayStepName(job: Job, step: string): string {
  const task = job.tasks.get(step);
  if (task) return task.spec.say.text;
  // Anything else that is waited for, such as a thing left inside or a distance, is said as it is.
  const [, key = '', way = ''] = /^(\S+)( off| on|)$/.exec(step) ?? [];
  const piece = job.pieces.get(key);
  return piece ? `${piece.spec.name}${way}` : step;
}
