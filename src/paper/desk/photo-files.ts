/** Where photographs lie: beside the job in `photos/`, where they were, or in the folder of a camera. */
import { type Dirent, readdirSync, realpathSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, dirname, extname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { disk, errorCode, syncFolder, writeNew } from '../../job/save/disk.ts';
import { lookAt, readPlain } from '../../job/save/plain.ts';
import { MOST_BYTES } from './camera.ts';

const PHOTOS = 'photos';
const KINDS = new Set([
  '.jpg',
  '.jpeg',
  '.png',
  '.webp',
  '.heic',
  '.heif',
  '.avif',
  '.tif',
  '.tiff',
]);

export function pictureName(path: string): boolean {
  return KINDS.has(extname(path).toLowerCase());
}

/** As it stands in the diary: from the job's folder where it lies there or below, else whole. Always with `/`. */
export function noted(job: string, picture: string): string {
  const from = relative(dirname(job), picture);
  const inside = !isAbsolute(from) && from !== '..' && !from.startsWith(`..${sep}`);
  return (inside ? from : picture).split(sep).join('/');
}

/** The pictures of a folder and of those in it, by name; links are not followed. Empty where it cannot be read. */
export function picturesIn(folder: string, deep = 3): string[] {
  const whole = folder.startsWith('~/') ? join(homedir(), folder.slice(2)) : folder;
  let found: Dirent[];
  try {
    found = readdirSync(whole, { withFileTypes: true });
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return [];
  }
  return found
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = join(whole, entry.name);
      if (entry.isDirectory()) {
        return deep > 0 && !entry.name.startsWith('.') ? picturesIn(path, deep - 1) : [];
      }
      return entry.isFile() && pictureName(entry.name) ? [path] : [];
    });
}

/**
 * A copy in `photos/` beside the job, under its own name or that with a number; a copy that is there already is used.
 * Throws the system's error, or NotPlain.
 */
export function copyBeside(job: string, picture: string, git: 'ignore' | 'add'): string {
  const folder = join(dirname(job), PHOTOS);
  const there = lookAt(disk, folder);
  if (there === null) {
    disk.mkdirSync(folder);
    // Pictures are large, and tell where and when: git has them only where the bench says so.
    if (git === 'ignore') writeNew(disk, join(folder, '.gitignore'), '*\n', { sync: true });
  } else if (there.odd !== 'a folder') throw Object.assign(new Error(folder), { code: 'ENOTDIR' });
  const { bytes } = readPlain(picture, MOST_BYTES);
  const [stem, end] = [basename(picture, extname(picture)), extname(picture)];
  for (let n = 1; ; n += 1) {
    const to = join(folder, n === 1 ? `${stem}${end}` : `${stem}-${n}${end}`);
    const old = lookAt(disk, to);
    if (old === null) {
      writeNew(disk, to, bytes, { sync: true });
      syncFolder(disk, folder);
      return to;
    }
    if (old.odd === null && readPlain(to, MOST_BYTES).bytes.equals(bytes)) return to;
  }
}

/**
 * The file behind a photograph of a diary; null: it lies outside of the folder that may be shown from. A diary may come
 * from anybody, and a page is handed on: what lies elsewhere on this disk is not put into it.
 */
export function shownFrom(job: string, root: string, said: string): string | null {
  const path = resolve(dirname(job), said);
  try {
    const folder = realpathSync(dirname(path));
    const from = relative(realpathSync(root), folder);
    const inside = from === '' || (!isAbsolute(from) && from.split(sep)[0] !== '..');
    return inside ? join(folder, basename(path)) : null;
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return path;
  }
}
