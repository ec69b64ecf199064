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
  if (again.length === 0) return () => FIRST;
  const byPiece = Map.groupBy(lines.all, (line) => line.piece);
  const rounds = new Map(
    again.map((piece) => {
      const own = byPiece.get(piece.spec.key) ?? [];
      return [piece.spec.key, roundOf(job, piece, own)] as const;
    }),
  );
  return (piece) => rounds.get(piece) ?? FIRST;
}

function roundOf(job: Job, piece: PieceNow, own: readonly Line[]): Round {
  const starts = possibleStarts(own);
  // As many as there were rounds after the first: each of them began one.
  const start =
    starts.length === piece.round - 1 ? (starts.at(-1) ?? 0) : foldedStart(job, piece, own);
  return { start: own[start]?.index ?? -1, before: own[start - 1]?.index ?? -1 };
}

/** Something comes off, and since the last time that something did, something was tightened or put on. */
function possibleStarts(own: readonly Line[]): number[] {
  const starts: number[] = [];
  let back = false;
  for (const [i, { verb }] of own.entries()) {
    if (verb === 'tight' || verb === 'fitted' || verb === 'in') back = true;
    if (verb !== 'out' && verb !== 'removed') continue;
    if (back) starts.push(i);
    back = false;
  }
  return starts;
}

/** Rounds only grow along the diary: halving finds the first line that is in the last of them. */
function foldedStart(job: Job, piece: PieceNow, own: readonly Line[]): number {
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
  return high - 1;
}
