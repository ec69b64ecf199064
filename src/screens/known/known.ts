/** What is known of a piece or a task, on one page: read it, add to it, say what is not so here. */
import type { Wish } from '../../model/types.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { at, hereOf, record, say, show, stay } from '../base/moves.ts';
import type { State, Updated, View } from '../base/state.ts';
import { neighbour } from '../kit/neighbour.ts';
import type { Of } from '../now/known-rows.ts';
import { type KnownRow, knownRows } from '../now/known-rows.ts';
import { labelOf, NAMES_PIECES } from '../now/known-words.ts';
import { inQuestion } from './in-question.ts';

export type KnownView = Extract<View, { screen: 'known' }>;

/** Those that were asked about come first, then what is said, then what is not said yet. */
export function rowsHere({ view, open }: State): KnownRow[] {
  if (view.screen !== 'known' || !open) return [];
  const rows = knownRows(open.job, view.of);
  const first = view.first.flatMap((id) => rows.find((r) => r.id === id) ?? []);
  return [...first, ...rows.filter((r) => !first.includes(r))];
}

export function rowHere(state: State): KnownRow | null {
  const { view } = state;
  const rows = rowsHere(state);
  const here = view.screen === 'known' ? view.here : null;
  if (here === null) return rows[0] ?? null;
  // A row that was taken back leaves its mark on what is left of its kind.
  const alike = rows.findLast((r) => kindOf(r.id) === kindOf(here));
  return rows.find((r) => r.id === here) ?? alike ?? rows[0] ?? null;
}

/** `marks 2` and `+ marks` are both of `marks`. */
function kindOf(id: string): string {
  return id.replace(/^[+ ]+| \d+$/g, '');
}

export const knownActs = {
  known: (state) => {
    const of = ofHere(state);
    return of ? openKnown(state, of) : stay(state);
  },
  'not-so': (state) => {
    const about = inQuestion(withMark(state));
    if (!about) return stay(state);
    const { of, rows } = about;
    const [likely] = rows;
    if (!likely) return unprinted(state, of);
    if (rows.length === 1) return askTruth(state, likely);
    const first = rows.map((r) => r.id);
    return show(state, { screen: 'known', of, here: likely.id, first, under: state.view });
  },
  'known-forth': (state) => {
    const row = rowHere(state);
    if (!row) return stay(state);
    if (writes(state, row)) return askWrite(state, row);
    return row.figure ? askTruth(state, row) : stay(state);
  },
  unsay: (state) => {
    const last = lastSaid(state);
    return last === null ? stay(state) : record(state, { do: 'undo', id: last });
  },
} satisfies Acts;

/** The row that is lit counts as marked, also where nobody has moved yet. */
function withMark(state: State): State {
  const { view } = state;
  if (view.screen !== 'known') return state;
  return { ...state, view: { ...view, here: rowHere(state)?.id ?? null } };
}

function openKnown(state: State, of: Of): Updated {
  return show(state, { screen: 'known', of, here: null, first: [], under: state.view });
}

function ofHere(state: State): Of | null {
  const { view, open } = state;
  if (view.screen === 'task') return open?.job.tasks.has(view.task) ? { task: view.task } : null;
  const here = at(state);
  return here?.job.pieces.has(here.key) ? { piece: here.key } : null;
}

function askTruth(state: State, { figure, text }: KnownRow): Updated {
  return figure ? ask(withMark(state), { ask: 'truth', figure, say: null }, text) : stay(state);
}

function askWrite(state: State, row: KnownRow): Updated {
  const { view } = state;
  if (row.write === null || view.screen !== 'known' || !('piece' in view.of)) return stay(state);
  const asks = { ask: 'write', piece: view.of.piece, key: row.write, more: [], say: null } as const;
  return ask(withMark(state), asks);
}

/** Where nothing is printed that could be wrong, it can still be said. */
function unprinted(state: State, of: Of): Updated {
  const { view } = state;
  const tight = view.screen === 'piece' && view.step.step === 'tight';
  if (!('piece' in of) || !tight) return openKnown(state, of);
  return ask(state, { ask: 'write', piece: of.piece, key: 'torque', more: [], say: null });
}

/** On a page that was opened to say what is not so, Enter says that of what stands there. */
function writes({ view }: State, row: KnownRow): boolean {
  if (row.write === null) return false;
  return row.figure === null || (view.screen === 'known' && !view.first.includes(row.id));
}

