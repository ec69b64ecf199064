/** A page or a picture as a file: new, or instead of one that putback wrote; nobody else's file is written over. */
import { constants } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Disk, disk, drop, errorCode, syncFolder } from '../../job/save/disk.ts';
import { failOf, type SaveFail, saveFail } from '../../job/save/fail.ts';
import { lookAt, openPlain, readOpen } from '../../job/save/plain.ts';

/** Stands near the start of each page and picture that putback writes. */
const OURS = /<meta name="generator" content="putback">|<!-- putback -->/;
const START = 2000;

/**
 * `text` may come in parts, made one after the other while they are written. `nonce` makes the name of the file beside
 * it that is renamed in the end.
 */
export function writePage(
  file: string,
  text: string | Iterable<string>,
  nonce: string,
  d: Disk = disk,
): { ok: true } | SaveFail {
  const temp = join(dirname(file), `.putback-page-${nonce}`);
  try {
    const there = lookAt(d, file);
    if (there && !(there.odd === null && isOurs(d, file))) {
      return saveFail(
        'exists',
        there.odd === null
          ? `${file} is there already, and putback did not write it.`
          : `${file} is ${there.odd}.`,
        'Choose another name with -o.',
      );
    }
    writeParts(d, temp, typeof text === 'string' ? [text] : text);
    d.renameSync(temp, file);
    syncFolder(d, dirname(file));
    return { ok: true };
  } catch (error) {
    drop(d, temp);
    const code = errorCode(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') {
      return saveFail('gone', `There is no folder ${dirname(file)}.`, 'Make it, or name another.');
    }
    return failOf(error, file);
  }
}

function writeParts(d: Disk, path: string, parts: Iterable<string>): void {
  const fd = d.openSync(path, 'wx', 0o666);
  try {
    for (const part of parts) d.writeFileSync(fd, part);
    d.fsyncSync(fd);
  } finally {
    d.closeSync(fd);
  }
}

function isOurs(d: Disk, file: string): boolean {
  const fd = openPlain(d, file, constants.O_RDONLY);
  try {
    return OURS.test(readOpen(d, fd, START).bytes.toString('utf8'));
  } finally {
    d.closeSync(fd);
  }
}
