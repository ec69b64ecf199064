import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import type { Wish } from '../../../src/model/types.ts';
import { filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { shelf } from '../../../src/screens/terminal/shelf.ts';

/** One sitting at a job, as the screens have it. */
function sitting(piece: string) {
  const folder = mkdtempSync(join(tmpdir(), 'putback-row-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'a.yaml');
  const head = `putback: 1\njob: Left cover\nbolts: {S: M6x25, M: M6x35}\npieces:\n${piece}diary:\n`;
  writeFileSync(path, head);
  let n = 0;
  const clock = {
    now: () => '2026-05-02T10:11:05+02:00',
    id: () => `mark${String(++n).padStart(4, '0')}`,
  };
  const { hands } = filesIn(folder, clock, shelf);
  return {
    head,
    upper: () => readFileSync(path, 'utf8').replace(/diary:\n[\s\S]*/, 'diary:\n'),
    row: () => readJob(readFileSync(path, 'utf8'), 'a').upper.pieces.get('cover')?.row?.length ?? 0,
    async wish(wish: Wish) {
      const answer = await hands.record({ do: 'record', file: 'a.yaml', wish });
      if (answer.on !== 'recorded' || !answer.result.ok) throw new Error(JSON.stringify(answer));
      return answer.result.entry?.id ?? '';
    },
    edit: (from: string, to: string) =>
      writeFileSync(path, readFileSync(path, 'utf8').replace(from, to)),
  };
}

const row = (text: string): Wish => ({ do: 'out', piece: 'cover', row: text });

describe('a row typed wrong and taken back in the same sitting', () => {
  it.each([
    ['with nothing said of the piece yet', '  cover:\n'],
    ['among other keys', '  cover:\n    name: Cover  # mine\n    note: x\n'],
    ['in braces', '  cover: {name: Cover}\n'],
    ['with an empty key', '  cover:\n    bolts:\n'],
  ])('%s: the file is as it was, takes another, and has it back with a redo', async (_, piece) => {
    const s = sitting(piece);
    const first = await s.wish(row('S S S'));
    expect(s.row()).toBe(3);
    const back = await s.wish({ do: 'undo', id: first });
    expect(s.row()).toBe(0);
    expect(s.upper()).toBe(s.head);
    const again = await s.wish({ do: 'undo', id: back });
    expect(s.row()).toBe(3);
    await s.wish({ do: 'undo', id: again });
    await s.wish(row('S M M S'));
    expect(s.row()).toBe(4);
  });

  it('stays where somebody changed it since', async () => {
    const s = sitting('  cover:\n');
    const first = await s.wish(row('S S M'));
    s.edit('bolts: S S M', 'bolts: S M M');
    await s.wish({ do: 'undo', id: first });
    expect(s.upper()).toContain('bolts: S M M');
  });

  it('stays where it was in the file before', async () => {
    const s = sitting('  cover: {bolts: S S M}\n');
    const first = await s.wish(row('S S M'));
    await s.wish({ do: 'undo', id: first });
    expect(s.upper()).toBe(s.head);
  });
});

describe('whatever a mark of this sitting wrote above the diary', () => {
  const add = { verb: 'test', say: 'Weeps when hot?', after: 'cover on' } as const;
  it.each<[string, Wish]>([
    ['a piece without bolts', { do: 'off', piece: 'fuel-hose' }],
    ['a piece with its row', { do: 'out', piece: 'lid', row: 's s s' }],
    ['a piece with a new kind', { do: 'out', piece: 'lid', row: 's .30 s' }],
    ['a task', { do: 'done', task: 'weeps', result: 'failed', add }],
    [
      'a thing to buy',
      { do: 'buy', buy: 'seal', state: 'ordered', add: { what: 'seal', for: 'cover on' } },
    ],
    ['a settled hole', { do: 'settle', piece: 'cover', hole: '1', kind: 'M' }],
    ['a text', { do: 'write', piece: 'cover', key: 'routes', text: 'behind, then left' }],
    ['a picture', { do: 'write', piece: 'cover', key: 'map', text: '1 2\n. 3' }],
  ])('%s: goes with the undo, and comes again with the redo', async (_, wish) => {
    const s = sitting('  cover: {bolts: S S M}\n');
    const id = await s.wish(wish);
    const with_ = s.upper();
    expect(with_).not.toBe(s.head);
    const back = await s.wish({ do: 'undo', id });
    expect(s.upper()).toBe(s.head);
    const again = await s.wish({ do: 'undo', id: back });
    expect(s.upper()).toBe(with_);
    await s.wish({ do: 'undo', id: again });
    expect(s.upper()).toBe(s.head);
  });

  it('is left alone where somebody wrote something else there meanwhile', async () => {
    const s = sitting('  cover: {bolts: S S M}\n');
    const id = await s.wish({ do: 'off', piece: 'fuel-hose' });
    s.edit('job: Left cover', 'job: Left cover weeps');
    s.edit('fuel-hose: {}', 'fuel-hose: {tip: drain it first}');
    await s.wish({ do: 'undo', id });
    expect(s.upper()).toContain('fuel-hose: {tip: drain it first}');
    expect(s.upper()).toContain('job: Left cover weeps');
  });

  it('step by step back to the first byte', async () => {
    const s = sitting('  cover: {bolts: S S M}\n');
    const ids: string[] = [];
    for (const wish of [
      { do: 'off', piece: 'fuel-hose' },
      { do: 'out', piece: 'lid', row: 's .30 s' },
      { do: 'out', piece: 'cover', row: 's m m' },
      { do: 'settle', piece: 'cover', hole: '2', kind: 'M' },
      { do: 'done', task: 'weeps', result: 'failed', add },
    ] satisfies Wish[]) {
      ids.push(await s.wish(wish));
    }
    for (const id of ids.reverse()) await s.wish({ do: 'undo', id });
    expect(s.upper()).toBe(s.head);
  });
});
