/** Git's merge driver for job files: git calls it with three files, the result goes into the second. */
import { resolve } from 'node:path';
import { MERGED, mergeDriver, OPEN } from '../../diary/git/driver.ts';
import type { Answer, Call } from '../base/command.ts';

export async function run(call: Call): Promise<Answer> {
  const [base = '', ours = '', theirs = ''] = call.words.map((w) => resolve(call.world.folder, w));
  const done = await mergeDriver(base, ours, theirs);
  if (done === MERGED) return { exit: 0, json: { ok: true, changed: true }, text: '' };
  const [code, say] =
    done === OPEN
      ? (['differs', 'Both sides changed the same; look between the marks in the file.'] as const)
      : (['not-merged', 'The files could not be read or written; they are as they were.'] as const);
  return {
    exit: done === OPEN ? 1 : 2,
    json: { ok: false, refused: { code, say } },
    text: '',
    error: say,
  };
}
