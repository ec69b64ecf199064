/** What one line of text can become, wherever it is typed, and where it goes then: a row each. */
import type { TaskVerb } from './keys.ts';
import { WRITABLE, type Writable } from './known-keys.ts';

interface AddRow {
  /** A place of its own among the tasks, looks or things to buy, one more text of its piece, or an entry alone. */
  goes: 'tasks' | 'checks' | 'buy' | 'piece' | 'diary';
  /** Of a task: its verb. */
  verb?: TaskVerb;
  /** As it is told once it was added. */
  told: string;
}

const ADD_ROWS = {
  buy: { goes: 'buy', told: 'to buy' },
  do: { goes: 'tasks', verb: 'do', told: 'to do' },
  wait: { goes: 'tasks', verb: 'wait', told: 'to wait for' },
  adjust: { goes: 'tasks', verb: 'adjust', told: 'to adjust' },
  test: { goes: 'tasks', verb: 'test', told: 'to test' },
  check: { goes: 'checks', told: 'to look at for the fault' },
  decide: { goes: 'tasks', verb: 'decide', told: 'to decide' },
  caution: { goes: 'piece', told: 'a caution' },
  tip: { goes: 'piece', told: 'a tip' },
  note: { goes: 'diary', told: 'a note' },
} as const satisfies Readonly<Record<TaskVerb, AddRow>> & Readonly<Record<string, AddRow>>;

type Rows = typeof ADD_ROWS;
export type Addable = keyof Rows;
export const ADDABLE = Object.keys(ADD_ROWS) as readonly Addable[];

/** The keys of a piece that one line can become one more text of. */
export type AddedToPiece = {
  [A in Addable]: Rows[A] extends { goes: 'piece' } ? A : never;
}[Addable];

export function isAddedToPiece(as: Addable): as is AddedToPiece {
  return addRow(as).goes === 'piece';
}

/** Keys of a piece that take one more text. */
export type TextKey = Writable | AddedToPiece;

export function addRow(as: Addable): AddRow {
  return ADD_ROWS[as];
}

export function isAddable(word: string): word is Addable {
  return Object.hasOwn(ADD_ROWS, word);
}

/** What `written` can name: a key of a piece, or what one line became. A note is an entry of its own. */
export type Written = Writable | Exclude<Addable, 'note'>;
export const WRITTEN = [
  ...WRITABLE,
  ...ADDABLE.filter((as) => addRow(as).goes !== 'diary'),
] as unknown as readonly [Written, ...Written[]];
