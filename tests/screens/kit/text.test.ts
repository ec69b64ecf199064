import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { ordinal } from '../../../src/piece/words.ts';
import { paint } from '../../../src/screens/kit/paint.ts';
import {
  broken,
  cutTo,
  hanging,
  line,
  pad,
  span,
  spread,
  width,
  wrap,
} from '../../../src/screens/kit/text.ts';
import { list, many, sayCounts } from '../../../src/screens/kit/words.ts';

const plain = { colour: false, ascii: false };
const text = (l: Parameters<typeof paint>[0]) => paint(l, plain);

const NASTY = [
  '字',
  '👩‍🔧',
  '🇩🇪',
  'é',
  'e\u0301',
  '\u202e',
  '\u200b',
  '\x1b[31m',
  '\t',
  'ﬁ',
  'Ø',
  'a',
  ' ',
  '·',
];
const anyText = fc
  .array(fc.constantFrom(...NASTY), { maxLength: 40 })
  .map((parts) => parts.join(''));

describe('a line never takes more columns than it has', () => {
  it.each([
    ['cut', (t: string, n: number) => cutTo(line(t), n)],
    ['pad', (t: string, n: number) => pad(line(t), n)],
    ['spread', (t: string, n: number) => spread(line(t), line(t), n)],
  ])('%s', (_name, fit) => {
    fc.assert(
      fc.property(anyText, fc.nat(60), (t, n) => {
        expect(width(fit(t, n))).toBeLessThanOrEqual(n);
      }),
    );
  });

  it('wrap, but for what is wider than a line', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 2, max: 60 }), (t, n) => {
        for (const l of wrap(t, n)) expect(width(l)).toBeLessThanOrEqual(n);
      }),
    );
  });
});

describe('text', () => {
  it('from a file cannot steer the terminal', () => {
    expect(text(line('a\x1b[2Jb', span('\u202eevil')))).toBe('a\\x1b[2Jb\\u202eevil');
  });

  it('keeps its words together', () => {
    expect(wrap('Take it out before you pry.', 12).map(text)).toEqual([
      'Take it out',
      'before you',
      'pry.',
    ]);
    expect(hanging(line('5:1  '), 'one two three', 13).map(text)).toEqual([
      '5:1  one two',
      '     three',
    ]);
  });

  it('says that it was cut', () => {
    expect(text(cutTo(line('Alternator cover'), 12))).toBe('Alternator..');
  });

  it('stands at both edges', () => {
    expect(text(spread(line('Cover'), line('off'), 12))).toBe('Cover    off');
    expect(text(spread(line('Alternator cover'), line('off'), 12))).toBe('Alter..  off');
  });

  it('has no escape sequence without colour, and is 7-bit where that is asked for', () => {
    const l = line(span('10 N·m é 字', { bold: true, colour: 'red' }));
    expect(paint(l, plain)).toBe('10 N·m é 字');
    expect(paint(l, { colour: false, ascii: true })).toBe('10 N.m e ?');
    expect(paint(l, { colour: true, ascii: false })).toBe('\x1b[1;31m10 N·m é 字\x1b[0m');
  });
});

describe('words', () => {
  it('count and list as one does', () => {
    expect([many(1, 'bolt'), many(4, 'bolt')]).toEqual(['1 bolt', '4 bolts']);
    expect([list([]), list(['1']), list(['1', '2', '9'])]).toEqual(['', '1', '1, 2 and 9']);
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 101, 111].map(ordinal)).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '12th',
      '13th',
      '21st',
      '22nd',
      '101st',
      '111th',
    ]);
    expect(
      sayCounts([
        { kind: 'S', with: [] },
        { kind: 'M', with: ['clip'] },
        { kind: 'S', with: [] },
        null,
      ]),
    ).toBe('2 S, 1 M, 1 bolt that nobody has named; under the heads 1 clip');
  });
});

