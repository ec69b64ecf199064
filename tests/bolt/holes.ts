/** Holes as a job file gives them, with only what a test is about. */
import type { Place } from '../../src/bolt/fit/reach.ts';
import { HOLE_KEYS } from '../../src/model/keys/keys.ts';
import { asPrinted } from '../../src/model/said.ts';
import { bareFields } from '../../src/model/types/fields.ts';
import type { HoleSpec, Kind } from '../../src/model/types.ts';

/** What is said of a hole; `into` as the file says it. */
export type Given = Partial<Omit<HoleSpec, 'name' | 'into'>> & { into?: string | null };

export function holeOf(name: string, { into = null, ...given }: Given = {}): HoleSpec {
  return { name, ...bareFields(HOLE_KEYS), ...given, into: said(into) };
}

/** A hole that takes a kind with this under its head; `into`: what its piece says that the bolts go into. */
export function placeOf(
  takes: Kind | null,
  given: Given = {},
  under: string[] = [],
  into: string | null = null,
): Place {
  return {
    takes: takes && { kind: takes, with: under },
    hole: holeOf('1', given),
    piece: { thick: null, thread: null, into: said(into) },
  };
}

const said = (text: string | null) => (text === null ? null : asPrinted(text));
