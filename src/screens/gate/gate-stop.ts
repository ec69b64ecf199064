/** STOP at a gate: all that stops in the one frame, above the rest of the list, and the way out of each. */
import type { Wish } from '../../model/types.ts';
import { stopsNow } from '../../plan/gates/gate-now.ts';
import type { ItemInWords } from '../../plan/gates/items.ts';
import { sayThing } from '../../plan/order/inside.ts';
import { LOOK, OFF, TIGHT, toSettleStep } from '../base/enter.ts';
import { requestMark, say, show, stay } from '../base/moves.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
import { sentences, stopBox } from '../kit/box.ts';
import { type Line, line } from '../kit/text.ts';
import { openTask } from '../tasks/open-task.ts';

interface Stopping {
  item: ItemInWords;
}

/** At least so many lines of the list stay under the frame. */
const LEFT = 4;

const DONE = 'it is done';

/**
 * The frame with what stops and a blank line below it; empty where nothing stops. `here` is marked where it is among
 * them. It takes at most `room` lines less some for the list: what has no room is counted.
 */
export function stopFrame(
  items: readonly Stopping[],
  here: string | null,
  columns: number,
  room: number,
): Line[] {
  const stops = items.filter((i) => stopsNow(i.item)).map((i) => i.item);
  if (stops.length === 0) return [];
  const at = stops.findIndex((s) => s.key === here);
  const draw = (from: number, to: number): Line[] => {
    const left = stops.length - (to - from);
    const texts = stops.slice(from, to).map((s) => sentences(s.stop ?? s.say).join(' '));
    return stopBox(left > 0 ? [...texts, `And ${left} more.`] : texts, columns, at - from);
  };
  let [from, to] = [0, stops.length];
  while (to - from > 1 && draw(from, to).length + 1 > room - LEFT) {
    // The marked one stays in sight.
    if (to - 1 > Math.max(at, 0)) to -= 1;
    else from += 1;
  }
  return [...draw(from, to), line('')];
}

/** The way out of what stops, by one key: it is noted as done, or one goes where it is mended. */
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
