/**
 * Which piece was at hand at a moment, by the diary: to that piece belongs a photograph that was taken then. Times are
 * seconds since 1970. Where two pieces come into question nothing is guessed.
 */
import { secondsOf } from '../../model/time.ts';
import type { Job, Verb } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { diaryLines } from '../order/lines.ts';

/** So long after a mark somebody may still be at the same piece, and so long before one already be at the next. */
const AFTER = 2 * 3600;
const BEFORE = 30 * 60;
/** Between two pieces the nearer mark counts, if the other is so many times as far. */
const CLEARLY = 3;

export interface AtHand {
  /** Null: it cannot be told. */
  piece: string | null;
  /** Pieces that come into question, the nearest first. */
  candidates: string[];
}

interface Mark {
  piece: string;
  verb: Verb;
  seconds: number;
}

/** The marks of a job by their times, once for many pictures. */
export function handled(job: Job): Mark[] {
  return diaryLines(job)
    .all.flatMap(({ piece, verb, at }) => {
      const seconds = secondsOf(at);
      const counts = piece !== undefined && job.pieces.has(piece) && verbRow(verb).atHand !== null;
      return counts && Number.isFinite(seconds) ? [{ piece, verb, seconds }] : [];
    })
    .sort((a, b) => a.seconds - b.seconds);
}

export function atHand(marks: readonly Mark[], seconds: number): AtHand {
  const last = marks.findLast((mark) => mark.seconds <= seconds);
  const next = marks.find((mark) => mark.seconds > seconds);
  const since = last && seconds - last.seconds <= AFTER ? seconds - last.seconds : null;
  const until = next && next.seconds - seconds <= BEFORE ? next.seconds - seconds : null;
  const only = (piece: string): AtHand => ({ piece, candidates: [piece] });
  if (!last || since === null) {
    if (next && until !== null) return only(next.piece);
    return { piece: null, candidates: [] };
  }
  if (!next || until === null || next.piece === last.piece) return only(last.piece);
  if (verbRow(last.verb).atHand !== 'last') return only(last.piece);
  if (since > CLEARLY * until) return only(next.piece);
  if (until > CLEARLY * since) return only(last.piece);
  const nearer = since <= until ? [last.piece, next.piece] : [next.piece, last.piece];
  return { piece: null, candidates: nearer };
}
