/** Taking the last mark back, where one is not at the bolts of a piece. */

import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry, Wish } from '../../model/types.ts';
import { verbRow } from '../../model/verbs.ts';
import type { Key } from './key.ts';
import { requestMark, say } from './moves.ts';
import type { State, Updated } from './state.ts';

type Undo = Extract<Wish, { do: 'undo' }>;

export const undoHere: Key<{ state: State }> = {
  id: 'untick',
  presses: ['backspace'],
  label: '',
  help: 'take the last mark of this sitting back',
  does: ({ state }) => {
    const job = state.open?.job;
    const last = job?.entries.findLast((e) => e.verb !== 'undo' && job.living.has(e.id));
    // Bolts are taken back where they are, at their piece.
    const there = last === undefined || verbRow(last.verb).kind === 'piece';
    const mine = !there && state.mine.includes(last.id);
    if (!mine) return say(state, 'Nothing of this sitting is left to take back.');
    return requestMark(state, { do: 'undo', id: last.id });
  },
};

/** The mark that was taken back. */
export function undone(state: State, wish: Undo): Entry | null {
  return state.open?.job.entries.find((e) => e.id === wish.id) ?? null;
}

export function isOfGate(entry: Entry): boolean {
  return verbRow(entry.verb).kind === 'gate';
}

/** Says what was taken back. What was seen at a gate is asked again. */
export function takenBack(state: State, entry: Entry): Updated {
  const job = state.open?.job;
  const read = isOfGate(entry)
    ? state.read.filter((m) => !m.startsWith('gate ') || m.split(' ')[2] !== (entry.piece ?? ''))
    : state.read;
  return say({ ...state, read }, job ? `Taken back: ${sayEntry(entry, job)}.` : '');
}
