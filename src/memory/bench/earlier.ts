/** Other jobs of a bench on the same machine, or on one of its model. */
import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { titleSteps } from '../../find/index/find.ts';
import { jobText } from '../../find/index/folder.ts';
import { jobOf, readJob } from '../../job/read.ts';
import { errorCode } from '../../job/save/disk.ts';
import type { Job, TakenPair, Wish } from '../../model/types.ts';
import { lastWith } from '../last.ts';
import { learntFrom } from '../learnt.ts';
import { type Same, sameMachine } from '../machine.ts';
import { lastDayOf } from '../remember.ts';
import { type Left, takeOver, truthsFor } from '../take.ts';

export interface Earlier {
  /** Its name in the bench. */
  file: string;
  job: Job;
  text: string;
  same: Same;
  /** Its last day, null for one without a diary. */
  day: string | null;
}

export interface Jobs {
  /** The newest first. */
  jobs: Earlier[];
  /** So many older ones were not read. */
  older: number;
  /** Names of files on this machine that cannot be read as jobs. */
  unread: string[];
}

/** So many jobs of one machine are read: what is older is told by number. */
const MOST = 40;
const RANK: Record<Same, number> = { id: 0, like: 1, name: 2 };

/** Other jobs in the folder of `path` on the machine of `job`. Nothing where the folder cannot be read. */
export function earlierJobs(path: string, job: Job): Jobs {
  const steps = earlierSteps(path, job);
  for (;;) {
    const { value, done } = steps.next();
    if (done) return value;
  }
}

/** The same in steps, between which other things may happen. */
export function* earlierSteps(path: string, job: Job): Generator<unknown, Jobs> {
  const folder = dirname(path);
  const own = basename(path);
  const found: { file: string; same: Same; last: string }[] = [];
  try {
    for (const [file, titles] of yield* titleSteps(folder)) {
      const same = file === own ? null : sameMachine(job.upper, titles);
      if (same !== null) found.push({ file, same, last: titles.last });
    }
  } catch (error) {
    if (errorCode(error) === null) throw error;
  }
  found.sort(
    (a, b) => compare(b.last, a.last) || RANK[a.same] - RANK[b.same] || compare(a.file, b.file),
  );
  const unread: string[] = [];
  const jobs: Earlier[] = [];
  for (const { file, same } of found.slice(0, MOST)) {
    yield file;
    const read = readEarlier(folder, file);
    if (read === null) {
      unread.push(file);
      continue;
    }
    jobs.push({ file, ...read, same, day: lastDayOf(read.job) });
  }
  return { jobs, older: Math.max(0, found.length - MOST), unread };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function readEarlier(folder: string, file: string): { job: Job; text: string } | null {
  const found = jobText(folder, file);
  if (!found || !('text' in found)) return null;
  const read = readJob(found.text, file);
  if (read.unreadable) return null;
  return { job: jobOf(read), text: found.text };
}

/** What is to be put into the file at `path`, and what is not so there as it is printed; null: there is no such job. */
export function takeFrom(
  path: string,
  job: Job,
  { piece, from, theirs }: { piece: string; from: string; theirs?: string },
): { pairs: TakenPair[]; left: Left[]; truths: Extract<Wish, { do: 'correct' }>[] } | null {
  const [folder, own] = [dirname(path), basename(path)];
  const source = readEarlier(folder, from);
  const mine = jobText(folder, own);
  if (!source || !mine || !('text' in mine)) return null;
  // A piece that this job does not know yet is that piece.
  const now = job.pieces.get(piece) ?? source.job.pieces.get(theirs ?? piece);
  if (!now) return null;
  const before = { file: from, job: source.job, same: 'name' as const, day: null };
  const found = lastWith(now, [before], theirs);
  if (!found) return null;
  const key = found.piece.spec.key;
  const { pairs, left } = takeOver(mine.text, job, piece, learntFrom(source.text, source.job), key);
  const truths = truthsFor(job, piece, source.job, key).map(({ what, printed, says, hole }) => ({
    do: 'correct' as const,
    piece,
    what,
    printed,
    truth: says,
    ...(hole === undefined ? {} : { hole }),
  }));
  return { pairs, left, truths };
}

/** The names of a folder's own templates, without `.yaml`; none where there is no such folder. */
export function templatesIn(folder: string): string[] {
  try {
    return readdirSync(join(folder, TEMPLATES))
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => name.slice(0, -'.yaml'.length))
      .sort();
  } catch {
    return [];
  }
}

/** The bench's own folder of things to start from. */
export const TEMPLATES = 'templates';
