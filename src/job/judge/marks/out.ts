/** May these bolts be noted as out? What was found is evidence: another kind than claimed is noted, never refused. */

import { troubleOf } from '../../../model/states/troubles.ts';
import type {
  Edit,
  HoleNow,
  Job,
  PieceNow,
  RowItem,
  Verdict,
  Warning,
} from '../../../model/types.ts';
import { printItem, printRow, STILL_IN, sameItem, UNKNOWN } from '../../../piece/row.ts';
import { freshHole } from '../../fold/hole.ts';
import { turnedByAngle } from '../../fold/once.ts';
import { atHome } from '../../fold/piece.ts';
import { barePiece } from '../../form/bare.ts';
import {
  already,
  badName,
  holeField,
  list,
  pickHoles,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { overSaid } from './blocked.ts';
import { type FoundWord, readRowFound } from './found.ts';
import { onceSaid, turnedSaid } from './used-once.ts';

export function judgeOut(job: Job, wish: Wished<'out'>, stamp: Stamp): Verdict {
  const found = wish.row === undefined ? null : readRowFound(wish.row, job);
  if (found && 'ok' in found) return found;
  const warnings: Warning[] = [];
  let piece = job.pieces.get(wish.piece) ?? null;
  if (!piece) {
    const odd = badName(wish.piece);
    if (odd) return odd;
    if (!found)
      return wrong(
        'no-such-piece',
        `No piece ${wish.piece} in this job. Say the row that came out, and it is written.`,
      );
    warnings.push({ code: 'new-piece', say: `${wish.piece} is new in this job.` });
    piece = atHome(barePiece(wish.piece));
  }
  const isNew = piece.spec.row === null && piece.holes.length === 0;
  if (isNew && found && wish.holes === undefined) piece = withHoles(piece, found.words.length);

  const picked = pickHoles(piece, wish.holes);
  if ('ok' in picked) return picked;
  if (picked.length === 0) {
    return wrong(
      'no-holes',
      `${piece.spec.name}: no bolts are noted. Say the row that came out, or take the piece off.`,
    );
  }
  if (found && found.words.length !== 1 && found.words.length !== picked.length) {
    const say = `${piece.spec.name}: ${picked.length} holes, and ${found.words.length} words in the row.`;
    return wrong('row-count', say, { holes: picked.length, words: found.words.length });
  }
  // Said once, with the first that comes out.
  if (piece.holes.every((h) => h.state !== 'out')) warnings.push(...overSaid(job, piece));
  const turned = turnedByAngle(job, piece, piece.holes);
  if (turned.length > 0 && piece.holes.every((h) => h.state !== 'out')) {
    warnings.push(...onceSaid([turnedSaid(piece.spec.key, turned)]));
  }
  return note(piece, picked, found, wish, stamp, warnings);
}

function note(
  piece: PieceNow,
  picked: HoleNow[],
  found: { words: FoundWord[]; edits: Edit[] } | null,
  wish: Wished<'out'>,
  stamp: Stamp,
  warnings: Warning[],
): Verdict {
  const { stays, twice, ...sorted } = sortOut(picked, found?.words ?? null);
  if (stays.length > 0) warnings.push(heldSaid(stays));
  if (twice.length > 0 && wish.because === undefined) {
    const names = twice.map((m) => m.hole.name);
    const way = 'Undo that mark first, or say why.';
    const say = `${twiceSaid(twice, found?.words ?? null, picked)} ${way}`;
    return refuse('already-out', say, { holes: names });
  }
  const marked = [...sorted.marked, ...twice];
  marked.sort((a, b) => picked.indexOf(a.hole) - picked.indexOf(b.hole));
  if (marked.every((m) => m.word === STILL_IN)) return already(warnings);

  const holes = marked.map((m) => m.hole);
  const words = marked.map((m) => (typeof m.word === 'string' ? m.word : printItem(m.word)));
  const edits = [...(found?.edits ?? []), ...rowEdits(piece, marked)];
  const entry = {
    verb: 'out',
    value: piece.spec.row === null ? words.join(' ') : oneIfAlike(words),
    piece: piece.spec.key,
    ...holeField(piece, holes),
    ...(wish.tray === undefined ? {} : { tray: wish.tray }),
    ...changed(edits, holes),
  } as const;
  return write(stamp, wish, entry, { edits, warnings: [...warnings, ...sayOther(marked)] });
}

/** A hole, and what came out of it. */
interface CameOut {
  hole: HoleNow;
  word: FoundWord;
}

/**
 * Which holes get the mark. `words`: what was said, one for all or one each; null where nothing was. `twice`: another bolt was
 * noted there before. `stays`: noted as one that will not come.
 */
function sortOut(picked: readonly HoleNow[], words: readonly FoundWord[] | null) {
  const marked: CameOut[] = [];
  const twice: CameOut[] = [];
  const stays: HoleNow[] = [];
  picked.forEach((hole, i) => {
    const said = wordAt(words, i) ?? claimed(hole);
    // A row says what came out on the whole; of a bolt that would not come it takes a mark of its own.
    const holds = words !== null && picked.length > 1 && said !== STILL_IN && isHeld(hole);
    if (holds) stays.push(hole);
    const word = holds ? STILL_IN : said;
    if (hole.state !== 'out') marked.push({ hole, word });
    else if (word === STILL_IN) twice.push({ hole, word: said });
    else if (names(hole, word)) marked.push({ hole, word });
    else if (words && typeof word !== 'string' && hole.found && isOther(word, hole.found)) {
      twice.push({ hole, word });
    }
  });
  return { marked, twice, stays };
}

/** Which of them were noted with another bolt, and which as out where the row says that they are in. */
function twiceSaid(
  twice: readonly CameOut[],
  words: readonly FoundWord[] | null,
  picked: readonly HoleNow[],
): string {
  const isIn = ({ hole }: CameOut) => wordAt(words, picked.indexOf(hole)) === STILL_IN;
  const other = twice.filter((m) => !isIn(m)).map((m) => m.hole.name);
  const inside = twice.filter(isIn).map((m) => m.hole.name);
  return [
    ...(other.length === 0 ? [] : [`${list(other)} came out before, and another bolt was noted.`]),
    ...(inside.length === 0 ? [] : [`${list(inside)} came out before, and the row says still in.`]),
  ].join(' ');
}

function wordAt(words: readonly FoundWord[] | null, i: number): FoundWord | undefined {
  return words?.length === 1 ? words[0] : words?.[i];
}

function sayOther(marked: readonly CameOut[]): Warning[] {
  return marked.flatMap(({ hole, word }) => {
    if (typeof word === 'string' || !hole.claim || sameItem(word, hole.claim)) return [];
    if (word.kind === UNKNOWN) return [];
    const say = `${hole.name}: the file says ${printItem(hole.claim)}, and ${printItem(word)} came out. Settle which is true before anything goes back.`;
    return [{ code: 'found-other', say }];
  });
}

/** Who says that nobody knows which denies nothing that was noted. */
const isOther = (word: RowItem, found: RowItem): boolean =>
  word.kind !== UNKNOWN && !sameItem(word, found);

/** It came out as a bolt that nobody could name, and now it has a name. */
function names(hole: HoleNow, word: FoundWord): boolean {
  return (
    hole.found === null &&
    hole.trouble === null &&
    typeof word !== 'string' &&
    word.kind !== UNKNOWN
  );
}

/** Noted as one that will not come: it is in until its own mark says otherwise. */
export function isHeld({ state, trouble }: HoleNow): boolean {
  if (state === 'out' || trouble === null) return false;
  const { bolt, overWhenOut } = troubleOf(trouble);
  return bolt === 'in' && overWhenOut;
}

function heldSaid(stays: readonly HoleNow[]): Warning {
  const each = stays.map(
    (h) => `${h.name} stays in: it is noted as ${troubleOf(h.trouble ?? 'stuck').said}.`,
  );
  return { code: 'still-in', say: `${each.join(' ')} Say so of that one alone when it is out.` };
}

/** What the row said before, and which letters are new: an undo needs both. */
function changed(edits: readonly Edit[], holes: readonly HoleNow[]) {
  const brought = edits.flatMap((e) => (e.edit === 'kind' ? [e.letter] : []));
  const row = edits.some((e) => e.edit === 'row' || e.edit === 'row-word');
  return {
    ...(row ? { was: printRow(holes.map((h) => h.claim ?? { kind: UNKNOWN, with: [] })) } : {}),
    ...(brought.length > 0 ? { brought: brought.join(' ') } : {}),
  };
}

function claimed(hole: HoleNow): RowItem {
  return hole.belongs ?? { kind: UNKNOWN, with: [] };
}

/** One word if all holes of a row in the file take the same, else a word for each hole. */
function oneIfAlike(words: readonly string[]): string {
  const alike = new Set(words).size === 1 && words[0] !== STILL_IN;
  return alike ? (words[0] ?? '') : words.join(' ');
}

/** Where the file does not say yet what belongs in a hole, what came out is written as that. */
function rowEdits(piece: PieceNow, marked: readonly CameOut[]): Edit[] {
  const key = piece.spec.key;
  if (piece.spec.row === null) {
    const words = piece.holes.map((hole) => {
      const word = marked.find((m) => m.hole === hole)?.word;
      return typeof word === 'object' ? word : { kind: UNKNOWN, with: [] };
    });
    return [{ edit: 'row', piece: key, row: printRow(words) }];
  }
  return marked.flatMap(({ hole, word }): Edit[] => {
    const index = piece.holes.indexOf(hole);
    if (typeof word === 'string' || hole.claim !== null || word.kind === UNKNOWN) return [];
    if (index >= (piece.spec.row?.length ?? 0)) return [];
    return [
      { edit: 'row-word', piece: key, hole: hole.name, index, was: UNKNOWN, word: printItem(word) },
    ];
  });
}

function withHoles(piece: PieceNow, count: number): PieceNow {
  return { ...piece, holes: Array.from({ length: count }, (_, i) => freshHole(`${i + 1}`, null)) };
}
