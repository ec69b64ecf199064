/** No way of looking takes less: against all ways there are, on seeded random cases. */
import { describe, expect, test } from 'vitest';
import { trace } from '../../src/trace/trace.ts';
import { bruteMinutes, minutesOfWay } from './brute.ts';
import { randomCase, seeded } from './cases.ts';

/** Two thousand cases of up to six suspects and six checks. */
function agree(seed: number, cases: number, covers: (random: () => number) => number): void {
  const random = seeded(seed);
  for (let round = 0; round < cases; round += 1) {
    const input = randomCase(random, {
      suspects: 1 + Math.floor(random() * 6),
      checks: 1 + Math.floor(random() * 6),
      covers: covers(random),
      shows: [0.1, 0.9],
    });
    const { expected, way } = trace(input);
    expect(expected.exact).toBe(true);
    expect(expected.minutes).toBeCloseTo(bruteMinutes(input), 9);
    expect(expected.bound).toBe(expected.minutes);
    expect(minutesOfWay(way, input)).toBeCloseTo(expected.minutes, 9);
  }
}

describe('the expected minutes are the least of all ways', () => {
  test('on a thousand cases without covers', () => agree(1, 1000, () => 0));
  test('on a thousand cases with up to three covers, shared and not', () =>
    agree(2, 1000, (random) => 1 + Math.floor(random() * 3)));
});

describe('sixteen suspects', () => {
  test('and two dozen checks are done exactly, also behind shared covers', () => {
    const random = seeded(3);
    for (const covers of [0, 3, 6, 12]) {
      const sizes = { suspects: 16, checks: 24, covers, shows: [0.1, 0.5] } as const;
      const input = randomCase(random, sizes);
      const { expected, way } = trace(input);
      expect(expected.exact).toBe(true);
      expect(minutesOfWay(way, input)).toBeCloseTo(expected.minutes, 9);
    }
  });
});
