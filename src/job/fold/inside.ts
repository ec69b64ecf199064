/**
 * What went into the machine and has not come out: rags, plugs, blocking tools, magnets, insert tangs. Counted in
 * by entries `inside: 2 rags` and out by `cleared: 1 rag` or `cleared: all`, each at the piece that closes the
 * opening, or without a piece where none does.
 */
import type { Inside } from '../../model/types.ts';

/** What such an entry says; in the order of the diary, without what was undone. */
export interface InsideLine {
  verb: string;
  value: string;
  piece?: string;
  at: string;
}

/** What went in, whether it is out again or not: the last count of each thing in each opening. */
export function countsOf(lines: Iterable<InsideLine>): Inside[] {
  const counts = new Map<string, Inside>();
  const clear = (key: string, count: number): void => {
    const there = counts.get(key);
    if (there) counts.set(key, { ...there, count: Math.max(0, there.count - count) });
  };
  for (const { verb, value, piece, at } of lines) {
    if (verb === 'inside') {
      for (const { what, count } of readThings(value)) {
        const key = placeOf(piece, what);
        const there = counts.get(key);
        const since = there && there.count > 0 ? there : { total: 0, count: 0, since: at };
        counts.set(key, {
          piece: piece ?? null,
          what,
          total: since.total + count,
          count: since.count + count,
          since: since.since,
        });
      }
    } else if (verb === 'cleared' && value.trim() === 'all') {
      // Said of no opening, it is said of all of them.
      for (const [key, thing] of counts) {
        if (piece === undefined || thing.piece === piece) clear(key, thing.count);
      }
    } else if (verb === 'cleared') {
      for (const { what, count } of readThings(value)) clear(placeOf(piece, what), count);
    }
  }
  return [...counts.values()];
}

function placeOf(piece: string | undefined, what: string): string {
  return `${piece ?? ''}\n${what}`;
}

/** `2 rags`, `rag`, `2 rags, 1 plug`: how many of what, said of one. */
export function readThings(text: string): { what: string; count: number }[] {
  return text.split(/,|\band\b|\+/).flatMap((part) => {
    const [, figure, said = ''] = /^(?:(\d{1,4})\s+)?(.*)$/s.exec(part.trim()) ?? [];
    const what = said.toLowerCase().replace(/([^s])s$/, '$1');
    const count = Number(figure ?? 1);
    return what === '' || count === 0 ? [] : [{ what, count }];
  });
}

/** `1 rag`, `2 rags`. */
export function sayThing({ what, count }: { what: string; count: number }): string {
  return `${count} ${what}${count === 1 || what.endsWith('s') ? '' : 's'}`;
}