/** Id of the last mark, where it was made in this sitting and said something of what is known of this. */
function lastSaid(state: State): string | null {
  const { open, mine, view } = state;
  const last = open?.job.entries.findLast((e) => e.verb !== 'undo' && open.job.living.has(e.id));
  const of = view.screen === 'known' ? view.of : ofHere(state);
  if (!last || !of || !mine.includes(last.id)) return null;
  const same = 'piece' in of ? last.piece === of.piece : last.task === of.task;
  return same && (last.verb === 'corrected' || last.verb === 'written') ? last.id : null;
}

export function moveKnown(state: State, by: number): Updated {
  const { view } = state;
  if (view.screen !== 'known') return stay(state);
  const names = rowsHere(state).map((r) => r.id);
  return show(state, { ...view, here: neighbour(names, rowHere(state)?.id ?? null, by) });
}

// ---------------------------------------------------------------- after a mark

/** Back where it was asked, now showing what is true and what is printed. */
export function afterKnown(state: State, wish: Wish, changed: boolean): Updated {
  const { view } = state;
  if (view.screen !== 'field') return say(state, 'Noted.');
  const { asks, under } = view;
  if (asks.ask === 'write' && asks.more.length > 0) {
    const [next, ...more] = asks.more;
    const left: State = { ...state, view: { ...view, asks: { ...asks, more } } };
    if (next) return record(left, { do: 'write', piece: asks.piece, ...next });
  }
  const back = under.screen === 'known' && under.first.length > 0 ? under.under : under;
  const quiet = changed ? saidOf(state, wish) : 'So it stands already.';
  return say(marked({ ...state, view: back }, wish), quiet);
}

function saidOf({ open }: State, wish: Wish): string {
  if (wish.do === 'correct') return `Noted: ${wish.truth}`;
  if (wish.do !== 'write') return 'Noted.';
  const named = NAMES_PIECES.includes(wish.key) ? open?.job.pieces.get(wish.text)?.spec.name : null;
  return `${labelOf(wish.key)}: ${named ?? wish.text}`;
}

/** The row that was written is marked, on a page that shows it. */
function marked(state: State, wish: Wish): State {
  const { view } = state;
  if (view.screen !== 'known' || wish.do !== 'write') return state;
  const row = rowsHere(state).findLast((r) => r.said && r.write === wish.key);
  return row ? { ...state, view: { ...view, here: row.id } } : state;
}

// ---------------------------------------------------------------- keys

export function hasKnown(state: State): boolean {
  return ofHere(state) !== null;
}

/** Columns from which the foot has room for more than what a hand needs next. */
const WIDE = 100;

/** While bolts go in, or where something is lit or inside, what is to be done about that is at the foot first. */
export function knownLabel(state: State): string {
  const here = at(state);
  const busy =
    here !== null &&
    (hereOf(here.view.step) !== null ||
      here.piece.holes.some((h) => h.state === 'in' || h.state === 'tight') ||
      here.job.inside.some((i) => i.piece === here.key));
  // Off, or aside, is what a piece without bolts is opened for.
  const bare = here !== null && here.piece.holes.length === 0 && here.piece.where === 'home';
  return (busy || bare) && state.columns < WIDE ? '' : 'what is known';
}

export function isInQuestion(state: State): boolean {
  const about = inQuestion(withMark(state));
  if (about === null) return false;
  const { view } = state;
  return about.rows.length > 0 || (view.screen === 'piece' && view.step.step === 'tight');
}

export function notSoLabel(state: State): string {
  const { view } = state;
  if (inQuestion(withMark(state))?.rows.length === 0) return 'its torque';
  const step = view.screen === 'piece' ? view.step.step : null;
  // The feet of these two are full.
  if (view.screen === 'gate' || step === 'tight') return 'not so';
  // From a piece all that is known of it is one key away, and there it stands again.
  return step === 'look' ? '' : 'not so here';
}

export function canSay(state: State): boolean {
  const row = rowHere(state);
  return row !== null && (writes(state, row) || row.figure !== null);
}

export function sayLabel(state: State): string {
  const row = rowHere(state);
  if (!row || !writes(state, row)) return 'what is true here';
  return row.said ? 'one more' : 'write it';
}

export function canUnsay(state: State): boolean {
  return lastSaid(state) !== null;
}
