import { describe, expect, it } from 'vitest';
import { lookAlikes } from '../../../src/bolt/thread/lookalikes.ts';

const pairs = (...threads: string[]) => lookAlikes(threads).map((p) => `${p.a} / ${p.b}`);

describe('threads that start and ruin', () => {
  // Common practice, no source: the pairs that the trade warns of.
  it.each([
    ['10-32 UNF', 'M5x0.8'],
    ['5/16-18', 'M8'],
    ['3/8-16', 'M10x1.5'],
    ['1/4-20', 'M6'],
    ['1/4-28', 'M6'],
    ['M10x1.5', 'M10x1.25'],
    ['M10x1.25', 'M10x1'],
    ['M10', 'M10x1'],
    ['M8', 'M8x1'],
    ['1/8 NPT', 'M10x1'],
    ['1/8 NPT', 'G1/8'],
    ['1/4 NPT', 'M14x1.5'],
    ['0 BA', 'M6'],
    ['2BA', '10-32 UNF'],
    ['1/4 BSW', '1/4-20 UNC'],
    ['1/4 BSF', 'M6'],
    ['5/16 BSF', 'M8'],
  ])('%s and %s are named', (a, b) => {
    expect(lookAlikes([a, b])).toHaveLength(1);
    expect(lookAlikes([b, a])).toHaveLength(1);
  });

  it.each([
    ['M6', 'M8'],
    ['M6', 'M6x1'],
    ['M5', 'M6'],
    ['1/4-20', '5/16-18'],
    ['3/8-16', 'M10x1'],
    ['2BA', 'M5'],
  ])('%s and %s are not', (a, b) => {
    expect(lookAlikes([a, b])).toEqual([]);
  });

  it('among all threads of a job each pair is named once, and what happens is said', () => {
    expect(pairs('M10', 'M6', 'M10x1.25', 'M10', '1/4-20', 'M10x1')).toEqual([
      'M10x1.5 / M10x1.25',
      'M10x1.5 / M10x1',
      'M6x1 / 1/4-20 UNC',
      'M10x1.25 / M10x1',
    ]);
    expect(lookAlikes(['10-32 UNF', 'M5'])[0]?.why).toBe(
      '10-32 UNF is 4.83 mm, pitch 0.794; M5x0.8 is 5 mm, pitch 0.8. One starts in the other, then jams or strips it: try it by fingers, all the way.',
    );
    expect(lookAlikes(['1/4 BSW', '1/4-20'])[0]?.why).toContain(
      'the flanks stand at 55 and 60 degrees and touch on a line: it strips.',
    );
    expect(lookAlikes(['1/8 NPT', 'M10x1'])[0]?.why).toContain('splits the boss');
  });
});
