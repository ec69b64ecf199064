import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALL_NAMES, oneOf } from '../../src/model/one-of.ts';
import '../../src/bolt/torque/smeared.ts';
import '../../src/bolt/torque/solid.ts';
import '../../src/piece/care.ts';
import '../../src/plan/care/care.ts';
import '../../src/plan/tests/sorts.ts';
import { runs } from '../runs.ts';

/** `a|b(?:c|d)|e` at its outer strokes. */
function alternatives(source: string): string[] {
  let depth = 0;
  const all = [''];
  for (const sign of source) {
    if (sign === '(' || sign === '[') depth++;
    if (sign === ')' || sign === ']') depth--;
    if (sign === '|' && depth === 0) all.push('');
    else all.push(all.pop() + sign);
  }
  return all;
}

/** What each name begins with, groups looked into: the first signs of the pattern. */
function beginnings(source: string): string[] {
  return alternatives(source).flatMap((name) => {
    const group = /^\(\?:((?:[^()]|\([^()]*\))*)\)(\??)(.*)$/.exec(name);
    if (!group) return [name.replaceAll('(?:', '(').slice(0, 4)];
    const [, inside = '', maybe, behind = ''] = group;
    return [...beginnings(inside), ...(maybe ? beginnings(behind) : [])];
  });
}

describe('names looked for in a text', () => {
  it('begin so that a text without any such beginning need not be held against them', () => {
    expect(ALL_NAMES.length).toBeGreaterThan(20);
    for (const begin of ALL_NAMES.flatMap(beginnings)) {
      // Three letters that stand, fewer before a blank or a dash, or no letter: `\\d{3} ?v`.
      expect(begin).toMatch(/^(?:[a-z]{3}(?![?*{])|[a-z]{1,2}(?: |\[- )|[^a-z(])/);
    }
  });

  it.each(ALL_NAMES.map((names) => [names]))('%s: as the pattern alone would', (names) => {
    const words = names.match(/[a-z]+/g) ?? [];
    const word = fc.oneof(fc.constantFrom(...words, 'cover', 'x', '230 v', 'K', '_'), fc.string());
    const joins = fc.constantFrom(' ', '-', '', ', ', 's ', '. ');
    const texts = fc
      .array(fc.tuple(word, joins), { maxLength: 5 })
      .map((parts) => parts.flat().join(''));
    for (const [flags, end] of [
      ['', '\\b'],
      ['i', '\\b'],
      ['i', '$'],
    ] as const) {
      const ours = oneOf(names, flags, end);
      const pattern = new RegExp(`\\b(?:${names})${end}`, flags);
      fc.assert(
        fc.property(texts, fc.boolean(), (text, loud) => {
          const said = loud && flags === 'i' ? text.toUpperCase() : text;
          expect(ours.test(said)).toBe(pattern.test(said));
        }),
        { numRuns: runs(60) },
      );
    }
  });
});
