/** The gates: what is to be seen before a step that cannot be taken back. One glance, one key. */
import type { Moment, Wish } from '../../model/types.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { goOn, openGate } from '../base/enter.ts';
import { at, pieceNamed, record, say, show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated, View } from '../base/state.ts';
import { hangingBoth } from '../kit/both.ts';
import { bold, type Line, line, pad, span } from '../kit/text.ts';
import { buyWish } from '../now/buy-wish.ts';
import {
  BEFORE,
  type GateItem,
  gateMark,
  gatesOn,
  pagesOf,
  sortedItems,
  stopsNow,
} from '../now/gate-now.ts';
import { onThisWrench } from '../now/gate-wrench.ts';
import { buysNow } from '../now/plan-now.ts';
import { sealantSaid } from '../now/sealant.ts';
import { solve, solveSaid, stopFrame } from './gate-stop.ts';

export type GateView = Extract<View, { screen: 'gate' }>;

/** Head, foot, and two lines for what is said quietly. */
const AROUND = 6;

function gateHere(state: State) {
  const { view, open } = state;
  if (view.screen !== 'gate' || !open) return null;
  const piece = view.piece === null ? null : pieceNamed(open.job, view.piece);
  const items = sortedItems(open.job, view.moment, piece, state.now).map((i) => ({
    ...i,
    item: onThisWrench(i.item, open.job, piece, state.wrenches),
  }));
  const first = items.find((i) => !i.item.done) ?? items[0];
  const here = items.find((i) => i.item.key === view.here) ?? first;
  const room = Math.max(3, state.rows - AROUND);
  // What stops stands above each page.
  const frame = stopFrame(items, here?.item.key ?? null, state.columns, room);
  const rest = items.filter((i) => !isStop(i));
  const pages = pagesOf(rest, state.columns, Math.max(3, room - frame.length));
  const page = Math.max(
    0,
    pages.findIndex((p) => here !== undefined && p.includes(here)),
  );
  return { job: open.job, view, piece, items, frame, pages, page, here };
}

export const gateActs = {
  'all-seen': (state) => {
    const now = gateHere(state);
    if (!now) return stay(state);
    const { view, items, pages, page } = now;
    const next = pages[page + 1]?.[0];
    // What was not in sight was not seen.
    if (next) return show(state, { ...view, here: next.item.key });
    const open = items.filter((i) => !i.item.done);
    const left = open.filter((i) => !isStop(i));
    if (left.length === 0 || view.ticked) {
      if (open.some(isStop)) return held(state);
      // The tube is opened now, and not when the list was ticked.
      const hurry = items.some((i) => i.item.key === 'hurry');
      return hurry ? record(state, gateWish(view, 'seen', 'all')) : pass(state);
    }
    return record(state, gateWish(view, 'seen', 'all'));
  },
  'one-seen': (state) => {
    const now = gateHere(state);
    if (!now?.here) return stay(state);
    const { item } = now.here;
    if (item.done) return show(state, { ...now.view, here: after(now.items, item) });
    return record(state, knownWish(state, item) ?? gateWish(now.view, 'seen', item.key));
  },
  solve: (state) => {
    const now = gateHere(state);
    if (!now?.here) return stay(state);
    return solve(state, now.here.item, gateWish(now.view, 'seen', now.here.item.key));
  },
  strike: (state) => {
    const now = gateHere(state);
    if (!now?.here) return stay(state);
    if (isStop(now.here)) return say(state, 'That one stops: it cannot be struck.');
    return record(state, gateWish(now.view, 'struck', now.here.item.key));
  },
  'add-item': (state) => {
    const { view } = state;
    if (view.screen !== 'gate') return stay(state);
    return ask(state, { ask: 'item', moment: view.moment, piece: view.piece });
  },
  past: (state) => {
    const now = gateHere(state);
    if (!now) return stay(state);
    const says = now.items.filter(isStop).map((i) => i.item.stop ?? i.item.say);
    const refused = { code: 'gate', say: says.join(' '), data: {}, overrulable: true };
    return ask(state, { ask: 'why', wish: gateWish(now.view, 'seen', 'all'), refused });
  },
  untick: (state) => {
    const job = state.open?.job;
    const last = job?.entries.findLast((e) => e.verb !== 'undo' && job.living.has(e.id));
    // Bolts are taken back where they are, at their piece.
    const mine = last !== undefined && state.mine.includes(last.id) && !BOLTS.includes(last.verb);
    if (!mine) return say(state, 'Nothing of this sitting is left to take back.');
    return record(state, { do: 'undo', id: last.id });
  },
  gates: (state) => {
    const here = at(state);
    if (!here) return stay(state);
    const prying = here.view.step.step === 'off-count';
    if (prying) return openGate(state, 'prying', 'back');
    const [first] = gatesOn(here.job, here.piece, state.now, []);
    return first === undefined ? openGate(state, 'sealing', 'back') : openGate(state, first, 'on');
  },
  'start-gate': (state) => openGate(state, 'start', 'back'),
} satisfies Acts;

const BOLTS: readonly string[] = ['out', 'in', 'tight', 'state', 'settle', 'removed', 'fitted'];

const isStop = ({ item }: { item: GateItem }): boolean => stopsNow(item);

function gateWish(view: GateView, how: 'seen' | 'struck', item: string): Wish {
  const piece = view.piece === null ? {} : { piece: view.piece };
  return { do: 'gate', moment: view.moment, ...piece, how, item };
}

