/** A thing to buy in words: how far it has come, and when it is to come. */

import { daysBetween } from '../../model/time.ts';
import { many } from '../../model/words.ts';
import { sayDate } from '../time/days.ts';
import type { Buy } from './list.ts';

/** Of the list, or of the note on coming back. */
type Said = Pick<Buy, 'promised' | 'late'> & { state: string };

const STATES: Readonly<Record<string, string>> = {
  wanted: 'not ordered yet',
  ordered: 'ordered',
  here: 'here',
  compared: 'here, the same as the old one',
  fitted: 'fitted',
  wrong: 'came, and does not fit',
  short: 'came short',
  superseded: 'has another number now',
};

/** `promised 25 April`, `promised 25 April, 3 days late`, `not ordered yet`. */
export function sayBought({ state, promised, late }: Said, now: string): string {
  if (promised === null || !AWAITED.includes(state)) return STATES[state] ?? state;
  const days = late ? daysBetween(promised, now) : 0;
  const over = days > 0 ? `, ${many(days, 'day')} late` : '';
  const how = state === 'ordered' ? '' : `${STATES[state] ?? state}, `;
  return `${how}promised ${sayDate(promised, now)}${over}`;
}

/** `came, and does not fit: 14 mm too short (2 May)`, one for each that was no good. */
export function sayBefore({ before }: Pick<Buy, 'before'>, now: string): string[] {
  return before.map(({ state, at, says }) => {
    const why = says === null ? '' : `: ${says}`;
    return `${STATES[state] ?? state}${why} (${sayDate(at, now)})`;
  });
}

const AWAITED: readonly string[] = ['ordered', 'short', 'superseded'];
