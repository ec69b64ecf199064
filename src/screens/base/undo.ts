/** Taking the last mark back, where one is not at the bolts of a piece. */
import { togetherWith } from '../../job/diary/living.ts';
import { sayEntry, sayEntryOf } from '../../job/fold/say-entry.ts';
import type { Entry, Wish } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { sentence } from '../../model/words.ts';
import { requestMark, say } from './moves.ts';
import type { State, Updated, View } from './state.ts';

type Undo = Extract<Wish, { do: 'undo' }>;

/** The last mark of the job that counts, whoever made it. */
function lastMark(state: State): Entry | null {
  const job = state.open?.job;
  if (!job) return null;
  const counts = job.entries.filter((e) => e.verb !== 'undo' && job.living.has(e.id));
  return lastOf(counts);
}

/** The last of these marks; what came along with one goes with it: one key made both, and one takes both back. */
export function lastOf(counts: readonly Entry[]): Entry | null {
  const last = counts.at(-1);
  return last ? togetherWith(last, counts) : null;
}

/** The last mark is of this sitting: one key takes it back. */
export function canUndo(state: State): boolean {
  return state.mine.includes(lastMark(state)?.id ?? '');
}

/** At the piece itself its screens would be empty without. */
export const LAST_IS_COUNT =
  'The last mark is how many bolts it has. To put that right, type its row. Wrong piece or name: Esc to the job, then Backspace.';

/** Takes the last mark back, wherever it was made; says where it stands if it is of an earlier sitting. */
export function undoLast(state: State): Updated {
  const last = lastMark(state);
  if (last !== null && isCountOf(last, pieceUnder(state.view))) {
    return say(state, LAST_IS_COUNT);
  }
  if (last !== null && state.mine.includes(last.id)) {
    return requestMark(state, { do: 'undo', id: last.id });
  }
  return say(state, whereLast(state));
}

/** The piece whose screen is open, or lies under the one that is. */
function pieceUnder(view: View): string | null {
  if (view.screen === 'piece') return view.piece;
  return 'under' in view ? pieceUnder(view.under) : null;
}

/** The last mark that counts says how many bolts this piece has. */
export function lastIsCount(state: State, piece: string): boolean {
  const last = lastMark(state);
  return last !== null && isCountOf(last, piece);
}

/** The mark that said how many bolts the open piece has: taken back from its own screens, these would be empty. */
function isCountOf({ verb, value, piece }: Entry, open: string | null): boolean {
  return open !== null && piece === open && verb === 'written' && value === 'bolts';
}

/** Where the last mark stands, for who looks for it on another screen. */
export function whereLast(state: State): string {
  const last = lastMark(state);
  if (last === null || !state.open) return 'Nothing is left to take back.';
  const what = sayEntryOf(last, state.open.job);
  if (state.mine.includes(last.id)) return sentence(`The last mark is ${what}`);
  const where =
    last.piece === undefined
      ? `putback undo takes it back`
      : 'Backspace at that piece takes it back';
  return sentence(`The last mark is of an earlier sitting: ${what}. ${where}`);
}

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
  // The piece is named where it is not the one in sight.
  const here = 'piece' in state.view && state.view.piece === entry.piece;
  const what = job ? (here ? sayEntry : sayEntryOf)(entry, job) : '';
  return say({ ...state, read }, job ? sentence(`Taken back: ${what}`) : '');
}
