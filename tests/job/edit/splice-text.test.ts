import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../src/job/edit/splice.ts';
import { readJob } from '../../../src/job/read.ts';
import type { Edit, Writable } from '../../../src/model/types.ts';
import { runs } from '../../runs.ts';
import { documents, read } from './splice-documents.ts';

const more = (key: Writable, text: string): Edit => ({
  edit: 'text',
  piece: 'cover',
  key,
  text,
  in: true,
});
const less = (key: Writable, text: string): Edit => ({ ...more(key, text), in: false }) as Edit;
const instead = (key: Writable, was: string | null, text: string | null): Edit => ({
  edit: 'instead',
  piece: 'cover',
  key,
  was,
  text,
});

/** Unix and Windows line ends alike. */
function changes(before: string, edit: Edit, after: string): void {
  expect(applyEdits(before, [edit])).toBe(after);
  const crlf = (text: string) => text.replaceAll('\n', '\r\n');
  expect(applyEdits(crlf(before), [edit])).toBe(crlf(after));
}

const file = (inPiece: string) => `pieces:\n  cover:\n    ${inPiece}\n    torque: 10 N·m # t\n`;

describe('one text more, and out again', () => {
  test.each<[string, string, string]>([
    ['a text', 'joint: dry', 'joint: [dry, no sealant]'],
    ['a text with a remark', 'joint: dry  # both faces', 'joint: [dry, no sealant]  # both faces'],
    ['a text in double quotes', 'joint: "dry, clean"', 'joint: ["dry, clean", no sealant]'],
    ['a text in single quotes', "joint: 'it''s dry'", "joint: ['it''s dry', no sealant]"],
    [
      'a text that needs quotes in a list',
      'joint: dry, clean',
      'joint: [ "dry, clean", no sealant]',
    ],
    [
      'a text on lines',
      'joint: |\n      dry\n      clean',
      'joint:\n    - |\n      dry\n      clean\n    - no sealant',
    ],
    [
      'a folded text',
      'joint: > # r\n      dry\n      clean',
      'joint:\n    - > # r\n      dry\n      clean\n    - no sealant',
    ],
    ['a list of one', 'joint: [dry]', 'joint: [dry,  no sealant]'],
    ['a list of one on a line', 'joint:\n      - dry', 'joint:\n      - dry\n      - no sealant'],
    ['a list', 'joint: [dry, new gasket]', 'joint: [dry, new gasket, no sealant]'],
    [
      'a list of lines',
      'joint:\n      - dry # a\n      - new gasket # b',
      'joint:\n      - dry # a\n      - new gasket # b\n      - no sealant',
    ],
    [
      'a list of lines as deep as its key',
      'joint:\n    - dry\n    - new gasket',
      'joint:\n    - dry\n    - new gasket\n    - no sealant',
    ],
    [
      'a list over several lines',
      'joint: [dry, # a\n      new gasket] # b',
      'joint: [dry, # a\n      new gasket, no sealant] # b',
    ],
  ])('%s', (_, before, after) => {
    changes(file(before), more('joint', 'no sealant'), file(after));
    changes(file(after), less('joint', 'no sealant'), file(before));
  });

  test.each<[string, string, string]>([
    ['a list with a comma at its end', 'joint: [dry, ]', 'joint: [dry,  no sealant, ]'],
    ['an empty list', 'joint: []', 'joint: [no sealant]'],
    ['a key with nothing behind it', 'joint: # ask', 'joint: no sealant # ask'],
    ['a text over two lines', 'joint: new\n      gasket', 'joint: [new\n      gasket, no sealant]'],
  ])('into %s', (_, before, after) => {
    changes(file(before), more('joint', 'no sealant'), file(after));
  });

  test.each<[string, string, string]>([
    [
      'a piece of lines',
      'pieces:\n  cover:\n    bolts: S\n',
      'pieces:\n  cover:\n    bolts: S\n    routes: left\n',
    ],
    [
      'a piece with a remark at its end',
      'pieces:\n  cover:\n    bolts: S\n    # of the cover\n\n  # of the lid\n  lid:\n',
      'pieces:\n  cover:\n    bolts: S\n    # of the cover\n    routes: left\n\n  # of the lid\n  lid:\n',
    ],
    [
      'a piece on one line',
      'pieces:\n  cover: {bolts: S}\n',
      'pieces:\n  cover: {bolts: S, routes: left}\n',
    ],
    ['an empty piece', 'pieces:\n  cover: {}\n', 'pieces:\n  cover: {routes: left}\n'],
    [
      'a bare piece',
      'pieces:\n  cover:\n  lid:\n',
      'pieces:\n  cover:\n    routes: left\n  lid:\n',
    ],
    [
      'a bare piece among others on a line',
      'pieces: {cover: , lid: {}}\n',
      'pieces: {cover: {routes: left} , lid: {}}\n',
    ],
    [
      'a piece that only the diary knows',
      'job: x\ndiary:\n',
      'job: x\npieces:\n  cover:\n    routes: left\ndiary:\n',
    ],
  ])('the first text of %s', (_, before, after) => {
    changes(before, more('routes', 'left'), after);
  });

  test('what a piece lies under stands at its top', () => {
    const piece = (top: string) => `pieces:\n  cover:\n${top}    # row\n    bolts: S\n`;
    changes(piece(''), more('under', 'lid'), piece('    under: lid\n'));
    changes(
      piece('    name: L # l\n'),
      more('under', 'lid'),
      piece('    name: L # l\n    under: lid\n'),
    );
  });

  test.each<[string, string, string]>([
    [
      'a line of its own',
      'pieces:\n  cover:\n    routes: left # r\n    bolts: S\n',
      'pieces:\n  cover:\n    bolts: S\n',
    ],
    [
      'the only line',
      'pieces:\n  cover:\n    routes: left\n  lid:\n',
      'pieces:\n  cover:\n  lid:\n',
    ],
    [
      'the first of a line',
      'pieces:\n  cover: {routes: left, bolts: S}\n',
      'pieces:\n  cover: {bolts: S}\n',
    ],
    [
      'the last of a line',
      'pieces:\n  cover: {bolts: S, routes: left}\n',
      'pieces:\n  cover: {bolts: S}\n',
    ],
    ['all of a line', 'pieces:\n  cover: {routes: [left]}\n', 'pieces:\n  cover: {}\n'],
    [
      'a list of one',
      'pieces:\n  cover:\n    routes:\n      - left\n    bolts: S\n',
      'pieces:\n  cover:\n    bolts: S\n',
    ],
    [
      'the first item',
      'pieces:\n  cover:\n    routes: [left, right, up]\n',
      'pieces:\n  cover:\n    routes: [right, up]\n',
    ],
    [
      'a middle item',
      'pieces:\n  cover:\n    routes: [up, left, right]\n',
      'pieces:\n  cover:\n    routes: [up, right]\n',
    ],
    [
      'an item between remarks',
      'pieces:\n  cover:\n    routes:\n      - up # a\n      # b\n      - left # c\n      - right\n',
      'pieces:\n  cover:\n    routes:\n      - up # a\n      # b\n      - right\n',
    ],
    [
      'the second item behind a remark',
      'pieces:\n  cover:\n    routes: [up, # a\n      left]\n',
      'pieces:\n  cover:\n    routes: [up, # a\n      ]\n',
    ],
    [
      'an item between two remarks on one line each',
      'pieces:\n  cover:\n    routes: [up, # a\n      left, # b\n      right]\n',
      'pieces:\n  cover:\n    routes: [up, # a\n       # b\n      right]\n',
    ],
  ])('out goes %s', (_, before, after) => {
    changes(before, less('routes', 'left'), after);
  });

  test('the last of equal texts goes, and a folded text counts as the line it is', () => {
    const two = (routes: string) => `pieces:\n  cover:\n    routes: ${routes}\n`;
    changes(two('[left, up, left]'), less('routes', 'left'), two('[left, up]'));
    changes(
      two('>\n      behind the\n      frame'),
      less('routes', 'behind the frame'),
      'pieces:\n  cover:\n',
    );
    changes(
      two('>\n      behind the\n      frame'),
      more('routes', 'left'),
      'pieces:\n  cover:\n    routes:\n    - >\n      behind the\n      frame\n    - left\n',
    );
  });
});

