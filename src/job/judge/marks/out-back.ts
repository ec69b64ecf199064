/** What taking back `out` does to the person's part: the row as it was, and letters gone that only this mark brought. */
import { printKind } from '../../../bolt/read/kind.ts';
import type { Edit, Entry, Job, Kind, PieceNow } from '../../../model/types.ts';
import { namesKinds } from '../../../model/verbs/verbs.ts';
import { printItem, readItem, UNKNOWN } from '../../../piece/row.ts';
import type { UndoWay } from '../base/verdict.ts';
import { NOT_MEASURED, readRowFound } from './found.ts';

export function outBack(job: Job, entry: Entry, way: UndoWay): Edit[] {
  const piece = job.pieces.get(entry.piece ?? '');
  if (!piece) return [];
  const row = rowBack(piece, entry, way);
  return way === 'back'
    ? [...row, ...lettersBack(job, entry, row)]
    : [...newKinds(job, entry), ...row];
}

function newKinds(job: Job, { value }: Entry): Edit[] {
  const found = readRowFound(value, job);
  return 'ok' in found ? [] : found.edits;
}

/** One word stands for all holes. */
const wordAt = (words: readonly string[], i: number): string | undefined =>
  words.length === 1 ? words[0] : words[i];

function rowBack(piece: PieceNow, { hole, value, was }: Entry, way: UndoWay): Edit[] {
  if (was === undefined) return [];
  const [before, found] = [was.split(' '), value.split(' ')];
  const names = hole ?? piece.holes.map((h) => h.name);
  const edits: Edit[] = [];
  for (const [i, name] of names.entries()) {
    const index = piece.holes.findIndex((h) => h.name === name);
    const [old, now] = [wordAt(before, i), wordAt(found, i)];
    const [from, to] = way === 'back' ? [now, old] : [old, now];
    if (!from || !to || from === to || readItem(to) === null) continue;
    const claim = piece.spec.row?.[index];
    // A row that somebody has changed since is theirs, all of it.
    if (!claim || printItem(claim) !== from) return [];
    edits.push({ edit: 'row-word', piece: piece.spec.key, hole: name, index, was: from, word: to });
  }
  return edits;
}

function lettersBack(job: Job, entry: Entry, row: readonly Edit[]): Edit[] {
  return (entry.brought ?? '').split(' ').flatMap((letter): Edit[] => {
    const kind = job.upper.kinds.get(letter);
    if (!kind || !isAsBrought(kind, job)) return [];
    const isIt = (word: string) => readItem(word)?.kind === letter;
    const told = job.entries.some(
      (e) =>
        e !== entry && job.living.has(e.id) && namesKinds(e.verb) && e.value.split(' ').some(isIt),
    );
    const away = row.filter((e) => e.edit === 'row-word' && isIt(e.was)).length;
    const claims = [...job.pieces.values()]
      .flatMap((p) => p.spec.row ?? [])
      .filter((item) => item.kind === letter).length;
    return told || claims > away ? [] : [{ edit: 'unkind', letter, text: kind.text }];
  });
}

/** Nobody has said more of it than the mark did: nothing, or its length and the rest as its neighbour has it. */
function isAsBrought(kind: Kind, job: Job): boolean {
  if (kind.text === NOT_MEASURED || kind.text === UNKNOWN) return true;
  const { length, lengthText } = kind;
  const bare = { ...kind, thread: null, head: null, tool: null, class: null, text: '' };
  return (
    kind.text === printKind({ ...bare, threaded: null, note: null, once: false }) ||
    [...job.upper.kinds.values()].some(
      (other) =>
        other.letter !== kind.letter &&
        printKind({ ...other, text: '', length, lengthText }) === kind.text,
    )
  );
}
