import { expect, it } from 'vitest';
import { split } from '../../../src/screens/kit/text.ts';

it('a sign that is read for itself joins with none of its like, in all tables of Unicode', () => {
  const segments = new Intl.Segmenter('en');
  const odd: string[] = [];
  /** Han, Hangul and what is read in graphemes anyway are large tables of letters that are alike: of those some. */
  const isAlike = (code: number) =>
    (code >= 0x3400 && code <= 0xd7a3) || (code >= 0x10000 && code < 0x1f000) || code >= 0x20000;
  for (let code = 0x20; code < 0xe0000; code += isAlike(code) ? 61 : 1) {
    const c = String.fromCodePoint(code);
    if (!/^[\p{L}\p{N}\p{P}\p{S}\p{Zs}]$/u.test(c)) continue;
    const between = `a${c}${c}한${c}漢${c}👩${c}`;
    const signs = split(between);
    const all = Array.from(segments.segment(between), (s) => s.segment);
    if (signs.join('\n') !== all.join('\n')) odd.push(code.toString(16));
  }
  expect(odd).toEqual([]);
});

it('a text is read in parts as it is read whole, wherever a part of it ends', () => {
  const segments = new Intl.Segmenter('en');
  const some = ['🇩🇪', '👩🏽', 'e\u0301', 'க்ஷி', '각', '\u0301'.repeat(700), 'a', '漢', '\u0600x'];
  for (const sign of some) {
    for (let before = 0; before < 6; before++) {
      const text = `${'x\u0301'.repeat(508)}${'y'.repeat(before)}${sign.repeat(400)}z`;
      const all = Array.from(segments.segment(text), (s) => s.segment);
      expect(split(text).join('\n') === all.join('\n'), `${before} before ${sign}`).toBe(true);
    }
  }
});
