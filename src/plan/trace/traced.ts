/** The fault of a job, traced: suspects and checks of the file, looks of the diary, the way to each from the plan. */

import { mendKey, proofKey } from '../../job/form/trace-keys.ts';
import { kept } from '../../model/kept.ts';
import type { CheckSpec, Job, TaskNow } from '../../model/types.ts';
import { readTrace } from '../../trace/read.ts';
import { trace } from '../../trace/trace.ts';
import type { Check, Cover, Look, TraceAnswer, TraceInput, TraceMark } from '../../trace/types.ts';
import { reach } from '../order/reach.ts';
import { measured } from './clock.ts';
import { goneTask, isThereStill } from './found.ts';
import { checksOf, minutesIn, suspectsOf } from './input.ts';
import { type FoundMade, type LookMade, looksOf, stillSpeaking, triedName } from './looks.ts';

export interface Traced {
  /** Of the suspects that were not found yet. A look that told nothing has no part in it while another tells something. */
  answer: TraceAnswer;
  /** What to look at next: where something was found, first the look that proves it. */
  next: Look | null;
  /** What was found and is to be put right before that look; null where it was, or a look was made all the same. */
  mending: FoundNow | null;
  /** It told nothing so far, and nothing else would tell more. */
  onceMore: boolean;
  /** Each check of the file, in its order: its minutes, and what good and what bad would leave now. */
  ahead: Look[];
  looks: readonly LookMade[];
  /** In their order, each with whether it is proved. */
  found: FoundNow[];
  /** The check that proves what was found last; null where no look showed it. */
  proof: string | null;
  /** That check, or its test, came out good since. */
  proved: boolean;
  /** With that the complaint itself: not tried yet, tried and gone, or there still. Null where the proof was all. */
  complaint: 'untried' | 'gone' | 'still' | null;
}

export interface FoundNow extends FoundMade {
  proved: boolean;
  /** The task by which it is put right; null where the file has none. */
  mend: TaskNow | null;
}

/** Its mending was not marked as done yet. */
export const isUnmended = (one: FoundNow | undefined): boolean =>
  one?.mend != null && (one.mend.done === null || one.mend.done === 'failed');

export function traced(job: Job): Traced {
  return kept(job, 'traced', () => make(job));
}

function make(job: Job): Traced {
  const { looks, found } = looksOf(job);
  const asked = askedOf(job, looks, found);
  const { answer, unclear } = answerTo(asked);
  const proofs = proofsOf(job, found, looks, asked.shows);
  const last = proofs.at(-1);
  const { check: proof = null, proved = false } = last ?? {};
  const complaint = complaintNow(job);
  const still = complaint === 'still';
  // With all that was found put right and nothing bad any more, nothing is left to be explained.
  const settled = !still && (proved || (found.length > 0 && !isBadStill(asked.input.marks)));
  const ahead = (name: string) => lookAhead(asked, answer, name);
  /** The look that proves what was found, if it still is to be made; nothing is left where it comes out good. */
  const proving = (isToMake: (made: readonly LookMade[]) => boolean): Look | null => {
    const open = proofs.findLast(({ check, proved: is, after }) => {
      const made = looks.slice(after).filter((l) => l.check === check);
      return check !== null && !is && isToMake(made);
    });
    return open?.check ? { ...ahead(open.check), good: [] } : null;
  };
  const ends = proved && !still;
  const next = proving(notMade) ?? (ends ? null : (answer.next ?? proving(toldNothing)));
  const waits = isUnmended(last) && !proved && looks.length === last?.after;
  return {
    answer: settled ? { ...answer, conflict: null } : answer,
    next,
    mending: (waits ? last : null) ?? null,
    onceMore: next !== null && unclear.has(next.check),
    ahead: job.upper.checks.size === 0 ? [] : [...job.upper.checks.keys()].map(ahead),
    looks,
    found: proofs.map(({ check: _, ...one }) => one),
    proof,
    proved,
    complaint,
  };
}

/** What the tracing room is asked. */
interface Asked {
  /** Without the suspects that were found, and without looks that these explain. */
  input: TraceInput;
  /** What a check shows by itself and by way of others, what was found included. */
  shows: (check: string) => ReadonlySet<string>;
}

function askedOf(job: Job, looks: readonly LookMade[], found: readonly FoundMade[]): Asked {
  const covers = coversOf(job);
  const suspects = suspectsOf(job.upper);
  const checks = [...checksBehind(job), ...triesOf(looks)];
  const read = readTrace({ suspects, checks, covers, marks: [] });
  const shown = new Map(read.checks.map(({ name, shows }) => [name, shows]));
  const shows = (check: string) => shown.get(check) ?? new Set<string>();
  const gone = new Set(found.map(({ suspect }) => suspect));
  const input = {
    // What was put right is none of them any more; a check keeps showing all that it shows.
    suspects: suspects.filter(({ name }) => !gone.has(name)),
    checks: checks.map((check) => without(check, gone)),
    covers,
    marks: stillSpeaking(looks, found, shows).filter(({ check }) => shown.has(check)),
  };
  return { input, shows };
}

/** What told nothing is not asked again at once; with nothing else to look at, it is. */
function answerTo({ input, shows }: Asked): { answer: TraceAnswer; unclear: Set<string> } {
  const unclear = unclearNow(input.marks);
  const others = unclear.size === 0 ? null : trace(lessChecks(input, unclear, shows));
  return { answer: others?.next ? others : trace(input), unclear };
}

