/** Small files about a job in the user's own folder, by the job's real path: nothing of them lies in a bench. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { disk, drop, errorCode, writeNew } from './disk.ts';
import { readPlain } from './plain.ts';
import { makeStateFolder, stateFolders } from './state.ts';

/**
 * What may be kept there: a copy with all marks that were shown, what was half done, where the practice bench is, what
 * marks replaced in the person's part.
 */
export type OwnFile = 'kept' | 'half' | 'practice' | 'replaced';

function nameOf(file: string, what: OwnFile): string {
  return `${createHash('sha256').update(file).digest('hex').slice(0, 32)}.${what}`;
}

/** `file`: the real path of the job. False: there is no folder for it, and nothing is kept. */
export function keepOwn(file: string, what: OwnFile, text: string, state?: string): boolean {
  try {
    const path = join(makeStateFolder(disk, state), nameOf(file, what));
    const next = `${path}.next`;
    drop(disk, next);
    // Not synced: it is there for a kill of the program, which loses nothing that was written.
    writeNew(disk, next, text, { mode: 0o600, sync: false });
    disk.renameSync(next, path);
    return true;
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return false;
  }
}

/** What an earlier run left, and when, RFC 3339; null: nothing of this user's. */
export function readOwn(
  file: string,
  what: OwnFile,
  state?: string,
): { text: string; at: string } | null {
  for (const folder of stateFolders(disk, state)) {
    const path = join(folder, nameOf(file, what));
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

export function dropOwn(file: string, what: OwnFile, state?: string): void {
  for (const folder of stateFolders(disk, state)) drop(disk, join(folder, nameOf(file, what)));
}