describe('one text in the place of another', () => {
  test.each<[string, string, string]>([
    ['a text', 'sequence: 1 2 3 # s', 'sequence: 3 1 2 # s'],
    ['a text in quotes', 'sequence: "1 2 3"', 'sequence: 3 1 2'],
    ['a list', 'sequence: [1, 2, 3] # s', 'sequence: 3 1 2 # s'],
    ['a list of lines', 'sequence:\n      - 1\n      - 2\n      - 3', 'sequence: 3 1 2'],
  ])('an order that stood as %s', (_, before, after) => {
    changes(file(before), instead('sequence', '1 2 3', '3 1 2'), file(after));
  });

  test.each<[string, string, string]>([
    ['lines', 'map: |\n      1 2\n      . 3', 'map: |\n      1 .\n      2 3'],
    [
      'lines with a remark',
      'map: |  # seen from outside\n        1 2\n        . 3',
      'map: |  # seen from outside\n        1 .\n        2 3',
    ],
    ['lines that were folded', 'map: >\n      1 2\n      . 3', 'map: |\n      1 .\n      2 3'],
    ['one text with line breaks', 'map: "1 2\\n. 3"', 'map: |\n      1 .\n      2 3'],
  ])('a picture that stood as %s', (_, before, after) => {
    const was = before.includes('>') ? '1 2 . 3' : '1 2\n. 3';
    changes(file(before), instead('map', was, '1 .\n2 3'), file(after));
  });

  test('a picture is put into a piece of lines as lines, into one on a line as a text, and comes out again', () => {
    const put = instead('map', null, '1 .\n2 3');
    const out = instead('map', '1 .\n2 3', null);
    const lines = (map: string) => `pieces:\n  cover:\n    bolts: S S S\n${map}\n  lid:\n`;
    changes(lines(''), put, lines('    map: |\n      1 .\n      2 3\n'));
    changes(lines('    map: |\n      1 .\n      2 3\n'), out, lines(''));
    changes(
      'pieces: {cover: {bolts: S}}\n',
      put,
      'pieces: {cover: {bolts: S, map: "1 .\\n2 3"}}\n',
    );
    changes(
      'pieces: {cover: {bolts: S, map: "1 .\\n2 3"}}\n',
      out,
      'pieces: {cover: {bolts: S}}\n',
    );
  });

  test.each<[string, string, Edit, string]>([
    [
      'another text stands there',
      file('into: steel'),
      instead('into', null, 'iron'),
      'into of cover was changed in the file since',
    ],
    [
      'it says something else now',
      file('sequence: 1 2'),
      instead('sequence', '2 1', '1 2'),
      'sequence of cover was changed in the file since',
    ],
    [
      'the text is gone',
      file('routes: up'),
      less('routes', 'left'),
      'routes of cover does not say so any more',
    ],
    [
      'the key is gone',
      file('bolts: S'),
      less('routes', 'left'),
      'routes of cover does not say so any more',
    ],
    [
      'the piece is gone',
      'pieces:\n  lid:\n',
      less('routes', 'left'),
      'there is no cover any more',
    ],
    [
      'the piece is a text',
      'pieces:\n  cover: left\n',
      more('routes', 'up'),
      'cover is written as a text, not with keys',
    ],
    [
      'a mapping stands there',
      file('routes: {up: left}'),
      more('routes', 'up'),
      'routes is written in a way that only a hand can change',
    ],
  ])('nothing is changed when %s', (_, text, edit, fault) => {
    expect(applyEdits(text, [edit])).toEqual({ fault });
  });
});

