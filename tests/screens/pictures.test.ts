import { describe, expect, it } from 'vitest';
import type { State } from '../../src/screens/base/state.ts';
import { SIGNS } from '../../src/screens/kit/map.ts';
import { width } from '../../src/screens/kit/text.ts';
import { picture, rowsOf } from '../../src/screens/show/picture.ts';
import { update } from '../../src/screens/show/update.ts';
import { everyScreen } from './every-screen.ts';

const SCREENS = everyScreen();
const SIZES = [
  [20, 5],
  [40, 10],
  [59, 16],
  [60, 15],
  [60, 16],
  [80, 24],
  [100, 30],
  [120, 40],
  [250, 80],
  [1, 1],
] as const;
/** What the screens may send to a terminal beside text: weight, inverse, struck, four colours, and their end. */
const OWN = /\x1b\[(?:(?:[179]|3[1256])(?:;(?:[179]|3[1256]))*|0)m/g;

function sized(state: State, [columns, rows]: readonly [number, number]): State {
  return update(state, { on: 'size', columns, rows }).state;
}

/** All pictures of one size as one text, each in a frame that shows where its rows end. */
function album(columns: number, rows: number, look: Partial<State> = {}): string {
  return SCREENS.map(({ name, state }) => {
    const lines = rowsOf({ ...sized(state, [columns, rows]), ...look });
    const body = lines.map((l) => `${l.replaceAll('\x1b', '\\e')}|`).join('\n');
    return `${`== ${name} `.padEnd(columns, '=')}+\n${body}\n`;
  }).join('\n');
}

describe('pictures of every screen', () => {
  it('at 80 by 24', async () => {
    await expect(album(80, 24)).toMatchFileSnapshot('pictures/80x24.txt');
  });

  it('at 120 by 40', async () => {
    await expect(album(120, 40)).toMatchFileSnapshot('pictures/120x40.txt');
  });

  it('at the least size', async () => {
    await expect(album(60, 16)).toMatchFileSnapshot('pictures/60x16.txt');
  });

  it('in colour', async () => {
    await expect(album(80, 24, { colour: true })).toMatchFileSnapshot('pictures/80x24-colour.txt');
  });
});

describe.each(SCREENS.map((s) => [s.name, s.state] as const))('%s', (_name, state) => {
  it.each(SIZES)('fills %i by %i, no more and no less', (columns, rows) => {
    const { lines, cursor } = picture(sized(state, [columns, rows]));
    expect(lines).toHaveLength(rows);
    for (const l of lines) expect(width(l)).toBeLessThanOrEqual(columns);
    if (cursor) {
      expect(cursor.x).toBeLessThan(columns);
      expect(cursor.y).toBeLessThan(rows);
    }
  });

  it('is the same text with and without colour, and without colour has no escape sequence', () => {
    const plain = rowsOf({ ...state, colour: false }).join('\n');
    const coloured = rowsOf({ ...state, colour: true }).join('\n');
    expect(plain).not.toContain('\x1b');
    expect(coloured.replace(OWN, '')).toBe(plain);
  });

  it('is 7-bit where that is asked for, and says the same', () => {
    const plain = rowsOf({ ...state, ascii: false }).join('\n');
    const ascii = rowsOf({ ...state, ascii: true }).join('\n');
    expect(ascii).toMatch(/^[\x20-\x7e\n]*$/);
    expect(ascii.length).toBe(plain.length);
    expect(ascii.replace(/[^a-z]/gi, '')).toContain(plain.replace(/[^a-z]/gi, '').slice(0, 20));
  });
});

describe('without colour', () => {
  it('the states of a hole differ by shape', () => {
    const shapes = Object.values(SIGNS).map((s) => s.join(''));
    expect(new Set(shapes).size).toBe(shapes.length);
  });

  it('no two screens look the same', () => {
    const frames = SCREENS.map((s) => rowsOf(s.state).join('\n'));
    expect(new Set(frames).size).toBe(frames.length);
  });
});

describe('a screen that is too small', () => {
  const { state } = SCREENS.find((s) => s.name === 'on') ?? { state: null };
  if (!state) throw new Error('no such screen');

  it('says so with its size, and the way out', () => {
    expect(rowsOf(sized(state, [59, 24]))[0]).toBe('59x24: too small, 60x16 is enough');
    expect(rowsOf(sized(state, [60, 15]))[0]).toBe('60x15: too small, 60x16 is enough');
  });

  it('marks nothing, and can be left', () => {
    const small = sized(state, [40, 10]);
    const pressed = update(update(small, { on: 'press', press: 's' }).state, {
      on: 'press',
      press: 'space',
    });
    expect(pressed.effects).toEqual([]);
    expect(update(small, { on: 'press', press: 'q' }).effects).toEqual([{ do: 'quit' }]);
    expect(sized(pressed.state, [80, 24])).toEqual(sized(state, [80, 24]));
  });
});
