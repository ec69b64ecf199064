/** Large, to be read from two metres: letters of five rows and more than a finger's width each. */
import { describe, expect, it } from 'vitest';
import { farText } from '../../../src/screens/kit/far.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { WRENCHES } from '../more-screens.ts';

/** The rows of a text as it is drawn large. */
const drawn = (text: string) =>
  farText(text, 80).map((l) =>
    l
      .map((s) => s.text)
      .join('')
      .trimEnd(),
  );

/** Every row of it stands in the frame, in its order and its columns. */
function shows(desk: Desk, text: string): boolean {
  const rows = drawn(text);
  expect(rows).toHaveLength(5);
  const frame = desk.rows;
  const fits = (at: number, x: number) =>
    rows.every((row, i) => (frame[at + i] ?? '').slice(x).startsWith(row.trimEnd()));
  return frame.some((_, at) => Array.from({ length: 80 }, (__, x) => x).some((x) => fits(at, x)));
}

const off = () => {
  const bench = new Bench();
  bench.mark({ do: 'out', piece: 'lever' });
  bench.mark({ do: 'off', piece: 'lever' });
  return new Desk(bench).open('cover').press('enter');
};
const tight = (look = {}, text?: string) => {
  const bench = new Bench(text).openCover().fillCover();
  bench.mark({ do: 'tight', piece: 'cover' });
  return new Desk(bench, look, WRENCHES).open('cover');
};

describe('far', () => {
  it('is one key in tight, and the map is the same key away', () => {
    const d = tight();
    const map = d.frame;
    d.press('f');
    expect(d.step).toBe('tight');
    const next = /Next: (\d)/.exec(d.frame)?.[1] ?? '';
    expect(shows(d, next)).toBe(true);
    expect(shows(d, '10 N·m')).toBe(true);
    expect(shows(d, '5')).toBe(true);
    expect(d.frame).toContain('left in this pass');
    expect(d.frame).toContain('the map');
    d.press('f');
    expect(d.frame).toBe(map);
  });

  it('says what to set on this wrench, where the manual has another unit', () => {
    const text = new Bench().text.replace('10 N·m, manual 2-17', '88 in-lb, manual 2-17');
    const d = tight({}, text).press('f');
    expect(shows(d, '10 N·m')).toBe(true);
    expect(d.frame).toContain('88');
  });

  it('stays on from bolt to bolt, and marks as ever', () => {
    const d = tight().press('f space');
    expect(d.bench.piece().holes.filter((h) => h.passes.includes('full'))).toHaveLength(1);
    expect(shows(d, '4')).toBe(true);
  });

  it('on the way off: the hole, its bolt, how many are in', () => {
    const d = off().press('f');
    expect(d.step).toBe('off');
    const hole = /out: (\d)/.exec(d.frame)?.[1] ?? '';
    const kind = d.bench.hole(hole).belongs?.kind ?? '';
    expect([shows(d, hole), shows(d, kind), shows(d, '5')]).toEqual([true, true, true]);
  });

  it('on the way on: where the bolt in the hand belongs', () => {
    const d = new Desk(new Bench().openCover()).open('cover');
    d.state = { ...d.state, view: { screen: 'piece', piece: 'cover', step: ON } };
    d.press("l '");
    expect([shows(d, '4'), shows(d, 'L'), shows(d, '5')]).toEqual([true, true, true]);
    d.press('space');
    expect(d.bench.states()).toBe('out out out in out');
  });

  it('in 7-bit characters and without colour as well', () => {
    const d = tight({ ascii: true }).press('f');
    expect(d.frame).toMatch(/^[\x20-\x7e\n]*$/);
    expect(d.frame).toContain('########');
  });

  it.each([
    [80, 24],
    [60, 16],
    [120, 40],
  ])('fits %i by %i', (columns, rows) => {
    const d = tight({ columns, rows }).press('f');
    expect(d.rows).toHaveLength(rows);
    expect(d.frame).toContain('██');
  });

  it('a torque that is not read whole stands as it is printed', () => {
    const text = new Bench().text.replace('10 N·m, manual 2-17', 'hand tight plus a bit, manual');
    const bench = new Bench(text).openCover().fillCover();
    const d = new Desk(bench).open('cover').press('f');
    expect(d.frame.toLowerCase()).toMatch(/█|hand tight/);
  });
});

describe('letters of five rows', () => {
  it('are there for all that a bolt or a torque is written with', () => {
    const all = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789·.,-+/°? Nm in-lb ft-lb kgf·m';
    for (const sign of all) expect(drawn(sign)).toHaveLength(5);
    const shapes = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ12345678'].map((s) => drawn(s).join('/'));
    expect(new Set(shapes).size).toBe(shapes.length);
  });

  it('are narrower where they do not fit, and one line where they do not at all', () => {
    const wide = (text: string) => Math.max(...drawn(text).map((r) => r.length));
    expect(wide('10')).toBeGreaterThan(14);
    expect(drawn('25 N·m + 90°')).toHaveLength(5);
    expect(drawn('as the manual says, page 12, in three steps')).toHaveLength(1);
  });
});

const ON = { step: 'on', here: null, typed: '', hand: '', fresh: false } as const;
