/** What follows from jobs that are over: what is due by days, by distance, by hours, over all machines of a bench. */
import { type Reading, readReading, sayReading } from '../bolt/counter.ts';
import { livingEntries } from '../job/diary/living.ts';
import { type Instant, printInstant, readInstant } from '../model/time.ts';
import type { Job } from '../model/types.ts';
import { verbRow } from '../model/verbs.ts';
import { testList } from '../plan/testlist.ts';
import { sameMachine } from './machine.ts';

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
  const told = jobs
    .filter(({ job }) => isOne(job, machine))
    .flatMap(({ job }) => readingsIn(job))
    .sort((a, b) => (a.at < b.at ? -1 : 1));
  return told.at(-1) ?? null;
}

interface Told extends Reading {
  /** RFC 3339; empty for the one beside the machine's name in a job without a diary. */
  at: string;
}

/** One machine, not only one model: the same number, or the same text but for what it has run. */
function isOne(a: Job, b: Job): boolean {
  const same = sameMachine(a.upper, b.upper);
  if (a.upper.machineId !== null && b.upper.machineId !== null) return same === 'id';
  return same === 'name' || same === 'id';
}

function readingsIn(job: Job): Told[] {
  const living = livingEntries(job.entries);
  const first = job.upper.machine === null ? null : readReading(job.upper.machine);
  const beside = first ? [{ ...first, at: living[0]?.at ?? '' }] : [];
  const read = living.flatMap((e): Told[] => {
    const found = e.verb === 'reading' ? readReading(e.value) : null;
    return found ? [{ ...found, at: e.at }] : [];
  });
  return [...beside, ...read];
}

/** Everything of a bench that is due or will be, what is due first. `now`: RFC 3339. */
export function dueList(jobs: readonly BenchJob[], now: string): Due[] {
  const all = jobs.flatMap((one) => dueOf(one, jobs, now));
  const rank = (d: Due) => (d.state === 'due' ? 0 : 1);
  return all.sort(
    (a, b) =>
      rank(a) - rank(b) ||
      compare(a.due ?? '9999', b.due ?? '9999') ||
      compare(a.file, b.file) ||
      compare(a.task, b.task),
  );
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function dueOf({ file, job }: BenchJob, jobs: readonly BenchJob[], now: string): Due[] {
  const readings = readingsIn(job);
  const current = readingOf(jobs, job);
  const base = { file, job: job.upper.job, machine: job.upper.machine };
  // While something is off, what has no day of its own belongs to the work and does not follow from it.
  const working = [...job.pieces.values()].some((p) => p.where === 'off' || p.where === 'open');
  const tests = testList(job, now).flatMap(({ test, pieces, say, when, due, state }): Due[] => {
    if (state !== 'due' && state !== 'later' && state !== 'failed') return [];
    if (when === null && working) return [];
    const back =
      pieces
        .flatMap((key) => workedAt(job, key) ?? [])
        .sort()
        .at(-1) ?? null;
    const item = { ...base, piece: pieces[0] ?? null, task: test, say, when };
    const told = followed(when, back, readings, current, now);
    if (told) return [{ ...item, ...told }];
    const day = due?.slice(0, 10) ?? null;
    const by = day === null && when !== null ? ('use' as const) : ('days' as const);
    return [
      { ...item, by, due: day, at: null, left: null, state: state === 'later' ? 'later' : 'due' },
    ];
  });
  return [...tests, ...chores(base, job, readings, current, now)];
}

/** What one job leaves to be done after a time or a distance, by what its own counter says. */
export function choresOf(job: Job, now: string): Due[] {
  const base = { file: '', job: job.upper.job, machine: job.upper.machine };
  return chores(base, job, readingsIn(job), readingOf([{ file: '', job }], job), now);
}

/** Things to do after a time or a distance: `{do: Change the oil, when: after 50 km, after: fill}`. */
function chores(
  base: Pick<Due, 'file' | 'job' | 'machine'>,
  job: Job,
  readings: readonly Told[],
  current: Told | null,
  now: string,
): Due[] {
  return [...job.tasks.values()].flatMap(({ spec, done }): Due[] => {
    if (spec.verb !== 'do' || spec.when === null || done !== null) return [];
    const ends = spec.after.map((step) => finishedAt(job, step));
    if (ends.length === 0 || ends.some((end) => end === null)) return [];
    const from =
      ends
        .flatMap((end) => end ?? [])
        .sort()
        .at(-1) ?? null;
    const told = followed(spec.when, from, readings, current, now);
    if (!told) return [];
    return [{ ...base, piece: null, task: spec.key, say: spec.say, when: spec.when, ...told }];
  });
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

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
const DISTANCE = new RegExp(String.raw`${NUMBER}\s*(km|kilomet(?:er|re)s?|mi|miles?)\b`, 'i');
const RUNNING = new RegExp(
  String.raw`${NUMBER}\s*(?:h|hrs?|hours?)\b.*\b(?:runn?ing|run|use|operation|work)\b`,
  'i',
);
const SPAN = new RegExp(
  String.raw`(?:${NUMBER}|\b(a|one|next))\s*(days?|weeks?|months?|years?|seasons?)\b`,
  'i',
);

type Told4 = Pick<Due, 'by' | 'due' | 'at' | 'left' | 'state'>;

/** Null where the text names neither a distance, nor hours of running, nor a span of the calendar. */
function followed(
  when: string | null,
  back: string | null,
  readings: readonly Told[],
  current: Told | null,
  now: string,
): Told4 | null {
  if (when === null) return null;
  const distance = DISTANCE.exec(when);
  const running = RUNNING.exec(when);
  const counted = distance ?? running;
  if (counted) {
    const unit = distance ? 'km' : 'h';
    const figure = Number((counted[1] ?? '').replace(',', '.'));
    const span = distance && /^mi/i.test(distance[2] ?? '') ? figure * 1.609344 : figure;
    const by = distance ? ('distance' as const) : ('hours' as const);
    // What the counter said when the piece went back, or the last that was read before.
    const then = readings.filter((r) => r.unit === unit && (back === null || r.at <= back)).at(-1);
    if (!then) return { by, due: null, at: null, left: null, state: 'later' };
    const goal = then.value + span;
    const left = current?.unit === unit ? goal - current.value : span;
    return {
      by,
      due: null,
      at: sayReading({ value: goal, unit }),
      left: sayReading({ value: left, unit }),
      state: left <= 0 ? 'due' : 'later',
    };
  }
  const span = SPAN.exec(when);
  const from = back === null ? null : readInstant(back);
  if (!span || !from) return null;
  const count = span[1] === undefined ? 1 : Number(span[1].replace(',', '.'));
  const due = after(from, count, (span[3] ?? '').toLowerCase());
  return {
    by: 'days',
    due,
    at: null,
    left: null,
    state: now.slice(0, 10) >= due ? 'due' : 'later',
  };
}

const DAY = 86_400;

/** The day so long after; a season is half a year, common practice, no source. */
function after(from: Instant, count: number, unit: string): string {
  if (unit.startsWith('d') || unit.startsWith('w')) {
    const days = unit.startsWith('w') ? count * 7 : count;
    return printInstant({ ...from, seconds: from.seconds + days * DAY }).slice(0, 10);
  }
  const months = count * (unit.startsWith('y') ? 12 : unit.startsWith('s') ? 6 : 1);
  const day = printInstant(from).slice(0, 10);
  const all = Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1 + Math.round(months);
  const [year, month] = [Math.floor(all / 12), all % 12];
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month + 1)}-${two(Math.min(last, Number(day.slice(8))))}`;
}