describe('a long text is measured as a short one', () => {
  const longText = fc
    .array(fc.oneof(fc.constantFrom(...NASTY), fc.constantFrom('bolt', 'M6x25, ', '10 N·m')), {
      minLength: 1,
      maxLength: 60,
    })
    .map((parts) => span(parts.join('')).text);

  it('its columns are those that the library counts', () => {
    fc.assert(
      fc.property(longText, (t) => {
        expect(width(t)).toBe(stringWidth(t));
      }),
    );
  });

  it('cut to a few columns it is its own beginning, as long as can be', () => {
    fc.assert(
      fc.property(longText, fc.integer({ min: 3, max: 9 }), (t, columns) => {
        const shown = text(cutTo(line(t), columns));
        if (stringWidth(t) <= columns) {
          expect(shown).toBe(t);
          return;
        }
        const kept = shown.slice(0, -2);
        expect([shown.slice(-2), t.startsWith(kept)]).toEqual(['..', true]);
        const more = new Intl.Segmenter('en').segment(t.slice(kept.length))[Symbol.iterator]();
        const next = more.next().value?.segment ?? '';
        expect(stringWidth(kept) + stringWidth(next)).toBeGreaterThan(columns - 2);
      }),
    );
  });

  it('broken, its parts are the whole, and each is full', () => {
    const rooms = fc.record({
      room: fc.integer({ min: 2, max: 9 }),
      left: fc.integer({ min: 0, max: 9 }),
    });
    fc.assert(
      fc.property(longText, rooms, (t, { room, left }) => {
        const first = Math.min(room, left);
        const parts = broken(t, room, first);
        expect(parts.join('')).toBe(t);
        for (const [i, part] of parts.entries()) {
          const most = i === 0 ? first : room;
          expect(stringWidth(part)).toBeLessThanOrEqual(most);
          // Nothing that comes after takes more than two columns.
          if (i < parts.length - 1) expect(stringWidth(part)).toBeGreaterThanOrEqual(most - 1);
        }
      }),
    );
  });

  it('in runs it is broken and counted as it is sign by sign', () => {
    const segments = new Intl.Segmenter('en');
    const bySigns = (t: string, room: number): string[] => {
      const parts = [''];
      let used = 0;
      for (const { segment } of segments.segment(t)) {
        const wide = stringWidth(segment);
        if (used > 0 && wide > 0 && used + wide > room) {
          parts.push('');
          used = 0;
        }
        parts.push(`${parts.pop()}${segment}`);
        used += wide;
      }
      return parts;
    };
    const odd: string[] = [];
    // All letters and signs of the first tables; of the large ones, which are alike, some.
    for (let code = 0x20; code <= 0x1ffff; code += code < 0x2200 || code > 0x1f000 ? 1 : 61) {
      const c = String.fromCodePoint(code);
      // Between its like, before a mark that joins it, behind one that takes it on, and between letters of two columns.
      const t = span(`a${c}${c}a${c}\u0301가${c}ᆨ가\u0600${c}${c}`).text;
      const same = broken(t, 1).join('\n') === bySigns(t, 1).join('\n');
      if (t.isWellFormed() && !(same && width(t) === stringWidth(t))) odd.push(t);
    }
    expect(odd).toEqual([]);
    const signs = fc.constantFrom(
      'a',
      'Ж',
      'ό',
      'é',
      '가',
      'ボ',
      '字',
      '·',
      '\u0301',
      '\u3099',
      '👩‍🔧',
      '👩',
      '🏽',
      '🇩',
      '❤️',
      '𠀀',
      'ஷ',
      '\u0bcd',
      'क',
      '\u094d',
      '\u200d',
      'ᄒ',
      '\u1161',
      '\u0600',
    );
    const mixed = fc.array(signs, { maxLength: 40 }).map((some) => some.join(''));
    fc.assert(
      fc.property(fc.oneof(mixed, longText), fc.integer({ min: 1, max: 7 }), (t, room) => {
        expect(broken(t, room)).toEqual(bySigns(t, room));
        expect(width(t)).toBe(stringWidth(t));
      }),
    );
  });
});
