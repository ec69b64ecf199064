import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { createFile } from '../../../src/job/save/create.ts';
import { type Disk, disk } from '../../../src/job/save/disk.ts';
import { stampOf } from '../../../src/job/save/plain.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { JOB, line, newFolder, newJob, strays, textOf } from './folder.ts';

const mark = (id: string) => (text: string) => ({ text: appendEntry(text, line(id)) });

/** The real disk with some steps failing as a system would. */
function failing(steps: Partial<Record<keyof Disk, (...args: never[]) => string | null>>): Disk {
  return new Proxy(disk, {
    get(target, key: keyof Disk) {
      const fail = steps[key];
      const real = target[key] as (...args: unknown[]) => unknown;
      return (...args: unknown[]) => {
        const code = fail?.(...(args as never[])) ?? null;
        if (code !== null) throw Object.assign(new Error(`${code}: made to fail`), { code });
        return real(...args);
      };
    },
  });
}

test('a mark is on disk when the save says so, and nothing is left lying about', async () => {
  const file = newJob();
  expect(await saveFile(file, mark('aaaaaaa1'))).toEqual({
    ok: true,
    changed: true,
    text: `${JOB}  ${line('aaaaaaa1')}\n`,
    stamp: stampOf(statSync(file, { bigint: true })),
  });
  expect(textOf(file)).toBe(`${JOB}  ${line('aaaaaaa1')}\n`);
  expect(strays(file)).toEqual([]);
});

test('a change that stops writes nothing, not even a new time', async () => {
  const file = newJob();
  const before = statSync(file, { bigint: true });
  const stamp = stampOf(before);
  expect(await saveFile(file, () => ({ stop: 'refused' }))).toEqual({
    ok: true,
    stopped: 'refused',
    text: JOB,
    stamp,
  });
  expect(await saveFile(file, (text) => ({ text }))).toEqual({
    ok: true,
    changed: false,
    text: JOB,
    stamp,
  });
  const after = statSync(file, { bigint: true });
  expect([after.ino, after.mtimeNs, after.ctimeNs]).toEqual([
    before.ino,
    before.mtimeNs,
    before.ctimeNs,
  ]);
});

test('git sees the mark and no other file, not even one left by a kill', async () => {
  const file = newJob();
  const folder = dirname(file);
  const git = (...args: string[]) =>
    execFileSync('git', ['-C', folder, ...args], { encoding: 'utf8' });
  git('init', '-q');
  git('add', 'cover.yaml');
  await saveFile(file, mark('aaaaaaa1'));
  writeFileSync(join(folder, '.putback', 'cover.yaml.0123456789abcdef.tmp'), 'half');
  writeFileSync(join(folder, '.putback', 'cover.yaml.lock'), '');
  expect(git('status', '--porcelain', '-uall')).toBe('AM cover.yaml\n');
  git('add', '-A');
  expect(git('status', '--porcelain', '-uall')).toBe('A  cover.yaml\n');
});

test('byte order mark, CRLF and a missing last newline stay', async () => {
  const file = newJob('\uFEFFjob: x\r\ndiary:');
  await saveFile(file, mark('aaaaaaa1'));
  expect(readFileSync(file)).toEqual(
    Buffer.from(`\uFEFFjob: x\r\ndiary:\r\n  ${line('aaaaaaa1')}`),
  );
});

test('bytes that are no text are never written anew', async () => {
  const bytes = Buffer.from([
    ...Buffer.from('job: x\nmachine: M'),
    0xfc,
    ...Buffer.from('hle\ndiary:\n'),
  ]);
  const file = newJob(bytes);
  expect(await saveFile(file, mark('aaaaaaa1'))).toEqual({
    ok: false,
    code: 'not-text',
    say: 'Line 2 of cover.yaml is not UTF-8 text.',
    fix: 'Open it in an editor and save it as UTF-8.',
  });
  expect(readFileSync(file)).toEqual(bytes);
});

test('half a character is refused', async () => {
  const file = newJob();
  expect(await saveFile(file, (text) => ({ text: `${text}\ud800` }))).toMatchObject({
    ok: false,
    code: 'not-text',
  });
  expect(textOf(file)).toBe(JOB);
});

test('a symbolic link stays a link, and the file behind it has the mark', async () => {
  const file = newJob();
  const link = join(newFolder(), 'link.yaml');
  symlinkSync(file, link);
  expect(await saveFile(link, mark('aaaaaaa1'))).toMatchObject({ ok: true });
  expect(lstatSync(link).isSymbolicLink()).toBe(true);
  expect(textOf(file)).toContain('aaaaaaa1');
  expect(strays(link)).toEqual([]);
});

test.each([0o600, 0o644, 0o664, 0o640])('mode %o stays', async (mode) => {
  const file = newJob();
  chmodSync(file, mode);
  await saveFile(file, mark('aaaaaaa1'));
  expect(statSync(file).mode & 0o7777).toBe(mode);
  expect(textOf(file)).toContain('aaaaaaa1');
});

