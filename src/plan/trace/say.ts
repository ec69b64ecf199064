/** The fault traced, in words: for the command and the screen. */
import { proofKey } from '../../job/form/trace-keys.ts';
import type { Job } from '../../model/types.ts';
import { list, many } from '../../model/words.ts';
import type { Look, Share, TraceConflict, TraceWay } from '../../trace/types.ts';
import { NOT_LISTED } from '../../trace/types.ts';
import { cautionsForLook } from '../care/cautions.ts';
import { sayDuration } from '../time/duration.ts';
import { goneTask } from './found.ts';
import { minutesIn } from './input.ts';
import type { LookMade } from './looks.ts';
import { onlyWarmSaid } from './starts.ts';
import { checkSaid, type FoundNow, isUnmended, type Traced } from './traced.ts';

export const suspectSaid = (job: Job, name: string): string =>
  name === NOT_LISTED ? name : (job.upper.suspects.get(name)?.what ?? name);

export const pieceSaid = (job: Job, name: string): string =>
  job.pieces.get(name)?.spec.name ?? name;

/** `coil, switch or plug`, as one says them. */
export function suspectsSaid(job: Job, names: readonly string[], joined = 'or'): string {
  return list(
    names.map((name) => suspectSaid(job, name)),
    joined,
  );
}

/** `3 min`, `1 h 10 min`; `2 looks` where no time of the file is known. */
export function minutesSaid(minutes: number, unit: 'minutes' | 'looks'): string {
  if (unit === 'looks') return many(Math.round(minutes * 10) / 10, 'look');
  return minutes < 1 ? 'under a minute' : sayDuration(minutes * 60);
}

/** What a look takes, as the file says it: where it says nothing, what it was reckoned as is no time of it. */
export function takesSaid(
  job: Job,
  check: string,
  minutes: number,
  unit: 'minutes' | 'looks',
): string {
  const known = unit === 'looks' || minutesIn(job.upper.checks.get(check)?.takes ?? null) !== null;
  return known ? minutesSaid(minutes, unit) : 'time not known';
}

const SHARES: Readonly<Record<Share, string>> = {
  often: 'often',
  'now and then': 'now and then',
  rarely: 'rarely',
  left: 'left',
  alike: 'alike',
  cleared: 'cleared',
};

export interface TraceRow {
  name: string;
  /** `often`, `left`, `cleared`, `found`. */
  share: string;
  what: string;
  /** By what it is cleared: the last look that speaks against it, in words and with its time; null while it is not. */
  by: string | null;
}

/** The suspects in their order: those left, the cleared ones, what was found. */
export function traceRows(job: Job, now: Traced): TraceRow[] {
  const { answer, looks, found } = now;
  // Who was not cleared when it was found is no suspect any more once that was all, and was not looked at either.
  const wasAll = now.proved && !now.next && (now.complaint ?? 'gone') === 'gone';
  const rows = answer.suspects.map(({ name, share, cleared }) => ({
    name,
    share:
      wasAll && cleared.length === 0
        ? 'not it'
        : shareSaid(job, name, share, looks, cleared, found.length > 0),
    what: suspectSaid(job, name),
    by: cleared.length === 0 ? null : clearedBy(job, cleared, looks),
  }));
  const put = found.map((one) => {
    const by = `${foundState(one)}, ${clock(one.at)}`;
    return { name: one.suspect, share: 'found', what: suspectSaid(job, one.suspect), by };
  });
  return [...rows, ...put];
}

/** How far what was found has come: only its mending makes it put right, only a look or a test proves it. */
function foundState(one: FoundNow): string {
  if (isUnmended(one)) return one.proved ? 'good since, mending not noted' : 'not put right yet';
  const state = one.proved ? 'proved' : 'not proved yet';
  return one.mend === null ? state : `put right, ${state}`;
}

/** One that nobody called likely or rare counts like the mean of the others: no word of ours stands for that. */
function shareSaid(
  job: Job,
  name: string,
  share: Share,
  looks: readonly LookMade[],
  cleared: readonly string[],
  anyFound: boolean,
): string {
  if (share === 'cleared')
    return cleared.every((check) => isBad(check, looks)) ? 'not alone' : 'cleared';
  if (share === 'left' && anyFound) return 'may be';
  const unsaid = job.upper.suspects.get(name)?.likely == null;
  return unsaid && share !== 'left' && share !== 'alike' ? 'may be' : SHARES[share];
}

const lastOf = (check: string, looks: readonly LookMade[]): LookMade | undefined =>
  looks.findLast((look) => look.check === check && look.says !== 'unclear');

/** A bad look clears the suspects that it does not show, but not for certain: two at once may be at fault. */
const isBad = (check: string, looks: readonly LookMade[]): boolean =>
  lastOf(check, looks)?.says === 'bad';

