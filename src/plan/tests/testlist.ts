/**
 * What has to be tested and looked at again: the file's own tests and adjustments, and those that follow from what
 * was disturbed. These are common practice of the trade, no source; what the maker says goes first.
 */
import { testsOf } from '../../job/fold/tested.ts';
import type { Job, PieceNow, TaskNow } from '../../model/types.ts';
import { passesOf } from '../../piece/passes.ts';
import { type Graph, reachable, turned } from '../order/graph.ts';
import { isBack } from '../order/needed.ts';
import { type Standing, standingOf } from '../order/standing.ts';
import { heldByCure, untoldCures } from '../seal/cure.ts';
import { atTime } from '../time/at-time.ts';
import { type DueWhen, dueWhen, readingsIn, type Told, workedLast } from '../time/due.ts';
import { disturbedOf, sortsOf } from './disturbed.ts';
import { notRun } from './not-run.ts';
import { runs } from './runs.ts';
import { SORTS, sortRow, type TestRule } from './sorts.ts';

/**
 * `waits`: something before it is not finished. `later`: its day has not come, or it waits for a distance or an oil
 * change, which no clock knows. `due`: now.
 */
export type TestState = 'waits' | 'later' | 'due' | 'passed' | 'failed';

export interface TestItem {
  /** Its name in the diary: the task's, or `cover-weeps`. */
  test: string;
  /** Pieces that it tests. */
  pieces: string[];
  say: string;
  limit: string | null;
  /** `hot`, `next day`, `after 100 km`; null for at once. */
  when: string | null;
  /** A date or RFC 3339, where the calendar can tell. */
  due: string | null;
  /** What the counter of the machine says then, and what is left until then: `41280 km`, `12 km`. */
  at: string | null;
  left: string | null;
  /** What tells when it is due. */
  by: DueWhen['by'];
  state: TestState;
  /** Why the machine is not to be run for it yet: `the oil is out`; empty where it may be, or need not run. */
  stops: string[];
  was: string | null;
  set: string | null;
  result: string | null;
  /** It stands in the file. */
  listed: boolean;
}

/**
 * The file's own in its order, then by piece. `now` is RFC 3339; `counter`: what the machine's counter said last, where
 * another job of it knows better than this one.
 */
export function testList(job: Job, now: string, counter?: Told | null): TestItem[] {
  return testListOf(standingOf(job, now), counter);
}

/** The same, kept while the job and the time stay. */
export function testsNow(job: Job, now: string): TestItem[] {
  return atTime(job, now, 'tests', () => testList(job, now));
}

export function testListOf(at: Standing, counter?: Told | null): TestItem[] {
  const readings = readingsIn(at.job);
  const standing: Timed = { ...at, readings, counter: counter ?? readings.at(-1) ?? null };
  const { job, lines } = standing;
  const disturbed = disturbedOf(job, lines);
  const before = turned(standing.relations.graph);
  const byPiece = new Map(disturbed.map((p) => [p.spec.key, testsOf(p.spec.key, job.tasks)]));
  const listed = [...job.tasks.values()].filter(({ spec }) => isTest(spec.verb));
  const piecesOf = new Map(listed.map((task) => [task, [] as string[]]));
  for (const [key, tests] of byPiece) for (const task of tests) piecesOf.get(task)?.push(key);
  const own = listed.map((task) => listedItem(standing, task, piecesOf.get(task) ?? []));
  const behind = listed.map((task) => ({
    text: textOf(task),
    steps: stepsBefore(standing, before, task),
  }));
  const found = disturbed.flatMap((piece) => {
    const on = standing.relations.at.get(`${piece.spec.key} on`) ?? -1;
    // What a piece is called says nothing of what is tested: the play of a lamp cable is not its light.
    const said = behind.flatMap(({ steps, text }) =>
      steps.has(on) ? text.replaceAll(piece.spec.name, '') : [],
    );
    const sorts = sortsOf(piece.spec);
    const rules = SORTS.flatMap((s) => (sorts.includes(s) ? [sortRow(s).test] : []));
    return [
      ...rules
        .filter((r) => !said.some((text) => r.covers.test(text)))
        .map((r) => byRule(standing, piece, r)),
      ...lookAgain(standing, piece),
    ];
  });
  const all = [...own, ...found.filter((item) => !job.tasks.has(item.test))];
  return afterCure(standing, mayRun(standing, all));
}

/** What makes the machine run waits for what keeps it from running. */
function mayRun(standing: Standing, items: readonly TestItem[]): readonly TestItem[] {
  const stops = notRun(standing);
  if (stops.length === 0) return items;
  const waits = (item: TestItem) => item.state === 'due' && runs({ verb: 'test', ...item });
  return items.map((item) => (waits(item) ? { ...item, state: 'waits', stops } : item));
}

