/** Git's own merge line by line, for what has no keys to merge by. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type LineMerge, marked } from '../../job/merge/merge.ts';
import { gitArgs } from './calls.ts';
import { gitEnv } from './run.ts';

/** Longest time, ms: lines are merged within a blink or not at all. */
const LIMIT = 5000;
/** `git merge-file` ends with the number of conflicts, at most this; anything else is an error. */
const MOST = 127;

/** Three texts merged as `git merge-file` does; all of it between markers where git cannot. */
export const mergeLines: LineMerge = (base, ours, theirs) => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-merge-'));
  try {
    const sides = { ours, base, theirs };
    for (const [name, text] of Object.entries(sides)) writeFileSync(join(folder, name), text);
    const names = Object.keys(sides);
    const words = [...names.flatMap((name) => ['-L', name]), ...names];
    const done = spawnSync('git', gitArgs('mergeFile', words), {
      cwd: folder,
      // biome-ignore lint/style/noProcessEnv: git runs in this program's own surroundings, less what would redirect it
      env: gitEnv(process.env, 'read'),
      timeout: LIMIT,
      maxBuffer: 1 << 28,
      encoding: 'utf8',
      windowsHide: true,
    });
    const merged = done.status !== null && done.status <= MOST && done.error === undefined;
    return merged ? { text: done.stdout, clean: done.status === 0 } : marked(base, ours, theirs);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
