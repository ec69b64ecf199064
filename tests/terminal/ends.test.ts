/** However the screens end, the terminal is left as it was found, and what is said afterwards can be read. */
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundle } from './bundle.ts';
import { afterwards, alternateScreens, leftOn } from './clean.ts';
import { CTRL_C, CTRL_Z } from './keys.ts';
import { type Person, start } from './pty.ts';

let program = '';
beforeAll(async () => {
  program = await bundle('tests/terminal/programs/echo-main.ts');
  // Only of what was made: the folder of no program is the one the tests run in.
  return () => rmSync(dirname(program), { recursive: true, force: true });
});

/** Started from a shell, which afterwards says the exit code and whether the terminal is cooked. */
async function open(before = ''): Promise<Person & { program: number }> {
  const shell = `${before} node '${program}'; code=$?; stty -a | tr ';' '\\n' | grep -ow -e '-\\?icanon' -e '-\\?echo'; echo code $code`;
  const person = start(['-c', shell], { program: 'sh' });
  const screen = await person.until(/pid \d+\./);
  return { ...person, program: Number(/pid (\d+)\./.exec(screen)?.[1]) };
}

async function seeClean(person: Person): Promise<string> {
  const screen = await person.until(/code \d+/);
  expect(screen).toMatch(/^icanon\necho$/m);
  expect(leftOn(person.bytes())).toEqual([]);
  expect(alternateScreens(person.bytes())).toEqual({ entered: 1, left: 1 });
  expect(person.alternate()).toBe(false);
  return screen;
}

describe('ended', () => {
  it('by its own key: a line of what was done, code 0', async () => {
    const person = await open();
    person.press('abQ');
    expect(await seeClean(person)).toMatch(/^bye after ab and 0 marks\n[\s\S]*code 0/);
  });

  it('by Ctrl-C: the same', async () => {
    const person = await open();
    person.press('a', CTRL_C);
    expect(await seeClean(person)).toMatch(/^bye after a and 0 marks\n[\s\S]*code 0/);
  });

  it('while a mark is on its way to a slow disk: after the mark', async () => {
    const person = await open();
    person.press('RRQxyz');
    expect(await seeClean(person)).toMatch(/^bye after {2}and 2 marks\n/);
  });

  it('by Ctrl-C twice: without waiting for a disk that hangs', async () => {
    const person = await open();
    person.press('R'.repeat(40), CTRL_C, CTRL_C);
    const screen = await seeClean(person);
    expect(screen).toContain('ended before the last mark was on the disk; it may be missing.');
    expect(screen).toContain('code 3');
  });

  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)('by %s: dies by it', async (signal, code) => {
    const person = await open();
    process.kill(person.program, signal);
    expect(await seeClean(person)).toContain(`code ${code}`);
  });
});

describe('a fault of its own', () => {
  it.each([
    ['in the picture', 'B', 'the picture broke'],
    ['in what a key does', 'H', 'a handler broke \\x1b]0;owned\\x07'],
    ['nobody waited for', 'J', 'nobody waited for this'],
    ['in a timer', 'T', 'a timer broke'],
  ])('%s is said after the screen is gone, code 1', async (_, key, message) => {
    const person = await open();
    person.press('ab', key);
    const screen = await seeClean(person);
    expect(screen).toContain('code 1');
    // Where the program lies deep, more than a screen.
    const said = afterwards(person.bytes());
    expect(said).toContain(`putback stopped by a fault of its own: ${message}`);
    expect(said).toContain('Everything that was shown as done is in the file.');
    expect(said).toMatch(/^ +at /m);
  });
});

describe('while what draws is not there yet', () => {
  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)('by %s: dies by it, the first frame is gone', async (signal, code) => {
    const person = await open('HELD=1');
    process.kill(person.program, signal);
    expect(await seeClean(person)).toContain(`code ${code}`);
  });

  it('a key is kept, and the alternate screen entered once', async () => {
    const person = await open('HELD=1');
    person.press('ab');
    process.kill(person.program, 'SIGUSR2');
    await person.until('[ab]');
    person.press('Q');
    expect(await seeClean(person)).toContain('bye after ab');
  });

  it('and never will be: the fault is said on a clean screen', async () => {
    const person = await open('HELD=broken');
    process.kill(person.program, 'SIGUSR2');
    const screen = await seeClean(person);
    expect(screen).toContain('putback stopped by a fault of its own: no drawing');
    expect(screen).toContain('code 1');
  });
});

describe('killed with -9', () => {
  it('the next start sweeps up what it left on', async () => {
    const again = `node '${program}'; echo killed; node '${program}'; echo over`;
    const person = start(['-c', again], { program: 'sh' });
    const screen = await person.until(/pid \d+\./);
    const first = Number(/pid (\d+)\./.exec(screen)?.[1]);
    process.kill(first, 'SIGKILL');
    await person.until((s) => /pid \d+\./.test(s) && !s.includes(`pid ${first}.`));
    person.press('abQ');
    await person.until(/bye after ab[\s\S]*over/);
    expect(leftOn(person.bytes())).toEqual([]);
    expect(person.alternate()).toBe(false);
  });
});

describe('Ctrl-Z', () => {
  it('stops it as everywhere, and fg draws it again', async () => {
    const person = start(['-i'], { program: 'sh', env: { PS1: 'prompt> ', ENV: undefined } });
    await person.until('prompt>');
    person.press(`node '${program}'\r`);
    await person.until(/pid \d+\./);
    person.press('ab');
    await person.until('[ab]');
    person.press(CTRL_Z);
    await person.until(/Stopped[\s\S]*prompt>\s*$/);
    expect(person.alternate()).toBe(false);
    expect(leftOn(person.bytes())).toEqual([]);
    person.resize(100, 30);
    person.press('fg\r');
    await person.until('echo 100x30');
    await person.until('[ab]');
    expect(person.alternate()).toBe(true);
    person.press('cQ');
    await person.until(/bye after abc[\s\S]*prompt>\s*$/);
    expect(leftOn(person.bytes())).toEqual([]);
  });

  it('where no shell could continue it, it goes on', async () => {
    const person = start([program]);
    await person.until(/pid \d+\./);
    person.press('a', CTRL_Z);
    await person.untilBytes((b) => alternateScreens(b).entered === 2);
    person.press('b');
    await person.until('[ab]');
  });
});
