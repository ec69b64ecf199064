import { describe, expect, test } from 'vitest';
import { fit } from '../../../src/bolt/fit/fit.ts';
import type { HoleSpec } from '../../../src/model/types.ts';
import { mixup } from '../../../src/piece/mixup/mixup.ts';
import type { Explanation, FitOf } from '../../../src/piece/mixup/types.ts';
import { hole, kindsOf, row, SML, tray } from './make.ts';

/** `S<L in 1 2`: a hole for S holds L, and is one of 1 and 2. */
const short = (e: Explanation) =>
  e.holes.map((h) => `${h.takes}<${h.holds} in ${h.among.join(' ')}`).join('; ');
const ask = (holes: string, left: string) =>
  mixup({ holes: row(holes), left: tray(left), kinds: SML });

describe('bolts left over', () => {
  test('an S over and the last L missing: one of the full S holes holds it, or it went by way of an M', () => {
    const answer = ask('S S M S l', 'S');
    expect(answer.surplus).toEqual({ S: 1 });
    expect(answer.missing).toEqual({ L: 1 });
    expect(answer.count).toBeNull();
    expect(answer.explanations.map(short)).toEqual(['S<L in 1 2 4', 'S<M in 1 2 4; M<L in 3']);
    expect(answer.explanations.map((e) => e.wrong)).toEqual([1, 2]);
  });

  test('the tray is as it should be: nothing to explain, and what it cannot show is said', () => {
    const answer = ask('S S M s l', 'S L');
    expect(answer).toMatchObject({ surplus: {}, missing: {}, count: null, explanations: [] });
    expect(answer.check).toEqual([]);
    expect(answer.invisible).toBe(
      'Two bolts swapped for each other leave no trace in a tray: of M and S it cannot say that each is in its own hole.',
    );
  });

  test('one kind only: no two can have been swapped', () => {
    expect(ask('S S s', 'S').invisible).toBeNull();
    expect(ask('S s m', 'S M').invisible).toBeNull();
  });

  test('bolts of another thread, or the same bolt under two letters, are no swap that anybody would look for', () => {
    const kinds = kindsOf({ A: 'M6x25', B: 'M8x25' });
    const holes = [hole('1', 'A', 'in'), hole('2', 'B', 'in')];
    expect(mixup({ holes, left: new Map(), kinds }).invisible).toBeNull();
    const twins = kindsOf({ A: 'M6x25 flange', B: 'M6x25 flange' });
    expect(mixup({ holes, left: new Map(), kinds: twins }).invisible).toBeNull();
  });

  test('two wrong bolts: both ways in which they can lie, the ones that look right first', () => {
    const answer = ask('L L L s s', 'L L');
    expect(answer.explanations.map(short)).toEqual(['L<S in 1 2 3; L<S in 1 2 3']);
    const two = ask('S L m l', 'S L');
    expect(two.surplus).toEqual({ S: 1 });
    expect(two.missing).toEqual({ M: 1 });
    expect(two.explanations.map(short)).toEqual(['S<M in 1', 'S<L in 1; L<M in 2']);
  });

  test('a bolt too short, which goes in like the right one, ranks before one that stands off', () => {
    const kinds = kindsOf({ A: 'M6x20', B: 'M6x25', C: 'M6x30', D: 'M6x60' });
    const holes = ['D', 'B', 'C'].map((k, i) => hole(`${i + 1}`, k, 'in'));
    const answer = mixup({ holes: [...holes, hole('4', 'A', 'out')], left: tray('D'), kinds });
    expect(answer.explanations.map((e) => [e.wrong, e.hard, short(e)])).toEqual([
      [1, 1, 'D<A in 1'],
      [2, 2, 'D<B in 1; B<A in 2'],
      [2, 2, 'D<C in 1; C<A in 3'],
      [3, 3, 'D<C in 1; C<B in 3; B<A in 2'],
      [3, 4, 'D<B in 1; B<C in 2; C<A in 3'],
    ]);
  });

  test('a hole that was never touched, or is empty, is not among them', () => {
    const holes = [...row('S S l'), hole('4', 'S', 'home'), hole('4a', 'S', 'tight')];
    const answer = mixup({ holes, left: tray('S'), kinds: SML });
    expect(answer.explanations.map(short)).toEqual(['S<L in 1 2 4a']);
  });

  test('the way to settle it is said for every wrong hole, and where to look first', () => {
    const answer = ask('S S M S l', 'S');
    expect(answer.explanations[0]?.holes[0]?.look).toBe(
      'Its head should stay off the seat, up to 30 mm; if it is down, take it out and measure it: 55 mm under the head, not 25 mm.',
    );
    expect(answer.check.map((c) => c.hole)).toEqual(['1', '2', '4']);
    expect(answer.check[0]?.look).toMatch(/^L instead of S\? Its head should stay off/);
  });

  test('a look at a shorter bolt, another head, another tool, another thread, another mark', () => {
    const kinds = kindsOf({
      A: 'M6x25 8.8 flange, 8 mm',
      B: 'M6x20 8.8 flange, 8 mm',
      C: 'M6x25 8.8 socket, 5 mm Allen',
      D: 'M6x20 8.8 flange, 10 mm',
      E: 'M8x25 8.8 flange, 8 mm',
      F: 'M6x25 10.9 flange, 8 mm',
      G: 'M6x25 8.8 LH flange, 8 mm',
      H: 'flange',
    });
    const look = (holds: string) => {
      const holes = [hole('1', 'A', 'in'), hole('2', holds, 'out')];
      return mixup({ holes, left: tray('A'), kinds }).explanations[0]?.holes[0]?.look;
    };
    expect(look('B')).toMatch(/^It looks right from outside; take it out and measure it: 20 mm/);
    expect(look('C')).toBe('Look at the head: socket, not flange.');
    expect(look('D')).toBe('Try the tool: 10 mm, not 8 mm.');
    expect(look('E')).toMatch(/^Turn it: M8 in a hole for M6 jams/);
    expect(look('G')).toMatch(/^Turn it: M6 left-hand in a hole for M6 jams/);
    expect(look('F')).toBe('Read the mark on the head: 10.9, not 8.8.');
    expect(look('H')).toMatch(/^Take it out and lay it beside one that is known/);
  });

  test('kinds of which nothing but the letter is known are explained all the same', () => {
    const answer = mixup({ holes: row('S S x'), left: tray('S'), kinds: new Map() });
    expect(answer.explanations.map(short)).toEqual(['S<X in 1 2']);
  });

  test('no holes, no bolts, or a count that is no number: an answer all the same', () => {
    const none = { surplus: {}, missing: {}, count: null, explanations: [], check: [] };
    expect(mixup({ holes: [], left: new Map(), kinds: new Map() })).toMatchObject(none);
    const left = new Map([...tray('S'), ['M', Number.NaN] as const, ['L', -2] as const]);
    expect(mixup({ holes: row('S s'), left, kinds: SML })).toMatchObject(none);
  });

  test('a hole that nobody has named is left out, and said; while it is empty nothing can be counted', () => {
    const full = mixup({
      holes: [...row('S S l'), hole('9', null, 'in')],
      left: tray('S'),
      kinds: SML,
    });
    expect(full.unknown).toEqual(['9']);
    expect(full.explanations.map(short)).toEqual(['S<L in 1 2']);
    const empty = mixup({
      holes: [...row('S S l'), hole('9', '?', 'out')],
      left: tray('S L'),
      kinds: SML,
    });
    expect(empty.explanations).toEqual([]);
    expect(empty.count?.over).toBe(0);
    expect(empty.count?.say).toBe(
      'Nobody has said what hole 9 takes: settle that first, then count.',
    );
  });
});

