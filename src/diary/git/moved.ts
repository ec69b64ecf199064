/** What git had to do with another text of a file, and whether it keeps the marks that the text lacks. */
import { basename, dirname } from 'node:path';
import { gitPlaceOf, type UnderWay } from './place.ts';
import { type GitOptions, git } from './run.ts';

export interface GitSaw {
  /** A merge, a rebase or the like has the file in hand, or was forgotten half way. */
  underWay: UnderWay | null;
  /** Since then git has put another version in place, and the file is as that has it. */
  moved: boolean;
  /** Each of the marks is in a version of the file that git keeps. */
  keeps: boolean;
}

/**
 * Looks at a file, named by its real path, whose text is now `text`. `since`: RFC 3339; `ids`: of the marks that
 * the text lacks. Null where there is no git or no repository.
 */
export async function gitSaw(
  file: string,
  text: string,
  since: string,
  ids: readonly string[],
  options: GitOptions = {},
): Promise<GitSaw | null> {
  const [folder, name] = [dirname(file), basename(file)];
  const place = await gitPlaceOf(folder, options);
  if ('no' in place) return null;
  const { underWay } = place;
  const moved = (await hasMoved(folder, since, options)) && (await isAsHead());
  return { underWay, moved, keeps: await keeps(folder, name, ids, options) };

  async function isAsHead(): Promise<boolean> {
    const blob = await git(folder, 'blob', [`HEAD:./${name}`], options);
    // No filter that a repository's settings name may run, and line ends do not count.
    const plain = (all: string) => all.replaceAll('\r\n', '\n');
    return blob.code === 0 && plain(blob.out) === plain(text);
  }
}

/** `HEAD@{1777709465} checkout: moving from main to side`: when it moved, and by what. */
const MOVE = /@\{(\d+)\} (.*)$/;

/**
 * Whether the branch, or the stash, moved since then by something that changes files. A commit does not, this
 * program's own neither: it takes the file as it is.
 */
async function hasMoved(folder: string, since: string, options: GitOptions): Promise<boolean> {
  const from = Math.floor(Date.parse(since) / 1000);
  const logs = await Promise.all(
    ['HEAD', 'refs/stash'].map((ref) => git(folder, 'moves', [ref], options)),
  );
  return logs.some(({ out }) =>
    out.split('\n').some((line) => {
      const [, time, what = ''] = MOVE.exec(line) ?? [];
      return time !== undefined && Number(time) >= from && !/^commit\b/.test(what);
    }),
  );
}

async function keeps(
  folder: string,
  name: string,
  ids: readonly string[],
  options: GitOptions,
): Promise<boolean> {
  // Such a name cannot be asked for one a line.
  if (/[\r\n]/.test(name)) return false;
  const versions = await git(folder, 'versions', [name], options);
  const commits = versions.out.split('\n').filter((line) => /^[0-9a-f]{40,64}$/.test(line));
  if (commits.length === 0) return false;
  const input = commits.map((commit) => `${commit}:./${name}\n`).join('');
  const { out } = await git(folder, 'blobs', [], { ...options, input });
  const there = new Set([...out.matchAll(/\bid: *["']?([A-Za-z0-9_-]{8})\b/g)].map((m) => m[1]));
  return ids.every((id) => there.has(id));
}
