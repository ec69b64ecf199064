import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { appendEntry, applyEdits } from '../../../src/job/edit/splice.ts';
import type { Edit } from '../../../src/model/types.ts';
import { runs } from '../../runs.ts';
import { documents, read } from './splice-documents.ts';

const folder = mkdtempSync(join(tmpdir(), 'putback-splice-'));
afterAll(() => rmSync(folder, { recursive: true }));

const word = (index: number, was: string, to: string): Edit => ({
  edit: 'row-word',
  piece: 'cover',
  hole: String(index + 1),
  index,
  was,
  word: to,
});
const kind: Edit = { edit: 'kind', letter: 'L', text: 'M6x55 flange, 8 mm' };
const piece: Edit = { edit: 'piece', piece: 'cover' };
const row: Edit = { edit: 'row', piece: 'cover', row: 'S S M+clip' };

test.each<[string, string, Edit, string]>([
  ['a plain row', 'bolts: S S  M+clip # c', word(1, 'S', 'M'), 'bolts: S M  M+clip # c'],
  ['a quoted row', 'bolts: "S S M"', word(2, 'M', 'M+clip'), 'bolts: "S S M+clip"'],
  ['a row over two lines', 'bolts: S S\n      M S', word(2, 'M', 'L'), 'bolts: S S\n      L S'],
  [
    'a block text',
    'bolts: |\n      S S\n      M S',
    word(3, 'S', 'L'),
    'bolts: |\n      S S\n      M L',
  ],
  ['escapes', 'bolts: "S\\tS"', word(1, 'S', 'L'), 'bolts: "S L"'],
  ['a list', 'bolts: [S, "S",S ]', word(1, 'S', 'M+clip'), 'bolts: [S, "M+clip",S ]'],
  [
    'a list of lines',
    'bolts:\n      - S # a\n      - S # b',
    word(1, 'S', 'M'),
    'bolts:\n      - S # a\n      - M # b',
  ],
  [
    'full spelling',
    'bolts: [{kind: S}, S]',
    word(0, 'S', 'M+clip'),
    'bolts: [{kind: M, with: clip}, S]',
  ],
  [
    'full spelling, with less',
    'bolts: [{kind: S, with: [clip, copper]}]',
    word(0, 'S+clip+copper', 'S+clip'),
    'bolts: [{kind: S, with: clip}]',
  ],
  [
    'full spelling, with nothing',
    'bolts: [{kind: S, with: clip}]',
    word(0, 'S+clip', 'S'),
    'bolts: [{kind: S, with: []}]',
  ],
  [
    'full spelling in lines',
    'bolts:\n      - kind: S # k\n        with: clip',
    word(0, 'S+clip', 'M+a+b'),
    'bolts:\n      - kind: M # k\n        with: [a, b]',
  ],
  [
    'full spelling in lines, with more',
    'bolts:\n      - kind: S',
    word(0, 'S', 'S+clip'),
    'bolts:\n      - kind: S\n        with: clip',
  ],
])('settling changes one word of %s', (_, before, edit, after) => {
  const file = (bolts: string) => `pieces:\n  cover:\n    ${bolts}\n    torque: 10 N·m\n`;
  expect(applyEdits(file(before), [edit])).toBe(file(after));
});

