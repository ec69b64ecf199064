/** What became of a mark: done and on disk, refused, not saved, or the file can no longer be read. */

import type { Entry, Recorded, Refusal, Wish } from '../../model/types.ts';
import { milestoneOf } from '../../plan/milestone.ts';
import { ask } from '../ask/field.ts';
import { wrong } from '../ask/field-known.ts';
import { openGate, toJob } from '../base/enter.ts';
import { at, say, stay, stepOf, toStep } from '../base/moves.ts';
import type { Effect, State, Updated } from '../base/state.ts';
import { afterDrawing } from '../draw/draw.ts';
import { afterGate } from '../gate/gate.ts';
import { afterKnown } from '../known/known.ts';
import { isStartAsked } from '../now/gate-now.ts';
import { isAllBack } from '../now/job-now.ts';
import { names, type PassNow, passNow, stillIn, toSettle } from '../now/piece-now.ts';
import { afterBuy } from '../parts-list/parts-list.ts';
import { afterInside } from '../piece/inside.ts';
import { nextOff } from '../piece/off.ts';
import { nextOn } from '../piece/on.ts';
import { nextSettle } from '../piece/settle.ts';
import { breaks } from '../piece/stop.ts';
import { nextTight } from '../piece/tight.ts';
import { ADVICE } from '../piece/trouble.ts';
import { afterUndo } from '../piece/undo.ts';
import { afterDone } from '../tasks/task.ts';

type Done = Extract<Recorded, { ok: true }>;

/** `ok` tells whether what was typed ahead still means what it was meant to. */
export function afterRecorded(
  state: State,
  answer: { result: Recorded; wish: Wish; file: string },
): Updated & { ok: boolean } {
  const { result, wish, file } = answer;
  if (result.ok) return { ...done(state, result, wish, file), ok: true };
  if ('faults' in result) {
    const newer = result.faults.find((f) => f.code === 'newer-version');
    // Such a job is read, only not written: what is shown stays.
    if (newer)
      return {
        ...say(state, `${newer.say.replace(/^./, (c) => c.toUpperCase())}. ${newer.fix}`),
        ok: false,
      };
    const read = { ok: false, faults: result.faults } as const;
    const view = { screen: 'faults', file, read, top: 0 } as const;
    return { ...stay({ ...state, view }), ok: false };
  }
  if ('unsaved' in result) {
    const under = state.view;
    const view = { screen: 'unsaved', wish, why: result.unsaved, under } as const;
    return { state: { ...state, view }, effects: [{ do: 'ring' }], ok: false };
  }
  const now: State = { ...state, open: { file, job: result.job } };
  return { ...refused(unwrap(now), result.refused, wish), ok: false };
}

/** Out of the question that led to a mark, back to where it was asked. */
function unwrap(state: State): State {
  const { view } = state;
  if (view.screen !== 'piece' || !('back' in view.step)) return state;
  return { ...state, view: { ...view, step: view.step.back } };
}

// ---------------------------------------------------------------- done

function done(before: State, result: Done, wish: Wish, file: string): Updated {
  const pass = passBefore(before);
  const now: State = {
    ...unwrap(before),
    open: { file, job: result.job },
    mine: result.entry ? [...before.mine, result.entry.id] : before.mine,
    quiet: null,
  };
  const next = toStart(follow(now, wish, result.entry, pass), result);
  const said = result.warnings.map((w) => w.say);
  const quiet = [next.state.quiet, ...said].filter((t) => t !== null).join(' ');
  return {
    state: { ...next.state, quiet: quiet === '' ? null : quiet },
    effects: [...milestone(result, wish, file), ...next.effects],
  };
}

/** The last piece is on: what is to be seen to before it runs comes by itself. */
function toStart({ state, effects }: Updated, { before, job }: Done): Updated {
  const last = !isAllBack(before) && isStartAsked(job, state.now, state.read);
  if (!last) return { state, effects };
  const opened = openGate(state, 'start', 'back');
  return { ...opened, effects: [...effects, ...opened.effects] };
}

function passBefore(state: State): PassNow | null {
  const here = at(state);
  return here ? passNow(here.piece, here.job.upper.kinds) : null;
}

function milestone(result: Done, wish: Wish, file: string): Effect[] {
  const key = 'piece' in wish ? wish.piece : undefined;
  const piece = key === undefined ? undefined : result.job.pieces.get(key);
  if (!result.changed || key === undefined || !piece) return [];
  const place = milestoneOf(result.before.pieces.get(key), piece);
  return place === null ? [] : [{ do: 'milestone', file, piece: key, place }];
}

