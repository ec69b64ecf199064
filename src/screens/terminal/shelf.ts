/** The file system as the screens ask it: everything here answers, nothing throws. */
import { readdirSync, realpathSync, statSync, watch } from 'node:fs';
import { basename, dirname, join, sep } from 'node:path';
import { setImmediate as breath } from 'node:timers/promises';
import { errorCode } from '../../job/save/disk.ts';
import { stampOf } from '../../job/save/plain.ts';

/** What is asked of the file system beside the files' texts. */
export interface Shelf {
  /** Names in the folder, null when it cannot be read. */
  names(folder: string): string[] | null;
  /** Another text whenever the file was changed; null: there is no file. */
  mark(path: string): string | null;
  /**
   * What is kept of a file from one sitting to the next is kept under this: another text also where somebody put size
   * and time of writing back. `still`: so long ago that the next change is told from this one. Null: there is no file.
   */
  stamp(path: string): { text: string; still: boolean } | null;
  /** Calls after a change in the folder, with the name if the system says it. Answers how to stop. */
  watch(folder: string, changed: (name: string | null) => void): () => void;
  /** The file that a path leads to, behind links; where there is none, the place where it would be. */
  real(path: string): string;
  /**
   * What a name in the folder is: a file there, one that a link out of the folder leads to, or nothing that
   * could be read to its end (a folder, a pipe, a device, a link to nowhere).
   */
  leadsTo(folder: string, name: string): 'file' | 'elsewhere' | null;
  /** Waits until what has been pressed meanwhile was read. */
  breath(): Promise<void>;
  /** ms since some moment; only the differences count. */
  clock(): number;
  /** ms since the file was written, as far as the clocks of its disk and of this host agree. */
  age(path: string): number;
  /** Calls later, and keeps no program alive for it. Answers how to stop. */
  later(ms: number, call: () => void): () => void;
}

/** ms. The clocks of some disks are as coarse. */
const YOUNG = 2000;

export const shelf: Shelf = {
  names(folder) {
    try {
      return readdirSync(folder);
    } catch {
      return null;
    }
  },
  mark(path) {
    try {
      const found = statSync(path, { bigint: true, throwIfNoEntry: false });
      return found ? stampOf(found) : null;
    } catch (error) {
      // Not to be reached: a change, and what it is will be told by whoever reads it.
      return errorCode(error);
    }
  },
  stamp(path) {
    try {
      const found = statSync(path, { bigint: true, throwIfNoEntry: false });
      if (!found) return null;
      const still = Date.now() - Number(found.ctimeMs) > YOUNG;
      return { text: `${stampOf(found)} ${found.ctimeNs}`, still };
    } catch (error) {
      return { text: errorCode(error) ?? '', still: false };
    }
  },
  watch(folder, changed) {
    try {
      const watcher = watch(folder, { persistent: false }, (_, name) => changed(name));
      // A folder that goes away, or a system that has no more watches: each key looks for itself.
      watcher.on('error', () => watcher.close());
      return () => watcher.close();
    } catch {
      return () => {};
    }
  },
  real(path) {
    try {
      return realpathSync(path);
    } catch {
      // It may be gone for a moment only.
    }
    try {
      return join(realpathSync(dirname(path)), basename(path));
    } catch {
      return path;
    }
  },
  leadsTo(folder, name) {
    const path = join(folder, name);
    try {
      if (!statSync(path).isFile()) return null;
      const inside = realpathSync(folder) + sep;
      return realpathSync(path).startsWith(inside) ? 'file' : 'elsewhere';
    } catch {
      return null;
    }
  },
  breath: () => breath(),
  clock: () => performance.now(),
  age(path) {
    try {
      return Math.max(0, Date.now() - statSync(path).mtimeMs);
    } catch {
      return 0;
    }
  },
  later(ms, call) {
    const timer = setTimeout(call, ms);
    timer.unref();
    return () => clearTimeout(timer);
  },
};
