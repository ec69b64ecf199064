/** A job as one row of the bench. */
import type { Job, PieceNow } from '../job/types.ts';
import { nextStep } from '../plan/next.ts';
import { daysBetween, sayDays } from './parts/days.ts';
import { lastMark } from './parts/job-now.ts';
import type { BenchRow, FileState } from './state.ts';

/** `file` is what the loop opens it by, and stands for the job's name where that cannot be read. */
export function benchRow(file: string, read: FileState, now: string): BenchRow {
  if (read.ok) return jobRow(file, read.job, now);
  const next =
    'unread' in read
      ? read.unread.say
      : read.faults[0]
        ? `line ${read.faults[0].line}: ${read.faults[0].say}`
        : '';
  return { file, job: file, machine: '', stands: 'cannot be read', next };
}

function jobRow(file: string, job: Job, now: string): BenchRow {
  const next = nextStep(job)?.say ?? '';
  const last = lastMark(job);
  const rest = last === null ? 0 : daysBetween(last, now);
  const since = rest > 0 ? ` ${sayDays(rest)}` : '';
  return {
    file,
    job: job.upper.job,
    machine: job.upper.machine ?? '',
    stands: `${standsOf([...job.pieces.values()])}${since}`,
    next,
  };
}

/** In one word, by the piece that is furthest from being done. */
function standsOf(pieces: readonly PieceNow[]): string {
  const any = (where: PieceNow['where']) => pieces.some((p) => p.where === where);
  if (pieces.length === 0) return 'new';
  if (any('off')) return 'coming off';
  if (any('open')) return 'open';
  if (pieces.some((p) => p.where === 'on' && p.holes.length > 0)) return 'going on';
  if (pieces.every((p) => p.where === 'home')) return 'not begun';
  return any('tight') ? 'tight' : 'tested';
}
