/** A test failed: what comes off once more, what the rounds before it found, what is wanted anew. */

import { correctionsSaid } from '../../plan/known/corrections-said.ts';
import { stillIn } from '../../plan/piece/piece-now.ts';
import { taskHere } from '../../plan/task/task-now.ts';
import { roundAgain } from '../../plan/tests/again.ts';
import { atTime } from '../../plan/time/at-time.ts';
import { sayDate } from '../../plan/time/days.ts';
import { LOOK, OFF, readFirst } from '../base/enter.ts';
import { ENTER } from '../base/key.ts';
import { at, type OnJob, onJob, requestMark, show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { hangingBoth } from '../kit/both.ts';
import { bold, hanging, type Line, line, pad, wrap } from '../kit/text.ts';
import { list } from '../kit/words.ts';

interface OnRound extends OnJob<Extract<View, { screen: 'round' }>> {
  found: ReturnType<typeof roundAgain>;
  /** Of a piece, by its key. */
  name: (key: string) => string;
}

function onRound(state: State, view: OnRound['view']): OnRound | null {
  const here = onJob(state, view);
  if (!here) return null;
  const { job } = here;
  const found = atTime(job, state.now, `again ${view.test}`, () =>
    roundAgain(job, view.test, state.now),
  );
  return { ...here, found, name: (key) => job.pieces.get(key)?.spec.name ?? key };
}

function roundLabel({ job, found, name }: OnRound): string {
  const first = found?.off[0];
  if (first === undefined) return 'to the job';
  const round = (job.pieces.get(found?.off.at(-1) ?? '')?.round ?? 1) + 1;
  return `round ${round}: ${name(first)} comes off`;
}

function beginRound({ state, found }: OnRound): Updated {
  const first = found?.off[0];
  if (first === undefined) return show(state, { screen: 'job', here: null });
  const opened: State = { ...state, view: { screen: 'piece', piece: first, step: LOOK } };
  const piece = at(opened)?.piece;
  if (!piece) return stay(state);
  const bare = piece.holes.length === 0 || stillIn(piece).length === 0;
  return readFirst(opened, 'removal', bare ? { step: 'off-count' } : OFF);
}

/** Its bolts are in, and known. */
function isAsBefore({ job, found }: OnRound): boolean {
  const piece = job.pieces.get(found?.off[0] ?? '');
  const holes = piece ? stillIn(piece) : [];
  return holes.length > 0 && holes.every((h) => h.trouble === null && h.conflict === null);
}

export const roundScreen = screenOver({
  here: onRound,
  keys: [
    {
      id: 'next-round',
      presses: ENTER,
      label: roundLabel,
      help: 'off with the first piece of the next round',
      does: beginRound,
    },
    {
      id: 'all-as-before',
      presses: ['a'],
      label: 'all its bolts, as before',
      help: 'the first piece of the next round: all its bolts are out, each as it was',
      holds: (here) => isAsBefore(here),
      does: (here) => {
        const { state, effects } = beginRound(here);
        const piece = at(state);
        // A caution is read first; there the same key is one screen further.
        if (piece?.view.step.step !== 'off') return { state, effects };
        return requestMark(state, { do: 'out', piece: piece.key });
      },
    },
  ],
  draw: drawRound,
});

const LABEL = 14;

function drawRound({ state, job, found, view, name }: OnRound): Page {
  const task = taskHere(job, view.test, state.now);
  const rows: [string, string[]][] = [
    ['First', found?.first ?? []],
    ['Off again', found && found.off.length > 0 ? [list(found.off.map(name))] : []],
    ['Found so far', (found?.found ?? []).map((f) => foundSaid(f, name, state.now))],
    [
      'New again',
      (found?.anew ?? []).map((b) => (b.count === null ? b.what : `${b.what}, ${b.count}`)),
    ],
  ];
  return {
    kind: 'page',
    left: line(bold(task?.say ?? view.test)),
    right: line('failed'),
    under: line(job.upper.job),
    middle: (columns) => {
      const lines = rows.flatMap(([label, texts]) =>
        texts.flatMap((text, i): Line[] =>
          hanging(pad(line(bold(i === 0 ? label : '')), LABEL), text, columns),
        ),
      );
      const off = found?.off ?? [];
      const wrong = correctionsSaid(
        job,
        (c) => c.task === view.test || off.includes(c.piece ?? ''),
      ).flatMap((both, i) =>
        hangingBoth(pad(line(bold(i === 0 ? 'True here' : '')), LABEL), both, columns),
      );
      const told = wrap(task?.told ?? '', columns, { colour: 'red', bold: true });
      return [[], ...told, ...(told.length > 0 ? [[]] : []), ...lines, ...wrong];
    },
  };
}

interface Found {
  at: string;
  piece: string | null;
  hole: string[] | null;
  say: string;
}

function foundSaid(
  { at: when, piece, hole, say }: Found,
  name: (k: string) => string,
  now: string,
) {
  const where = [piece === null ? null : name(piece), hole === null ? null : list(hole)];
  const place = where.filter((t) => t !== null).join(', ');
  return `${sayDate(when, now)}${place === '' ? '' : `, ${place}`}: ${say}`;
}
