/** The gates: what is to be seen before a step that cannot be taken back. One glance, one key. */

import type { Moment, Wish } from '../../model/types.ts';
import { buysNow } from '../../plan/buy/list.ts';
import { buyWish } from '../../plan/buy/wish.ts';
import { behindItem } from '../../plan/gates/figures.ts';
import { gateMark, gatesOn, sortedItems, stopsNow } from '../../plan/gates/gate-now.ts';
import { onThisWrench } from '../../plan/gates/gate-wrench.ts';
import { itemOf } from '../../plan/gates/item-rows.ts';
import { type ItemInWords, notAnswered, questions } from '../../plan/gates/items.ts';
import { sealantSaid } from '../../plan/seal/sealant.ts';
import { ask } from '../ask/field.ts';
import { noteKey } from '../ask/note.ts';
import { goOn, readFirst } from '../base/enter.ts';
import { ENTER, type Key } from '../base/key.ts';
import { type OnJob, onJob, pieceNamed, requestMark, say, show, stay } from '../base/moves.ts';
import { NOTED } from '../base/noted.ts';
import type { Page } from '../base/page.ts';
import { type MadeMark, screenOver, type WishTo } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { isOfGate, takenBack, undone } from '../base/undo.ts';
import { hangingBoth } from '../kit/both.ts';
import { bold, type Line, line, pad, span } from '../kit/text.ts';
import type { InQuestion } from '../known/in-question.ts';
import { notSo } from '../known/not-so.ts';
import { solve, solveSaid } from '../tasks/way-out.ts';
import { stopFrame } from './gate-stop.ts';
import { BEFORE, pagesOf } from './pages.ts';

type GateView = Extract<View, { screen: 'gate' }>;
type Item = ReturnType<typeof sortedItems>[number];

interface OnGate extends OnJob<GateView> {
  piece: ReturnType<typeof pieceNamed> | null;
  items: readonly Item[];
  /** What stops stands above each page. */
  frame: readonly Line[];
  pages: readonly (readonly Item[])[];
  /** Which page is in sight. */
  page: number;
  /** The marked one. */
  item: Item | null;
}

/** Head, foot, and two lines for what is said quietly. */
const AROUND = 6;

function onGate(state: State, view: GateView): OnGate | null {
  const on = onJob(state, view);
  if (!on) return null;
  const { job } = on;
  const piece = view.piece === null ? null : pieceNamed(job, view.piece);
  const items = sortedItems(job, view.moment, piece, state.now).map((i) => ({
    ...i,
    item: onThisWrench(i.item, job, piece, state.wrenches),
  }));
  const first = items.find((i) => !i.item.done) ?? items[0];
  const item = items.find((i) => i.item.key === view.here) ?? first ?? null;
  const room = Math.max(3, state.rows - AROUND);
  const frame = stopFrame(items, item?.item.key ?? null, state.columns, room);
  const rest = items.filter((i) => !isStop(i));
  const pages = pagesOf(rest, state.columns, Math.max(3, room - frame.length));
  const page = Math.max(
    0,
    pages.findIndex((p) => item !== null && p.includes(item)),
  );
  return { ...on, piece, items, frame, pages, page, item };
}

const isStop = ({ item }: Item): boolean => stopsNow(item);

/** The list with this one marked, from its first line on. */
function atItem({ top: _, ...view }: GateView, here: string | null): GateView {
  return { ...view, here };
}

function gateWish(view: GateView, how: 'seen' | 'struck', item: string): Wish {
  const piece = view.piece === null ? {} : { piece: view.piece };
  return { do: 'gate', moment: view.moment, ...piece, how, item };
}

// ---------------------------------------------------------------- what its keys do

function seeAll(here: OnGate): Updated {
  const { state, view, items, pages, page } = here;
  const next = pages[page + 1]?.[0];
  // What was not in sight was not seen.
  if (next) return show(state, atItem(view, next.item.key));
  const open = items.filter((i) => !i.item.done);
  const left = open.filter((i) => !isStop(i));
  if (left.length > 0 && !view.ticked) return requestMark(state, gateWish(view, 'seen', 'all'));
  // It rang on arrival, and the frame says what stops.
  if (open.some(isStop)) {
    return say({ ...state, view: atItem(view, null) }, 'What stops comes first.');
  }
  // The sealant's open time counts from now, not from when the list was ticked: noted again.
  const hurry = items.some((i) => i.item.key === 'hurry');
  return hurry ? requestMark(state, gateWish(view, 'seen', 'all')) : pass(here);
}

function seeOne(here: OnGate): Updated {
  const { state, view, job, items, item: marked } = here;
  // With nothing left to see the page only tells.
  if (isAllDone(here)) return seeAll(here);
  if (!marked) return stay(state);
  const { item } = marked;
  const next = items[items.indexOf(marked) + 1] ?? marked;
  if (item.done) return show(state, atItem(view, next.item.key));
  // Only its own answer says that a part is here; what the job knows not to be so no tick makes so.
  if (isAwaited(marked) || item.known) {
    const left = isAwaited(marked) ? 'Not here yet: t when it is.' : `Left as it is: ${item.say}`;
    return say({ ...state, view: atItem(view, next.item.key) }, left);
  }
  const wish = comparedWish(job, state.now, item) ?? fittedWish(job, state.now, item);
  return requestMark(state, wish ?? gateWish(view, 'seen', item.key));
}

