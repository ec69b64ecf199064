import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { writeAgain } from '../../../src/job/save/again.ts';
import { record } from '../../../src/job/save/record.ts';
import type { Entry, Wish } from '../../../src/model/types.ts';
import { JOB, newJob, textOf } from './folder.ts';

/** A job with marks that were shown, and what the file said with them. */
async function shown(...wishes: Wish[]) {
  const file = newJob();
  const entries: Entry[] = [];
  const clock = {
    now: () => '2026-05-02T10:11:05+02:00',
    id: () => `mark${String(entries.length).padStart(4, '0')}`,
  };
  for (const wish of wishes) {
    const done = await record(file, wish, clock);
    if (!done.ok || !done.entry) throw new Error(JSON.stringify(done));
    entries.push(done.entry);
  }
  return { file, entries, with: textOf(file) };
}

const ROUTE: Wish = { do: 'write', piece: 'cover', key: 'routes', text: 'behind the tube' };
const ORDER: Wish = { do: 'write', piece: 'cover', key: 'sequence', text: '2 1 3' };

test('a text that an older version of the file swept out goes in again with its mark', async () => {
  const job = await shown(ROUTE, ORDER, { do: 'out', piece: 'cover' });
  writeFileSync(job.file, JOB);
  expect(await writeAgain(job.file, job.entries)).toMatchObject({ ok: true });
  expect(textOf(job.file)).toBe(job.with);
});

test('one that somebody put there otherwise stays as it is', async () => {
  const job = await shown(ORDER);
  const other = JOB.replace('S S S}', 'S S S, sequence: 3 2 1}');
  writeFileSync(job.file, other);
  expect(await writeAgain(job.file, job.entries)).toMatchObject({ ok: true });
  expect(textOf(job.file)).toContain('sequence: 3 2 1}');
  expect(textOf(job.file)).toContain('written: sequence');
});

test('the mark alone where the piece is written so that it has no room', async () => {
  const job = await shown(ROUTE);
  writeFileSync(job.file, JOB.replace('{bolts: S S S}', 'a cover'));
  expect(await writeAgain(job.file, job.entries)).toMatchObject({ ok: true });
  expect(textOf(job.file)).toContain('cover: a cover');
  expect(textOf(job.file)).toContain('written: routes');
});
