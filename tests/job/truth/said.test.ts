import { describe, expect, it } from 'vitest';
import {
  cutAtPrinted,
  inWords,
  listed,
  type Words,
  withoutPrinted,
} from '../../../src/job/truth/said.ts';
import { list } from '../../../src/model/words.ts';

const TRUE = { text: '8 N·m, bulletin 12.', printed: '10 N·m, manual 2-17.' };
const AT = new Set([TRUE]);
const WORDS: Words = ['Cover: tighten, full, ', TRUE, '.'];

describe('a sentence in its parts', () => {
  it('is said in words, without full stops in the middle', () => {
    expect(inWords(WORDS)).toBe(
      'Cover: tighten, full, 8 N·m, bulletin 12 (not 10 N·m, manual 2-17, as printed).',
    );
    expect(inWords(['Tighten ', { text: 'to 8 N·m.', printed: null }])).toBe('Tighten to 8 N·m.');
    // Dots that say that it goes on stay.
    expect(inWords([{ text: 'oil...', printed: 'none...' }])).toBe(
      'oil... (not none..., as printed)',
    );
  });

  it('strikes what is printed and nothing else', () => {
    const struck = cutAtPrinted(WORDS).filter((part) => part.struck);
    expect(struck.map((part) => part.text)).toEqual(['10 N·m, manual 2-17']);
  });

  it('somebody who writes of print himself is not struck', () => {
    const own = 'Torque of the sheet (not 10 N·m, manual 2-17, as printed)';
    const parts = cutAtPrinted([`${own}: `, TRUE]);
    expect(parts[0]).toEqual({ text: `${own}: `, struck: false });
    expect(inWords(withoutPrinted([`${own}: `, TRUE], AT))).toBe(`${own}: 8 N·m, bulletin 12`);
  });

  it('leaves out only how the texts are printed that are shown beside it', () => {
    const other = { text: '9 N·m', printed: TRUE.printed };
    expect(inWords(withoutPrinted([TRUE, ', then ', other], AT))).toBe(
      '8 N·m, bulletin 12, then 9 N·m (not 10 N·m, manual 2-17, as printed)',
    );
  });

  it.each([[[]], [['a']], [['a', 'b']], [['a', 'b', 'c']]])(
    '%j is listed as words are',
    (words) => {
      expect(inWords(listed(words))).toBe(list(words));
    },
  );
});
