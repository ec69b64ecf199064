/** A printed torque that is not so, corrected in a real terminal while its bolts are tightened, and taken back. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BACKSPACE, ENTER } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = `putback: 1
job: Lid weeps
bolts: {S: "M6x25 flange, 8 mm"}
pieces:
  lid: {bolts: S S S, torque: "10 N·m, manual 2-17"}
diary:
`;
const CTRL_U = '\x15';

it('the wrench follows the truth, the file holds both, and Backspace brings the printed one back', async () => {
  const folder = newFolder();
  const job = join(folder, 'lid.yaml');
  writeFileSync(job, JOB);
  writeFileSync(join(folder, 'bench.yaml'), 'wrenches:\n  small: {range: 2..12 N·m, step: 0.5}\n');
  const run = (...args: string[]) =>
    execFileSync(process.execPath, [PUTBACK, ...args], {
      cwd: folder,
      env: pinnedEnv(folder),
      encoding: 'utf8',
    });
  run('out', job, 'lid', '--all');
  run('off', job, 'lid');
  run('in', job, 'lid', '--kind', 'S', '--all');
  run('tight', job, 'lid', '--pass', 'snug', '--all');

  const person = start([PUTBACK, job], { folder });
  await person.until(/> Lid/);
  person.press(ENTER);
  await person.until(/pass 2 of 2: full, 10 N·m\s+\(manual 2-17\) +set 10 on the small wrench/);

  person.press('c');
  await person.until(/What is true here\?[\s\S]*> 10 N·m, manual 2-17/);
  person.press(CTRL_U, '8 N·m, bulletin 12', ENTER);
  await person.until(/full, 8 N·m\s+\(bulletin 12\) +set 8 on the small wrench/);
  await person.until('Torque: 8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.');
  // SGR 9 of ECMA-48: crossed out; the printed figure, and nothing else.
  await person.untilBytes((bytes) => /\x1b\[9m10 N·m, manual 2-17\x1b\[/.test(bytes));
  const text = readFileSync(job, 'utf8');
  expect(text).toContain('torque: "10 N·m, manual 2-17"');
  expect(text).toMatch(/corrected: torque, .*"8 N·m, bulletin 12"\}\n$/);
  expect(run('check', job)).toBe('');

  person.press(BACKSPACE);
  const back = await person.until(/full, 10 N·m\s+\(manual 2-17\) +set 10 on the small wrench/);
  expect(back).not.toContain('bulletin 12. Not');

  person.press('y');
  await person.until('set 8 on the small wrench');
  person.press(' ');
  await person.until('1 of 3 done in this pass');
  person.press('q');
  expect(await person.exit()).toEqual({ code: 0, signal: 0 });
  expect(readFileSync(job, 'utf8').startsWith(JOB), 'the person’s part is as it was').toBe(true);
});
