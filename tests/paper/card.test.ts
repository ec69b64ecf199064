import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { card } from '../../src/paper/card.ts';
import { writeBeside } from '../../src/paper/labels-at.ts';
import { textWidth, wrapped } from '../../src/paper/measure.ts';
import { steps } from '../../src/paper/steps.ts';
import { holdsBox, isIn, layingSaid, tilesOf } from '../../src/paper/tiles.ts';
import { inMm } from '../../src/piece/life-size.ts';
import { layout } from '../../src/piece/map.ts';
import { htmlOf } from './all-papers.ts';
import { jobOf, NOW, pieceIn } from './jobs.ts';

const cardOf = (text: string, more: object = {}) => {
  const job = jobOf(`putback: 1\njob: A cover\n${text}`);
  const ask = { job, now: NOW, size: 'a4' as const, wrenches: [], across: null };
  return card({ ...ask, piece: pieceIn(job, 'cover'), ...more });
};

/** Middles of the rings in the mm of the drawing, by hole. */
const ringsOf = (html: string) =>
  new Map(
    [
      ...html.matchAll(
        /data-hole="([^"]+)"><circle class="ring" cx="([^"]+)" cy="([^"]+)" r="([^"]+)"/g,
      ),
    ].map(([, hole = '', x, y, r]) => [hole, { x: Number(x), y: Number(y), r: Number(r) }]),
  );

const AT = `bolts: {S: M6x25 flange}
pieces:
  cover:
    bolts: S S S
    holes: {1: {at: [84, 31]}, 2: {at: [12.5, 7.25]}, 3: {at: [60, 140]}}
`;

