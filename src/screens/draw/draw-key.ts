/** The key that opens the field on which holes are drawn. */

import { layoutOf } from '../../plan/piece/piece-now.ts';
import type { Key } from '../base/key.ts';
import { type At, isSomethingInside } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { openDrawing } from './draw.ts';

type OnPiece = At & { state: State };

/** It has holes, or may have some, and they are not measured: then a picture is what shows them. */
function canDraw({ piece }: At): boolean {
  return piece.spec.row?.length !== 0 && layoutOf(piece).from !== 'at';
}

/** Fewer holes than this are told apart without a picture. */
const FEW = 3;

/** Offered at the foot as long as the piece is shown as a ring; what was left inside comes before it. */
function drawLabel({ state, piece, view }: OnPiece): string {
  if (isSomethingInside(state)) return '';
  const n = piece.holes.length;
  // A piece without bolts has more important keys; while its row is typed it has bolts.
  const some = n >= FEW || (n === 0 && view.step.step === 'off-row');
  return piece.spec.map === null && some ? 'draw the holes' : '';
}

export const drawKey: Key<OnPiece> = {
  id: 'draw',
  presses: ['z'],
  label: drawLabel,
  help: 'walk round the piece and draw where its holes lie',
  holds: canDraw,
  does: ({ state, key }) => openDrawing(state, key),
};

/** While its row is typed, where letters are text. */
export const drawKeyWhileTyping: Key<OnPiece> = {
  ...drawKey,
  id: 'draw-row',
  presses: ['up'],
  help: 'draw where the holes lie',
};
