import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import type { Wish } from '../../src/job/types.ts';
import { filesIn } from '../../src/screens/loop-files.ts';
import { shelf } from '../../src/screens/open.ts';

/** One sitting at a job, as the screens have it. */
function sitting(piece: string) {
  const folder = mkdtempSync(join(tmpdir(), 'putback-row-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'a.yaml');
  const head = `putback: 1\njob: Left cover\nbolts: {S: M6x25, M: M6x35}\npieces:\n${piece}diary:\n`;
  writeFileSync(path, head);
  let n = 0;
  const clock = { now: () => '2026-05-02T10:11:05+02:00', id: () => `mark000${++n}` };
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
    ['with nothing said of the piece yet', '  cover:\n', '  cover:\n    bolts:\n'],
    [
      'among other keys',
      '  cover:\n    name: Cover  # mine\n    note: x\n',
      '  cover:\n    name: Cover  # mine\n    bolts:\n    note: x\n',
    ],
    ['in braces', '  cover: {name: Cover}\n', '  cover: {name: Cover, bolts:}\n'],
    ['with an empty key', '  cover:\n    bolts:\n', '  cover:\n    bolts:\n'],
  ])(
    '%s: the file knows no row again, takes another, and has it back with a redo',
    async (_, piece, after) => {
      const s = sitting(piece);
      const first = await s.wish(row('S S S'));
      expect(s.row()).toBe(3);
      const back = await s.wish({ do: 'undo', id: first });
      expect(s.row()).toBe(0);
      expect(s.upper()).toBe(s.head.replace(piece, after));
      const again = await s.wish({ do: 'undo', id: back });
      expect(s.row()).toBe(3);
      await s.wish({ do: 'undo', id: again });
      await s.wish(row('S M M S'));
      expect(s.row()).toBe(4);
    },
  );

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
