/** Prices as people write them. */

import { readNumber } from '../../bolt/read/numbers.ts';
import { pattern } from '../../model/pattern.ts';

/** Signs and words of money that may stand before or behind a figure; which money it is plays no part in a sum. */
const SIGN = String.raw`(?:[\p{Sc}]|[A-Z]{3}|about|ca\.?|~)`;
const MONEY = pattern(
  () => String.raw`^(?:${SIGN}\s*)*(\d[\d\s'’]*(?:[.,]\d+)?)(?:\s*${SIGN})?$`,
  'u',
);

/** `12.50`, `12,50 €`, `about 60`; null for what is no price to its last character, and for two figures. */
export function moneyIn(text: string | null): number | null {
  const [, figure] = MONEY.exec((text ?? '').trim()) ?? [];
  return figure === undefined ? null : readNumber(figure.replace(/[\s'’]/g, ''));
}
