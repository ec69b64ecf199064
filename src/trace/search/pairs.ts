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
 * The same rates hold for all standings behind this one, whose tests are among its tests: so a bound for each of them
 * comes with it.
 *
 * Close where each test shows one or few states (for one it is nearly the order by p/c), weak where tests halve.
 * Derived here; O(Σ |bad| |good|) over the tests for each round, memory two numbers a pair.
 */
import { massOf, type Option, type States } from './problem.ts';

/** Of four rounds the first two bring nearly all. */
const ROUNDS = 2;

interface Parting {
  /** Places of the states in S. */
  bad: readonly number[];
  good: readonly number[];
  /** c p(S)/p(bad), c p(S)/p(good), c p(S)/(p(bad) p(good)). */
  badLimit: number;
  goodLimit: number;
  rate: number;
}

export interface Pairs {
  lower: number;
  /** By the same rates, on from where a test leads; to be asked for before the next bound is made. */
  behind: (option: Option) => { bad: number; good: number };
}

/** Makes bounds for standings of one problem, all in the same memory. */
export function pairsBounds(
  p: readonly number[],
): (S: States, options: readonly Option[], prices: readonly number[]) => Pairs {
  const all = p.length;
  const place = new Int32Array(all);
  const room = new Float64Array(all);
  // Of each pair at both places.
  const [rates, factors] = [new Float64Array(all * all), new Float64Array(all * all)];
  return (S, options, prices) => {
    const n = S.length;
    for (let x = 0; x < n; x += 1) place[S[x] ?? 0] = x;
    const chance = S.map((i) => p[i] ?? 0);
    const partings = partingsOf(p, S, options, prices, place);
    rates.fill(Number.POSITIVE_INFINITY, 0, n * n);
    for (const { bad, good, rate } of partings) {
      for (const i of bad) {
        for (const k of good) {
          if (rate < (rates[i * n + k] ?? 0)) {
            rates[i * n + k] = rate;
            rates[k * n + i] = rate;
          }
        }
      }
    }
    for (let round = 0; round < ROUNDS; round += 1) raise(rates, chance, partings, room, factors);
    for (let i = 0; i < n; i += 1) {
      for (let k = 0; k < n; k += 1) {
        const rate = rates[i * n + k] ?? 0;
        rates[i * n + k] = i === k ? 0 : (chance[i] ?? 0) * (chance[k] ?? 0) * rate;
      }
    }
    const sum = (some: readonly number[], others: readonly number[]) => {
      let minutes = 0;
      for (const i of some) {
        const row = (place[i] ?? 0) * n;
        for (const k of others) minutes += rates[row + (place[k] ?? 0)] ?? 0;
      }
      return minutes;
    };
    const lower = sum(S, S) / 2;
    return {
      lower,
      behind: ({ bad, good }) => {
        const [few, many] = bad.length < good.length ? [bad, good] : [good, bad];
        const within = sum(few, few) / 2;
        const rest = Math.max(0, lower - within - sum(few, many));
        return few === bad ? { bad: within, good: rest } : { bad: rest, good: within };
      },
    };
  };
}

function partingsOf(
  p: readonly number[],
  S: States,
  options: readonly Option[],
  prices: readonly number[],
  place: Int32Array,
): Parting[] {
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

/** One round: how far each limit is from being reached, and the least of that for every pair. */
function raise(
  rates: Float64Array,
  chance: readonly number[],
  partings: readonly Parting[],
  room: Float64Array,
  factors: Float64Array,
): void {
  const n = chance.length;
  factors.fill(Number.POSITIVE_INFINITY, 0, n * n);
  for (const { bad, good, badLimit, goodLimit } of partings) {
    room.fill(0, 0, n);
    for (const i of bad) {
      let used = 0;
      for (const k of good) {
        const rate = rates[i * n + k] ?? 0;
        used += rate * (chance[k] ?? 0);
        room[k] = (room[k] ?? 0) + rate * (chance[i] ?? 0);
      }
      room[i] = roomIn(badLimit, used);
    }
    for (const k of good) room[k] = roomIn(goodLimit, room[k] ?? 0);
    for (const i of bad) {
      const most = room[i] ?? 1;
      for (const k of good) {
        const factor = Math.min(most, room[k] ?? 1);
        if (factor < (factors[i * n + k] ?? 0)) {
          factors[i * n + k] = factor;
          factors[k * n + i] = factor;
        }
      }
    }
  }
  for (let x = 0; x < n * n; x += 1) {
    const factor = factors[x] ?? 0;
    if (factor < Number.POSITIVE_INFINITY) rates[x] = (rates[x] ?? 0) * factor;
  }
}

/** How many times what is used the limit is; a costless test has nothing to give. */
const roomIn = (limit: number, used: number) => (used > 0 ? limit / used : 1);
