import { describe, expect, it } from 'vitest';
import { Bench } from '../bench.ts';

const NEW = 'putback: 1\njob: Side cover weeps\ndiary:\n';
const map = '.  1  .\n4  .  2\n.  3  .';

describe('a piece that is drawn before the file knows it', () => {
  it('is written with its picture, and is said to be new', () => {
    const bench = new Bench(NEW);
    const wish = { do: 'write', piece: 'side-cover', key: 'map', text: map } as const;
    expect(bench.warnings(wish)).toEqual(['new-piece']);
    bench.mark(wish);
    expect(bench.text).toBe(
      NEW.replace(
        'diary:',
        `pieces:\n  side-cover:\n    map: |\n      ${map.replaceAll('\n', '\n      ')}\ndiary:`,
      ),
    );
    expect(bench.piece('side-cover').holes.map((h) => h.name)).toEqual(['1', '2', '3', '4']);
  });

  it('is not made by another text, nor under what is no name', () => {
    const bench = new Bench(NEW);
    const wish = { do: 'write', piece: 'side-cover', key: 'into', text: 'cast iron' } as const;
    expect(bench.warnings(wish)).toEqual(['no-such-piece']);
    const odd = { do: 'write', piece: 'Side cover', key: 'map', text: map } as const;
    expect(bench.warnings(odd)).toEqual(['no-such-piece']);
  });
});
