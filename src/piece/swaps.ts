/**
 * Which wrong bolt would go into a hole without anybody noticing, and what it would break: told once, when the piece
 * comes off, so that its bolts are laid out apart.
 */

import type { Fit, FitVerdict } from '../bolt/fit/fit.ts';
import { strongerBy, threadsAgree } from '../bolt/fit/same.ts';
import { mm } from '../bolt/read/numbers.ts';
import { lookAlikes } from '../bolt/thread/lookalikes.ts';
import type { Kind } from '../model/types.ts';
import { list } from '../model/words.ts';
import { hardToMiss } from './hard.ts';
import { compareHoles } from './names.ts';
import { byLetter } from './words.ts';

export interface SwapHole {
  name: string;
  /** Kind that belongs in it; null when nobody knows, and then nothing is said of it. */
  takes: string | null;
}

export interface Swap {
  hole: string;
  kind: string;
  verdict: FitVerdict;
  /** What it would break, in a sentence. */
  danger: string;
  /** Nobody would see it: it starts, goes in, and its head comes down. */
  unnoticed: boolean;
}

export interface SwapInput {
  holes: readonly SwapHole[];
  /** Kinds that lie in the same tray; the right one of a hole may be among them. */
  tray: readonly string[];
  kinds: ReadonlyMap<string, Kind>;
  fitOf(kind: string, hole: string): Fit | null;
}

/** What ruins a thread or a part comes before what only holds badly. */
const BREAKS: readonly FitVerdict[] = [
  'wrong-thread',
  'short',
  'bottoms',
  'through',
  'shank',
  'longer',
  'wrong-head',
  'shorter',
];

/** Known to hold here, longer or shorter: then only its own hole goes short. */
function holdsHere(fit: Fit): boolean {
  return fit.sure && (fit.verdict === 'longer' || fit.verdict === 'shorter');
}

/** Reaches no thread: it never bites, and that is noticed. */
function bitesNothing(fit: Fit): boolean {
  return fit.engagement !== null && fit.engagement.mm <= 0;
}

function dangerOf(fit: Fit, takes: Kind, holds: Kind): string {
  if (holdsHere(fit)) return 'It holds here; but its own hole is left with a bolt that may not.';
  switch (fit.verdict) {
    case 'wrong-thread':
      return 'It ruins the thread of the case.';
    case 'short':
      return bitesNothing(fit)
        ? 'It does not reach the thread, and holds nothing.'
        : 'Its few threads pull out of the case at full torque.';
    case 'bottoms':
      return 'It meets the bottom before it clamps: the joint stays loose, and the case cracks or the bolt breaks.';
    case 'through':
      return `It sticks out ${mm(fit.sticksOut ?? 0)} behind, into whatever lies there.`;
    case 'shank':
      return 'Its plain shank jams in the mouth of the thread before it clamps.';
    case 'longer':
      return 'It may bottom before it clamps, or stick out behind.';
    case 'shorter':
      return 'It has less thread to hold with, which may pull out at full torque.';
    default:
      return (strongerBy(holds, takes) ?? 0) < 0
        ? 'It is weaker than the right one, and may break at its torque.'
        : 'Its head does not seat as the right one does.';
  }
}

/** It starts, goes in, and its head comes down on the same tool. */
function isUnnoticed(fit: Fit, takes: Kind, holds: Kind): boolean {
  if (fit.verdict === 'shank' || bitesNothing(fit)) return false;
  const alike = { ...holds, thread: takes.thread };
  const starts = threadsAgree(holds, takes) !== false || lookAlike(takes, holds);
  return starts && hardToMiss(takes, alike, [fit]) <= 2;
}

function lookAlike(takes: Kind, holds: Kind): boolean {
  const sameHand = takes.leftHand === holds.leftHand;
  return sameHand && lookAlikes([takes.thread ?? '', holds.thread ?? '']).length > 0;
}

type Ranked = Swap & { rank: number; amount: number };

function rankOf(fit: Fit): number {
  const rank = fit.verdict === null ? -1 : BREAKS.indexOf(fit.verdict);
  return holdsHere(fit) ? BREAKS.length : rank;
}

/** How bad among its like: the less that bites, the more that is too much. */
function amountOf(fit: Fit): number {
  if (fit.verdict === 'short') return -(fit.engagement?.mm ?? 0);
  return Math.abs(fit.bottomsBy ?? fit.sticksOut ?? fit.byLength ?? 0);
}

function swap(hole: SwapHole, kind: string, input: SwapInput): Ranked[] {
  const [takes, holds] = [input.kinds.get(hole.takes ?? ''), input.kinds.get(kind)];
  const fit = input.fitOf(kind, hole.name);
  if (!takes || !holds || kind === hole.takes || !fit) return [];
  const { verdict } = fit;
  if (verdict === null || verdict === 'right' || verdict === 'same') return [];
  return [
    {
      ...{ hole: hole.name, kind, verdict, danger: dangerOf(fit, takes, holds) },
      unnoticed: isUnnoticed(fit, takes, holds),
      ...{ rank: rankOf(fit), amount: amountOf(fit) },
    },
  ];
}

function worstFirst(a: Ranked, b: Ranked): number {
  return (
    Number(b.unnoticed) - Number(a.unnoticed) ||
    a.rank - b.rank ||
    b.amount - a.amount ||
    compareHoles(a.hole, b.hole) ||
    byLetter(a.kind, b.kind)
  );
}

/**
 * Every kind of the tray in every hole where it does not belong, worst first: those that would go unnoticed, of these
 * the ones that ruin most. What is the same bolt under another letter is left out. Order of holes and kinds changes nothing.
 */
export function swaps(input: SwapInput): Swap[] {
  const kinds = [...new Set(input.tray)];
  const all = input.holes.flatMap((hole) => kinds.flatMap((kind) => swap(hole, kind, input)));
  return all.sort(worstFirst).map(({ rank: _r, amount: _a, ...told }) => told);
}

/** The worst of them in a sentence, over all holes that it concerns; null when none would go unnoticed. */
export function sayWorst(list_: readonly Swap[], holes: readonly SwapHole[]): string | null {
  const worst = list_[0];
  if (!worst?.unnoticed) return null;
  const takes = new Map(holes.map((h) => [h.name, h.takes]));
  const like = list_.filter(
    (s) =>
      s.unnoticed &&
      s.kind === worst.kind &&
      s.verdict === worst.verdict &&
      takes.get(s.hole) === takes.get(worst.hole),
  );
  const where = list(like.map((s) => s.hole).sort(compareHoles));
  return `Mind ${worst.kind} and ${takes.get(worst.hole)}: ${worst.kind} would go into ${where} unnoticed. ${worst.danger}`;
}
