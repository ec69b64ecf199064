/** How the items of a gate lie on pages. */
import type { ItemInWords } from '../../plan/gates/items.ts';
import { bothSaid } from '../kit/both.ts';
import { width, wrap } from '../kit/text.ts';

/** Columns before the words of an item. */
export const BEFORE = 7;

/** Items page by page, each whole; a page has at most so many lines. */
export function pagesOf<T extends { item: ItemInWords; printed: readonly string[] }>(
  items: readonly T[],
  columns: number,
  lines: number,
): T[][] {
  const pages: T[][] = [[]];
  let used = 0;
  for (const one of items) {
    const takes = linesOf(bothSaid(one.item.say, one.printed), columns);
    if (used > 0 && used + takes > lines) {
      pages.push([]);
      used = 0;
    }
    pages.at(-1)?.push(one);
    used += takes;
  }
  return pages;
}

function linesOf(say: string, columns: number): number {
  return width(say) <= columns - BEFORE ? 1 : wrap(say, columns - BEFORE).length;
}
