/** What the hand should do next: one step, from where the pieces stand. */

import { layersOf } from '../../job/fold/overs.ts';
import { blockers, piecesOver, stillOver } from '../../job/judge/marks/blocked.ts';
import type { Words } from '../../job/truth/said.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import {
  type NextStep,
  type Stepping,
  stepBack,
  stepOff,
  stepOn,
  stepTight,
  type Whose,
} from '../piece/next-step.ts';
import { roundLeft } from '../piece/round-left.ts';

const plain = ({ words: _, ...step }: Stepping): NextStep => step;

/** Null when nothing of the job is on its way: all at home, or all back. */
export function nextStep(job: Job): NextStep | null {
  const step = stepNext(job, 'bolt');
  return step && plain(step);
}

/**
 * The same said of the piece as a whole where many bolts are alike to it: to come out, to be tightened. Which of them
 * is next is worked out when one is at that piece; it takes longer than all the rest.
 */
export function nextWork(job: Job): Omit<NextStep, 'hole'> | null {
  const step = stepNext(job, 'piece');
  return step && plain(step);
}

/** The piece of that step, and its sentence in parts. */
export function workInWords(job: Job): { piece: string; words: Words } | null {
  const step = stepNext(job, 'piece');
  return step && { piece: step.piece, words: step.words ?? [step.say] };
}

function stepNext(job: Job, of: Whose): Stepping | null {
  const pieces = byLastMark(job);
  for (const piece of pieces) {
    const step = stepUnderWay(job, piece, of);
    if (step) return step;
  }
  const down = furtherDown(job, pieces);
  if (down) return stepOff(job, down, of);
  const back = pieces.find((p) => p.where === 'open' && blockers(job, p).length === 0);
  if (back) return stepBack(job, back);
  const untouched = pieces.every((p) => p.where === 'home');
  const first = [...job.pieces.values()].find((p) => !layersOf(job).overs.get(p.spec.key)?.size);
  return untouched && first ? stepOff(job, first, of) : null;
}

/** Of a piece that is neither home nor away. */
function stepUnderWay(job: Job, piece: PieceNow, of: Whose): Stepping | null {
  if (piece.where === 'off') return stepOff(job, overWhenFree(job, piece), of);
  if (piece.where === 'on' && piece.holes.length > 0) return stepOn(job, piece, of);
  return roundLeft(job, piece).length > 0 ? stepTight(job, piece, of) : null;
}

/** The piece itself; where all its bolts are out and something is still over it, that comes off first. */
function overWhenFree(job: Job, piece: PieceNow): PieceNow {
  const seen = new Set([piece]);
  let top = piece;
  while (top.holes.every((h) => h.state === 'out')) {
    const over = stillOver(job, top).find((p) => !seen.has(p));
    if (!over) break;
    seen.add(over);
    top = over;
  }
  return top;
}

/** The piece that was worked on last comes first; the others in the order of the file. */
function byLastMark(job: Job): PieceNow[] {
  const last = new Map<string, number>();
  job.entries.forEach((entry, i) => {
    if (entry.piece !== undefined && job.living.has(entry.id)) last.set(entry.piece, i);
  });
  const at = (piece: PieceNow) => last.get(piece.spec.key) ?? -1;
  return [...job.pieces.values()].sort((a, b) => at(b) - at(a));
}

/** On the way down, the next piece that lies free: untouched, under pieces that are all away. */
function furtherDown(job: Job, byLast: readonly PieceNow[]): PieceNow | null {
  if (byLast.some((p) => p.fitted)) return null;
  const free = [...job.pieces.values()].filter(
    (p) => p.where === 'home' && piecesOver(job, p).length > 0 && stillOver(job, p).length === 0,
  );
  return free[0] ?? waiting(job);
}

/** What still lies over a piece whose other covers are away: that one is on the way down too. */
function waiting(job: Job): PieceNow | null {
  for (const piece of job.pieces.values()) {
    if (piece.where !== 'home') continue;
    const still = stillOver(job, piece);
    if (still.length > 0 && still.length < piecesOver(job, piece).length) {
      return still.find((p) => p.where === 'home') ?? null;
    }
  }
  return null;
}
