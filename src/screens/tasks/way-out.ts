/** The way out of what stops, at its gate and before a test. */
import type { Wish } from '../../model/types.ts';
import type { ItemInWords } from '../../plan/gates/items.ts';
import { sayThing } from '../../plan/order/inside.ts';
import { LOOK, OFF, TIGHT, toSettleStep } from '../base/enter.ts';
import { requestMark, say, show, stay } from '../base/moves.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
import { openTask } from './open-task.ts';

const DONE = 'it is done';

/** By one key: it is noted as done, or one goes where it is mended. */
export function solve(state: State, item: ItemInWords, ticked: Wish): Updated {
  const { way } = item;
  if (way === null) return stay(state);
  switch (way.to) {
    case 'out': {
      const { piece } = way;
      return requestMark(state, {
        do: 'cleared',
        ...(piece === null ? {} : { piece }),
        what: sayThing(way),
      });
    }
    case 'bolts':
      return toPiece(state, way.piece, OFF);
    case 'tighten':
      return toPiece(state, way.piece, TIGHT);
    case 'mend':
      return toPiece(state, way.piece, { ...LOOK, here: way.hole } as PieceStep);
    case 'settle':
      return toSettleStep(toPiece(state, way.piece, LOOK).state);
    case 'task':
      return openTask(state, way.task);
    case 'buy':
      // That a new one is here has a key of its own on the screen.
      return stay(state);
    case 'file':
      return say(
        state,
        'Mend the file in an editor: putback check says what is wrong, and the way out.',
      );
    case 'tick':
      return requestMark(state, ticked);
  }
}

function toPiece(state: State, piece: string, step: PieceStep): Updated {
  return show(state, { screen: 'piece', piece, step });
}

/** As it stands at the foot. */
export function solveSaid({ way }: ItemInWords): string {
  if (way === null) return DONE;
  switch (way.to) {
    case 'out':
      return way.count === 1 ? 'it is out' : 'they are out';
    case 'bolts':
      return 'back to those bolts';
    case 'tighten':
      return 'tighten them';
    case 'mend':
      return 'to that hole';
    case 'settle':
      return 'settle it';
    case 'task':
      return 'fill it in';
    case 'file':
      return 'how to mend it';
    case 'buy':
    case 'tick':
      return DONE;
  }
}
