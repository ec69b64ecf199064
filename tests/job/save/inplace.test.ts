import { linkSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { type Disk, disk } from '../../../src/job/save/disk.ts';
import { recover, writeInPlace } from '../../../src/job/save/inplace.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { besideOf, makeSide } from '../../../src/job/save/side.ts';
import { JOB, line, newJob, strays, textOf } from './folder.ts';

const mark = (text: string) => ({ text: appendEntry(text, line('aaaaaaa1')) });
const AFTER = mark(JOB).text;

/** The journal that a write from one text to another leaves while it is under way. */
function journalOf(before: string, after: string): Buffer {
  const file = newJob(before);
  const side = besideOf(file);
  makeSide(disk, side);
  let journal = Buffer.alloc(0);
  writeInPlace(disk, file, side, Buffer.from(before), Buffer.from(after), () => {
    journal = readFileSync(side.journal);
    return false;
  });
  return journal;
}

/** A job file with a journal beside it, as a killed process leaves them. */
function left(now: string | Uint8Array, journal: Uint8Array): string {
  const file = newJob(now);
  const side = besideOf(file);
  makeSide(disk, side);
  writeFileSync(side.journal, journal);
  return file;
}

test('a write in place that was cut short anywhere is finished by the next save', async () => {
  const before = `${JOB}# end\n`;
  const after = mark(before).text;
  const journal = journalOf(before, after);
  for (let cut = 0; cut <= after.length; cut += 7) {
    const torn = after.slice(0, cut) + before.slice(cut);
    const file = left(torn, journal);
    const saved = await saveFile(file, (text) => ({ stop: text }));
    expect(saved).toMatchObject({ ok: true, stopped: torn === before ? before : after });
    expect(strays(file)).toEqual([]);
  }
});

test('blocks that a power cut left as zeros are written again', () => {
  const torn = Buffer.from(AFTER);
  torn.fill(0, 20, 60);
  const file = left(torn, journalOf(JOB, AFTER));
  recover(disk, file, besideOf(file));
  expect(textOf(file)).toBe(AFTER);
});

test('a file that a person edited since stays as it is', async () => {
  const edited = JOB.replace('weeps', 'drips');
  const file = left(edited, journalOf(JOB, AFTER));
  await cleanFolder(join(file, '..'));
  expect(textOf(file)).toBe(edited);
  expect(strays(file)).toEqual([]);
});

test('a journal that is not whole means that nothing was begun', () => {
  fc.assert(
    fc.property(fc.nat(journalOf(JOB, AFTER).length - 1), (length) => {
      const file = left(JOB, journalOf(JOB, AFTER).subarray(0, length));
      recover(disk, file, besideOf(file));
      expect(textOf(file)).toBe(JOB);
    }),
    { numRuns: 40 },
  );
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
  expect(await saveFile(file, mark, { disk: full })).toMatchObject({ ok: false, code: 'no-space' });
  expect(textOf(file)).toBe(JOB);
  expect(strays(file)).toEqual([]);
});