/** Where the person goes on. */
function follow(state: State, wish: Wish, entry: Entry | null, pass: PassNow | null): Updated {
  switch (wish.do) {
    case 'out':
      return nextOff(state);
    case 'off':
    case 'aside':
      return askRuns(say(toJob(state).state, movedSaid(state, wish)), wish.piece);
    case 'on':
      return say(toJob(state).state, movedSaid(state, wish));
    case 'in':
      return nextOn(state);
    case 'tight':
      return nextTight(state, pass);
    case 'settle':
      return nextSettle(state);
    case 'state':
      return afterState(state, wish);
    case 'undo':
      return wish.id === undefined ? stay(state) : afterUndo(state, wish.id);
    case 'inside':
    case 'cleared':
      return afterInside(afterGate(state, wish).state, wish);
    case 'gate':
      return afterGate(state, wish);
    case 'buy':
      return afterBuy(afterGate(state, wish).state, wish);
    case 'done':
      return afterDone(state, wish);
    case 'write':
      if (state.view.screen === 'draw') return afterDrawing(state, entry !== null);
      return afterKnown(state, wish, entry !== null);
    case 'correct':
      return afterKnown(state, wish, entry !== null);
    case 'note':
      return entry ? say(afterGate(state, wish).state, 'Noted.') : stay(state);
  }
}

/** Of a hose or a cable one asks while it is in the hand, where the file says nothing of it. */
function askRuns(moved: Updated, piece: string): Updated {
  const now = moved.state.open?.job.pieces.get(piece);
  const said = now && (now.spec.routes.length > 0 || now.spec.marks.length > 0);
  if (!now || now.holes.length > 0 || said || now.round > 1) return moved;
  const asks = { ask: 'write', piece, key: 'routes', more: [], say: null, runs: true } as const;
  return ask(moved.state, asks);
}

function movedSaid(state: State, wish: Extract<Wish, { do: 'off' | 'aside' | 'on' }>): string {
  const piece = state.open?.job.pieces.get(wish.piece);
  if (!piece) return '';
  const name = piece.spec.name;
  if (wish.do === 'on') return `${name} is back on.`;
  if (wish.do === 'aside') return `${name} is moved aside.`;
  const n = piece.holes.length;
  const where = piece.tray === null ? '' : ` in ${piece.tray}`;
  const out = n - stillIn(piece).length;
  return n === 0 ? `${name} is off.` : `${name} is off, ${out} of ${n} bolts${where}.`;
}

function afterState(state: State, wish: Extract<Wish, { do: 'state' }>): Updated {
  const back = at(state)?.view.step;
  if (!back || wish.state === 'mended') return say(state, `${wish.hole} is mended.`);
  if (wish.state === 'pulled' && back.step === 'tight') {
    const advice = toStep(state, {
      step: 'advice',
      hole: wish.hole,
      back: { step: 'tight', here: null, typed: '' },
    });
    return { ...advice, effects: [{ do: 'ring' }] };
  }
  const quiet = `${wish.hole} is noted as ${wish.state}. ${ADVICE[wish.state][0] ?? ''}`;
  if (back.step === 'off') {
    const next = nextOff(state);
    return { state: { ...next.state, quiet }, effects: next.effects };
  }
  return say(
    toStep(state, 'here' in back && back.step !== 'settle' ? { ...back, here: null } : back).state,
    quiet,
  );
}

// ---------------------------------------------------------------- refused

function refused(state: State, why: Refusal, wish: Wish): Updated {
  // What was typed stays where it can be mended.
  if (state.view.screen === 'field') return wrong(state, why.say);
  const here = at(state);
  const row = stepOf(state, 'off-row');
  if (row && !why.overrulable) return toStep(state, { ...row, say: why.say });
  if (!here || !why.overrulable || why.code === 'which') return say(state, why.say);
  if (why.code === 'unsettled') {
    const first = names(toSettle(here.piece))[0];
    if (first !== undefined)
      return say(toStep(state, { step: 'settle', here: first }).state, why.say);
  }
  const stopped = toStep(state, { step: 'stop', wish, refused: why, back: here.view.step });
  return breaks(why) ? { ...stopped, effects: [{ do: 'ring' }] } : stopped;
}
