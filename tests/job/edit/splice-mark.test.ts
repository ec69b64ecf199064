import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseEntryLine } from '../../../src/job/diary/entry.ts';
import { addEntry } from '../../../src/job/edit/splice.ts';
import type { Entry } from '../../../src/model/types.ts';
import { documents, read } from './splice-documents.ts';

const ENTRY: Entry = {
  at: '2026-05-02T10:11:05+02:00',
  id: '7Hn2XcPa',
  piece: 'cover',
  hole: ['4'],
  verb: 'in',
  value: 'M+clip',
};

test('a mark and the change of the row that goes with it stand in the file together', () => {
  expect(
    addEntry('pieces:\n  cover: {bolts: S S S S}\ndiary:\n', ENTRY, [
      { edit: 'row-word', piece: 'cover', hole: '4', index: 3, was: 'S', word: 'M+clip' },
    ]),
  ).toBe(
    'pieces:\n  cover: {bolts: S S S M+clip}\ndiary:\n' +
      '  - {at: 2026-05-02T10:11:05+02:00, id: 7Hn2XcPa, piece: cover, hole: 4, in: M+clip}\n',
  );
});

test('a change that cannot be made holds back the mark', () => {
  expect(
    addEntry('pieces:\n  cover: {bolts: S}\ndiary:\n', ENTRY, [
      { edit: 'row-word', piece: 'cover', hole: '1', index: 0, was: 'M', word: 'L' },
    ]),
  ).toEqual({ fault: 'there stands S now, not M' });
});

test.each([['- a list\n'], ['diary: a text\n'], ['job: "open\n'], ['? diary\n: - {a: b}\n']])(
  'a file with no room for an entry gets none: %j',
  (text) => {
    expect(addEntry(text, ENTRY)).toEqual({
      fault: 'the diary is written in a way that has no room for an entry',
    });
  },
);

test('an entry that is none is not written', () => {
  expect(addEntry('diary:\n', { ...ENTRY, at: 'yesterday' })).toEqual({
    fault: 'the entry does not read back as itself',
  });
});

test('whatever a person says stands in the file as said', () => {
  fc.assert(
    fc.property(documents, fc.string({ unit: 'binary' }), ({ text }, says) => {
      const next = addEntry(text, { at: ENTRY.at, id: ENTRY.id, verb: 'note', value: says });
      if (typeof next !== 'string') throw new Error(next.fault);
      const diary = read(next).diary as Record<string, string>[];
      expect(diary.at(-1)).toEqual({ at: ENTRY.at, id: ENTRY.id, note: says });
      const lines = next.split(/\r?\n/).map((l) => parseEntryLine(l));
      expect(lines.filter((e) => e?.id === ENTRY.id && e.value === says)).toHaveLength(1);
    }),
  );
});
