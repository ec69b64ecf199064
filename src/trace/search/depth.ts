/**
 * A bound from below on the expected minutes times p(S), from the depth of the states.
 *
 * A state found by its l-th test has paid for l different tests, so at least for the l cheapest; and the depths of a
 * binary tree keep to Kraft's Σ 2⁻ˡ ≤ 1. The least Σ pᵢ (c₁ + … + c_lᵢ) under that is Huffman's tree where all cost
 * alike, else found by package-merge (Larmore & Hirschberg, A fast algorithm for optimal length-limited Huffman codes,
 * JACM 37(3), 1990): coins pᵢ c_l of the worth 2⁻ˡ, the cheapest that are worth n − 1 together.
 *
 * Strong where tests halve, weak where each shows few states. O(n × tests) after sorting.
 */

/** `chances` of the states, `prices` of the tests that part them, each ascending; some test parts any two. */
export function depthBound(chances: Float64Array, prices: Float64Array): number {
  const n = chances.length;
  let [coins, spare] = [new Float64Array(2 * n), new Float64Array(2 * n)];
  let count = 0;
  // From the smallest worth up: coins are packed by two, and lie with the new ones of twice the worth.
  for (const c of prices.subarray(0, n - 1).toReversed()) {
    count = pack(coins, count >> 1, chances, c, spare);
    [coins, spare] = [spare, coins];
  }
  let bound = 0;
  for (let i = 0; i < 2 * n - 2; i += 1) bound += coins[i] ?? 0;
  return bound;
}

/** Packs of two coins each, and new coins for a test at `c`, in one ascending list; how many these are. */
function pack(
  coins: Float64Array,
  packs: number,
  chances: Float64Array,
  c: number,
  into: Float64Array,
): number {
  const n = chances.length;
  let [i, k] = [0, 0];
  while (i < packs || k < n) {
    const packed = i < packs ? (coins[2 * i] ?? 0) + (coins[2 * i + 1] ?? 0) : Infinity;
    const coin = k < n ? (chances[k] ?? 0) * c : Infinity;
    into[i + k] = Math.min(packed, coin);
    if (packed <= coin) i += 1;
    else k += 1;
  }
  return packs + n;
}
