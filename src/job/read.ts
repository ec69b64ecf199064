/**
 * A job file's text as what it says and what happened, and everything that is wrong with it. Every file with
 * readable YAML opens: a fault is told, and what it does not touch is there.
 */
import { type PlacedEntry, readEntries } from './diary-entries.ts';
import { splitDiary } from './diary-lines.ts';
import { collector, type Found } from './faults.ts';
import { toFaults } from './faults-place.ts';
import { type PlacedUpper, readUpper } from './read-upper.ts';
import type { Entry, Fault, Upper } from './types.ts';
import { openYaml } from './yaml-doc.ts';
import type { Spot } from './yaml-spot.ts';

export interface Read {
  /** Shared between reads of the same text: not to be changed. */
  upper: Upper;
  /** In the order of the file; what is no entry is a fault and not among them. */
  entries: Entry[];
  /** By line, then column. */
  faults: Fault[];
  /** No YAML, no text, two versions at once: nothing can be said about the job. */
  unreadable: boolean;
}

/** Reads the text of a job file; never throws. `file` is only named in the faults. */
export function readJob(text: string, file: string): Read {
  return readFast(text, file) ?? readWhole(text, file);
}

/** The same without the fast way for diaries as the program writes them. */
export function readWhole(text: string, file: string): Read {
  const part = readPart(text);
  const { entries } = part.broken ? { entries: [] } : readEntries(part.root);
  return answer(text, file, part, entries);
}

/** The person's part of a file, or all of it. */
interface Part extends PlacedUpper {
  root: Spot | null;
  found: Found[];
  broken: boolean;
}

function readPart(text: string): Part {
  const { root, found, broken } = openYaml(text);
  const more = collector();
  const placed = readUpper({ source: text, report: more.report }, root);
  return { ...placed, root, found: broken ? found : [...found, ...more.found], broken };
}

let last: { text: string; part: Part } | null = null;

function readFast(text: string, file: string): Read | null {
  const split = splitDiary(text);
  if (!split) return null;
  if (last?.text !== split.upper) last = { text: split.upper, part: readPart(split.upper) };
  const { part } = last;
  return endsWithDiary(part, split.key) ? answer(text, file, part, split.entries) : null;
}

/** Whether the line that looked like the key is the last key of the file, with nothing behind it yet. */
function endsWithDiary({ root, broken }: Part, key: number): boolean {
  if (broken || root?.is !== 'map' || root.flow) return false;
  const pair = [...root.pairs.values()].at(-1);
  return pair?.key === 'diary' && pair.at === key && pair.value.is === 'nothing';
}

function answer(text: string, file: string, part: Part, placed: readonly PlacedEntry[]): Read {
  return {
    upper: part.upper,
    entries: placed.map((p) => p.entry),
    faults: toFaults(part.found, text, file),
    unreadable: part.broken,
  };
}
