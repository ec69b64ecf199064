/** What "not so here" is about: the texts of the file that are in sight, the likely one first. */
import type { KeysWith } from '../../model/keys/key-row.ts';
import type { TASK_KEYS } from '../../model/keys/keys.ts';
import type { Job } from '../../model/types.ts';
import { type KnownRow, knownRows, type Of } from '../../plan/known/rows.ts';
import { keysToRead } from '../../plan/known/to-read.ts';

export interface InQuestion {
  of: Of;
  /** Empty where nothing of it is printed. */
  rows: readonly KnownRow[];
}

/** What somebody most likely reads in a task as wrong, from 1. */
const LIKELY: Readonly<Record<KeysWith<typeof TASK_KEYS, { corrected: true }> | 'step', number>> = {
  limit: 1,
  step: 2,
  when: 3,
  takes: 4,
  note: 5,
};

/** Null for a test that does not stand in the file. */
export function inTask(job: Job, task: string): InQuestion | null {
  if (!job.tasks.has(task)) return null;
  const of = { task };
  const rank = (r: KnownRow) => LIKELY[r.figure?.what as keyof typeof LIKELY];
  return { of, rows: knownRows(job, of).toSorted((a, b) => rank(a) - rank(b)) };
}

/** What a piece has of figures; null for one that the file does not know. */
function figuresOf(job: Job, piece: string): { of: Of; figures: KnownRow[] } | null {
  if (!job.pieces.has(piece)) return null;
  const of = { piece };
  return { of, figures: knownRows(job, of).filter((r) => r.figure !== null) };
}

/** Of the piece as it stands: of the lit hole where that has some, else the torque and then the rest. */
export function inPiece(job: Job, piece: string, hole: string | null): InQuestion | null {
  const found = figuresOf(job, piece);
  if (!found) return null;
  const { of, figures } = found;
  const own = figures.filter((r) => r.figure?.hole === hole);
  if (hole !== null && own.length > 0) return { of, rows: own };
  const torque = figures.filter((r) => r.figure?.what === 'torque' && !r.figure.hole);
  return { of, rows: [...torque, ...figures.filter((r) => !torque.includes(r))] };
}

/** As they stand to be read before this way. */
export function inReading(job: Job, piece: string, way: 'removal' | 'fitting'): InQuestion | null {
  const found = figuresOf(job, piece);
  if (!found) return null;
  const rows = keysToRead(way).flatMap((what) =>
    found.figures.filter(
      ({ figure }) =>
        figure?.what === what && figure.hole === undefined && (figure.way ?? way) === way,
    ),
  );
  return { of: found.of, rows };
}
