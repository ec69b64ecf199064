/**
 * What of a piece, a hole or a task can be corrected, what can be written from a screen, and under which name each is
 * told: all of it from the table of keys.
 */
import { type KeyRow, type Keys, type KeysWith, keyRows, keysWith } from './key-row.ts';
import { HOLE_KEYS, PIECE_KEYS, TASK_KEYS } from './keys.ts';
import type { CorrectedValue, ValueName } from './values.ts';

type Of<Has> =
  | KeysWith<typeof PIECE_KEYS, Has>
  | KeysWith<typeof HOLE_KEYS, Has>
  | KeysWith<typeof TASK_KEYS, Has>;

/** What a manual can have wrong: of a piece, a hole of it, or a task (`step` is what is to be done). */
export type Correctable = Of<{ corrected: true }> | 'step';

/** Keys of a piece that a text can be put into without an editor. */
export type Writable = KeysWith<typeof PIECE_KEYS, { written: object }>;
type ListValue = 'texts' | 'pieceNames';
type WholeValue = 'order' | 'picture' | 'row';
/** Those of them that hold a list: another text is added to it. */
export type Several = KeysWith<typeof PIECE_KEYS, { written: object; value: ListValue }>;
/** Those of them whose texts are names of pieces. */
export type NamesPieces = KeysWith<typeof PIECE_KEYS, { written: object; value: 'pieceNames' }>;
/** Those of them that hold one value, which is replaced as a whole. */
export type Anew = KeysWith<typeof PIECE_KEYS, { written: object; value: WholeValue }>;

/** What becomes mm or a number when it is read; the text is kept beside it. */
export type MeasureKey = Of<{ value: 'length' | 'depth' | 'number' }>;

/** What is told of a piece, a hole or a task under a name of its own. */
export type KnownKey = Of<{ label: string }> | 'step';

/** Rows by name. Where a piece, a hole and a task share a name it means the same, and is told the same. */
const ROWS = new Map<string, KeyRow>(
  [TASK_KEYS, HOLE_KEYS, PIECE_KEYS].flatMap((keys) => keyRows<Keys>(keys)),
);

const corrected = (keys: Keys) => keysWith(keys, (row) => row.corrected === true);

/** What can be corrected of each, in the order of a job file. */
export const CORRECTABLE_OF = {
  piece: corrected(PIECE_KEYS),
  hole: corrected(HOLE_KEYS),
  task: ['step', ...corrected(TASK_KEYS)],
};

export const CORRECTABLE = [
  ...new Set(Object.values(CORRECTABLE_OF).flat()),
] as unknown as readonly [Correctable, ...Correctable[]];

/** The kind of value that a text of this name is. */
export function valueNameOf(what: Correctable): CorrectedValue {
  return what === 'step' ? 'verb' : (ROWS.get(what)?.value as CorrectedValue);
}

export function labelOf(what: KnownKey): string {
  const row = ROWS.get(what);
  return row?.label ?? 'Step';
}

/** What a hole takes from its piece where it says nothing itself. */
export const ELSE_OF_PIECE: readonly Correctable[] = keysWith(
  HOLE_KEYS,
  (row) => 'elseOfPiece' in row,
) as Correctable[];

// ---------------------------------------------------------------- written

function writtenOf(key: Writable) {
  const { written } = PIECE_KEYS[key] as Extract<KeyRow, { written: object }>;
  return written;
}

const LISTS: readonly ValueName[] = ['texts', 'pieceNames'] satisfies ListValue[];
const WHOLES: readonly ValueName[] = ['order', 'picture', 'row'] satisfies WholeValue[];

export function isWritable(word: string): word is Writable {
  return (WRITABLE as readonly string[]).includes(word);
}

export function isSeveral(key: Writable): key is Several {
  return LISTS.includes(PIECE_KEYS[key].value);
}

export function isAnew(key: Writable): key is Anew {
  return WHOLES.includes(PIECE_KEYS[key].value);
}

export function namesPieces(key: Writable): key is NamesPieces {
  return PIECE_KEYS[key].value === 'pieceNames';
}

export const needsBolts = (key: Writable): boolean => writtenOf(key).ofBolts === true;

/** The question on the screen, and the lines that help. */
export const asksOf = (key: Writable) => writtenOf(key).asks;

/** What may be said of a piece and is not yet, each with what it is for, in the order in which it is offered. */
export const OFFERED: readonly (readonly [Writable, string])[] = (
  keysWith(PIECE_KEYS, (row) => row.written !== undefined) as Writable[]
)
  .flatMap((key) => {
    const { offered } = writtenOf(key);
    return offered ? [{ key, at: offered[0], what: offered[1] }] : [];
  })
  .sort((a, b) => a.at - b.at)
  .map(({ key, what }) => [key, what] as const);

/** All writable keys: lists first, then single texts, then what is replaced as a whole; in each group as they are offered. */
export const WRITABLE = (keysWith(PIECE_KEYS, (row) => row.written !== undefined) as Writable[])
  .map((key) => {
    const [at] = writtenOf(key).offered ?? [OFFERED.length + 1];
    return { key, at, how: isSeveral(key) ? 0 : isAnew(key) ? 2 : 1 };
  })
  .sort((a, b) => a.how - b.how || a.at - b.at)
  .map(({ key }) => key) as unknown as readonly [Writable, ...Writable[]];
