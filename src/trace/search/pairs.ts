/**
 * A bound from below on the expected minutes times p(S), from pairs of states: each has to be parted by some test.
 *
 * A test made where S' is left costs c p(S'); let it pay pᵢ pₖ rᵢₖ for each pair that it parts. Then Σ pᵢ pₖ rᵢₖ over all
 * pairs is a bound, if no test can be made to pay more than it costs: Σ pᵢ pₖ rᵢₖ ≤ c (p(S₁) + p(S₀)) for all S₁ of its bad
 * and S₀ of its good states. For that it is enough that
 *
 *     Σ pₖ rᵢₖ over good k ≤ c p(S)/p(bad) for each bad i, and Σ pᵢ rᵢₖ over bad i ≤ c p(S)/p(good) for each good k:
 *
 * the first in sum over S₁, weighted by p(bad)/p(S), and the second over S₀, by p(good)/p(S), add up to it. Rates begin
 * at the least c p(S)/(p(bad) p(good)) of the tests that part the pair, which keeps to this. Then each is raised by
 * what all limits it counts in leave room for, which keeps to it again.
 *
 * Close where each test shows one or few states (for one it is nearly the order by p/c), weak where tests halve.
 * Derived here; O(Σ |bad| |good|) over the tests for each round, memory two numbers a pair.
 */
import { massOf, type Option, type States } from './problem.ts';

/** Of four rounds the first two bring nearly all. */
const ROUNDS = 2;

interface Parting {
  /** Places of the states in S. */
  bad: number[];
  good: number[];
  /** c p(S)/p(bad), c p(S)/p(good), c p(S)/(p(bad) p(good)). */
  badLimit: number;
  goodLimit: number;
  rate: number;
}

export function pairsBound(
  p: readonly number[],
  S: States,
  options: readonly Option[],
  prices: readonly number[],
): number {
  const n = S.length;
  const chance = Float64Array.from(S, (i) => p[i] ?? 0);
  const partings = partingsOf(p, S, options, prices);
  const rates = new Float64Array(n * n).fill(Number.POSITIVE_INFINITY);
  for (const { bad, good, rate } of partings) lower(rates, n, bad, good, () => rate);
  for (let round = 0; round < ROUNDS; round += 1) raise(rates, chance, partings);
  let bound = 0;
  for (let i = 0; i < n; i += 1) {
    for (let k = i + 1; k < n; k += 1) {
      bound += (chance[i] ?? 0) * (chance[k] ?? 0) * (rates[i * n + k] ?? 0);
    }
  }
  return bound;
}

function partingsOf(
  p: readonly number[],
  S: States,
  options: readonly Option[],
  prices: readonly number[],
): Parting[] {
  const place: number[] = [];
  for (const [x, i] of S.entries()) place[i] = x;
  const mass = massOf(p, S);
  return options.map(({ bad, good }, index) => {
    const c = prices[index] ?? 0;
    const inBad = massOf(p, bad);
    const inGood = mass - inBad;
    return {
      bad: bad.map((i) => place[i] ?? 0),
      good: good.map((i) => place[i] ?? 0),
      badLimit: (c * mass) / inBad,
      goodLimit: (c * mass) / inGood,
      rate: (c * mass) / inBad / inGood,
    };
  });
}

/** A pair is kept once, at the place of its smaller state. */
const pair = (n: number, i: number, k: number) => (i < k ? i * n + k : k * n + i);

/** Lowers what is kept for each pair that a test parts to `to`. */
function lower(
  kept: Float64Array,
  n: number,
  bad: readonly number[],
  good: readonly number[],
  to: (i: number, k: number) => number,
): void {
  for (const i of bad) {
    for (const k of good) {
      const [x, value] = [pair(n, i, k), to(i, k)];
      if (value < (kept[x] ?? 0)) kept[x] = value;
    }
  }
}

/** One round: how far each limit is from being reached, and the least of that for every pair. */
function raise(rates: Float64Array, chance: Float64Array, partings: readonly Parting[]): void {
  const n = chance.length;
  const factors = new Float64Array(n * n).fill(Number.POSITIVE_INFINITY);
  const room = new Float64Array(n);
  for (const { bad, good, badLimit, goodLimit } of partings) {
    room.fill(0);
    for (const i of bad) {
      for (const k of good) {
        const rate = rates[pair(n, i, k)] ?? 0;
        room[i] = (room[i] ?? 0) + rate * (chance[k] ?? 0);
        room[k] = (room[k] ?? 0) + rate * (chance[i] ?? 0);
      }
    }
    for (const i of bad) room[i] = roomIn(badLimit, room[i] ?? 0);
    for (const k of good) room[k] = roomIn(goodLimit, room[k] ?? 0);
    lower(factors, n, bad, good, (i, k) => Math.min(room[i] ?? 1, room[k] ?? 1));
  }
  for (const [x, factor] of factors.entries())
    if (Number.isFinite(factor)) rates[x] = (rates[x] ?? 0) * factor;
}

/** How many times what is used the limit is; a costless test has nothing to give. */
const roomIn = (limit: number, used: number) => (used > 0 ? limit / used : 1);
