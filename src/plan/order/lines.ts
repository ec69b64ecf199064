/**
 * The diary as the plan reads it: what came off and went on when, what went inside and came out again, what was
 * seen to at a gate, and how far a thing to buy has come. In the order of the file, without what was undone.
 */
import { livingOf } from '../../job/fold/living-of.ts';
import { kept } from '../../model/kept.ts';
import type { Entry, Job } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';

export interface DiaryLine extends Entry {
  /** Where the line stands among those that count, from 0. */
  index: number;
  entry: Entry;
}

/** What the plan remembers of something that happened. */
interface Moment {
  index: number;
  at: string;
}

export interface Lines {
  all: readonly DiaryLine[];
  /** When a piece came off, the last time that it did. */
  off: ReadonlyMap<string, Moment>;
  /** Last entry that put a piece or its bolts back. */
  on: ReadonlyMap<string, Moment>;
  /** Last `done` of a task, and what it says. */
  done: ReadonlyMap<string, Moment & { value: string }>;
}

export function diaryLines(job: Job): Lines {
  return kept(job, 'lines', () => readLines(job));
}

function readLines(job: Job): Lines {
  const all = livingOf(job).map((entry, index): DiaryLine => ({ ...entry, index, entry }));
  const off = new Map<string, Moment>();
  const on = new Map<string, Moment>();
  const done = new Map<string, Moment & { value: string }>();
  const away = new Set<string>();
  for (const { piece, task, verb, value, index, at } of all) {
    if (task !== undefined && verb === 'done') done.set(task, { index, at, value });
    if (piece === undefined) continue;
    const { moves } = verbRow(verb);
    // What is away already does not come off a second time, whatever is marked of it.
    if (moves === 'off' && !away.has(piece)) off.set(piece, { index, at });
    if (verb === 'removed') away.add(piece);
    if (moves === 'on') away.delete(piece);
    if (moves === 'on' || verb === 'tight') on.set(piece, { index, at });
  }
  return { all, off, on, done };
}