function clearedBy(job: Job, checks: readonly string[], looks: readonly LookMade[]): string {
  const said = checks.map((name) => {
    const look = lastOf(name, looks);
    if (!look) return checkSaid(job, name);
    return `${lookSaid(job, look)}${look.says === 'bad' ? '; alone it would not do that' : ''}`;
  });
  const [first = ''] = said;
  return said.length < 2 ? first : `${first}; and ${many(said.length - 1, 'more look')}`;
}

/** `Coil primary: 0.94 ohm, limit 0.8..1.2 ohm, good, 18:09`. */
export function lookSaid(job: Job, look: LookMade): string {
  const { check, reading, limit, at } = look;
  // One with a limit and no reading was let through without.
  const none = limit === null ? [] : ['without a reading'];
  const read = reading === null ? none : [reading, ...(limit === null ? [] : [`limit ${limit}`])];
  return `${checkSaid(job, check)}: ${[...read, saysOf(look), clock(at)].join(', ')}`;
}

const clock = (at: string): string => at.slice(11, 16);

/** What a look needs, each in a sentence: what comes off first, what must be so, what is to be minded. */
export function needsSaid(job: Job, { check, opens }: Look): string[] {
  const spec = job.upper.checks.get(check);
  const warm = onlyWarmSaid(job.upper);
  return [
    ...(opens.length === 0 ? [] : [`First off: ${list(opens.map((p) => pieceSaid(job, p)))}.`]),
    ...(spec && spec.needs.length > 0 ? [`It needs: ${list(spec.needs)}.`] : []),
    ...(warm === null ? [] : [warm]),
    ...lookCautions(job, check),
  ];
}

/** What may hurt at a look: the file's own, and what is usual. */
export function lookCautions(job: Job, check: string): string[] {
  const spec = job.upper.checks.get(check);
  return spec ? cautionsForLook(spec) : [];
}

/** Of a look that is asked for again. */
export const onceMoreSaid = ({ onceMore }: Traced): string[] =>
  onceMore ? ['It told nothing, and no other look tells more: once more, or another way.'] : [];

/** What good and what bad would leave. */
export function outcomesSaid(
  job: Job,
  { good, bad }: Look,
  found: boolean,
): { good: string; bad: string } {
  const left = (names: readonly string[], none: string) =>
    names.length === 0 ? none : suspectsSaid(job, names);
  const none = `${NOT_LISTED}, or a look was wrong`;
  return { good: left(good, found ? 'the repair is proved' : none), bad: left(bad, none) };
}

/** Whom either answer would blame or clear, of those that are still suspected, for before it is given. */
export function answersSaid(
  job: Job,
  look: Look,
  { answer }: Traced,
): { good: string; bad: string } {
  const { good, bad } = outcomesSaid(job, look, false);
  const left = answer.suspects.filter(({ cleared }) => cleared.length === 0);
  const clears = left.map(({ name }) => name).filter((name) => !look.good.includes(name));
  if (clears.length === 0) return { good, bad };
  const same = clears.length === look.bad.length && clears.every((name) => look.bad.includes(name));
  const cleared = same ? (clears.length === 1 ? 'it' : 'them') : suspectsSaid(job, clears, 'and');
  return { good: `clears ${cleared}; left: ${good}`, bad };
}

/** The rest of the way, as lines that step in; the looks behind the first only. */
export function waySaid(job: Job, way: TraceWay, unit: 'minutes' | 'looks'): string[] {
  const lines = (of: TraceWay | string[], says: 'good' | 'bad', deep: number): string[] => {
    const lead = `${'  '.repeat(deep)}${says}: `;
    if (Array.isArray(of)) return [`${lead}${suspectsSaid(job, of) || NOT_LISTED}`];
    return [
      `${lead}${checkSaid(job, of.check)} (${takesSaid(job, of.check, of.minutes, unit)})`,
      ...lines(of.good, 'good', deep + 1),
      ...lines(of.bad, 'bad', deep + 1),
    ];
  };
  return [...lines(way.good, 'good', 0), ...lines(way.bad, 'bad', 0)];
}

export function expectedSaid({ answer }: Traced): string {
  const { minutes, exact, unit, ratio, bound } = answer.expected;
  const whole = `${minutesSaid(minutes, unit)} on the whole until you know`;
  if (exact) return `${whole}.`;
  const best = minutesSaid(bound, unit);
  const times = ratio === null ? '' : `, at most ${ratio.toFixed(2)} times that`;
  return `${whole}; no way takes less than ${best}${times}.`;
}

/** All that may explain it where it does not fit. */
export function conflictSaid(
  job: Job,
  { diagnoses, doubts, again, larger }: TraceConflict,
): string[] {
  const sets = diagnoses.map((set) => suspectsSaid(job, set, 'and'));
  const wrong = doubts.map((set) => list(set.map((name) => checkSaid(job, name))));
  return [
    'It does not fit: no single one of them explains all looks. It may be:',
    ...sets.map((set) => `  ${set}`),
    ...(larger ? ['  or more than three of them at once'] : []),
    ...(wrong.length === 0 ? [] : ['Or one of these looks was wrong:']),
    ...wrong.map((set) => `  ${set}`),
    ...(again === null ? [] : [`The cheapest to look at once more: ${checkSaid(job, again)}.`]),
  ];
}

