/** What a job knows that is worth knowing the next time: each with its day. */
import { livingEntries } from '../job/diary/living.ts';
import { sayEntryOf } from '../job/fold/say-entry.ts';
import { mendKey } from '../job/form/trace-keys.ts';
import { besidePrinted } from '../job/truth/corrections.ts';
import { buyRow, buyState, isHere } from '../model/states/buys.ts';
import { TROUBLES, troubleOf } from '../model/states/troubles.ts';
import { secondsOf } from '../model/time.ts';
import type { Entry, Job } from '../model/types.ts';
import { verbRow } from '../model/verbs/verbs.ts';
import { isBack } from '../plan/order/needed.ts';
import { sayDuration } from '../plan/time/duration.ts';

/** What something known is about, in a word, in the order in which it is told. */
export const ABOUTS = {
  /** A bolt that did not want to come. */
  stuck: 'stuck',
  /** Sheared, rounded, pulled, a stud that came out. */
  broke: 'broke',
  /** How a thread was mended. */
  insert: 'mended',
  /** A number that was fitted, or was here when its piece went back; and one that did not fit. */
  part: 'part',
  not: 'did not fit',
  true: 'not as printed',
  /** What belongs in a hole, where file and find differed. */
  settled: 'settled',
  /** A test that failed afterwards, and why. */
  failed: 'failed later',
  /** What the fault was, and what was done about it. */
  found: 'the fault',
  /** How long it was off, or took. */
  time: 'time',
  /** What somebody marked as worth knowing. */
  kept: 'kept',
};
export type About = keyof typeof ABOUTS;
const ORDER = Object.keys(ABOUTS);

export interface Known {
  about: About;
  piece: string | null;
  hole: string | null;
  text: string;
  /** `2025-11-03`; null where the diary does not say. */
  day: string | null;
  /** Of the entry that says it, null for what the file says. */
  id: string | null;
}

/** The last day on which something happened to the machine; null where nothing did. */
export function lastDayOf(job: Job): string | null {
  const last = livingEntries(job.entries).findLast((e) => !verbRow(e.verb).afterwards);
  return last ? dayOf(last) : null;
}

/** The last day on which the piece came off, bolts or all; null where it did not. */
export function offDayOf(job: Job, piece: string): string | null {
  const off = livingEntries(job.entries).findLast(
    (e) => e.piece === piece && (e.verb === 'removed' || e.verb === 'out'),
  );
  return off ? dayOf(off) : null;
}

/** Of one piece, or of the whole job without one; in the order of happening, times last. */
export function remember(job: Job, piece?: string): Known[] {
  const living = livingEntries(job.entries);
  const about = (e: Entry) => piece === undefined || e.piece === piece;
  const known = [
    ...living.flatMap((entry) => (about(entry) ? ofEntry(entry, job) : [])),
    ...partsKnown(job, living, piece),
    ...failedTests(job, living, piece),
    ...faults(job, living, piece),
    ...kept(job, living, piece),
    ...times(job, living, piece),
  ];
  return known.sort((a, b) => ORDER.indexOf(a.about) - ORDER.indexOf(b.about));
}

const dayOf = (entry: Entry): string => entry.at.slice(0, 10);

function knownOf(entry: Entry, about: About, text: string): Known {
  const { piece = null, hole, id } = entry;
  return { about, piece, hole: hole?.join(', ') ?? null, text, day: dayOf(entry), id };
}

function ofEntry(entry: Entry, job: Job): Known[] {
  const { verb, value, says, hole } = entry;
  const where = hole?.join(', ') ?? '';
  const told = says === undefined ? '' : `: ${says}`;
  const trouble = verb === 'state' ? TROUBLES.find((one) => one === value) : undefined;
  if (trouble !== undefined) {
    const about = troubleOf(trouble).nextTime;
    return about === null ? [] : [knownOf(entry, about, `${where} ${value}${told}`)];
  }
  if (verb === 'state' && value === 'mended')
    return [knownOf(entry, 'insert', `${where} mended${told}`)];
  if (verb === 'corrected') {
    const holds = job.corrections.find((c) => c.id === entry.id);
    if (!holds) return [];
    const of = [entry.task, where, holds.what].filter((t) => t).join(', ');
    return [knownOf(entry, 'true', `${of}: ${besidePrinted(holds.says, holds.printed)}`)];
  }
  if (verb === 'settle') {
    const was = entry.was === undefined ? '' : `, not ${entry.was}`;
    return [knownOf(entry, 'settled', `${where} takes ${value}${was}`)];
  }
  return [];
}

/** Things to buy of a piece: by their steps, `alternator on`. */
function isFor(steps: readonly string[], piece: string | undefined): boolean {
  return piece === undefined || steps.some((s) => s.split(' ')[0] === piece);
}

