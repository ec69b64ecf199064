import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedOf, heldBy, notAsked, tokensOf } from '../../src/find/words.ts';

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
    ['1/2', 'a ½ turn', 2],
    ['strasse', 'Straße', 2],
    ['STRAẞE', 'strasse', 2],
    ['weiß', 'WEISS', 2],
    ['skjot', 'skjøt', 2],
    ['aero', 'ÆRØ', 2],
    ['lodz', 'Łódź', 2],
    ['istanbul', 'İstanbul', 2],
    ['ΑΛΛΟΣ', 'άλλος', 2],
    ['m6x25', 'M6×25', 2],
    ['ёж', 'ЕЖ', 2],
    ['部品', '交換部品を注文', 1],
    ['交換部品', '交換部品', 2],
    ['カス', 'ガスケット', 0],
    ['ｶﾞｽ', 'ガスケット', 1],
    ['부품', '교체부품', 1],
    ['ซีล', 'เปลี่ยนซีลยาง', 1],
    ['हिंदी', 'हाद', 0],
    ['🔧', 'note: "🔧 8 mm"', 2],
    ['⚠', 'caution ⚠️ hot', 2],
    ['👍', 'fits 👍🏽', 2],
    ['€', '14 €', 2],
    ['90°', '20 N·m + 90°', 2],
  ])('%s in %s: %i', (word, text, how) => {
    expect(held(word, text) > 0).toBe(how > 0);
    if (how === 2) expect(held(word, text)).toBe(2);
  });

  it('a text of one long word, letters and figures, is found by its beginning alone', () => {
    const long = `a1${'b2'.repeat(200_000)}`;
    expect([held('a1b2b', long), held('2b2b', long)]).toEqual([1, 0]);
  });

  it('a sign alone asks for nothing', () => {
    expect(askedOf(['-', '…', '·'])).toEqual([]);
    expect(notAsked(['-', 'stuck …', '', '🔧'])).toEqual(['-', '…']);
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
