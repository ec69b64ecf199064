/** Where the present round of a piece begins in the diary: what was done before belongs to an earlier one. */
import { fold } from '../job/fold.ts';
import type { Job, PieceNow } from '../job/types.ts';
import type { Line, Lines } from './lines.ts';

export interface Round {
  /** Index of the line with which it came off again; −1 in round 1. */
  start: number;
  /** Index of the last line about the piece before that; −1 in round 1. */
  before: number;
}

const FIRST: Round = { start: -1, before: -1 };

/** The present round of each piece. */
export function roundsOf(job: Job, lines: Lines): (piece: string) => Round {
  const again = [...job.pieces.values()].filter((p) => p.round > 1);
  const rounds = new Map(
    again.map((piece) => {
      const own = lines.all.filter((line) => line.piece === piece.spec.key);
      return [piece.spec.key, roundOf(job, piece, own)] as const;
    }),
  );
  return (piece) => rounds.get(piece) ?? FIRST;
}

/** Rounds only grow along the diary: halving finds the first line that is in the last of them. */
function roundOf(job: Job, piece: PieceNow, own: readonly Line[]): Round {
  const { key } = piece.spec;
  const alone = { ...job.upper, pieces: new Map([[key, piece.spec]]), tasks: new Map() };
  const entries = own.map((line) => line.entry);
  const roundAfter = (count: number) =>
    fold(alone, entries.slice(0, count)).pieces.get(key)?.round ?? 1;
  let low = 0;
  let high = own.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (roundAfter(middle) >= piece.round) high = middle;
    else low = middle;
  }
  return { start: own[high - 1]?.index ?? -1, before: own[high - 2]?.index ?? -1 };
}
