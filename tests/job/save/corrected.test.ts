import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import { record } from '../../../src/job/save/record.ts';
import type { Wish } from '../../../src/model/types.ts';
import { newJob, textOf } from './folder.ts';

const HEAD = `putback: 1
job: Left cover weeps oil
pieces:
  cover:
    bolts: S S S
    torque: 10 N·m, manual 2-17  # page by page
    routes: left
diary:
`;

function sitting() {
  const file = newJob(HEAD);
  let n = 0;
  const clock = {
    now: () => '2026-05-02T10:11:05+02:00',
    id: () => `mark${String(++n).padStart(4, '0')}`,
  };
  return {
    file,
    async mark(wish: Wish) {
      const done = await record(file, wish, clock);
      if (!done.ok || !done.changed) throw new Error(JSON.stringify(done));
      // What is shown is what the file says, read anew.
      const read = readJob(textOf(file), file);
      expect(done.job).toEqual(fold(read.upper, read.entries));
      return done;
    },
    head: () => textOf(file).replace(/diary:\n[\s\S]*/, 'diary:\n'),
  };
}

const correct = (truth: string): Wish => ({ do: 'correct', piece: 'cover', what: 'torque', truth });
const out = (hole: string): Wish => ({ do: 'out', piece: 'cover', holes: [hole] });

test('the printed text stays in the file to the byte, whatever is corrected and taken back', async () => {
  const s = sitting();
  const { entry } = await s.mark(correct('8 N·m, bulletin 12'));
  await s.mark(out('1'));
  const again = await s.mark(correct('9 N·m, bulletin 14'));
  expect(again.job.corrections).toMatchObject([
    { printed: '10 N·m, manual 2-17', says: '9 N·m, bulletin 14' },
  ]);
  await s.mark({ do: 'undo', id: again.entry?.id ?? '' });
  const back = await s.mark({ do: 'undo', id: entry?.id ?? '' });
  expect(back.job.upper.pieces.get('cover')?.torque?.text).toBe('10 N·m, manual 2-17');
  expect(back.job.corrections).toEqual([]);
  expect(s.head()).toBe(HEAD);
});

test('a mark behind a correction leaves it as it was', async () => {
  const s = sitting();
  await s.mark(correct('8 N·m, bulletin 12'));
  const { job: one } = await s.mark(out('1'));
  const { job: two } = await s.mark(out('2'));
  expect(two.upper).toEqual(one.upper);
  expect(two.corrections).toEqual(one.corrections);
  expect(two.corrections).toHaveLength(1);
});

test('a printed text that somebody changes in the file counts again', async () => {
  const s = sitting();
  await s.mark(correct('8 N·m, bulletin 12'));
  writeFileSync(s.file, textOf(s.file).replace('10 N·m, manual 2-17', '11 N·m, manual 2-18'));
  const { job } = await s.mark(out('1'));
  expect([job.corrections, job.upper.pieces.get('cover')?.torque?.text]).toEqual([
    [],
    '11 N·m, manual 2-18',
  ]);
});

test('a text written, then corrected, is in the file as it was written, and goes in that order backwards', async () => {
  const s = sitting();
  const put = await s.mark({ do: 'write', piece: 'cover', key: 'routes', text: 'over the frame' });
  const routes = (truth: string): Wish => ({
    do: 'correct',
    piece: 'cover',
    what: 'routes',
    truth,
    printed: 'over',
  });
  const not = await s.mark(routes('under the frame'));
  expect(s.head()).toContain('routes: [left, over the frame]');
  expect(not.job.upper.pieces.get('cover')?.routes).toEqual([
    { text: 'left', printed: null },
    { text: 'under the frame', printed: 'over the frame' },
  ]);
  await s.mark({ do: 'undo', id: not.entry?.id ?? '' });
  await s.mark({ do: 'undo', id: put.entry?.id ?? '' });
  expect(s.head()).toBe(HEAD);
});
