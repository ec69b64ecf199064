/**
 * How long the order of a piece takes, and how even it is. Run by hand: `node tests/figures/sequence.ts`.
 * Each time is the middle one of several, on the machine of the day.
 */
import { sequenceFrom } from '../../src/piece/sequence/sequence.ts';
import { FAMILIES, seeded, times } from '../piece/sequence/layouts.ts';
import { quantile, type Row } from './measure.ts';

const ROUNDS = 9;

function middleTime(run: (round: number) => void): number {
  run(-1);
  const spent = times(ROUNDS, (round) => {
    const start = performance.now();
    run(round);
    return performance.now() - start;
  });
  return quantile(spent, 0.5);
}

/** The whole answer for a piece of n holes of one family; another layout each round, so that nothing is remembered. */
function whole(family: string, n: number): number {
  return middleTime((round) => {
    const points = FAMILIES[family]?.(n, seeded(round + 100 * n)) ?? [];
    const names = points.map((_, i) => `${i + 1}`);
    const places = points.map((p, i) => ({ name: names[i] ?? '', ...p }));
    sequenceFrom({
      ...{ names, layout: { from: 'at', unit: 'mm', places, missing: [] } },
      ...{ list: null, care: null, first: [], groups: new Map(), done: [] },
    });
  });
}

/** Milliseconds that a person does not notice as waiting. */
const GOAL = 100;

const PIECES: [what: string, family: string, n: number][] = [
  ['12 scattered holes', 'scattered', 12],
  ['16 scattered holes, the most that are done exactly', 'scattered', 16],
  ['40 holes on an uneven rim', 'an uneven rim', 40],
  ['60 scattered holes', 'scattered', 60],
  ['1,000 scattered holes', 'scattered', 1000],
  ['1,000 holes on an uneven rim', 'an uneven rim', 1000],
  ['1,000 holes, unevenly on a circle', 'a circle, unevenly spaced', 1000],
];

export function rows(): Row[] {
  return PIECES.map(([what, family, n]) => {
    const ms = whole(family, n);
    const measured = `${ms.toFixed(1)} ms`;
    return { what: `order of ${what}`, against: `${GOAL} ms`, ratio: ms / GOAL, goal: 1, measured };
  });
}

if (import.meta.main) console.table(rows());
