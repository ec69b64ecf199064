import { PassThrough } from 'node:stream';
import { render, renderToString } from 'ink';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../../src/screens/show/picture.ts';
import { update } from '../../../src/screens/show/update.ts';
import { App } from '../../../src/screens/terminal/app.tsx';
import { everyScreen } from '../every-screen.ts';

const SCREENS = everyScreen({ colour: true });

const trimmed = (text: string) =>
  text
    .split('\n')
    .map((l) => l.replace(/[ \x1b[\dm;]+$/, ''))
    .join('\n');

describe('what Ink draws', () => {
  it.each(SCREENS.map((s) => [s.name, s.state] as const))(
    '%s is the picture, row by row',
    (_name, state) => {
      const drawn = renderToString(<App state={{ ...state, colour: false }} />, { columns: 80 });
      expect(trimmed(drawn)).toBe(trimmed(rowsOf({ ...state, colour: false }).join('\n')));
      expect(drawn.split('\n')).toHaveLength(24);
    },
  );

  it('keeps its colours', () => {
    const state = SCREENS.find((s) => s.name === 'stop')?.state;
    if (!state) throw new Error('no such screen');
    const drawn = renderToString(<App state={state} />, { columns: 80 });
    expect(drawn).toMatch(/\x1b\[[\d;]*31m[^\x1b]*STOP/);
  });

  it.each([
    [60, 16],
    [120, 40],
    [20, 5],
    [3, 2],
  ])('fills %i by %i and no more', (columns, rows) => {
    for (const { state } of SCREENS) {
      const sized = update(state, { on: 'size', columns, rows }).state;
      const lines = renderToString(<App state={sized} />, { columns }).split('\n');
      expect(lines).toHaveLength(rows);
      for (const l of lines) expect(stringWidth(l)).toBeLessThanOrEqual(columns);
    }
  });

  it('puts the terminal’s cursor where one types', async () => {
    const state = SCREENS.find((s) => s.name === 'tray')?.state;
    if (!state) throw new Error('no such screen');
    const stdout = Object.assign(new PassThrough(), { columns: 80, rows: 24, isTTY: true });
    let sent = '';
    stdout.on('data', (chunk: Buffer) => {
      sent += chunk.toString();
    });
    const app = render(<App state={state} />, {
      stdout: stdout as unknown as NodeJS.WriteStream,
      interactive: true,
      alternateScreen: true,
      patchConsole: false,
    });
    await app.waitUntilRenderFlush();
    const shown = sent.lastIndexOf('\x1b[?25h');
    expect(shown).toBeGreaterThan(-1);
    // `> cup 2` is the seventh row; the cursor stands behind it, in column 8 as a terminal counts.
    expect(sent.slice(0, shown)).toMatch(/\x1b\[8G$/);
    app.unmount();
  });
});
