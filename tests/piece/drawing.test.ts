import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  canStand,
  type Drawing,
  type DrawnSpot,
  drawingOf,
  drawnText,
  FIELD,
  lift,
  MOST,
  NOTHING_DRAWN,
  nextDrawn,
  put,
  walkHoles,
} from '../../src/piece/drawing.ts';
import { readMap } from '../../src/piece/map.ts';

const STEPS: Record<string, DrawnSpot> = {
  l: { column: -1, row: 0 },
  r: { column: 1, row: 0 },
  u: { column: 0, row: -1 },
  d: { column: 0, row: 1 },
};

/** A walk: `r` and the like are steps, `.` puts the next number where none is, `<` lifts. */
function walked(keys: string, from: Drawing = NOTHING_DRAWN): Drawing {
  return [...keys].reduce((now, key) => {
    if (key === '<') return lift(now)?.drawing ?? now;
    const step = STEPS[key];
    if (step) return walkHoles(now, step) ?? now;
    const there = now.holes.map((h) => h.name);
    const taken = now.holes.some((h) => h.column === now.mark.column && h.row === now.mark.row);
    return taken ? now : put(now, nextDrawn(there, [], true) ?? '');
  }, from);
}

const walks = fc
  .array(fc.constantFrom('l', 'r', 'u', 'd', 'l', 'r', 'u', 'd', '.', '.', '<'), { maxLength: 200 })
  .map((keys) => keys.join(''));

/** How far each hole lies from the first one named, by name. */
function lie(holes: readonly (DrawnSpot & { name: string })[]): Record<string, [number, number]> {
  const first = holes.find((h) => h.name === '1') ?? holes[0];
  return Object.fromEntries(
    holes.map((h) => [
      h.name,
      [h.column - (first?.column ?? 0), h.row - (first?.row ?? 0)] as [number, number],
    ]),
  );
}

describe('a picture drawn by walking', () => {
  test('is the text one would have written', () => {
    const cover = walked('.rr.rd.d.ld.d.ul.l.l.lu.u.');
    expect(drawnText(cover)).toBe(
      [
        '.  .  1  .  2  .',
        '11 .  .  .  .  3',
        '10 .  .  .  .  4',
        '.  9  8  7  5  .',
        '.  .  .  .  6  .',
      ].join('\n'),
    );
  });

  test('whatever the walk, reads back as the same numbers in the same places', () => {
    fc.assert(
      fc.property(walks, (keys) => {
        const drawn = walked(keys);
        const text = drawnText(drawn);
        fc.pre(drawn.holes.length > 0);
        const { cells, faults } = readMap(text);
        expect(faults).toEqual([]);
        expect(lie(cells)).toEqual(lie(drawn.holes));
      }),
    );
  });

  test('has no empty row or column around it, and words of one width', () => {
    fc.assert(
      fc.property(walks, (keys) => {
        const drawn = walked(keys);
        fc.pre(drawn.holes.length > 0);
        const rows = drawnText(drawn)
          .split('\n')
          .map((l) => l.split(/ +/));
        const columns = rows[0]?.map((_, i) => rows.map((r) => r[i])) ?? [];
        for (const edge of [rows[0], rows.at(-1), columns[0], columns.at(-1)]) {
          expect(edge?.some((word) => word !== '.')).toBe(true);
        }
        const starts = drawnText(drawn)
          .split('\n')
          .map((l) => [...l.matchAll(/\S+/g)].map((m) => m.index).join());
        expect(new Set(starts).size).toBe(1);
      }),
    );
  });

  test('mirrored, gives the mirrored places', () => {
    fc.assert(
      fc.property(walks, (keys) => {
        const other = { l: 'r', r: 'l' } as const;
        const mirror = [...keys].map((k) => other[k as 'l' | 'r'] ?? k).join('');
        const [a, b] = [lie(walked(keys).holes), lie(walked(mirror).holes)];
        const turned = Object.entries(a).map(([name, [x, y]]) => [name, [x === 0 ? 0 : -x, y]]);
        expect(b).toEqual(Object.fromEntries(turned));
      }),
    );
  });

  test('never grows beyond what can be shown, and every hole stays within reach', () => {
    fc.assert(
      fc.property(walks, (keys) => {
        const drawn = walked(keys);
        for (const h of drawn.holes) expect(canStand(drawn, h)).toBe(true);
        const [x, y] = [drawn.holes.map((h) => h.column), drawn.holes.map((h) => h.row)];
        if (x.length === 0) return;
        expect(Math.max(...x) - Math.min(...x)).toBeLessThan(MOST.columns);
        expect(Math.max(...y) - Math.min(...y)).toBeLessThan(MOST.rows);
      }),
    );
  });

  test('opened again lies in the middle and makes the same text', () => {
    fc.assert(
      fc.property(walks, (keys) => {
        const text = drawnText(walked(keys));
        expect(drawnText(drawingOf(text))).toBe(text);
      }),
    );
    const { holes } = drawingOf('1 . 2\n. 3 .');
    expect(holes).toEqual([
      { name: '1', column: 6, row: 3 },
      { name: '2', column: 8, row: 3 },
      { name: '3', column: 7, row: 4 },
    ]);
  });

  test('with nothing in it is no text', () => {
    expect(drawnText(NOTHING_DRAWN)).toBe('');
    expect(drawnText(walked('.<'))).toBe('');
    expect(drawingOf('')).toEqual(NOTHING_DRAWN);
  });

  test('of one hole, of a row and of a column', () => {
    expect(drawnText(walked('ddr.'))).toBe('1');
    expect(drawnText(walked('.rrr.'))).toBe('1 . . 2');
    expect(drawnText(walked('.dd.'))).toBe('1\n.\n2');
  });
});