function partsKnown(job: Job, living: readonly Entry[], piece: string | undefined): Known[] {
  return [...job.upper.buys.values()].flatMap((buy): Known[] => {
    if (!isFor(buy.for, piece)) return [];
    const marks = living.filter((e) => e.buy === buy.key && e.verb === 'done');
    const last = marks.at(-1);
    const state = buyState(last?.value ?? '');
    const of = buy.for[0]?.split(' ')[0] ?? null;
    const owner = of !== null && job.upper.pieces.has(of) ? of : null;
    const base = { piece: owner, hole: null, day: last ? dayOf(last) : null, id: last?.id ?? null };
    const told = last?.says === undefined ? '' : `: ${last.says}`;
    // What came short is no mistake to be warned of: more of the same came later.
    if (state && buyRow(state).noGood && state !== 'short')
      return [{ ...base, about: 'not', text: `${buy.what}, ${state}${told}` }];
    // Once the piece is on again, what was here has gone in; before, it only lies there.
    const at = owner === null ? undefined : job.pieces.get(owner);
    const fits = state !== null && isHere(state) && (state === 'fitted' || !at || isBack(at));
    const only = state === 'fitted' ? '' : ', here, not noted as fitted';
    return fits ? [{ ...base, about: 'part', text: `${buy.what}${told}${only}` }] : [];
  });
}

/** What failed once the piece was back: `weep: failed, oil at 7`. */
function failedTests(job: Job, living: readonly Entry[], piece: string | undefined): Known[] {
  return living.flatMap((entry): Known[] => {
    const task = entry.task === undefined ? undefined : job.upper.tasks.get(entry.task);
    if (!task || entry.verb !== 'done' || entry.value !== 'failed') return [];
    const steps = [...task.after, ...task.before, ...task.while];
    if (!isFor(steps, piece)) return [];
    const why = [entry.result, entry.says].filter((t) => t !== undefined && t !== 'failed');
    const last = living.findLast((e) => e.task === task.key && e.verb === 'done');
    const later = last?.value === 'failed' ? [] : [PASSED_LATER];
    const text = [[task.say.text, ...why].join(': '), ...later].join('; ');
    const of = steps[0]?.split(' ')[0] ?? null;
    const owner = of !== null && job.upper.pieces.has(of) ? of : null;
    return [{ ...knownOf(entry, 'failed', text), piece: owner }];
  });
}

/** Of a test that failed and was made again. */
export const PASSED_LATER = 'passed in the end';

/** What the fault was, and how it was put right; of the piece in which it sits. */
function faults(job: Job, living: readonly Entry[], piece: string | undefined): Known[] {
  return living.flatMap((entry): Known[] => {
    const suspect = job.upper.suspects.get(entry.suspect ?? '');
    if (entry.verb !== 'found' || !suspect) return [];
    const owner =
      suspect.piece !== null && job.upper.pieces.has(suspect.piece) ? suspect.piece : null;
    if (piece !== undefined && owner !== piece) return [];
    const mend = living.findLast((e) => e.task === mendKey(suspect.key) && e.verb === 'done');
    const how = [mend?.result, mend?.says].filter((t) => t !== undefined && t !== 'done');
    const text = `${suspect.what}${how.length === 0 ? '' : `: ${how.join(', ')}`}`;
    return [{ ...knownOf(entry, 'found', text), piece: owner }];
  });
}

function kept(job: Job, living: readonly Entry[], piece: string | undefined): Known[] {
  return living.flatMap((entry): Known[] => {
    if (entry.verb !== 'keep') return [];
    const told = living.find((e) => e.id === entry.value);
    if (!told || (piece !== undefined && told.piece !== piece)) return [];
    const says = told.says === undefined || told.verb === 'corrected' ? '' : `: ${told.says}`;
    const text = told.verb === 'note' ? told.value : `${sayEntryOf(told, job)}${says}`;
    return [knownOf(told, 'kept', text)];
  });
}

/** s. A longer pause is none of the work. */
const PAUSE = 45 * 60;

/** How long the work on a piece took, as far as its marks show: pauses longer than three quarters of an hour left out. */
function times(job: Job, living: readonly Entry[], piece: string | undefined): Known[] {
  const keys = piece === undefined ? [...job.upper.pieces.keys()] : [piece];
  return keys.flatMap((key): Known[] => {
    const spec = job.upper.pieces.get(key);
    const marks = living.filter((e) => e.piece === key);
    const last = marks.at(-1);
    const worked = workedOn(marks);
    const base = { about: 'time' as const, piece: key, hole: null };
    const day = last ? dayOf(last) : null;
    if (worked >= 60)
      return [{ ...base, text: `${sayDuration(worked)} of marks`, day, id: last?.id ?? null }];
    return spec?.takes ? [{ ...base, text: spec.takes.text, day: null, id: null }] : [];
  });
}

/** s between the marks, pauses left out. */
function workedOn(marks: readonly Entry[]): number {
  let sum = 0;
  for (let i = 1; i < marks.length; i++) {
    const gap = secondsOf(marks[i]?.at ?? '') - secondsOf(marks[i - 1]?.at ?? '');
    if (gap > 0 && gap <= PAUSE) sum += gap;
  }
  return sum;
}
