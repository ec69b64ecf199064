/** What was shown as done stays in the file, whatever another program makes of it while it is open here. */
import { gitDid } from '../../diary/git/moved.ts';
import { lostEntries } from '../../job/diary/lost.ts';
import { writeAgain } from '../../job/save/again.ts';
import type { Entry, Fault, Job } from '../../model/types.ts';

export interface Missed {
  /** The job with all that was shown; null when the file is left as it is. */
  mended: { job: Job; faults: Fault[] } | null;
  /** One line for the person. */
  say: string;
}

export interface Shown {
  /** These entries are on disk, and are shown from now on. */
  saw(file: string, entries: readonly Entry[]): void;
  /** These too, beside what was shown before and may be missing just now. */
  also(file: string, entries: readonly Entry[]): void;
  /** Whether anything of the file was shown in this sitting. */
  has(file: string): boolean;
  /**
   * Looks what the file has lost of what was shown, and writes it again, unless git put this text there: then
   * git keeps it too. Null: nothing is missing.
   */
  mend(file: string, now: readonly Entry[]): Promise<Missed | null>;
}

const marks = (n: number) => (n === 1 ? '1 mark that was shown' : `${n} marks that were shown`);
const are = (n: number) => (n === 1 ? 'is' : 'are');

export function keepShown(pathOf: (file: string) => string, now: () => string): Shown {
  const shown = new Map<string, { entries: readonly Entry[]; since: string }>();

  async function mend(file: string, entries: readonly Entry[]): Promise<Missed | null> {
    const before = shown.get(file);
    const lost = before ? lostEntries(before.entries, entries) : [];
    if (!before || lost.length === 0) return null;
    const n = lost.length;
    const git = await gitDid(pathOf(file), before.since);
    if (git === 'under-way') {
      return {
        mended: null,
        say: `Git is at work on the file: ${marks(n)} ${are(n)} not in it just now.`,
      };
    }
    if (git === 'moved') {
      saw(file, entries);
      return { mended: null, say: `Git put another version in place, without ${marks(n)}.` };
    }
    const again = await writeAgain(pathOf(file), before.entries);
    if (!again.ok) {
      return { mended: null, say: `${marks(n)} ${are(n)} gone from the file. ${again.say}` };
    }
    saw(file, again.job.entries);
    const w = again.written.length;
    const say = `An older text was saved over the file. Written again: ${marks(w)}.`;
    return { mended: { job: again.job, faults: again.faults }, say };
  }

  function saw(file: string, entries: readonly Entry[]): void {
    shown.set(file, { entries, since: now() });
  }

  function also(file: string, entries: readonly Entry[]): void {
    const before = shown.get(file)?.entries ?? [];
    saw(file, [...before, ...lostEntries(entries, before)]);
  }

  return { saw, also, has: (file) => shown.has(file), mend };
}
