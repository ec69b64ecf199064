import {
  chmodSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { type Disk, disk } from '../../../src/job/save/disk.ts';
import { journalName, recover, writeInPlace } from '../../../src/job/save/inplace.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { makeStateFolder } from '../../../src/job/save/state.ts';
import { JOB, line, newFolder, newJob, strays, textOf } from './folder.ts';

const mark = (text: string) => ({ text: appendEntry(text, line('aaaaaaa1')) });
const AFTER = mark(JOB).text;

/** The user's own folder, apart from that of whoever runs the tests. */
const state = newFolder();
const folder = makeStateFolder(disk, state);
const journal = (file: string) => join(folder, journalName(file));

/** The journal that a write of a file from one text to another leaves while it is under way. */
function journalOf(file: string, before: string, after: string): Buffer {
  writeFileSync(file, before);
  let bytes = Buffer.alloc(0);
  writeInPlace(disk, file, folder, Buffer.from(before), Buffer.from(after), () => {
    bytes = readFileSync(journal(file));
    return false;
  });
  return bytes;
}

/** A job file as a killed process leaves it, and the journal of what it was writing. */
function left(before: string, after: string, now: string | Uint8Array): string {
  const file = newJob(before);
  const bytes = journalOf(file, before, after);
  writeFileSync(file, now);
  writeFileSync(journal(file), bytes, { mode: 0o600 });
  return file;
}

/** Torn, so that a journal that counts would finish it. */
const TORN = `${JOB.slice(0, 40)}${AFTER.slice(40, 60).replace(/./g, '\0')}${AFTER.slice(60)}`;

test('a write in place that was cut short anywhere is finished by the next save', async () => {
  const before = `${JOB}# end\n`;
  const after = mark(before).text;
  for (let cut = 0; cut <= after.length; cut += 7) {
    const torn = after.slice(0, cut) + before.slice(cut);
    const file = left(before, after, torn);
    const saved = await saveFile(file, (text) => ({ stop: text }), { state });
    expect(saved).toMatchObject({ ok: true, stopped: torn === before ? before : after });
    expect(strays(file)).toEqual([]);
  }
});

test('blocks that a power cut left as zeros are written again', () => {
  const torn = Buffer.from(AFTER);
  torn.fill(0, 20, 60);
  const file = left(JOB, AFTER, torn);
  recover(disk, file, state);
  expect(textOf(file)).toBe(AFTER);
});

test('a file that a person edited since stays as it is', async () => {
  const edited = JOB.replace('weeps', 'drips');
  const file = left(JOB, AFTER, edited);
  await cleanFolder(join(file, '..'), { state });
  expect(textOf(file)).toBe(edited);
  expect(readdirSync(folder)).toEqual([]);
});

test('the start finishes it too, and clears the journal away', async () => {
  const file = left(JOB, AFTER, TORN);
  await cleanFolder(join(file, '..'), { state });
  expect(textOf(file)).toBe(AFTER);
  expect(readdirSync(folder)).toEqual([]);
});

test('a journal that is not whole means that nothing was begun', () => {
  const whole = journalOf(newJob(), JOB, AFTER);
  fc.assert(
    fc.property(fc.nat(whole.length - 1), (length) => {
      const file = newJob();
      writeFileSync(journal(file), journalOf(file, JOB, AFTER).subarray(0, length), {
        mode: 0o600,
      });
      recover(disk, file, state);
      expect(textOf(file)).toBe(JOB);
    }),
    { numRuns: 40 },
  );
});

describe('a journal that this program did not leave here changes nothing:', () => {
  test('one beside the job, as a repository could bring it', async () => {
    const file = newJob(TORN);
    const side = join(file, '..', '.putback');
    mkdirSync(side);
    writeFileSync(join(side, '.gitignore'), '*\n');
    writeFileSync(join(side, 'cover.yaml.journal'), journalOf(newJob(), JOB, AFTER));
    expect(await cleanFolder(join(file, '..'), { state })).toEqual(['cover.yaml.journal']);
    await saveFile(file, (text) => ({ stop: text }), { state });
    expect(textOf(file)).toBe(TORN);
    expect(strays(file)).toEqual(['cover.yaml.journal']);
  });

  test('one for a name that is a link, to whatever file', async () => {
    const file = left(JOB, AFTER, TORN);
    const target = join(newFolder(), 'profile');
    renameSync(file, target);
    symlinkSync(target, file);
    await cleanFolder(join(file, '..'), { state });
    expect(textOf(target)).toBe(TORN);
  });

  test('one of another file of that name', () => {
    const file = left(JOB, AFTER, TORN);
    const other = newJob(TORN);
    renameSync(other, file);
    recover(disk, file, state);
    expect(textOf(file)).toBe(TORN);
  });

  test('one that others may write, or that has a second name', () => {
    const file = left(JOB, AFTER, TORN);
    chmodSync(journal(file), 0o666);
    recover(disk, file, state);
    expect(textOf(file)).toBe(TORN);
    const second = left(JOB, AFTER, TORN);
    linkSync(journal(second), join(newFolder(), 'mine'));
    recover(disk, second, state);
    expect(textOf(second)).toBe(TORN);
  });

  test('one in a folder that is a link or that others may write', () => {
    const file = left(JOB, AFTER, TORN);
    const bytes = readFileSync(journal(file));
    const mine = newFolder();
    for (const make of [
      (path: string) => symlinkSync(folder, path),
      (path: string) => {
        mkdirSync(path);
        chmodSync(path, 0o777);
        writeFileSync(join(path, journalName(file)), bytes, { mode: 0o600 });
      },
    ]) {
      rmSync(join(mine, 'putback'), { recursive: true, force: true });
      make(join(mine, 'putback'));
      recover(disk, file, mine);
      expect(textOf(file)).toBe(TORN);
    }
  });
});

test('a disk that is full in the middle of a write in place leaves the old bytes', async () => {
  const file = newJob();
  linkSync(file, join(file, '..', 'other.yaml'));
  let writes = 0;
  const full = new Proxy(disk, {
    get(target, key: keyof Disk) {
      if (key !== 'writeSync') return target[key];
      return (fd: number, bytes: Buffer, from: number, length: number, at: number) => {
        if (++writes === 2) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
        return disk.writeSync(fd, bytes, from, writes === 1 ? Math.ceil(length / 2) : length, at);
      };
    },
  });
  expect(await saveFile(file, mark, { disk: full, state })).toMatchObject({
    ok: false,
    code: 'no-space',
  });
  expect(textOf(file)).toBe(JOB);
  expect(strays(file)).toEqual([]);
});

test.runIf(process.platform === 'linux')(
  'the user’s own folder: where none can be made, that is told and takes no time',
  () => {
    expect(() => makeStateFolder(disk, '/proc/none/deeper')).toThrow(/ENOENT|EACCES/);
  },
);
