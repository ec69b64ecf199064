import { describe, expect, it } from 'vitest';
import { pattern } from '../../src/model/pattern.ts';

describe('a pattern that is made when it is first held against a text', () => {
  it('is not made before, and once', () => {
    let made = 0;
    const lazy = pattern(() => {
      made++;
      return '^(a+)b$';
    }, 'i');
    expect(made).toBe(0);
    expect(lazy.test('AAb')).toBe(true);
    expect(lazy.exec('aab')?.[1]).toBe('aa');
    expect(lazy.test('c')).toBe(false);
    expect(made).toBe(1);
  });

  it('keeps the flags of a pattern that it is given', () => {
    expect('a1b2'.replace(pattern(() => /\d/g).made, '')).toBe('ab');
    expect(pattern(() => /^\p{L}$/u).test('é')).toBe(true);
  });
});