test('hard links stay together', async () => {
  const file = newJob();
  const other = join(dirname(file), 'other.yaml');
  linkSync(file, other);
  expect(await saveFile(file, mark('aaaaaaa1'))).toMatchObject({ ok: true, changed: true });
  expect(textOf(other)).toBe(`${JOB}  ${line('aaaaaaa1')}\n`);
  expect(statSync(other).ino).toBe(statSync(file).ino);
  expect(strays(file)).toEqual([]);
});

test('another owner stays the owner', async () => {
  const file = newJob();
  const ino = statSync(file).ino;
  const strange = failing({});
  const d = new Proxy(strange, {
    get(target, key: keyof Disk) {
      if (key === 'fchownSync')
        return () => {
          throw Object.assign(new Error('EPERM'), { code: 'EPERM' });
        };
      if (key !== 'fstatSync') return target[key];
      return (fd: number, how?: { bigint: true }) =>
        how ? disk.fstatSync(fd, how) : Object.assign(disk.fstatSync(fd), { uid: 12345 });
    },
  });
  expect(await saveFile(file, mark('aaaaaaa1'), { disk: d })).toMatchObject({
    ok: true,
    changed: true,
  });
  expect(statSync(file).ino).toBe(ino);
  expect(textOf(file)).toContain('aaaaaaa1');
  expect(strays(file)).toEqual([]);
});

test('a folder that cannot be written still takes marks into its files', async () => {
  const file = newJob();
  const state = newFolder();
  const d = failing({ mkdirSync: (path: string) => (path.endsWith('.putback') ? 'EACCES' : null) });
  const saved = await Promise.all(
    ['aaaaaaa1', 'aaaaaaa2', 'aaaaaaa3'].map((id) => saveFile(file, mark(id), { disk: d, state })),
  );
  expect(saved.every((s) => s.ok)).toBe(true);
  expect(textOf(file)).toBe(
    `${JOB}${['aaaaaaa1', 'aaaaaaa2', 'aaaaaaa3'].map((id) => `  ${line(id)}\n`).join('')}`,
  );
});

test('a folder that was closed after its first mark still takes marks', async () => {
  const file = newJob();
  await saveFile(file, mark('aaaaaaa1'));
  const d = failing({ renameSync: () => 'EACCES' });
  expect(await saveFile(file, mark('aaaaaaa2'), { disk: d })).toMatchObject({
    ok: true,
    changed: true,
  });
  expect(textOf(file)).toContain('aaaaaaa2');
  expect(strays(file)).toEqual([]);
});

test('a file that is write-protected is told as that, and left alone', async () => {
  const file = newJob();
  chmodSync(file, 0o444);
  expect(await saveFile(file, mark('aaaaaaa1'))).toEqual({
    ok: false,
    code: 'no-permission',
    say: 'cover.yaml may not be written.',
    fix: 'Give yourself the right to write it.',
  });
  expect(textOf(file)).toBe(JOB);
});

test('a rename that is refused for a while is tried again', async () => {
  const file = newJob();
  let left = 3;
  const d = failing({ renameSync: () => (left-- > 0 ? 'EBUSY' : null) });
  expect(await saveFile(file, mark('aaaaaaa1'), { disk: d, renameTries: 5 })).toMatchObject({
    ok: true,
    changed: true,
  });
});

test('a file that another program holds for good is told as that', async () => {
  const file = newJob();
  let tries = 0;
  const d = failing({
    renameSync: () => {
      tries++;
      return 'EBUSY';
    },
  });
  expect(await saveFile(file, mark('aaaaaaa1'), { disk: d, renameTries: 3 })).toEqual({
    ok: false,
    code: 'busy',
    say: 'Another program keeps cover.yaml open.',
    fix: 'Close it there, then try again.',
  });
  expect(tries).toBe(3);
  expect(textOf(file)).toBe(JOB);
  expect(strays(file)).toEqual([]);
});

test.each([
  ['ENOSPC', 'no-space', 'The disk is full: cover.yaml is as it was.'],
  ['EROFS', 'read-only', 'cover.yaml is on a disk that cannot be written.'],
  ['EIO', 'io', 'cover.yaml could not be written (EIO).'],
])(
  '%s while writing is told in words, and the mark can be tried again',
  async (code, answer, say) => {
    const file = newJob();
    const d = failing({ fsyncSync: () => code });
    expect(await saveFile(file, mark('aaaaaaa1'), { disk: d })).toMatchObject({
      ok: false,
      code: answer,
      say,
    });
    expect(textOf(file)).toBe(JOB);
    expect(strays(file)).toEqual([]);
    expect(await saveFile(file, mark('aaaaaaa1'))).toMatchObject({ ok: true, changed: true });
  },
);

test('a file or a folder that is gone is told as gone', async () => {
  const file = newJob();
  const gone = { ok: false, code: 'gone', say: 'cover.yaml is not there any more.' };
  rmSync(file);
  expect(await saveFile(file, mark('aaaaaaa1'))).toMatchObject(gone);
  rmSync(dirname(file), { recursive: true });
  expect(await saveFile(file, mark('aaaaaaa1'))).toMatchObject(gone);
});

