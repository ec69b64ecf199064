/** Which piece of an earlier job is this one. */
import type { Job, PieceNow } from '../model/types.ts';

/** `key`: the same name in the file. `name`: called the same, with as many holes. `ask`: it may be. */
export type How = 'key' | 'name' | 'ask';

export interface Match {
  how: How;
  theirs: PieceNow;
}

const plain = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

/**
 * The earlier piece, or those that it may be. A key counts as long as both have as many holes, or one of them
 * has none yet; a name then too. Where only one of the two agrees, a person is asked.
 */
export function matchOf(piece: PieceNow, earlier: Job): Match[] {
  const all = [...earlier.pieces.values()];
  const holes = piece.holes.length;
  const agrees = (p: PieceNow) => holes === 0 || p.holes.length === 0 || p.holes.length === holes;
  const byKey = all.find((p) => p.spec.key === piece.spec.key);
  if (byKey && agrees(byKey)) return [{ how: 'key', theirs: byKey }];
  const name = plain(piece.spec.name);
  const byName = all.filter((p) => plain(p.spec.name) === name);
  const [one, ...more] = byName.filter(agrees);
  if (one && more.length === 0 && holes === one.holes.length) return [{ how: 'name', theirs: one }];
  const maybe = new Set([...(byKey ? [byKey] : []), ...byName]);
  if (maybe.size === 0 && holes > 3) {
    // Another word for it: as many holes, and no piece of this job has that name.
    for (const p of all) if (p.holes.length === holes && sharesWord(p, piece)) maybe.add(p);
  }
  return [...maybe].map((theirs) => ({ how: 'ask', theirs }));
}

const wordsOf = (piece: PieceNow): string[] =>
  `${piece.spec.name} ${piece.spec.key}`.toLowerCase().match(/\p{L}{3,}/gu) ?? [];

function sharesWord(a: PieceNow, b: PieceNow): boolean {
  const words = new Set(wordsOf(a));
  return wordsOf(b).some((w) => words.has(w));
}
