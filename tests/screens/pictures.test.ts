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

/** Pictures of one size as one text, each in a frame that shows where its rows end. */
function album(screens: typeof SCREENS, size: readonly [number, number], look: Partial<State>) {
  const pictures = screens.map(({ name, state }) => {
    const lines = rowsOf({ ...sized(state, size), ...look });
    const body = lines.map((l) => `${l.replaceAll('\x1b', '\\e')}|`).join('\n');
    return `${`== ${name} `.padEnd(size[0], '=')}+\n${body}\n`;
  });
  return pictures.join('\n');
}

/** What stands side by side, row by row: columns, a map, a figure at the edge; how wide the gaps are left out. */
function sideBySide(state: State, size: readonly [number, number]): string {
  const rows = rowsOf(sized(state, size)).map((row) => row.trim());
  return rows
    .filter((row) => /\S {2,}\S/.test(row))
    .map((row) => row.replace(/ {2,}/g, '  '))
    .join('\n');
}

/**
 * Of each place the first screen on which, at this size, something else stands side by side than at 80 by 24. All
 * others are the same text, wrapped to another width or scrolled: what is below looks at those, at every size.
 */
function laidOtherwise(size: readonly [number, number]): typeof SCREENS {
  const seen = new Set<string>();
  return SCREENS.filter(({ place, state }) => {
    if (seen.has(place)) return false;
    if (sideBySide(state, size) === sideBySide(state, [80, 24])) return false;
    seen.add(place);
    return true;
  });
}

describe('pictures', () => {
  it('of every screen at 80 by 24, in colour', async () => {
    const whole = album(SCREENS, [80, 24], { colour: true });
    await expect(whole).toMatchFileSnapshot('pictures/80x24.txt');
  });

  it.each([
    [120, 40],
    [60, 16],
  ] as const)('of those that are laid out otherwise at %i by %i', async (...size) => {
    const some = album(laidOtherwise(size), size, {});
    await expect(some).toMatchFileSnapshot(`pictures/${size.join('x')}.txt`);
  });
});

/** Words and figures of the page; what is under it says which keys there are. */
const wordsOf = (rows: readonly string[]) =>
  new Set(
    rows
      .slice(0, -1)
      .join(' ')
      .match(/[\p{L}\p{N}]+/gu),
  );
/** How a screen says that there is more of it than is shown. */
const MORE =
  /\((\d+ above, )?\d+ (above|below)(: PageDown)?\)|\(\d+ lines? more\)|page \d+ of \d+|^ *\d+ of \d+$|\.\./m;

describe('at any size', () => {
  it('what is not to be seen of a screen is said to be there', () => {
    const cut = SCREENS.flatMap(({ name, state }) => {
      const all = wordsOf(rowsOf(sized(state, [250, 80])));
      return SIZES.filter(([columns, rows]) => columns >= 60 && rows >= 16).flatMap((size) => {
        const rows = rowsOf(sized(state, size));
        const here = wordsOf(rows);
        const lost = [...all].filter((word) => !here.has(word));
        return lost.length === 0 || MORE.test(rows.join('\n'))
          ? []
          : [`${name} at ${size.join(' by ')}`];
      });
    });
    expect(cut).toEqual([]);
  });

  it('the last row says which keys there are', () => {
    for (const { name, state } of SCREENS) {
      for (const size of SIZES.filter(([columns, rows]) => columns >= 60 && rows >= 16)) {
        expect(rowsOf(sized(state, size)).at(-1)?.trim(), `${name} at ${size}`).not.toBe('');
      }
    }
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
    const said = (columns: number, rows: number) =>
      rowsOf(sized(state, [columns, rows])).filter((row) => row !== '');
    const enough = 'too small, 60x16 is enough. --lines needs no room.';
    expect(said(59, 24)).toEqual([`59x24: ${enough}`]);
    expect(said(60, 15)).toEqual([`60x15: ${enough}`]);
    expect(said(20, 5)).toEqual([
      '20x5: too small,',
      '60x16 is enough.',
      '--lines needs no',
      'room.',
    ]);
    expect(said(20, 2)).toEqual(['20x2: too small,', '60x16 is enough. -..']);
  });

  it('marks nothing, and can be left', () => {
    const small = sized(state, [40, 10]);
    const pressed = update(update(small, { on: 'press', press: 's' }).state, {
      on: 'press',
      press: 'space',
    });
    expect(pressed.effects).toEqual([]);
    expect(update(small, { on: 'press', press: 'q' }).effects).toEqual([{ do: 'quit' }]);
    expect(sized({ ...pressed.state, last: null }, [80, 24])).toEqual(
      sized({ ...state, last: null }, [80, 24]),
    );
  });
});
