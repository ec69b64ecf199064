/** What a killed process left behind, cleared away at the start. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { type Disk, disk } from './disk.ts';
import { recover } from './inplace.ts';
import { acquire, release } from './lock.ts';
import { cleanTemps } from './replace.ts';
import { besideOf, SIDE } from './side.ts';

const LEFT = /^(.+?)(?:\.lock|\.break|\.journal|\.[0-9a-f]{16}\.tmp)$/;

/**
 * Clears a folder of job files of dead processes' locks and half-written files, and finishes what they had begun
 * to write in place. Never waits and never fails: what somebody may still hold is left for the next save.
 */
export async function cleanFolder(folder: string, d: Disk = disk): Promise<void> {
  try {
    const names = d.readdirSync(join(folder, SIDE)).map((name) => LEFT.exec(name)?.[1] ?? null);
    for (const name of new Set(names)) if (name !== null) await cleanFile(d, join(folder, name));
  } catch {
    // No such folder, or not ours to clean.
  }
}

async function cleanFile(d: Disk, path: string): Promise<void> {
  const side = besideOf(path);
  const lock = await acquire(d, side, { wait: 0, still: Number.POSITIVE_INFINITY });
  if ('heldBy' in lock) return;
  try {
    if (cleanTemps(d, side)) recover(d, realpathSync(path), side);
  } finally {
    release(d, lock);
  }
}
