/** What earlier jobs on this machine know of a piece of this job, or of all of them. */
import type { Job, PieceNow } from '../model/types.ts';
import { sayDate } from '../plan/time/days.ts';
import type { Same } from './machine.ts';
import { type How, matchOf } from './pieces.ts';
import { quietLine, quietOfMachine } from './quiet.ts';
import { type Known, offDayOf, remember } from './remember.ts';

/** An earlier job, as this room takes it. */
export interface Before {
  file: string;
  job: Job;
  same: Same;
  day: string | null;
}

export interface LastTime extends Known {
  /** Key of this job's piece; null for what is about the whole job. */
  mine: string | null;
  /** Key of the earlier piece. */
  theirs: string | null;
  how: How | null;
  file: string;
  job: string;
}

/** An earlier piece that may be this one: nothing of it is told before a person says so. */
export interface Maybe {
  piece: string;
  theirs: string;
  name: string;
  holes: number;
  file: string;
  job: string;
}

export interface Last {
  known: LastTime[];
  maybe: Maybe[];
}

/**
 * Of one piece, or of all and of the whole job. `theirs`: a person said which earlier piece it is. The newest
 * job first.
 */
export function lastTime(
  job: Job,
  before: readonly Before[],
  of: { piece?: string; theirs?: string } = {},
): Last {
  const pieces = [...job.pieces.values()].filter(
    (p) => of.piece === undefined || p.spec.key === of.piece,
  );
  const known: LastTime[] = [];
  const maybe: Maybe[] = [];
  for (const earlier of before) {
    const { file } = earlier;
    const title = earlier.job.upper.job;
    for (const piece of pieces) {
      for (const { how, theirs } of matched(piece, earlier.job, of.theirs)) {
        const { key, name } = theirs.spec;
        if (how === 'ask') {
          const holes = theirs.holes.length;
          maybe.push({ piece: piece.spec.key, theirs: key, name, holes, file, job: title });
          continue;
        }
        for (const k of remember(earlier.job, key))
          known.push({ ...k, mine: piece.spec.key, theirs: key, how, file, job: title });
      }
    }
    if (of.piece !== undefined) continue;
    for (const k of remember(earlier.job)) {
      // What is of a piece that this job has too was told above.
      const told = known.some((t) => t.file === file && t.id !== null && t.id === k.id);
      if (k.about !== 'time' && !told)
        known.push({ ...k, mine: null, theirs: k.piece, how: null, file, job: title });
    }
  }
  return { known, maybe };
}

function matched(piece: PieceNow, earlier: Job, theirs: string | undefined) {
  const named = theirs === undefined ? undefined : earlier.pieces.get(theirs);
  return named ? [{ how: 'name' as const, theirs: named }] : matchOf(piece, earlier);
}

/** The newest earlier job that had this piece, and which one it was there. */
export function lastWith(
  piece: PieceNow,
  before: readonly Before[],
  theirs?: string,
): { before: Before; piece: PieceNow } | null {
  for (const earlier of before) {
    const [match] = matched(piece, earlier.job, theirs).filter((m) => m.how !== 'ask');
    if (match) return { before: earlier, piece: match.theirs };
  }
  return null;
}

/** One quiet line for a piece, or for the whole job; null where nobody had it off before. */
export function quietOf(
  job: Job,
  before: readonly Before[],
  now: string,
  piece?: string,
): string | null {
  const newest = before.find(
    (b) => b.day !== null && (piece === undefined || theirsIn(job, b, piece) !== null),
  );
  if (!newest) return null;
  if (piece === undefined) {
    const { upper, pieces } = newest.job;
    const names = (key: string) => pieces.get(key)?.spec.name ?? key;
    return quietOfMachine(remember(newest.job), upper.job, newest.day ?? '', now, names);
  }
  const { known } = lastTime(job, [newest], { piece });
  const theirs = theirsIn(job, newest, piece);
  const day = theirs === null ? newest.day : offDayOf(newest.job, theirs);
  return quietLine(known, day ?? newest.day, now);
}

/** The key that the piece has in an earlier job in which something happened to it. */
function theirsIn(job: Job, before: Before, piece: string): string | null {
  const now = job.pieces.get(piece);
  if (!now) return null;
  const found = matchOf(now, before.job).find((m) => m.how !== 'ask' && m.theirs.last !== null);
  return found?.theirs.spec.key ?? null;
}

/** About parts and faults: what of it names a thing that wears. */
const OF_PARTS: readonly LastTime['about'][] = ['part', 'not', 'failed', 'kept'];

/** What earlier jobs tell of the parts of this piece, each with its job and day. */
export function partsTold(
  job: Job,
  before: readonly Before[],
  piece: string,
  now: string,
): { text: string; from: string }[] {
  return lastTime(job, before, { piece })
    .known.filter(({ about }) => OF_PARTS.includes(about))
    .map(({ text, job: title, day }) => ({
      text,
      from: `${title}${day === null ? '' : `, ${sayDate(day, now)}`}`,
    }));
}