describe('the card of a piece', () => {
  it('of figures that cannot be mm is none, and says where to look', () => {
    expect(cardOf(AT.replace('[60, 140]', '[600000, 140]'))).toMatchObject({ code: 'too-large' });
    expect(cardOf(AT, { across: 200_000 })).toMatchObject({ life: true });
  });

  it('lies at life size where each hole was measured', () => {
    const made = cardOf(AT);
    expect(made).toMatchObject({ life: true, sheets: 1 });
    const rings = ringsOf(htmlOf(made));
    const [a, b] = [rings.get('1'), rings.get('2')];
    expect((a?.x ?? 0) - (b?.x ?? 0)).toBeCloseTo(71.5, 5);
    expect((a?.y ?? 0) - (b?.y ?? 0)).toBeCloseTo(23.75, 5);
    expect(a?.r).toBe(3);
    expect(htmlOf(made)).toContain('Life size: the holes lie as they were measured');
  });

  it('lies at life size by a pitch, or by one width', () => {
    const map = 'bolts: {S: M6x25}\npieces: {cover: {bolts: S S S S, map: "1 . 2\\n4 . 3"';
    const pitch = ringsOf(htmlOf(cardOf(`${map}, pitch: [40, 55]}}\n`)));
    expect((pitch.get('3')?.x ?? 0) - (pitch.get('1')?.x ?? 0)).toBeCloseTo(80, 5);
    expect((pitch.get('3')?.y ?? 0) - (pitch.get('1')?.y ?? 0)).toBeCloseTo(55, 5);
    const made = cardOf(`${map}}}\n`, { across: 90 });
    const width = ringsOf(htmlOf(made));
    expect((width.get('3')?.x ?? 0) - (width.get('1')?.x ?? 0)).toBeCloseTo(90, 5);
    expect(made).toMatchObject({ life: true, notes: [expect.stringContaining('90 mm across')] });
  });

  it('says so where it is not life size, and which hole lies anywhere', () => {
    const made = cardOf('bolts: {S: M6x25}\npieces: {cover: {bolts: S S S, map: "1 . 2"}}\n');
    expect(made).toMatchObject({ life: false });
    expect(htmlOf(made)).toContain('NOT life size');
    expect(htmlOf(made)).toContain('3 lies where there was room. Its place nobody noted.');
    const ring = cardOf('bolts: {S: M6x25}\npieces: {cover: {bolts: S S S S}}\n');
    expect(htmlOf(ring)).toContain('nobody drew or measured the holes. A ring is assumed.');
    expect(htmlOf(ring)).not.toContain('They lie as drawn');
    const many = cardOf(`bolts: {S: M6x25}\npieces: {cover: {bolts: ${'S '.repeat(60)}}}\n`);
    expect(htmlOf(many)).toContain('NOT as they lie');
  });

  it('tells what goes under each head, what is not settled, and what is wrong', () => {
    const html = htmlOf(
      cardOf(`bolts: {S: M6x25, M: M6x35}
pieces: {cover: {bolts: S M+clip S+a-very-long-bracket+copper S}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, hole: 1, out: M}
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa2, piece: cover, hole: 4, state: stuck}
`),
    );
    expect(html).toContain('>2 M</text>');
    expect(html).toContain('>+ clip</text>');
    expect(html).toContain('>1 S/M?</text>');
    expect(html).toContain('1: S or M? Not settled.');
    expect(html).toContain('3: under the head, from the head down: a-very-long-bracket, copper.');
    expect(html).toContain('>stuck</text>');
    const list = html.replace(/<\/?bdi>/g, '');
    expect(list).toContain(
      'Under the heads: 1 × clip (2); 1 × a very long bracket (3); 1 × copper (3)',
    );
    expect(list).toContain('Trouble: 4 stuck, its bolt still in');
  });

  it('has a line of the true length for each kind, and says which length is not known', () => {
    const html = htmlOf(
      cardOf(`bolts: {S: M6x25, L: "M10x250 hex", Q: "1/4-20 x 1-1/2", U: M8 stud}
pieces: {cover: {bolts: S L Q U S}}
`),
    );
    const lengths = [
      ...html.matchAll(
        /class="length" data-kind="(\w+)" data-mm="([\d.]+)" d="M([\d.]+) [\d.]+H([\d.]+)"/g,
      ),
    ];
    const drawn = lengths.map(([, kind, mm, from, to]) => [
      kind,
      Number(mm),
      Number(to) - Number(from),
    ]);
    expect(drawn).toEqual([
      ['S', 25, expect.closeTo(25, 4)],
      ['Q', 38.1, expect.closeTo(38.1, 4)],
    ]);
    expect(html).toContain('250 mm, longer than this sheet. Lay it on a rule.');
    expect(html).toContain('its length is not noted.');
    expect(html).toContain('2 × <bdi>S: M6x25</bdi>');
  });

  it('has what is printed beside the true caution and the torque of one hole', () => {
    const file = `bolts: {S: M6x25 flange}
pieces:
  cover:
    bolts: S S S
    torque: 10 N·m
    caution: {fitting: Keep fingers off the edge.}
    holes: {2: {torque: 12 N·m}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, corrected: caution, was: Keep fingers off the edge., says: Gloves.}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, piece: cover, hole: 2, corrected: torque, was: 12 N·m, says: 9 N·m}
  - {at: 2026-04-11T16:02:00+02:00, id: aaaaaaa3, piece: cover, hole: 3, corrected: torque, was: 10 N·m, says: 8 N·m}
  - {at: 2026-04-11T16:03:00+02:00, id: aaaaaaa4, piece: cover, out: S S S}
  - {at: 2026-04-11T16:04:00+02:00, id: aaaaaaa5, piece: cover, removed: all}
`;
    const job = jobOf(`putback: 1\njob: A cover\n${file}`);
    const way = steps({ job, now: NOW, size: 'a4', wrenches: [] });
    for (const html of [htmlOf(cardOf(file)), htmlOf(way)]) {
      expect(html).toContain('Gloves (not Keep fingers off the edge, as printed)');
      expect(html).toMatch(/hole 2: 9 N·m \(not 12 N·m, as printed\)/i);
      expect(html).toMatch(/hole 3: 8 N·m \(not 10 N·m, as printed\)/i);
    }
  });

  it('is not made of a piece without bolts', () => {
    expect(cardOf('pieces: {cover: {routes: over the tube}}\n')).toMatchObject({
      code: 'no-bolts',
    });
  });
});

