/** Which hole is lit: by the next step, by its number, or by an arrow. */
import type { PieceNow } from '../../model/types.ts';
import { DIRECTIONS, toward } from '../../piece/toward.ts';
import type { Acts } from '../base/act.ts';
import { litHole } from '../base/lit.ts';
import { at, say, stay, toStep } from '../base/moves.ts';
import { middleRows } from '../base/page.ts';
import type { State, Step, Updated } from '../base/state.ts';
import { pressDigit } from '../kit/digits.ts';
import { inLines, LINE_LABEL, perLine } from '../kit/map.ts';
import type { Press } from '../kit/press.ts';
import { layoutOf, names, toFill } from '../now/piece-now.ts';

export const pointActs = {
  point: (state, press) => {
    const here = at(state);
    const step = here?.view.step;
    if (!here || !step || !('typed' in step)) return stay(state);
    const pointed = pressDigit(step.typed, press, names(here.piece.holes));
    if (!pointed) return stay(state);
    const next = light(state, step, pointed.here ?? step.here, pointed.typed);
    return pointed.typed === '' ? say(next.state, `There is no hole ${step.typed}${press}.`) : next;
  },
  go: (state, press) => {
    const here = at(state);
    const step = here?.view.step;
    if (!here || !step || !('typed' in step)) return stay(state);
    const from = litHole(here) ?? toFill(here.piece)[0]?.name ?? here.piece.holes[0]?.name;
    if (from === undefined) return stay(state);
    return light(state, step, nearest(state, here.piece, from, press), '');
  },
} satisfies Acts;

type Pointing = Extract<Step, { typed: string }>;

function light(state: State, step: Pointing, here: string | null, typed: string): Updated {
  return toStep(state, { ...step, here, typed });
}

/** As the holes lie; along the lines where they do not fit as they lie. */
function nearest(state: State, piece: PieceNow, from: string, press: Press): string {
  const direction = DIRECTIONS.find((d) => d === press);
  if (direction === undefined) return from;
  const layout = layoutOf(piece);
  const all = names(piece.holes);
  if (!inLines(layout, all, state.columns, middleRows(state.rows))) {
    return toward(layout, from, direction);
  }
  const each = perLine(all, state.columns, LINE_LABEL);
  const by = { left: -1, right: 1, up: -each, down: each }[direction];
  return all[all.indexOf(from) + by] ?? from;
}
