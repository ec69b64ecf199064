import { expect, test } from 'vitest';
import { unsaved } from '../../src/commands/base/command.ts';
import { failOf } from '../../src/job/save/fail.ts';

const system = (code: string) => Object.assign(new Error(code), { code });

test('what was not saved says code, reason and way out, and no more', () => {
  expect(unsaved(failOf(system('ENOSPC'), '/bench/job.yaml')).json).toEqual({
    ok: false,
    refused: {
      code: 'no-space',
      say: 'The disk is full: job.yaml is as it was.',
      fix: 'Make room, then try again.',
    },
  });
});

test.each([
  ['ENOSPC', 'The disk is full: n.yaml was not made.', 'Make room, then try again.'],
  ['EACCES', 'n.yaml may not be made.', 'Give yourself the right to write in its folder.'],
  ['ENOTDIR', 'There is no folder for n.yaml.', 'Make it, or choose another name.'],
  ['EIO', 'n.yaml could not be made (EIO).', 'See whether the disk is well, then try again.'],
])('a new file that could not be made was never there: %s', (code, say, fix) => {
  expect(failOf(system(code), '/bench/n.yaml', 'made')).toMatchObject({ say, fix });
});
