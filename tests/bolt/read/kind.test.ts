import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindFromParts, printKind, readKind, withLength } from '../../../src/bolt/read/kind.ts';
import type { Kind } from '../../../src/model/types.ts';

/** thread, length in mm, lengthText, head, tool, class, left-hand, once, note */
function parts(text: string) {
  const k = readKind('S', text);
  return [k.thread, k.length, k.lengthText, k.head, k.tool, k.class, k.leftHand, k.once, k.note];
}
const front = (text: string) => parts(text).slice(0, 3);

describe('the short spelling of a bolt', () => {
  it.each([
    ['M6x25 flange, 8 mm', ['M6', 25, '25', 'flange', '8 mm', null, false, false, null]],
    ['M6x20 pinch, 5 mm Allen', ['M6', 20, '20', 'pinch', '5 mm Allen', null, false, false, null]],
    [
      'M10 x 1.25 x 40 8.8 hex, 14 mm',
      ['M10x1.25', 40, '40', 'hex', '14 mm', '8.8', false, false, null],
    ],
    [
      '1/4-20 x 1-1/2 hex, 7/16',
      ['1/4-20', 38.1, '1-1/2', 'hex', '7/16', null, false, false, null],
    ],
    ['M8x1,25x30 LH, 13 mm', ['M8x1.25', 30, '30', null, '13 mm', null, true, false, null]],
    [
      'M6 x 25mm A2-70 socket, 5 mm Allen, blue',
      ['M6', 25, '25', 'socket', '5 mm Allen', 'A2-70', false, false, 'blue'],
    ],
    [
      'M10x1.25x90 once 10.9 flange, 14 mm',
      ['M10x1.25', 90, '90', 'flange', '14 mm', '10.9', false, true, null],
    ],
  ])('%s', (text, expected) => {
    expect(parts(text)).toEqual(expected);
    expect(readKind('S', text).text).toBe(text);
  });

  it.each([
    ['M6x1', ['M6x1', null, null]],
    ['M6x25', ['M6', 25, '25']],
    ['M6x1x25', ['M6x1', 25, '25']],
    ['M14x2', ['M14x2', null, null]],
    ['M10x10', ['M10', 10, '10']],
    ['M6', ['M6', null, null]],
    ['M6-1.0 x 25', ['M6x1', 25, '25']],
    ['m8×30', ['M8', 30, '30']],
    ['10-32 UNF x 1/2', ['10-32 UNF', 12.7, '1/2']],
    ['#10-24 x .75', ['10-24', 19.05, '.75']],
    ['5/16-18', ['5/16-18', null, null]],
    ['3/8-16x2 hex', ['3/8-16', 50.8, '2']],
    ['1/4 UNC x 1 in', ['1/4 UNC', 25.4, '1 in']],
    ['1/4" x 1"', ['1/4', 25.4, '1"']],
    ['1/4-20 x 25 mm', ['1/4-20', 25, '25 mm']],
    ['M6x1-1/2 in', ['M6', 38.1, '1-1/2 in']],
    ['x25 flange', [null, 25, '25']],
    ['25 mm long flange', [null, 25, '25']],
  ])(
    '%s: a standard pitch of that diameter is a pitch, any other figure a length',
    (text, expected) => {
      expect(front(text)).toEqual(expected);
    },
  );

  it('a plain metric front is read as any other', () => {
    // A blank behind M is not in the plain form.
    for (const size of ['M6x25', 'M6x1', 'M10x90', 'M8x30'])
      for (const behind of [
        '',
        ' flange',
        ' hex, 13 mm',
        ',5',
        ', 8 mm',
        ' mm',
        ' mmm',
        ' x3',
        ' 8.8',
      ])
        expect(front(`${size}${behind}`)).toEqual(front(`M ${size.slice(1)}${behind}`));
  });

  it.each([
    ['2BA x 1/2', ['2BA', 12.7, '1/2']],
    ['Tr16x4 x 50', ['Tr16x4', 50, '50']],
    ['1/4 BSF x 1-1/4', ['1/4 BSF', 31.75, '1-1/4']],
    ['1/8 NPT', ['1/8 NPT', null, null]],
  ])('%s: a thread it does not know is kept as written', (text, expected) => {
    expect(front(text)).toEqual(expected);
  });

  it.each(['a long one by the dipstick', '10 mm bolt', '5/16 hex, 1/2', '', 'M', ' , ,', 'x', '?'])(
    '%s: what cannot be read is not guessed, and the text is kept',
    (text) => {
      expect(front(text)).toEqual([null, null, null]);
      expect(readKind('S', text).text).toBe(text);
    },
  );

  it.each(['M6x1e9', 'M6x1x1e3', 'M6.5.5', 'M6x25.5.5', 'M6x-5', 'M6e3'])(
    '%s is no size: no part of it is taken for one',
    (text) => {
      expect(readKind('S', text)).toMatchObject({ thread: null, length: null, text });
    },
  );

  it('an inch length without a unit that no bolt has is not taken for a length', () => {
    expect(front('1/4-20 x 25')).toEqual(['1/4-20', null, '25']);
  });

  it.each([
    ['M8x30 gr.5 hex', 'grade 5'],
    ['M8x30 hex, 13 mm, 10.9', '10.9'],
    ['M8x30 hex, class 10.9', '10.9'],
    ['M8x30 hex, 13 mm, old, A2-70', 'A2-70'],
    ['M8x30 8.8 hex, 13 mm, 10.9', '8.8'],
    ['M8x30 hex, 13 mm, not 10.9', null],
    ['M8x30 class 10.9', '10.9'],
    ['M8x30 a4-80', 'A4-80'],
    ['M8x30 12.9 socket', '12.9'],
    ['M8x30 flange', null],
  ])('%s: the mark on the head', (text, mark) => {
    expect(readKind('S', text).class).toBe(mark);
  });
});

