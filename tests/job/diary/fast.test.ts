import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printEntry } from '../../../src/job/diary/entry.ts';
import { readJob, readWhole } from '../../../src/job/read.ts';
import type { Entry } from '../../../src/model/types.ts';
import { EXAMPLE } from '../form/example.ts';
import { anyEntry, anyText } from '../form/make.ts';

/** Person's parts, some of them with something in the way of reading line by line. */
const UPPERS = [
  'putback: 1\njob: Left cover\n',
  'putback: 1\njob: Left cover\npieces:\n  alternator: {bolts: S S S}\n  n: {bolts: S, holes: {2: }}\n',
  EXAMPLE.slice(0, EXAMPLE.indexOf('diary:')),
  'putback: 2\njob: newer\n',
  '',
  '{putback: 1, job: flow}\n',
  '- a list\n',
  'putback: 1\njob: "quote\n',
  'putback: 1\njob: "quote\n  over two lines"\n',
  'putback: 1\njob: x\ndiary:\n  - {at: 2026-05-02T10:20:10+02:00, id: aaaaaaaa, note: "first"}\n',
  'putback: 1\njob: x\nbuy: [\n',
  'putback: 1\njob: &a x\nfound: *a\n',
  'putback: 1\njob: x # y\nfound: part #12\n---\n',
  'putback: 1\njob: |\n  x\n  diary:\n',
  '? putback\n: 1\n? job\n: x\n',
  '--- |\n',
  '--- >\n text\n',
  "--- '\n",
  'putback: 1\njob: x\nnote: >\n\n',
  '  putback: 1\n  job: x\n',
];

const KEYS = [
  'diary:',
  'diary: # log',
  'diary:  ',
  'diary: #5',
  "'diary':",
  'diary: []',
  ' diary:',
  'diary :',
  'diary:\t# log',
  'diary: \t',
  '"diary":',
];
const BETWEEN = [
  '# comment',
  '',
  '    # deeper',
  '   ',
  'found: x',
  '...',
  '---',
  '\t',
  '  - ',
  '  -',
  '    ',
  '<<<<<<< ours',
  '=======',
  '  - {at: x}',
  '  - x',
  '    more',
  '  # "',
  '\t# tab',
  ' \t',
];

const anyLine = fc
  .tuple(fc.constantFrom('  ', '  ', '  ', '  ', '', '    '), anyEntry)
  .map(([indent, entry]) => indent + printEntry(entry));

const anyFile = fc
  .tuple(
    fc.constantFrom(...UPPERS),
    fc.constantFrom('diary:', 'diary:', 'diary:', ...KEYS),
    fc.array(
      fc.oneof(
        { weight: 8, arbitrary: anyLine },
        { weight: 1, arbitrary: fc.constantFrom(...BETWEEN) },
      ),
      {
        maxLength: 6,
      },
    ),
    fc.constantFrom('\n', '\n', '\r\n'),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([upper, key, lines, feed, last, mark]) => {
    const text = upper + [key, ...lines].join('\n') + (last ? '\n' : '');
    return (mark ? '\uFEFF' : '') + text.replaceAll('\n', feed);
  });

/** Lines that all have one depth: the file as the program leaves it. */
const anyDiary = fc.tuple(fc.constantFrom('', '  ', '    '), fc.array(anyEntry, { maxLength: 8 }));

function same(text: string): void {
  const { plain, ...read } = readJob(text, 'a.yaml');
  const { plain: byWhole, ...whole } = readWhole(text, 'a.yaml');
  expect(read).toEqual(whole);
  // What the whole parse sees to end in a line of its own does so for the reading by lines, too.
  if (byWhole) expect(plain).toBe(true);
}

describe('reading line by line gives what the whole parse gives', () => {
  it('for diaries as the program writes them', () => {
    fc.assert(
      fc.property(fc.constantFrom(...UPPERS), anyDiary, (upper, [indent, entries]) => {
        same(`${upper}diary:\n${entries.map((e) => `${indent}${printEntry(e)}\n`).join('')}`);
      }),
      { numRuns: 200 },
    );
  });

  it('for files put together anyhow', () => {
    fc.assert(fc.property(anyFile, same), { numRuns: 400 });
  });

  it('for files with a character changed, put in or taken out', () => {
    const anyChange = fc.tuple(
      fc.nat(),
      fc.nat({ max: 3 }),
      fc.oneof(
        fc.constantFrom(
          ...'{}[],:#-"\'\n\r\t &*!|>%@`~\\\uFEFF\u2028\0\uFFFD',
          'on',
          '1',
          ' #x',
          ': ',
        ),
        anyText,
      ),
    );
    fc.assert(
      fc.property(anyFile, fc.array(anyChange, { minLength: 1, maxLength: 3 }), (file, changes) => {
        let text = file;
        for (const [where, out, put] of changes) {
          const at = where % (text.length + 1);
          text = text.slice(0, at) + put + text.slice(at + out);
        }
        same(text);
      }),
      { numRuns: 400 },
    );
  });

  it('for one file after another, grown, cut and changed above', () => {
    const lines = (EXAMPLE.split('diary:\n')[1] ?? '').split('\n').slice(0, -1);
    const upper = EXAMPLE.slice(0, EXAMPLE.indexOf('diary:'));
    for (const n of [0, 1, 2, 6, 3, 6]) same(`${upper}diary:\n${lines.slice(0, n).join('\n')}\n`);
    same(EXAMPLE.replace('bolts: S S S M+clip', 'bolts: S S S S'));
    same(EXAMPLE);
  });
});

describe('a line is read once', () => {
  it('the entries of the last reading are the same ones, and only the new line is new', () => {
    const first = readJob(EXAMPLE, 'a.yaml');
    const entry: Entry = {
      at: '2026-05-02T10:30:00+02:00',
      id: 'xY0aaaaa',
      verb: 'note',
      value: 'x',
    };
    const second = readJob(`${EXAMPLE}  ${printEntry(entry)}\n`, 'a.yaml');
    expect(second.upper).toBe(first.upper);
    for (const [i, e] of first.entries.entries()) expect(second.entries[i]).toBe(e);
    expect(second.entries.at(-1)).toEqual(entry);
  });
});
