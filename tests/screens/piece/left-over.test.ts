/** What the tray holds by its own count is what goes in; what is left when every hole is full is named at once. */
import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const JOB = `putback: 1
job: Cover weeps
bolts: {S: M6x25, M: M6x35, L: M6x55}
pieces: {cover: {bolts: S S S M+clip S S+copper S S L S S, torque: 10 N·m}}
diary:
`;

/** Eight S, two M and one L lie there; nine holes take S. */
function cup(sixth: 'S' | 'S+copper' = 'S+copper'): Bench {
  const bench = new Bench(JOB.replace('S+copper', sixth));
  bench.mark({
    do: 'out',
    piece: 'cover',
    row: `S S S M+clip S ${sixth.replace('S', 'M')} S S L S S`,
  });
  bench.mark({ do: 'off', piece: 'cover', tray: 'cup 2' });
  bench.mark({ do: 'settle', piece: 'cover', hole: '6', kind: sixth });
  return bench;
}

const isIn = (bench: Bench) => bench.piece().holes.filter((h) => h.state === 'in').length;

describe('what lies in the tray', () => {
  it('is told with what lies under the heads', () => {
    const desk = new Desk(cup()).open('cover');
    expect(desk.frame.replace(/\s+/g, ' ')).toContain(
      'In cup 2: you should have 8 S (25 mm), 2 M (35 mm) and 1 L (55 mm), 11 bolts in all; under the heads 1 clip, 1 copper.',
    );
    desk.press('enter');
    expect(desk.frame).toContain('Left in cup 2: 8 S, 2 M, 1 L; under the heads 1 clip, 1 copper.');
    expect(desk.frame).toContain('Not there: 1 S.');
  });

  it('is all that goes in, by all as by one', () => {
    const bench = cup('S');
    const desk = new Desk(bench).open('cover').press('enter s a');
    expect(desk.frame).toContain('The job has 8 S: where does the rest come from?');
    expect(isIn(bench)).toBe(0);
    desk.press('backspace');
    for (let i = 0; i < 8; i += 1) desk.press('s space');
    expect(isIn(bench)).toBe(8);
    desk.press('space');
    expect(desk.frame.replace(/\s+/g, ' ')).toContain('where does this one come from?');
    expect(isIn(bench)).toBe(8);
  });
});

describe('left over, with every hole full', () => {
  function full(): Desk {
    const desk = new Desk(cup()).open('cover').press('enter m space l space s a space w');
    return desk.type('a new one').press('enter');
  }

  it('is named at once, and again at the turn to tight', () => {
    const desk = full();
    expect(desk.step).toBe('look');
    expect(desk.frame.replace(/\s+/g, ' ')).toContain(
      'All in, 11 of them by fingers only. 1 M is left over: which hole has the wrong bolt?',
    );
    desk.press('enter');
    expect(desk.step).toBe('tight');
    expect(desk.frame).toContain('1 M is left over: which hole has the wrong bolt?');
  });

  it('is typed already behind l, which says whence it came', () => {
    const desk = full().press('l');
    expect(desk.frame).toMatch(/> {1,2}1 M/);
    desk.press('enter');
    expect(desk.step).toBe('answer');
    expect(desk.frame).toContain('M came out of 6, which takes S.');
  });

  it('is not asked about where nothing is left', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    const desk = new Desk(bench).open('cover').press('enter s a space m space l a');
    expect(desk.frame).toContain('All in, 11 of them by fingers only.');
    expect(desk.frame).not.toContain('left over:');
  });
});

it('two pieces whose bolts lie in one tray are named when the second is laid there', () => {
  const bench = new Bench(
    'putback: 1\njob: C\nbolts: {S: M6x25}\npieces: {lid: {bolts: S}, cover: {bolts: S S}}\ndiary:\n',
  );
  bench.mark({ do: 'out', piece: 'lid' });
  bench.mark({ do: 'off', piece: 'lid', tray: 'cup 1' });
  const desk = new Desk(bench).open('cover').press('enter a enter').type('Cup 1').press('enter');
  expect(desk.frame.replace(/\s+/g, ' ')).toContain(
    'Cover is off, 2 of 2 bolts in Cup 1. The bolts of Lid lie in Cup 1 too: keep them apart.',
  );
});
