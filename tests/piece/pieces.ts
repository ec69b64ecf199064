/** Pieces as a job file gives them, with only what a test is about. */
import type { HoleSpec, PieceSpec } from '../../src/model/types.ts';

export const upTo = (n: number): string[] => Array.from({ length: n }, (_, i) => `${i + 1}`);

export function hole(name: string, given: Partial<HoleSpec> = {}): [string, HoleSpec] {
  const bare: HoleSpec = {
    ...{ name, note: null, thick: null, thread: null, turns: null, proud: null, at: null },
    ...{ torque: null, into: null, wet: false, group: null },
  };
  return [name, { ...bare, ...given }];
}

/** A piece with n bolts of kind S. */
export function piece(n: number, given: Partial<PieceSpec> = {}): PieceSpec {
  return {
    ...{
      key: 'cover',
      name: 'Cover',
      under: [],
      torque: null,
      into: null,
      thick: null,
      thread: null,
    },
    ...{ joint: [], loose: [], marks: [], routes: [], tray: null, map: null, pitch: null },
    row: upTo(n).map(() => ({ kind: 'S', with: [] })),
    ...{ caution: { removal: [], fitting: [] }, tip: { removal: [], fitting: [] } },
    ...{ holes: new Map(), sequence: null, passes: null, care: null, first: [], note: null },
    ...{ along: [], bridges: [], takes: null },
    ...given,
  };
}