/** `bad`; or `bad, let through beyond its limit because “meter says so”`, where a reason let it through. */
function saysOf({ says, because }: LookMade): string {
  return because === null ? says : `${says}, let through beyond its limit because “${because}”`;
}

/** Where nothing is left to look at, why. */
export function endSaid(job: Job, now: Traced): string[] {
  const { found, proved, complaint, mending } = now;
  if (found.length > 0 && proved) {
    const rest = complaint === 'still' ? restSaid(job, now) : [];
    return [...provedSaid(job, found), ...complaintSaid(job, now), ...rest];
  }
  return mending ? mendSaid(job, now, mending) : restSaid(job, now);
}

/** Of those that are left, none of which can be looked at any more. */
function restSaid(job: Job, { answer, next, found, proved }: Traced): string[] {
  const left = answer.suspects.filter(({ cleared }) => cleared.length === 0);
  const last = found.at(-1);
  if (next || answer.conflict) return [];
  if (job.upper.suspects.size === 0) return ['Nothing is listed that it may be.'];
  if (left.length === 0)
    return last ? [`${suspectSaid(job, last.suspect)} was all there was.`] : [];
  if (left.length === 1) {
    const one = suspectSaid(job, left[0]?.name ?? '');
    // What was found may have been all: the next one is named only for the case that it was not.
    const before =
      last && !proved
        ? `Found, and not proved yet: ${suspectSaid(job, last.suspect)}. If that was not all, it is`
        : 'It is';
    return [`${before} ${one}, or ${NOT_LISTED}.`, ...sureSaid(job, answer)];
  }
  const names = left.map(({ name }) => name);
  const order = answer.order.filter((name) => names.includes(name));
  const one = left.length === 2 ? 'Either of these two' : 'Any of these';
  return [
    `${one}: no check here tells them apart.`,
    `Put right in this order: ${order.map((name) => suspectSaid(job, name)).join(', then ')}.`,
  ];
}

/** Put right is only what was marked so. */
function provedSaid(job: Job, found: Traced['found']): string[] {
  const last = found.at(-1);
  const said = last ? suspectSaid(job, last.suspect) : '';
  if (last?.mend == null) return [`Found, and good since: ${said}.`];
  if (!isUnmended(last)) return [`Found, put right and proved: ${said}.`];
  return [`Found, and good since: ${said}. What was done about it is not noted yet.`];
}

/** What brought the machine in is not gone because one look is good. */
function complaintSaid(job: Job, { complaint }: Traced): string[] {
  if (complaint === 'untried') {
    const say = goneTask(job)?.spec.say.text ?? '';
    return [`Last of all: ${say}.`];
  }
  return complaint === 'still' ? ['The complaint is there still: that was not all.'] : [];
}

/** What was found, and nothing done about it: that is next, and by what it is proved then. */
function mendSaid(job: Job, { proof }: Traced, { suspect }: FoundNow): string[] {
  const test = job.tasks.get(proofKey(suspect))?.spec.say.text;
  const proves = proof === null ? test : `${checkSaid(job, proof)}, once more`;
  return [
    `Found: ${suspectSaid(job, suspect)}. It is not put right yet.`,
    ...(proves === undefined ? [] : [`What proves it then: ${proves}.`]),
  ];
}

/** The look that would show it, before anything is bought for it. */
function sureSaid(job: Job, { proof, expected }: Traced['answer']): string[] {
  if (!proof) return [];
  const time = takesSaid(job, proof.check, proof.minutes, expected.unit);
  return [
    `To be sure, look at this too: ${checkSaid(job, proof.check)} (${time}). Bad says that it is so.`,
  ];
}

/** Readings before and behind what was put right, side by side: `Coil primary: 0.4 ohm, now 0.94 ohm`. */
export function besideSaid(job: Job, { looks }: Traced): string[] {
  const names = [...new Set(looks.map(({ check }) => check))];
  return names.flatMap((name) => {
    const mine = looks.filter(({ check }) => check === name);
    const now = mine.at(-1);
    const before = mine.findLast(({ round }) => round < (now?.round ?? 1));
    if (!now || !before) return [];
    const said = (look: LookMade) =>
      look.reading === null ? saysOf(look) : `${look.reading} (${saysOf(look)})`;
    return [`${checkSaid(job, name)}: before ${said(before)}, now ${said(now)}`];
  });
}

/** Checks without a time of their own, for which the mean of the others is taken. */
export function untimedSaid(job: Job, { answer }: Traced): string {
  const { checks, covers } = answer.untimed;
  if (answer.expected.unit === 'looks') return 'No times are known: each look counts alike.';
  const names = [
    ...checks.map((name) => checkSaid(job, name)),
    ...covers.map((name) => `${pieceSaid(job, name)} off`),
  ];
  return names.length === 0 ? '' : `No time is known for ${list(names)}: taken as the others.`;
}
