/** The real program read out: plain lines, keys from a pipe or a keyboard, nothing that moves a cursor. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ENTER } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = `putback: 1
job: Left cover
bolts: {S: M6x25, M: M6x35}
pieces:
  cover: {bolts: S S M}
diary:
`;

function readOut(folder: string, keys: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PUTBACK, ...args], {
    cwd: folder,
    env: pinnedEnv(folder),
    input: keys,
    encoding: 'utf8',
  });
  expect(stdout).not.toMatch(/[\x00-\x09\x0b-\x1f\x7f]/);
  return { status, lines: stdout.split('\n'), stderr };
}

it('a cover comes off and goes back, from a pipe of keys', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const off = '\r\r   \rcup 2\r';
  // The two gates, row by row and all at once; the bolts; two passes of three.
  const on = '\r\x1b[27u\r\r\r\rs  m ';
  const { status, lines } = readOut(folder, off + on, '--lines', 'job.yaml');
  expect(status).toBe(0);
  expect(lines).toContain('Next out: 3. M, M6x35.');
  expect(lines).toContain('3 of 3 out');
  expect(lines).toContain('3: M, out');
  expect(lines.filter((text) => text === '1: S, in, by fingers').length).toBeGreaterThan(0);
  const diary = readFileSync(join(folder, 'job.yaml'), 'utf8');
  expect(diary.match(/ out: /g)).toHaveLength(3);
  expect(diary.match(/ in: /g)).toHaveLength(3);
  const tight = readOut(folder, '\r\r   \r   ', '--lines', 'job.yaml');
  expect(tight.lines).toContain('Next: 1, to begin with. 0 of 3 done in this pass');
  expect(tight.lines).toContain('1: had this pass');
  expect(readFileSync(join(folder, 'job.yaml'), 'utf8').match(/ tight: full/g)).toHaveLength(3);
});

it('the practice bench: two bolts out, a note on it, and all that is said on the way', () => {
  const folder = newFolder();
  spawnSync(process.execPath, [PUTBACK, 'practice', 'bench'], {
    cwd: folder,
    env: pinnedEnv(folder),
  });
  const keys = '\r\r\r\r nthe lead is in the way\r\x1b[27u';
  const { status, lines } = readOut(folder, keys, '--lines', 'bench');
  expect(status).toBe(0);
  expect(lines[1]).toMatch(/^\d jobs?/);
  expect(lines).toContain("Don't run it: the oil is out.");
  expect(lines).toContain('9: S, in trouble');
  expect(lines).toContain('coming off, 9 of 11 out');
  const text = readFileSync(join(folder, 'bench', 'hollin-left-cover.yaml'), 'utf8');
  expect(text).toContain('hole: 10, out: L');
  expect(text).toContain('the lead is in the way');
});

it('a pipe that ends at once, and a text half typed at its end, leave nothing broken', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  expect(readOut(folder, '', '--lines', 'job.yaml').lines[0]).toBe('Left cover');
  expect(readOut(folder, 'nhalf a no', '--lines', 'job.yaml').status).toBe(0);
  const again = readOut(folder, 'n', '--lines', 'job.yaml');
  expect(again.lines).toContain('> half a no');
  expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(JOB);
});

it('at a keyboard where a screen reader is said to be in use', async () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const env = { ...pinnedEnv(folder), INK_SCREEN_READER: 'true' };
  const person = start([PUTBACK, 'job.yaml'], { folder, env });
  await person.until('Next: Cover: 3 bolts to come out.');
  person.press(ENTER, ENTER);
  await person.until('Next out: 3.');
  person.press(' ');
  await person.until('off, 1 of 3 out');
  person.press('\x03');
  expect(await person.exit()).toMatchObject({ code: 0 });
  expect(person.bytes()).not.toMatch(/\x1b/);
});

it('a long text from a pipe goes in whole, and what follows it is pressed', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const text = 'weeps at the lower edge '.repeat(300).trim();
  expect(readOut(folder, `n${text}\r`, '--lines', 'job.yaml').status).toBe(0);
  expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toContain(`note: "${text}"`);
});

it('from a pipe a list is whole before a key is pressed in it, and so is what was looked for', () => {
  const folder = newFolder();
  const more = Array.from({ length: 60 }, (_, i) => `${i}`.padStart(3, '0'));
  for (const i of more) writeFileSync(join(folder, `job-${i}.yaml`), JOB.replace('Left', i));
  const down = '\x1b[B'.repeat(more.length - 1);
  const { lines } = readOut(folder, `${down}\r\x1b\x1b/059\r`, '--lines', '.');
  expect(lines[1]).toBe('60 jobs');
  expect(lines).not.toContain('058 cover');
  expect(lines.filter((text) => text === '059 cover').length).toBeGreaterThan(1);
});

it('a key that is none is told each time, and Esc before a letter is Esc', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const { lines } = readOut(folder, 'n\x1bZ', '--lines', 'job.yaml');
  expect(lines).toContain('Z is no key here.');
  expect(lines).not.toContain('> Z');
  const twice = readOut(folder, 'ZZ', '--lines', 'job.yaml');
  expect(twice.lines.filter((text) => text === 'Z is no key here.')).toHaveLength(2);
  expect(twice.status).toBe(0);
});

it('a key that changes nothing says so; a cursor that is moved in a text, where it is', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const { lines } = readOut(folder, '\x1b[D\x1b[6~nabc\x1b[D\x1b[D\x1b[F', '--lines', 'job.yaml');
  expect(lines.filter((text) => /changes nothing/.test(text))).toEqual([
    'Left changes nothing here.',
    'PageDown changes nothing here.',
  ]);
  expect(lines.filter((text) => /^The cursor/.test(text))).toEqual([
    'The cursor is before: c',
    'The cursor is before: bc',
    'The cursor is at the end.',
  ]);
});

it('Ctrl-Z stops it at a keyboard, and fg reads where it stands', async () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const person = start(['--norc', '-i'], {
    folder,
    program: 'bash',
    env: { ...pinnedEnv(folder), PS1: '$ ' },
  });
  const seen = (text: string) => (frame: string) => frame.split(text).length - 1;
  await person.until(/\$ $/m);
  person.press(`'${process.execPath}' '${PUTBACK}' --lines job.yaml\r`);
  await person.until('Next: Cover: 3 bolts to come out.');
  person.press('\x1a');
  await person.until('Stopped');
  person.press('fg\r');
  await person.until((frame) => seen('Next: Cover: 3 bolts to come out.')(frame) === 2);
  person.press('q');
  await person.until(/job\.yaml: Cover: 3 bolts to come out\./);
  person.press('exit\r');
  await person.exit();
  expect(person.frame()).not.toContain('changes nothing');
});

it('the practice is opened so too, and read out', () => {
  const folder = newFolder();
  const { status, lines } = readOut(folder, 'q', 'practice', 'bench', '--lines');
  expect(status).toBe(0);
  expect(lines).toContain('3 jobs');
  expect(lines).toContain(`Bench: ${join(folder, 'bench')}`);
});
