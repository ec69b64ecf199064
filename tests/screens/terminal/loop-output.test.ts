import headless from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thin } from '../../../src/screens/terminal/loop-output.ts';

/** All cells of a screen with their looks, after these bytes on an untidy one; wide enough for any line, as for Ink. */
async function cells(bytes: string): Promise<string[]> {
  const terminal = new headless.Terminal({ cols: 160, rows: 3, allowProposedApi: true });
  await new Promise<void>((done) => terminal.write(`${'#'.repeat(470)}\x1b[H${bytes}`, done));
  const buffer = terminal.buffer.active;
  const out = [`cursor ${buffer.cursorX} ${buffer.cursorY}`];
  for (let y = 0; y < terminal.rows; y++) {
    for (let x = 0; x < terminal.cols; x++) {
      const cell = buffer.getLine(y)?.getCell(x);
      // A cell that was never written reads as empty, and looks like a blank.
      const char = cell?.getChars() || ' ';
      // The colour and weight of a blank cannot be seen, unless it is inverse.
      const seen = char !== ' ' || cell?.isInverse();
      const look = seen ? `${cell?.getFgColor()} ${cell?.isBold()} ${cell?.isInverse()}` : '';
      out.push(`${char} ${look}`);
    }
  }
  terminal.dispose();
  return out;
}

describe('what is written', () => {
  it('is shorter where blanks follow an erased line, and where colours say nothing', () => {
    expect(thin(`\x1b[1G\x1b[K${' '.repeat(100)}. .`)).toBe('\x1b[1G\x1b[K\x1b[100C. .');
    expect(thin(`${'\x1b[1m\x1b[36m\x1b[39m\x1b[22m'.repeat(9)}x`)).toBe('\x1b[1;39;22mx');
    expect(thin('\x1b[36m\x1b[39m\x1b[32mx'), 'a colour that is never seen').toBe('\x1b[32mx');
    expect(thin(`a${'\x1b[E'.repeat(12)}b\x1b[Ec`), 'lines that stay').toBe('a\x1b[12Eb\x1b[Ec');
    expect(thin('\x1b[K  x')).toBe('\x1b[K  x');
    expect(
      thin(`\x1b[Ka${' '.repeat(50)}b\r\n${' '.repeat(50)}c`),
      'not where nothing was erased',
    ).toBe(`\x1b[Ka\x1b[50Cb\r\n${' '.repeat(50)}c`);
    expect(thin(`\x1b[K\x1b[36m[1]\x1b[39m   \x1b[36m[2]\x1b[39m`)).toBe(
      '\x1b[K\x1b[36m[1]   [2]\x1b[39m',
    );
    expect(thin(`\x1b[K\x1b[36m[1]\x1b[39m   \x1b[32m{2}\x1b[39m x`)).toBe(
      '\x1b[K\x1b[36m[1]   \x1b[32m{2}\x1b[39m x',
    );
    expect(
      thin('\x1b[36ma\x1b[39mb\r\n\x1b[K\x1b[36m\x1b[39mc'),
      'a colour that is set already',
    ).toBe('\x1b[36ma\x1b[39mb\r\n\x1b[Kc');
    const marked = '\x1b[K\x1b[7m\x1b[36m[1]\x1b[39m   \x1b[32m{2}\x1b[27m';
    expect(thin(marked).length, 'blanks between that are seen').toBe(marked.length - 2);
    const inverse = `\x1b[K\x1b[7m${' '.repeat(50)}\x1b[27m`;
    expect(thin(inverse), 'blanks that are seen').toBe(inverse);
  });

  it('shows the same, cell by cell and look by look', async () => {
    // Ink erases a line before it sets a look on it, and closes what it set.
    const part = fc.oneof(
      fc.constantFrom(
        '\x1b[0m\x1b[K',
        '\x1b[0m\x1b[1G\x1b[K',
        '\x1b[0m\r\n',
        '\x1b[0m\x1b[E',
        '\x1b[7m',
        '\x1b[27m',
      ),
      fc.constantFrom(
        '\x1b[36m',
        '\x1b[31m',
        '\x1b[39m',
        '\x1b[1m',
        '\x1b[22m',
        '\x1b[1;7;36m',
        ' '.repeat(9),
      ),
      fc.constantFrom('a', 'bc', ' ', '·'),
    );
    const line = fc
      .tuple(fc.array(part, { maxLength: 8 }), fc.integer({ min: 1, max: 2 }))
      .map(([parts, times]) => `${parts.join('').repeat(times)}\x1b[0m`);
    await fc.assert(
      fc.asyncProperty(fc.array(line, { maxLength: 4 }), async (lines) => {
        const text = lines.join('\x1b[1G\x1b[K');
        expect(await cells(thin(text))).toEqual(await cells(text));
      }),
      { numRuns: 200 },
    );
  });
});
