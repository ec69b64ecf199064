/** The wrong hole was marked: its mark goes wherever it stands, the others keep theirs. */
import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const passes = (d: Desk) => d.bench.piece().holes.map((h) => h.passes.join('+') || h.state);

describe('not this one', () => {
  it('is the hole and one key, for the last mark on it', () => {
    const d = new Desk(new Bench().openCover().fillCover()).open('cover').press('space space');
    expect(d.step).toBe('tight');
    const last = d.bench.entries.at(-1)?.hole?.[0] ?? '';
    d.press('escape').press(`${last} u`);
    expect(d.bench.hole(last)).toMatchObject({ state: 'in', passes: [] });
    expect(d.frame).toContain(`${last}: that mark is taken back.`);
  });

  it('an older one goes with what rests on it, which is named first', () => {
    const bench = new Bench().openCover();
    for (const hole of ['1', '2']) {
      bench.mark({ do: 'in', piece: 'cover', holes: [hole], hand: { kind: 'S' } });
    }
    bench.mark({ do: 'tight', piece: 'cover', holes: ['1'], pass: 'snug', because: 'first' });
    bench.mark({ do: 'tight', piece: 'cover', holes: ['2'], pass: 'snug', because: 'then' });
    const d = new Desk(bench).open('cover').press('1 ] down');
    expect(d.frame).toContain('Not 1: which mark is wrong?');
    expect(d.frame).toContain('With it goes: 1 snug.');
    d.press('enter');
    expect(bench.states()).toBe('out in out out out');
    expect(bench.hole('2').passes).toEqual(['snug']);
  });

  it('where much goes with it, that is named on a page before anything is taken back', () => {
    const bench = new Bench().openCover();
    const seen = { do: 'gate', how: 'seen', piece: 'cover' } as const;
    for (const item of ['tools', 'lamp']) bench.mark({ ...seen, moment: 'closing', item });
    for (const item of ['faces', 'bolts']) bench.mark({ ...seen, moment: 'sealing', item });
    const before = bench.entries.length;
    const d = new Desk(bench).open('cover').press('3');
    expect(d.frame).toContain('Not 3: u names what goes with it.');
    d.press('u');
    expect(d.frame).toContain('Not 3: which mark is wrong?');
    expect(d.frame.replace(/\s+/g, ' ')).toContain('With it goes: off,');
    expect(bench.entries.length).toBe(before);
    d.press('enter');
    expect(bench.states()).toBe('out out home out out');
  });

  it('with a bolt in the hand a hole is pointed at to put it in, and nothing is said of its marks', () => {
    const d = new Desk(new Bench().openCover()).open('cover').press('enter s 1');
    expect(d.frame).not.toContain('Not 1: u');
  });

  it('where bolts are tightened, takes no bolt out of a hole that has had no pass', () => {
    const bench = new Bench().openCover().fillCover();
    const d = new Desk(bench).open('cover').press('go 5');
    expect(d.step).toBe('tight');
    expect(d.frame).not.toContain('not this one');
    d.press('u');
    expect(bench.states()).toBe('in in in in in');
    expect(d.frame.replace(/\s+/g, ' ')).toContain('5 has had no pass yet: nothing is taken back.');
    expect(d.frame).not.toContain('5 has had this pass');
    // An older mark goes by the page that names it; the hole is empty then, and nothing offers to tighten it.
    d.press('] enter');
    expect(bench.states()).toBe('in in in in out');
    expect(d.step).toBe('tight');
    expect(d.frame).toContain('5 is empty. Its bolt goes in first: Tab.');
    expect(d.frame).not.toContain('has had this pass');
    expect(d.frame).not.toContain('Space snug');
    expect(d.frame).not.toContain('turns without');
    const marks = bench.entries.length;
    d.press('space');
    expect(bench.entries.length).toBe(marks);
    expect(d.frame).toContain('5 is empty');
  });

  it('of a mark for many holes the others stand again', () => {
    const bench = new Bench().openCover().fillCover();
    bench.mark({ do: 'tight', piece: 'cover' });
    const d = new Desk(bench).open('cover').press('4');
    expect(d.frame).toContain('Not 4: u. Stands again: 1, 2, 3 and 5 snug.');
    d.press('u');
    expect(passes(d)).toEqual(['snug', 'snug', 'snug', 'in', 'snug']);
    d.press('escape escape').open('cover').press('2 ] down enter');
    expect(bench.states()).toBe('in out in in in');
    expect(passes(d)).toEqual(['snug', 'out', 'snug', 'in', 'snug']);
  });

  it('a bolt that never came out: the piece did not come off either', () => {
    const bench = new Bench().openCover();
    const d = new Desk(bench).open('cover').press('3');
    expect(d.frame).toContain('With it goes: off.');
    d.press('u');
    expect(bench.states()).toBe('out out home out out');
    expect(bench.piece().away).toBe('no');
  });

  it('stands again as it was, by the key that takes the last thing back', () => {
    for (const key of ['backspace', 'y']) {
      const bench = new Bench().openCover().fillCover();
      bench.mark({ do: 'tight', piece: 'cover' });
      const d = new Desk(bench).open('cover').press(`4 u ${key}`);
      expect(passes(d)).toEqual(['snug', 'snug', 'snug', 'snug', 'snug']);
      expect(d.frame).toContain('4: its mark stands again.');
    }
    const bench = new Bench().openCover();
    const d = new Desk(bench).open('cover').press('3 u');
    expect(bench.piece().away).toBe('no');
    d.press('backspace');
    expect(bench.states()).toBe('out out out out out');
    expect(bench.piece().away).toBe('removed');
  });

  it('says so where nothing is marked, and asks which hole where none is lit', () => {
    const d = new Desk(new Bench()).open('cover').press('u');
    expect(d.frame).toContain('Which hole? Its number first.');
    d.press('2 u');
    expect(d.frame).toContain('Nothing is marked on 2 in this round.');
  });

  it('a Space takes nothing back, and Esc leaves all as it was', () => {
    const bench = new Bench().openCover();
    const d = new Desk(bench).open('cover').press('3 ] space escape');
    expect(d.step).toBe('look');
    expect(bench.states()).toBe('out out out out out');
  });
});

describe('which bolt belongs in a hole', () => {
  it('is changed on the screen, by its letter or by its length', () => {
    const d = new Desk(new Bench()).open('cover').press('2 .').type('l').press('enter');
    expect(d.bench.text).toContain('bolts: S L M+clip L S');
    d.press('2 .').type('.70').press('enter');
    expect(d.bench.hole('2').belongs?.kind).toBe('A');
    expect(d.bench.job.upper.kinds.get('A')).toMatchObject({ length: 70, thread: 'M6' });
  });

  it('has another letter, everywhere, in one line of the diary', () => {
    const d = new Desk(new Bench().openCover()).open('cover').press('1 .').type('= L20');
    d.press('enter');
    expect(d.frame).toContain('S is L20 now, everywhere.');
    expect(d.bench.text).toContain('bolts: L20 L20 M+clip L L20');
    expect(d.bench.entries.at(-1)).toMatchObject({ verb: 'renamed', value: 'L20', was: 'S' });
  });
});
