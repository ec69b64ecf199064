/** What a save is asked for, and what it answers: types alone. */
import type { Disk } from './disk.ts';
import type { SaveFail } from './fail.ts';
import type { Patience } from './lock.ts';

/**
 * What a change answers: the new text, that nothing is to be written and why, or that the text looks as if
 * another program were in the middle of saving it. `age`: ms since it was last written, by this host's clock.
 */
export type Change<T> = (
  text: string,
  age: number,
) => { text: string } | { stop: T } | { wait: true };

export type Saved<T> =
  /** On disk. `changed` is false when the new text was the old one. `stamp`: of the file with it (`stampOf`). */
  | { ok: true; changed: boolean; text: string; stamp: string }
  /** The change did not want to write; the file is untouched. */
  | { ok: true; stopped: T; text: string; stamp: string }
  | SaveFail;

export interface SaveOptions {
  patience?: Patience;
  /** Tries of a rename that the system refuses because somebody holds the file. */
  renameTries?: number;
  /** Instead of the user's own folder (state.ts). */
  state?: string;
  /** The file behind the path when it was opened: a path that has become a link to another one is not followed. */
  real?: string | undefined;
  /** Longest wait for another program that is in the middle of saving, ms. */
  saving?: number;
  disk?: Disk;
}
