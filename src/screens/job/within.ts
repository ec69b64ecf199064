/** Given a time: what can be done in it and left safe. */
import { type Doable, within } from '../../plan/twenty.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { scrolled } from '../kit/scroll.ts';
import { bold, hanging, indent, type Line, line, pad, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';
import { atTime } from '../now/plan-now.ts';
import { curesSaid } from '../now/sealant.ts';

export const withinActs = {
  within: (state) => ask(state, { ask: 'minutes', say: null }),
  'leave-within': (state) =>
    state.view.screen === 'within' ? show(state, state.view.under) : stay(state),
} satisfies Acts;

const LABEL = 9;

export function drawWithin(state: State): Page {
  const { view, open } = state;
  if (view.screen !== 'within' || !open) return { left: [], middle: () => [] };
  const { minutes } = view;
  const found = atTime(open.job, state.now, `within ${minutes}`, () =>
    within(open.job, minutes, state.now),
  );
  return {
    left: line(bold(`In ${many(minutes, 'minute')}, and left safe`)),
    under: line(open.job.upper.job),
    middle: (columns, rows) => {
      const nothing = found.can.length + found.maybe.length === 0;
      const lines: Line[] = [
        ...found.can.flatMap((d) => doable(d, columns)),
        ...(found.maybe.length > 0
          ? [[], ...wrap('How long these take nobody has noted:', columns), []]
          : []),
        ...found.maybe.flatMap((d) => doable(d, columns)),
        ...curesSaid(open.job, state.now).flatMap((text) => [
          [],
          ...wrap(text, columns, { bold: true }),
        ]),
        ...(nothing ? wrap('Nothing that could be left safe.', columns, { bold: true }) : []),
      ];
      return scrolled([[], ...lines], view.top, rows);
    },
  };
}

function doable({ say, minutes, partly, leave }: Doable, columns: number): Line[] {
  const time = minutes === null ? '' : `${minutes} min`;
  const part = partly ? ' A part of it.' : '';
  const first = pad(line(bold(time)), LABEL);
  return [
    ...hanging(first, `${say}${part}`, columns, { bold: true }),
    ...(leave === null ? [] : wrap(leave, columns - LABEL).map((l) => indent(l, LABEL))),
  ];
}
