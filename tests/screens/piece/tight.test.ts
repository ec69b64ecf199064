import { describe, expect, it } from 'vitest';
import { Bench, COVER } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

/** All bolts are in by fingers. */
const tight = (text = COVER) => new Desk(new Bench(text).openCover().fillCover()).open('cover');
const LISTED = COVER.replace('torque:', 'sequence: [1, 3, 5, 2, 4]\n    torque:');
const lit = (desk: Desk) => /Next: (\d+), /.exec(desk.frame)?.[1] ?? '';

describe('tight', () => {
  it('shows the order on the map, and pass and torque as printed', () => {
    const desk = tight(LISTED);
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain('<1>1st');
    expect(desk.frame).toContain('[3]2nd');
    expect(desk.frame).toContain('[4]5th');
    expect(desk.frame).toContain('tight, pass 1 of 3: snug');
    desk.press('go go go go go');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('Pass snug: all bolts are done.');
    expect(desk.frame).toContain('Next pass, 2 of 3: full, 10 N·m (manual 2-17).');
    desk.press('go');
    expect(desk.frame).toContain('tight, pass 2 of 3: full, 10 N·m');
    expect(desk.frame).toContain('(manual 2-17)');
    expect(desk.bench.piece().holes.every((h) => h.passes.length === 1)).toBe(true);
  });

  it('is a key a bolt, pass by pass, and calmly tight at the end, with what is next', () => {
    const desk = tight(LISTED);
    const order: string[] = [];
    while (order.length < 15) {
      if (desk.screen === 'look') desk.press('go');
      order.push(lit(desk));
      desk.press('go');
    }
    expect(order.join('')).toBe('135241352413524');
    expect(desk.bench.states()).toBe('tight tight tight tight tight');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('All 5 are tight, 10 N·m, manual 2-17.');
    expect(desk.frame).toMatch(/Next: Lever/);
    expect(desk.done).toEqual(['cover tight', 'cover round']);
    expect(desk.done).not.toContain('ring');
    desk.press('go');
    expect(desk.screen).toBe('job');
  });

  it('between two passes says that Space marks nothing, and what does go on', () => {
    const desk = tight().press('space space space space space space');
    expect(desk.screen).toBe('look');
    for (const _ of [1, 2, 3]) {
      desk.press('space');
      expect(desk.frame).toContain('Space marks nothing here. Enter: ');
    }
    expect(desk.bench.piece().holes.map((h) => h.passes)).toEqual(Array(5).fill(['snug']));
    expect(desk.press('enter').frame).toContain('pass 2 of 3');
    desk.press('space');
    expect(desk.frame).not.toContain('Space marks nothing');
  });

  it('takes another hole, and orders the rest anew', () => {
    const desk = tight();
    const first = lit(desk);
    const other = ['1', '2', '3', '4', '5'].find((n) => n !== first) ?? '';
    desk.press(other);
    expect(desk.frame).toContain(`${other}. In order it would be ${first}.`);
    desk.press('go');
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain(`{${other}}`);
    expect(desk.frame).toContain('the rest is ordered anew');
  });

  it('begins with no hole empty, or with a reason', () => {
    const bench = new Bench().openCover();
    for (const hole of ['1', '2'])
      bench.mark({ do: 'in', piece: 'cover', holes: [hole], hand: { kind: 'S' } });
    const desk = new Desk(bench).open('cover').press('enter tab space');
    expect(desk.frame).toContain(
      '3 holes are still empty: all bolts go in by fingers before one is',
    );
    expect(bench.entries.some((e) => e.verb === 'tight')).toBe(false);
    desk.type('the others are on order').press('enter');
    expect(bench.entries.at(-1)).toMatchObject({
      verb: 'tight',
      because: 'the others are on order',
    });
  });

  it('asks no second pass of a hole that had this one, however it is pointed at', () => {
    const desk = tight();
    const first = lit(desk);
    desk.press('go').press(first);
    expect(desk.frame).toContain(`${first} has had this pass.`);
    const before = desk.bench.entries.length;
    desk.press('space');
    expect(desk.bench.entries.length).toBe(before);
    expect(desk.frame).toContain(`- ${first} has had this pass. Next: `);
  });

  it('asks before it leaves the maker’s list, without a STOP and without ringing', () => {
    const desk = tight(LISTED).press('4 go');
    expect(desk.screen).toBe('stop');
    expect(desk.frame).toContain(
      'The maker\u2019s list says 1 next, not 4.'.replace('\u2019', "'"),
    );
    expect(desk.frame).not.toContain('STOP');
    expect(desk.done).toEqual([]);
    desk.press('w').type('reached only now').press('enter');
    expect(desk.screen).toBe('tight');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'tight', because: 'reached only now' });
  });

  it('one key for a bolt that turns without tightening: noted, stopped, and what to do now', () => {
    const desk = tight(LISTED).press('go !');
    expect(desk.screen).toBe('advice');
    expect(desk.done).toEqual(['ring']);
    expect(desk.frame).toMatch(/STOP[\s\S]*3: thread pulled\.[\s\S]*Turn no further/);
    expect(desk.bench.hole('3').trouble).toBe('pulled');
    expect(desk.frame).toContain('m mend it');
    desk.press('go');
    // The others are left as they are until it is mended.
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('Thread pulled.');
    expect(desk.frame).toContain('Enter how it is mended   m mended');
  });

  it('leads from how it is mended to its bolt, and from there to the word of how it was done', () => {
    const desk = tight(LISTED).press('go ! m');
    expect(desk.screen).toBe('off');
    expect(desk.frame).toContain('take 3 out first, then m.');
    desk.press('enter h').type('m').type('wire insert').press('enter');
    expect(desk.bench.hole('3')).toMatchObject({ state: 'out', trouble: null });
  });

  it('takes that back as well', () => {
    const desk = tight(LISTED).press('go ! backspace');
    expect(desk.bench.hole('3').trouble).toBeNull();
    expect(desk.screen).toBe('tight');
  });

  it('is not said to be tight while one hole holds nothing', () => {
    const desk = tight(LISTED).press('go ! go t go go go').press('t go go go go t go go go go');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('Tight but for 3.');
    expect(desk.frame).toContain('in, 4 of 5 tight');
    expect(desk.done).toEqual(['ring']);
  });

  it('leads back to the bolts that are not in yet', () => {
    const bench = new Bench().openCover();
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    const desk = new Desk(bench).open('cover').press('tab');
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain('2 holes still empty.');
    desk.press('tab');
    expect(desk.screen).toBe('on');
  });

  it('begins a second round when it comes off again', () => {
    const desk = tight(LISTED).press('go go go go go go').press('go go go go go');
    desk.press('o go');
    expect(desk.screen).toBe('off');
    expect(desk.bench.piece().round).toBe(2);
    desk.press('escape escape');
    expect(desk.frame).toContain('round 2');
  });
});
