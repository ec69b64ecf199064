import { describe, expect, test } from 'vitest';
import { irreducibleFlows } from '../../../src/piece/mixup/flows.ts';

const anywhere = () => true;

describe('flows of wrong bolts, counted by hand', () => {
  test('one over, one missing, four kinds, three wrong holes: straight, by one, by two', () => {
    // 1 + 2 + 2 × 1 ways past the other two kinds.
    const { flows, complete } = irreducibleFlows({ over: [1, -1, 0, 0], bound: 3, room: anywhere });
    expect(flows).toHaveLength(5);
    expect(complete).toBe(true);
  });

  test('three kinds over by ten and three missing by ten: 2,211 tables', () => {
    // Number of 3 × 3 tables of whole numbers whose rows and columns add up to r: 3 C(r+3, 4) + C(r+2, 2)
    // (MacMahon, Combinatory Analysis, 1916; cited from memory), for r = 10.
    const over = [10, 10, 10, -10, -10, -10];
    const { flows, complete } = irreducibleFlows({ over, bound: 30, room: anywhere });
    expect(flows).toHaveLength(3 * 715 + 66);
    expect(complete).toBe(true);
  });

  test('more than 2,500 are not listed, and that is said', () => {
    const over = [30, 30, 30, -30, -30, -30];
    const { flows, complete } = irreducibleFlows({ over, bound: 90, room: anywhere });
    expect(flows).toHaveLength(2500);
    expect(complete).toBe(false);
  });

  test('sums that do not add up, or more than the bound, have none', () => {
    expect(irreducibleFlows({ over: [1, 0], bound: 3, room: anywhere }).flows).toEqual([]);
    expect(irreducibleFlows({ over: [4, -4], bound: 3, room: anywhere }).flows).toEqual([]);
    expect(irreducibleFlows({ over: [0, 0], bound: 3, room: anywhere }).flows).toEqual([[[], []]]);
  });
});
