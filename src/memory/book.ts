/** A machine's book: all its jobs in order, and what is in it now. */

import { sayCounter } from '../bolt/read/counter.ts';
import { livingEntries } from '../job/diary/living.ts';
import type { Job } from '../model/types.ts';
import { type BenchJob, readingOf } from './due.ts';
import { type Known, remember } from './remember.ts';

export interface BookJob {
  file: string;
  job: string;
  /** First and last day of its diary; null where there is none. */
  from: string | null;
  to: string | null;
  complaint: string | null;
  found: string | null;
  done: string | null;
}

interface InIt {
  piece: string | null;
  name: string | null;
  text: string;
  day: string | null;
  job: string;
  file: string;
}

export interface Book {
  machine: string;
  /** What the counter said last, and when. */
  reading: { text: string; day: string | null } | null;
  jobs: BookJob[];
  /** Threads that were mended, by hole. */
  mended: (InIt & { hole: string | null })[];
  /** Which parts, since when. */
  parts: InIt[];
  /** Last torque of each piece. */
  torques: InIt[];
  /** What is not in order. */
  open: InIt[];
}

/** `jobs` are those of the machine; the last day of each says their order. */
export function bookOf(machine: string, jobs: readonly BenchJob[]): Book {
  // What has not begun comes last.
  const inOrder = [...jobs].sort((a, b) =>
    compare(daysOf(a.job)[0] ?? '9999', daysOf(b.job)[0] ?? '9999'),
  );
  const newest = inOrder.at(-1);
  const told = newest ? readingOf(jobs, newest.job) : null;
  const text = told ? sayCounter(told) : '';
  return {
    machine,
    reading: told ? { text, day: told.at === '' ? null : told.at.slice(0, 10) } : null,
    jobs: inOrder.map(({ file, job }) => {
      const [from = null, to = null] = daysOf(job);
      const { job: title, complaint, found, done } = job.upper;
      return { file, job: title, from, to, complaint, found, done };
    }),
    mended: latest(inOrder, mendedIn, (m) => `${m.piece} ${m.hole}`),
    parts: latest(inOrder, partsIn, (p) => `${p.piece} ${p.key}`).map(({ key: _, ...p }) => p),
    torques: latest(inOrder, torquesIn, (t) => `${t.piece}`),
    open: inOrder.flatMap(openIn),
  };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function daysOf({ entries }: Job): string[] {
  const days = entries.map((e) => e.at.slice(0, 10)).sort();
  const [first] = days;
  const last = days.at(-1);
  return first === undefined || last === undefined ? [] : [first, last];
}

/** Of each thing what the latest job says. */
function latest<T>(
  jobs: readonly BenchJob[],
  of: (job: BenchJob) => T[],
  key: (one: T) => string,
): T[] {
  const found = new Map<string, T>();
  for (const job of jobs) {
    for (const one of of(job)) {
      found.delete(key(one));
      found.set(key(one), one);
    }
  }
  return [...found.values()];
}

function base({ file, job }: BenchJob, piece: string | null) {
  const name = piece === null ? null : (job.pieces.get(piece)?.spec.name ?? piece);
  return { piece, name, file, job: job.upper.job };
}

function mendedIn(one: BenchJob) {
  return remember(one.job)
    .filter((k) => k.about === 'insert')
    .map((k) => ({ ...base(one, k.piece), hole: k.hole, text: k.text, day: k.day }));
}

/** A later part of the same name for the same piece is instead of it. */
function partsIn(one: BenchJob) {
  const isPart = (k: Known) => k.about === 'part';
  return remember(one.job)
    .filter(isPart)
    .map((k) => {
      const buy = one.job.entries.find((e) => e.id === k.id)?.buy ?? k.text;
      return { ...base(one, k.piece), text: k.text, day: k.day, key: buy };
    });
}

function torquesIn(one: BenchJob): InIt[] {
  const last = new Map<string, InIt>();
  for (const e of livingEntries(one.job.entries)) {
    if (e.verb !== 'tight' || e.piece === undefined || e.value === 'snug') continue;
    const printed = one.job.upper.pieces.get(e.piece)?.torque?.text;
    const text = e.set ?? printed ?? e.value;
    last.set(e.piece, { ...base(one, e.piece), text, day: e.at.slice(0, 10) });
  }
  return [...last.values()];
}

function openIn(one: BenchJob): InIt[] {
  const { job } = one;
  const day = daysOf(job)[1] ?? null;
  const pieces = [...job.pieces.values()].flatMap((p) => {
    const said = p.holes.flatMap((h) => [
      ...(h.trouble ? [`${h.name} ${h.trouble}`] : []),
      ...(h.conflict ? [h.conflict.say] : []),
      ...(h.unsettled ? [`${h.name}: file and find differ`] : []),
    ]);
    const gone = { removed: 'off', aside: 'aside', no: 'bolts out, on its place' }[p.away];
    const away = p.where === 'off' || p.where === 'open' ? [gone] : [];
    const fingers = p.holes.filter((h) => h.state === 'in').length;
    const loose = p.where === 'on' && fingers > 0 ? [`${fingers} only by fingers`] : [];
    return [...away, ...loose, ...said].map((text) => ({ ...base(one, p.spec.key), text, day }));
  });
  const inside = job.inside.map((i) => ({
    ...base(one, i.piece),
    text: `${i.count} ${i.what} inside`,
    day: i.since.slice(0, 10),
  }));
  const failed = [...job.tasks.values()].flatMap(({ spec, done }) =>
    done === 'failed' ? [{ ...base(one, null), text: `failed: ${spec.say.text}`, day }] : [],
  );
  return [...pieces, ...inside, ...failed];
}
