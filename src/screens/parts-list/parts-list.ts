/** The one place for what is missing: what must be had, how far it has come, and what it holds up. */
import type { BuyState, Wish } from '../../model/types.ts';
import { type Buy, buyList } from '../../plan/buy/list.ts';
import { sayBought } from '../../plan/buy/say.ts';
import { isHere } from '../../plan/buy/state.ts';
import { sayStepName } from '../../plan/say.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { record, say, show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { neighbour } from '../kit/neighbour.ts';
import { around } from '../kit/scroll.ts';
import { bold, type Line, line, pad, span, width, wrap } from '../kit/text.ts';
import { capital, list, many } from '../kit/words.ts';
import { buyWish } from '../now/buy-wish.ts';
import { buysNow } from '../now/plan-now.ts';

function partHere(state: State): Buy | null {
  const { view, open } = state;
  if (view.screen !== 'parts' || !open) return null;
  const buys = buysNow(open.job, state.now);
  return buys.find((b) => b.buy === view.here) ?? first(buys) ?? null;
}

/** What is missing comes first. */
function first(buys: readonly Buy[]): Buy | undefined {
  return buys.find((b) => !isHere(b.state)) ?? buys[0];
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

export function furtherLabel(state: State): string {
  const next = FURTHER[partHere(state)?.state ?? 'fitted'];
  return next === null ? '' : LABELS[next];
}

export function goesFurther(state: State): boolean {
  return furtherLabel(state) !== '';
}

/** Not ordered yet: it may well lie on the shelf. */
export function isWanted(state: State): boolean {
  return partHere(state)?.state === 'wanted';
}

export function hasPart(state: State): boolean {
  return partHere(state) !== null;
}

function mark(state: State, how: BuyState): Updated {
  const buy = partHere(state);
  return buy ? record(state, buyWish(buy, how)) : stay(state);
}

export const partsActs = {
  parts: (state) => show(state, { screen: 'parts', here: null, under: state.view }),
  further: (state) => {
    const buy = partHere(state);
    const next = buy ? FURTHER[buy.state] : null;
    if (!buy || next === null) return stay(state);
    if (next === 'ordered') return ask(state, { ask: 'promised', buy: buy.buy, say: null });
    return record(state, buyWish(buy, next));
  },
  'part-here': (state) => mark(state, 'here'),
  'part-wrong': (state) => mark(state, 'wrong'),
  'part-short': (state) => mark(state, 'short'),
  superseded: (state) => {
    const buy = partHere(state);
    return buy ? ask(state, { ask: 'number', buy: buy.buy }) : stay(state);
  },
} satisfies Acts;

export function moveParts(state: State, by: number): Updated {
  const { view, open } = state;
  if (view.screen !== 'parts' || !open) return stay(state);
  const names = buysNow(open.job, state.now).map((b) => b.buy);
  return show(state, { ...view, here: neighbour(names, partHere(state)?.buy ?? null, by) });
}

/** After a mark: it stays in sight, with how far it has come now. */
export function afterBuy(state: State, wish: Extract<Wish, { do: 'buy' }>): Updated {
  const { view, open } = state;
  const buy = open ? buyList(open.job, state.now).find((b) => b.buy === wish.buy) : undefined;
  const quiet = buy ? `${buy.what}: ${sayBought(buy, state.now)}.` : 'Noted.';
  return say(
    view.screen === 'parts' ? show(state, { ...view, here: wish.buy }).state : state,
    quiet,
  );
}

/** `Not here yet: cover gasket (not ordered yet).`; null when nothing holds the piece. */
export function lacksSaid(state: State, piece: string): string | null {
  const { open } = state;
  if (!open) return null;
  const lacks = buysNow(open.job, state.now).filter((b) => b.holds.includes(`${piece} on`));
  if (lacks.length === 0) return null;
  return `Not here yet: ${list(lacks.map((b) => `${b.what} (${sayBought(b, state.now)})`))}.`;
}

// ---------------------------------------------------------------- picture

const LOUD = { colour: 'red', bold: true } as const;
const BAD: readonly string[] = ['wrong', 'short', 'superseded'];

export function drawParts(state: State): Page {
  const { open } = state;
  const here = partHere(state);
  if (!open) return { left: [], middle: () => [] };
  const buys = buysNow(open.job, state.now);
  const missing = buys.filter((b) => !isHere(b.state)).length;
  return {
    left: line(bold('What must be had')),
    right: line(missing === 0 ? 'all here' : `${missing} of ${buys.length} not here`),
    under: line(open.job.upper.job),
    middle: (columns, rows) => {
      if (buys.length === 0) return [[], line('Nothing is on the list.')];
      const longest = Math.max(...buys.map((b) => width(named(b))));
      const name = Math.min(longest, Math.floor(columns * 0.55));
      const lines = buys.map((b) => rowOf(b, b.buy === here?.buy, name, state.now));
      return around(
        lines,
        buys.findIndex((b) => b.buy === here?.buy),
        rows,
      );
    },
    say: here ? sayPart(state, here) : [],
  };
}

function named(buy: Buy): string {
  return buy.count === null ? buy.what : `${buy.what}, ${buy.count}`;
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
      buy.late || BAD.includes(buy.state) ? LOUD : isHere(buy.state) ? {} : { bold: true },
    ),
  );
}

function sayPart({ open, columns }: State, buy: Buy): Line[] {
  const job = open?.job;
  if (!job) return [];
  const steps = (names: readonly string[]) => list(names.map((s) => sayStepName(job, s)));
  const bought = [buy.price, buy.from, buy.once ? 'used once' : null, buy.says].filter(
    (t) => t !== null,
  );
  return [
    ...wrap(buy.holds.length > 0 ? `Holds up: ${steps(buy.holds)}.` : '', columns, { bold: true }),
    ...wrap(buy.holds.length === 0 && buy.for.length > 0 ? `For: ${steps(buy.for)}.` : '', columns),
    ...wrap(bought.length > 0 ? capital(`${bought.join(', ')}.`) : '', columns),
    ...wrap(buy.why === null ? '' : `On the list by itself: ${buy.why}.`, columns),
  ];
}

/** Said on a key where something is missing. */
export function missingLabel({ open, now }: State): string {
  const lacks = open ? buysNow(open.job, now).filter((b) => b.holds.length > 0) : [];
  return lacks.length === 0 ? '' : many(lacks.length, 'part missing', 'parts missing');
}
