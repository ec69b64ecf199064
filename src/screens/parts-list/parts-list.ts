/** The one place for what is missing: what must be had, how far it has come, and what it holds up. */
import { type BuyState, buyRow } from '../../model/states/buys.ts';
import type { Buy } from '../../plan/buy/list.ts';
import { buysNow } from '../../plan/buy/list.ts';
import { sayBefore, sayBought } from '../../plan/buy/say.ts';
import { isHere } from '../../plan/buy/state.ts';
import { buyWish } from '../../plan/buy/wish.ts';
import { sayStepName } from '../../plan/order/say.ts';
import { ask } from '../ask/field.ts';
import { inOrder } from '../base/in-order.ts';
import { ENTER, type Key } from '../base/key.ts';
import { type OnJob, onJob, requestMark, stay } from '../base/moves.ts';
import { NOTED } from '../base/noted.ts';
import { listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { bold, type Line, line, pad, span, width, wrap } from '../kit/text.ts';
import { capital, list } from '../kit/words.ts';

interface OnParts extends OnJob<Extract<View, { screen: 'parts' }>> {
  buys: readonly Buy[];
  /** The marked one; null where nothing is on the list. */
  buy: Buy | null;
}

function partsHere(state: State, view: OnParts['view']): OnParts | null {
  const here = onJob(state, view);
  if (!here) return null;
  const buys = inOrder(view, buysNow(here.job, state.now), (b) => b.buy);
  return { ...here, buys, buy: buys.find((b) => b.buy === view.here) ?? firstOf(buys) };
}

/** What is missing comes first. */
function firstOf(buys: readonly Buy[]): Buy | null {
  return buys.find((b) => !isHere(b.state)) ?? buys[0] ?? null;
}

/** How it goes on, where all goes well. */
const FURTHER: Readonly<Record<BuyState, BuyState | null>> = {
  wanted: 'ordered',
  wrong: 'ordered',
  ordered: 'here',
  short: 'here',
  superseded: 'ordered',
  here: 'compared',
  compared: 'fitted',
  fitted: null,
};
const LABELS: Readonly<Record<BuyState, string>> = {
  wanted: '',
  ordered: 'it is ordered',
  here: 'it is here',
  compared: 'held against the old one, the same',
  fitted: 'it is fitted',
  wrong: '',
  short: '',
  superseded: '',
};

function furtherLabel({ buy }: OnParts): string {
  const next = buy && FURTHER[buy.state];
  return next ? LABELS[next] : '';
}

function goFurther({ state, buy }: OnParts): Updated {
  const next = buy && FURTHER[buy.state];
  if (!next) return stay(state);
  if (next === 'ordered') return ask(state, { ask: 'promised', buy: buy.buy, say: null });
  return requestMark(state, buyWish(buy, next));
}

/** How far the marked part has come. */
function cameKey(
  words: Pick<Key<OnParts>, 'id' | 'presses' | 'label' | 'help'>,
  how: BuyState,
): Key<OnParts> {
  return {
    ...words,
    holds: ({ buy }) => buy !== null,
    does: ({ state, buy }) => (buy ? requestMark(state, buyWish(buy, how)) : stay(state)),
  };
}

export const partsScreen = screenOver({
  here: partsHere,
  keys: [
    {
      id: 'further',
      presses: ENTER,
      // Here, the right one, fitted: three answers, and each takes a press of its own.
      anew: ENTER,
      label: furtherLabel,
      help: 'how far the marked part has come, one on',
      holds: (here) => furtherLabel(here) !== '',
      does: goFurther,
    },
    {
      ...cameKey(
        { id: 'part-here', presses: ['t'], label: 'to hand', help: 'it is here already' },
        'here',
      ),
      // Not ordered yet: it may well lie on the shelf.
      holds: ({ buy }) => buy?.state === 'wanted',
    },
    {
      id: 'part-wrong',
      presses: ['w'],
      label: 'wrong',
      help: 'it came, and does not fit: why is asked',
      holds: ({ buy }) => buy !== null,
      does: ({ state, buy }) => (buy ? ask(state, { ask: 'misfit', buy: buy.buy }) : stay(state)),
    },
    cameKey(
      { id: 'part-short', presses: ['s'], label: 'short', help: 'fewer came than are needed' },
      'short',
    ),
    {
      id: 'superseded',
      presses: ['n'],
      label: 'new number',
      help: 'it is sold under another number now',
      holds: ({ buy }) => buy !== null,
      does: ({ state, buy }) => (buy ? ask(state, { ask: 'number', buy: buy.buy }) : stay(state)),
    },
  ],
  draw: drawParts,
  steady: true,
  rows: ({ view, buys, buy }) => ({
    names: buys.map((b) => b.buy),
    marked: buy?.buy ?? null,
    mark: (here) => ({ ...view, here }),
  }),
  after: {
    // It stays in sight, with how far it has come now.
    buy: (state, made) => {
      const { view } = state;
      const marked = view.screen === 'parts' ? { ...view, here: made.wish.buy } : view;
      return NOTED.buy({ ...state, view: marked }, made);
    },
  },
});

// ---------------------------------------------------------------- picture

const LOUD = { colour: 'red', bold: true } as const;

function drawParts(here: OnParts): Page {
  const { state, job, buys, buy } = here;
  const missing = buys.filter((b) => !isHere(b.state)).length;
  const around = {
    left: line(bold('What must be had')),
    right: line(missing === 0 ? 'all here' : `${missing} of ${buys.length} not here`),
    under: line(job.upper.job),
    say: buy ? sayPart(here, buy) : [],
  };
  if (buys.length === 0) {
    return { kind: 'plain', ...around, middle: () => [[], line('Nothing is on the list.')] };
  }
  return {
    kind: 'list',
    ...around,
    middle: (columns) => {
      const longest = Math.max(...buys.map((b) => width(named(b))));
      const name = Math.min(longest, nameRoom(columns));
      return buys.flatMap((b, i) =>
        listLines([rowOf(b, b === buy, name, state.now)], i, b === buy),
      );
    },
  };
}

/** Columns of a name at most; a longer one is said in full where it is marked. */
function nameRoom(columns: number): number {
  return Math.floor(columns * 0.55);
}

function named(buy: Buy): string {
  const what = buy.ask ? `${buy.what}?` : buy.what;
  return buy.count === null ? what : `${what}, ${buy.count}`;
}

function rowOf(buy: Buy, marked: boolean, name: number, now: string): Line {
  // Read out of the joint's words: it may well stand on the shelf.
  const perhaps = buy.state === 'wanted' && buy.why !== null && buy.holds.length === 0;
  const text = perhaps ? 'to hand?' : sayBought(buy, now);
  return line(
    span(marked ? '> ' : '  ', { bold: true }),
    pad(line(marked ? bold(named(buy)) : named(buy)), name + 2),
    span(
      text,
      buy.late || buyRow(buy.state).noGood ? LOUD : isHere(buy.state) ? {} : { bold: true },
    ),
  );
}

function sayPart({ job, state: { columns, now } }: OnParts, buy: Buy): Line[] {
  const steps = (names: readonly string[]) => list(names.map((s) => sayStepName(job, s)));
  const bought = [buy.price, buy.from, buy.once ? 'used once' : null, buy.says].filter(
    (t) => t !== null,
  );
  const isCut = width(named(buy)) > nameRoom(columns);
  return [
    ...wrap(isCut ? `${capital(named(buy))}.` : '', columns),
    ...wrap(buy.holds.length > 0 ? `Holds up: ${steps(buy.holds)}.` : '', columns, { bold: true }),
    ...wrap(buy.holds.length === 0 && buy.for.length > 0 ? `For: ${steps(buy.for)}.` : '', columns),
    ...wrap(bought.length > 0 ? capital(`${bought.join(', ')}.`) : '', columns),
    ...sayBefore(buy, now).flatMap((text) => wrap(`Before: ${text}.`, columns)),
    ...wrap(buy.why === null ? '' : `On the list by itself: ${buy.why}.`, columns),
  ];
}
