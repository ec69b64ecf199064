/**
 * The least peaks known for some layouts of 17 to 60 holes: a search of minutes, for the table in
 * tests/piece/sequence/best-known.ts. Run by hand: `node tests/figures/best-known.ts`.
 *
 * Two ways, the better of the two counts: annealing over whole orders, written apart from the program; and the
 * program's own search a hundred times as wide.
 */
import { beam } from '../../src/piece/sequence/beam.ts';
import { pullField } from '../../src/piece/sequence/field.ts';
import { measure, type Task } from '../../src/piece/sequence/vectors.ts';
import { FAMILIES, seeded, taskOf, times } from '../piece/sequence/layouts.ts';

/** Swaps and moves of holes, with a falling chance to take a worse order. */
function anneal({ v }: Task, random: () => number, steps: number): number {
  const order = times(v.n, (i) => i).sort(() => random() - 0.5);
  const above = (level: number) => {
    let [x, y, sum, peak] = [0, 0, 0, 0];
    for (const i of order) {
      x += v.x[i] ?? 0;
      y += v.y[i] ?? 0;
      const b = Math.hypot(x, y);
      peak = Math.max(peak, b);
      if (b > level) sum += (b - level) ** 2;
    }
    return { sum, peak };
  };
  let best = above(9).peak;
  let now = above(best * 0.97).sum;
  for (let step = 0; step < steps; step += 1) {
    const heat = 0.02 * (1 - step / steps) ** 2;
    const [p, q] = [Math.floor(random() * v.n), Math.floor(random() * v.n)];
    const before = [...order];
    if (random() < 0.5) [order[p], order[q]] = [order[q] ?? 0, order[p] ?? 0];
    else order.splice(q, 0, ...order.splice(p, 1));
    const next = above(best * 0.97);
    if (next.peak < best) {
      best = next.peak;
      now = above(best * 0.97).sum;
    } else if (next.sum <= now || random() < Math.exp((now - next.sum) / heat)) now = next.sum;
    else order.splice(0, v.n, ...before);
  }
  return best;
}

function widest(task: Task): number {
  const field = pullField(task);
  const peak = (places: readonly number[]) =>
    measure(
      task,
      places.map((place) => field.hole[place] ?? 0),
    ).peak;
  let [low, high] = [0.5, 1.2];
  while (high - low > 0.002) {
    const limit = (low + high) / 2;
    const found = (['hard', 'even', 'smooth'] as const)
      .map((ranking) => beam(field, limit, ranking, { kept: 3000, tried: field.n }))
      .find((order) => order !== null);
    if (found) high = Math.min(limit, peak(found));
    else low = limit;
  }
  return high;
}

for (const [name, make] of Object.entries(FAMILIES)) {
  for (const n of [17, 24, 40, 60]) {
    const task = taskOf(make(n, seeded(n)));
    const random = seeded(n + 1);
    const annealed = Math.min(...times(4, () => anneal(task, random, 300_000)));
    const wide = widest(task);
    console.log(
      `  ['${name}', ${n}, ${Math.min(annealed, wide).toFixed(4)}], // ${annealed.toFixed(4)} ${wide.toFixed(4)}`,
    );
  }
}