/** A joint that cures is not tested: what would be due is later. */
function afterCure(standing: Standing, items: readonly TestItem[]): TestItem[] {
  const cures = untoldCures(standing).map((cure) => ({
    ...cure,
    held: new Set(heldByCure(standing, cure)),
  }));
  if (cures.length === 0) return [...items];
  const lateBy = (item: TestItem) =>
    cures.find(({ held, piece }) =>
      item.listed
        ? held.has(standing.relations.at.get(item.test) ?? -1)
        : item.pieces.includes(piece),
    );
  return items.map((item) => {
    const cure = item.state === 'due' ? lateBy(item) : undefined;
    return cure ? { ...item, state: 'later', due: cure.until } : item;
  });
}

/** With what the counter said, each time and last. */
interface Timed extends Standing {
  readings: readonly Told[];
  counter: Told | null;
}

function whenDue({ readings, counter, now }: Timed, when: string | null, back: string | null) {
  return dueWhen(when, back, readings, counter, now);
}

function textOf({ spec }: TaskNow): string {
  return `${spec.say.text} ${spec.limit?.text ?? ''}`;
}

/** Everything that is finished before a test begins: it tests what lies underneath as well. */
function stepsBefore({ relations }: Standing, before: Graph, { spec }: TaskNow): Set<number> {
  return reachable(before, [relations.at.get(spec.key) ?? -1]);
}

function isTest(verb: string): boolean {
  return verb === 'test' || verb === 'adjust';
}

function listedItem(standing: Timed, task: TaskNow, pieces: string[]): TestItem {
  const { relations, finished, lines, rounds } = standing;
  const { spec } = task;
  const when = spec.when?.text ?? null;
  const backs = pieces.flatMap((key) => lines.on.get(key)?.at ?? []).sort();
  // A test that names no piece counts from the last work on any of them.
  const due = whenDue(standing, when, backs.at(-1) ?? workedLast(standing.job));
  // A result from before the present round of its pieces is not told as that of this one.
  const round = Math.max(-1, ...pieces.map((key) => rounds(key).start));
  const passed = finished.done[relations.at.get(spec.key) ?? -1] === true;
  const told = passed || (lines.done.get(spec.key)?.index ?? -1) > round;
  const open = openState(standing, task, pieces, due.state);
  return {
    test: spec.key,
    pieces,
    say: spec.say.text,
    limit: spec.limit?.text ?? null,
    when,
    ...dated(due),
    state: passed ? 'passed' : told && task.done === 'failed' ? 'failed' : open,
    stops: [],
    was: told ? task.was : null,
    set: told ? task.set : null,
    result: told ? task.result : null,
    listed: true,
  };
}

const dated = ({ due, at, left, by }: DueWhen) => ({ due, at, left, by });

function openState(
  { job, relations, open }: Standing,
  { spec }: TaskNow,
  pieces: readonly string[],
  due: 'due' | 'later',
): TestState {
  const place = relations.at.get(spec.key) ?? -1;
  const isOut = (piece: PieceNow | undefined) =>
    piece !== undefined && piece.where !== 'home' && !isBack(piece);
  const waits =
    open.next.some((tos) => tos.includes(place)) ||
    pieces.some((key) => isOut(job.pieces.get(key)));
  return waits ? 'waits' : due;
}

function byRule(standing: Timed, piece: PieceNow, rule: TestRule): TestItem {
  const say = `${piece.spec.name}: ${rule.say}`;
  return itself(standing, piece, { key: rule.key, say, when: rule.when });
}

/** Bolts that the maker wants looked at again. */
function lookAgain(standing: Timed, piece: PieceNow): TestItem[] {
  const passes = passesOf(piece.spec, standing.job.upper.kinds);
  return passes.flatMap((pass) => {
    if (pass.after === null) return [];
    const torque = pass.torque ? `, ${pass.torque.text}` : '';
    const say = `${piece.spec.name}: tighten again, cold${torque}.`;
    const item = itself(standing, piece, { key: 'again', say, when: `after ${pass.after}` });
    const through =
      piece.holes.length > 0 && piece.holes.every((h) => h.passes.includes(pass.name));
    return [through ? { ...item, state: 'passed' as const } : item];
  });
}

function itself(
  standing: Timed,
  piece: PieceNow,
  { key, say, when }: { key: string; say: string; when: string | null },
): TestItem {
  const { lines, rounds } = standing;
  const { key: name } = piece.spec;
  const test = `${name}-${key}`;
  const done = lines.done.get(test);
  const line = done && done.index > rounds(name).start ? lines.all[done.index] : undefined;
  const due = whenDue(standing, when, lines.on.get(name)?.at ?? null);
  const marked = line && (line.value === 'failed' ? ('failed' as const) : ('passed' as const));
  return {
    test,
    pieces: [name],
    say,
    limit: null,
    when,
    ...dated(due),
    state: marked ?? (isBack(piece) ? due.state : 'waits'),
    stops: [],
    was: line?.was ?? null,
    set: line?.set ?? null,
    result: line?.result ?? null,
    listed: false,
  };
}
