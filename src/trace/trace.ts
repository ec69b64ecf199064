/**
 * What to look at next, to find one fault among suspects in the least time. Pure and deterministic.
 *
 * Exact to 16 suspects that the checks can tell apart; beyond that within a bound that is told. It takes one fault for
 * granted until the looks contradict that.
 */
import { tidy } from '../bolt/read/numbers.ts';
import { conflictOf } from './conflict.ts';
import { clearedBy, standingMarks } from './marks.ts';
import { readTrace, type TraceRead } from './read.ts';
import { reduce, tells } from './reduce.ts';
import { orderOfRepairs } from './repairs.ts';
import { bestWay } from './search/best.ts';
import type { Node } from './search/node.ts';
import { type Timed, type Times, timeOf, timesOf } from './times.ts';
import {
  type Expected,
  type Look,
  NOT_LISTED,
  type TraceAnswer,
  type TraceInput,
} from './types.ts';
import { lookOf, wayOf } from './way.ts';
import { meanOf, sharesOf, weightsOf, wordsFor } from './weights.ts';

export function trace(input: TraceInput): TraceAnswer {
  const read = readTrace(input);
  const weights = weightsOf(read.suspects);
  const times = timesOf(read.checks, read.covers);
  const standing = standingMarks(read.marks);
  const weight = (name: string) => weights.get(name) ?? 0;
  const names = read.suspects.map(({ name }) => name).sort((a, b) => weight(b) - weight(a));
  const cleared = clearedBy(names, read.checks, standing);
  const against = (name: string) => cleared.get(name) ?? [];
  const left = names.filter((name) => against(name).length === 0);
  const shares = sharesOf(left, weights, wordsFor(read.suspects, weights));

  const reduced = reduce(left, weights, times.checks, times.covers);
  const { root } = bestWay(reduced.problem);
  const way = wayOf(reduced, times.covers, root);
  const evidence = { suspects: names, checks: read.checks, standing, cleared, weights };
  const fits = left.length > 0 || names.length === 0;
  return {
    suspects: [...left, ...names.filter((name) => against(name).length > 0)].map((name) => ({
      name,
      share: shares.get(name) ?? 'cleared',
      cleared: against(name),
    })),
    next: way && lookOf(way, left),
    way,
    expected: expectedOf(root, times),
    proof: way ? null : proofOf(left, times, standing),
    order: repairsOf(left, read, weight),
    conflict: fits ? null : conflictOf({ ...evidence, minutesOf: minutesWith(times) }),
    untimed: untimedOf(left, read),
    faults: read.faults,
  };
}

function expectedOf({ mass, upper, lower }: Node, { unit }: Times): Expected {
  const [minutes, bound] = [tidy(upper / mass || 0), tidy(lower / mass || 0)];
  const exact = upper === lower;
  const ratio = exact ? 1 : tidy(minutes / bound);
  return { minutes, exact, bound, ratio: Number.isFinite(ratio) ? ratio : null, unit };
}

/** Minutes of a check with all that must come off first. */
function minutesWith({ checks, covers }: Times): (name: string) => number {
  const minutes = ({ minutes, behind }: Timed) =>
    behind.reduce((sum, cover) => sum + (covers.get(cover) ?? 0), minutes);
  const known = new Map(checks.map((check) => [check.name, minutes(check)]));
  return (name) => known.get(name) ?? 0;
}

/** Suspects are left because the others are cleared: the soonest look that was not made yet and would show them. */
function proofOf(
  left: readonly string[],
  times: Times,
  standing: ReadonlyMap<string, 'good' | 'bad'>,
): Look | null {
  const minutesOf = minutesWith(times);
  const [check] = times.checks
    .filter(({ name, shows }) => !standing.has(name) && left.every((one) => shows.has(one)))
    .sort((one, other) => minutesOf(one.name) - minutesOf(other.name));
  if (!check || left.length === 0) return null;
  const { name, behind } = check;
  const outcomes = { good: [NOT_LISTED], bad: [...left] };
  return { check: name, minutes: minutesOf(name), opens: [...behind], ...outcomes };
}

function repairsOf(
  left: readonly string[],
  { suspects }: TraceRead,
  weight: (name: string) => number,
): string[] {
  const known = new Map(suspects.map(({ name, repair }) => [name, timeOf(repair)]));
  const mean = meanOf(left.map((name) => known.get(name) ?? null)) ?? 1;
  const repairs = left.map((name) => ({ name, p: weight(name), c: known.get(name) ?? mean }));
  return orderOfRepairs(repairs).map(({ name }) => name);
}

function untimedOf(left: readonly string[], read: TraceRead): TraceAnswer['untimed'] {
  const telling = read.checks.filter(({ shows }) => tells(shows, left));
  const before = new Set(telling.flatMap(({ behind }) => behind));
  const without = (all: readonly { name: string; takes: number | null }[]) =>
    all.filter(({ takes }) => timeOf(takes) === null).map(({ name }) => name);
  const repairs = read.suspects.map(({ name, repair }) => ({ name, takes: repair }));
  return {
    checks: without(telling),
    covers: without(read.covers.filter(({ name }) => before.has(name))),
    repairs: left.length > 1 ? without(repairs.filter(({ name }) => left.includes(name))) : [],
  };
}
