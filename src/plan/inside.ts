/**
 * What went into the machine and has not come out: rags, plugs, blocking tools, magnets, insert tangs. Counted in
 * by lines `inside: 2 rags` and out by `cleared: 1 rag` or `cleared: all`, each at the piece that closes the
 * opening, or without a piece where none does.
 */
import type { Lines } from './lines.ts';

export interface Inside {
  /** The piece that closes the opening; null for the machine at large. */
  piece: string | null;
  /** Said of one: `rag`. */
  what: string;
  count: number;
  /** When the first of those still inside went in. */
  since: string;
}

export function insideOf(lines: Lines): Inside[] {
  const inside = new Map<string, Inside>();
  for (const { verb, value, piece, at } of lines.all) {
    if (verb === 'inside') {
      for (const { what, count } of readThings(value)) {
        const key = placeOf(piece, what);
        const there = inside.get(key) ?? { piece: piece ?? null, what, count: 0, since: at };
        inside.set(key, { ...there, count: there.count + count });
      }
    } else if (verb === 'cleared' && value.trim() === 'all') {
      // Said of no opening, it is said of all of them.
      for (const [key, thing] of inside) {
        if (piece === undefined || thing.piece === piece) inside.delete(key);
      }
    } else if (verb === 'cleared') {
      for (const { what, count } of readThings(value)) {
        const key = placeOf(piece, what);
        const there = inside.get(key);
        if (there && there.count > count) inside.set(key, { ...there, count: there.count - count });
        else inside.delete(key);
      }
    }
  }
  return [...inside.values()];
}

function placeOf(piece: string | undefined, what: string): string {
  return `${piece ?? ''}\n${what}`;
}

/** `2 rags`, `rag`, `2 rags, 1 plug`: how many of what, said of one. */
export function readThings(text: string): { what: string; count: number }[] {
  return text.split(/,|\band\b|\+/).flatMap((part) => {
    const [, figure, said = ''] = /^\s*(?:(\d{1,4})\s+)?(.*?)\s*$/.exec(part) ?? [];
    const what = said.toLowerCase().replace(/([^s])s$/, '$1');
    const count = Number(figure ?? 1);
    return what === '' || count === 0 ? [] : [{ what, count }];
  });
}

/** `1 rag`, `2 rags`. */
export function sayThing({ what, count }: { what: string; count: number }): string {
  return `${count} ${what}${count === 1 || what.endsWith('s') ? '' : 's'}`;
}
