/** Where the marks of a piece lead, in whichever of its steps they were made; and what a refusal leads to. */

import { troubleOf } from '../../model/states/troubles.ts';
import type { Job, PieceNow, Refusal, Wish } from '../../model/types.ts';
import { inPlace } from '../../model/words.ts';
import { adviceOf } from '../../plan/care/trouble-advice.ts';
import { fingerTight } from '../../plan/order/job-now.ts';
import { hurtHoles } from '../../plan/order/needed.ts';
import {
  fitting,
  names,
  onlyStuckLeft,
  passUnderWay,
  stillIn,
  toFill,
  toSettle,
} from '../../plan/piece/piece-now.ts';
import { leftOver, sharesTray } from '../../plan/piece/tray.ts';
import { sortsOf } from '../../plan/tests/disturbed.ts';
import { typedHand } from '../../plan/typed/hand.ts';
import { ask } from '../ask/field.ts';
import { LOOK, OFF, readFirst, TIGHT, toJob, toSettleStep } from '../base/enter.ts';
import { at, holeNamed, say, stay, stepNow, toStep } from '../base/moves.ts';
import { NOTED } from '../base/noted.ts';
import type { After, MadeMark, WishTo } from '../base/screen.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
import { list, many, sayItem } from '../kit/words.ts';
import { afterUndo } from './after-undo.ts';

export const ON_A_PIECE = {
  ...NOTED,
  out: nextOff,
  off: moved,
  aside: moved,
  on: moved,
  in: nextOn,
  tight: nextTight,
  settle: afterSettled,
  state: afterTrouble,
  undo: afterUndo,
  write: afterWritten,
} satisfies After;

// ---------------------------------------------------------------- off

/** To the next bolt; after the last one, or after a whole row, to the count. */
function nextOff(state: State, made?: MadeMark<WishTo<'out'>>): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const { piece } = here;
  const [hole = null, ...others] = made?.wish.holes ?? [];
  if (hole !== null && others.length === 0 && holeNamed(piece, hole)?.trouble === 'pulled') {
    // The piece stays on: only this one came out, to be mended.
    const quiet = `${hole} is out. m when its thread is mended.`;
    return toStep({ ...state, quiet }, { ...LOOK, here: hole } as PieceStep);
  }
  const all = stepNow(state, 'off-row') !== null;
  if (!all && !onlyStuckLeft(piece)) return toStep(state, OFF);
  const counted = toStep(state, { step: 'off-count' });
  return stillIn(piece).length === 0 ? counted : { ...counted, effects: [{ do: 'ring' }] };
}

/** A piece that was just named is on its way off; its bolts are out when they are. */
function afterWritten(state: State, made: MadeMark<WishTo<'write'>>): Updated {
  const here = at(state);
  if (!here || made.wish.key !== 'bolts' || here.piece.where !== 'home') return NOTED.write(state);
  const n = here.piece.holes.length;
  const told = n === 1 ? 'One bolt, and it is in.' : `${many(n, 'bolt')}, all of them in.`;
  // What is to be made safe comes before its first bolt, however it was named.
  return readFirst({ ...state, quiet: told }, 'removal', OFF);
}

/** On to the next hole that differs; where one was only put right, one stays at the piece. */
function afterSettled(state: State, { wish }: MadeMark<WishTo<'settle'>>): Updated {
  const hole = stepNow(state, 'look') && holeNamed(at(state)?.piece ?? null, wish.hole);
  if (!hole?.belongs) return toSettleStep(state);
  return say(state, `${hole.name} takes ${sayItem(hole.belongs)}.`);
}

type Moved = Extract<Wish, { do: 'off' | 'aside' | 'on' }>;

function moved(state: State, { wish }: MadeMark<Moved>): Updated {
  const now = say(toJob(state).state, movedSaid(state, wish));
  return wish.do === 'on' ? now : askRuns(now, wish.piece);
}

/** How a hose or a cable runs is asked while it is in the hand, if the file does not say it. */
function askRuns(done: Updated, piece: string): Updated {
  const now = done.state.open?.job.pieces.get(piece);
  const said = now && (now.spec.routes.length > 0 || now.spec.marks.length > 0);
  if (!now || now.holes.length > 0 || said || now.round > 1 || !isLaid(now)) return done;
  const asks = { ask: 'write', piece, key: 'routes', more: [], say: null, runs: true } as const;
  return ask(done.state, asks);
}

/** What is laid along a way and clipped: how a wheel ran nobody can say. */
function isLaid({ spec }: PieceNow): boolean {
  return sortsOf(spec).some((sort) => sort === 'hose' || sort === 'cable' || sort === 'wiring');
}

function movedSaid(state: State, wish: Moved): string {
  const piece = state.open?.job.pieces.get(wish.piece);
  if (!piece) return '';
  const { name } = piece.spec;
  if (wish.do === 'on') return `${name} is back on.`;
  if (wish.do === 'aside') return `${name} is moved aside.`;
  const n = piece.holes.length;
  const where = piece.tray === null ? '' : ` ${inPlace(piece.tray)}`;
  // A stump in its hole, and a hole that was empty, put no bolt into the tray.
  const lies = piece.holes.filter(
    (h) => h.state === 'out' && (h.trouble === null || troubleOf(h.trouble).inTray),
  );
  const out = lies.length;
  const shared = state.open ? sharesTray(state.open.job, piece) : null;
  const also = shared === null ? '' : ` ${shared}`;
  return n === 0 ? `${name} is off.` : `${name} is off, ${out} of ${n} bolts${where}.${also}`;
}

