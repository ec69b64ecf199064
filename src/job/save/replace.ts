/** Writing beside the file and renaming: readers see the old bytes or the new ones, never a part. */
import { randomUUID } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { type Disk, drop, errorCode, syncFolder } from './disk.ts';
import { stampOf } from './plain.ts';
import type { Side } from './side.ts';

/** Windows refuses a rename while a virus scanner or an indexer looks at the file. */
const HELD = ['EPERM', 'EACCES', 'EBUSY'];

const TEMP = /^[0-9a-f]{16}\.tmp$/;

/** A name that nobody has. */
export function tempName(side: Side): string {
  return `${side.temp}${randomUUID().replaceAll('-', '').slice(0, 16)}.tmp`;
}

/**
 * The new bytes in a file beside, synced, with mode, owner, group, access list and attributes of the old one.
 * Answers the stamp that the file will have, whatever its name. Null when something of these cannot be kept: the
 * file is then better written in place.
 */
export function prepare(
  d: Disk,
  temp: string,
  bytes: Uint8Array,
  old: { file: string; mode: number; uid: number; gid: number },
): string | null {
  // Readable by others only when it is all that it is to be.
  const fd = d.openSync(temp, 'wx', old.mode & 0o700);
  let stamp: string | null = null;
  try {
    const made = d.fstatSync(fd);
    const owned = (made.uid === old.uid && made.gid === old.gid) || chown(d, fd, old);
    // Behind the change of owner, which clears some bits; the mask took others when the file was made.
    if (owned) d.fchmodSync(fd, old.mode & 0o7777);
    if (owned && d.copyAttributes(old.file, temp)) {
      d.writeFileSync(fd, bytes);
      d.fsyncSync(fd);
      stamp = stampOf(d.fstatSync(fd, { bigint: true }));
    }
  } finally {
    d.closeSync(fd);
  }
  if (stamp === null) drop(d, temp);
  return stamp;
}

function chown(d: Disk, fd: number, { uid, gid }: { uid: number; gid: number }): boolean {
  try {
    d.fchownSync(fd, uid, gid);
    return true;
  } catch (error) {
    if (!['EPERM', 'EINVAL', 'ENOSYS'].includes(errorCode(error) ?? '')) throw error;
    return false;
  }
}

/**
 * Removes what others have half written; the lock is held. From now on nobody else can rename anything to the
 * file: what was written before is gone, and who writes now sees that the lock is not his.
 */
export function cleanTemps(d: Disk, side: Side): void {
  const start = basename(side.temp);
  for (const name of d.readdirSync(side.folder)) {
    if (name.startsWith(start) && TEMP.test(name.slice(start.length)))
      drop(d, join(side.folder, name));
  }
}

/** `again`: not asked for any more, or the prepared file was taken away. `refused`: by the folder or the disk. */
export type Renamed = 'done' | 'again' | 'refused';

/**
 * Renames the prepared file to the job file and syncs the folder. `still` is asked before each try. Where
 * something holds the file the rename is tried again, `tries` times in all.
 */
export async function renameOver(
  d: Disk,
  temp: string,
  file: string,
  tries: number,
  still: () => boolean,
): Promise<Renamed> {
  for (let n = 1; ; n++) {
    if (!still()) return 'again';
    try {
      d.renameSync(temp, file);
      break;
    } catch (error) {
      const code = errorCode(error) ?? '';
      if (code === 'ENOENT') return 'again';
      if (code === 'EXDEV') return 'refused';
      if (!HELD.includes(code)) throw error;
      if (n >= tries) {
        if (code === 'EBUSY') throw error;
        return 'refused';
      }
      await new Promise((done) => setTimeout(done, 10 * n));
    }
  }
  syncFolder(d, dirname(file));
  return 'done';
}