const anyText = fc.constantFrom(
  'behind the frame',
  'a, b',
  '[x] {y}: z',
  '# 3',
  "it's “so”",
  '- dash',
  '10',
  'no',
  'été ✓ 🔩',
  '\u202e\u0007 odd',
);

test('texts go in and out again and nothing else changes, in files of every habit', () => {
  const keys = fc.constantFrom<Writable>('routes', 'marks', 'joint', 'loose');
  fc.assert(
    fc.property(
      documents,
      keys,
      fc.uniqueArray(anyText, { minLength: 1, maxLength: 3 }),
      (made, key, texts) => {
        const edits = texts.map((text) => more(key, text));
        const next = applyEdits(made.text, edits);
        if (typeof next !== 'string') throw new Error(next.fault);
        const before = read(made.text) as { pieces: { cover: object } };
        const value = texts.length === 1 ? texts[0] : texts;
        expect(read(next)).toEqual({
          ...before,
          pieces: { ...before.pieces, cover: { ...before.pieces.cover, [key]: value } },
        });
        expect(next.replaceAll('\r\n', '').includes('\n')).toBe(
          made.text.replaceAll('\r\n', '').includes('\n'),
        );
        const back = applyEdits(
          next,
          texts.map((text) => less(key, text)),
        );
        // A last line without its ending gets one with what is put behind it.
        const bare = (text: unknown) => String(text).replace(/\r?\n$/, '');
        expect(bare(back)).toBe(bare(made.text));
      },
    ),
    { numRuns: runs(400) },
  );
});

