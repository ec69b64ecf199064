/** Which hole is lit: by the next step, by its number, or by an arrow. */
import type { PieceNow } from '../../model/types.ts';
import { DIRECTIONS, toward } from '../../piece/toward.ts';
import { layoutOf, names, toFill } from '../../plan/piece/piece-now.ts';
import { POINT } from '../base/digits.ts';
import type { Key } from '../base/key.ts';
import { say, stay, toStep } from '../base/moves.ts';
import { middleRows } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { pressDigit } from '../kit/digits.ts';
import { inLines, LINE_LABEL, perLine } from '../kit/map.ts';
import type { Press } from '../kit/press.ts';
import type { OnHoles } from './step.ts';

/** A step in which a hole can be pointed at. */
type Pointing = OnHoles<'look' | 'off' | 'on' | 'tight'>;

export const pointKey: Key<Pointing> = {
  id: POINT,
  presses: [],
  label: '',
  help: 'another hole, by its number',
  shown: 'digits',
  takes: ({ step, piece }, press) => pressDigit(step.typed, press, names(piece.holes)) !== null,
  does: (here, press) => {
    const { state, step, piece } = here;
    const pointed = pressDigit(step.typed, press, names(piece.holes));
    if (!pointed) return stay(state);
    const next = light(here, pointed.here ?? step.here, pointed.typed);
    const both = `${step.typed}${press}`;
    if (pointed.typed === '') return say(next.state, `There is no hole ${both}.`);
    // The second digit began anew: whoever typed a length meant neither hole.
    const anew = step.typed !== '' && pointed.typed === press && both !== press;
    const hand = step.step === 'off' || step.step === 'on';
    if (!anew || !hand) return next;
    return say(
      next.state,
      `There is no hole ${both}: ${press} is meant. A length has a dot: .${both}`,
    );
  },
};

export const goKey: Key<Pointing> = {
  id: 'go',
  presses: ['left', 'right', 'up', 'down'],
  label: '',
  help: 'the nearest hole in that direction',
  shown: 'arrows',
  does: (here, press) => {
    const { state, piece, lit } = here;
    const from = lit ?? toFill(piece)[0]?.name ?? piece.holes[0]?.name;
    return from === undefined ? stay(state) : light(here, nearest(state, piece, from, press), '');
  },
};

function light({ state, step, lit }: Pointing, here: string | null, typed: string): Updated {
  // On the way off what is in the hand is said of the hole it came out of.
  if (step.step === 'off' && step.hand !== '' && here !== lit) {
    return toStep(state, { ...step, here, typed, hand: '' });
  }
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
