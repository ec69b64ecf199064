/** Where a folder is in git: which repository, and what is under way in it. */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { firstLine, type GitDone, type GitOptions, git } from './run.ts';

export type NoPlace = 'no-git' | 'no-repo' | 'not-trusted' | 'late';
/** What holds a repository so that one file cannot be committed by itself. */
export type UnderWay = 'merge' | 'rebase' | 'cherry-pick' | 'revert' | 'bisect';

export interface GitPlace {
  underWay: UnderWay | null;
  /** No branch is checked out. */
  detached: boolean;
}

const SIGNS: readonly (readonly [string, UnderWay])[] = [
  ['MERGE_HEAD', 'merge'],
  ['rebase-merge', 'rebase'],
  ['rebase-apply', 'rebase'],
  ['CHERRY_PICK_HEAD', 'cherry-pick'],
  ['REVERT_HEAD', 'revert'],
  ['BISECT_LOG', 'bisect'],
];

/** Where the folder is; a word and git's own line where it is in no repository that git would work in. */
export async function gitPlaceOf(
  folder: string,
  options: GitOptions = {},
): Promise<GitPlace | { no: NoPlace; err: string }> {
  const names = SIGNS.map(([name]) => name);
  const where = await git(folder, 'place', names, options);
  const lines = where.out.split('\n');
  if (where.code !== 0 || lines[0] !== 'true') return { no: noPlace(where), err: where.err };
  const found = SIGNS.find((_, i) => existsSync(resolve(folder, lines[i + 1] ?? '')));
  const branch = await git(folder, 'branch', [], options);
  return { underWay: found?.[1] ?? null, detached: branch.code !== 0 };
}

function noPlace(done: GitDone): NoPlace {
  if (done.trouble === 'missing') return 'no-git';
  if (done.trouble === 'late') return 'late';
  return /dubious ownership/.test(done.err) ? 'not-trusted' : 'no-repo';
}

/** Git's own advice for a repository that belongs to somebody else: the command it names. */
export function trustAdvice(err: string): string {
  const command = err.split('\n').find((l) => /git config .*safe\.directory/.test(l));
  return command?.trim() ?? firstLine(err);
}
