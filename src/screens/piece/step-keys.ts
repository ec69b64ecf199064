/** Keys that several steps of a piece have. */
import { sayTrouble } from '../../job/fold/say-hole.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, Trouble } from '../../model/types.ts';
import { gatesOn } from '../../plan/gates/gate-now.ts';
import type { AnswerKind } from '../../plan/piece/answers.ts';
import { stillIn } from '../../plan/piece/piece-now.ts';
import { leftOver } from '../../plan/piece/tray.ts';
import { ask } from '../ask/field.ts';
import { openGate } from '../base/enter.ts';
import type { Key } from '../base/key.ts';
import { type At, hereOf, holeNamed, requestMark, say, stay, toStep } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import type { OnHoles, OnPiece } from './step.ts';
import { CHOICES } from './troubles.ts';

// ---------------------------------------------------------------- troubles

/** Which trouble is marked first: what is noted; else a pulled thread while tightening, a stuck bolt otherwise. */
function likely({ step, piece }: OnPiece, hole: string): number {
  const noted = holeNamed(piece, hole)?.trouble ?? null;
  const wanted: Trouble = noted ?? (step.step === 'tight' ? 'pulled' : 'stuck');
  return Math.max(
    0,
    CHOICES.findIndex((c) => c.trouble === wanted),
  );
}

export const troubleKey: Key<OnHoles> = {
  id: 'trouble',
  presses: ['-', '!'],
  label: 'trouble',
  help: 'something is wrong with the lit bolt or hole: stuck, stripped, broken, and how it is mended',
  holds: ({ lit }) => lit !== null,
  does: (here) => {
    const { state, step, lit } = here;
    if (lit === null) return say(state, 'Which hole? Its number first.');
    return toStep(state, { step: 'trouble', hole: lit, choice: likely(here, lit), back: step });
  },
};

/** The hole that is pointed at, where something is wrong with it. */
function inTrouble({ piece, step }: OnPiece): HoleNow | null {
  const hole = holeNamed(piece, hereOf(step));
  return hole?.trouble ? hole : null;
}

/** With its bolt out it is asked how; till then one is led to its bolt. */
export function mend(here: OnPiece, hole: HoleNow): Updated {
  const { state, key, step } = here;
  const ends = hole.trouble === null ? null : troubleOf(hole.trouble).ends;
  if (hole.trouble !== null && ends !== null) {
    const off = { step: 'off', here: hole.name, typed: '', hand: '' } as const;
    // Where bolts come out, o says that this one is.
    const there = hole.state === 'home' && step.step === 'look' ? toStep(state, off).state : state;
    return say(there, `${hole.name}: ${sayTrouble(hole.trouble)}. ${ends}`);
  }
  if (hole.trouble !== 'pulled') {
    return requestMark(state, { do: 'state', piece: key, hole: hole.name, state: 'mended' });
  }
  if (hole.state === 'out') return ask(state, { ask: 'mended', piece: key, hole: hole.name });
  const quiet = `A thread is mended with its bolt out: take ${hole.name} out first, then m.`;
  return say(toStep(state, { step: 'off', here: hole.name, typed: '', hand: '' }).state, quiet);
}

// A letter that is a kind of this job is in the hand first: so each of these has a second press.
export const mendedKey: Key<OnPiece> = {
  id: 'mended',
  presses: ['m', ';'],
  // Of a bolt that is in nothing is mended.
  label: (here) => {
    const trouble = inTrouble(here)?.trouble ?? null;
    return trouble !== null && troubleOf(trouble).ends !== null ? '' : 'mended';
  },
  help: 'what was wrong with the lit hole is mended: how it was done is asked',
  holds: (here) => inTrouble(here) !== null,
  does: (here) => {
    const hole = inTrouble(here);
    return hole === null ? stay(here.state) : mend(here, hole);
  },
};

/** What to do about it, as when it was noted. */
export const adviceKey: Key<OnPiece> = {
  id: 'advice',
  presses: ['h', '`'],
  label: 'what to do',
  help: 'what to do about the trouble of the lit hole, step by step',
  holds: (here) => inTrouble(here) !== null,
  does: (here) => {
    const { state, step } = here;
    const hole = inTrouble(here)?.name;
    if (hole === undefined) return stay(state);
    return toStep(state, { step: 'advice', hole, back: step });
  },
};

// ---------------------------------------------------------------- the tray and the heads

/** `text`: already typed. */
export function askAbout(
  { state, key }: At & { state: State },
  about: AnswerKind,
  text = '',
): Updated {
  return ask(state, { ask: about, piece: key, say: null }, text);
}

const hasSome = ({ piece }: At, states: readonly HoleNow['state'][]): boolean =>
  piece.holes.some((h) => states.includes(h.state));

export const someIn = (here: At): boolean => hasSome(here, ['in', 'tight']);

export const leftKey: Key<OnPiece> = {
  id: 'left',
  presses: ['l', 'delete'],
  // At the end of putting in it is what one does next; before that it is in the list of keys.
  label: (here) =>
    leftOver(here.piece) || (here.step.step === 'look' && someIn(here)) ? 'left over' : '',
  help: 'say what is left in the tray: which hole may hold the wrong bolt',
  // Some bolt of it has been out.
  holds: (here) => hasSome(here, ['out', 'in', 'tight']),
  does: (here) => askAbout(here, 'left', leftOver(here.piece)?.typed ?? ''),
};

export const heightsKey: Key<OnPiece> = {
  id: 'heights',
  presses: ['d', 'home'],
  label: ({ step }) => (step.step === 'look' ? 'heights' : ''),
  help: 'heights of the heads, dropped in and not turned: which bolt may be the wrong one',
  // Heads can still be looked at before they are down.
  holds: (here) => hasSome(here, ['out', 'in']),
  does: (here) => askAbout(here, 'heights'),
};

// ---------------------------------------------------------------- off

export const nothingIn = ({ piece }: At): boolean => stillIn(piece).length === 0;

export const asideKey: Key<OnPiece> = {
  id: 'aside',
  // `a` is all of them, wherever it is a key.
  presses: ['v'],
  label: 'moved aside',
  help: 'out of the way, still connected',
  holds: (here) => nothingIn(here) && here.piece.away === 'no',
  does: ({ state, key }) => requestMark(state, { do: 'aside', piece: key }),
};

export const gatesKey: Key<OnPiece> = {
  id: 'gates',
  presses: ['g'],
  label: '',
  help: 'what is to be seen to here, one by one: tick, strike, add',
  // It is about to be pried off, or it lies away.
  holds: (here) => (here.step.step === 'off-count' ? nothingIn(here) : here.piece.away !== 'no'),
  does: ({ state, step, job, piece }) => {
    if (step.step === 'off-count') return openGate(state, 'prying', 'back');
    const [first] = gatesOn(job, piece, state.now, []);
    return first === undefined ? openGate(state, 'sealing', 'back') : openGate(state, first, 'on');
  },
};
