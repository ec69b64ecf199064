/** Pieces as a job file gives them, with only what a test is about. */

import { PIECE_KEYS } from '../../src/model/keys/keys.ts';
import { asPrinted } from '../../src/model/said.ts';
import { bareFields } from '../../src/model/types/fields.ts';
import type { HoleSpec, PieceSpec } from '../../src/model/types.ts';
import { type Given, holeOf } from '../bolt/holes.ts';

export const upTo = (n: number): string[] => Array.from({ length: n }, (_, i) => `${i + 1}`);

export function hole(name: string, given: Given = {}): [string, HoleSpec] {
  return [name, holeOf(name, given)];
}

/** What is said of a piece; its joint as the file says it. */
export type OfPiece = Partial<Omit<PieceSpec, 'joint'>> & { joint?: readonly string[] };

/** A piece with n bolts of kind S. */
export function piece(n: number, { joint = [], ...given }: OfPiece = {}): PieceSpec {
  const row = upTo(n).map(() => ({ kind: 'S', with: [] }));
  return {
    ...bareFields(PIECE_KEYS),
    key: 'cover',
    name: 'Cover',
    row,
    ...given,
    joint: joint.map(asPrinted),
  };
}
