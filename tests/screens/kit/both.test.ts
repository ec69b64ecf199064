import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { both, bothSaid, flow, hangingBoth } from '../../../src/screens/kit/both.ts';
import { paint } from '../../../src/screens/kit/paint.ts';
import { bold, line, span, width } from '../../../src/screens/kit/text.ts';

const plain = { colour: false, ascii: false };
const coloured = { colour: true, ascii: false };
const TRUE = '8 N·m, bulletin 12';
const PRINTED = '10 N·m, manual 2-17';

describe('what is true and what is printed', () => {
  it('stand side by side in words, the true one first', () => {
    expect(bothSaid(TRUE, PRINTED)).toBe(
      '8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.',
    );
  });

  it('are two sentences where each has its own full stop', () => {
    expect(bothSaid('Fuel tap shut first.', 'Pull the hose.')).toBe(
      'Fuel tap shut first. Not "Pull the hose", as printed.',
    );
  });

  it('are the text alone where nothing was corrected', () => {
    expect(bothSaid(PRINTED, null)).toBe(PRINTED);
  });

  it('are bold and struck (SGR 1 and 9 of ECMA-48) where that may be shown, and plain elsewhere', () => {
    expect(paint(both(TRUE, PRINTED), coloured)).toBe(
      '\x1b[1m8 N·m, bulletin 12.\x1b[0m Not \x1b[9m10 N·m, manual 2-17\x1b[0m, as printed.',
    );
    expect(paint(both(TRUE, PRINTED), plain)).toBe(bothSaid(TRUE, PRINTED));
  });

  it('hang behind a label, and stay struck over the end of a line', () => {
    const lines = hangingBoth(line(bold('Torque  ')), { text: TRUE, printed: PRINTED }, 40);
    expect(lines.map((l) => paint(l, coloured))).toEqual([
      '\x1b[1mTorque  \x1b[0m\x1b[1m8 N·m, bulletin 12.\x1b[0m Not \x1b[9m10 N·m,\x1b[0m',
      '        \x1b[9mmanual 2-17\x1b[0m, as printed.',
    ]);
  });
});

describe('a line that flows', () => {
  const spans = fc.array(
    fc.record({
      text: fc.string({ unit: fc.constantFrom('a', 'b', ' ', '字', '.') }),
      struck: fc.boolean(),
    }),
  );

  it('keeps every word in its style, and no line is wider than the screen', () => {
    fc.assert(
      fc.property(spans, fc.integer({ min: 2, max: 30 }), (parts, columns) => {
        const what = parts.map((p) => span(p.text, p.struck ? { struck: true } : {}));
        const lines = flow(what, columns);
        for (const l of lines) expect(width(l)).toBeLessThanOrEqual(columns);
        const signs = (ls: typeof lines) =>
          ls
            .flat()
            .flatMap((s) => [...s.text].map((c) => [c, s.struck === true] as const))
            .filter(([c]) => c !== ' ');
        expect(signs(lines)).toEqual(signs([what]));
      }),
    );
  });

  it('breaks only between words that fit on a line', () => {
    expect(flow(line('one two three'), 7).map((l) => l.map((s) => s.text).join(''))).toEqual([
      'one two',
      'three',
    ]);
  });
});
