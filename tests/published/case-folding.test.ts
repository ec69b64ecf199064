import { describe, expect, it } from 'vitest';
import { tokensOf } from '../../src/find/words.ts';
import { FOLDED } from './case-folding-rows.ts';

const text = (hex: string) =>
  String.fromCodePoint(...hex.split('+').map((h) => Number.parseInt(h, 16)));

describe('words without case', () => {
  const rows = FOLDED.flatMap((line) => line.split(' ')).map((row) => row.split('=').map(text));

  it('each character is found as what Unicode folds it to, and the other way round', () => {
    expect(rows).toHaveLength(1530);
    // The iota that is written under a Greek letter goes as accents do.
    const under = (one: string) => one.normalize('NFD').includes('\u0345');
    for (const [one = '', other = ''] of rows) {
      if (under(one)) continue;
      expect(tokensOf(`${one}a1`), one).toEqual(tokensOf(`${other}a1`));
    }
  });
});
