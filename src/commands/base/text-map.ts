/** Holes as a picture in letters, for what is printed. */
import type { Layout, Place } from '../../piece/map.ts';

const WIDTH = 72;
const HEIGHT = 15;

/** Lines of a picture with a label at each hole; where two would overlap, the lower one moves to its own line. */
export function textMap(at: Layout, label: (name: string) => string): string[] {
  const { places } = at;
  if (places.length === 0) return [];
  const widest = Math.max(...places.map((p) => label(p.name).length));
  const column = scale(
    places.map((p) => p.x),
    WIDTH - widest,
  );
  const row = scale(
    places.map((p) => p.y),
    HEIGHT - 1,
  );
  const lines = new Map<number, { column: number; text: string }[]>();
  const sorted = [...places].sort((a, b) => a.y - b.y || a.x - b.x);
  for (const place of sorted) put(lines, row(place.y), column(place.x), label(place.name));
  const last = Math.max(...lines.keys());
  return Array.from({ length: last + 1 }, (_, i) => drawn(lines.get(i) ?? []));
}

type Label = { column: number; text: string };

function put(lines: Map<number, Label[]>, row: number, column: number, text: string): void {
  for (let at = row; ; at += 1) {
    const line = lines.get(at) ?? [];
    const free = line.every(
      (l) => column + text.length < l.column || l.column + l.text.length < column,
    );
    if (!free) continue;
    lines.set(at, [...line, { column, text }]);
    return;
  }
}

function drawn(line: readonly Label[]): string {
  return [...line]
    .sort((a, b) => a.column - b.column)
    .reduce((said, l) => said.padEnd(l.column) + l.text, '');
}

function scale(values: readonly number[], size: number): (value: Place['x']) => number {
  const least = Math.min(...values);
  const span = Math.max(...values) - least;
  return (value) => (span === 0 ? 0 : Math.round(((value - least) / span) * size));
}