// ---------------------------------------------------------------- on and tight

/**
 * The same hand while it still belongs somewhere, else an empty hand. At the end one more press must not mark a
 * bolt as tight, so the piece is looked at in between.
 */
function nextOn(state: State): Updated {
  const here = at(state);
  const step = stepNow(state, 'on');
  if (!here || !step) return stay(state);
  if (toFill(here.piece).length === 0) {
    const n = fingerTight(here.piece).length;
    const hurt = hurtHoles(here.piece);
    const but = hurt.length === 0 ? '' : ` but ${list(names(hurt))}`;
    const over = leftOver(here.piece);
    const left = over === null ? '' : ` ${over.say} l says more.`;
    return toStep({ ...state, quiet: `All in${but}, ${n} of them by fingers only.${left}` }, LOOK);
  }
  const fits = fitting(here.job, here.piece, typedHand(step.hand, here.job));
  const hand = fits.length > 0 ? step.hand : '';
  return toStep(state, { ...step, here: null, typed: '', hand, fresh: false });
}

/**
 * The next bolt, or tight. Between two passes the piece is looked at: the wrench is set anew, and one press too
 * many must not count for the next pass.
 */
function nextTight(state: State, { before }: MadeMark): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const { kinds } = here.job.upper;
  const now = passUnderWay(here.piece, kinds);
  if (now === null) {
    const bad = here.piece.holes.filter((h) => h.trouble !== null);
    const quiet = bad.length === 0 ? null : `Tight but for ${list(names(bad))}.`;
    return toStep({ ...state, quiet }, LOOK);
  }
  const was = at(before);
  const pass = was && passUnderWay(was.piece, was.job.upper.kinds)?.pass.name;
  if (!pass || pass === now.pass.name) return toStep(state, TIGHT);
  return toStep({ ...state, quiet: `Pass ${pass}: all bolts are done.` }, LOOK);
}

// ---------------------------------------------------------------- troubles

function afterTrouble(state: State, { wish }: MadeMark<WishTo<'state'>>): Updated {
  const back = at(state)?.view.step;
  if (wish.state === 'mended' && stepNow(state, 'off')) {
    // It was taken out to be mended: the next thing is to put its bolt in.
    return say(toStep(state, LOOK).state, mendedSaid(wish.hole));
  }
  if (!back || wish.state === 'mended') return say(state, mendedSaid(wish.hole));
  if (wish.state === 'pulled' && (back.step === 'tight' || back.step === 'look')) {
    const to: PieceStep =
      back.step === 'tight' ? TIGHT : ({ ...LOOK, here: wish.hole } as PieceStep);
    const advice = toStep(state, { step: 'advice', hole: wish.hole, back: to });
    return { ...advice, effects: [{ do: 'ring' }] };
  }
  const spec = at(state)?.piece.spec;
  const advice = spec ? adviceOf(spec, wish.state)[0] : undefined;
  const quiet = `${wish.hole} is noted as ${wish.state}. ${advice ?? ''}`;
  if (back.step === 'off') {
    const next = nextOff(state);
    return { state: { ...next.state, quiet }, effects: next.effects };
  }
  const step = 'here' in back && back.step !== 'settle' ? { ...back, here: null } : back;
  return say(toStep(state, step).state, quiet);
}

function mendedSaid(hole: string): string {
  return `${hole} is mended: its bolt goes in, and all are gone round again.`;
}

// ---------------------------------------------------------------- refused

/** Refusals of what would break a casting, a thread, a bolt or what turns. Nothing else rings. */
const BREAKS: readonly string[] = [
  'wrong-bolt',
  'still-in',
  'inside',
  'out-of-limit',
  'no-reading',
  'would-break',
];

/** A part that is missing is STOP too: nobody opens the joint again for it. */
export function breaks({ code, data }: Refusal, job: Job): boolean {
  const by = code === 'blocked' && Array.isArray(data.by) ? data.by : [];
  return BREAKS.includes(code) || by.some((key) => job.upper.buys.has(key) && !job.pieces.has(key));
}

/** What can be overruled becomes STOP or a question; an unsettled hole is shown first; all else is said quietly. */
export function refusedOnPiece(state: State, why: Refusal, wish: Wish): Updated {
  const here = at(state);
  if (!here || !why.overrulable || why.code === 'which') return say(state, why.say);
  const on = stepNow(state, 'on');
  // Of what is in the hand only such holes are left: the first of them is lit.
  if (why.code === 'not-under') {
    return say(on ? toStep(state, { ...on, here: null }).state : state, why.say);
  }
  if (why.code === 'unsettled') {
    const first = names(toSettle(here.piece))[0];
    if (first !== undefined)
      return say(toStep(state, { step: 'settle', here: first }).state, why.say);
  }
  const stopped = toStep(state, { step: 'stop', wish, refused: why, back: here.view.step });
  return breaks(why, here.job) ? { ...stopped, effects: [{ do: 'ring' }] } : stopped;
}
