/** Where the present round of a piece begins in the diary: what was done before belongs to an earlier one. */
import type { Job } from '../../model/types.ts';
import type { Lines } from './lines.ts';

export interface Round {
  /** Index of the line with which it came off again; −1 in round 1. */
  start: number;
  /** Index of the last line about the piece before that; −1 in round 1. */
  before: number;
}

const FIRST: Round = { start: -1, before: -1 };

/** The present round of each piece. */
export function roundsOf(job: Job, lines: Lines): (piece: string) => Round {
  const again = new Map([...job.pieces].filter(([, p]) => p.round > 1));
  if (again.size === 0) return () => FIRST;
  const rounds = new Map<string, Round>();
  const last = new Map<string, number>();
  for (const { piece, index, entry } of lines.all) {
    if (piece === undefined) continue;
    const present = again.get(piece)?.round;
    if (present !== undefined && !rounds.has(piece) && job.rounds.get(entry.id) === present) {
      rounds.set(piece, { start: index, before: last.get(piece) ?? -1 });
    }
    last.set(piece, index);
  }
  return (piece) => rounds.get(piece) ?? FIRST;
}
