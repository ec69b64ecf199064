/** What is in the hand: a kind by its letter, or the kind that has the length read off the rule. */

import type { Hand, HoleNow, Job, PieceNow } from '../../../model/types.ts';
import { readItem, UNKNOWN } from '../../../piece/row.ts';
import { list, meant, type Refused, refuse, wrong } from '../base/verdict.ts';
import { letterOf, usedLetters } from './found.ts';

/** `with: null`: not said what is under the head, so whatever belongs there. */
export interface InHand {
  kind: string;
  with: readonly string[] | null;
  /** Set when only the length was said and no kind of the job has it. */
  length?: number;
}

/** Bolts are measured with a rule at the bench: half a millimetre is the same length. */
const SAME_LENGTH = 0.5;

/** Of several kinds of one length: asked which it is, or with a reason the one that belongs there, else the first. */
export type OfSeveral = 'ask' | 'choose';

export function readHand(
  job: Job,
  piece: PieceNow,
  targets: readonly HoleNow[],
  hand: Hand,
  ofSeveral: OfSeveral,
): InHand | Refused {
  return 'kind' in hand ? byKind(job, hand) : byLength(job, piece, targets, hand.length, ofSeveral);
}

function byKind(job: Job, hand: { kind: string; with?: readonly string[] }): InHand | Refused {
  const item = readItem(hand.kind);
  if (!item)
    return wrong(
      'bad-word',
      `${hand.kind} is no kind: a letter, or a letter with what is under its head (M+clip).`,
    );
  // Nobody told them apart: the same is said of what goes in.
  if (item.kind === UNKNOWN) return { kind: UNKNOWN, with: null };
  const used = usedLetters(job);
  const letter = letterOf(item.kind, job.upper.kinds, used);
  if (!job.upper.kinds.has(letter) && !used.has(letter)) {
    return wrong('no-such-kind', `No kind ${item.kind} in this job.${meant(item.kind, used)}`, {
      kind: item.kind,
    });
  }
  const under = hand.with ?? (item.with.length > 0 ? item.with : null);
  return { kind: letter, with: under };
}

function byLength(
  job: Job,
  piece: PieceNow,
  targets: readonly HoleNow[],
  length: number,
  ofSeveral: OfSeveral,
): InHand | Refused {
  const fits = [...job.upper.kinds.values()]
    .filter((k) => k.length !== null && Math.abs(k.length - length) <= SAME_LENGTH)
    .map((k) => k.letter);
  const here = new Set(piece.holes.map((h) => h.belongs?.kind));
  const near = fits.filter((k) => here.has(k));
  const kinds = near.length > 0 ? near : fits;
  const [only] = kinds;
  if (kinds.length === 1 && only !== undefined) return { kind: only, with: null };
  if (only === undefined) return { kind: `${length} mm`, with: null, length };
  if (ofSeveral === 'choose') {
    const belongs = kinds.find((k) => targets.some((h) => h.belongs?.kind === k));
    return { kind: belongs ?? only, with: null };
  }
  return refuse('which', `${length} mm long are ${list(kinds)}: which is it?`, { kinds });
}