test('a picture and an order go in, are changed and go out again, in files of every habit', () => {
  const cells = (row: string[]) => row.map((_, i) => `${i + 1}`);
  fc.assert(
    fc.property(documents, (made) => {
      const holes = cells(made.row);
      const [map, turned] = [holes.join('\n'), holes.toReversed().join('\n')];
      const [order, other] = [holes.join(' '), holes.toReversed().join(' ')];
      const next = applyEdits(made.text, [
        instead('map', null, map),
        instead('sequence', null, order),
        instead('map', map, turned),
        ...(order === other ? [] : [instead('sequence', order, other)]),
      ]);
      if (typeof next !== 'string') throw new Error(next.fault);
      const job = readJob(next, 'job.yaml');
      const spec = job.upper.pieces.get('cover');
      expect(spec?.map?.trim().split(/\s+/)).toEqual(holes.toReversed());
      expect(spec?.sequence).toEqual(holes.toReversed());
      const codes = (text: string) => readJob(text, 'job.yaml').faults.map((f) => f.code);
      expect(codes(next)).toEqual(codes(made.text));
      const back = applyEdits(next, [
        instead('sequence', other, null),
        instead('map', turned, null),
      ]);
      const bare = (text: unknown) => String(text).replace(/\r?\n$/, '');
      expect(bare(back)).toBe(bare(made.text));
    }),
    { numRuns: runs(400) },
  );
});

describe('an order put anew', () => {
  const HEAD = 'pieces:\n  cover:\n    bolts: S S\n    sequence:\n';
  const anew = (text: string): Edit[] => [
    { edit: 'instead', piece: 'cover', key: 'sequence', was: '1 2', text },
  ];

  test('leaves a remark in it alone: only a hand can change that', () => {
    const text = `${HEAD}      - 1   # top left first, or it tilts\n      - 2\n`;
    expect(applyEdits(text, anew('2 1'))).toEqual({
      fault: 'the file is written in a way that only a hand can change',
    });
    expect(applyEdits(`${HEAD}      - 1\n      - 2\n`, anew('2 1'))).toContain('2 1');
  });
});
