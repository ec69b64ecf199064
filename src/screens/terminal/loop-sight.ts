/** A file that is open in this sitting: what was shown of it, what it says, and what is kept of it meanwhile. */
import { lostEntries } from '../../job/diary/lost.ts';
import { jobOf, type Read } from '../../job/read.ts';
import type { Version } from '../../job/same-job.ts';
import { withEntries } from '../../job/save/again.ts';
import { keepCopy } from '../../job/save/kept.ts';
import type { Entry, Job } from '../../model/types.ts';
import type { FileState } from '../base/state.ts';
import { dropKept, idsIn, type Kept, keepBeside, keptName } from './loop-kept.ts';

/** A text of the file and what it says. */
export interface Seen extends Version {
  stamp: string;
  job: Job;
}

/** A file that is open in this sitting. */
export interface Sight {
  /** Where it really is. */
  home: string;
  /** As it was when it was opened. */
  base: Seen;
  /** The last text that was whole and this job. */
  known: Seen;
  /** All that was shown as done. */
  entries: readonly Entry[];
  /** RFC 3339: when all of them were in the file. */
  since: string;
  /** A text of somebody else's that is not believed yet, or that lacks marks; and since when it stands. */
  now: { seen: Seen; at: number } | null;
  /** That text, where marks may be written into it all the same. */
  free: string | null;
  said: string | null;
  /** All that was shown is in the user's own folder too. */
  copied: boolean;
  kept: Kept | null;
  stop: (() => void) | null;
}

export const marks = (n: number) =>
  n === 1 ? '1 mark that was shown' : `${n} marks that were shown`;
export const are = (n: number) => (n === 1 ? 'is' : 'are');
export const they = (n: number) => (n === 1 ? 'It is' : 'They are');

export const okState = ({ job, read }: Seen): FileState => ({ ok: true, job, faults: read.faults });
export const nowState = (seen: Seen): FileState =>
  seen.read.unreadable ? { ok: false, faults: seen.read.faults } : okState(seen);

export function seenAs(text: string, stamp: string, read: Read): Seen {
  return { text, stamp, read, job: jobOf(read) };
}

/** The last whole text with all that was shown. */
function full(s: Sight): string {
  const all = withEntries(s.known.text, s.entries, s.home);
  return 'no' in all ? s.known.text : all.text;
}

export function copy(s: Sight): void {
  if (s.entries.length === 0) return;
  keepCopy(s.home, full(s));
  s.copied = true;
}

export function keepSight(s: Sight): void {
  if (s.entries.every((e) => s.kept?.ids.includes(e.id))) return;
  const before = s.kept;
  s.kept = keepBeside(s.home, full(s), s.entries);
  if (before) dropKept(before);
}

export function keptSay(s: Sight, n: number): string {
  if (s.kept === null) return `${they(n)} nowhere else, and could not be kept beside it.`;
  return `${they(n)} kept in ${keptName(s.kept, s.home)}.`;
}

/** Marks that were shown and are not in this text; of one that cannot be read, by their ids in it. */
export function lostIn(s: Sight, { text, read }: Seen): Entry[] {
  if (!read.unreadable) return lostEntries(s.entries, read.entries);
  const there = idsIn(text);
  return s.entries.filter((e) => !there.has(e.id));
}

/** Whole lines of a diary more at the end and nothing else: as another putback writes. */
export function isAppended(before: string, text: string): boolean {
  if (!before.endsWith('\n') || !text.startsWith(before)) return false;
  return /^(?: *- \{[^\n]*\}\r?\n)*$/.test(text.slice(before.length));
}

export function sightOf(home: string, seen: Seen, since: string): Sight {
  return {
    home,
    base: seen,
    known: seen,
    entries: seen.read.entries,
    since,
    now: null,
    free: null,
    said: null,
    copied: false,
    kept: null,
    stop: null,
  };
}
