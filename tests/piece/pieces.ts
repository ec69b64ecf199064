/** Pieces as a job file gives them, with only what a test is about. */

import { HOLE_KEYS, PIECE_KEYS } from '../../src/model/keys/keys.ts';
import { bareFields } from '../../src/model/types/fields.ts';
import type { HoleSpec, PieceSpec } from '../../src/model/types.ts';

export const upTo = (n: number): string[] => Array.from({ length: n }, (_, i) => `${i + 1}`);

export function hole(name: string, given: Partial<HoleSpec> = {}): [string, HoleSpec] {
  return [name, { name, ...bareFields(HOLE_KEYS), ...given }];
}

/** A piece with n bolts of kind S. */
export function piece(n: number, given: Partial<PieceSpec> = {}): PieceSpec {
  const row = upTo(n).map(() => ({ kind: 'S', with: [] }));
  return { ...bareFields(PIECE_KEYS), key: 'cover', name: 'Cover', row, ...given };
}
