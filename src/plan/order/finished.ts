/** Which steps are finished, since when, and which waits are running. */

import { readInstant } from '../../model/time.ts';
import type { Job, PieceNow, TaskNow, TaskSpec } from '../../model/types.ts';
import { readDuration } from '../time/duration.ts';
import { topological, turned } from './graph.ts';
import type { Lines } from './lines.ts';
import { cameOff, isAway, isBack } from './needed.ts';
import { type Relations, spoken } from './relations.ts';
import type { Round } from './rounds.ts';

/** A wait that has begun, in seconds since 1970. */
export interface Running {
  from: number;
  /** Null where the text names no time. */
  until: number | null;
}

export interface Finished {
  /** By place in `relations.steps`. */
  done: readonly boolean[];
  /** When, as the place of its line in the diary; what a clock ended comes right behind what it waited for. */
  index: readonly number[];
  /** Seconds since 1970; null when the diary does not say. */
  at: readonly (number | null)[];
  /** Waits that have begun and are not finished. */
  running: ReadonlyMap<number, Running>;
}

interface End {
  index: number;
  at: number | null;
}

export function finishedOf(
  job: Job,
  lines: Lines,
  relations: Relations,
  rounds: (piece: string) => Round,
  now: number,
): Finished {
  const { steps, graph } = relations;
  const before = turned(graph);
  const bound = new Map<string, number>();
  const ends: (End | null)[] = steps.map(() => null);
  const running = new Map<number, Running>();
  const places = topological(
    graph,
    steps.map((_, i) => i),
  );
  for (const place of places) {
    const step = steps[place];
    if (!step) continue;
    const ahead = before.next[place] ?? [];
    if (step.kind === 'off' || step.kind === 'on') {
      const piece = job.pieces.get(step.key);
      if (piece) ends[place] = pieceEnd(job, piece, step.kind, lines);
      continue;
    }
    const task = job.tasks.get(step.key);
    if (!task) continue;
    const bounds = ahead.map((a) => bound.get(steps[a]?.step ?? '') ?? -1);
    bound.set(step.step, Math.max(ownBound(task.spec, rounds), ...bounds));
    ends[place] = marked(task, lines, bound.get(step.step) ?? -1);
    if (step.kind !== 'wait' || ends[place]) continue;
    const wait = begun(
      task.spec,
      ahead.map((a) => ends[a] ?? null),
    );
    if (wait?.until != null && wait.until <= now)
      ends[place] = { index: wait.index, at: wait.until };
    else if (wait) running.set(place, { from: wait.from, until: wait.until });
  }
  return {
    done: ends.map((end) => end !== null),
    index: ends.map((end) => end?.index ?? -1),
    at: ends.map((end) => end?.at ?? null),
    running,
  };
}

/** When a piece came off or was back; null while it is not. */
function pieceEnd(job: Job, piece: PieceNow, way: 'off' | 'on', lines: Lines): End | null {
  const carriers = piece.spec.along.flatMap((key) => job.pieces.get(key) ?? []);
  if (piece.where === 'home' && carriers.length > 0) {
    // It comes off on another piece, without a mark of its own: right behind that one.
    const carrier = carriers.find(cameOff);
    const end = carrier && momentOf(carrier, 'off', lines);
    return end ? { ...end, index: end.index + 0.25 } : null;
  }
  const through = way === 'off' ? cameOff(piece) : isBack(piece) && !isAway(piece);
  return through ? momentOf(piece, way, lines) : null;
}

function momentOf(piece: PieceNow, way: 'off' | 'on', lines: Lines): End {
  const { key } = piece.spec;
  const moment = lines[way].get(key) ?? lines.on.get(key);
  const at = moment?.at ?? piece.last;
  return { index: moment?.index ?? -1, at: at === null ? null : secondsOf(at) };
}

function secondsOf(time: string): number | null {
  return readInstant(time)?.seconds ?? null;
}

/**
 * A task that was done at this line or before was done for an earlier round: one that is tied to a piece being off or on
 * is to be done again when that piece comes off again. −1: whenever it was done, it counts.
 */
function ownBound(task: TaskSpec, rounds: (piece: string) => Round): number {
  const bounds = [...task.before, ...task.after, ...task.while].map((said) => {
    const [key = '', way] = spoken(said).split(' ');
    if (way === undefined) return -1;
    const early = way === 'off' && task.before.includes(said);
    return early ? rounds(key).before : rounds(key).start;
  });
  return Math.max(-1, ...bounds);
}

function marked(task: TaskNow, lines: Lines, bound: number): End | null {
  const line = lines.done.get(task.spec.key);
  if (!line || task.early || line.value === 'failed' || line.index <= bound) return null;
  return { index: line.index, at: secondsOf(line.at) };
}

/** A wait begins when the last of what it waits for is finished; with nothing before it, only its mark ends it. */
function begun(
  task: TaskSpec,
  ahead: readonly (End | null)[],
): (Running & { index: number }) | null {
  const times = ahead.map((end) => end?.at ?? null).filter((at) => at !== null);
  if (ahead.length === 0 || times.length < ahead.length) return null;
  const from = Math.max(...times);
  const seconds = readDuration(task.say.text)?.seconds ?? null;
  const index = Math.max(...ahead.map((end) => end?.index ?? -1)) + 0.5;
  return { from, until: seconds === null ? null : from + seconds, index };
}