/** What the job itself knows to be undone is done by saying so: a part is here. */
function knownWish(state: State, item: GateItem): Wish | null {
  const job = state.open?.job;
  if (!job) return null;
  const buy = /^part-(.+)$/.exec(item.key)?.[1];
  const known = buysNow(job, state.now).find((b) => b.buy === buy);
  // What only comes on the list by itself may well stand on the shelf: seeing it is enough.
  if (!known || known.why !== null || known.state === 'compared' || known.state === 'fitted')
    return null;
  return buyWish(known, known.state === 'here' ? 'compared' : 'here');
}

function after(items: readonly { item: GateItem }[], item: GateItem): string | null {
  const index = items.findIndex((i) => i.item.key === item.key);
  return items[index + 1]?.item.key ?? item.key;
}

/** It rang when one came here; one more key for all says no more than the frame does. */
function held(state: State): Updated {
  return say(show(state, backToStop(state)).state, 'What stops comes first.');
}

function backToStop({ view }: State): View {
  return view.screen === 'gate' ? { ...view, here: null } : view;
}

/** Through the gate: to the next one, into the step, or back to where it was opened. */
function pass(state: State): Updated {
  const now = gateHere(state);
  if (!now) return stay(state);
  const { view, piece, items } = now;
  const left = items.filter((i) => !i.item.done).map((i) => i.item.say);
  const sealant =
    view.moment === 'sealing' && piece ? sealantSaid(now.job, piece, state.now) : null;
  const quiet = [
    left.length > 0 ? `Left as it is: ${left.join(' ')}` : null,
    sealant && `Now, ${sealant}.`,
  ]
    .filter((t) => t !== null)
    .join(' ');
  const through: State = {
    ...state,
    read: [...state.read, gateMark(view.moment, piece)],
    quiet: quiet === '' ? null : quiet,
    view: view.under,
  };
  return view.goes === 'on' ? goOn(through) : stay(through);
}

/** After a mark at a gate: on, or what stops it. */
export function afterGate(state: State, wish: Wish): Updated {
  const { view } = state;
  if (view.screen !== 'gate') return stay(state);
  if (wish.do !== 'gate' || wish.item !== 'all' || wish.how !== 'seen') {
    return show(state, { ...view, here: null });
  }
  const ticked: State = { ...state, view: { ...view, ticked: true, here: null } };
  if (wish.because !== undefined) return pass(ticked);
  return gateHere(ticked)?.items.some(isStop) ? stay(ticked) : pass(ticked);
}

/** The item `by` further on. */
export function moveGate(state: State, by: number): Updated {
  const now = gateHere(state);
  if (!now?.here) return stay(state);
  const index = now.items.indexOf(now.here) + by;
  const item = now.items[Math.max(0, Math.min(now.items.length - 1, index))];
  return show(state, { ...now.view, here: item?.item.key ?? null });
}

// ---------------------------------------------------------------- keys

export function gateStops(state: State): boolean {
  return gateHere(state)?.items.some(isStop) === true;
}

/** The marked one stops: what one does then is the way out of it. */
export function isAtStop(state: State): boolean {
  const here = gateHere(state)?.here;
  return here !== undefined && isStop(here);
}

export function solveLabel(state: State): string {
  const here = gateHere(state)?.here;
  return here ? solveSaid(here.item) : '';
}

export function seenLabel(state: State): string {
  const now = gateHere(state);
  if (!now) return '';
  if (now.page < now.pages.length - 1) return 'seen, more below';
  if (now.items.every((i) => i.item.done)) return 'go on';
  if (!now.items.some(isStop)) return 'all seen, go on';
  const rest = now.items.filter((i) => !i.item.done && !isStop(i));
  return rest.length === 0 || now.view.ticked ? '' : 'the rest is seen';
}

export function markedItem(state: State): string | null {
  return gateHere(state)?.here?.item.key ?? null;
}

export function oneLabel(state: State): string {
  const key = gateHere(state)?.here?.item.key ?? '';
  return key.startsWith('part-') ? 'it is here' : 'this one';
}

// ---------------------------------------------------------------- picture

const WHEN: Readonly<Record<Moment, string>> = {
  prying: 'before you pry',
  sealing: 'before the joint is made',
  closing: 'before it closes: what went in must come out',
  start: 'before the first start',
};
const LOUD = { colour: 'red', bold: true } as const;

export function drawGate(state: State): Page {
  const now = gateHere(state);
  if (!now) return { left: [], middle: () => [] };
  const { job, view, piece, items, frame, pages, page, here } = now;
  const seen = items.filter((i) => i.item.done).length;
  const where = pages.length > 1 ? `page ${page + 1} of ${pages.length}, ` : '';
  const rows = (pages[page] ?? []).flatMap(({ item, caution, printed }): Line[] => {
    const marked = item.key === here?.item.key;
    const sign = item.done ? 'seen' : '';
    const style = caution && !item.done ? LOUD : marked ? { bold: true } : {};
    const first = pad(line(bold(marked ? '> ' : '  '), span(sign, style)), BEFORE);
    return hangingBoth(first, { text: item.say, printed }, state.columns, style);
  });
  return {
    left: line(bold(piece?.spec.name ?? job.upper.job)),
    right: line(WHEN[view.moment]),
    under: line(`${where}${seen} of ${items.length} seen`),
    middle: () => (items.length === 0 ? [line('Nothing is asked here.')] : [...frame, ...rows]),
  };
}
