/** A mark about a thing to buy. */
import type { BuyState, Wish } from '../../model/types.ts';
import { type Buy, newBuy } from './list.ts';

/** What came on the list by itself is written into the file with it. */
export function buyWish(
  buy: Buy,
  state: BuyState,
  more: { promised?: string; says?: string } = {},
): Wish {
  const add = newBuy(buy);
  return { do: 'buy', buy: buy.buy, state, ...more, ...(add ? { add } : {}) };
}
