/** What of a job file is for another job too, key by key: a key more of the file asks for its line here. */
import type { CHECK_KEYS, FILE_KEYS, PIECE_KEYS, SUSPECT_KEYS } from '../model/keys/keys.ts';

/**
 * Of a piece, in the order in which a template says it. `order`: how it lies among the pieces of its own file, and what
 * it is called there; `holes`: of its holes one by one, only for a piece with as many; `never`: of that time alone.
 */
export const OF_PIECE = {
  name: 'order',
  under: 'order',
  along: 'order',
  bridges: 'order',
  bolts: 'holes',
  torque: 'any',
  into: 'any',
  thick: 'any',
  thread: 'any',
  joint: 'any',
  loose: 'any',
  caution: 'any',
  tip: 'any',
  marks: 'any',
  routes: 'any',
  map: 'holes',
  pitch: 'holes',
  holes: 'holes',
  sequence: 'holes',
  first: 'holes',
  passes: 'any',
  care: 'any',
  takes: 'any',
  note: 'any',
  // Where its bolts lay.
  tray: 'never',
} as const satisfies Record<keyof typeof PIECE_KEYS, 'order' | 'holes' | 'any' | 'never'>;

export type PieceKey = keyof typeof OF_PIECE;

/** Keys of a piece that hold next time too. */
export const PIECE_CARRIED = (Object.keys(OF_PIECE) as PieceKey[]).filter(
  (key) => OF_PIECE[key] !== 'never',
);

/**
 * Of the file. `said`: said anew by each job; `own`: by `Learnt` itself, which changes what it says; `asIs`: another
 * section, as it stands; `never`: the diary stays behind.
 */
const OF_FILE = {
  putback: 'said',
  job: 'said',
  machine: 'said',
  'machine-id': 'said',
  like: 'said',
  complaint: 'said',
  found: 'said',
  done: 'said',
  bolts: 'own',
  pieces: 'own',
  tasks: 'own',
  buy: 'own',
  suspects: 'asIs',
  checks: 'asIs',
  diary: 'never',
} as const satisfies Record<keyof typeof FILE_KEYS, 'said' | 'own' | 'asIs' | 'never'>;

type Sections = typeof OF_FILE;
type SectionsOf<How> = {
  [K in keyof Sections]: Sections[K] extends How ? K : never;
}[keyof Sections];

/** Sections that are carried over as they stand. */
export type AsIs = SectionsOf<'asIs'>;
export const AS_IS = (Object.keys(OF_FILE) as (keyof Sections)[]).filter(
  (key): key is AsIs => OF_FILE[key] === 'asIs',
);
/** Those that `Learnt` has a place of its own for. */
export type Own = SectionsOf<'own'>;

/** Where a suspect and a check name what they are about; a key that does not exist does not compile. */
export const SUSPECT_PIECE = 'piece' satisfies keyof typeof SUSPECT_KEYS;
export const CHECK_PIECES = 'under' satisfies keyof typeof CHECK_KEYS;
export const CHECK_SUSPECTS = ['bad', 'along'] as const satisfies (keyof typeof CHECK_KEYS)[];
