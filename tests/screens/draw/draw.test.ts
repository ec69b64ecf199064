import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEAST } from '../../../src/screens/base/page.ts';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';
import { drawing, LATHE, ROUND } from './draw-screens.ts';

const MAP = [
  '.  11 .  .  1  .  .  2  .  .',
  '.  .  .  .  .  .  .  .  .  3',
  '10 .  .  .  .  .  .  .  .  .',
  '.  .  .  .  .  .  .  .  .  4',
  '.  .  .  .  .  .  .  .  .  .',
  '9  .  .  .  .  .  .  .  .  5',
  '.  8  .  .  7  .  .  6  .  .',
].join('\n');
const mapOf = (desk: Desk, piece = 'gear-cover') => desk.bench.piece(piece).spec.map?.trimEnd();
const at = (desk: Desk) =>
  desk.state.view.screen === 'draw' ? desk.state.view.drawing.mark : null;

describe('drawing the holes of a piece', () => {
  it('is offered on a piece that is shown as a ring, and not where its holes are measured or few', () => {
    const open = (piece: string, text = LATHE) => new Desk(new Bench(text)).open(piece);
    expect(open('gear-cover').frame).toContain('z draw the holes');
    // Of a piece whose bolts nobody noted, that it is off is said first.
    expect(open('guard').frame).toContain('o off, no bolts');
    expect(open('guard').press('z').screen).toBe('draw');
    expect(open('guard').press('go').frame).toContain('draw the holes');
    expect(open('alternator', LEFT_COVER).frame).not.toContain('draw the holes');
    expect(open('alternator', LEFT_COVER).press('z').screen).toBe('draw');
    expect(open('shim').frame).not.toContain('draw the holes');
    expect(open('scale').press('z').screen).toBe('look');
    expect(open('scale').press('?').frame).not.toContain('walk round');
  });

  it('round a cover of eleven holes takes 39 keys, and the file has the picture', () => {
    expect(ROUND.split(' ')).toHaveLength(38);
    const desk = drawing().press(ROUND).press('enter');
    expect(desk.screen).toBe('look');
    expect(mapOf(desk)).toBe(MAP);
    expect(desk.frame).toContain('Drawn: 11 holes as they lie.');
    expect(desk.frame).toMatch(/\|11\|S +\| 1\|S +\| 2\|S/);
  });

  it('says how many there are, which is next, and what the hand does', () => {
    const desk = drawing();
    expect(desk.frame).toMatch(/0 of 11[\s\S]*Walk to hole 1[\s\S]*Space hole 1 is here/);
    desk.press('space');
    expect(desk.frame).toMatch(/1 of 11[\s\S]*1 is here\. Next: 2\.[\s\S]*Backspace take 1 away/);
    desk.press('right right');
    expect(desk.frame).toMatch(/Next: 2\.[\s\S]*Space hole 2 is here/);
    desk.press('escape').press('z').press('backspace').press(ROUND);
    expect(desk.frame).toMatch(/11 of 11[\s\S]*All 11 are there\.[\s\S]*Enter keep the picture/);
  });

  it('is not kept while a hole is missing, and names those that are', () => {
    const desk = drawing().press('space right right space enter');
    expect(desk.screen).toBe('draw');
    expect(desk.frame).toContain('Not drawn yet: 3, 4, 5, 6, 7, 8, 9, 10 and 11.');
    expect(desk.bench.entries).toEqual([]);
    expect(drawing('guard').press('enter').frame).toContain('Nothing is drawn yet.');
  });

  it('Space on a hole changes nothing: a key that bounced takes nothing away', () => {
    const desk = drawing().press('space space space');
    expect(desk.frame).toContain('1 is here already.');
    expect(desk.frame).toContain('1 of 11');
    expect(drawing().press(ROUND).press('down space').frame).toContain('- All 11 are there.');
  });

  it('Backspace takes the last one, wherever the mark is, and goes there; held, all of them', () => {
    const desk = drawing().press('space right right space down down backspace');
    expect(desk.frame).toContain('2 is taken away.');
    expect(desk.frame).toMatch(/\( 1\) +\. +< {2}>/);
    desk.press('backspace backspace');
    expect(desk.frame).toContain('Nothing is drawn.');
    expect(at(desk)).toEqual({ column: 7, row: 0 });
  });

  it('a hole that was put wrong is taken by standing on it, and put where it belongs', () => {
    const desk = drawing().press(ROUND).press('right right right backspace');
    expect(desk.frame).toContain('1 is taken away.');
    expect(desk.frame).toContain('Space hole 1 is here');
    desk.press('left space enter');
    expect(mapOf(desk)?.split('\n')[0]).toBe('.  11 .  1  .  .  .  2  .  .');
  });

  it('stops at the edge with a word, and grows where it may', () => {
    const desk = drawing().press('up');
    expect(desk.frame).toContain('This is the edge.');
    desk.press(`space ${'right '.repeat(20)}`);
    expect(desk.frame).not.toContain('edge');
    expect(desk.frame).toMatch(/< {2}>\s/);
    expect(desk.press('right').frame).toContain('This is the edge: 21 by 15 at most.');
  });

  it('takes names of holes as the piece has them', () => {
    const desk = drawing('odd').press('space right right space down space');
    expect(desk.frame).toContain('Next: 3a.');
    desk.press('left left space enter');
    expect(mapOf(desk, 'odd')).toBe('1  .  2\n3a .  3');
    expect(desk.bench.piece('odd').holes.map((h) => h.name)).toEqual(['1', '2', '3', '3a']);
  });

  it('opens with the picture of the file, which is written over', () => {
    const desk = drawing('alternator', {}, LEFT_COVER);
    expect(desk.frame).toMatch(/11 of 11[\s\S]*< 1>[\s\S]*1 is here\. All 11 are there\./);
    const before = mapOf(desk, 'alternator');
    desk.press('backspace up space enter');
    expect(mapOf(desk, 'alternator')?.split('\n').slice(0, 2)).toEqual([
      '.  1  .  .  .',
      '.  .  .  2  .',
    ]);
    expect(desk.bench.text.match(/map:/g)).toHaveLength(1);
    desk.press('backspace');
    expect(desk.frame).toContain('Taken back: map drawn anew');
    expect(mapOf(desk, 'alternator')).toBe(before);
  });

  it('kept as it was, says so and writes nothing', () => {
    const desk = drawing('alternator', {}, LEFT_COVER).press('enter');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('It was drawn like this already.');
    expect(desk.bench.entries).toEqual([]);
  });

  it('is taken back by Backspace on the piece, and stands again by redo', () => {
    const desk = drawing().press(ROUND).press('enter backspace');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('Taken back: map drawn.');
    expect(mapOf(desk)).toBeUndefined();
    expect(desk.bench.text).toBe(LATHE);
    desk.press('y');
    expect(desk.frame).toContain('It stands again: map drawn.');
    expect(mapOf(desk)).toBe(MAP);
  });
});

