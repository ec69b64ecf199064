/** What goes into the machine and has to come out again: noted by one key, said until it is out. */
import { sayThing } from '../../plan/order/inside.ts';
import type { Key } from '../base/key.ts';
import { markedPiece } from '../base/marked.ts';
import { isSomethingInside, stay } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { ask } from './field.ts';

/** The opening that is meant: the piece that is open or marked, where that is away from the machine. */
function opening(state: State): string | null {
  const key = markedPiece(state);
  const piece = key === null ? undefined : state.open?.job.pieces.get(key);
  if (state.view.screen === 'piece') return piece ? key : null;
  return piece && piece.away !== 'no' ? key : null;
}

export const goesIn: Key<{ state: State }> = {
  id: 'inside',
  presses: ['i'],
  label: '',
  help: 'what goes in and must come out: 2 rags',
  does: ({ state }) => ask(state, { ask: 'inside', piece: opening(state) }),
};

/** Letters of a thing that has room at the foot. */
const SHORT = 10;

export const cameOut: Key<{ state: State }> = {
  id: 'cleared',
  presses: ['x'],
  label: ({ state }) => {
    const [thing, ...more] = (state.open?.job.inside ?? []).map(sayThing);
    const one = thing !== undefined && more.length === 0 && thing.length <= SHORT;
    return one ? `${thing} out` : 'what went in is out';
  },
  help: 'what was inside came out again',
  holds: ({ state }) => isSomethingInside(state),
  does: ({ state }) => {
    const things = state.open?.job.inside ?? [];
    const here = markedPiece(state);
    const place = (things.find((i) => i.piece === here) ?? things[0])?.piece ?? null;
    const there = things.filter((i) => i.piece === place);
    if (there.length === 0) return stay(state);
    return ask(state, { ask: 'cleared', piece: place }, there.map(sayThing).join(', '));
  },
};
