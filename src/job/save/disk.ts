/** The part of the file system that saving uses, handed in so that a test can let any single step fail. */
import {
  accessSync,
  chmodSync,
  closeSync,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { copyAttributes } from './attributes.ts';

/** Each by its name: to spread all of `fs` would load its streams. */
export const disk = {
  accessSync,
  chmodSync,
  closeSync,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  readdirSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
  writeSync,
  copyAttributes,
};
export type Disk = typeof disk;

/** Code of a system error, or null. */
export function errorCode(error: unknown): string | null {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return code ?? null;
}

/**
 * A folder, and those above it that are missing. One by one: asked for all at once below /proc, Node would never end.
 * Throws the system's error where there can be none.
 */
export function makeFolder(d: Disk, folder: string, mode = 0o777): void {
  const parent = dirname(folder);
  if (parent !== folder && !d.statSync(parent, { throwIfNoEntry: false })) {
    makeFolder(d, parent, mode);
  }
  try {
    d.mkdirSync(folder, { mode });
  } catch (error) {
    if (errorCode(error) !== 'EEXIST' || !d.statSync(folder).isDirectory()) throw error;
  }
}

/** Removes a file if it is there and may be removed. */
export function drop(d: Disk, path: string): void {
  try {
    d.unlinkSync(path);
  } catch {
    // Gone already, or not ours to remove: the next start cleans it.
  }
}

/** A file that must not be there yet, written whole or not left behind; on disk when this returns if `sync`. */
export function writeNew(
  d: Disk,
  path: string,
  bytes: Uint8Array | string,
  how: { mode?: number; sync: boolean },
): void {
  const fd = d.openSync(path, 'wx', how.mode ?? 0o666);
  let whole = false;
  try {
    d.writeFileSync(fd, bytes);
    if (how.sync) d.fsyncSync(fd);
    whole = true;
  } finally {
    d.closeSync(fd);
    if (!whole) drop(d, path);
  }
}

/** Makes a rename last through a power cut. Where folders cannot be synced (Windows) there is nothing to do. */
export function syncFolder(d: Disk, folder: string): void {
  let fd: number;
  try {
    fd = d.openSync(folder, 'r');
  } catch (error) {
    if (['EPERM', 'EISDIR', 'EACCES'].includes(errorCode(error) ?? '')) return;
    throw error;
  }
  try {
    d.fsyncSync(fd);
  } catch (error) {
    if (!['EPERM', 'EINVAL', 'EBADF', 'ENOTSUP'].includes(errorCode(error) ?? '')) throw error;
  } finally {
    d.closeSync(fd);
  }
}
