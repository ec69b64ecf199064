/**
 * What is in the hand, as it is typed key by key: `m`, `m+clip`, `.35`. The letters are those of the job's
 * kinds, small or large; a dot opens a length, in mm, or in inches with their sign: `.1.5"`; a plus what lies under the head.
 */
import { readBoltLength } from '../../bolt/read/length.ts';
import type { Hand, Job, Kind, RowItem } from '../../model/types.ts';
import { readItem } from '../../piece/row.ts';

export type HandRead =
  | { is: 'none' }
  | { is: 'kind'; item: RowItem; kind: Kind | null; unders: boolean }
  /** `word`: as a row says it, with what lies under the head. */
  | { is: 'length'; mm: number; word: string; with: string[] }
  /** Not yet a kind or a length: `.`, or `m` where there are M1 and M2. */
  | { is: 'part' };

/** Letters of kinds in this job: declared, or standing in a row or a find. */
export function lettersOf(job: Job): string[] {
  const letters = new Set(job.upper.kinds.keys());
  for (const piece of job.pieces.values()) {
    for (const hole of piece.holes) {
      for (const item of [hole.belongs, hole.found]) if (item) letters.add(item.kind);
    }
  }
  letters.delete('?');
  return [...letters];
}

/** The letter that is meant: as typed, else in the other case. */
export function letterMeant(typed: string, letters: readonly string[]): string | null {
  if (letters.includes(typed)) return typed;
  return letters.find((l) => l.toLowerCase() === typed.toLowerCase()) ?? null;
}

/** What is said of a hand that is not one yet. */
export function sayNotYet(hand: string): string {
  return hand.startsWith('.')
    ? `${hand} is no length yet: .25 in mm, .1-1/4 or .1.5" in inches.`
    : `${hand} is no kind and no length yet.`;
}

/** `letters`: those of the job, where they are known already. */
export function typedHand(
  hand: string,
  job: Job,
  letters: readonly string[] = lettersOf(job),
): HandRead {
  if (hand === '') return { is: 'none' };
  const [typed = '', ...unders] = hand.split('+');
  // `sealing washer` is one thing.
  const said = unders.map((u) => u.trim().replace(/\s+/g, '-')).filter((u) => u !== '');
  if (hand.startsWith('.')) {
    const mm = readBoltLength(typed.slice(1));
    return mm !== null
      ? { is: 'length', mm, word: [typed, ...said].join('+'), with: said }
      : { is: 'part' };
  }
  const letter = letterMeant(typed, letters);
  if (letter === null) return { is: 'part' };
  const item = readItem([letter, ...said].join('+'));
  if (!item) return { is: 'part' };
  return { is: 'kind', item, kind: job.upper.kinds.get(letter) ?? null, unders: unders.length > 0 };
}

/** For a wish; null while nothing is said yet. What lies under the head counts only when it was said. */
export function handWish(hand: string, job: Job): Hand | null {
  const read = typedHand(hand, job);
  if (read.is === 'length') {
    const kind = [...job.upper.kinds.values()].find(({ length }) => length === read.mm);
    return kind && read.with.length > 0
      ? { kind: kind.letter, with: read.with }
      : { length: read.mm };
  }
  if (read.is !== 'kind') return null;
  return read.unders ? { kind: read.item.kind, with: read.item.with } : { kind: read.item.kind };
}
