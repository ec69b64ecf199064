/** The note of a good workmate: where the job stands, in words, as one reads it on coming back after days. */

import type { Words } from '../../job/truth/said.ts';
import { daysBetween } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';
import { correctionsSaid, mattersStill } from '../../plan/known/corrections-said.ts';
import { taskOf } from '../../plan/ladder-names.ts';
import type { Back } from '../../plan/next/back.ts';
import { backNow } from '../../plan/next/back.ts';
import { nextNow } from '../../plan/next/next-now.ts';
import { noteRows } from '../../plan/next/note.ts';
import { lastMark } from '../../plan/order/job-now.ts';
import { openToAsk } from '../../plan/order/openings.ts';
import { stepWords } from '../../plan/order/say.ts';
import { sayDays } from '../../plan/time/days.ts';
import type { Doable } from '../../plan/twenty.ts';
import { ask } from '../ask/field.ts';
import { withinKey } from '../ask/how-long.ts';
import { toJob } from '../base/enter.ts';
import { GO } from '../base/key.ts';
import { type OnJob, onJob, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { screen } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { wrapStruck } from '../base/struck.ts';
import { hangingBoth } from '../kit/both.ts';
import {
  bold,
  hanging,
  type Line,
  line,
  pad,
  READ_OUT,
  type Style,
  span,
  wrap,
} from '../kit/text.ts';
import { partsKey } from '../parts-list/missing.ts';
import { testsKey } from '../tasks/tests-list.ts';

type NoteView = Extract<View, { screen: 'note' }>;

export const noteScreen = screen({
  here: (state: State, view: NoteView) => onJob(state, view),
  keys: [
    {
      id: 'pieces',
      presses: GO,
      label: 'to the pieces',
      help: 'go on to the pieces of this job',
      does: ({ state }) => toJob(state),
    },
    {
      id: 'covered',
      presses: ['i'],
      label: 'covered, plugged',
      help: 'how what stands open is closed meanwhile: foil over it, 2 rags',
      holds: ({ state, job }) => openToAsk(job, state.now) !== null,
      does: ({ state, job }) => {
        const piece = openToAsk(job, state.now)?.piece;
        return piece === undefined ? stay(state) : ask(state, { ask: 'covered', piece });
      },
    },
    partsKey,
    testsKey,
    withinKey,
  ],
  draw: drawNote,
  back: (state) => toJob(state),
});

function drawNote({ state, job }: OnJob<NoteView>): Page {
  const last = lastMark(job);
  const days = last === null ? 0 : daysBetween(last, state.now);
  const since =
    last === null ? '' : days === 0 ? 'last mark today' : `${sayDays(days)} since the last mark`;
  const back = backNow(job, state.now, state.hours);
  return {
    kind: 'page',
    left: line(bold(job.upper.job)),
    right: line(since),
    under: line(job.upper.machine ?? ''),
    middle: (columns) => noteLines(job, back, state.now, columns),
    say: sayNext(job, back, state.now, state.columns),
    most: 8,
  };
}

/** Things offered for the next twenty minutes. */
const OFFERED = 2;

/** What to do first, and what must not be done. */
function sayNext(job: Job, back: Back, now: string, columns: number): Line[] {
  const dont = back.dont.flatMap((text) => wrap(text, columns, { colour: 'red', bold: true }));
  const next = nextSaid(job, back, now).flatMap((words) =>
    wrapStruck(words, columns, { bold: true }),
  );
  return [...next, ...dont];
}

/** Twenty minutes of work, and the next step where that is at another piece. */
function nextSaid(job: Job, { next }: Back, now: string): Words[] {
  const offered = next.can.slice(0, OFFERED);
  const step = nextNow(job, now);
  const rung = taskOf(step?.rung ?? null) ?? step?.rung;
  const same = offered.some((d) => d.step.split(' ')[0] === rung);
  const [maybe] = next.maybe;
  const wordsOf = (d: Doable) => stepWords(job, d.step, d.say);
  const idle: Words = maybe ? ['Next: ', ...wordsOf(maybe)] : ['Nothing is on its way.'];
  const twenty = offered.map((d, i) => [i === 0 ? 'Twenty minutes: ' : ' Then: ', ...wordsOf(d)]);
  return [
    ...(step && !same ? [['Next: ', ...step.words]] : []),
    ...(twenty.length > 0 ? [twenty.flat()] : []),
    ...(step || twenty.length > 0 ? [] : [idle]),
  ];
}

const LABEL = 15;
const LOUD: Style = { colour: 'red', bold: true };

function noteLines(job: Job, back: Back, now: string, columns: number): Line[] {
  // Read out, there is no column that a row without its label stands in.
  const labelled = (label: string, i: number) =>
    pad(line(i === 0 || columns >= READ_OUT ? bold(label) : span('')), LABEL);
  const lines = noteRows(job, back, now).flatMap(({ label, texts, loud }): Line[] =>
    texts.flatMap((text, i) => hanging(labelled(label, i), text, columns, loud ? LOUD : {})),
  );
  const wrong = correctionsSaid(job, (c) => mattersStill(job, c));
  return [
    ...lines,
    ...wrong.flatMap((both, i) => hangingBoth(labelled('True here', i), both, columns)),
  ];
}
