/** Small pieces to lay bolts out beside. */
import { readKind } from '../../../src/bolt/read/kind.ts';
import type { HoleState, Kind } from '../../../src/model/types.ts';
import type { TrayHole } from '../../../src/piece/mixup/types.ts';

/** `{S: 'M6x25 flange, 8 mm'}` as kinds. */
export function kindsOf(texts: Record<string, string>): Map<string, Kind> {
  return new Map(Object.entries(texts).map(([letter, text]) => [letter, readKind(letter, text)]));
}

/** Three flange bolts that differ by 10 and 20 mm. */
export const SML = kindsOf({
  S: 'M6x25 flange, 8 mm',
  M: 'M6x35 flange, 8 mm',
  L: 'M6x55 flange, 8 mm',
});

export function hole(name: string, kind: string | null, state: HoleState): TrayHole {
  return { name, takes: kind === null ? null : { kind, with: [] }, state };
}

/** Holes 1, 2, 3 … from a row: a capital letter is full, a small one empty. */
export function row(text: string): TrayHole[] {
  return text
    .split(' ')
    .map((word, i) =>
      hole(`${i + 1}`, word.toUpperCase(), word === word.toUpperCase() ? 'in' : 'out'),
    );
}

/** `S S M` as counts. */
export function tray(text: string): Map<string, number> {
  const left = new Map<string, number>();
  for (const kind of text.split(' ').filter((k) => k !== '')) {
    left.set(kind, (left.get(kind) ?? 0) + 1);
  }
  return left;
}
