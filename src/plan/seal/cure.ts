/**
 * What has been sealed and must not be loaded yet. The clock runs from the last bolt of the last pass; how long, says
 * the joint of the piece, in the words of the tube. Before that nothing breaks, but it weeps.
 */

import { kept } from '../../model/kept.ts';
import { printInstant, readInstant } from '../../model/time.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { capital } from '../../model/words.ts';
import { lastPassAt } from '../../piece/passes.ts';
import { fillsIn, fluidsOf } from '../care/fluids.ts';
import { reachable } from '../order/graph.ts';
import type { DiaryLine, Lines } from '../order/lines.ts';
import { isBack } from '../order/needed.ts';
import { spoken } from '../order/relations.ts';
import { type Standing, standingOf } from '../order/standing.ts';
import { sayTime } from '../time/days.ts';
import { CURES, jointOf } from './joint.ts';

export interface Cure {
  piece: string;
  name: string;
  /** In the words of the file: `sealant cures 12 h`. */
  says: string;
  /** RFC 3339, in the zone of now; null for a wait that names no time. */
  until: string | null;
  /** The task of the file that waits for the same, and tells it already; null where there is none. */
  wait: string | null;
  /** What must not be done before it is over. */
  dont: string[];
}

/** `now` is RFC 3339. */
export function curesNow(job: Job, now: string): readonly Cure[] {
  return curesOf(standingOf(job, now));
}

/** Those that run, in the order of the file: what is over, off again or untimed is silent. */
function curesOf(standing: Standing): readonly Cure[] {
  return kept(standing, 'cures', () => findCures(standing));
}

function findCures(standing: Standing): Cure[] {
  return [...standing.job.pieces.values()].flatMap((piece) => {
    if (!isBack(piece)) return [];
    const wait = waitFor(standing, piece);
    const found = wait === null ? byJoint(standing, piece) : byWait(standing, wait);
    if (!found) return [];
    const { key, name } = piece.spec;
    return [{ piece: key, name, ...found, wait, dont: dontYet(standing, key) }];
  });
}

/** Those that no task of the file tells. */
export function untoldCures(standing: Standing): Cure[] {
  return curesOf(standing).filter((cure) => cure.wait === null);
}

/** `Sealant cures 12 h, until 07:40 tomorrow. Don't load it.` */
export function sayCure({ says, until, dont }: Cure, now: string): string {
  const end = until === null ? '' : `, until ${sayTime(until, now)}`;
  return `${capital(says)}${end}. ${capital(dont.join(', '))}.`;
}

/** The same with its piece before it, for places where several are told. */
export function sayCureOf(cure: Cure, now: string): string {
  const { name, says } = cure;
  return `${name}: ${says}${sayCure(cure, now).slice(says.length)}`;
}

type Found = Pick<Cure, 'says' | 'until'>;

function byJoint({ lines, now, job }: Standing, piece: PieceNow): Found | null {
  const { cure, cures: says } = jointOf(piece.spec);
  if (cure === null || says === null) return null;
  const last = (hole: string) => lastPassAt(piece.spec, job.upper.kinds, hole);
  const line = closedBy(lines, piece, last);
  const from = line === null ? null : readInstant(line.at);
  if (from === null || from.seconds + cure <= now.seconds) return null;
  return { says, until: printInstant({ ...now, seconds: from.seconds + cure }) };
}

/**
 * The line with which the joint was closed after it was last open: all bolts through the last pass, or the piece on its
 * place where it has none. One bolt renewed or turned again makes no new joint; null where it was never open.
 */
