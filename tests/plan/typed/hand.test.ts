import { describe, expect, it } from 'vitest';
import { handWish } from '../../../src/plan/typed/hand.ts';
import { readTyped } from '../../../src/plan/typed/row.ts';
import { pressDigit } from '../../../src/screens/kit/digits.ts';
import { lessHand, pressHand } from '../../../src/screens/piece/hand-press.ts';
import { Bench } from '../../job/bench.ts';

const job = new Bench().job;
const many = new Bench(
  'putback: 1\njob: Lid\nbolts: {M1: M6x16, M2: M6x20, s: M8x30, S: M8x40}\npieces:\n  lid: {bolts: M1 M2 s S}\ndiary:\n',
).job;

/** What is in the hand after these keys; `-` for a key that is about something else. */
function typed(keys: string, of = job): string {
  let hand = '';
  for (const key of keys.split(' ')) hand = pressHand(hand, key, of) ?? `${hand}-`;
  return hand;
}

describe('what is in the hand', () => {
  it.each([
    ['s', { kind: 'S' }],
    ['S', { kind: 'S' }],
    ['s m', { kind: 'M' }],
    ['m + c l i p', { kind: 'M', with: ['clip'] }],
    ['m +', { kind: 'M', with: [] }],
    ['. 2 5', { length: 25 }],
    ['. 1 2 . 5', { length: 12.5 }],
    ['. 1 - 1 / 2', { length: 38.1 }],
    ['. 1 - 1 / 4 "', { length: 31.75 }],
    ['. 1 . 5 "', { length: 38.1 }],
    ['. 1 "', { length: 25.4 }],
    // No bolt is so short: an inch without its sign, or one whose fraction is still to come.
    ['. 1', null],
    ['. 1 . 5', null],
    ['m + s e a l i n g space w a s h e r', { kind: 'M', with: ['sealing-washer'] }],
    ['m + c l i p + 2 . 5', { kind: 'M', with: ['clip', '2.5'] }],
    ['m + a !', null],
    ['. s', { kind: 'S' }],
    ['.', null],
  ])('%s', (keys, wish) => {
    expect(handWish(typed(keys), job)).toEqual(wish);
  });

  it('of kinds with longer names is told by their next letter or digit', () => {
    expect(handWish(typed('m', many), many)).toBeNull();
    expect(handWish(typed('m 2', many), many)).toEqual({ kind: 'M2' });
    expect(handWish(typed('m 2 m 1', many), many)).toEqual({ kind: 'M1' });
    expect(handWish(typed('s', many), many)).toEqual({ kind: 's' });
    expect(handWish(typed('S', many), many)).toEqual({ kind: 'S' });
  });

  it('is none of the keys that mean something else', () => {
    for (const key of ['1', '-', '!', 'x', 'space', 'up', 'ctrl-s', '?'])
      expect(pressHand('', key, job)).toBeNull();
    expect(pressHand('S', '1', job)).toBeNull();
  });

  it.each([
    ['. 2 5 4', '.25-', 'behind a length that is known'],
    ['. 2 0 4', '.20-', 'behind two digits'],
    ['. 1 0 0', '.100', 'but a hundred and more is a length'],
    ['. 2 0 0', '.200', 'and two hundred: no hole is 0'],
    ['. 3 / 8', '.3/8', 'and so is a fraction'],
    ['. 1 2 . 5', '.12.5', 'and what stands behind a point'],
    ['. 1 . 5 " 4', '.1.5"-', 'behind the sign of inches'],
    ['. 1 " . 5', '.5', 'and a dot begins another'],
  ])('%s: a digit is that of a hole %s (%s)', (keys, hand) => {
    expect(typed(keys)).toBe(hand);
  });

  it('a length that begins like a longer one goes on', () => {
    const text =
      'putback: 1\njob: Lid\nbolts: {A: M6x20, B: M6x200}\npieces:\n  lid: {bolts: A B}\ndiary:\n';
    expect(typed('. 2 0 0', new Bench(text).job)).toBe('.200');
  });

  it('is put down, a length and what is under the head sign by sign', () => {
    expect(lessHand('M')).toBe('');
    expect(lessHand('.25')).toBe('.2');
    expect(lessHand('.')).toBe('');
    expect(lessHand('M+cl')).toBe('M+c');
  });
});

describe('digits', () => {
  const names = ['1', '2', '4', '4a', '11', '12', '20'];
  const after = (keys: string) => {
    let typedSoFar = '';
    let here: string | null = null;
    for (const key of keys.split(' ')) {
      const pointed = pressDigit(typedSoFar, key, names);
      typedSoFar = pointed?.typed ?? '';
      here = pointed?.here ?? here;
    }
    return here;
  };

  it.each([
    ['1', '1'],
    ['1 1', '11'],
    ['1 2', '12'],
    ['1 1 2', '2'],
    ['2 0', '20'],
    ['2 1', '1'],
    ['4 a', '4a'],
    ['4 A', '4a'],
    ['9', null],
  ])('%s is hole %s', (keys, hole) => {
    expect(after(keys)).toBe(hole);
  });

  it('a letter alone is no hole', () => {
    expect(pressDigit('', 'a', names)).toBeNull();
    expect(pressDigit('1', 'x', names)).toBeNull();
  });
});

describe('a row being typed', () => {
  const piece = new Bench().piece();
  const words = (text: string) => readTyped(text, job, piece).map((w) => w.word);

  it.each([
    ['s s m+clip l s', ['S', 'S', 'M+clip', 'L', 'S']],
    ['ssm+clip', ['S', 'S', 'M+clip']],
    ['s!-?', ['S', '!', '-', '?']],
    ['.35 s', ['.35', 'S']],
    ['x s', ['X', 'S']],
    ['sxs', ['sxs']],
    ['', []],
  ])('%s', (text, expected) => {
    expect(words(text)).toEqual(expected);
  });

  it('knows which letters are new in the job', () => {
    expect(readTyped('s x ! .35 ?', job, piece).map((w) => w.isNew)).toEqual([
      false,
      true,
      false,
      false,
      false,
    ]);
  });
});
