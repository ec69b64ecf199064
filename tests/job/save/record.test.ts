import { expect, test } from 'vitest';
import { record } from '../../../src/job/save/record.ts';
import { newJob, strays, textOf } from './folder.ts';

const clock = { now: () => '2026-05-02T10:11:05+02:00', id: () => 'mark0001' };
const note = { do: 'note', text: 'rust in the thread' } as const;

/** Files that open, in which one more line would not be one more entry. */
test.each([
  ['a diary that is no list', 'putback: 1\njob: Left cover\ndiary:\n  S: M6x25\n'],
  [
    'a diary in a second document',
    'putback: 1\njob: Left cover\n---\ndiary:\n  - {at: 2026-05-02T10:11:05+02:00, id: aaaaaaa1, note: x}\n',
  ],
])('%s: the mark is not told as done, and the file stays as it is', async (_, text) => {
  const file = newJob(text);
  expect(await record(file, note, clock)).toMatchObject({ ok: false, unsaved: { code: 'unfit' } });
  expect(textOf(file)).toBe(text);
  expect(strays(file)).toEqual([]);
});

test('a mark that is told as done is what the reader finds last', async () => {
  const file = newJob();
  const done = await record(file, note, clock);
  expect(done.ok && done.job.entries.at(-1)).toEqual(done.ok && done.entry);
  expect(textOf(file)).toContain('note: "rust in the thread"');
});
