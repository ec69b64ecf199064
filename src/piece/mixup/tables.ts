/** Flows with no wrong hole to spare: each arrow goes straight from a kind that is over to one that is missing. */
import type { Flow, FlowProblem, Flows } from './flow.ts';

/**
 * Every table of whole numbers with these sums of rows (kinds over) and columns (kinds missing), row by row, each once:
 * at most `most` of them, in at most `steps` steps. Rows that `room` does not allow are not tried.
 */
export function tables({ over, room }: FlowProblem, most: number, steps: number): Flows {
  const sources = over.flatMap((n, kind) => (n > 0 ? kind : []));
  const targets = over.flatMap((n, kind) => (n < 0 ? kind : []));
  const want = targets.map((kind) => -(over[kind] ?? 0));
  /** What the targets from here on still want. */
  const wantFrom = (t: number) => want.slice(t).reduce((sum, n) => sum + n, 0);
  const rows: number[][] = over.map(() => []);
  const flows: Flow[] = [];
  let complete = true;
  let taken = 0;

  const nextRow = (s: number): void => {
    const from = sources[s];
    if (from === undefined) {
      if (flows.length < most) flows.push([...rows]);
      else complete = false;
      return;
    }
    fill(s, from, 0, over[from] ?? 0, []);
    rows[from] = [];
  };

  const fill = (s: number, from: number, t: number, left: number, holds: number[]): void => {
    if (++taken > steps) complete = false;
    if (!complete || !room(from, holds)) return;
    if (left === 0) {
      rows[from] = holds;
      nextRow(s + 1);
      return;
    }
    const kind = targets[t];
    if (kind === undefined) return;
    const here = want[t] ?? 0;
    const later = wantFrom(t + 1);
    for (let n = Math.min(left, here); n >= Math.max(0, left - later); n--) {
      want[t] = here - n;
      fill(s, from, t + 1, left - n, [...holds, ...Array<number>(n).fill(kind)]);
    }
    want[t] = here;
  };

  nextRow(0);
  return { flows, complete };
}