describe('behind a comma of their own', () => {
  it('left-hand and once are read as anywhere else', () => {
    const kind = readKind('N', 'M10x1 nut, 17 mm, LH, once, greased');
    expect(kind).toMatchObject({ leftHand: true, once: true, tool: '17 mm', note: 'greased' });
    expect(readKind('N', 'M10x1 nut, LH')).toMatchObject({ leftHand: true, tool: null });
    expect(readKind('N', 'M10x1 nut, 17 mm, not LH')).toMatchObject({ leftHand: false });
  });
});

describe('the full spelling of a bolt', () => {
  it('gives the same kind as the short one', () => {
    const short = readKind('L', 'M10x1.25x40 8.8 LH hex, 14 mm');
    const full = kindFromParts('L', {
      thread: 'M10x1.25',
      length: '40',
      class: '8.8',
      lh: 'true',
      head: 'hex',
      tool: '14 mm',
    });
    expect(full).toEqual(short);
  });

  it('reads what only it can say, and inches beside an inch thread', () => {
    const k = kindFromParts('Q', {
      thread: '1/4-20',
      length: '1.5',
      threaded: '18',
      once: 'true',
      note: 'precoated',
    });
    expect(k).toMatchObject({
      length: 38.1,
      threaded: 18,
      once: true,
      note: 'precoated',
      leftHand: false,
    });
    expect(kindFromParts('Q', { thread: 'M6x25', lh: 'false' })).toMatchObject({
      thread: 'M6',
      length: 25,
      leftHand: false,
    });
  });

  it('never throws on whatever stands in the file', () => {
    const texts = fc.string({ maxLength: 30 });
    fc.assert(
      fc.property(texts, texts, texts, (a, b, c) => {
        expect(readKind('S', `${a} x ${b}, ${c}`).text).toBe(`${a} x ${b}, ${c}`);
        expect(kindFromParts('S', { thread: a, length: b, class: c }).letter).toBe('S');
      }),
    );
  });
});

const kinds: fc.Arbitrary<Kind> = fc
  .record({
    front: fc.constantFrom(
      'M6x25',
      'M6x1x25',
      'M8',
      '1/4-20 x 1-1/2',
      '10-32 UNF x 1/2',
      '2BA x 1/2',
      'x25',
      '1/4 x 1"',
    ),
    mark: fc.constantFrom('', ' 8.8', ' A2-70', ' grade 5'),
    left: fc.constantFrom('', ' LH'),
    once: fc.constantFrom('', ' once'),
    head: fc.constantFrom('', ' hex', ' flange', ' black socket'),
    tool: fc.constantFrom('', ', 8 mm', ', 5 mm Allen', ', 7/16', ', 8 mm, blue'),
  })
  .map((r) => readKind('S', r.front + r.mark + r.left + r.once + r.head + r.tool));
const said = (k: Kind) => ({ ...k, text: '' });

describe('the text made anew', () => {
  it('reads back as the same bolt', () => {
    fc.assert(
      fc.property(kinds, (k) => {
        expect(said(readKind('S', printKind(k)))).toEqual(said(k));
      }),
    );
  });

  it('a neighbour in another length keeps all but the length', () => {
    fc.assert(
      fc.property(kinds, fc.integer({ min: 4, max: 200 }), (k, mm) => {
        const next = withLength(k, mm, 'L');
        expect(next).toMatchObject({
          letter: 'L',
          length: mm,
          thread: k.thread,
          head: k.head,
          tool: k.tool,
        });
        expect(said(readKind('L', next.text))).toEqual(said(next));
      }),
    );
    expect(withLength(readKind('S', 'M6x25 flange, 8 mm'), 55).text).toBe('M6x55 flange, 8 mm');
    expect(withLength(readKind('S', 'M6x25 flange, 8 mm'), null).text).toBe('M6 flange, 8 mm');
    expect(withLength(readKind('S', '1/4-20 x 1 hex'), 38.1).text).toBe('1/4-20 x 1-1/2 hex');
  });
});

describe('figures as other people write them', () => {
  it.each([
    ['1/4-20 x 1½', '1/4-20', 38.1, null],
    ['¼-20 x 1', '1/4-20', 25.4, null],
    ['3/8-16 x 5⁄8', '3/8-16', 15.875, null],
    // As standards name a bolt.
    ['M8x30-10.9', 'M8', 30, '10.9'],
    ['M8 × 30 – A2', 'M8', 30, 'A2'],
    // One of two lengths, and nobody knows which.
    ['M6x25-30', 'M6', null, null],
    ['M6x25 or M6x30', 'M6', null, null],
    ['M6x25..30', 'M6', null, null],
  ])('%s', (text, thread, length, mark) => {
    expect(readKind('S', text)).toMatchObject({ text, thread, length, class: mark });
  });

  it('a series behind the length is part of the thread', () => {
    expect(readKind('S', '1/4" x 1" BSW')).toMatchObject({ thread: '1/4 BSW', head: null });
    expect(readKind('S', '1/4 x 1 UNF hex')).toMatchObject({ thread: '1/4 UNF', head: 'hex' });
  });
});