const isAllDone = ({ items }: OnGate): boolean => items.every((i) => i.item.done);

/** Which thing to buy it is about; null for any other item. */
function partOf({ key }: ItemInWords): string | null {
  const item = itemOf(key);
  return item?.name === 'part' ? item.about : null;
}

/** A part that is here and was seen to be the same: the job itself keeps that. */
function comparedWish(job: OnGate['job'], now: string, item: ItemInWords): Wish | null {
  const known = buysNow(job, now).find((b) => b.buy === partOf(item));
  // A part that the program put on the list by itself may stand on the shelf already: a tick is enough.
  return known?.why === null && known.state === 'here' ? buyWish(known, 'compared') : null;
}

/** That it is in: the job itself keeps that. */
function fittedWish(job: OnGate['job'], now: string, { key }: ItemInWords): Wish | null {
  const item = itemOf(key);
  const known = buysNow(job, now).find((b) => item?.name === 'fitted' && b.buy === item.about);
  return known ? buyWish(known, 'fitted') : null;
}

/** A part that the job knows not to be here. */
function isAwaited({ item }: Item): boolean {
  return !item.done && item.known && partOf(item) !== null;
}

function nowHere({ state, job, item }: OnGate): Updated {
  const buy = item && buysNow(job, state.now).find((b) => b.buy === partOf(item.item));
  return buy ? requestMark(state, buyWish(buy, 'here')) : stay(state);
}

function strike({ state, view, item }: OnGate): Updated {
  if (!item) return stay(state);
  if (isStop(item)) return say(state, 'That one stops: it cannot be struck.');
  return requestMark(state, gateWish(view, 'struck', item.item.key));
}

function askPast({ state, view, items }: OnGate): Updated {
  const says = items.filter(isStop).map((i) => i.item.stop ?? i.item.say);
  const refused = { code: 'gate', say: says.join(' '), data: {}, overrulable: true };
  return ask(state, { ask: 'why', wish: gateWish(view, 'seen', 'all'), refused });
}

/** Passes the gate: on with the piece, or back to where the gate was opened. */
function pass(
  { state, view, job, piece, items }: OnGate,
  unanswered: string | null = null,
): Updated {
  const left = items.filter((i) => !i.item.done).map((i) => i.item.say);
  const sealant = view.moment === 'sealing' && piece ? sealantSaid(job, piece, state.now) : null;
  const quiet = [
    left.length > 0 ? `Left as it is: ${left.join(' ')}` : null,
    unanswered,
    sealant && `Now, ${sealant}.`,
  ]
    .filter((t) => t !== null)
    .join(' ');
  const passed: State = {
    ...state,
    read: [...state.read, gateMark(job, view.moment, piece)],
    quiet: quiet === '' ? null : quiet,
    view: view.under,
  };
  if (view.goes === 'back') return stay(passed);
  return view.goes === 'on' ? goOn(passed) : readFirst(passed, 'removal', view.goes.off);
}

// ---------------------------------------------------------------- after a mark

/** Goes on, or stays where something stops. */
function afterSeen(state: State, { wish, before }: MadeMark<WishTo<'gate'>>): Updated {
  const { view } = state;
  if (view.screen !== 'gate') return stay(state);
  if (wish.item !== 'all' || wish.how !== 'seen') return stay(toList(state));
  const next = { ...atItem(view, null), ticked: true };
  const ticked: State = { ...state, view: next };
  const here = onGate(ticked, next);
  if (!here || (wish.because === undefined && here.items.some(isStop))) return stay(ticked);
  const was = before.view.screen === 'gate' ? onGate(before, before.view) : null;
  return pass(here, notAnswered(questions((was?.items ?? []).map((i) => i.item))));
}

/** What stopped first may be here now: then the gates of the piece come in their usual order. */
function inOrder(noted: Updated): Updated {
  const { state } = noted;
  const { view } = state;
  if (view.screen !== 'gate' || view.goes !== 'on') return noted;
  const here = onGate(state, view);
  const [first] = here?.piece ? gatesOn(here.job, here.piece, state.now, state.read) : [];
  if (first === undefined || first === view.moment) return noted;
  return { ...noted, state: { ...state, view: { ...atItem(view, null), moment: first } } };
}

/** Marks what comes next. */
function toList(state: State): State {
  const { view } = state;
  return view.screen === 'gate' ? { ...state, view: atItem(view, null) } : state;
}

