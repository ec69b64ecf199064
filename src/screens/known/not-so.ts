/** "Not so here": what is printed and wrong on this machine is asked for from wherever it is read. */

import type { KnownRow } from '../../plan/known/rows.ts';
import { ask } from '../ask/field.ts';
import type { Key } from '../base/key.ts';
import { show, stay } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import type { InQuestion } from './in-question.ts';

export function askTruth(state: State, { figure, text }: KnownRow): Updated {
  return figure ? ask(state, { ask: 'truth', figure, say: null }, text) : stay(state);
}

/** The key, on a screen where `about` says what is in question. */
export function notSo<H extends { state: State }>(
  about: (here: H) => InQuestion | null,
  label: Key<H>['label'] = 'not so here',
): Key<H> {
  return {
    id: 'not-so',
    presses: ['c'],
    label,
    help: 'what is printed is not so on this machine: what is true; both are shown from then on',
    holds: (here) => (about(here)?.rows.length ?? 0) > 0,
    does: (here) => {
      const found = about(here);
      return found ? askWhich(here.state, found) : stay(here.state);
    },
  };
}

/** Asks what is true there; where several texts are in question, shows them all to choose from. */
export function askWhich(state: State, { of, rows }: InQuestion): Updated {
  const [likely] = rows;
  if (!likely) return stay(state);
  if (rows.length === 1) return askTruth(state, likely);
  const first = rows.map((r) => r.id);
  return show(state, { screen: 'known', of, here: likely.id, first, under: state.view });
}
