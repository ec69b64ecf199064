import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drawField,
  field,
  fieldText,
  pasteField,
  pressField,
  type TextField,
  tooLong,
} from '../../../src/screens/kit/field.ts';
import { width } from '../../../src/screens/kit/text.ts';

/** The text with `|` where the cursor is. */
function shown(f: TextField): string {
  return [...f.text.slice(0, f.cursor), '|', ...f.text.slice(f.cursor)].join('');
}

/** `ab|cd` as a field. */
function given(text: string): TextField {
  const [left = '', right = ''] = text.split('|');
  const whole = field(left + right);
  return { ...whole, cursor: field(left).text.length };
}

function press(f: TextField, presses: string): TextField {
  return presses.split(' ').reduce((now, p) => pressField(now, p) ?? now, f);
}

describe('a field is edited as a line of a shell', () => {
  it.each([
    ['|', 'a b c', 'abc|'],
    ['cup|', 'space 2', 'cup 2|'],
    ['cup| 2', 's', 'cups| 2'],
    ['cup 2|', 'left left', 'cup| 2'],
    ['|cup', 'left', '|cup'],
    ['cup|', 'right', 'cup|'],
    ['a cup| 2', 'home', '|a cup 2'],
    ['a cup| 2', 'ctrl-a', '|a cup 2'],
    ['a cup| 2', 'end', 'a cup 2|'],
    ['a cup| 2', 'ctrl-e', 'a cup 2|'],
    ['a cup| 2', 'ctrl-b ctrl-b ctrl-f', 'a cu|p 2'],
    ['a cup 2|', 'ctrl-left', 'a cup |2'],
    ['a cup 2|', 'ctrl-left ctrl-left', 'a |cup 2'],
    ['a cup 2|', 'alt-b alt-b alt-b alt-b', '|a cup 2'],
    ['|a cup 2', 'ctrl-right ctrl-right', 'a cup| 2'],
    ['|a cup 2', 'alt-f', 'a| cup 2'],
    ['cup|', 'backspace', 'cu|'],
    ['|cup', 'backspace', '|cup'],
    ['|cup', 'delete', '|up'],
    ['cup|', 'ctrl-d', 'cup|'],
    ['in cup 2|', 'ctrl-w', 'in cup |'],
    ['in cup |2', 'ctrl-w', 'in |2'],
    ['in| cup 2', 'alt-d', 'in| 2'],
    ['in cup| 2', 'ctrl-u', '| 2'],
    ['in cup| 2', 'ctrl-k', 'in cup|'],
    ['in cup 2|', 'ctrl-u ctrl-z', 'in cup 2|'],
    ['|', 'a b ctrl-z', 'a|'],
    ['|', 'a b ctrl-z ctrl-z ctrl-z', '|'],
    ['a|', 'left ctrl-k ctrl-z', '|a'],
    // By what a reader takes for one character.
    ['Ø12 é|', 'backspace', 'Ø12 |'],
    ['👩‍🔧|', 'backspace', '|'],
    ['🇩🇪🇫🇷|', 'left', '🇩🇪|🇫🇷'],
  ])('%s after %s is %s', (from, presses, to) => {
    expect(shown(press(given(from), presses))).toBe(to);
  });

  it('joins an accent typed behind its letter', () => {
    const f = press(field('cafe'), '\u0301');
    expect(f.text).toHaveLength(4);
    expect(shown(press(f, 'backspace'))).toBe('caf|');
  });

  it('does not take keys that are no text', () => {
    for (const p of ['up', 'down', 'tab', 'escape', 'enter', 'ctrl-x', 'alt-z', 'pageup']) {
      expect(pressField(field('x'), p)).toBeNull();
    }
  });
});

describe('a paste', () => {
  it('is one step, and its lines become one', () => {
    const f = pasteField(field('in: '), 'cup\n\n2\tleft');
    expect(shown(f)).toBe('in: cup 2 left|');
    expect(shown(press(f, 'ctrl-z'))).toBe('in: |');
  });

  it('loses its control characters', () => {
    expect(fieldText(pasteField(field(), 'a\x1b[31mb\x07\u2028c'))).toBe('a[31mbc');
  });

  it('is taken whole, or not at all and with its length told', () => {
    const long = 'word '.repeat(4000);
    expect(fieldText(pasteField(field(), long))).toBe(long);
    expect(tooLong(field(), long)).toBeNull();
    const f = field('a');
    expect(pasteField(f, long)).toBe(f);
    expect(tooLong(f, long)).toBe(
      'That has 20000 characters, and there is room for 19999: none of it was taken.',
    );
    expect(tooLong(f, 'x'.repeat(1_000_000))).toContain('That has 1000000 characters');
  });
});

describe('the part that is shown', () => {
  it('keeps the cursor in sight, whatever is in the text', () => {
    const text = fc.string({
      unit: fc.constantFrom('a', ' ', '字', '👩‍🔧', '\u202e', 'é'),
      maxLength: 60,
    });
    fc.assert(
      fc.property(text, fc.nat(60), fc.integer({ min: 4, max: 40 }), (t, at, columns) => {
        const whole = field(t);
        const f = { ...whole, cursor: Math.min(at, whole.text.length) };
        const { line, column } = drawField(f, columns);
        expect(column).toBeGreaterThanOrEqual(0);
        expect(width(line)).toBeLessThanOrEqual(Math.max(columns, 8));
        expect(column).toBeLessThanOrEqual(width(line));
      }),
    );
  });
});
