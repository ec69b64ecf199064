/** What the file gives to read before a piece comes off or goes back. */

import { type KeyRow, type KeysWith, keysWith } from '../../model/keys/key-row.ts';
import { PIECE_KEYS } from '../../model/keys/keys.ts';
import type { Job, PieceSpec, TextSaid } from '../../model/types.ts';
import { capital } from '../../model/words.ts';
import { cautionsSaid } from '../care/cautions.ts';

type Way = 'removal' | 'fitting';
type Key = KeysWith<typeof PIECE_KEYS, { read: object }>;

export interface ToRead {
  /** Which key of the piece says it; null for what is said of a piece that comes with it. */
  key: Key | null;
  /** What stands before it. */
  what: string;
  texts: readonly TextSaid[];
}

const readOf = (key: Key) => PIECE_KEYS[key].read as NonNullable<KeyRow['read']>;

/** Keys that are read before a step, in their order. */
const READ = (keysWith(PIECE_KEYS, (row) => row.read !== undefined) as Key[]).sort(
  (a, b) => readOf(a).at - readOf(b).at,
);

export function keysToRead(way: Way): Key[] {
  return READ.filter((key) => readOf(key)[way] !== undefined);
}

/** Something that is to be read before, and not merely good to know. */
export function mustRead(job: Job, spec: PieceSpec, way: Way): boolean {
  return toRead(job, spec, way).some(({ key }) => key === null || readOf(key)[way] === 'first');
}

export function toRead(job: Job, spec: PieceSpec, way: Way): ToRead[] {
  const own = keysToRead(way).flatMap((key) => {
    const texts = textsToRead(spec, key, way);
    return texts.length === 0 ? [] : [{ key, what: capital(key), texts }];
  });
  return [...own, ...carriedToRead(job, spec)];
}

/** What comes off with it and goes back with it has no step of its own at which it could be read. */
function carriedToRead(job: Job, { key }: PieceSpec): ToRead[] {
  const carried = [...job.pieces.values()].filter((p) => p.spec.along.includes(key));
  return carried.flatMap(({ spec }) => {
    const texts = [...spec.marks, ...spec.routes];
    return texts.length === 0 ? [] : [{ key: null, what: spec.name, texts }];
  });
}

function textsToRead(spec: PieceSpec, key: Key, way: Way): readonly TextSaid[] {
  // The file's own first, then what is said of such a piece anywhere, and whose word goes first.
  if (key === 'caution')
    return cautionsSaid(spec, way === 'removal' ? 'off' : 'on').map((c) => c.said);
  const said = spec[key];
  if (said === null) return [];
  return 'removal' in said ? said[way] : 'text' in said ? [said] : said;
}