function closedBy(
  { all }: Lines,
  { spec, holes }: PieceNow,
  last: (hole: string) => string,
): DiaryLine | null {
  const names = holes.map((h) => h.name);
  const out = new Set<string>();
  const done = new Set<string>();
  let opened = false;
  let closed: DiaryLine | null = null;
  for (const line of all) {
    if (line.piece !== spec.key) continue;
    const of = line.hole ?? names;
    if (line.verb === 'out') for (const hole of of) out.add(hole);
    if (line.verb === 'in') for (const hole of of) out.delete(hole);
    if (line.verb === 'removed' || (line.verb === 'out' && out.size === names.length)) {
      opened = true;
      closed = null;
      done.clear();
    }
    if (!opened || closed) continue;
    if (line.verb === 'tight') {
      for (const hole of of) if (line.value === last(hole)) done.add(hole);
    }
    const shut = names.length > 0 ? done.size === names.length : line.verb === 'fitted';
    if (shut) closed = line;
  }
  return closed;
}

/** The task that waits for it, done or not: whoever wrote it says when it is over. */
function waitFor({ job }: Standing, { spec }: PieceNow): string | null {
  const waits = kept(job.upper, 'waits for cures', () =>
    [...job.upper.tasks.values()]
      .filter((task) => task.verb === 'wait' && CURES.test(task.say.text))
      .map(({ key, after }) => ({ key, after: new Set(after.map(spoken)) })),
  );
  return waits.find(({ after }) => after.has(`${spec.key} on`))?.key ?? null;
}

function byWait({ job, relations, finished, now }: Standing, key: string): Found | null {
  const running = finished.running.get(relations.at.get(key) ?? -1);
  const says = job.tasks.get(key)?.spec.say.text;
  if (!running || says === undefined) return null;
  const { until } = running;
  return {
    says,
    until: until === null ? null : printInstant({ ...now, seconds: until }),
  };
}

function dontYet(standing: Standing, piece: string): string[] {
  const open = [...standing.job.tasks.values()].filter(
    (t) => fillsIn(t.spec.say.text) && !isDone(standing, t.spec.key),
  );
  const held = open.length === 0 ? [] : heldByCure(standing, { piece });
  const fills = held.map((place) => standing.relations.steps[place]?.key);
  const behind = open.filter((t) => fills.includes(t.spec.key)).map((t) => t.spec.key);
  const out = fluidsOf(standing).filter(
    (f) => f.out && (f.fill === null || behind.includes(f.fill)),
  );
  return [
    "don't load it",
    ...out.map((fluid) => `don't fill ${fluid.what} in`),
    ...(behind.length > 0 && out.length === 0 ? ["don't fill anything in"] : []),
    "don't run it",
  ];
}

function isDone({ relations, finished }: Standing, key: string): boolean {
  return finished.done[relations.at.get(key) ?? -1] === true;
}

/** Seconds for which its joint will have to cure once it is on; null where it has not, or where a task waits for it. */
export function willCure(standing: Standing, piece: PieceNow): number | null {
  const { cure } = jointOf(piece.spec);
  return cure === null || waitFor(standing, piece) !== null ? null : cure;
}

/** It has to cure, and nothing says how long in a figure: its words; null otherwise, or where a task waits for it. */
export function untimedCure(standing: Standing, piece: PieceNow): string | null {
  const { untimed } = jointOf(piece.spec);
  return untimed === null || waitFor(standing, piece) !== null ? null : untimed;
}

/** Work that makes it run. */
const RUNS = /\b(?:start|run|fire up|ride|drive)\b/i;

/** Steps that would load it: what is filled in, run and tested behind it; places in `relations.steps`. */
export function heldByCure(
  { job, relations, finished }: Standing,
  { piece }: Pick<Cure, 'piece'>,
): number[] {
  const on = relations.at.get(`${piece} on`);
  if (on === undefined) return [];
  return [...reachable(relations.graph, [on])].filter((place) => {
    const step = relations.steps[place];
    if (!step || finished.done[place]) return false;
    const say = job.tasks.get(step.key)?.spec.say.text ?? '';
    return step.kind === 'test' || (step.kind === 'do' && (fillsIn(say) || RUNS.test(say)));
  });
}
