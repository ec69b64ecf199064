/** What an earlier job knows of a piece, as keys that this job's file does not have yet. */
import { checkJob } from '../job/check.ts';
import { applyEdits, isFail } from '../job/edit/splice.ts';
import { jobOf, readJob } from '../job/read.ts';
import { figuresOf } from '../job/truth/corrections.ts';
import { sameText } from '../job/truth/figures.ts';
import { oneLine } from '../model/safe.ts';
import type { Correction, Edit, Fault, Job, Said, TakenPair } from '../model/types.ts';
import { many } from '../model/words.ts';
import { OF_PIECE, type PieceKey } from './carried.ts';
import type { Learnt, LearntKeys } from './learnt.ts';
import { learntFrom } from './learnt.ts';

export interface Take {
  pairs: TakenPair[];
  /** What stays as it is in this file, and why. */
  left: Left[];
}

export interface Left {
  /** In words: `holes 7 note`. */
  key: string;
  why: string;
}

/** Behind what was taken over: `Left as it is here: map (11 holes there, 2 here).`; empty for nothing. */
export function sayLeft(left: readonly Left[]): string {
  if (left.length === 0) return '';
  return `Left as it is here: ${left.map(({ key, why }) => `${key} (${why})`).join(', ')}.`;
}

/** What was not so there, where this job's file prints the same. */
export function truthsFor(job: Job, piece: string, earlier: Job, theirs: string): Correction[] {
  const here = figuresOf(job, { piece });
  return earlier.corrections.filter((c) => {
    if (c.piece !== theirs) return false;
    const same = here.filter((f) => f.what === c.what && (c.hole ?? f.hole) === f.hole);
    return same.some((f) => f.printed === null && sameText(c.what, f.text, c.printed));
  });
}

function mapAt(said: Said | undefined): LearntKeys {
  return typeof said === 'object' && !Array.isArray(said) ? said : {};
}

/** `text` is this job's file, `piece` its piece, `theirs` the piece of the earlier job. */
export function takeOver(
  text: string,
  job: Job,
  piece: string,
  from: Learnt,
  theirs: string,
): Take {
  const learnt = from.pieces[theirs] ?? {};
  const mine = learntRaw(text, job, piece);
  const holes = job.pieces.get(piece)?.holes.length ?? 0;
  const { row, kinds } = lettered(job, piece, from, learnt);
  const count = row?.split(' ').length ?? 0;
  const fits = holes === 0 || count === 0 || holes === count;
  const left: Left[] = [];
  const pairs: TakenPair[] = [...kinds];
  for (const [key, said] of Object.entries(learnt)) {
    const how = OF_PIECE[key as PieceKey];
    // The order of pieces is this job's own; what a piece is called too, if it is there already.
    const fresh = key === 'name' && !job.upper.pieces.has(piece);
    if (how === 'order' && !fresh) continue;
    const value = key === 'bolts' && row !== null ? row : said;
    if (how === 'holes' && !fits)
      left.push({ key, why: `${many(count, 'hole')} there, ${holes} here` });
    else pairs.push(...missing(['pieces', piece, key], value, mine[key], left));
  }
  return sound(text, job, piece, pairs, left);
}

/** The piece as this file has it. */
function learntRaw(text: string, job: Job, piece: string): LearntKeys {
  const bare: Job = {
    ...job,
    corrections: [],
    entries: [],
    pieces: new Map(),
  };
  const found = job.upper.pieces.get(piece);
  if (!found) return {};
  const now = job.pieces.get(piece);
  if (now) bare.pieces.set(piece, { ...now, holes: [] });
  return learntFrom(text, bare).pieces[piece] ?? {};
}

/** What is not there yet; of a mapping, which of its keys. */
function missing(path: string[], value: Said, stands: Said | undefined, left: Left[]): TakenPair[] {
  if (stands === undefined || stands === '') return [{ path, value }];
  const inner = Object.entries(mapAt(value));
  if (inner.length === 0 || typeof stands !== 'object' || Array.isArray(stands)) {
    if (JSON.stringify(stands) !== JSON.stringify(value))
      left.push({ key: path.slice(2).join(' '), why: `there ${shortSaid(value)}` });
    return [];
  }
  return inner.flatMap(([key, said]) => missing([...path, key], said, stands[key], left));
}

