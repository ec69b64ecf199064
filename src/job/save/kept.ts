/**
 * A copy of a job in the user's own folder from its first mark in a sitting to the end of that: what was shown as
 * done outlives a kill of the program, even if the next instant somebody saves an older text over the file.
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { disk, drop, errorCode, writeNew } from './disk.ts';
import { readPlain } from './plain.ts';
import { makeStateFolder, stateFolders } from './state.ts';

function nameOf(file: string): string {
  return `${createHash('sha256').update(file).digest('hex').slice(0, 32)}.kept`;
}

/** `file`: the real path of the job. Where there is no folder for it nothing is kept. */
export function keepCopy(file: string, text: string, state?: string): void {
  try {
    const folder = makeStateFolder(disk, state);
    const path = join(folder, nameOf(file));
    const next = `${path}.next`;
    drop(disk, next);
    // Not synced: it is for a kill, and a power cut ends the others too.
    writeNew(disk, next, text, { mode: 0o600, sync: false });
    disk.renameSync(next, path);
  } catch (error) {
    if (errorCode(error) === null) throw error;
  }
}

/** The copy that an earlier run left, and when, RFC 3339; null: there is none of this user's. */
export function copyOf(file: string, state?: string): { text: string; at: string } | null {
  for (const folder of stateFolders(disk, state)) {
    const path = join(folder, nameOf(file));
    try {
      const stat = disk.lstatSync(path);
      const me = process.getuid?.();
      if (!stat.isFile() || (me !== undefined && stat.uid !== me)) continue;
      const { bytes, whole } = readPlain(path);
      if (whole) return { text: bytes.toString('utf8'), at: stat.mtime.toISOString() };
    } catch (error) {
      if (errorCode(error) === null) throw error;
    }
  }
  return null;
}

/** The sitting is over, or its marks are elsewhere. */
export function dropCopy(file: string, state?: string): void {
  for (const folder of stateFolders(disk, state)) drop(disk, join(folder, nameOf(file)));
}