describe('a count that does not add up', () => {
  test('a bolt too few: look for it before anything is closed', () => {
    const answer = ask('S S s l', 'S');
    expect(answer).toMatchObject({ surplus: {}, missing: { L: 1 }, explanations: [] });
    expect(answer.count).toEqual({
      over: -1,
      say: '1 bolt too few; missing is 1 L (55 mm). Look in the case, on the floor and in the other trays before anything is closed.',
    });
    expect(answer.check).toEqual([{ hole: '4', look: 'Is it really empty?' }]);
  });

  test('a bolt too many: a hole was passed over, and which to look at', () => {
    const answer = ask('S M S l', 'S L');
    expect(answer.count?.over).toBe(1);
    expect(answer.count?.say).toBe(
      '1 bolt too many; over is 1 S (25 mm). A hole was passed over, or it comes from elsewhere.',
    );
    expect(answer.check.map((c) => c.hole)).toEqual(['1', '3']);
  });

  test('one too few, and wrong ones besides', () => {
    const answer = ask('S S M m l', 'S');
    expect(answer.count?.over).toBe(-1);
    expect(answer.count?.say).toContain('1 S (25 mm) is over besides: ask again when it is found.');
  });

  test('a bolt that no hole of the piece takes', () => {
    const answer = mixup({ holes: row('S S m'), left: tray('L'), kinds: SML });
    expect(answer.explanations).toEqual([]);
    expect(answer.count?.over).toBe(0);
    expect(answer.count?.say).toContain('more L than this piece could have left');
  });

  test('before anything goes back, an M taken for an S', () => {
    const answer = ask('s s m', 'S S S');
    expect(answer.count?.say).toContain('over is 1 S (25 mm) and missing is 1 M (35 mm)');
    expect(answer.count?.say).toContain('one was taken for another kind');
    expect(ask('s s m', 'S M S').count).toBeNull();
  });
});

