import headless from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepsCells } from '../../../src/screens/terminal/loop-cells.ts';
import { thin } from '../../../src/screens/terminal/loop-output.ts';

const COLUMNS = 40;
const ROWS = 4;

/** A terminal of which one sees all cells with their looks. */
function screen() {
  const terminal = new headless.Terminal({ cols: COLUMNS, rows: ROWS, allowProposedApi: true });
  return {
    write: (bytes: string) => new Promise<void>((done) => terminal.write(bytes, done)),
    cells() {
      const buffer = terminal.buffer.active;
      const out = [`row ${buffer.cursorY}`];
      for (let y = 0; y < ROWS; y++) {
        for (let x = 0; x < COLUMNS; x++) {
          const cell = buffer.getLine(y)?.getCell(x);
          const char = cell?.getChars() || ' ';
          const on = `${cell?.isInverse()} ${cell?.isUnderline()} ${cell?.isStrikethrough()}`;
          const look =
            char === ' ' ? '' : `${cell?.getFgColor()} ${cell?.isBold()} ${cell?.isDim()}`;
          out.push(`${char} ${on} ${look}`);
        }
      }
      return out;
    },
  };
}

/** Ink's frames: each from the last row back to the first, then row by row, from the first change of a row to its end. */
function frames(all: readonly (readonly string[][])[]): string[] {
  const texts = all.map((rows) => rows.map((row) => row.join('')));
  return texts.map((rows, i) => {
    const body = rows.map((row, y) => {
      const before = texts[i - 1]?.[y];
      if (before === row) return null;
      // Ink goes on from the last cell that is plain on both sides; a test may take the first column as well.
      let same = 0;
      while (before !== undefined && row[same] === before[same] && /^[a-z ]$/.test(row[same] ?? ''))
        same++;
      return `\x1b[${same + 1}G\x1b[K${row.slice(same)}`;
    });
    const lines = body.map((row, y) =>
      y === ROWS - 1 ? (row ?? '') : row === null ? '\x1b[E' : `${row}\n`,
    );
    return `\x1b[?2026h\x1b[${ROWS - 1}A${lines.join('')}\x1b[${ROWS - 1}A\x1b[${ROWS - 1}E\x1b[?2026l`;
  });
}

const part = fc.oneof(
  fc.constantFrom('a', 'bc', 'defghijklm', ' ', '   ', '            ', '[1]'),
  fc.constantFrom(
    '\x1b[36m[2]\x1b[39m',
    '\x1b[1mw\x1b[22m',
    '\x1b[7m x \x1b[27m',
    '\x1b[9mnot\x1b[29m',
  ),
  fc.constantFrom(
    '\x1b[1;7;32m<3>\x1b[0m',
    '\x1b[2mf\x1b[22m',
    '\x1b[4m u \x1b[24m',
    '漢',
    '👩',
    '·',
    'é',
  ),
);
const row = fc.array(part, { maxLength: 4 });
const frame = fc.array(row, { minLength: ROWS, maxLength: ROWS });

describe('a row of which a little changes', () => {
  it('shows the same, frame after frame, cell by cell and look by look', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(frame, { minLength: 2, maxLength: 6 }), async (all) => {
        const [whole, less, thinner] = [screen(), screen(), screen()];
        const [keeps, again] = [keepsCells(), keepsCells()];
        for (const one of [whole, less, thinner]) await one.write(`${'#'.repeat(150)}\x1b[4;1H`);
        for (const text of frames(all)) {
          await whole.write(text);
          await less.write(keeps(text, COLUMNS));
          await thinner.write(thin(again(text, COLUMNS)));
          expect(less.cells()).toEqual(whole.cells());
          expect(thinner.cells()).toEqual(whole.cells());
        }
      }),
      { numRuns: 100 },
    );
  });

  it('is written where it changes, and no further', () => {
    const keeps = keepsCells();
    const holes = (at: number) =>
      Array.from({ length: 9 }, (_, i) => (i === at ? '\x1b[7m<1>\x1b[27m' : '[1]')).join('  ');
    const first = `\x1b[3A\x1b[1G\x1b[K${holes(0)}\r\n`;
    expect(keeps(first, 80)).toBe(first);
    expect(keeps(`\x1b[1A\x1b[1G\x1b[K${holes(1)}\r\n`, 80)).toBe(
      '\x1b[1A\x1b[1G[1]  \x1b[7m<1>\x1b[27m\r\n',
    );
    expect(keeps(`\x1b[1A\x1b[21G\x1b[K${holes(1).slice(29)}\r\n`, 80), 'nothing').toBe(
      '\x1b[1A\r\n',
    );
  });

  it('is written whole where somebody cleared the screen, or its size is another', () => {
    const keeps = keepsCells();
    const text = '\x1b[1A\x1b[1G\x1b[Kabc\r\n';
    keeps(text, 80);
    expect(keeps(text, 80)).toBe('\x1b[1A\r\n');
    expect(keeps(text, 81)).toBe(text);
    expect(keeps(text, 81)).toBe('\x1b[1A\r\n');
    for (const clears of ['\x1b[2J', '\x1b[H', '\x1b[?1049h', 'a text']) {
      expect(keeps(clears, 81)).toBe(clears);
      expect(keeps(text, 81), clears).toBe(text);
    }
  });
});