describe('a picture left by half', () => {
  it('stands there again, and goes on at the last hole', () => {
    const desk = drawing().press('space right right space escape escape');
    expect(desk.screen).toBe('job');
    expect(desk.bench.entries).toEqual([]);
    desk.open('gear-cover').press('z');
    expect(desk.frame).toMatch(/2 of 11[\s\S]*\( 1\) +\. +< 2>[\s\S]*As you left it\./);
  });

  it('is forgotten once it is kept, or once all of it was taken away', () => {
    const desk = drawing().press('space escape z').press('backspace escape z');
    expect(desk.frame).not.toContain('As you left it.');
    desk.press('space escape z backspace').press(ROUND).press('enter');
    expect(desk.state.drafts).toEqual({});
  });

  it('is not lost by looking at the list of keys, nor by q', () => {
    const desk = drawing().press('space q');
    expect(desk.done).toEqual([]);
    expect(desk.press('?').screen).toBe('keys');
    expect(desk.press('escape').frame).toContain('1 of 11');
  });

  it('loses the holes that a row has done away with since', () => {
    const desk = drawing('guard').press('space right space right space right space escape');
    desk.press('go').type('s s s').press('enter').open('guard').press('escape z');
    expect(desk.screen).toBe('draw');
    expect(desk.frame).toContain('3 of 3');
  });
});

describe('a piece of which nobody knows yet how many holes it has', () => {
  it('has as many as are drawn, and the row that is typed next knows it', () => {
    const desk = drawing('guard').press('space right right right space down down space');
    expect(desk.frame).toMatch(
      /3 drawn[\s\S]*3 is here\. Next: 4\.[\s\S]*Or Enter keeps 3 holes\./,
    );
    desk.press('enter');
    expect(desk.frame).toContain('Drawn: 3 holes as they lie.');
    expect(desk.bench.piece('guard').holes).toHaveLength(3);
    desk.press('r').type('s s').press('enter');
    expect(desk.frame).toContain('2 of 3 typed so far.');
    desk.type(' m').press('enter');
    expect(desk.bench.piece('guard').holes.map((h) => h.found?.kind)).toEqual(['S', 'S', 'M']);
    expect(mapOf(desk, 'guard')).toBe('1 . . 2\n. . . .\n. . . 3');
  });

  it('may be new in the job: named, drawn, and there it is', () => {
    const desk = new Desk(new Bench('putback: 1\njob: X\ndiary:\n'));
    desk.press('o').type('side lid').press('enter z space right right space enter');
    expect(desk.frame).toMatch(/Drawn: 2 holes as they lie\. side-lid is new in this job\./);
    expect(mapOf(desk, 'side-lid')).toBe('1 . 2');
    desk.press('backspace');
    expect(desk.frame).toContain('Taken back: map drawn.');
  });
});

