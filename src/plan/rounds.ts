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

/** Rounds only grow along the diary: the start is the one line with which the last of them is reached. */
function roundOf(job: Job, piece: PieceNow, own: readonly Line[]): Round {
  const { key } = piece.spec;
  const alone = { ...job.upper, pieces: new Map([[key, piece.spec]]), tasks: new Map() };
  const entries = own.map((line) => line.entry);
  const reached = (count: number) =>
    (fold(alone, entries.slice(0, count)).pieces.get(key)?.round ?? 1) >= piece.round;
  const guess = likelyStart(own);
  const start = reached(guess + 1) && !reached(guess) ? guess : halved(own.length, reached) - 1;
  return { start: own[start]?.index ?? -1, before: own[start - 1]?.index ?? -1 };
}

/** The last time that something came off after something had been put on. */
function likelyStart(own: readonly Line[]): number {
  const back = (line: Line | undefined) => line?.verb === 'tight' || line?.verb === 'fitted';
  const isOff = (line: Line) => line.verb === 'out' || line.verb === 'removed';
  return own.findLastIndex((line, i) => isOff(line) && back(own.slice(0, i).findLast(counts)));
}

function counts({ verb }: Line): boolean {
  return verb !== 'note' && verb !== 'state' && verb !== 'settle';
}

/** The least number up to `high` that reaches it. */
function halved(high: number, reaches: (count: number) => boolean): number {
  let [low, top] = [0, high];
  while (top - low > 1) {
    const middle = (low + top) >> 1;
    if (reaches(middle)) top = middle;
    else low = middle;
  }
  return top;
}