describe('walking', () => {
  test('starts at 12 o’clock and goes round the whole edge in 44 steps', () => {
    const edge = `${'r'.repeat(7)}${'d'.repeat(8)}${'l'.repeat(14)}${'u'.repeat(8)}${'r'.repeat(7)}`;
    expect(edge).toHaveLength(44);
    expect(walked(edge).mark).toEqual(NOTHING_DRAWN.mark);
    expect(walkHoles(NOTHING_DRAWN, { column: 0, row: -1 })).toBeNull();
    expect(walked('r'.repeat(99)).mark.column).toBe(FIELD.columns - 1);
  });

  test('over the edge goes as far as the picture may grow, once something is drawn', () => {
    const far = walked(`.${'r'.repeat(99)}.${'d'.repeat(99)}.`);
    expect(lie(far.holes)).toEqual({ 1: [0, 0], 2: [20, 0], 3: [20, 14] });
    expect(walkHoles(far, { column: 0, row: 1 })).toBeNull();
    expect(drawnText(far).split('\n')).toHaveLength(MOST.rows);
  });

  test('goes everywhere within a picture of the file that is larger than can be drawn', () => {
    const wide = drawingOf(`1${' .'.repeat(28)} 2`);
    const end = walked('r'.repeat(99), wide);
    expect(end.mark).toEqual({ column: wide.mark.column + 29, row: wide.mark.row });
    expect(walkHoles(wide, { column: 0, row: 1 })).toBeNull();
  });
});

describe('taking away', () => {
  test('takes the hole under the mark, else the last one, and the mark goes there', () => {
    const drawn = walked('.rr.rr.');
    expect(lift(walked('ll', drawn))?.name).toBe('2');
    const last = lift(walked('d', drawn));
    expect(last?.name).toBe('3');
    expect(last?.drawing.mark).toEqual(drawn.mark);
    expect(lift(NOTHING_DRAWN)).toBeNull();
  });

  test('and putting at once gives the same picture', () => {
    fc.assert(
      fc.property(walks, (keys) => {
        const drawn = walked(keys);
        const lifted = lift(drawn);
        fc.pre(lifted !== null);
        if (lifted === null) return;
        expect(lie(put(lifted.drawing, lifted.name).holes)).toEqual(lie(drawn.holes));
      }),
    );
  });
});

describe('the next hole', () => {
  test('is the first of the row that is not drawn yet', () => {
    expect(nextDrawn([], ['1', '2', '2a', '3'], false)).toBe('1');
    expect(nextDrawn(['1', '2'], ['1', '2', '2a', '3'], false)).toBe('2a');
    expect(nextDrawn(['2', '3'], ['1', '2', '3'], false)).toBe('1');
    expect(nextDrawn(['1', '2'], ['1', '2'], false)).toBeNull();
  });

  test('without a row is the next number, with what is known in its place', () => {
    expect(nextDrawn(['1', '2'], [], true)).toBe('3');
    expect(nextDrawn(['1', '3'], [], true)).toBe('2');
    expect(nextDrawn(['1', '2', '3'], ['3a'], true)).toBe('3a');
    expect(nextDrawn(['1', '3a'], ['3a'], true)).toBe('2');
  });
});
