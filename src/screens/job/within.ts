/** Given a time: what can be done in it and left safe. */

import { curesSaid } from '../../plan/seal/sealant.ts';
import { atTime } from '../../plan/time/at-time.ts';
import { type Doable, withinMinutes } from '../../plan/twenty.ts';
import { GO } from '../base/key.ts';
import { type OnJob, onJob, show } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { bold, hanging, indent, type Line, line, pad, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';

type WithinView = Extract<View, { screen: 'within' }>;

export const withinScreen = screenOver({
  here: (state: State, view: WithinView) => onJob(state, view),
  keys: [
    {
      id: 'leave-within',
      presses: GO,
      label: 'go on',
      help: 'back to where this was asked',
      does: ({ state, view }) => show(state, view.under),
    },
  ],
  draw: drawWithin,
});

const LABEL = 9;

function drawWithin({ state, view: { minutes }, job }: OnJob<WithinView>): Page {
  const found = atTime(job, state.now, `within ${minutes}`, () =>
    withinMinutes(job, minutes, state.now),
  );
  return {
    kind: 'page',
    left: line(bold(`In ${many(minutes, 'minute')}, and left safe`)),
    under: line(job.upper.job),
    middle: (columns) => {
      const nothing = found.can.length + found.maybe.length === 0;
      const lines: Line[] = [
        ...found.can.flatMap((d) => doable(d, columns)),
        ...(found.maybe.length > 0
          ? [[], ...wrap('How long these take nobody has noted:', columns), []]
          : []),
        ...found.maybe.flatMap((d) => doable(d, columns)),
        ...curesSaid(job, state.now).flatMap((text) => [
          [],
          ...wrap(text, columns, { bold: true }),
        ]),
        ...(nothing ? wrap('Nothing that could be left safe.', columns, { bold: true }) : []),
      ];
      return [[], ...lines];
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
