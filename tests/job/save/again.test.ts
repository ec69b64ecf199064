import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { writeAgain as again } from '../../../src/job/save/again.ts';
import { record } from '../../../src/job/save/record.ts';
import type { Entry, Wish } from '../../../src/model/types.ts';
import { JOB, newJob, textOf } from './folder.ts';

const AT = '2026-05-02T10:11:05+02:00';

/** A job with marks that were shown, and what the file said with them. */
async function shown(...wishes: Wish[]) {
  const file = newJob();
  const entries: Entry[] = [];
  const clock = {
    now: () => AT,
    id: () => `mark${String(entries.length).padStart(4, '0')}`,
  };
  for (const wish of wishes) {
    const done = await record(file, wish, clock);
    if (!done.ok || !done.entry) throw new Error(JSON.stringify(done));
    entries.push(done.entry);
  }
  return { file, entries, with: textOf(file) };
}

/** Into what the file says now. */
const writeAgain = (file: string, entries: Entry[]) => again(file, entries, textOf(file));

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

test('nothing is written into a text that is not the one that was judged', async () => {
  const job = await shown(ROUTE);
  writeFileSync(job.file, JOB);
  expect(await again(job.file, job.entries, `${JOB}# being typed`)).toEqual({
    ok: false,
    say: 'It is being changed just now.',
  });
  expect(textOf(job.file)).toBe(JOB);
});

test.each(['services: {web: {image: nginx}}\n', '# moved to left.yaml\n', '- a\n', ''])(
  'nothing is written into what is no job: %j',
  async (text) => {
    const job = await shown(ROUTE);
    writeFileSync(job.file, text);
    expect(await writeAgain(job.file, job.entries)).toMatchObject({ ok: false });
    expect(textOf(job.file)).toBe(text);
    const marked = await record(job.file, ROUTE, { now: () => AT, id: () => 'mark9999' });
    expect(marked).toMatchObject({ ok: false });
    expect(textOf(job.file)).toBe(text);
  },
);
