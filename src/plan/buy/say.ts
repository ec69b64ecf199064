/** A thing to buy in words: how far it has come, and when it is to come. */

import { type BuyState, buyRow, isHere } from '../../model/states/buys.ts';
import { daysBetween } from '../../model/time.ts';
import { many } from '../../model/words.ts';
import { sayDate } from '../time/days.ts';
import type { Buy } from './list.ts';

/** Of the list, or of the note on coming back. */
type Said = Pick<Buy, 'promised' | 'late'> & { state: BuyState };

/** Its piece is back and nobody noted it as fitted: with it, or without; null where there is nothing to say. */
export function saidBack({
  state,
  wentIn,
  ask,
  why,
}: Pick<Buy, 'state' | 'wentIn' | 'ask' | 'why'>) {
  if (why === null && ask) return 'it was in there already: a new one, or does the old one do?';
  if (!wentIn || ask || state === 'fitted') return null;
  return isHere(state) ? 'its piece is back, not noted as fitted' : 'its piece is back without it';
}

/** `promised 25 April`, `promised 25 April, 3 days late`, `not ordered yet`. */
export function sayBought({ state, promised, late }: Said, now: string): string {
  const { said, awaited } = buyRow(state);
  if (promised === null || !awaited) return said;
  const days = late ? daysBetween(promised, now) : 0;
  const over = days > 0 ? `, ${many(days, 'day')} late` : '';
  const how = state === 'ordered' ? '' : `${said}, `;
  return `${how}promised ${sayDate(promised, now)}${over}`;
}

/** `came, and does not fit: 14 mm too short (2 May)`, one for each that was no good. */
export function sayBefore({ before }: Pick<Buy, 'before'>, now: string): string[] {
  return before.map(({ state, at, says }) => {
    const why = says === null ? '' : `: ${says}`;
    return `${buyRow(state).said}${why} (${sayDate(at, now)})`;
  });
}
