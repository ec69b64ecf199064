/** A new job file. */
import { linkSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { type Disk, disk, drop, errorCode, syncFolder, writeNew } from './disk.ts';
import { failOf, type SaveFail, saveFail } from './fail.ts';
import { NotPlain } from './plain.ts';
import { tempName } from './replace.ts';
import { besideOf, isSideReady, makeSide, type Side } from './side.ts';

/** Writes a file that is not there yet, whole and synced, or not at all; an existing one is never touched. */
export function createFile(file: string, text: string, d: Disk = disk): { ok: true } | SaveFail {
  const side = besideOf(file);
  const temp = tempName(side);
  try {
    if (!canWriteBeside(d, side)) writeNew(d, file, text, { sync: true });
    else {
      writeNew(d, temp, text, { sync: true });
      try {
        linkSync(temp, file);
      } catch (error) {
        // File systems without hard links: the name first, then the bytes.
        if (!['EPERM', 'ENOTSUP', 'ENOSYS', 'EMLINK'].includes(errorCode(error) ?? '')) throw error;
        writeNew(d, file, text, { sync: true });
      }
    }
    syncFolder(d, dirname(file));
    return { ok: true };
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') return failOf(error, file, 'made');
    return saveFail('exists', `${basename(file)} is there already.`, 'Choose another name.');
  } finally {
    drop(d, temp);
  }
}

/** False where something that is none of ours lies in the place of our folder. */
function canWriteBeside(d: Disk, side: Side): boolean {
  try {
    if (!isSideReady(d, side)) makeSide(d, side);
    return true;
  } catch (error) {
    if (error instanceof NotPlain) return false;
    throw error;
  }
}
