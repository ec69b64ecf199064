/** What the practice says on coming to a place for the first time: what to try there. Gone with one key. */
import { say } from '../base/moves.ts';
import type { PieceStep, State, View } from '../base/state.ts';

type Place = Exclude<View['screen'], 'piece'> | PieceStep['step'];

/** One quiet line a place; places that speak for themselves have none. */
const HINTS: Readonly<Partial<Record<Place, string>>> = {
  bench:
    'Three jobs, each at another point of a repair. Enter opens the marked one. The key [ takes these hints away.',
  note: 'So a job speaks after days away. Space goes on to its pieces.',
  job: 'Enter opens the marked piece; what is next stands above. b: what is to be had. ? lists all keys.',
  look: 'Enter is the next right thing here, as the lowest line names it. k: all that is known of it. l: a bolt is left over.',
  off: 'Space: this one is out. A key a bolt is the careful way; Tab, and you type the whole row. - says what is stuck.',
  'off-row':
    'As they came out, clockwise: s s m+clip s. An exclamation mark for one that is still in.',
  'off-count': 'Count on the machine too. This is the last look before anybody pries.',
  settle: 'The file says one kind, your hand found another: say which is true.',
  gate: 'One glance before a step that cannot be taken back. Enter ticks a line, a all of them.',
  on: 'Say what is in your hand: its letter, or its length, .35. Now give hole 3 the wrong one and press Space.',
  stop: 'Nothing was marked, and the wrench has not turned. Backspace takes another bolt.',
  tight:
    'Space when the wrench clicks. The next hole stands lit: the star is worked out for these holes.',
  trouble: 'The list of what can be wrong. Each has its next steps.',
  parts: 'Enter takes a part one step on: ordered, here, held against the old one, fitted.',
  task: 'Enter: it is done, or what came of it is asked; a test passes with p. A reading is held against its limit.',
  tests: 'What the repair must prove. Before this the job is not done.',
  known: 'Enter on a row writes or corrects it; what is printed stays beside what is true.',
};

/** A place that is come to for the first time says what to try, unless something else is said there. */
export function guided(state: State): State {
  const { guide, view, quiet } = state;
  if (guide === null || quiet !== null) return state;
  const place = view.screen === 'piece' ? view.step.step : view.screen;
  const hint = HINTS[place];
  if (hint === undefined || guide.includes(place)) return state;
  return { ...say(state, hint).state, guide: [...guide, place] };
}
