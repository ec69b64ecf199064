/** An entry of the diary in words. */

import { kept } from '../../model/kept.ts';
import { addRow, isAddable } from '../../model/keys/addable.ts';
import type { Entry, Job } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { besidePrinted } from '../truth/corrections.ts';
import { HOLE_TEXTS } from '../truth/figures.ts';
import { sayTaken } from './say-taken.ts';

/** `4 out: M+clip`, `all full, 10 N·m`, `off`; without the piece, which the reader knows. */
export function sayEntry(entry: Entry, job: Job): string {
  const holes = entry.hole ? list(entry.hole) : 'all';
  switch (entry.verb) {
    case 'out':
      return `${holes} out: ${entry.value}`;
    case 'in':
      return `${holes} in by fingers: ${entry.value}`;
    case 'tight':
      return `${holes} ${entry.value}${saySet(entry)}`;
    case 'state':
      return `${holes} ${entry.value}`;
    case 'settle':
      return `${holes} takes ${entry.value}${entry.was === undefined ? '' : `, not ${entry.was}: the file was changed`}`;
    case 'removed':
      return entry.value === 'aside' ? 'moved aside, still connected' : 'off';
    case 'fitted':
      return 'on its place';
    case 'done':
      return `${aboutSaid(entry, job)}: ${entry.value}`;
    case 'note':
      return entry.hole ? `${holes}: ${entry.value}` : entry.value;
    case 'photo':
      return `${entry.hole ? `${holes}: ` : ''}photograph ${entry.value}`;
    case 'keep': {
      const kept = job.entries.find((e) => e.id === entry.value);
      return `Worth knowing next time: ${kept ? sayEntryOf(kept, job) : entry.value}`;
    }
    case 'taken':
      return `taken over from ${entry.value}: ${sayTaken(entry)}`;
    case 'reading':
      return `The machine says ${entry.value}`;
    case 'inside':
      return `${entry.value} went inside`;
    case 'cleared':
      return `${entry.value} came out again`;
    case 'seen':
    case 'struck':
      return `Before ${entry.value.replace(/ /, ': ')} ${entry.verb}`;
    case 'added':
      return `Before ${entry.value}: one thing more to look at`;
    case 'written':
      return sayWritten(entry);
    case 'renamed':
      return `${entry.was} is called ${entry.value}`;
    case 'corrected': {
      const where = entry.hole ? ` of ${holes}` : '';
      const [says, printed] = [entry.says ?? '', firstPrinted(entry, job)];
      const said = says === printed ? `${says} after all` : besidePrinted(says, printed);
      return `${entry.task ? `${entry.task}, ` : ''}${entry.value}${where}: ${said}`;
    }
    case 'chosen':
      return `while it is open: ${entry.value}`;
    case 'figured':
      return `${aboutSaid(entry, job)}: weighed by ${entry.value === '' ? 'nothing' : entry.value}`;
    case 'looked':
    case 'tried':
    case 'listed':
    case 'found':
      return sayTraced(entry, job);
    case 'undo':
      return sayUndo(entry, job);
  }
}

/** `, 10 N·m, manual 2-17` as it is printed, or `, set to 10.5 N·m for 95 lbf·in, manual 4-3`. */
function saySet({ set, printed }: Entry): string {
  if (printed === undefined) return set === undefined ? '' : `, ${set}`;
  const same = set === undefined || printed === set || printed.startsWith(`${set},`);
  if (same) return `, ${printed}`;
  return `, set to ${set} for ${printed}`;
}

/** `Blue spark: bad`, `Plug wet: new plug put in to try`. */
function sayTraced({ verb, value, check, suspect = '', old }: Entry, job: Job): string {
  const what = job.upper.suspects.get(suspect)?.what ?? suspect;
  if (verb === 'tried') return `${what}: ${value} put in to try`;
  if (verb === 'found') return `Found: ${value}`;
  if (verb === 'listed' && check === undefined && suspect === '')
    return `List to start from: ${value}`;
  if (verb === 'listed')
    return check === undefined ? `It may be: ${value}` : `To look at: ${value}`;
  if (check !== undefined) return `${job.upper.checks.get(check)?.check ?? check}: ${value}`;
  const went = { good: 'the trouble is the same', bad: 'the trouble is gone' }[value];
  const part =
    old === undefined ? '' : old === 'back' ? ', the old one is back' : ', the new one stays';
  return `${what}: with the new part ${went ?? 'nothing can be said'}${part}`;
}

