/** Where the screens cannot be opened: one plain line, no escape sequence, code 2. */
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { bundle } from './bundle.ts';
import { newFolder, start } from './pty.ts';
import { pinnedEnv } from './world.ts';

let program = '';
beforeAll(async () => {
  program = await bundle('tests/terminal/programs/echo-main.ts');
  // Only of what was made: the folder of no program is the one the tests run in.
  return () => rmSync(dirname(program), { recursive: true, force: true });
});

it('no input, or a pipe on either side', () => {
  const folder = newFolder();
  const ran = spawnSync(process.execPath, [program], {
    cwd: folder,
    env: pinnedEnv(folder),
    input: '',
    encoding: 'utf8',
  });
  expect({ code: ran.status, out: ran.stdout }).toEqual({ code: 2, out: '' });
  expect(ran.stderr).toMatch(/^putback: the screens need a terminal.*putback --help\.\n$/);
  expect(ran.stderr).not.toContain('\x1b');
});

it('output into a pipe of a terminal', async () => {
  const person = start(['-c', `node '${program}' | cat; echo over`], { program: 'sh' });
  const screen = await person.until('over');
  expect(screen).toContain('and the output is none');
  expect(person.bytes()).not.toContain('\x1b');
});

it('a dumb terminal', async () => {
  const person = start([program], { env: { TERM: 'dumb' } });
  expect(await person.exit()).toEqual({ code: 2, signal: 0 });
  expect(person.frame()).toContain('TERM is dumb');
  expect(person.bytes()).not.toContain('\x1b');
});
