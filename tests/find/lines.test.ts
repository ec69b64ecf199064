import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOf } from '../../src/find/lines.ts';
import { readJob } from '../../src/job/read.ts';
import { madeJob } from './made-bench.ts';

const at = (text: string, line: number) => linesOf(text).lines.filter((l) => l.line === line);

describe('the lines of a job file', () => {
  it('know their piece and their day', () => {
    const text = readFileSync('jobs/hollin-left-cover.yaml', 'utf8');
    const read = linesOf(text);
    expect([read.job, read.machine]).toEqual([
      'Left cover weeps oil',
      'Hollin 400 Twin, 1998, 41230 km',
    ]);
    expect(read.names.alternator).toBe('Alternator cover');
    const stuck = read.lines.find((l) => l.text.includes('state: stuck'));
    expect([stuck?.piece, stuck?.day]).toEqual(['alternator', '2026-04-11']);
    const torque = read.lines.find((l) => l.text.includes('manual 2-17'));
    expect([torque?.piece, torque?.day]).toEqual(['alternator', null]);
  });

  it('titles and pieces are those that the reader of jobs reads', () => {
    for (let n = 0; n < 20; n++) {
      const text = madeJob(n);
      const { upper, entries, faults } = readJob(text, 'made.yaml');
      expect(faults).toEqual([]);
      const read = linesOf(text);
      expect([read.job, read.machine]).toEqual([upper.job, upper.machine]);
      const diary = read.lines.filter((l) => l.day !== null);
      expect(diary.map((l) => [l.piece, l.day])).toEqual(
        entries.map((e) => [e.piece ?? null, e.at.slice(0, 10)]),
      );
      for (const [key, piece] of upper.pieces) {
        if (key in read.names) expect(read.names[key]).toBe(piece.name);
      }
    }
  });

  it('pieces in braces: a line with two of them is two, each with its own', () => {
    const text = `putback: 1
job: >
  Of two
  lines
pieces: {lever: {bolts: S},
  cover: {name: "Big cover", bolts: S M}, hose: }
diary:
`;
    expect(linesOf(text).job).toBe('Of two lines');
    expect(at(text, 5).map((l) => l.piece)).toEqual([null, 'lever']);
    expect(at(text, 6).map((l) => [l.piece, l.text])).toEqual([
      ['cover', 'cover: {name: "Big cover", bolts: S M},'],
      ['hose', 'hose: }'],
    ]);
    expect(linesOf(text).names).toEqual({ cover: 'Big cover' });
  });

  it('an entry of several lines, written by hand, has its piece on each', () => {
    const text = `putback: 1
job: By hand
diary:
  - at: 2026-05-02T10:00:00+02:00
    id: abcdefgh
    piece: cover
    note: "see piece: lever"
  - {at: 2026-05-02T10:00:01+02:00, id: abcdefgi, undo: abcdefgh}
`;
    expect(at(text, 7)).toMatchObject([{ piece: 'cover', day: '2026-05-02', kind: 'undone' }]);
  });

  it('whatever a text is, each line is one of its own', () => {
    const line = fc.constantFrom(
      'pieces: {a: {',
      'pieces:',
      '  a: b',
      'diary:',
      '- {at: x',
      '}',
      '|',
      '  - a: [',
      'job: &x',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(line, fc.string()), { maxLength: 12 }), (all) => {
        const text = all.join('\n');
        const rows = text.split(/\r?\n/);
        for (const { line, text: said } of linesOf(text).lines)
          expect(rows[line - 1]?.replace(/^\uFEFF/, '')).toContain(said);
      }),
    );
  });
});
