/** The holes of a piece in their order: the order of its row. */
import { kept } from '../model/kept.ts';
import type { PieceSpec } from '../model/types.ts';
import { drawnCells } from './map.ts';
import { compareHoles } from './names.ts';

/**
 * Names of a piece's holes in the order of its row. The row says how many: `1`…`n`, unless the map draws just
 * as many under other names; a lettered name of the map or of `holes:` takes its natural place and counts.
 * Without a row, whatever the map and `holes:` name.
 */
export function holeNames(spec: Numbered): readonly string[] {
  return kept(spec, 'holes', () => namesOf(spec));
}

type Numbered = Pick<PieceSpec, 'row' | 'map' | 'holes'>;

function namesOf(spec: Numbered): string[] {
  const drawn = drawnCells(spec).map((cell) => cell.name);
  const named = [...spec.holes.keys()];
  const unite = (names: string[]) => [...new Set(names)].sort(compareHoles);
  if (spec.row === null) return unite([...drawn, ...named]);
  const lettered = unite([...drawn, ...named].filter((name) => /[a-z]$/.test(name)));
  const asDrawn = unite([...drawn, ...lettered]);
  const n = spec.row.length;
  if (drawn.length > 0 && asDrawn.length === n) return asDrawn;
  const numbers = Array.from({ length: Math.max(0, n - lettered.length) }, (_, i) => `${i + 1}`);
  return unite([...numbers, ...lettered]).slice(0, n);
}
