import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addEntry } from '../../../src/job/edit/splice.ts';
import { withMark } from '../../../src/job/edit/with-mark.ts';
import { readJob } from '../../../src/job/read.ts';
import type { Entry } from '../../../src/model/types.ts';
import { runs } from '../../runs.ts';
import { COVER } from '../bench.ts';

const entry = (n: number): Entry => ({
  at: '2026-05-01T10:00:00+02:00',
  id: `mark${String(n).padStart(4, '0')}`,
  piece: 'cover',
  hole: ['1'],
  verb: 'out',
  value: 'S',
});

/** Ends of a diary as programs, people and editors leave them. */
const ENDS = ['', '\n', '\n\n', '  # looked at it again\n', '# the end\n', 'note: behind it\n'];

describe('a mark at the end of a diary', () => {
  it('is put there in the same bytes the short way and the checked way, and reads back', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.nat(4),
        fc.constantFrom(...ENDS),
        fc.constantFrom('  ', '', '    '),
        fc.boolean(),
        fc.boolean(),
        (count, end, indent, crlf, mark) => {
          const lines = Array.from(
            { length: count },
            (_, i) =>
              `${indent}- {at: 2026-05-01T10:00:00+02:00, id: line000${i}, piece: cover, out: S}\n`,
          );
          const plain = `${mark ? '\uFEFF' : ''}${COVER}${lines.join('')}${end}`;
          const text = crlf ? plain.replaceAll('\n', '\r\n') : plain;
          const before = readJob(text, 'job.yaml');
          if (before.unreadable) return;
          const marked = withMark(text, before, entry(1), [], 'job.yaml');
          if ('fault' in marked) return;
          compared += 1;
          expect(marked.text).toBe(addEntry(text, entry(1), []));
          const { entries, upper } = readJob(marked.text, 'job.yaml');
          expect(marked.read.entries).toEqual(entries);
          expect(marked.read.upper).toEqual(upper);
          expect(entries.at(-1)).toEqual(entry(1));
        },
      ),
      { numRuns: runs(400) },
    );
    // Most of these files take a mark, or the property says little.
    expect(compared).toBeGreaterThan(200);
  });
});
