/** What a person sees of a trace: an engine that won't start, and what is looked at next. */
import { describe, expect, test } from 'vitest';
import { trace } from '../../src/trace/trace.ts';
import { NOT_LISTED } from '../../src/trace/types.ts';
import { asked, check, cover, marks, suspect } from './cases.ts';

const SUSPECTS = [
  suspect('float', 'often'),
  suspect('coil', 'now and then'),
  suspect('plug', 'now and then'),
  suspect('switch', 'rarely'),
];
const CHECKS = [
  check('spark', 'coil switch plug', 3),
  check('primary', 'coil', 5, { behind: ['tank'] }),
  check('newplug', 'plug', 3),
  check('unplugged', 'switch', 2),
];
const COVERS = [cover('tank', 10)];
const wontStart = (done = '') =>
  trace(asked(SUSPECTS, CHECKS, { covers: COVERS, marks: marks(done) }));

describe('before anything was looked at', () => {
  const answer = wontStart();

  test('suspects stand in order, each with a word for its share', () => {
    expect(answer.suspects.map(({ name, share }) => `${name}: ${share}`)).toEqual([
      'float: often',
      'coil: now and then',
      'plug: now and then',
      'switch: rarely',
    ]);
  });

  test('the next look says what good and what bad would leave', () => {
    expect(answer.next).toEqual({
      ...{ check: 'spark', minutes: 3, opens: [] },
      ...{ good: ['float'], bad: ['coil', 'plug', 'switch'] },
    });
  });

  test('the whole of it takes 5.33 min in the mean', () => {
    // Spark 3 for all nine parts; a new plug 3 for five of them, the switch 2 for the three that it leaves;
    // the coil behind the tank is never looked at.
    expect(answer.expected).toEqual({
      ...{ minutes: 5.33333333333, exact: true, bound: 5.33333333333 },
      ...{ ratio: 1, unit: 'minutes' },
    });
  });
});

describe('with looks made', () => {
  test('a good one clears what it would have shown, a bad one what it does not show', () => {
    const { suspects, next } = wontStart('spark:bad unplugged:unclear');
    expect(suspects.map(({ name, cleared }) => `${name}: ${cleared}`)).toEqual([
      'coil: ',
      'plug: ',
      'switch: ',
      'float: spark',
    ]);
    expect(next?.check).toBe('newplug');
  });

  test('one left is said to be left, and what would show it comes last', () => {
    const answer = trace(
      asked(SUSPECTS, CHECKS, {
        covers: COVERS,
        marks: marks('spark:bad unplugged:good newplug:good'),
      }),
    );
    expect(answer.suspects[0]).toEqual({ name: 'coil', share: 'left', cleared: [] });
    expect(answer.next).toBeNull();
    expect(answer.expected.minutes).toBe(0);
    expect(answer.proof).toEqual({
      ...{ check: 'primary', minutes: 15, opens: ['tank'] },
      ...{ good: [NOT_LISTED], bad: ['coil'] },
    });
  });

  test('two that no check here tells apart end it together', () => {
    const { next, suspects, proof } = trace(
      asked([suspect('a'), suspect('b'), suspect('c')], [check('one', 'a b'), check('two', 'c')], {
        marks: marks('two:good'),
      }),
    );
    expect(next).toBeNull();
    expect(suspects.map(({ share }) => share)).toEqual(['alike', 'alike', 'cleared']);
    expect(proof?.check).toBe('one');
  });

  test('the last good or bad of a check counts', () => {
    expect(wontStart('unplugged:bad unplugged:good unplugged:unclear').suspects.at(-1)).toEqual({
      ...{ name: 'switch', share: 'cleared', cleared: ['unplugged'] },
    });
  });
});

describe('behind the same cover', () => {
  const suspects = ['a', 'b', 'c', 'd'].map((name) => suspect(name));
  const covers = [cover('tank', 20)];

  test('what has to come off first is paid once on a way', () => {
    const checks = ['a', 'b', 'c'].map((name) => check(name, name, 1, { behind: ['tank'] }));
    const { next, expected } = trace(asked(suspects, checks, { covers }));
    expect(next).toMatchObject({ minutes: 21, opens: ['tank'] });
    expect(expected.minutes).toBe(20 + (1 + 2 + 3 + 3) / 4);
  });

  test('a longer look in front of it goes before a short one behind it', () => {
    const checks = [check('quick', 'a b', 1, { behind: ['tank'] }), check('slow', 'a b', 15)];
    expect(trace(asked(suspects, checks, { covers })).next).toMatchObject({ check: 'slow' });
  });
});

describe('what is not known', () => {
  test('times missing are alike, and it says whose', () => {
    const { next, untimed, expected } = trace(
      asked(
        [suspect('a'), suspect('b'), suspect('c', null, 30)],
        [check('x', 'a', 4), check('y', 'b', null, { behind: ['lid'] })],
        { covers: [cover('lid', null)] },
      ),
    );
    expect(next?.check).toBe('x');
    expect(untimed).toEqual({ checks: ['y'], covers: ['lid'], repairs: ['a', 'b'] });
    expect(expected.unit).toBe('minutes');
  });

  test('with no time at all looks are counted', () => {
    const { expected } = trace(asked([suspect('a'), suspect('b')], [check('x', 'a', null)]));
    expect(expected).toMatchObject({ minutes: 1, unit: 'looks' });
  });

  test('nobody knows how likely: all are alike', () => {
    const { suspects } = trace(asked([suspect('a'), suspect('b')], []));
    expect(suspects.map(({ share }) => share)).toEqual(['alike', 'alike']);
  });

  test('relative weights have the words of their size against the heaviest', () => {
    const { suspects } = trace(
      asked([suspect('a', 0.1), suspect('b', 0.7), suspect('c', 0.3)], []),
    );
    expect(suspects.map(({ share }) => share)).toEqual(['often', 'now and then', 'rarely']);
  });

  test('nothing listed is no answer and no conflict', () => {
    expect(trace(asked([], []))).toMatchObject({ suspects: [], next: null, conflict: null });
  });
});

test('what repairs itself goes by chance over time', () => {
  const { order } = trace(
    asked([suspect('pump', 'often', 60), suspect('fuse', 'rarely', 2), suspect('wire')], []),
  );
  // 4 in 60 min, 1 in 2, and 2.5 in the mean of these, 31.
  expect(order).toEqual(['fuse', 'wire', 'pump']);
});

test('a suspect added late takes part at once', () => {
  const late = [...SUSPECTS, suspect('relay', 'often')];
  const answer = trace(asked(late, CHECKS, { covers: COVERS, marks: marks('unplugged:good') }));
  expect(answer.suspects.slice(0, 2).map(({ name }) => name)).toEqual(['float', 'relay']);
  expect(answer.next?.good).toEqual(['float', 'relay']);
});
