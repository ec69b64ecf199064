/** What all figures share: a row of the table, and times from enough runs. */

export interface Row {
  what: string;
  /** The thing measured against, in the same run. */
  against: string;
  /** How many times as much. */
  ratio: number;
  goal: number;
  /** The two as measured here: they depend on the machine, the ratio hardly does. */
  measured: string;
}

/** A group of figures. Rows are made one after the other, so that they do not disturb each other. */
export type Figures = () => Promise<Row[]>;

export function quantile(numbers: readonly number[], q: number): number {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? Number.NaN;
}

export const median = (numbers: readonly number[]): number => quantile(numbers, 0.5);

/** ms that it takes. */
export async function time(what: () => unknown): Promise<number> {
  const from = performance.now();
  await what();
  return performance.now() - from;
}

/** Both by turns, so that what else the machine does falls on both; ms as each says, its first run left out. */
export async function byTurns(
  runs: number,
  one: () => Promise<number>,
  other: () => Promise<number>,
): Promise<{ one: number[]; other: number[] }> {
  const times = { one: [] as number[], other: [] as number[] };
  for (let i = 0; i <= runs; i++) {
    const a = await one();
    const b = await other();
    if (i === 0) continue;
    times.one.push(a);
    times.other.push(b);
  }
  return times;
}

export const ms = (n: number): string => `${n < 10 ? n.toFixed(2) : n.toFixed(0)} ms`;
