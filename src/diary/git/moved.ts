/** Whether it was git that put another text of the file in place, and not an editor. */
import { realpathSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { disk, readOrNull } from '../../job/save/disk.ts';
import { placeOf } from './place.ts';
import { type GitOptions, git } from './run.ts';

/**
 * `under-way`: a merge, a rebase or the like has the file in hand and will come to an end. `moved`: the branch,
 * or the stash, moved since then and the file is as its commit has it, so what the file lacks is kept by git or
 * was given up on purpose. Null: git had no part in it, or there is no git.
 */
export async function gitDid(
  file: string,
  since: string,
  options: GitOptions = {},
): Promise<'under-way' | 'moved' | null> {
  let folder: string;
  let name: string;
  try {
    const real = realpathSync(file);
    [folder, name] = [dirname(real), basename(real)];
  } catch {
    return null;
  }
  const place = await placeOf(folder, options);
  if ('no' in place) return null;
  if (place.underWay !== null) return 'under-way';
  const read = { ...options, read: true };
  const from = Math.floor(Date.parse(since) / 1000);
  const latest = await Promise.all(
    ['HEAD', 'refs/stash'].map((ref) =>
      git(folder, ['reflog', 'show', '-1', '--date=unix', '--format=%gd', ref, '--'], read),
    ),
  );
  // `HEAD@{1777709465}`: when it last moved.
  const times = latest.map((done) => Number(/@\{(\d+)\}/.exec(done.out)?.[1] ?? 0));
  if (!times.some((time) => time >= from)) return null;
  // No filter that a repository's settings name may run, and line ends do not count.
  const blob = await git(folder, ['cat-file', 'blob', `HEAD:./${name}`], read);
  const plain = (text: string) => text.replaceAll('\r\n', '\n');
  return blob.code === 0 && plain(blob.out) === plain(readOrNull(disk, file) ?? '')
    ? 'moved'
    : null;
}
