/** The person's part of a job file, filled as well as the file allows. */
import { FILE_KEYS } from '../../model/keys/keys.ts';
import type { Upper } from '../../model/types.ts';
import type { Spot } from '../yaml/spot.ts';
import type { Reading } from './read-fields.ts';
import { type PlacedPiece, readKeys } from './read-keys.ts';

export interface PlacedUpper {
  upper: Upper;
  pieces: readonly PlacedPiece[];
}

export function readUpper(reading: Reading, root: Spot | null): PlacedUpper {
  const pieces: PlacedPiece[] = [];
  const { fields } = readKeys({ ...reading, pieces }, FILE_KEYS, '', root);
  return { upper: fields, pieces };
}
