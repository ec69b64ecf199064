/** Another kind belongs in a hole, or its kind has another letter: asked for where the hole is pointed at. */
import { UNKNOWN } from '../../piece/row.ts';
import { ask } from '../ask/field.ts';
import type { Key } from '../base/key.ts';
import { holeNamed, stay } from '../base/moves.ts';
import type { OnPiece } from './step.ts';

/** A dot begins a length, wherever a bolt is named. */
export const belongsKey: Key<OnPiece<'look' | 'settle'>> = {
  id: 'belongs',
  presses: ['.'],
  label: '',
  help: 'another kind belongs in the lit hole, or its kind has another letter',
  holds: ({ step }) => step.here !== null,
  does: ({ state, piece, step }) => {
    if (step.here === null) return stay(state);
    const kind = holeNamed(piece, step.here)?.belongs?.kind ?? UNKNOWN;
    return ask(state, { ask: 'belongs', hole: step.here, kind: kind === UNKNOWN ? null : kind });
  },
};
