/** When a key holds, and what it is called just now. */

import type { PassSpec } from '../../model/types.ts';
import { litHole } from '../base/lit.ts';
import { at, hereOf, holeNamed, stepOf } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { readHand } from '../now/hand.ts';
import { isAllBack } from '../now/job-now.ts';
import { passNow, stillIn, toFill, unknownOnly } from '../now/piece-now.ts';
import { comesAlong, WAY_LABELS, wayOf } from '../now/way.ts';

export function forthLabel(state: State): string {
  const here = at(state);
  return here ? WAY_LABELS[wayOf(here.job, here.piece)] : '';
}

export function hasPieces(state: State): boolean {
  const job = state.open?.job;
  return (job?.pieces.size ?? 0) + (job?.tasks.size ?? 0) > 0;
}

export function addLabel(state: State): string {
  return hasPieces(state) ? 'another piece' : 'say what comes off first';
}

/** Every bolt is out, or there is none. */
export function nothingIn(state: State): boolean {
  const here = at(state);
  return here !== null && stillIn(here.piece).length === 0;
}

export function someInside(state: State): boolean {
  return !nothingIn(state);
}

export function handSaid(state: State): boolean {
  const here = at(state);
  const hand = stepOf(state, 'on')?.hand ?? '';
  const read = here ? readHand(hand, here.job) : null;
  if (here && hand === '' && unknownOnly(here.piece)) return true;
  return read?.is === 'kind' || read?.is === 'length';
}

/** `all M in`. */
export function allLabel(state: State): string {
  const here = at(state);
  const read = here ? readHand(stepOf(state, 'on')?.hand ?? '', here.job) : null;
  if (read?.is === 'kind') return `all ${read.item.kind} in`;
  return read?.is === 'length' ? `all ${read.mm} mm in` : 'all in';
}

export function canForce(state: State): boolean {
  return stepOf(state, 'stop')?.refused.overrulable === true;
}

export function dropLabel(state: State): string {
  const code = stepOf(state, 'stop')?.refused.code;
  return code === 'wrong-bolt' ? 'another bolt' : 'leave it';
}

/** The hole to be settled has a claim of the file, or a find. */
export function differs(state: State, what: 'claim' | 'found'): boolean {
  const step = stepOf(state, 'settle');
  const hole = holeNamed(at(state)?.piece ?? null, step?.here ?? null);
  return hole !== null && hole[what] !== null && hole.conflict === null;
}

export function hereIsTrouble(state: State): boolean {
  const here = at(state);
  if (!here) return false;
  return (holeNamed(here.piece, hereOf(here.view.step))?.trouble ?? null) !== null;
}

/** The next right thing is to take it off, and its bolts can be typed as a row. */
export function comesOff(state: State): boolean {
  const here = at(state);
  return here !== null && wayOf(here.job, here.piece) === 'out';
}

export function isOn(state: State): boolean {
  const here = at(state);
  return here !== null && (here.piece.away === 'no' || stillIn(here.piece).length > 0);
}

export function offLabel(state: State): string {
  const here = at(state);
  if (!here) return '';
  const way = wayOf(here.job, here.piece);
  if (comesAlong(here.piece)) return 'off by itself';
  if (way === 'done') return 'take it off again';
  return way === 'row' ? 'off, no bolts' : '';
}

/** A hole is lit, by the step or by pointing at it. */
export function isPointed(state: State): boolean {
  const here = at(state);
  return here !== null && litHole(here) !== null;
}

export function backLabel(state: State): string {
  const { screen } = state.view;
  const typed = screen === 'field' || screen === 'draw' || stepOf(state, 'off-row') !== null;
  if (screen === 'unsaved') return 'give it up';
  return typed || stepOf(state, 'trouble') !== null ? 'leave it' : '';
}

export function goesOn(state: State): boolean {
  const here = at(state);
  return here !== null && (here.piece.away !== 'no' || toFill(here.piece).length > 0);
}

/** Some bolt of it has been out: there is a tray to count, and heads to look at. */
export function someMoved(state: State): boolean {
  const holes = at(state)?.piece.holes ?? [];
  return holes.some((h) => h.state === 'out' || h.state === 'in' || h.state === 'tight');
}

/** Heads can still be looked at before they are down. */
export function someLoose(state: State): boolean {
  const holes = at(state)?.piece.holes ?? [];
  return holes.some((h) => h.state === 'out' || h.state === 'in');
}

/** At the end of putting in it is what one does next; before that it is in the list of keys. */
export function leftLabel(state: State): string {
  const here = at(state);
  const looks = stepOf(state, 'look') !== null;
  return looks && here !== null && someIn(state) ? 'left over' : '';
}

export function heightsLabel(state: State): string {
  return stepOf(state, 'look') !== null ? 'heights' : '';
}

/** What the hand felt, in the words of the pass. */
export function clickLabel(state: State): string {
  const pass = passHere(state);
  const [kind] = (pass?.name ?? '').split(' ');
  if (kind === 'snug') return 'snug';
  if (kind === 'final') return 'holds';
  if (kind === 'loosen') return 'turned back';
  if (kind === 'printed') return 'all of it done';
  return kind === 'angle' && pass?.angle ? `turned ${pass.angle}\u00b0` : 'clicked';
}

function passHere(state: State): PassSpec | null {
  const here = at(state);
  return here ? (passNow(here.piece, here.job.upper.kinds)?.pass ?? null) : null;
}

/** Once round at the end, a bolt that turns on is what is looked for. */
export function pulledLabel(state: State): string {
  return passHere(state)?.name.startsWith('final') ? 'keeps turning' : 'turns without tightening';
}

export function someIn(state: State): boolean {
  const holes = at(state)?.piece.holes ?? [];
  return holes.some((h) => h.state === 'in' || h.state === 'tight');
}

export function someToFill(state: State): boolean {
  const here = at(state);
  return here !== null && toFill(here.piece).length > 0;
}

export function goesAside(state: State): boolean {
  return nothingIn(state) && at(state)?.piece.away === 'no';
}

/** It is about to be pried off, or it lies away. */
export function hasGate(state: State): boolean {
  const here = at(state);
  if (!here) return false;
  return stepOf(state, 'off-count') ? nothingIn(state) : here.piece.away !== 'no';
}

/** Said once all is back. */
export function startLabel(state: State): string {
  return state.open && isAllBack(state.open.job) ? 'before the first start' : '';
}

export function quitLabel(state: State): string {
  const { screen } = state.view;
  return screen === 'bench' || screen === 'job' ? 'leave' : '';
}
