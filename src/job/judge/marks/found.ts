/** A row as somebody typed it who has just taken the bolts out: `s s .35 m+clip ! -`. */
import { printKind, unknownKind, withLength } from '../../../bolt/read/kind.ts';
import { readBoltLength } from '../../../bolt/read/length.ts';
import type { Edit, Job, Kind, RowItem } from '../../../model/types.ts';
import { FOUND_EMPTY, readItem, rowWords, STILL_IN, signOf, UNKNOWN } from '../../../piece/row.ts';
import { type Refused, wrong } from '../base/verdict.ts';

export type FoundWord = RowItem | typeof STILL_IN | typeof FOUND_EMPTY;

/** The letters that new kinds get when only their length was said: short, medium, long, then the rest. */
const LETTERS = [...'SMLABCDEFGHJKNPQRTUVWXYZ'];

/** How a kind is described of which nobody has said anything yet. */
export const NOT_MEASURED = 'not measured yet';

/**
 * Reads the words and finds their kinds. Letters may be typed small; `.35` is the kind 35 mm long. A kind that
 * the job does not have yet is new: of one named by its length all else is as with its neighbour in the row, of one named
 * by a letter nothing is known.
 */
export function readRowFound(
  text: string,
  job: Job,
): { words: FoundWord[]; edits: Edit[] } | Refused {
  const kinds = new Map(job.upper.kinds);
  const used = usedLetters(job);
  const words: FoundWord[] = [];
  const added: { letter: string; length: number | null; at: number }[] = [];
  const typed = rowWords(text);
  if (typed.length === 0)
    return wrong('empty-row', 'The row is empty: say what came out, hole by hole.');
  for (const [at, { word: said }] of typed.entries()) {
    const word = signOf(said);
    if (word === STILL_IN || word === FOUND_EMPTY) {
      words.push(word);
      continue;
    }
    const [head = '', ...under] = word.split('+');
    const length = head.startsWith('.') ? readBoltLength(head.slice(1)) : null;
    const letter =
      length === null ? letterOf(head, kinds, used) : letterOfLength(length, kinds, added, used);
    const item = readItem([letter, ...under].join('+'));
    if (!item) {
      return wrong(
        'bad-word',
        `${word} is no word of a row: a kind (S) or a length (.25, .1-1/4), with what is under its head (M+clip), ! for still in, - for an empty hole.`,
        { word },
      );
    }
    words.push(item);
    const isNew =
      item.kind !== UNKNOWN && !kinds.has(item.kind) && !added.some((a) => a.letter === item.kind);
    if (isNew) added.push({ letter: item.kind, length, at });
  }
  const told = added.map((a) => ({
    letter: a.letter,
    kind: inherit(a.letter, a.length, neighbour(words, a.at, kinds)),
  }));
  // Once one kind is listed, all are: a letter that is not would look like a slip.
  const listed = kinds.size > 0 || told.some((t) => t.kind !== null);
  const edits = told.flatMap(({ letter, kind }): Edit[] =>
    listed ? [{ edit: 'kind', letter, text: kind ? printKind(kind) : NOT_MEASURED }] : [],
  );
  return { words, edits };
}

/** Letters in use: declared, or standing in a row. */
export function usedLetters(job: Job): Set<string> {
  const used = new Set(job.upper.kinds.keys());
  for (const piece of job.pieces.values()) {
    for (const hole of piece.holes) {
      if (hole.belongs) used.add(hole.belongs.kind);
      if (hole.found) used.add(hole.found.kind);
    }
  }
  return used;
}

/** The letters of the kinds in use; a bolt that nobody has named has none. */
export function kindLetters(job: Job): string[] {
  return [...usedLetters(job)].filter((letter) => letter !== UNKNOWN);
}

/** A letter as typed, or the one it means when typed small; a new one is written large. */
export function letterOf(
  typed: string,
  kinds: ReadonlyMap<string, Kind>,
  used: ReadonlySet<string>,
): string {
  if (typed === UNKNOWN || kinds.has(typed) || used.has(typed)) return typed;
  const meant = [...kinds.keys(), ...used].find((k) => k.toLowerCase() === typed.toLowerCase());
  return meant ?? (/^[a-z]$/.test(typed) ? typed.toUpperCase() : typed);
}

function letterOfLength(
  mm: number,
  kinds: ReadonlyMap<string, Kind>,
  added: readonly { letter: string; length: number | null }[],
  used: ReadonlySet<string>,
): string {
  for (const kind of kinds.values()) if (kind.length === mm) return kind.letter;
  const now = added.find((a) => a.length === mm);
  if (now) return now.letter;
  const taken = (l: string) => kinds.has(l) || used.has(l) || added.some((a) => a.letter === l);
  return LETTERS.find((l) => !taken(l)) ?? `K${added.length + 1}`;
}

/** The nearest known kind before the word, else behind it. */
function neighbour(
  words: readonly FoundWord[],
  at: number,
  kinds: ReadonlyMap<string, Kind>,
): Kind | null {
  const before = words.slice(0, at).reverse();
  for (const word of [...before, ...words.slice(at + 1)]) {
    const kind = typeof word === 'object' ? kinds.get(word.kind) : undefined;
    if (kind) return kind;
  }
  return kinds.values().next().value ?? null;
}

/** Null: a letter of which nothing was said is like no other, whatever lies beside it. */
function inherit(letter: string, mm: number | null, from: Kind | null): Kind | null {
  if (mm === null) return null;
  return from ? { ...withLength(from, mm), letter } : unknownKind(letter, mm);
}