test('a folder is no job file', async () => {
  const folder = join(newFolder(), 'cover.yaml');
  mkdirSync(folder);
  expect(await saveFile(folder, mark('aaaaaaa1'))).toMatchObject({
    ok: false,
    code: 'not-plain',
    say: 'cover.yaml is a folder, not a plain file.',
  });
});

test('an editor that saves between reading and writing loses nothing, and neither does the mark', async () => {
  const file = newJob();
  let edits = 2;
  const d = failing({
    renameSync: (_: string, to: string) => {
      expect(to).toBe(file);
      return null;
    },
    fsyncSync: () => {
      if (edits-- > 0) writeFileSync(file, textOf(file).replace('weeps', 'weeps, and weeps'));
      return null;
    },
  });
  expect(await saveFile(file, mark('aaaaaaa1'), { disk: d })).toMatchObject({
    ok: true,
    changed: true,
  });
  const text = textOf(file);
  expect(text.match(/weeps/g)).toHaveLength(3);
  expect(text.match(/aaaaaaa1/g)).toHaveLength(1);
});

test('a file that somebody writes all the time is given up with a word', async () => {
  const file = newJob();
  let n = 0;
  const d = failing({
    fsyncSync: () => {
      writeFileSync(file, `${JOB}# ${n++}\n`);
      return null;
    },
  });
  expect(await saveFile(file, mark('aaaaaaa1'), { disk: d })).toMatchObject({
    ok: false,
    code: 'busy',
  });
});

test('the folder beside being swept away under way does no harm', async () => {
  const file = newJob();
  let sweeps = 3;
  const d = failing({
    fsyncSync: () => {
      if (sweeps-- > 0) rmSync(join(dirname(file), '.putback'), { recursive: true, force: true });
      return null;
    },
  });
  expect(await saveFile(file, mark('aaaaaaa1'), { disk: d })).toMatchObject({
    ok: true,
    changed: true,
  });
  expect(textOf(file).match(/aaaaaaa1/g)).toHaveLength(1);
});

test('marks of one process at the same time all stand, in their order', async () => {
  const file = newJob();
  const ids = Array.from({ length: 20 }, (_, i) => `aaaaaa${10 + i}`);
  await Promise.all(ids.map((id) => saveFile(file, mark(id))));
  expect(textOf(file)).toBe(`${JOB}${ids.map((id) => `  ${line(id)}\n`).join('')}`);
});

test('a fault of the program is thrown, and leaves no lock', async () => {
  const file = newJob();
  await expect(
    saveFile(file, () => {
      throw new TypeError('broken');
    }),
  ).rejects.toThrow('broken');
  expect(strays(file)).toEqual([]);
  expect(await saveFile(file, mark('aaaaaaa1'))).toMatchObject({ ok: true });
});

test('whoever may write a shared bench may write beside its files too', async () => {
  const file = newJob();
  chmodSync(dirname(file), 0o777);
  await saveFile(file, mark('aaaaaaa1'));
  expect(statSync(join(dirname(file), '.putback')).mode & 0o777).toBe(0o777);
});

test('a folder beside that is somebody else’s and closed is no hindrance', async () => {
  const file = newJob();
  const state = newFolder();
  await saveFile(file, mark('aaaaaaa1'));
  const closed = failing({
    accessSync: (path: string) => (path.endsWith('.putback') ? 'EACCES' : null),
  });
  expect(await saveFile(file, mark('aaaaaaa2'), { disk: closed, state })).toMatchObject({
    ok: true,
    changed: true,
  });
  expect(textOf(file)).toContain('aaaaaaa2');
});

test('a folder beside that leads elsewhere is not used', async () => {
  const file = newJob();
  const elsewhere = newFolder();
  symlinkSync(elsewhere, join(dirname(file), '.putback'));
  expect(await saveFile(file, mark('aaaaaaa1'), { state: newFolder() })).toMatchObject({
    ok: true,
    changed: true,
  });
  expect(strays(join(elsewhere, 'x', 'y'))).toEqual([]);
  expect(execFileSync('ls', ['-A', elsewhere], { encoding: 'utf8' })).toBe('');
});

test('a name of 250 bytes is no hindrance', async () => {
  const file = join(newFolder(), `${'n'.repeat(245)}.yaml`);
  writeFileSync(file, JOB);
  expect(await saveFile(file, mark('aaaaaaa1'))).toMatchObject({ ok: true, changed: true });
});

test('a new file is whole, and never takes the place of another', () => {
  const file = join(newFolder(), 'new.yaml');
  expect(createFile(file, JOB)).toEqual({ ok: true });
  expect(createFile(file, 'other')).toEqual({
    ok: false,
    code: 'exists',
    say: 'new.yaml is there already.',
    fix: 'Choose another name.',
  });
  expect(textOf(file)).toBe(JOB);
  expect(statSync(file).nlink).toBe(1);
  expect(strays(file)).toEqual([]);
});
