/** The drawn holes under a row that is being typed: each word at its hole, the next hole lit. */
import type { PieceNow } from '../../model/types.ts';
import { STILL_IN } from '../../piece/row.ts';
import { layoutOf, names } from '../../plan/piece/piece-now.ts';
import { shortWord, type TypedWord } from '../../plan/typed/row.ts';
import { drawMap, inLines, type Mark } from '../kit/map.ts';
import type { Line } from '../kit/text.ts';

/** Nothing where nothing is drawn, or where it has no room as it lies. */
export function rowMap(
  words: readonly TypedWord[],
  piece: PieceNow,
  columns: number,
  rows: number,
): Line[] {
  const layout = layoutOf(piece);
  const all = names(piece.holes);
  const fits = layout.from === 'map' && rows > 0 && !inLines(layout, all, columns, rows);
  if (!fits) return [];
  const marks = all.map((name, i): Mark => {
    const typed = words[i];
    const label = typed === undefined ? '' : shortWord(typed);
    const isOut = typed !== undefined && typed.word !== STILL_IN;
    const shape = isOut ? 'out' : 'home';
    return { name, shape, here: i === words.length, lit: false, label, short: label };
  });
  return drawMap(layout, marks, columns, rows);
}