describe('from the row that is being typed', () => {
  it('Up draws, what was typed stays, and its words stand at the holes as drawn', () => {
    const desk = new Desk(new Bench(LATHE)).open('gear-cover').press('r').type('s s s m');
    expect(desk.frame).toContain('Up draw the holes');
    desk.press('up').press(ROUND).press('enter');
    expect(desk.screen).toBe('off-row');
    expect(desk.frame).toContain('> s s s m');
    expect(desk.frame).toContain('Drawn: 11 holes as they lie.');
    expect(desk.frame).toMatch(/\|11\| +\( 1\)S +\( 2\)S[\s\S]*\( 4\)M[\s\S]*< 5>/);
  });

  it('a quick one ends where it began: nothing is noted', () => {
    const desk = new Desk(new Bench(LATHE)).open('gear-cover').press('r').type('s s').press('up');
    desk.press('escape');
    expect(desk.frame).toContain('> s s');
    expect(desk.bench.entries).toEqual([]);
  });
});

describe('what the disk says', () => {
  it('not saved: the picture is still there, and is kept by trying again', () => {
    const desk = drawing().press(ROUND);
    const unsaved = { code: 'no-space', say: 'No room on the disk.', fix: 'Make room.' };
    desk.broken = { ok: false, unsaved };
    desk.press('enter');
    expect(desk.frame).toContain('No room on the disk.');
    desk.press('escape');
    expect(desk.frame).toContain('11 of 11');
    desk.broken = null;
    desk.press('enter');
    expect(mapOf(desk)).toBe(MAP);
  });

  it('the file was broken meanwhile: the picture is there again once it is mended', () => {
    const desk = drawing().press(ROUND);
    desk.broken = { ok: false, faults: [] };
    desk.press('enter');
    expect(desk.screen).toBe('faults');
    desk.broken = null;
    desk.press('go').open('gear-cover').press('z');
    expect(desk.frame).toMatch(/11 of 11[\s\S]*As you left it\./);
    desk.press('enter');
    expect(mapOf(desk)).toBe(MAP);
    expect(desk.state.drafts).toEqual({});
  });

  it('refused, says why over the picture', () => {
    const desk = drawing('guard').press('space');
    // Meanwhile somebody else has typed its row.
    desk.bench.mark({ do: 'out', piece: 'guard', row: 's s s' });
    desk.press('enter');
    expect(desk.screen).toBe('draw');
    expect(desk.frame).toContain('The map leaves out 2 and 3.');
    expect(desk.frame).toContain('1 of 3');
  });

  it('what is pressed while it is written is read on the screen that comes', () => {
    const desk = drawing().press(ROUND);
    desk.holds = true;
    desk.press('enter escape');
    expect(desk.screen).toBe('draw');
    desk.answer();
    expect(desk.screen).toBe('job');
  });
});

describe('at any size', () => {
  it('the mark and the next hole are in sight after every key', () => {
    const keys = fc.array(fc.constantFrom('left', 'right', 'up', 'down', 'space', 'backspace'), {
      maxLength: 60,
    });
    const columns = fc.integer({ min: LEAST.columns, max: 200 });
    const rows = fc.integer({ min: LEAST.rows, max: 60 });
    fc.assert(
      fc.property(keys, columns, rows, (pressed, c, r) => {
        const desk = drawing('guard', { columns: c, rows: r }).press(pressed.join(' '));
        expect(desk.frame.match(/<(?: {2}| ?\d+)>/g)).toHaveLength(1);
        const n = desk.state.view.screen === 'draw' ? desk.state.view.drawing.holes.length : -1;
        expect(desk.rows[0]).toContain(`${n} drawn`);
        expect(desk.frame).toMatch(/hole \d|Next: \d/);
      }),
      { numRuns: 60 },
    );
  });

  it('all holes of the gear cover are seen at once, also at the least size', () => {
    for (const [columns, rows] of [
      [80, 24],
      [60, 16],
      [120, 40],
      [160, 50],
      [250, 80],
    ] as const) {
      const desk = drawing('gear-cover', { columns, rows }).press(ROUND);
      expect(desk.frame.match(/[(<][ \d]\d[)>]/g)).toHaveLength(11);
    }
  });

  it('one step is about as far across as down', () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
      [160, 50],
    ] as const) {
      const lines = drawing('gear-cover', { columns, rows }).rows;
      const dotted = lines.flatMap((l, i) => (l.includes('.    ') ? [i] : []));
      const [first = '', second] = [lines[dotted[0] ?? 0], dotted[1]];
      const dots = [...first.matchAll(/\./g)].map((m) => m.index);
      const [across, down] = [(dots[1] ?? 0) - (dots[0] ?? 0), (second ?? 0) - (dotted[0] ?? 0)];
      expect(across / (2 * down)).toBeGreaterThanOrEqual(1);
      expect(across / (2 * down)).toBeLessThanOrEqual(1.25);
    }
  });
});
