/** How far a thing to buy has come, by the diary's lines about it. */
import { type BuyState, buyRow, buyState, isHere } from '../../model/states/buys.ts';
import type { DiaryLine } from '../order/lines.ts';

export { isHere } from '../../model/states/buys.ts';

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

const WANTED: Bought = {
  state: 'wanted',
  at: null,
  promised: null,
  tray: null,
  says: null,
  before: [],
};

/**
 * `lines` are those about this one thing, in their order. `used` is the line with which the piece it is for came off
 * again: what is used once and was here before then went in with it, and is wanted anew.
 */
export function boughtOf(lines: readonly DiaryLine[], used: number): Bought {
  let now = WANTED;
  for (const line of lines) {
    const state = buyState(line.value);
    if (line.verb !== 'done' || state === null) continue;
    const { before } = now;
    if (isHere(state) && line.index < used) {
      now = { ...WANTED, before };
      continue;
    }
    now = {
      state,
      at: line.at,
      promised:
        line.promised ?? (buyRow(state).awaited && state !== 'ordered' ? now.promised : null),
      tray: line.tray ?? now.tray,
      says: line.says ?? line.result ?? null,
      before: buyRow(now.state).noGood
        ? [...before, { state: now.state, at: now.at ?? line.at, says: now.says }]
        : before,
    };
  }
  return now;
}