/** A check of the file as it would be made now: its minutes, and what good and what bad would leave. */
function lookAhead({ input, shows }: Asked, { suspects }: TraceAnswer, name: string): Look {
  const check = input.checks.find((one) => one.name === name);
  const opens = check ? [...check.behind] : [];
  const minutes = input.covers
    .filter((cover) => opens.includes(cover.name))
    .reduce((sum, { takes }) => sum + (takes ?? 0), check?.takes ?? 0);
  const left = suspects.filter(({ cleared }) => cleared.length === 0).map((s) => s.name);
  return {
    ...{ check: name, minutes, opens },
    good: left.filter((one) => !shows(name).has(one)),
    bad: left.filter((one) => shows(name).has(one)),
  };
}

function complaintNow(job: Job): Traced['complaint'] {
  const gone = goneTask(job);
  if (gone === null) return null;
  if (isThereStill(job)) return 'still';
  return gone.done === null || gone.done === 'failed' ? 'untried' : 'gone';
}

/** Of a look that proves something: it was not made since, or told nothing whenever it was. */
const notMade = (made: readonly LookMade[]): boolean => made.length === 0;
const toldNothing = (made: readonly LookMade[]): boolean =>
  made.every(({ says }) => says === 'unclear');

/** Each thing that was found, with the check that proves it, its mending, and whether it is proved. */
function proofsOf(
  job: Job,
  found: readonly FoundMade[],
  looks: readonly LookMade[],
  shows: (check: string) => ReadonlySet<string>,
) {
  return found.map((one) => {
    const check = proofOf(one, looks, shows);
    const mend = job.tasks.get(mendKey(one.suspect)) ?? null;
    return { ...one, check, mend, proved: isProved(job, one, check, looks) };
  });
}

/** Some look came out bad, and the same one never good after it. */
function isBadStill(marks: readonly TraceMark[]): boolean {
  return marks.some(
    ({ check, says }, i) =>
      says === 'bad' && !marks.slice(i + 1).some((m) => m.check === check && m.says === 'good'),
  );
}

/** Without these checks; what the others show by way of them stays. */
function lessChecks(
  input: TraceInput,
  names: ReadonlySet<string>,
  shows: (check: string) => ReadonlySet<string>,
): TraceInput {
  const listed = new Set(input.suspects.map(({ name }) => name));
  const checks = input.checks
    .filter(({ name }) => !names.has(name))
    .map((check) => {
      const bad = [...shows(check.name)].filter((name) => listed.has(name));
      return { ...check, bad, along: [] };
    });
  return { ...input, checks, marks: input.marks.filter(({ check }) => !names.has(check)) };
}

/** Checks of which no look told anything, the last one neither. */
function unclearNow(marks: readonly TraceMark[]): Set<string> {
  const unclear = new Set<string>();
  for (const { check, says } of marks) if (says === 'unclear') unclear.add(check);
  for (const { check, says } of marks) if (says !== 'unclear') unclear.delete(check);
  return unclear;
}

/** Leaves out suspects that were put right: the tracing room no longer knows them, and would call them faults of the file. */
function without(check: Check, gone: ReadonlySet<string>): Check {
  if (gone.size === 0) return check;
  const left = (names: readonly string[]) => names.filter((name) => !gone.has(name));
  return { ...check, bad: left(check.bad), along: left(check.along) };
}

/** Each check with every piece that has to come off for it and is still on. */
function checksBehind(job: Job): Check[] {
  const ways = new Map<string, string[]>();
  const way = (piece: string): string[] => {
    const known = ways.get(piece) ?? reach(job, piece);
    ways.set(piece, known);
    return known;
  };
  return checksOf(job.upper).map((check) => {
    const over = check.behind.filter((piece) => job.pieces.has(piece));
    return { ...check, behind: [...new Set(over.flatMap(way))] };
  });
}

/** How long each piece takes to come off: the file's word, else this diary's clock. */
function coversOf(job: Job): Cover[] {
  const clock = measured(job);
  return [...job.pieces.values()].map(({ spec }) => {
    const takes = minutesIn(spec.takes?.text ?? null) ?? clock.get(spec.key)?.off ?? null;
    return { name: spec.key, takes };
  });
}

/** A part changed to try shows its own suspect and no other. One that told nothing is no look that could be made. */
function triesOf(looks: readonly LookMade[]): Check[] {
  const told = looks.filter(({ says }) => says !== 'unclear');
  const tried = new Set(told.flatMap(({ suspect }) => (suspect === null ? [] : [suspect])));
  return [...tried].map((suspect) => {
    return { name: triedName(suspect), takes: null, bad: [suspect], along: [], behind: [] };
  });
}

/** The last look before it that was bad and shows it. */
function proofOf(
  { suspect, after }: FoundMade,
  looks: readonly LookMade[],
  shows: (check: string) => ReadonlySet<string>,
): string | null {
  const bad = looks
    .slice(0, after)
    .findLast((l) => l.suspect === null && l.says === 'bad' && shows(l.check).has(suspect));
  return bad?.check ?? null;
}

function isProved(
  job: Job,
  { suspect, after }: FoundMade,
  proof: string | null,
  looks: readonly LookMade[],
): boolean {
  const test = job.tasks.get(proofKey(suspect));
  const last = looks.slice(after).findLast((l) => l.check === proof && l.says !== 'unclear');
  return last ? last.says === 'good' : isPassed(test);
}

/** What was beyond its limit proves nothing, whatever let it through. */
const isPassed = (test: TaskNow | undefined): boolean =>
  test != null && test.done !== null && test.done !== 'failed' && test.judged !== 'beyond';

/** The check's own words, for a name as the tracing room has it. */
export function checkSaid(job: Job, name: string): string {
  const spec: CheckSpec | undefined = job.upper.checks.get(name);
  if (spec) return spec.check;
  const suspect = name.replace(/ tried$/, '');
  return `${job.upper.suspects.get(suspect)?.what ?? suspect}: new part tried`;
}
