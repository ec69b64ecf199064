/** Tasks and steps in words. */
import { inOtherWords, type Words } from '../../job/truth/said.ts';
import { asPrinted } from '../../model/said.ts';
import type { Job, TaskNow, TaskSpec } from '../../model/types.ts';

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
      return done === 'failed'
        ? ['It failed: ', ...rest, ' Find the place and mend it, then test again.']
        : ['Test: ', ...rest];
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
