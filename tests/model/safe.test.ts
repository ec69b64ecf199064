import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHOWN, safe, safeLine } from '../../src/model/safe.ts';

describe('text from files is shown as it is and obeyed by nobody', () => {
  it.each([
    ['a colour', '\x1b[31mred', '\\x1b[31mred'],
    ['a title', '\x1b]0;x\x07', '\\x1b]0;x\\x07'],
    [
      'a link',
      '\x1b]8;;http://a\x1b\\b\x1b]8;;\x1b\\',
      '\\x1b]8;;http://a\\x1b\\b\\x1b]8;;\\x1b\\',
    ],
    ['a C1 control', 'a\u009b2Jb', 'a\\x9b2Jb'],
    ['a return', 'good\rbad', 'good\\x0dbad'],
    ['a turned text', 'a\u202edcb', 'a\\u202edcb'],
    ['an isolate', '\u2066a\u2069', '\\u2066a\\u2069'],
    ['nothing wide', 'a\u200bb\ufeffc', 'a\\u200bb\\ufeffc'],
    ['hidden letters', 'a\u{e0041}', 'a\\u{e0041}'],
    ['a filler', 'a\u3164', 'a\\u3164'],
    ['half a character', 'a\ud800', 'a\\ud800'],
    ['NUL and delete', '\x00\x7f', '\\x00\\x7f'],
  ])('%s', (_what, text, shown) => {
    expect(safe(text)).toBe(shown);
    expect(safeLine(text)).toBe(shown);
  });

  it('is told without the table of all letters only where none is hidden', () => {
    for (let code = 0; code <= 0xffff; code++) {
      const sign = String.fromCharCode(code);
      if (SHOWN.test(sign)) expect(safe(`${sign}\u200b`)).toBe(`${sign}\\u200b`);
    }
  });

  it('leaves what people write', () => {
    const text = '10 N·m — Größe 8.8, 漢字, مكابح, é, 👍🏽, "quoted" \\n';
    expect(safe(text)).toBe(text);
  });

  it('leaves the marks that a letter can have, and counts what is piled up on it', () => {
    const most = `a${'\u0301'.repeat(30)}`;
    expect(safe(`${most}b`)).toBe(`${most}b`);
    expect(safe(`${most}${'\u0301'.repeat(999_970)}b`)).toBe(`${most}(+999970 marks)b`);
    expect(safe(`${most}\u{1d165}\u{1d165}`)).toBe(`${most}(+2 marks)`);
  });

  it('keeps lines apart, or makes one of them', () => {
    expect(safe('a\r\nb\nc\td')).toBe('a\nb\nc d');
    expect(safeLine('a\r\n\r\nb\nc\t\td')).toBe('a b c d');
  });

  it('lets no control through, whatever comes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(safe(text).replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
        expect(safeLine(text)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
        expect(safe(safe(text))).toBe(safe(text));
      }),
    );
  });
});
