/** What all judges share: looking things up, refusing, and the answer's form. */
import { near } from '../../../model/nearword.ts';
import { MOST_OF_KEY } from '../../../model/slug.ts';
import type {
  Edit,
  Entry,
  Fields,
  HoleNow,
  Job,
  PieceNow,
  Refusal,
  Verb,
  Verdict,
  Warning,
  WishWhat,
} from '../../../model/types.ts';
import { list } from '../../../model/words.ts';
import { NAME } from '../../diary/entry.ts';

export { list } from '../../../model/words.ts';

/** Time and id of the entry to be. */
export interface Stamp {
  at: string;
  id: string;
}

/** A wish with what may stand beside it. */
export type Wished<D extends WishWhat['do']> = Extract<WishWhat, { do: D }> & {
  says?: string;
  because?: string;
};

/** Which way an undo goes: its mark counts and is taken back, or was taken back and comes again. */
export type UndoWay = 'back' | 'again';

/** What an undo does to the person's part, and what of it is not as it was left. */
export interface Undone {
  edits: Edit[];
  warnings: Warning[];
}

export type Refused = { ok: false; refused: Refusal };

/** What a reason overrules. `code` names the case for programs, `say` is for people, a sentence or more. */
export function refuse(code: string, say: string, data: Refusal['data'] = {}): Refused {
  return { ok: false, refused: { code, say, data, overrulable: true } };
}

/** Wrong use: no reason in the world makes it right. */
export function wrong(code: string, say: string, data: Refusal['data'] = {}): Refused {
  return { ok: false, refused: { code, say, data, overrulable: false } };
}

/** Why this is no name for a piece that is new; null where it is one. */
export function badName(key: string): Refused | null {
  if (NAME.test(key) && key.length <= MOST_OF_KEY) return null;
  const most = `small letters, digits and hyphens, at most ${MOST_OF_KEY} of them`;
  return wrong('bad-name', `${key} cannot be a piece's name: ${most}.`);
}

/** Already so: nothing to write. */
export function already(warnings: Warning[] = []): Verdict {
  return { ok: true, entry: null, edits: [], warnings };
}

export function write(
  stamp: Stamp,
  wish: { says?: string; because?: string },
  what: { verb: Verb; value: string } & Partial<Entry>,
  more: { edits?: Edit[]; warnings?: Warning[] } = {},
): Verdict {
  const entry: Entry = { ...what, at: stamp.at, id: stamp.id };
  if (wish.says !== undefined) entry.says = wish.says;
  if (wish.because !== undefined) entry.because = wish.because;
  return { ok: true, entry, edits: more.edits ?? [], warnings: more.warnings ?? [] };
}

/** What was judged by a figure that was given as the reason, with what it was taken as. */
export function judgedAnew(verdict: Verdict, say: string): Verdict {
  if (verdict.ok) {
    const told = { code: 'taken-as-reading', say: `${say}: it was judged by its limit.` };
    return { ...verdict, warnings: [told, ...verdict.warnings] };
  }
  const { refused } = verdict;
  return { ok: false, refused: { ...refused, say: `${say}. ${refused.say}` } };
}

export function noPiece(job: Job, key: string): Refused {
  return wrong('no-such-piece', `No piece ${key} in this job.${meant(key, job.pieces.keys())}`, {
    piece: key,
  });
}

/** ` Did you mean alternator?`, or what there is, or nothing. */
export function meant(word: string, words: Iterable<string>): string {
  const all = [...words];
  const close = near(word, all);
  if (close) return ` Did you mean ${close}?`;
  if (all.length === 0) return '';
  return ` There ${all.length === 1 ? 'is' : 'are'} ${list(all)}.`;
}

/** The named holes, all of them when none is named; a refusal when one does not exist. */
export function pickHoles(
  piece: PieceNow,
  names: readonly string[] | undefined,
): HoleNow[] | Refused {
  if (names === undefined) return piece.holes;
  const picked = new Set<HoleNow>();
  for (const name of names) {
    const hole = piece.holes.find((h) => h.name === name);
    if (!hole) return noHole(piece, name);
    picked.add(hole);
  }
  return [...picked];
}

/** The piece and its one hole that a wish names. */
export function pickHole(
  job: Job,
  wish: { piece: string; hole: string },
): { piece: PieceNow; hole: HoleNow } | Refused {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  const hole = piece.holes.find((h) => h.name === wish.hole);
  return hole ? { piece, hole } : noHole(piece, wish.hole);
}

/** What an entry is about of which a piece, or a hole of it, may be named. */
export function placeNamed(
  job: Job,
  wish: { piece?: string; hole?: string },
): { piece?: string; hole?: string[] } | Refused {
  const { piece, hole } = wish;
  if (piece === undefined) {
    if (hole === undefined) return {};
    return wrong('which-piece', 'A hole is one of a piece: name the piece as well.');
  }
  if (!job.pieces.has(piece)) return noPiece(job, piece);
  if (hole === undefined) return { piece };
  const picked = pickHole(job, { piece, hole });
  return 'ok' in picked ? picked : { piece, hole: [hole] };
}

function noHole(piece: PieceNow, name: string): Refused {
  const has = holesSaid(piece.holes.map((h) => h.name));
  return wrong('no-such-hole', `${piece.spec.name} has no hole ${name}: ${has}.`, { hole: name });
}

function holesSaid(names: readonly string[]): string {
  if (names.length === 0) return 'no holes are noted yet';
  if (names.length === 1) return `it has ${names[0]}`;
  return `it has ${names[0]} to ${names.at(-1)}`;
}

/** Names for an entry: absent when they are all the holes of the piece. */
export function holeField(piece: PieceNow, holes: readonly HoleNow[]): { hole?: string[] } {
  if (holes.length === piece.holes.length) return {};
  return { hole: holes.map((h) => h.name) };
}

export function namesOf(holes: readonly HoleNow[]): string[] {
  return holes.map((h) => h.name);
}

/** The same keys with the same texts. */
export function sameFields(a: Fields, b: Fields): boolean {
  const keys = Object.keys(a);
  const same = (key: string) => JSON.stringify(a[key]) === JSON.stringify(b[key]);
  return keys.length === Object.keys(b).length && keys.every(same);
}
