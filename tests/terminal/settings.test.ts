/** The real program with a user's own settings. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ENTER } from './keys.ts';
import { newFolder, type Person, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = `putback: 1
job: Left cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S, torque: 10 N·m}
diary:
`;

function opened(settings: string, ...args: string[]): Person {
  const folder = newFolder();
  const env = { ...pinnedEnv(folder), XDG_CONFIG_HOME: join(folder, 'config') };
  mkdirSync(join(folder, 'config', 'putback'), { recursive: true });
  writeFileSync(join(folder, 'config', 'putback', 'settings.yaml'), settings);
  writeFileSync(join(folder, 'job.yaml'), JOB);
  return start([PUTBACK, ...args, 'job.yaml'], { folder, env });
}

it('keys are pressed as they are set, colours and signs drawn as they are set', async () => {
  const person = opened('keys: {quit: ctrl-n}\ncolours: safe\nsigns: ascii\n');
  await person.until(/Left cover/);
  person.press('?');
  await person.until(/^Ctrl-N +leave/m);
  person.press('\x1b');
  await person.until(/Next: Cover/);
  person.press(ENTER, 'k');
  const frame = await person.until('10 N.m');
  expect(frame).not.toContain('·');
  person.press('\x0e');
  expect(await person.exit()).toMatchObject({ code: 0 });
});

it('what is wrong in them is said in one line, and nothing else comes of it', async () => {
  const person = opened('keyz: {quit: j}\n');
  await person.until(/Your settings, line 1: keyz is no key of your settings/);
  person.press('q');
  expect(await person.exit()).toMatchObject({ code: 0 });
});

it('a pedal that sends F13 marks the bolt in the hand', async () => {
  const person = opened('keys: {out: [f13, space]}\n');
  await person.until(/Next: Cover/);
  person.press(ENTER, ENTER);
  await person.until('F13 this one is out');
  person.press('\x1b[25~');
  await person.until('1 of 3 out');
  person.press('\x1b[1;2P');
  await person.until('2 of 3 out');
  person.press('q');
  expect(await person.exit()).toMatchObject({ code: 0 });
});

it('what of them cannot be read is odd to doctor too, presses of keys and all', () => {
  const folder = newFolder();
  const env = { ...pinnedEnv(folder), XDG_CONFIG_HOME: join(folder, 'config') };
  mkdirSync(join(folder, 'config', 'putback'), { recursive: true });
  const asked = () =>
    spawnSync(process.execPath, [PUTBACK, 'doctor'], { cwd: folder, env, encoding: 'utf8' }).stdout;
  const settings = join(folder, 'config', 'putback', 'settings.yaml');
  writeFileSync(settings, 'keys: {out: f13}\n');
  expect(asked()).not.toContain('odd: Your settings');
  writeFileSync(settings, 'keys: {out: 5}\n');
  expect(asked()).toContain(
    'odd: Your settings, line 1: one screen needs 5 for out and for point.',
  );
});

it('--ascii asks for 7-bit characters this once', async () => {
  const person = opened('', '--ascii');
  await person.until(/Left cover/);
  person.press(ENTER, 'k');
  await person.until('10 N.m');
});
