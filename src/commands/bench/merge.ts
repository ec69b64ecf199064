/** Git's merge driver for job files: git calls it with three files, the result goes into the second. */
import { resolve } from 'node:path';
import { mergeDriver } from '../../diary/git/driver.ts';
import type { MergeSide } from '../../job/merge/merge.ts';
import { type Answer, answer, type Call, misuse, unsaved } from '../base/command.ts';

export async function run(call: Call): Promise<Answer> {
  const [base = '', ours = '', theirs = ''] = call.words.map((w) => resolve(call.world.folder, w));
  const done = await mergeDriver(base, ours, theirs);
  switch (done.as) {
    case 'merged':
      return answer({ changed: true }, '');
    case 'open':
      return open(done.unreadable);
    case 'undone': {
      const { code, say, fix } = done.fail;
      return done.doing === 'written' ? unsaved({ code, say, fix }) : misuse(code, `${say} ${fix}`);
    }
  }
}

function open(unreadable: readonly MergeSide[]): Answer {
  const what = unreadable.length > 0 ? SAYS[unreadable.join()] : null;
  const say = `${what ?? 'Both sides changed the same.'} Look between the marks in the file.`;
  const refused = what ? { code: 'unreadable', say, unreadable } : { code: 'differs', say };
  return { exit: 1, json: { ok: false, refused }, text: '', error: say };
}

const SAYS: Record<string, string> = {
  ours: 'Ours, the second file, is no readable job: nothing was put in its place.',
  theirs: 'Theirs, the third file, is no readable job: it takes nothing out of ours.',
  'ours,theirs': 'Neither ours nor theirs is a readable job: nothing was merged.',
};
