/** A mark about a thing to buy. */
import type { BuyState, Wish } from '../../job/types.ts';
import type { Buy } from '../../plan/buy/list.ts';

/** What came on the list by itself is written into the file with it. */
export function buyWish(
  buy: Buy,
  state: BuyState,
  more: { promised?: string; says?: string } = {},
): Wish {
  const [step] = buy.for;
  const add = buy.why !== null && step !== undefined ? { add: { what: buy.what, for: step } } : {};
  return { do: 'buy', buy: buy.buy, state, ...more, ...add };
}
