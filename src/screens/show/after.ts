/** What became of a mark: done and on disk, refused, not saved, or the file can no longer be read. */
import type { Recorded, Refusal, Wish } from '../../model/types.ts';
import { isDoneUp, isStartAsked } from '../../plan/gates/gate-now.ts';
import { milestoneOf } from '../../plan/next/milestone.ts';

import { openGate } from '../base/enter.ts';
import { outOfQuestion, requestMark, say, stay } from '../base/moves.ts';
import { NOTED } from '../base/noted.ts';
import type { After, MadeMark } from '../base/screen.ts';
import type { Effect, State, Updated } from '../base/state.ts';
import { capital } from '../kit/words.ts';
import { openOf } from './screens.ts';

type Done = Extract<Recorded, { ok: true }>;

/** `ok`: false where the screen that comes is not the one that the presses typed ahead were meant for. */
export function afterRecorded(
  state: State,
  answer: { result: Recorded; wish: Wish; file: string },
): Updated & { ok: boolean } {
  const { result, wish, file } = answer;
  if (result.ok) return { ...done(state, result, wish, file), ok: true };
  if ('faults' in result) {
    const newer = result.faults.find((f) => f.code === 'newer-version');
    // Such a job is read, only not written: what is shown stays.
    if (newer) return { ...say(state, `${capital(newer.say)}. ${newer.fix}`), ok: false };
    const read = { ok: false, faults: result.faults } as const;
    return { ...stay({ ...state, view: { screen: 'faults', file, read } }), ok: false };
  }
  if ('unsaved' in result) {
    const under = state.view;
    const view = { screen: 'unsaved', wish, why: result.unsaved, under } as const;
    return { state: { ...state, view }, effects: [{ do: 'ring' }], ok: false };
  }
  const now: State = { ...state, open: { file, job: result.job } };
  return { ...refused(outOfQuestion(now), result.refused, wish), ok: false };
}

function refused(state: State, why: Refusal, wish: Wish): Updated {
  return openOf(state).refused?.(state, why, wish) ?? say(state, why.say);
}

function done(before: State, result: Done, wish: Wish, file: string): Updated {
  const { entry, job } = result;
  const now: State = {
    ...outOfQuestion(before),
    open: { file, job },
    mine: entry ? [...before.mine, entry.id] : before.mine,
    unmarked: null,
    quiet: null,
  };
  const next = greet(before, toStart(follow(now, { wish, entry, before }), result));
  // That a torque is not known stands on the screen of the pass itself.
  const said = result.warnings.filter((w) => w.code !== 'no-torque').map((w) => w.say);
  const quiet = [next.state.quiet, ...said].filter((t) => t !== null).join(' ');
  return {
    state: { ...next.state, quiet: quiet === '' ? null : quiet },
    effects: [...milestone(result, wish, file), ...next.effects],
  };
}

/** Where the person goes on: the screen on which the mark was made says it. */
function follow(state: State, made: MadeMark): Updated {
  const going = goesOn(state, made);
  if (going) return going;
  const all: After = { ...NOTED, ...openOf(state).after };
  // `made.wish` is of the kind that this entry is for.
  const next = all[made.wish.do] as ((state: State, made: MadeMark) => Updated) | undefined;
  return next?.(state, made) ?? stay(state);
}

/** Behind a gate the step of a piece opens as by a key, with what is said on coming there. */
function greet({ view }: State, next: Updated): Updated {
  const opens = view.screen === 'gate' && next.state.view.screen === 'piece';
  return opens ? { ...next, state: openOf(next.state).greeted() } : next;
}

/** Of several marks that belong together the next one; back where it was asked after the last one. */
function goesOn(state: State, { before }: MadeMark): Updated | null {
  const { view } = before;
  if (view.screen !== 'piece' || view.step.step !== 'unmark') return null;
  const { step, piece } = view;
  const { run, hole } = step;
  if (run === null) return null;
  const [next, ...rest] = run.rest;
  if (next) {
    const on = { ...view, step: { ...step, run: { ...run, rest } } };
    return requestMark({ ...state, view: on }, next);
  }
  const unmarked = run.takes ? { hole, piece, ids: state.mine.slice(run.from) } : null;
  return say({ ...state, unmarked }, run.says);
}

/** When the last piece is on and gone round, the gate before the first start opens by itself. */
function toStart({ state, effects }: Updated, { before, job }: Done): Updated {
  const last = !isDoneUp(before) && isDoneUp(job) && isStartAsked(job, state.now, state.read);
  if (!last) return { state, effects };
  const opened = openGate(state, 'start', 'back');
  return { ...opened, effects: [...effects, ...opened.effects] };
}

function milestone(result: Done, wish: Wish, file: string): Effect[] {
  const key = 'piece' in wish ? wish.piece : undefined;
  const piece = key === undefined ? undefined : result.job.pieces.get(key);
  if (!result.changed || key === undefined || !piece) return [];
  const place = milestoneOf(result.before.pieces.get(key), piece);
  return place === null ? [] : [{ do: 'milestone', file, piece: key, place }];
}
