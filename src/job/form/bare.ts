/** Things of which nothing is known but their names. */

import { PIECE_KEYS } from '../../model/keys/keys.ts';
import { bareFields } from '../../model/types/fields.ts';
import type { PieceSpec } from '../../model/types.ts';
import { capital } from '../../model/words.ts';

/** `gear-lever` as one would say it: `Gear lever`. */
export function nameOfKey(key: string): string {
  return capital(key.replaceAll('-', ' '));
}

export function barePiece(key: string): PieceSpec {
  return { ...bareFields(PIECE_KEYS), key, name: nameOfKey(key) };
}
