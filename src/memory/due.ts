/** What follows from jobs that are over: what is due by days, by distance, by hours, over all machines of a bench. */
import { type Instant, readInstant, secondsOf } from '../model/time.ts';
import type { Job } from '../model/types.ts';
import { verbRow } from '../model/verbs/verbs.ts';
import { testList } from '../plan/tests/testlist.ts';
import { dueWhen, notCounted, readingsIn, type Told, workedLast } from '../plan/time/due.ts';
import { counters } from './counters.ts';

export interface Due {
  file: string;
  job: string;
  machine: string | null;
  piece: string | null;
  /** Its name in the diary of its job. */
  task: string;
  say: string;
  /** As printed: `after 50 km`; null for what is due at once. */
  when: string | null;
  by: 'days' | 'distance' | 'hours' | 'use';
  /** What of `when` no calendar and no counter can have: `-5 days`; it is due until that is put right. */
  odd?: string;
  /** `2026-05-02`, where the calendar tells. */
  due: string | null;
  /** `41280 km`, where the counter tells. */
  at: string | null;
  /** What is left by the counter: `12 km`; below nothing it is over. */
  left: string | null;
  state: 'due' | 'later';
}

/** A job of the bench, as this room takes it. */
export interface BenchJob {
  file: string;
  job: Job;
}

/** What the counter of a machine said, the latest of all its jobs; null where no job says. */
export function readingOf(jobs: readonly BenchJob[], machine: Job): Told | null {
  const all = counters();
  for (const { job } of jobs) all.add(job);
  return all.of(machine.upper);
}

/** Everything of a bench that is due or will be, what is due first. `now`: RFC 3339. */
export function dueList(jobs: Iterable<BenchJob>, now: string): Due[] {
  const all = dueOver(now);
  for (const one of jobs) all.add(one);
  return all.list();
}

/** The same, job by job: none is kept but those with something that the counter of their machine may tell. */
export function dueOver(now: string): { add(one: BenchJob): void; list(): Due[] } {
  const told = counters();
  const due: Due[] = [];
  const timed: BenchJob[] = [];
  return {
    add(one) {
      told.add(one.job);
      const found = dueOf(one, null, now);
      if (found.some(mayBeCounted)) timed.push(one);
      else due.push(...found);
    },
    list() {
      const rank = (d: Due) => (d.state === 'due' ? 0 : 1);
      const rest = timed.flatMap((one) => dueOf(one, told.of(one.job.upper), now));
      return [...due, ...rest].sort(
        (a, b) =>
          rank(a) - rank(b) ||
          compare(a.due ?? '9999', b.due ?? '9999') ||
          compare(a.file, b.file) ||
          compare(a.task, b.task),
      );
    },
  };
}

/** A counter may tell when it is due; of hours only that counter says whether they are the clock's. */
const mayBeCounted = ({ by, when }: Due): boolean =>
  by === 'distance' || by === 'hours' || /\d\s*(?:h|hrs?|hours?)\b/i.test(when ?? '');

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function dueOf({ file, job }: BenchJob, counter: Told | null, now: string): Due[] {
  const base = { file, job: job.upper.job, machine: job.upper.machine };
  const working = isWorking(job);
  const tests = testList(job, now, counter).flatMap((test): Due[] => {
    const { when, state } = test;
    if (state !== 'due' && state !== 'later' && state !== 'failed') return [];
    // What has no day of its own belongs to the work, and does not follow from it.
    if (when === null && working) return [];
    return [
      {
        ...base,
        piece: test.pieces[0] ?? null,
        task: test.test,
        say: test.say,
        when,
        ...oddOf(when),
        by: test.by,
        due: test.due?.slice(0, 10) ?? null,
        at: test.at,
        left: test.left,
        state: state === 'later' ? 'later' : 'due',
      },
    ];
  });
  return [...tests, ...chores(base, job, counter, now)];
}

/** Something is off or under way. */
function isWorking(job: Job): boolean {
  return [...job.pieces.values()].some((p) => p.where === 'off' || p.where === 'open');
}

function oddOf(when: string | null): Pick<Due, 'odd'> {
  const odd = notCounted(when);
  return odd === null ? {} : { odd };
}

/** What one job leaves to be done after a time or a distance, by what its own counter says. */
export function choresOf(job: Job, now: string): Due[] {
  const base = { file: '', job: job.upper.job, machine: job.upper.machine };
  return chores(base, job, readingOf([{ file: '', job }], job), now);
}

/** Things to do after a time or a distance: `{do: Change the oil, when: after 50 km, after: fill}`. */
function chores(
  base: Pick<Due, 'file' | 'job' | 'machine'>,
  job: Job,
  counter: Told | null,
  now: string,
): Due[] {
  const readings = readingsIn(job);
  const instant: Instant = readInstant(now) ?? { seconds: Number.NEGATIVE_INFINITY, offset: 0 };
  return [...job.tasks.values()].flatMap(({ spec, done }): Due[] => {
    if (spec.verb !== 'do' || spec.when === null || done !== null) return [];
    const from = choreFrom(job, spec.after);
    if (from === null) return [];
    const told = dueWhen(spec.when.text, from, readings, counter, instant);
    const odd = oddOf(spec.when.text);
    // Hot, before the winter: it belongs to the work.
    if (told.by === 'use' && odd.odd === undefined) return [];
    const { by, at, left, state } = told;
    const due = told.due?.slice(0, 10) ?? null;
    const [say, when] = [spec.say.text, spec.when.text];
    return [{ ...base, piece: null, task: spec.key, say, when, ...odd, by, due, at, left, state }];
  });
}

/** When the last of the steps was finished; without any, when somebody last worked on it. Null: not yet. */
function choreFrom(job: Job, steps: readonly string[]): string | null {
  if (steps.length === 0) return isWorking(job) ? null : workedLast(job);
  const ends = steps.map((step) => finishedAt(job, step));
  if (ends.some((end) => end === null)) return null;
  return (
    ends
      .flatMap((end) => end ?? [])
      .sort((a, b) => secondsOf(a) - secondsOf(b))
      .at(-1) ?? null
  );
}

/** When something was last done to a piece or its bolts; a note or a photograph of it moves nothing. */
function workedAt(job: Job, piece: string): string | null {
  const worked = job.entries.findLast(
    (e) => e.piece === piece && verbRow(e.verb).kind === 'piece' && job.living.has(e.id),
  );
  return worked?.at ?? null;
}

/** When a step was finished: the last mark of a piece that is back, the day a task was done. */
function finishedAt(job: Job, step: string): string | null {
  const [key = '', way] = step.split(' ');
  const piece = job.pieces.get(key);
  if (piece && way !== undefined) {
    const back = piece.where === 'tight' || piece.where === 'tested';
    return way === 'on' && !back ? null : workedAt(job, key);
  }
  const marks = job.entries.filter(
    (e) => e.task === key && e.verb === 'done' && job.living.has(e.id),
  );
  return marks.at(-1)?.at ?? null;
}
