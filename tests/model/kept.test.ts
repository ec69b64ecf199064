import { describe, expect, it } from 'vitest';
import { kept } from '../../src/model/kept.ts';

describe('an answer that is kept with what it is about', () => {
  it('is worked out once, for each thing and each question', () => {
    const asked: string[] = [];
    const ask = (about: object, question: string) =>
      kept(about, question, () => {
        asked.push(question);
        return asked.length;
      });
    const [one, other] = [{}, {}];
    expect([ask(one, 'a'), ask(one, 'a'), ask(one, 'b'), ask(other, 'a')]).toEqual([1, 1, 2, 3]);
    expect([ask(one, 'b'), ask(other, 'a')]).toEqual([2, 3]);
  });

  it('is kept when it is nothing, too', () => {
    const job = {};
    expect(kept(job, 'next', () => null)).toBe(null);
    expect(kept<string | null>(job, 'next', () => 'again')).toBe(null);
  });

  it('is worked out anew when what else it hangs on is another', () => {
    const job = {};
    const at = (now: string) => kept(job, 'due', () => `due at ${now}`, now);
    expect([at('8:00'), at('9:00'), at('8:00')]).toEqual([
      'due at 8:00',
      'due at 9:00',
      'due at 8:00',
    ]);
  });
});
