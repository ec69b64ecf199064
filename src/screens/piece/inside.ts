/** What goes into the machine and has to come out again: noted by one key, said until it is out. */
import type { Job, Wish } from '../../model/types.ts';
import { sayThing } from '../../plan/inside.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { markedPiece } from '../base/marked.ts';
import { say, stay } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import { capital, list } from '../kit/words.ts';

/** The opening that is meant: the piece that is open or marked, where that is away from the machine. */
function opening(state: State): string | null {
  const key = markedPiece(state);
  const piece = key === null ? undefined : state.open?.job.pieces.get(key);
  if (state.view.screen === 'piece') return piece ? key : null;
  return piece && piece.away !== 'no' ? key : null;
}

export const insideActs = {
  inside: (state) => ask(state, { ask: 'inside', piece: opening(state) }),
  cleared: (state) => {
    const things = state.open?.job.inside ?? [];
    const here = markedPiece(state);
    const place = (things.find((i) => i.piece === here) ?? things[0])?.piece ?? null;
    const there = things.filter((i) => i.piece === place);
    if (there.length === 0) return stay(state);
    return ask(state, { ask: 'cleared', piece: place }, there.map(sayThing).join(', '));
  },
} satisfies Acts;

/** `2 rags (Case cover)`; null when nothing is inside. */
export function insideSaid(job: Job): string | null {
  if (job.inside.length === 0) return null;
  const each = job.inside.map((i) => {
    const name = i.piece === null ? '' : ` (${job.pieces.get(i.piece)?.spec.name ?? i.piece})`;
    return `${sayThing(i)}${name}`;
  });
  return `Inside: ${list(each)}.`;
}

export function afterInside(
  state: State,
  wish: Extract<Wish, { do: 'inside' | 'cleared' }>,
): Updated {
  if (wish.do === 'inside') return say(state, `${capital(wish.what)} inside.`);
  const left = state.open ? insideSaid(state.open.job) : null;
  return say(state, left ?? 'Nothing is inside any more.');
}