test.each<[string, string, Edit, string]>([
  [
    'a kind behind the last',
    'bolts:\n  S: M6x25 # most\n  # lengths measured\n\npieces:\n',
    kind,
    'bolts:\n  S: M6x25 # most\n  # lengths measured\n  L: M6x55 flange, 8 mm\n\npieces:\n',
  ],
  [
    'a kind among several on one line',
    'bolts: {S: M6x25}\n',
    kind,
    'bolts: {S: M6x25, L: "M6x55 flange, 8 mm"}\n',
  ],
  [
    'the first kind',
    'job: x\n\n# what came off\npieces:\n  cover:\n',
    kind,
    'job: x\n\nbolts:\n  L: M6x55 flange, 8 mm\n\n# what came off\npieces:\n  cover:\n',
  ],
  [
    'a kind below an empty key',
    'job: x\nbolts:\npieces:\n  cover:\n',
    kind,
    'job: x\nbolts:\n  L: M6x55 flange, 8 mm\npieces:\n  cover:\n',
  ],
  ['the first piece', 'job: x\ndiary:\n', piece, 'job: x\npieces:\n  cover: {}\ndiary:\n'],
  ['another piece', 'pieces:\n    lid: {}\n', piece, 'pieces:\n    lid: {}\n    cover: {}\n'],
  [
    'a row for a new piece',
    'job: x\ndiary:\n',
    row,
    'job: x\npieces:\n  cover:\n    bolts: S S M+clip\ndiary:\n',
  ],
  [
    'a row for an empty piece',
    'pieces:\n  cover: {}\n',
    row,
    'pieces:\n  cover: {bolts: S S M+clip}\n',
  ],
  [
    'a row for a bare piece',
    'pieces:\n  cover:\n  lid:\n',
    row,
    'pieces:\n  cover:\n    bolts: S S M+clip\n  lid:\n',
  ],
  [
    'a row for a piece on one line',
    'pieces:\n  cover: {name: Lid}\n',
    row,
    'pieces:\n  cover: {name: Lid, bolts: S S M+clip}\n',
  ],
  [
    'a row behind the name',
    'pieces:\n  cover:\n    name: Lid # l\n    torque: 9\n',
    row,
    'pieces:\n  cover:\n    name: Lid # l\n    bolts: S S M+clip\n    torque: 9\n',
  ],
  [
    'a row behind its empty key',
    'pieces:\n  cover:\n    bolts: # how?\n',
    row,
    'pieces:\n  cover:\n    bolts: S S M+clip # how?\n',
  ],
])('%s', (_, before, edit, after) => {
  expect(applyEdits(before, [edit])).toBe(after);
  expect(applyEdits(before.replaceAll('\n', '\r\n'), [edit])).toBe(after.replaceAll('\n', '\r\n'));
});

test.each<[string, string, Edit, string]>([
  [
    'another word stands there',
    'pieces:\n  cover: {bolts: S L}\n',
    word(1, 'S', 'M'),
    'there stands L now, not S',
  ],
  [
    'the row is shorter',
    'pieces:\n  cover: {bolts: S}\n',
    word(1, 'S', 'M'),
    'the row has 1 words, none at 2',
  ],
  ['there is no row', 'pieces:\n  cover: {}\n', word(1, 'S', 'M'), 'cover has no row in the file'],
  ['there is a row', 'pieces:\n  cover: {bolts: S}\n', row, 'cover has a row already'],
  ['the letter is taken', 'bolts: {L: M8x20}\n', kind, 'L stands in bolts already'],
  ['the piece is there', 'pieces:\n  cover: {}\n', piece, 'cover stands in pieces already'],
  ['the file cannot be read', 'job: "open\n', kind, 'Missing closing "quote at line 2, column 1:'],
  [
    'anchors are used',
    'bolts: &a {S: x}\n',
    kind,
    'anchors (&) and aliases (*) are not used in job files',
  ],
])('an edit is refused and nothing changes when %s', (_, text, edit, fault) => {
  expect(applyEdits(text, [edit])).toEqual({ fault });
});

test('one edit that cannot be made holds back the others', () => {
  expect(applyEdits('pieces:\n  cover: {bolts: S}\n', [kind, word(0, 'L', 'M')])).toEqual({
    fault: 'there stands S now, not L',
  });
});

/** Text before and after with what both begin and end with taken off. */
function difference(a: string, b: string): [string, string] {
  let start = 0;
  while (start < a.length && a[start] === b[start]) start++;
  let end = 0;
  while (end < Math.min(a.length, b.length) - start && a.at(-1 - end) === b.at(-1 - end)) end++;
  return [a.slice(start, a.length - end), b.slice(start, b.length - end)];
}