/** So many undos of undos are told one by one. */
const MOST_TOLD = 3;
const BACK = 'Taken back: ';

function sayUndo(entry: Entry, job: Job): string {
  const { times, root } = chainsOf(job).get(entry.id) ?? { times: 1, root: entry.value };
  const said = typeof root === 'string' ? root : sayEntry(root, job);
  return times > MOST_TOLD ? `Taken back, ${times} times over: ${said}` : BACK.repeat(times) + said;
}

interface Chain {
  times: number;
  /** What it takes back in the end; an id where the diary has no such entry before it. */
  root: Entry | string;
}
/** By the id of each undo: what it is about, through undos of undos. An undo names what stands before it. */
function chainsOf({ entries }: Job): ReadonlyMap<string, Chain> {
  return kept(entries, 'chains', () => findChains(entries));
}

function findChains(entries: readonly Entry[]): ReadonlyMap<string, Chain> {
  const before = new Map<string, Entry>();
  const found = new Map<string, Chain>();
  for (const entry of entries) {
    if (entry.verb === 'undo' && !found.has(entry.id)) {
      const target = before.get(entry.value);
      const through = target?.verb === 'undo' ? found.get(target.id) : undefined;
      const { times, root } = through ?? { times: 0, root: target ?? entry.value };
      found.set(entry.id, { times: times + 1, root });
    }
    if (!before.has(entry.id)) before.set(entry.id, entry);
  }
  return found;
}

/** The words of a task or of a thing to buy; its name where the file has it no more. */
function aboutSaid({ task, buy }: Entry, job: Job): string {
  if (task !== undefined) return job.tasks.get(task)?.spec.say.text ?? task;
  return job.upper.buys.get(buy ?? '')?.what ?? buy ?? '';
}

/** A picture is not told in a line. */
function sayWritten({ value, says = '', was }: Entry): string {
  if (isAddable(value)) return `${addRow(value).told}: ${says}`;
  if (value === 'map') return was === undefined ? 'map drawn' : 'map drawn anew';
  return `${value} written down: ${says}${was === undefined ? '' : `, instead of ${was}`}`;
}

/** As printed at first, where what it corrects was itself a correction. */
function firstPrinted(entry: Entry, job: Job): string {
  const holds = job.corrections.find((c) => c.id === entry.id);
  if (holds) return holds.printed;
  let was = entry.was ?? '';
  for (const before of job.entries.slice(0, job.entries.indexOf(entry)).reverse()) {
    const same =
      before.verb === 'corrected' &&
      job.living.has(before.id) &&
      before.value === entry.value &&
      before.piece === entry.piece &&
      before.task === entry.task &&
      // What holds for the piece holds for a hole of it that says nothing of its own.
      (before.hole?.join() === entry.hole?.join() || (!before.hole && !saysItself(job, entry))) &&
      before.says === was;
    if (same) was = before.was ?? was;
  }
  return was;
}

/** The hole has a figure of its own in the file. */
function saysItself(job: Job, { piece, hole, value }: Entry): boolean {
  const own = job.printed.pieces.get(piece ?? '')?.holes.get(hole?.[0] ?? '');
  return own !== undefined && HOLE_TEXTS.some((l) => l.what === value && l.get(own).length > 0);
}

/** The same with the piece before it. */
export function sayEntryOf(entry: Entry, job: Job): string {
  if (entry.piece === undefined) return sayEntry(entry, job);
  return `${job.pieces.get(entry.piece)?.spec.name ?? entry.piece}: ${sayEntry(entry, job)}`;
}
