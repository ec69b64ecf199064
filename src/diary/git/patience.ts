/** Another git may hold the repository for a moment; its lock is never taken away. */
import type { GitDone } from './run.ts';

/** Tries in all, and the pause before the second one, which grows with each, ms. */
const TRIES = 5;
const PAUSE = 120;

/** Runs git again while another one holds the repository, for about a second. */
export async function patiently(run: () => Promise<GitDone>): Promise<GitDone> {
  for (let n = 1; ; n++) {
    const done = await run();
    if (n >= TRIES || !isLocked(done)) return done;
    await new Promise((go) => setTimeout(go, PAUSE * n));
  }
}

export function isLocked(done: GitDone): boolean {
  return (
    done.code !== 0 &&
    /Unable to create '.*\.lock'|cannot lock ref|could not lock config file/.test(done.err)
  );
}
