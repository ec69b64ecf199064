/**
 * A bound from below on the expected minutes times p(S), from what the tests can tell.
 *
 * Whatever way is gone, its tests tell Σ pᵢ log₂(p(S)/pᵢ) bits together, because in the end one state is left. Where a
 * test comes out bad for b and good for g of the chances it tells b log₂((b + g)/b) + g log₂((b + g)/g), and that is
 * never more than b log₂(1/f) + g log₂(1/(1 − f)), whichever f between 0 and 1 is taken (Gibbs' inequality). Let a bit
 * be worth λ minutes. Then a test made there earns, beyond its c (b + g) minutes, at most
 *
 *     b (λ log₂(1/f) − c) + g (λ log₂(1/(1 − f)) − c).
 *
 * No state meets a test twice on its way: over all of the way the b of one test come to no more than its bad states
 * weigh, and the g to no more than its good ones. So it earns at most what all of its states would, those left out that
 * would lose. What all bits are worth, less what all tests can earn, is a bound, for any λ and any f of each test.
 *
 * Taken is the f of each test that lets it earn least: with 1 − f = 2^(−c/λ) the heavier side earns nothing; where a
 * test parts S more evenly than that, its own share. And the λ for which the bound is highest: it is concave in λ,
 * being linear less a sum of what is each the highest of linear ones.
 *
 * With the same λ and f it holds for all standings behind this one, whose tests are among its tests: so a bound for each
 * of them comes with it.
 *
 * Lowest against the best where each test shows one of many states alike: 2/e of it. Derived here; O(tests) for each λ,
 * and O(states) for each standing behind.
 */
import { massOf, type Option, type States } from './problem.ts';

/** Halvings of the range in which λ is, each end twice the other: to a hundredth of it. */
const HALVINGS = 6;
/** Doublings until that range is found: where the tests tell no more than is to be known, any high λ will do. */
const DOUBLINGS = 20;

export interface ToldBound {
  lower: number;
  /** By the same λ and f, on from where a test leads. */
  behind: (option: Option) => { bad: number; good: number };
}

/** What a test can tell. */
interface Telling {
  /** Minutes. */
  c: number;
  /** Of the lighter side, in p(S). */
  share: number;
  lighter: States;
  heavier: States;
}

export function toldBound(
  p: readonly number[],
  S: States,
  options: readonly Option[],
  prices: readonly number[],
): ToldBound {
  const mass = massOf(p, S);
  const tellings = options.map(({ bad, good }, index): Telling => {
    const c = prices[index] ?? 0;
    const share = massOf(p, bad) / mass;
    return share > 0.5
      ? { c, share: 1 - share, lighter: good, heavier: bad }
      : { c, share, lighter: bad, heavier: good };
  });
  const whole = sumsOf(p, S);
  const worth = worthOf(tellings, bitsOf(whole) / mass);
  const earned = earnings(tellings, worth, p.length);
  const bound = (some: Sums, earnedBy: number) => Math.max(0, worth * bitsOf(some) - earnedBy);
  const earnedAll = earnedIn(p, earned, S);
  return {
    lower: bound(whole, earnedAll),
    behind: ({ bad, good }) => {
      const [few, many] = bad.length < good.length ? [bad, good] : [good, bad];
      const [part, earnedHere] = [sumsOf(p, few), earnedIn(p, earned, few)];
      // The rest by what is left over, but for a light one: of that the rounding would be most.
      const light = part.mass > whole.mass / 2;
      const rest = light
        ? sumsOf(p, many)
        : { mass: whole.mass - part.mass, logs: whole.logs - part.logs };
      const earnedThere = light ? earnedIn(p, earned, many) : earnedAll - earnedHere;
      const ofFew = few.length > 1 ? bound(part, earnedHere) : 0;
      const ofMany = many.length > 1 ? bound(rest, earnedThere) : 0;
      return few === bad ? { bad: ofFew, good: ofMany } : { bad: ofMany, good: ofFew };
    },
  };
}

/** Of some states: p and Σ pᵢ log₂ pᵢ. */
interface Sums {
  mass: number;
  logs: number;
}

function sumsOf(p: readonly number[], some: States): Sums {
  let [mass, logs] = [0, 0];
  for (const i of some) {
    const chance = p[i] ?? 0;
    mass += chance;
    logs += chance * Math.log2(chance);
  }
  return { mass, logs };
}

/** Bits until one of them is left, times their mass. */
const bitsOf = ({ mass, logs }: Sums): number => mass * Math.log2(mass) - logs;

/** f of a test that is worth making: it costs less than one bit is worth. */
const partOf = ({ c, share }: Telling, worth: number): number =>
  Math.max(share, -Math.expm1((-c / worth) * Math.LN2));

/**
 * The λ for which the bound is highest: up to there the tests tell, while they earn most, less than the `bits` for a
 * mass of one. Beside its lighter side a test has then (1 − f)/f as much of the heavier.
 */
function worthOf(tellings: readonly Telling[], bits: number): number {
  const rises = (worth: number): boolean => {
    let told = 0;
    for (const telling of tellings) {
      if (telling.c >= worth) continue;
      const f = partOf(telling, worth);
      told -= telling.share * (Math.log2(f) + ((1 - f) / f) * Math.log2(1 - f));
    }
    return told < bits;
  };
  let worth = tellings.reduce((sum, { c }) => sum + c / tellings.length, 0) || 1;
  const up = rises(worth);
  for (let step = 0; step < DOUBLINGS && rises(worth) === up; step += 1) worth *= up ? 2 : 0.5;
  let [low, high] = up ? [worth / 2, worth] : [worth, worth * 2];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (rises(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** What all tests together can earn by each state, for a chance of one. */
function earnings(tellings: readonly Telling[], worth: number, states: number): Float64Array {
  const earned = new Float64Array(states);
  const earn = (some: States, minutes: number) => {
    if (minutes > 0) for (const i of some) earned[i] = (earned[i] ?? 0) + minutes;
  };
  for (const telling of tellings) {
    if (telling.c >= worth) continue;
    const f = partOf(telling, worth);
    earn(telling.lighter, -worth * Math.log2(f) - telling.c);
    if (f === telling.share) earn(telling.heavier, -worth * Math.log2(1 - f) - telling.c);
  }
  return earned;
}

function earnedIn(p: readonly number[], earned: Float64Array, some: States): number {
  let minutes = 0;
  for (const i of some) minutes += (p[i] ?? 0) * (earned[i] ?? 0);
  return minutes;
}
