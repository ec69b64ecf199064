/** Holes as a picture in letters, for what is printed. */
import type { Layout } from '../../piece/map.ts';
import { type Cell, place } from '../../piece/place.ts';

const WIDTH = 72;
/** Lines of a picture: few where they do, more where holes would lie over each other. */
const HEIGHTS = [15, 30, 60];

/** Lines of a picture with a label at each hole, as on the screens; a line a hole where they have no room as they lie. */
export function textMap(at: Layout, label: (name: string) => string): string[] {
  const cells = at.places.map(({ name }): Cell => {
    const columns = label(name).length;
    return { name, columns, before: Math.floor(columns / 2) };
  });
  for (const height of HEIGHTS) {
    const placed = place(at, cells, WIDTH, height);
    if (!placed) continue;
    const rows = Map.groupBy(placed, ({ row }) => row);
    const used = [...rows.keys()];
    const [first, last] = [Math.min(...used), Math.max(...used)];
    return Array.from({ length: last - first + 1 }, (_, i) =>
      (rows.get(first + i) ?? [])
        .sort((a, b) => a.column - b.column)
        .reduce((line, { column, name }) => line.padEnd(column) + label(name), ''),
    );
  }
  return at.places.map(({ name }) => label(name));
}
