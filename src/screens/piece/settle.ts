/** File and find differ, or two marks do: which is true, one hole at a time, before anything goes back. */

import type { HoleNow } from '../../model/types.ts';
import { printItem } from '../../piece/row.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { goOn, toSettleStep } from '../base/enter.ts';
import { at, holeNamed, record, stay, stepOf, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { hanging, type Line, line, pad, wrap } from '../kit/text.ts';
import { many, sayItem } from '../kit/words.ts';
import { names, toSettle } from '../now/piece-now.ts';
import { sayTakes } from '../now/say-piece.ts';

function settleHere(state: State): HoleNow | null {
  return holeNamed(at(state)?.piece ?? null, stepOf(state, 'settle')?.here ?? null);
}

function settle(state: State, what: 'claim' | 'found'): Updated {
  const hole = settleHere(state);
  const here = at(state);
  const item = hole?.[what];
  if (!here || !hole || !item) return stay(state);
  return record(state, { do: 'settle', piece: here.key, hole: hole.name, kind: printItem(item) });
}

export const settleActs = {
  file: (state) => settle(state, 'claim'),
  find: (state) => settle(state, 'found'),
  other: (state) => {
    const hole = settleHere(state);
    return hole ? ask(state, { ask: 'belongs', hole: hole.name }) : stay(state);
  },
  later: (state) => {
    const here = at(state);
    const hole = settleHere(state);
    if (!here || !hole) return stay(state);
    const odd = names(toSettle(here.piece));
    const next = odd[odd.indexOf(hole.name) + 1];
    if (next === undefined) return goOn(state);
    return toStep(state, { step: 'settle', here: next });
  },
} satisfies Acts;

const LABEL = 16;

/** After one is settled: the next one that differs, or on. */
export const nextSettle = toSettleStep;

export function drawSettle(state: State): Page {
  const here = at(state);
  const hole = settleHere(state);
  if (!here || !hole) return { left: [], middle: () => [] };
  const { piece, job } = here;
  const left = toSettle(piece).length;
  return piecePage(
    piece,
    (h) => ({
      here: h.name === hole.name,
      lit: h.unsettled || h.conflict !== null,
      label: h.belongs ? sayItem(h.belongs) : '',
      short: h.belongs?.kind ?? '',
    }),
    {
      right: line(`before it goes back: ${many(left, 'hole')} to settle`),
      say: hole.conflict ? sayConflict(hole, state.columns) : sayBoth(hole),
    },
  );

  function sayBoth(odd: HoleNow): Line[] {
    const row = (label: string, item: HoleNow['claim']) =>
      hanging(pad(line(label), LABEL), sayTakes(job, item), state.columns);
    return [
      ...wrap(`${odd.name}: which is true?`, state.columns, { bold: true }),
      ...row('The file says', odd.claim),
      ...row('Came out', odd.found),
    ];
  }
}

function sayConflict(hole: HoleNow, columns: number): Line[] {
  const text = `${hole.name}: ${hole.conflict?.say ?? ''}. Look what is really in it.`;
  return wrap(text, columns, { bold: true });
}
