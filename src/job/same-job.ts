/** Whether a text that another program put in a job file is whole, and still the same job. */
import type { Entry, Upper } from '../model/types.ts';
import type { Read } from './read.ts';

/**
 * `half`: it cannot be read as a job, or lacks a part that this job has: somebody is in the middle of saving it.
 * `other`: a job, but not this one.
 */
type Standing = 'whole' | 'half' | 'other';

export interface Version {
  text: string;
  read: Pick<Read, 'upper' | 'entries' | 'faults' | 'unreadable'>;
}

/** Of these files nothing says that they are jobs: a diary in them would be written into somebody's other file. */
const NO_JOB: readonly string[] = ['no-version', 'bad-version', 'not-a-job'];

/** The faults that say so; empty: it is a job. */
export function noJob({ faults }: Pick<Read, 'faults'>): Read['faults'] {
  return faults.filter((f) => NO_JOB.includes(f.code));
}

/**
 * Nothing in it is of a job: another kind of file, or an empty one. A file that only lacks the version of the form is
 * somebody's job all the same, and opens.
 */
export function isNoJob(read: Pick<Read, 'upper' | 'entries' | 'faults'>): boolean {
  const { job, pieces, tasks } = read.upper;
  const empty = job === '' && pieces.size + tasks.size + read.entries.length === 0;
  return empty && noJob(read).length > 0;
}

/**
 * What became of `known` in `now`. `base`: the file when the job was opened; `lost`: marks that were shown and that
 * `now` lacks. The same job has one of the marks, or the job and machine of before, or else
 * the same person's part; and each piece that a lost mark is about, if it was there to begin with. `late`: it has
 * stood still for so long that nobody will write the rest of it.
 */
export function howItStands(
  known: Version,
  now: Version,
  base: Version,
  lost: readonly Entry[],
  late = false,
): Standing {
  const { read } = now;
  if (read.unreadable || noJob(read).length > 0) return 'half';
  if (!late && isCut(base.text, now.text)) return 'half';
  const ids = new Set(known.read.entries.map((e) => e.id));
  const shares = read.entries.some((e) => ids.has(e.id));
  if (!shares && !isNamedAlike(known.read.upper, read.upper) && !restIsAlike(known, now)) {
    return 'other';
  }
  const there = lost.every(
    ({ piece }) =>
      piece === undefined || !base.read.upper.pieces.has(piece) || read.upper.pieces.has(piece),
  );
  return there ? 'whole' : 'half';
}

/**
 * It ends in the middle of the person's part: as that was, or, where somebody has edited it, without the diary or
 * the last line break that were there. An older text has all of these.
 */
function isCut(base: string, now: string): boolean {
  const start = now.trimEnd();
  if (start.length < upperOf(base).trimEnd().length && base.startsWith(start)) return true;
  return (DIARY.test(base) && !DIARY.test(now)) || (base.endsWith('\n') && !now.endsWith('\n'));
}

function isNamedAlike(a: Upper, b: Upper): boolean {
  return a.job === b.job && a.machine === b.machine;
}

/** The person's part is the same but for what the job is called, and comments. */
function restIsAlike(a: Version, b: Version): boolean {
  const rest = ({ text }: Version) =>
    upperOf(text)
      .split(/\r?\n/)
      .filter((line) => line.trim() !== '' && !/^(?:job|machine)\s*:|^\s*#/.test(line))
      .join('\n');
  return rest(a) === rest(b) && rest(a).includes('\n');
}

const DIARY = /^["']?diary["']?\s*:/m;

/** Down to the diary, which stands last. */
function upperOf(text: string): string {
  const at = DIARY.exec(text)?.index;
  return at === undefined ? text : text.slice(0, at);
}
