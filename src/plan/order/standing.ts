/**
 * Where the steps of a job stand, and the one order of all of them: first what happened, as it happened, then
 * what is open, as it can come.
 */
import { type Overs, oversOf } from '../../job/fold/overs.ts';
import { type Instant, readInstant } from '../../model/time.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { atTime } from '../time/at-time.ts';
import { type Finished, finishedOf } from './finished.ts';
import {
  arrowsOf,
  type Graph,
  graphOf,
  type Pair,
  reachable,
  topological,
  turned,
} from './graph.ts';
import { diaryLines, type Lines } from './lines.ts';
import { neededPieces } from './needed.ts';
import { oversAmong, type Relations, relationsOf } from './relations.ts';
import { type Round, roundsOf } from './rounds.ts';

export interface Standing {
  job: Job;
  now: Instant;
  lines: Lines;
  /** Pieces the plan is about, in the order of the file. */
  pieces: readonly PieceNow[];
  /** What lies over each of them, and over every piece of the job. */
  overs: Overs;
  allOvers: Overs;
  rounds: (piece: string) => Round;
  relations: Relations;
  finished: Finished;
  /** Relations among steps that are still open, with those of going back that follow from how things came off. */
  open: Graph;
  /** The same turned round: what each open step waits for. */
  before: Graph;
  /** Places in `relations.steps`. */
  order: readonly number[];
}

/**
 * `now` is RFC 3339; a time that cannot be read counts as before everything, and no wait ends. The same while the job
 * and the time stay.
 */
export function standingOf(job: Job, now: string): Standing {
  return atTime(job, now, 'standing', () => findStanding(job, now));
}

function findStanding(job: Job, now: string): Standing {
  const instant = readInstant(now) ?? { seconds: Number.NEGATIVE_INFINITY, offset: 0 };
  const lines = diaryLines(job);
  const rounds = roundsOf(job, lines);
  const allOvers = oversOf([...job.pieces.values()].map((p) => p.spec));
  const pieces = neededPieces(job, allOvers);
  const overs = oversAmong(allOvers, new Set(pieces.map((p) => p.spec.key)));
  const specs = pieces.map((p) => p.spec);
  const tasks = [...job.tasks.values()].map((t) => t.spec);
  const relations = relationsOf({ pieces: specs, tasks }, overs);
  const finished = finishedOf(job, lines, relations, rounds, instant.seconds);
  const declared = openGraph(relations, finished);
  const rank = rankOf(relations, finished, declared);
  const first = topological(declared, rank);
  const happened = happenedPairs(overs, relations, finished, declared, first);
  const open =
    happened.length === 0 ? declared : graphOf(declared.size, [...arrowsOf(declared), ...happened]);
  const order = [
    ...doneInOrder(finished),
    ...(open === declared ? first : topological(open, rank)).filter(
      (place) => !finished.done[place],
    ),
  ];
  const place = { lines, pieces, overs, allOvers, rounds };
  return { job, now: instant, ...place, relations, finished, open, before: turned(open), order };
}

/**
 * Relations among open steps. A step that was marked before those it waits for is done, and still the steps behind it wait
 * for those. Only a piece that came off too early holds nothing back: it is off.
 */
function openGraph({ steps, graph }: Relations, { done }: Finished): Graph {
  const early = (place: number) => done[place] === true && steps[place]?.kind !== 'off';
  const pairs: Pair[] = [];
  for (const [a, tos] of graph.next.entries()) {
    if (done[a]) continue;
    for (const b of tos) {
      if (!done[b]) pairs.push([a, b]);
      if (!early(b)) continue;
      for (const place of reachable(graph, [b], early)) if (!done[place]) pairs.push([a, place]);
    }
  }
  return graphOf(graph.size, pairs);
}

function doneInOrder({ done, index }: Finished): number[] {
  const places = [...done.keys()].filter((place) => done[place]);
  return places.sort((a, b) => (index[a] ?? 0) - (index[b] ?? 0) || a - b);
}

/**
 * Which of several steps comes first: what comes off; then tasks that pieces wait for; then what goes on, the last
 * that came off first; then the other tasks. Among equals the order of the file.
 */
function rankOf({ steps }: Relations, { done, index }: Finished, open: Graph): number[] {
  const count = steps.length;
  const pieceSteps = [...steps.keys()].filter((i) => !done[i] && isPieceStep(steps[i]?.kind));
  const leading = reachable(turned(open), pieceSteps);
  const half = steps.findIndex((s) => s.kind !== 'off');
  const classOf = (place: number): number => {
    const kind = steps[place]?.kind;
    if (kind === 'off') return 0;
    if (kind === 'on') return 2;
    return leading.has(place) ? 1 : 3;
  };
  const far = Math.max(0, ...index.map((i) => i ?? 0)) + 1;
  // `on` stands in the list as far behind its `off` as there are pieces.
  const late = (place: number): number => {
    if (steps[place]?.kind !== 'on') return 0;
    const off = place - half;
    // What is still on comes off after all that is off already, and in its order: it goes back in the other one.
    return -(done[off] ? (index[off] ?? 0) : far + off) - 1;
  };
  const places = Array.from({ length: count }, (_, i) => i);
  const keys = places.map((place) => ({ place, group: classOf(place), late: late(place) }));
  keys.sort((a, b) => a.group - b.group || a.late - b.late || a.place - b.place);
  const rank = new Array<number>(count).fill(0);
  for (const [r, { place }] of keys.entries()) rank[place] = r;
  return rank;
}

function isPieceStep(kind: string | undefined): boolean {
  return kind === 'off' || kind === 'on';
}

/**
 * How pieces go back by the order in which they came off. The file is believed about a piece of which it says what lies over
 * or under it; a piece of which it says nothing waits for all that came off after it. `first` gives the order in
 * which the pieces would go on by what is declared and, where that leaves it open, last off first on.
 */
function happenedPairs(
  overs: Overs,
  { steps }: Relations,
  { done }: Finished,
  declared: Graph,
  first: readonly number[],
): Pair[] {
  const placed = new Set<string>();
  for (const [key, over] of overs) {
    if (over.size > 0) placed.add(key);
    for (const upper of over) placed.add(upper);
  }
  const offs = new Set(steps.flatMap((s, i) => (s.kind === 'off' && done[i] ? [s.key] : [])));
  const pairs: Pair[] = [];
  let silent: number | null = null;
  let since: number[] = [];
  for (const place of first) {
    const step = steps[place];
    if (step?.kind !== 'on' || done[place] || !offs.has(step.key)) continue;
    if (placed.has(step.key)) {
      if (silent !== null) pairs.push([silent, place]);
      since.push(place);
      continue;
    }
    const waits = new Set(since);
    // It is enough to wait for those that nothing else here waits for.
    const last = since.filter((other) => !declared.next[other]?.some((to) => waits.has(to)));
    for (const other of last) pairs.push([other, place]);
    if (silent !== null && since.length === 0) pairs.push([silent, place]);
    silent = place;
    since = [];
  }
  return pairs;
}