/** The row in this job's letters, and the kinds that it has not got yet. */
function lettered(
  job: Job,
  piece: string,
  from: Learnt,
  learnt: LearntKeys,
): { row: string | null; kinds: TakenPair[] } {
  const theirs = typeof learnt.bolts === 'string' ? learnt.bolts : null;
  const own = new Map([...job.upper.kinds].map(([letter, kind]) => [letter, kind.text]));
  const mine = job.upper.pieces.get(piece)?.row ?? null;
  const kinds = wordless(job, piece, from, own);
  for (const { path, value } of kinds) own.set(path[1] ?? '', textOf(value));
  if (theirs === null || mine !== null) return { row: theirs, kinds };
  const letters = new Map<string, string>();
  const row = theirs.replace(/(?<=^|\s)[A-Za-z][A-Za-z0-9]*/g, (letter) => {
    const value = from.kinds[letter];
    if (value === undefined) return letter;
    const known = letters.get(letter);
    if (known !== undefined) return known;
    const same = [...own].find(([, text]) => text === textOf(value))?.[0];
    const now = same ?? (own.has(letter) ? freeLetter(own) : letter);
    letters.set(letter, now);
    if (same === undefined) {
      own.set(now, textOf(value));
      kinds.push({ path: ['bolts', now], value });
    }
    return now;
  });
  return { row, kinds };
}

const textOf = (said: Said): string => (typeof said === 'string' ? said : JSON.stringify(said));

/** As one reads it: the texts of it, one behind the other. */
const sayOf = (said: Said): string => {
  if (typeof said === 'string') return said;
  if (Array.isArray(said)) return said.map(sayOf).join('; ');
  return Object.entries(said)
    .map(([key, value]) => `${key}: ${sayOf(value)}`)
    .join('; ');
};

/**
 * Letters that stand in rows of this file and that nobody has said a word about: of this piece, and in a file
 * without any kinds of all pieces, since the first kind makes all other letters unknown.
 */
function wordless(
  job: Job,
  piece: string,
  from: Learnt,
  own: ReadonlyMap<string, string>,
): TakenPair[] {
  const specs = [...job.upper.pieces.values()].filter((s) => own.size === 0 || s.key === piece);
  const used = new Set(specs.flatMap((s) => (s.row ?? []).map(({ kind }) => kind)));
  return Object.entries(from.kinds)
    .filter(([letter]) => used.has(letter) && !own.has(letter))
    .map(([letter, value]) => ({ path: ['bolts', letter], value }));
}

function freeLetter(taken: ReadonlyMap<string, string>): string {
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  for (let n = 0; ; n++) {
    const letter = `${letters[n % 26]}${n < 26 ? '' : Math.floor(n / 26)}`;
    if (!taken.has(letter)) return letter;
  }
}

/** What the earlier job says there, as far as it fits in a line. */
function shortSaid(said: Said): string {
  const text = oneLine(sayOf(said));
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
}
const LONGEST = 60;

/** Those that the file takes without a fault more. */
function sound(text: string, job: Job, piece: string, pairs: TakenPair[], left: Left[]): Take {
  const base: Edit[] = job.upper.pieces.has(piece) ? [] : [{ edit: 'piece', piece }];
  const known = new Set(faultsOf(text));
  /** What would be wrong; null: nothing. */
  const wrongWith = (some: TakenPair[]): string | null => {
    const next = applyEdits(text, [...base, { edit: 'pairs', pairs: some }]);
    if (isFail(next)) return next.fault;
    const more = checkJob(next, '').find((f) => !known.has(faultSaid(f)));
    if (more) return more.say;
    return standsAsBefore(job, next) ? null : 'what is marked here would stand at other holes';
  };
  if (pairs.length === 0 || wrongWith(pairs) === null) return { pairs, left };
  // Kinds name each other in the rows: all of them, or one by one.
  const isKind = ({ path }: TakenPair) => path[0] === 'bolts';
  const kinds = pairs.filter(isKind);
  const rest = pairs.filter((pair) => !isKind(pair)).map((pair) => [pair]);
  const together = kinds.length === 0 || wrongWith(kinds) === null;
  const good: TakenPair[] = [];
  for (const some of [...(together ? [kinds] : kinds.map((pair) => [pair])), ...rest]) {
    const why = some.length === 0 ? null : wrongWith([...good, ...some]);
    if (why === null) good.push(...some);
    else for (const { path } of some) left.push({ key: keySaid(path), why });
  }
  return { pairs: good, left };
}

const keySaid = (path: readonly string[]) =>
  (path[0] === 'pieces' ? path.slice(2) : path).join(' ');

/** What was marked is still there, at its hole. */
function standsAsBefore(job: Job, next: string): boolean {
  const read = readJob(next, '');
  const now = jobOf(read);
  return [...job.pieces.values()].every((piece) => {
    if (piece.last === null) return true;
    const holes = now.pieces.get(piece.spec.key)?.holes ?? [];
    return piece.holes.every((h) => {
      const after = holes.find((a) => a.name === h.name);
      return after?.state === h.state && after.trouble === h.trouble && after.by === h.by;
    });
  });
}

const faultSaid = ({ code, say, fix }: Fault): string => `${code} ${say} ${fix}`;
const faultsOf = (text: string): string[] => checkJob(text, '').map(faultSaid);
