/** What a folder can hold where a job file, or something of putback's own, belongs. */
import { execFileSync } from 'node:child_process';
import { once } from 'node:events';
import {
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { dirname, join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { readText } from '../../../src/job/save/text.ts';
import { JOB, line, newFolder, newJob, textOf } from './folder.ts';
import { pauses } from './pauses.ts';

const mark = (text: string) => ({ text: appendEntry(text, line('aaaaaaa1')) });

/** Each puts something at a path. */
const STRANGE: Record<string, (path: string) => unknown> = {
  'a link to a device without end': (path) => symlinkSync('/dev/zero', path),
  'a link to the terminal': (path) => symlinkSync('/dev/tty', path),
  'a link to nowhere': (path) => symlinkSync('/nowhere', path),
  'a link to itself': (path) => symlinkSync(path, path),
  'a folder': (path) => mkdirSync(path),
  'a pipe that nobody writes': (path) => execFileSync('mkfifo', [path]),
  'a socket': async (path) => {
    const server = createServer().listen(path);
    onTestFinished(() => void server.close());
    await once(server, 'listening');
  },
};
const NAMES = Object.keys(STRANGE);

/** What it answers, and how long it waited for anything, ms. */
async function timed<T>(does: () => T | Promise<T>): Promise<{ answer: T; waited: number }> {
  const answers: T[] = [];
  const waited = await pauses(async () => answers.push(await does()));
  return { answer: answers[0] as T, waited };
}

describe('a job file that is', () => {
  test.each(NAMES)('%s is told in one sentence, and not waited for', async (name) => {
    const file = join(newFolder(), 'cover.yaml');
    await STRANGE[name]?.(file);
    const read = await timed(() => readText(file));
    const saved = await timed(() => saveFile(file, mark));
    for (const { answer, waited } of [read, saved]) {
      expect(answer).toMatchObject({ ok: false, say: expect.stringMatching(/^\S.*\.$/) });
      expect(waited).toBeLessThan(1000);
    }
  });
});

describe('in the place of the lock', () => {
  test.each(NAMES)('%s is told, and left alone', async (name) => {
    const file = newJob();
    await saveFile(file, mark);
    const path = join(dirname(file), '.putback', 'cover.yaml.lock');
    await STRANGE[name]?.(path);
    const { answer, waited } = await timed(() => saveFile(file, mark));
    expect(answer).toMatchObject({ ok: false, code: 'not-plain' });
    expect(!answer.ok && answer.say).toMatch(
      /^\.putback\/cover\.yaml\.lock is a (link|folder|pipe|socket), and none of putback's\.$/,
    );
    expect(waited).toBeLessThan(1000);
    expect(lstatSync(path).isFile()).toBe(false);
    expect(await cleanFolder(dirname(file))).toEqual(['cover.yaml.lock']);
    expect(lstatSync(path).isFile()).toBe(false);
  });
});

describe('in the place of the second lock, or of the file that hides the folder from git', () => {
  test.each(NAMES)('%s harms nothing', async (name) => {
    for (const at of ['cover.yaml.break', '.gitignore']) {
      const file = newJob();
      const side = join(dirname(file), '.putback');
      mkdirSync(side);
      await STRANGE[name]?.(join(side, at));
      const state = newFolder();
      const { answer, waited } = await timed(() => saveFile(file, mark, { state }));
      expect(answer).toMatchObject({ ok: true, changed: true });
      expect(waited).toBeLessThan(1000);
      expect(lstatSync(join(side, at)).isFile()).toBe(false);
      expect(textOf(file)).toContain('aaaaaaa1');
    }
  });
});

describe('in the place of the folder', () => {
  test.each(NAMES)('%s is left alone, and marks are saved all the same', async (name) => {
    const file = newJob();
    const side = join(dirname(file), '.putback');
    if (name === 'a folder') symlinkSync(newFolder(), side);
    else await STRANGE[name]?.(side);
    const state = newFolder();
    expect(await saveFile(file, mark, { state })).toMatchObject({ ok: true, changed: true });
    expect(lstatSync(side).isDirectory()).toBe(false);
    expect(textOf(file)).toContain('aaaaaaa1');
    if (name === 'a folder') expect(readdirSync(side)).toEqual([]);
  });
});

test('a file that hides nothing from git is not ours: nothing is written beside it', async () => {
  const file = newJob();
  const side = join(dirname(file), '.putback');
  mkdirSync(side);
  writeFileSync(join(side, '.gitignore'), '!*\n');
  expect(await saveFile(file, mark, { state: newFolder() })).toMatchObject({ ok: true });
  expect(readdirSync(side)).toEqual(['.gitignore']);
  expect(readFileSync(join(side, '.gitignore'), 'utf8')).toBe('!*\n');
});

test('a path that has become a link to another file is not followed', async () => {
  const file = newJob();
  const other = newJob();
  rmSync(file);
  symlinkSync(other, file);
  expect(await saveFile(file, mark, { real: file })).toMatchObject({
    ok: false,
    code: 'elsewhere',
    say: 'cover.yaml is a link to another file now.',
  });
  expect(textOf(other)).toBe(JOB);
  // Named by a person it is.
  expect(await saveFile(file, mark)).toMatchObject({ ok: true });
});

test('two names of one file in two folders wait for each other: every mark stands', async () => {
  const file = newJob();
  const other = join(newFolder(), 'other.yaml');
  linkSync(file, other);
  const state = newFolder();
  const ids = Array.from({ length: 30 }, (_, i) => `aaaaaa${10 + i}`);
  const saved = await Promise.all(
    ids.map((id, i) =>
      saveFile(i % 2 ? file : other, (text) => ({ text: appendEntry(text, line(id)) }), { state }),
    ),
  );
  expect(saved.every((s) => s.ok)).toBe(true);
  expect(ids.filter((id) => !textOf(file).includes(id))).toEqual([]);
  expect(textOf(other)).toBe(textOf(file));
});
