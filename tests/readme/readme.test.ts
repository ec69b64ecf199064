/** What the README says is so: its pictures show what the program shows, and each of its commands works on its own example. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { newFolder } from '../terminal/pty.ts';
import { PUTBACK, pinnedEnv } from '../terminal/world.ts';
import { FOLDER, PICTURES } from './pictures.ts';

const README = readFileSync(resolve(import.meta.dirname, '../../README.md'), 'utf8');

const blocks = (language: string) =>
  [...README.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'gm'))].map(
    (m) => m[1] ?? '',
  );

it.each(Object.entries(PICTURES))(
  '%s is what the screens show (npm run pictures)',
  (name, make) => {
    expect(readFileSync(join(FOLDER, name), 'utf8')).toBe(make());
  },
);

it('has no picture that nothing makes, and names each', () => {
  expect(readdirSync(FOLDER).sort()).toEqual(Object.keys(PICTURES).sort());
  for (const name of Object.keys(PICTURES)) expect(README).toContain(`jobs/pictures/${name}`);
});

it('the minute shows what it promises', () => {
  const text = PICTURES['minute.svg']?.() ?? '';
  for (const said of ['STOP', 'It would bottom', 'cup 2', 'pass 1 of', 'full']) {
    expect(text).toContain(said);
  }
});

it('each command works, in its order, on the example', () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'repairs'));
  const [job = ''] = blocks('yaml');
  writeFileSync(join(folder, 'repairs', 'cover.yaml'), job);
  const commands = blocks('sh').flatMap((block) => block.trim().split('\n'));
  expect(commands.length).toBeGreaterThan(10);
  const shell = `putback() { "${process.execPath}" "${PUTBACK}" "$@"; }\n`;
  for (const command of commands) {
    const { status, stdout, stderr } = spawnSync('sh', ['-c', shell + command], {
      cwd: folder,
      env: pinnedEnv(folder),
      encoding: 'utf8',
    });
    expect({ command, status, stderr }).toEqual({ command, status: 0, stderr: '' });
    const quiet = /^putback check /.test(command);
    expect(stdout === '', command).toBe(quiet);
  }
});

it('its words in code are commands, options or files that there are', () => {
  const help = spawnSync(process.execPath, [PUTBACK, '--help'], { encoding: 'utf8' }).stdout;
  const named = [...README.matchAll(/`putback ([a-z]+)/g)].map((m) => m[1] ?? '');
  for (const name of named.filter((n) => n !== 'repairs')) expect(help, name).toContain(name);
});