describe('heights and marks narrow it', () => {
  const spec = (name: string): HoleSpec => ({
    ...{ name, note: null, thick: 16, thread: { from: 3, to: 19 }, turns: null, proud: null },
    ...{ at: null, torque: null, into: null, wet: false, group: null },
  });
  /** Every hole is 16 thick and threaded from 3 to 19: S stands 6 off, M 16, L 36. */
  const fitOf: FitOf = (letter, name) => {
    const kind = SML.get(letter);
    const own = SML.get(name === '3' ? 'M' : 'S');
    if (!kind || !own) return null;
    return fit(kind, null, { takes: { kind: own, with: [] }, hole: spec(name), piece: null });
  };
  const measured = (heights: Record<string, number>, holes = 'S S M S l', left = 'S') =>
    mixup({
      holes: row(holes).map((h) => ({ ...h, proud: heights[h.name] ?? null })),
      ...{ left: tray(left), kinds: SML, fitOf },
    });

  test('a hole whose head stands as it should is not among them', () => {
    const answer = measured({ 1: 6, 2: 5.5 });
    expect(answer.explanations.map(short)).toEqual(['S<L in 4', 'S<M in 4; M<L in 3']);
  });

  test('one that stands 30 mm too high is the one', () => {
    const answer = measured({ 2: 36.5 });
    expect(answer.explanations.map(short)).toEqual(['S<L in 2']);
    expect(answer.explanations[0]?.holes[0]?.look).toMatch(/^It stands 36.5 mm off\./);
  });

  test('a swap that the tray could not show: the height gives it away, and says where its fellow is', () => {
    const answer = measured({ 2: 16 }, 'S S M S l', 'L');
    expect(answer).toMatchObject({ surplus: {}, missing: {}, count: null });
    expect(answer.explanations.map(short)).toEqual(['S<M in 2; M<S in 3']);
  });

  test('a height that no kind has: measure again, and nothing is narrowed', () => {
    const answer = measured({ 1: 25 });
    expect(answer.explanations[0] && short(answer.explanations[0])).toBe('S<L in 1 2 4');
    expect(answer.check[0]).toEqual({
      hole: '1',
      look: expect.stringMatching(
        /^It stands 25 mm off, as no kind here would: measure it again\./,
      ),
    });
  });

  test('a height as of a kind that no hole here takes is no kind of this piece', () => {
    const answer = measured({ 1: 16 }, 'S S S l', 'S');
    expect(answer.explanations.map(short)).toEqual(['S<L in 1 2 3']);
    expect(answer.check[0]?.look).toMatch(/^It stands 16 mm off, as no kind here would/);
    const both = measured({ 1: 16 }, 'S S s l', 'S L M');
    expect(both.explanations).toEqual([]);
    expect(both.count?.over).toBe(1);
    expect(both.check[0]?.look).toMatch(/^It stands 16 mm off, as no kind here would/);
  });

  test('a height typed for an empty hole says nothing of the full ones', () => {
    const mm: Record<string, number> = { 1: 10, 2: 40, 4: 40 };
    const holes = row('L L s l').map((h) => ({ ...h, proud: mm[h.name] ?? null }));
    const answer = mixup({ holes, left: tray('L L'), kinds: SML });
    expect(answer.explanations.map(short)).toEqual(['L<S in 1 2']);
  });

  test('twelve heads that can each be one of two: not every way is listed, and that is said', () => {
    const kinds = kindsOf({ A: 'M6x20', B: 'M6x30', C: 'M6x31' });
    const a = Array.from({ length: 12 }, (_, i) => ({ ...hole(`${i + 1}`, 'A', 'in'), proud: 15 }));
    const right = { ...hole('13', 'A', 'in'), proud: 5 };
    const [b, c] = ['B', 'C'].map((k) =>
      Array.from({ length: 6 }, (_, i) => hole(`${k === 'B' ? 14 + i : 20 + i}`, k, 'out')),
    );
    const answer = mixup({
      ...{ holes: [...a, right, ...(b ?? []), ...(c ?? [])], kinds },
      left: new Map([['A', 12]]),
      fitOf: () => ({
        ...{ verdict: 'right', sure: true, engagement: null, bottomsBy: null, sticksOut: null },
        ...{ proud: 5, byLength: null, measure: [], why: '' },
      }),
    });
    expect(answer.complete).toBe(false);
    expect(answer.count).toBeNull();
    expect(answer.explanations.length).toBeGreaterThan(0);
    for (const e of answer.explanations) expect(e.wrong).toBe(12);
  });

  test('without measures of the holes, the others that take the same show the odd one', () => {
    const holes = row('S S S S l').map((h) => ({ ...h, proud: h.name === '3' ? 40 : 10 }));
    const answer = mixup({ holes, left: tray('S'), kinds: SML });
    expect(answer.explanations.map(short)).toEqual(['S<L in 3']);
  });

  test('heads that all stand off alike narrow nothing: the piece is not down, or nobody knows', () => {
    const answer = measured({ 1: 16, 2: 16.5, 4: 15.5 });
    expect(answer.explanations[0] && short(answer.explanations[0])).toBe('S<L in 1 2 4');
    expect(answer.check[0]?.look).toMatch(/all others are off alike: see that the piece is down/);
  });

  test('heights that contradict the tray are said, not explained away', () => {
    const answer = measured({ 1: 6, 2: 6, 3: 16, 4: 6 });
    expect(answer.explanations).toEqual([]);
    expect(answer.count).toMatchObject({
      over: 0,
      say: expect.stringContaining('count and measure again'),
    });
  });

  test('a wrong bolt put in on purpose is known, and the tray is counted with it', () => {
    const holes = row('S S M m').map((h) =>
      h.name === '2' ? { ...h, holds: { kind: 'M', with: [] } } : h,
    );
    const answer = mixup({ holes, left: tray('S'), kinds: SML });
    expect(answer.explanations.map(short)).toEqual(['S<M in 2']);
    expect(answer.explanations[0]?.holes[0]?.look).toBe('Marked so when it went in.');
    const bought = mixup({
      holes: row('S S s').map((h) =>
        h.name === '2' ? { ...h, holds: { kind: 'N', with: [] } } : h,
      ),
      ...{ left: tray('S S'), kinds: SML },
    });
    expect(bought.count).toBeNull();
    expect(bought.explanations.map(short)).toEqual(['S<N in 2']);
  });
});
