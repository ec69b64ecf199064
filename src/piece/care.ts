/** What the care of a piece means for the order of its bolts. */
import type { Care, PieceSpec } from '../model/types.ts';

/** Where the maker alone can give the order, or a spring wants its own way; the first that the file says. */
const ORDERED: readonly Care[] = [
  'head',
  'case',
  'cap',
  'brake',
  'steering',
  'structure',
  'wheel',
  'suspension',
  'spring',
];

export function orderCare({ care }: Pick<PieceSpec, 'care'>): Care | null {
  return ORDERED.find((c) => care?.includes(c)) ?? null;
}