/** What was seen here is asked again, and nothing counts as ticked. */
function afterUndo(state: State, { wish }: MadeMark<WishTo<'undo'>>): Updated {
  const { view } = state;
  const entry = undone(state, wish);
  if (!entry || view.screen !== 'gate') return stay(state);
  if (!isOfGate(entry)) return takenBack(state, entry);
  return takenBack({ ...state, view: { ...atItem(view, null), ticked: false } }, entry);
}

// ---------------------------------------------------------------- the screen

function seenLabel({ view, pages, page, items }: OnGate): string {
  if (page < pages.length - 1) return 'seen, more below';
  // Enter says so.
  if (items.every((i) => i.item.done)) return '';
  if (!items.some(isStop)) return 'all seen, go on';
  const rest = items.filter((i) => !i.item.done && !isStop(i));
  return rest.length === 0 || view.ticked ? '' : 'the rest is seen';
}

/** The marked one stops: what one does then is the way out of it; that a part is here has a key of its own. */
function isAtStop({ item }: OnGate): boolean {
  return item !== null && isStop(item) && !isAwaited(item);
}

/** On the piece of the gate; what is typed blind here is written down and passes nothing. */
const noteHere: Key<OnGate> = {
  ...noteKey,
  label: '',
  does: ({ state, view }) => ask(state, { ask: 'note', piece: view.piece, hole: null }),
};

function inItem({ job, view, item }: OnGate): InQuestion | null {
  return behindItem(job, view.moment, view.piece, item?.item.key ?? '');
}

export const gateScreen = screenOver({
  here: onGate,
  keys: [
    {
      id: 'solve',
      presses: ENTER,
      anew: ENTER,
      label: ({ item }) => (item ? solveSaid(item.item) : ''),
      help: 'the way out of what stops: it is out, or to where it is mended',
      holds: isAtStop,
      does: ({ state, view, item }) =>
        item ? solve(state, item.item, gateWish(view, 'seen', item.item.key)) : stay(state),
    },
    {
      id: 'past',
      presses: ['w'],
      alone: true,
      label: 'all the same, and why',
      help: 'on in spite of STOP, with a reason',
      holds: ({ items }) => items.some(isStop),
      does: askPast,
    },
    {
      id: 'one-seen',
      presses: ENTER,
      anew: ENTER,
      label: (here) =>
        isAllDone(here) ? 'go on' : here.item && isAwaited(here.item) ? 'the next' : 'this one',
      help: 'the marked one is seen to',
      holds: (here) => !isAtStop(here),
      does: seeOne,
    },
    {
      id: 'part-to-hand',
      presses: ['t'],
      label: ({ item }) => (item && isStop(item) ? 'new ones are here' : 'it is here'),
      help: 'the part that was waited for is here',
      holds: ({ item }) => item !== null && isAwaited(item),
      does: nowHere,
    },
    {
      id: 'all-seen',
      presses: ['a'],
      label: seenLabel,
      help: 'all of this is seen to, as far as it does not stop',
      does: seeAll,
    },
    {
      id: 'strike',
      presses: ['x', 'delete'],
      label: 'strike',
      help: 'the marked one does not count here',
      does: strike,
    },
    notSo<OnGate>(inItem, 'not so'),
    noteHere,
  ],
  draw: drawGate,
  rows: ({ view, items, item }) => ({
    names: items.map((i) => i.item.key),
    marked: item?.item.key ?? null,
    mark: (here) => atItem(view, here),
  }),
  mustSee: ({ view }) => `${view.moment} ${view.piece ?? ''}`,
  after: {
    gate: afterSeen,
    undo: afterUndo,
    buy: (state, made) => inOrder(NOTED.buy(toList(state), made)),
    cleared: (state) => NOTED.cleared(toList(state)),
  },
});

// ---------------------------------------------------------------- picture

const WHEN: Readonly<Record<Moment, string>> = {
  loosening: 'before the first bolt',
  prying: 'before you pry',
  sealing: 'before the joint is made',
  closing: 'before it closes: what went in must come out',
  start: 'before the first start',
};
const LOUD = { colour: 'red', bold: true } as const;

function drawGate(here: OnGate): Page {
  const { state, job, view, piece, items, frame, pages, page } = here;
  const seen = items.filter((i) => i.item.done).length;
  const where = pages.length > 1 ? `page ${page + 1} of ${pages.length}, ` : '';
  const rows = (pages[page] ?? []).flatMap((one): Line[] => {
    const { item, caution, printed } = one;
    const marked = one === here.item;
    const sign = item.done ? 'seen' : '';
    const style = caution && !item.done ? LOUD : marked ? { bold: true } : {};
    const first = pad(line(bold(marked ? '> ' : '  '), span(sign, style)), BEFORE);
    return hangingBoth(first, { text: item.say, printed }, state.columns, style);
  });
  return {
    kind: 'plain',
    left: line(bold(piece?.spec.name ?? job.upper.job)),
    right: line(WHEN[view.moment]),
    under: line(`${where}${seen} of ${items.length} seen`),
    middle: () => (items.length === 0 ? [line('Nothing is asked here.')] : [...frame, ...rows]),
  };
}
