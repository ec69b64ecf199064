/** How far a thing to buy has come, said behind its name: `side cover gasket, ordered, promised 21 December`. */
import { typedDate } from '../../model/typed-date.ts';
import type { BuyState } from '../../model/types.ts';

export interface BoughtTyped {
  what: string;
  state: BuyState;
  promised: string | null;
}

/** Words for what is the case on the way in; `short` and `wrong` may just as well be part of a name. */
const SAID: Readonly<Record<string, BuyState>> = {
  ordered: 'ordered',
  here: 'here',
  arrived: 'here',
};
const BEHIND =
  /^(.*?\S)\s*,\s*(?:is |it is |has )?(ordered|here|arrived)(?:,?\s+(?:promised |due )?(?:for |on )?(\S.*))?$/i;

/** Null where nothing of it was said behind a comma, or the day is none: then all of it is the name. `now` is RFC 3339. */
export function boughtTyped(text: string, now: string): BoughtTyped | null {
  const [, what, word = '', day] = BEHIND.exec(text.trim()) ?? [];
  const state = SAID[word.toLowerCase()];
  if (what === undefined || state === undefined) return null;
  const promised = day === undefined ? null : typedDate(day, now);
  if (day !== undefined && (promised === null || state !== 'ordered')) return null;
  return { what, state, promised };
}
