/** How far a thing to buy has come, by the diary's lines about it. */
import { BUY_STATES, type BuyState } from '../../model/types.ts';
import type { Line } from '../order/lines.ts';

export { BUY_STATES, type BuyState } from '../../model/types.ts';

export interface Bought {
  state: BuyState;
  /** Since when; null while it is only wanted. */
  at: string | null;
  /** When it is to come, as somebody wrote it: a date or a time. */
  promised: string | null;
  /** Where it lies. */
  tray: string | null;
  says: string | null;
  /** What came of it before and was no good: wrong, short, under another number; each with its reason. */
  before: { state: BuyState; at: string; says: string | null }[];
}

/** Said of what came, or of its number: it stays to be read after the right one is here. */
const NO_GOOD: readonly BuyState[] = ['wrong', 'short', 'superseded'];
const WANTED: Bought = {
  state: 'wanted',
  at: null,
  promised: null,
  tray: null,
  says: null,
  before: [],
};
/** It is on the bench, and can go on. */
const HERE: readonly BuyState[] = ['here', 'compared', 'fitted'];

export function isHere(state: BuyState): boolean {
  return HERE.includes(state);
}

/**
 * `lines` are those about this one thing, in their order. `used` is the line with which the piece it is for came off
 * again: what is used once and was here before then went in with it, and is wanted anew.
 */
export function boughtOf(lines: readonly Line[], used: number): Bought {
  let now = WANTED;
  for (const line of lines) {
    const state = BUY_STATES.find((s) => s === line.value);
    if (line.verb !== 'done' || state === undefined) continue;
    const { before } = now;
    if (isHere(state) && line.index < used) {
      now = { ...WANTED, before };
      continue;
    }
    const awaited = state === 'ordered' || state === 'short' || state === 'superseded';
    now = {
      state,
      at: line.at,
      promised: line.promised ?? (awaited && state !== 'ordered' ? now.promised : null),
      tray: line.tray ?? now.tray,
      says: line.says ?? line.result ?? null,
      before: NO_GOOD.includes(now.state)
        ? [...before, { state: now.state, at: now.at ?? line.at, says: now.says }]
        : before,
    };
  }
  return now;
}
