/** When nobody on the list fits what the looks say. */
import { describe, expect, test } from 'vitest';
import { hittingSets } from '../../src/trace/hitting.ts';
import { trace } from '../../src/trace/trace.ts';
import { NOT_LISTED } from '../../src/trace/types.ts';
import { asked, check, marks, seeded, suspect, words } from './cases.ts';

const list = (names: string) => words(names).map((name) => suspect(name));

describe('two bad looks with no suspect in common', () => {
  const input = asked(
    [suspect('a', 'rarely'), suspect('b', 'often'), suspect('c', 'often'), suspect('d', 'rarely')],
    [check('one', 'a b', 9), check('two', 'c d', 2)],
    { marks: marks('one:bad two:bad') },
  );
  const { conflict, next, suspects } = trace(input);

  test('two faults at once explain them, the likeliest first, or something that is not listed', () => {
    expect(conflict?.diagnoses).toEqual([
      ['b', 'c'],
      ['b', 'd'],
      ['c', 'a'],
      ['a', 'd'],
      [NOT_LISTED],
    ]);
  });

  test('or one of the looks was wrong; the one that is soonest made again is named', () => {
    expect(conflict?.doubts).toEqual([['two'], ['one']]);
    expect(conflict?.again).toBe('two');
  });

  test('there is no next look, and nobody is left', () => {
    expect(next).toBeNull();
    expect(suspects.map(({ share }) => share)).toEqual(Array.from({ length: 4 }, () => 'cleared'));
  });
});

describe('all cleared', () => {
  test('by good looks: it is something that is not listed, or a look was wrong', () => {
    const { conflict } = trace(
      asked(list('a b'), [check('one', 'a'), check('two', 'b'), check('again', 'b', 5)], {
        marks: marks('one:good two:good again:good'),
      }),
    );
    expect(conflict).toEqual({
      ...{ diagnoses: [[NOT_LISTED]], doubts: [['one'], ['two', 'again']] },
      ...{ again: 'one', larger: false },
    });
  });

  test('what a good look cleared explains no bad one', () => {
    const { conflict } = trace(
      asked(list('a b c'), [check('one', 'a b'), check('two', 'b c'), check('three', 'b')], {
        marks: marks('one:bad two:bad three:good'),
      }),
    );
    expect(conflict?.diagnoses).toEqual([['a', 'c'], [NOT_LISTED]]);
  });

  test('a suspect that is added then is left', () => {
    const { conflict, suspects } = trace(
      asked(list('a late'), [check('one', 'a')], { marks: marks('one:good') }),
    );
    expect(conflict).toBeNull();
    expect(suspects[0]).toEqual({ name: 'late', share: 'left', cleared: [] });
  });
});

test('four faults at once are not listed, and it says that there may be more', () => {
  const { conflict } = trace(
    asked(
      list('a b c d'),
      words('a b c d').map((name) => check(`of-${name}`, name)),
      { marks: marks('of-a:bad of-b:bad of-c:bad of-d:bad') },
    ),
  );
  expect(conflict?.diagnoses).toEqual([[NOT_LISTED]]);
  expect(conflict?.larger).toBe(true);
});

test('the sets are all the minimal ones: against all sets of up to three', () => {
  const random = seeded(8);
  const names = words('a b c d e f g');
  const key = (set: readonly string[]) => set.toSorted().join('');
  for (let round = 0; round < 500; round += 1) {
    const conflicts = Array.from({ length: 1 + Math.floor(random() * 4) }, () =>
      names.filter(() => random() < 0.4),
    );
    const subsets = Array.from({ length: 2 ** names.length }, (_, bits) =>
      names.filter((_, i) => ((bits >> i) & 1) === 1),
    );
    const hits = (set: readonly string[]) =>
      conflicts.every((conflict) => conflict.some((name) => set.includes(name)));
    const minimal = subsets.filter(
      (set) => hits(set) && set.every((one) => !hits(set.filter((other) => other !== one))),
    );
    const { sets, more } = hittingSets(conflicts, 3);
    expect(sets.map(key).toSorted()).toEqual(
      minimal
        .filter((set) => set.length <= 3)
        .map(key)
        .toSorted(),
    );
    if (!more) expect(minimal.every((set) => set.length <= 3)).toBe(true);
  }
});