test('settling changes one word and nothing else, in files of every habit', () => {
  fc.assert(
    fc.property(documents, fc.nat(), fc.constantFrom('L', 'M+spacer', 'S'), (made, at, to) => {
      const index = at % made.row.length;
      const next = applyEdits(made.text, [word(index, made.row[index] ?? '', to)]);
      if (typeof next !== 'string') throw new Error(next.fault);
      const back = applyEdits(next, [word(index, to, made.row[index] ?? '')]);
      if (made.text.includes('\\t')) return;
      const [gone, come] = difference(made.text, next);
      expect(gone.length + come.length).toBeLessThanOrEqual(45);
      expect(`${gone}${come}`).not.toMatch(/[\r#]|job|diary/);
      if (!made.text.includes('kind')) expect(back).toBe(made.text);
    }),
    { numRuns: runs(400) },
  );
});

test('a new kind and a new piece are added and nothing else, in files of every habit', () => {
  const lid: Edit = { edit: 'row', piece: 'lid', row: 'S S M+clip' };
  const edits: Edit[] = [{ ...kind, letter: 'Z' }, { edit: 'piece', piece: 'pump' }, lid];
  fc.assert(
    fc.property(documents, ({ text }) => {
      const next = applyEdits(text, edits);
      if (typeof next !== 'string') throw new Error(next.fault);
      const before = read(text) as { bolts?: object; pieces: object };
      const bolts = typeof before.bolts === 'object' ? before.bolts : {};
      expect(read(next)).toEqual({
        ...before,
        bolts: { ...bolts, Z: 'M6x55 flange, 8 mm' },
        pieces: { ...before.pieces, pump: {}, lid: { bolts: 'S S M+clip' } },
      });
      expect(next.startsWith('\uFEFF')).toBe(text.startsWith('\uFEFF'));
      expect(next.replaceAll('\r\n', '').includes('\n')).toBe(
        text.replaceAll('\r\n', '').includes('\n'),
      );
      // Every old line is there still, in its order; only a flow list on one line grew.
      const lines = next.replace('\uFEFF', '').split(/\r?\n/);
      for (const line of text.replace('\uFEFF', '').split(/\r?\n/)) {
        const at = lines.findIndex(
          (l) => l === line || (line.startsWith('bolts: {') && l.startsWith('bolts: {')),
        );
        expect(at, line).toBeGreaterThanOrEqual(0);
        lines.splice(0, at + 1);
      }
    }),
    { numRuns: runs(400) },
  );
});

test.each([
  ['a mark in a new file', 'job: x\ndiary:\n', (t: string) => appendEntry(t, '- {id: a}'), '1\t0'],
  [
    'a mark in a file with CRLF',
    'job: x\r\ndiary:\r\n  - {id: b}\r\n# end\r\n',
    (t: string) => appendEntry(t, '- {id: a}'),
    '1\t0',
  ],
  [
    'a settled word',
    'pieces:\n  cover: {bolts: S S M+clip} # c\ndiary:\n',
    (t: string) => applyEdits(t, [word(1, 'S', 'M')]),
    '1\t1',
  ],
  [
    'a settled word of a list',
    'pieces:\n  cover:\n    bolts:\n      - S\n      - {kind: S, with: clip}\n',
    (t: string) => applyEdits(t, [word(1, 'S+clip', 'M')]),
    '1\t1',
  ],
  ['a new kind', 'bolts:\n  S: M6x25\n\npieces:\n', (t: string) => applyEdits(t, [kind]), '1\t0'],
])('git counts the lines of %s', (_, before, change, counts) => {
  const [a, b] = [join(folder, 'a'), join(folder, 'b')];
  writeFileSync(a, before);
  writeFileSync(b, change(before) as string);
  let out = '';
  try {
    execFileSync('git', ['diff', '--no-index', '--numstat', a, b], {
      encoding: 'utf8',
      stdio: 'pipe',
    });
  } catch (e) {
    out = (e as { stdout: string }).stdout;
  }
  expect(out.split('\t').slice(0, 2).join('\t')).toBe(counts);
});
