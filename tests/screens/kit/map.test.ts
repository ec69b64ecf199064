import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layout } from '../../../src/piece/map.ts';
import { drawMap, inLines, type Mark } from '../../../src/screens/kit/map.ts';
import { paint } from '../../../src/screens/kit/paint.ts';
import { width } from '../../../src/screens/kit/text.ts';

type Spec = Parameters<typeof layout>[0];
const RING: Spec = { map: null, pitch: null, holes: new Map() };
const names = (n: number) => Array.from({ length: n }, (_, i) => `${i + 1}`);
const mark = (name: string, how: Partial<Mark> = {}): Mark => ({
  name,
  shape: 'out',
  here: false,
  lit: false,
  label: 'S',
  short: 'S',
  ...how,
});
const text = (marks: Mark[], columns: number, rows: number, spec = RING) =>
  drawMap(
    layout(
      spec,
      marks.map((m) => m.name),
    ),
    marks,
    columns,
    rows,
  ).map((l) => paint(l, { colour: false, ascii: false }).trimEnd());

describe('the holes on the screen', () => {
  it('lie as they lie on the piece, hole 1 at the top, clockwise', () => {
    const rows = text(
      names(4).map((n) => mark(n)),
      40,
      9,
    );
    expect(rows.map((r) => r.trim()).filter((r) => r !== '')).toEqual([
      '(1)S',
      expect.stringMatching(/^\(4\)S +\(2\)S$/),
      '(3)S',
    ]);
  });

  it('lie as the map draws them', () => {
    const spec = { ...RING, map: '1 2 3\n. 4 .' };
    const rows = text(
      names(4).map((n) => mark(n)),
      60,
      7,
      spec,
    ).filter((r) => r !== '');
    expect(rows).toHaveLength(2);
    expect(rows[0]?.indexOf('2')).toBe(rows[1]?.indexOf('4'));
  });

  it('show how they stand by their signs, and what belongs in the hand by a mark', () => {
    const marks = [
      mark('1', { shape: 'home' }),
      mark('2', { shape: 'in' }),
      mark('3', { shape: 'tight' }),
      mark('4', { shape: 'trouble' }),
      mark('5', { here: true, label: 'M clip' }),
      mark('6', { lit: true }),
    ];
    const all = text(marks, 60, 11).join(' ').replace(/\s+/g, ' ');
    for (const sign of ['|1|S', '[2]S', '{3}S', '!4!S', '<5>M clip', '>(6)S'])
      expect(all).toContain(sign);
  });

  it('are all there and never one over the other, at any number and size', () => {
    const size = fc.tuple(fc.integer({ min: 56, max: 200 }), fc.integer({ min: 7, max: 60 }));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), size, fc.nat(), (n, [columns, rows], at) => {
        const here = `${(at % n) + 1}`;
        const marks = names(n).map((name) => mark(name, { here: name === here, label: 'M clip' }));
        const drawn = drawMap(layout(RING, names(n)), marks, columns, rows);
        expect(drawn).toHaveLength(rows);
        for (const l of drawn) expect(width(l)).toBeLessThanOrEqual(columns);
        const shown = drawn.map((l) => paint(l, { colour: false, ascii: false })).join('\n');
        const found = [...shown.matchAll(/[(<] *(\d+)[)>]/g)].map((m) => m[1] ?? '');
        if (inLines(layout(RING, names(n)), names(n), columns, rows)) {
          expect(found).toContain(here);
        } else {
          expect(found.sort()).toEqual(names(n).sort());
        }
      }),
      { numRuns: 300 },
    );
  });

  it('as many as two hundred stand in lines that keep the lit one in sight', () => {
    const all = names(200);
    for (const here of ['1', '100', '200']) {
      const rows = text(
        all.map((n) => mark(n, { here: n === here })),
        80,
        15,
      );
      expect(rows.join('\n')).toContain(`<${here.padStart(3)}>`);
      // Those that are not in sight are counted, by their lines.
      expect(rows.at(-1)).toMatch(/^\((?:\d+ above)?(?:, )?(?:\d+ below)?\)/);
    }
  });

  it('two at the same place are both to be seen', () => {
    const at = (x: number, y: number) => ({ at: [x, y] as [number, number] });
    const spec = {
      ...RING,
      holes: new Map([
        ['1', at(0, 0)],
        ['2', at(0, 0)],
        ['3', at(50, 30)],
      ]),
    };
    const rows = text(
      names(3).map((n) => mark(n)),
      60,
      9,
      spec,
    ).join('\n');
    for (const n of names(3)) expect(rows).toContain(`(${n})`);
  });
});
