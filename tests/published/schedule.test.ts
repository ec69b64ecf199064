/** The scheduler held against published networks with their tables of earliest and latest times. */
import { describe, expect, it } from 'vitest';
import { schedule } from '../../src/plan/schedule.ts';

interface Network {
  name: string;
  source: string;
  length: number;
  critical: string[];
  /** activity, duration, predecessors, ES, EF, LS, LF, slack */
  rows: [string, number, string, number, number, number, number, number][];
}

const PROTOTYPE: Network = {
  name: 'seven activities, hours',
  source:
    'table printed with ES, EF, LS, LF and slack: studylib.net/doc/8378728, example 1 (one source)',
  length: 16,
  critical: ['A', 'B', 'D', 'E', 'G'],
  rows: [
    ['A', 6, '', 0, 6, 0, 6, 0],
    ['B', 2, 'A', 6, 8, 6, 8, 0],
    ['C', 2, 'A', 6, 8, 7, 9, 1],
    ['D', 3, 'B', 8, 11, 8, 11, 0],
    ['F', 2, 'C', 8, 10, 9, 11, 1],
    ['E', 4, 'D F', 11, 15, 11, 15, 0],
    ['G', 1, 'E', 15, 16, 15, 16, 0],
  ],
};

const TEN: Network = {
  name: 'ten activities, days',
  source:
    'table printed with ES, EF, LS, LF and slack: homeworksource.com/p/4323963 (one source); predecessors read from its paths A-D-G, A-E-I, B-I, C-F-I, C-H-J',
  length: 20,
  critical: ['A', 'D', 'G'],
  rows: [
    ['A', 8, '', 0, 8, 0, 8, 0],
    ['B', 4, '', 0, 4, 7, 11, 7],
    ['C', 3, '', 0, 3, 5, 8, 5],
    ['D', 5, 'A', 8, 13, 8, 13, 0],
    ['E', 1, 'A', 8, 9, 10, 11, 2],
    ['F', 2, 'C', 3, 5, 9, 11, 6],
    ['G', 7, 'D', 13, 20, 13, 20, 0],
    ['H', 6, 'C', 3, 9, 8, 14, 5],
    ['I', 9, 'B E F', 9, 18, 11, 20, 2],
    ['J', 6, 'H', 9, 15, 14, 20, 5],
  ],
};

const ARROWS: Network = {
  name: 'activities on arrows, from node to node',
  source:
    'Taylor, Introduction to Management Science, solutions of chapter 8: scribd.com/doc/47113515 (one source)',
  length: 20,
  critical: ['1-3', '3-4', '4-5', '5-6'],
  rows: [
    ['1-2', 7, '', 0, 7, 2, 9, 2],
    ['1-3', 10, '', 0, 10, 0, 10, 0],
    ['2-4', 6, '1-2', 7, 13, 9, 15, 2],
    ['3-4', 5, '1-3', 10, 15, 10, 15, 0],
    ['3-5', 4, '1-3', 10, 14, 14, 18, 4],
    ['4-5', 3, '2-4 3-4', 15, 18, 15, 18, 0],
    ['5-6', 2, '3-5 4-5', 18, 20, 18, 20, 0],
  ],
};

const BUILDING: Network = {
  name: 'fourteen activities of a building, weeks',
  source:
    'Hillier and Lieberman, Introduction to Operations Research; durations in print at solutioninn.com 14060241 (H garbled there), predecessors and H = 9 from memory; the length of 44 weeks stands in the text',
  length: 44,
  critical: ['A', 'B', 'C', 'E', 'F', 'J', 'L', 'N'],
  rows: [
    ['A', 2, '', 0, 2, 0, 2, 0],
    ['B', 4, 'A', 2, 6, 2, 6, 0],
    ['C', 10, 'B', 6, 16, 6, 16, 0],
    ['D', 6, 'C', 16, 22, 20, 26, 4],
    ['E', 4, 'C', 16, 20, 16, 20, 0],
    ['F', 5, 'E', 20, 25, 20, 25, 0],
    ['G', 7, 'D', 22, 29, 26, 33, 4],
    ['H', 9, 'E G', 29, 38, 33, 42, 4],
    ['I', 7, 'C', 16, 23, 18, 25, 2],
    ['J', 8, 'F I', 25, 33, 25, 33, 0],
    ['K', 4, 'J', 33, 37, 34, 38, 1],
    ['L', 5, 'J', 33, 38, 33, 38, 0],
    ['M', 2, 'H', 38, 40, 42, 44, 4],
    ['N', 6, 'K L', 38, 44, 38, 44, 0],
  ],
};

describe.each([PROTOTYPE, TEN, ARROWS, BUILDING])('$name ($source)', (network) => {
  const activities = network.rows.map(([key, duration, after]) => ({
    key,
    duration,
    after: after.split(' ').filter((word) => word !== ''),
  }));

  it('has the printed times and slack', () => {
    const printed = network.rows.map(([key, , , es, ef, ls, lf, slack]) => {
      return { key, es, ef, ls, lf, slack };
    });
    expect(schedule(activities).rows).toEqual(printed);
  });

  it('has the printed length and critical path', () => {
    const { length, critical } = schedule(activities);
    expect({ length, critical }).toEqual({ length: network.length, critical: network.critical });
  });

  it('does not depend on the order in which the activities stand', () => {
    const turned = schedule(activities.toReversed());
    expect(turned.length).toBe(network.length);
    expect(turned.critical.toSorted()).toEqual(network.critical.toSorted());
  });
});
