/**
 * The heart of the screens: a state and what happened give the next state and what is to be done.
 *
 * One thing is asked of the loop at a time. What is pressed while its answer is awaited is kept, and read
 * against the state that the answer gives: so five quick presses mark five holes, and none twice. After a
 * refusal the rest is dropped: it was meant for a screen that did not come.
 */

import { daysBetween } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';
import { say, show, stay } from '../base/moves.ts';
import type { BenchRow, Effect, Happening, Input, State, Updated, View } from '../base/state.ts';
import { isUnderWay, lastMark } from '../now/job-now.ts';
import { backNow } from '../now/plan-now.ts';
import { afterRecorded } from './after.ts';
import { paste, press } from './dispatch.ts';
import { keyOf } from './which.ts';

export function update(state: State, happening: Happening): Updated {
  switch (happening.on) {
    case 'press':
    case 'paste':
      return input(state, happening);
    case 'recorded':
      return recorded(state, happening);
    case 'again':
      return tryAgain(state);
    case 'file':
      return goOn(fileRead(state, happening));
    case 'bench':
      return goOn(benchRead(state, happening.jobs));
    case 'size':
      return stay({ ...state, columns: happening.columns, rows: happening.rows });
    case 'time':
      return stay({ ...state, now: happening.now });
    case 'quiet':
      return say(state, happening.say);
  }
}

function recorded(state: State, happening: Extract<Happening, { on: 'recorded' }>): Updated {
  const { waiting, view } = state;
  if (waiting?.for !== 'recorded') return stay(state);
  const again = waiting.again === true && view.screen === 'unsaved';
  const from: State = { ...state, waiting: null, ...(again ? { view: view.under } : {}) };
  const { ok, ...answer } = afterRecorded(from, happening);
  const after = { ...answer, state: unread(from.view, answer.state) };
  if (!again && ok) return goOn(after);
  if (!again || ok) return { ...after, state: { ...after.state, ahead: [] } };
  // It rang the first time; what was pressed meanwhile was meant for this screen, which is still there.
  return goOn({ ...after, effects: after.effects.filter((e) => e.do !== 'ring') });
}

function tryAgain(state: State): Updated {
  const { view, waiting, open } = state;
  if (view.screen !== 'unsaved' || waiting !== null || open === null) return stay(state);
  const { wish } = view;
  return {
    state: { ...state, waiting: { for: 'recorded', wish, again: true } },
    effects: [{ do: 'record', file: open.file, wish }],
  };
}

function input(state: State, happening: Input): Updated {
  // Leaving waits for nothing: what was asked for is being written anyway.
  const atOnce = happening.on === 'press' && keyOf(state, happening.press) === 'leave';
  if (state.waiting && !atOnce) return stay({ ...state, ahead: [...state.ahead, happening] });
  return happening.on === 'press' ? press(state, happening.press) : paste(state, happening.text);
}

/** Reads what was typed ahead, until something is asked of the loop again. */
function goOn(from: Updated): Updated {
  let { state } = from;
  const effects: Effect[] = [...from.effects];
  while (state.waiting === null) {
    const [next, ...rest] = state.ahead;
    if (!next) break;
    const now = input({ ...state, ahead: rest }, next);
    state = unread(state.view, now.state);
    effects.push(...now.effects);
  }
  return { state, effects };
}

/** What was typed before a caution or a gate came in sight has not seen it. */
function unread(before: View, state: State): State {
  const asks = askedFor(state.view);
  return asks === null || asks === askedFor(before) ? state : { ...state, ahead: [] };
}

/** Names a page that one must have looked at; null for all others. */
function askedFor(view: View): string | null {
  if (view.screen === 'gate') return `${view.moment} ${view.piece ?? ''}`;
  if (view.screen !== 'piece' || view.step.step !== 'read') return null;
  return `${view.step.way} ${view.piece}`;
}

/** Nothing is off, but something was left inside, or is to be looked at again. */
function isDue(job: Job, now: string): boolean {
  return job.inside.length > 0 || backNow(job, now).due.length > 0;
}

const BROKEN = 'The file was changed and cannot be read just now.';

/** Days after which coming back begins with where the job stands. */
const AWAY = 1;

function fileRead(
  state: State,
  { file, read, wrenches, say: told }: Extract<Happening, { on: 'file' }>,
): Updated {
  const asked = state.waiting?.for === 'file' && state.waiting.file === file;
  const now: State = asked ? { ...state, waiting: null } : state;
  if (!asked && now.open?.file !== file) return stay(now);
  if (!read.ok) {
    // Somebody is at work in the file: until it reads again, the last that was read stands.
    if (!asked) return say(now, BROKEN);
    return { ...show(now, { screen: 'faults', file, read, top: 0 }), effects: [] };
  }
  const opened: State = {
    ...now,
    open: { file, job: read.job },
    wrenches: wrenches ?? now.wrenches,
  };
  // Readable again: that it was not is no news any more.
  const before = opened.quiet === BROKEN ? null : opened.quiet;
  if (!asked) return stay({ ...opened, quiet: told ?? before });
  const warned = read.faults[0];
  const quiet = told ?? (warned ? `Line ${warned.line}: ${warned.say}` : null);
  const last = lastMark(read.job);
  const away = last !== null && daysBetween(last, state.now) >= AWAY;
  const back = away && (isUnderWay(read.job) || isDue(read.job, state.now));
  const view = back
    ? ({ screen: 'note', top: 0 } as const)
    : ({ screen: 'job', here: null } as const);
  return show({ ...opened, quiet }, view);
}

function benchRead(state: State, jobs: BenchRow[]): Updated {
  if (!state.bench) return stay(state);
  const asked = state.waiting?.for === 'bench';
  const now: State = {
    ...state,
    bench: { ...state.bench, jobs },
    waiting: asked ? null : state.waiting,
  };
  return now.view.screen === 'wait' ? show(now, { screen: 'bench', here: null }) : stay(now);
}
