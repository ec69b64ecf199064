/** What a check shows, and what of the input means nothing. */
import { describe, expect, test } from 'vitest';
import { MOST_LISTED } from '../../src/trace/read.ts';
import { trace } from '../../src/trace/trace.ts';
import { asked, check, suspect, words } from './cases.ts';

const list = (names: string) => words(names).map((name) => suspect(name));
const way = (name: string, along: string) => check(name, '', 1, { along: words(along) });
const faults = (...input: Parameters<typeof asked>) => trace(asked(...input)).faults;

describe('a check along a way', () => {
  test('shows all of the way up to there, the ways of the checks that it names included', () => {
    const { next } = trace(
      asked(list('tank tap filter jet'), [way('hose', 'tank tap'), way('bowl', 'hose filter')]),
    );
    expect(next).toMatchObject({ check: 'hose', bad: ['tank', 'tap'] });
  });

  test('that leads round to itself is told once, and shows what lies on the circle', () => {
    const checks = [way('x', 'y a'), way('y', 'x b'), way('z', 'x')];
    const answer = trace(asked(list('a b c'), checks));
    expect(answer.faults).toEqual([{ code: 'circle', at: 'x', says: 'y, x' }]);
    expect(answer.next).toMatchObject({ bad: ['a', 'b'], good: ['c'] });
  });
});

describe('what cannot be used is told and left out', () => {
  test('names that are not there', () => {
    const one = check('one', 'a nobody', 1, { along: ['nowhere'], behind: ['lid'] });
    expect(faults(list('a'), [one], { marks: [{ check: 'none', says: 'good' }] })).toEqual([
      { code: 'unknown-suspect', at: 'one', says: 'nobody' },
      { code: 'unknown-suspect', at: 'one', says: 'nowhere' },
      { code: 'unknown-cover', at: 'one', says: 'lid' },
      { code: 'unknown-check', at: 'none', says: 'none' },
    ]);
  });

  test('a check that could show nothing', () => {
    expect(faults(list('a'), [check('one', '')])).toEqual([
      { code: 'shows-nothing', at: 'one', says: 'one' },
    ]);
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a weight of %d', (weight) => {
    const input = asked([suspect('a', weight), suspect('b', 3)], [check('one', 'a', 4)]);
    const { faults, expected, suspects } = trace(input);
    expect(faults).toEqual([{ code: 'weight', at: 'a', says: `${weight}` }]);
    expect(expected.minutes).toBe(4);
    expect(suspects.map(({ share }) => share)).toEqual(['alike', 'alike']);
  });

  test('a name a second time', () => {
    expect(faults(list('a a'), [])).toEqual([{ code: 'twice', at: 'a', says: 'a' }]);
  });

  test('more than anybody looks through', () => {
    const many = Array.from({ length: MOST_LISTED + 1 }, (_, i) => suspect(`s${i}`));
    expect(faults(many, [])).toEqual([
      { code: 'too-many', at: `s${MOST_LISTED}`, says: `${MOST_LISTED}` },
    ]);
  });
});

test('times that are none count as missing, and weights far apart still add up', () => {
  const { expected, untimed } = trace(
    asked(
      [suspect('a', 1e300), suspect('b', 1e-300), suspect('c', 1)],
      [check('one', 'a', -5), check('two', 'b', Number.NaN), check('three', 'c', 6)],
    ),
  );
  expect(untimed.checks).toEqual(['one', 'two']);
  expect(expected.exact).toBe(true);
  expect(expected.minutes).toBeCloseTo(6, 6);
});