describe('a drawing over several sheets', () => {
  const sizes = fc.record({
    width: fc.double({ min: 1, max: 2000, noNaN: true }),
    height: fc.double({ min: 1, max: 2000, noNaN: true }),
  });
  const SHEET = { width: 186, height: 251 };

  it('shows every part of it, moves nothing, and has the same marks on all sheets', () => {
    fc.assert(
      fc.property(
        sizes,
        fc.double({ min: 10, max: 60, noNaN: true }),
        ({ width, height }, overlap) => {
          const all = tilesOf({ x: -7, y: 3, width, height }, SHEET, overlap);
          const last = all.tiles.at(-1);
          expect((last?.x ?? 0) + (last?.width ?? 0)).toBeGreaterThanOrEqual(-7 + width - 1e-6);
          expect((last?.y ?? 0) + (last?.height ?? 0)).toBeGreaterThanOrEqual(3 + height - 1e-6);
          for (const tile of all.tiles) {
            expect(tile.width).toBeLessThanOrEqual(SHEET.width);
            expect(tile.height).toBeLessThanOrEqual(SHEET.height);
          }
          for (const mark of all.marks) {
            expect(
              all.tiles.filter((tile) => isIn(tile, mark.x, mark.y)).length,
            ).toBeGreaterThanOrEqual(2);
          }
          expect(layingSaid(all) === '').toBe(all.tiles.length === 1);
          expect(new Set(all.marks.map((k) => k.name)).size).toBe(all.marks.length);
        },
      ),
    );
  });

  it('has each hole whole on one sheet at least', () => {
    fc.assert(
      fc.property(
        sizes,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (size, a, b) => {
          const [w, h] = [Math.min(20, size.width), Math.min(20, size.height)];
          const box = { x: a * (size.width - w), y: b * (size.height - h), width: w, height: h };
          const all = tilesOf({ x: 0, y: 0, ...size }, SHEET, 24);
          expect(all.tiles.some((tile) => holdsBox(tile, box))).toBe(true);
        },
      ),
    );
  });

  it('is a card whose every hole is on a sheet, at its own place', () => {
    const html = htmlOf(
      cardOf(`bolts: {S: M12x60}
pieces:
  cover:
    bolts: S S S S S
    holes: {1: {at: [0, 0]}, 2: {at: [420, 0]}, 3: {at: [420, 300]}, 4: {at: [0, 300]}, 5: {at: [183, 150]}}
`),
    );
    const rings = ringsOf(html);
    expect([...rings.keys()].sort()).toEqual(['1', '2', '3', '4', '5']);
    expect((rings.get('3')?.x ?? 0) - (rings.get('1')?.x ?? 0)).toBeCloseTo(420, 5);
    expect((rings.get('3')?.y ?? 0) - (rings.get('1')?.y ?? 0)).toBeCloseTo(300, 5);
    expect(html).toContain('sheets, 2 rows of 3');
  });
});

describe('room for texts', () => {
  it('beside holes is found where nothing lies, as far as there is any', () => {
    const row = [0, 12, 24].map((x) => ({ x, y: 0, radius: 3, lines: ['10 S'] }));
    const boxes = writeBeside(row).map((w) => w.lines[0]);
    // To the right of the first and second the next hole would be covered.
    expect(boxes[0]?.x).toBeLessThan(0);
    expect(boxes[1]?.y).not.toBe(boxes[0]?.y);
  });

  it('in lines is never too little: no word is lost, none is too wide', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        fc.integer({ min: 3, max: 60 }),
        (text, most) => {
          const lines = wrapped(text, most);
          expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
          for (const line of lines) {
            if ([...line].length > 1) expect(textWidth(line)).toBeLessThanOrEqual(most + 1e-9);
          }
        },
      ),
    );
  });
});

describe('the places of holes in mm', () => {
  it('are as far apart as they are in the geometry of the screen, times one figure', () => {
    const spec = { map: '1 . 2\n. . .\n4 3 .', pitch: null, holes: new Map() };
    const cells = layout(spec, ['1', '2', '3', '4']);
    const room = { across: null, width: 160, height: 90, apart: 17 };
    const { places } = inMm(cells, room);
    const scale = (places[1]?.x ?? 0) / 2;
    for (const [i, place] of cells.places.entries()) {
      expect(places[i]?.x).toBeCloseTo(place.x * scale, 5);
      expect(places[i]?.y).toBeCloseTo(place.y * scale, 5);
    }
  });
});
