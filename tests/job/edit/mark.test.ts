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

  it('behind lines of any form, if a line ends it, is one line more, and reads back with all that was there', () => {
    const AT = 'at: 2026-05-01T10:00:00+02:00';
    const forms = (id: string): string[] => [
      `- {${AT}, id: ${id}, piece: cover, out: S}\n`,
      `- ${AT}\n  id: ${id}\n  piece: cover\n  out: S\n`,
      `- {${AT}, id: ${id},\n   piece: cover, out: S}\n`,
      `- {"at": "2026-05-01T10:00:00+02:00", id: ${id}, piece: cover, note: 'it''s {so}'} # seen\n`,
      `- ${AT}\n  id: ${id}\n  piece: cover\n  note: |\n    - {${AT}, id: line0000, piece: cover, out: S}\n`,
      `- {${AT}, id: ${id}, piece: cover, verb of no kind: S}\n`,
      `- {${AT}, id: line0000, piece: gone, hole: 99, out: S}\n`,
      `- - {${AT}, id: ${id}, piece: cover, out: S}\n`,
      `-\n  {${AT}, id: ${id}, piece: cover, out: S}\n`,
      `- 7\n`,
      '# looked at it again\n',
      '\n',
    ];
    const uppers = [COVER, COVER.replace('\ndiary:', '\nodd key: 1\ndiary:'), `${COVER}# first\n`];
    const tails = [
      '',
      '',
      'notes: |\n  - {}\n',
      `notes:\n  - {${AT}, id: line0000, out: S}\n`,
      '...\n',
    ];
    const some = fc.array(fc.nat(11), { maxLength: 6 });
    let goneOn = 0;
    fc.assert(
      fc.property(
        some,
        fc.constantFrom(...uppers),
        fc.constantFrom(...tails),
        fc.constantFrom('  ', '', '    '),
        (all, upper, tail, indent) => {
          const items = all.map((form, i) => forms(`line000${i}`)[form] ?? '');
          const lines = items.join('').replace(/^(?=.)/gm, indent);
          const text = upper + lines + tail;
          const before = readJob(text, 'job.yaml');
          if (before.unreadable) return;
          const marked = withMark(text, before, entry(1), [], 'job.yaml');
          if ('fault' in marked) return;
          if (before.plain && all.some((form) => form > 0)) goneOn += 1;
          expect(marked.text).toBe(addEntry(text, entry(1), []));
          const { entries, upper: now, faults } = readJob(marked.text, 'job.yaml');
          expect(marked.read.entries).toEqual(entries);
          expect(marked.read.upper).toEqual(now);
          expect(marked.read.faults).toEqual(faults);
        },
      ),
      { numRuns: runs(600) },
    );
    expect(goneOn).toBeGreaterThan(20);
  });
});
