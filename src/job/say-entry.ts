/** An entry in a few words, for a line that speaks of it: `Alternator cover, 4: M+clip in`. */
import { list } from './judge/parts.ts';
import { oneLine } from './safe.ts';
import type { Entry, Job } from './types.ts';

export function sayEntry(entry: Entry, job: Job): string {
  const piece =
    entry.piece === undefined ? null : (job.pieces.get(entry.piece)?.spec.name ?? entry.piece);
  const task =
    entry.task === undefined ? null : (job.tasks.get(entry.task)?.spec.say ?? entry.task);
  const holes = entry.hole ? list(entry.hole) : null;
  const place = [piece ?? task ?? entry.buy ?? null, holes].filter((p) => p !== null).join(', ');
  const what = oneLine(sayVerb(entry));
  return place === '' ? what : `${place}: ${what}`;
}

function sayVerb(entry: Entry): string {
  switch (entry.verb) {
    case 'out':
    case 'in':
      return `${entry.value} ${entry.verb}`;
    case 'tight':
      return entry.set === undefined
        ? `tight, ${entry.value}`
        : `tight, ${entry.value}, ${entry.set}`;
    case 'settle':
      return `${entry.value} belongs there`;
    case 'removed':
      return entry.value === 'aside' ? 'aside' : 'off';
    case 'fitted':
      return 'on its place';
    case 'inside':
      return `${entry.value} went in`;
    case 'cleared':
      return `${entry.value} came out again`;
    case 'seen':
    case 'struck':
    case 'added':
      return `${entry.verb}: ${entry.value}`;
    case 'undo':
      return `taken back: ${entry.value}`;
    case 'state':
    case 'done':
    case 'note':
      return entry.value;
  }
}
