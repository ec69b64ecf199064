/** Looks at a fault: how one came out, what was changed to try, and what it was in the end. */
import { holdAgainst, isReading, sayReading } from '../../../bolt/read/reading.ts';
import { hasFigure, readLimit } from '../../../bolt/read/reading-limit.ts';
import { oneLine } from '../../../model/safe.ts';
import type {
  CheckSpec,
  Edit,
  Entry,
  Job,
  Looked,
  NamedSection,
  TaskNow,
  Upper,
  Verdict,
  Warning,
} from '../../../model/types.ts';
import { NO_READING } from '../../../model/verbs/verbs.ts';
import { NAME } from '../../diary/entry.ts';
import { type OpenTry, openTries } from '../../fold/tries.ts';
import { asCheck, asSuspect } from '../../form/trace-fields.ts';
import { isGoneKey, mendKey, proofKey } from '../../form/trace-keys.ts';
import {
  checkLine,
  lookTakenWhole,
  readCheckLine,
  readSuspectLine,
  suspectLine,
  takenWhole,
} from '../../form/typed-trace.ts';
import {
  already,
  judgedAnew,
  list,
  meant,
  refuse,
  type Stamp,
  type Undone,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { judgeLookDone } from './done.ts';
import { startBack } from './start.ts';

function noSuspect(job: Job, suspect: string) {
  const say = `No suspect ${suspect} in this job.${meant(suspect, job.upper.suspects.keys())}`;
  return wrong('no-such-suspect', say, { suspect });
}

/**
 * A reading is judged by the check's limit; without one the person says how it came out. Good where there is a limit, and
 * nothing was measured that can be held against it, needs a reason: it would clear somebody.
 */
export function judgeLook(job: Job, wish: Wished<'look'>, stamp: Stamp): Verdict {
  const check = job.upper.checks.get(wish.check);
  if (!check) {
    const say = `No check ${wish.check} in this job.${meant(wish.check, job.upper.checks.keys())}`;
    return wrong('no-such-check', say, { check: wish.check });
  }
  const right = rightLook(job, check, wish, stamp);
  if (right) return judgedAnew(judgeLook(job, right.wish, stamp), right.say);
  const { how, because } = wish;
  const reading = oneLine(wish.reading ?? '').trim() || undefined;
  const held = reading === undefined ? null : heldAgainst(check, reading);
  const said = how ?? held?.says;
  if (said === undefined) {
    if (held?.noUnit) return wrong('no-unit', `${held.say}.`, { limit: check.limit });
    const say = held?.say ?? unheld(check, reading);
    return wrong('say-how', `${say} Say good, bad or unclear.`, { check: check.key });
  }
  const against = how !== undefined && how !== 'unclear' && held?.says && held.says !== how;
  if (against && because === undefined) {
    return refuse('against-limit', `${held.say} That is ${held.says}.`, { limit: check.limit });
  }
  const byHand = held !== null && held.says === undefined;
  const unsure = said === 'unclear' ? null : unmeasured(check, reading, byHand ? held.say : null);
  if (unsure && said === 'good' && because === undefined && readable(check.limit)) {
    const give = held?.noUnit ? '.' : ' Give the figure.';
    return refuse(unsure.code, `${unsure.say}${give}`, { limit: check.limit });
  }
  const warnings: Warning[] = unsure ? [unsure] : [];
  const judged = against || byHand ? 'by hand' : said === 'good' ? 'within' : 'beyond';
  const limit = check.limit === null ? {} : { limit: check.limit };
  const bare = unsure?.code === 'no-reading' ? { ...limit, judged: NO_READING } : {};
  const beside =
    reading === undefined
      ? bare
      : { result: reading, ...limit, ...(check.limit === null ? {} : { judged }) };
  const test = said === 'unclear' ? null : provedBy(job, check.key);
  if (test) {
    const word = said === 'bad' ? 'failed' : 'passed';
    const { key: task } = test.spec;
    if (said === 'good' || reading === undefined) {
      return judgeLookDone(
        job,
        { ...toldBeside(wish), do: 'done', task, result: reading ?? word },
        stamp,
      );
    }
    if (test.done === word && test.result === reading) return already(warnings);
    return write(stamp, wish, { verb: 'done', value: word, task, ...beside }, { warnings });
  }
  const what = { verb: 'looked', value: said, check: check.key, ...beside } as const;
  return write(stamp, wish, what, { warnings });
}

/** The right figure, given where a reason was asked for: the limit says what it means. */
export function rightLook(
  job: Job,
  { limit }: CheckSpec,
  { because, how, ...wish }: Wished<'look'>,
  stamp: Stamp,
): { wish: Wished<'look'>; say: string } | null {
  const read = limit === null ? null : readLimit(limit);
  if (because === undefined || read === null || !isReading(because, read)) return null;
  const without = judgeLook(job, how === undefined ? wish : { ...wish, how }, stamp);
  if (without.ok || !without.refused.overrulable) return null;
  const say = `${sayReading(because, read)} is a reading, and no reason`;
  return { wish: { ...wish, reading: because.trim() }, say };
}

const toldBeside = ({ says, because }: Wished<'look'>) => ({
  ...(says === undefined ? {} : { says }),
  ...(because === undefined ? {} : { because }),
});

/** The test that proves what was found, where it is this look once more: one mark says both. Of several the last. */
function provedBy(job: Job, check: string): TaskNow | null {
  const found = job.entries.filter((e) => e.verb === 'found' && job.living.has(e.id));
  const tests = found.flatMap(({ suspect }) => job.tasks.get(proofKey(suspect ?? '')) ?? []);
  return (
    tests.findLast(({ spec: { proves } }) => proves.length === 1 && proves[0] === check) ?? null
  );
}

/** Why nothing says how it came out. */
function unheld({ check, limit }: CheckSpec, reading: string | undefined): string {
  if (reading === undefined)
    return limit === null ? '' : `There is no reading to hold against ${limit}.`;
  return limit === null
    ? `${check} has no limit that says what ${reading} means.`
    : `Nothing in ${limit} says what ${reading} means.`;
}

/** What was not held against a limit: a look without a reading, one that is no figure, a limit that was not read. */
function unmeasured(
  { limit }: CheckSpec,
  reading: string | undefined,
  unread: string | null,
): Warning | null {
  if (reading !== undefined || limit === null) {
    return unread === null ? null : { code: 'unread-reading', say: unread };
  }
  if (readable(limit)) {
    return { code: 'no-reading', say: `Nothing measured to hold against ${limit}.` };
  }
  const say = `The limit “${limit}” was not read whole, and nothing was measured.`;
  return hasFigure(limit) ? { code: 'unread-limit', say } : null;
}

const readable = (limit: string | null): boolean => limit !== null && readLimit(limit) !== null;

/** What the limit says of a reading: `says` absent where it cannot be told, and `say` why. Null without a limit. */
function heldAgainst(
  { limit }: CheckSpec,
  reading: string,
): { says?: Exclude<Looked, 'unclear'>; say: string | null; noUnit?: boolean } | null {
  if (limit === null) return null;
  const read = readLimit(limit);
  if (!read) {
    const odd = `The limit “${limit}” was not read whole: hold the reading against it yourself.`;
    return { say: hasFigure(limit) ? odd : null };
  }
  const held = holdAgainst(reading, read);
  if (held.is === 'within') return { says: 'good', say: `${reading} is within ${limit}.` };
  if (held.is === 'beyond') return { says: 'bad', say: `${held.say}.` };
  return held.noUnit
    ? { say: held.say, noUnit: true }
    : { say: `${held.say}: it was judged by no limit.` };
}

/** One part at a time: with two changed at once nobody knows which of them it was. */
export function judgeTry(job: Job, wish: Wished<'try' | 'tried'>, stamp: Stamp): Verdict {
  const spec = job.upper.suspects.get(wish.suspect);
  if (!spec) return noSuspect(job, wish.suspect);
  const open = openTries(job);
  const place = { suspect: spec.key };
  const others = open.filter((one) => one.suspect !== spec.key);
  const warnings: Warning[] =
    others.length === 0 ? [] : [{ code: 'two-open', say: sayOpen(job, others) }];
  if (wish.do === 'try') {
    const put = oneLine(wish.put).trim();
    if (put === '') return wrong('nothing-put', 'Say what was put in to try.');
    if (open.some((one) => one.suspect === spec.key && one.put === put)) return already(warnings);
    return write(stamp, wish, { verb: 'tried', value: put, ...place }, { warnings });
  }
  const mine = open.find((one) => one.suspect === spec.key);
  if (!mine && lastTried(job, spec.key) === null) {
    const say = `Nothing was put in to try for ${spec.what}. Say first what was.`;
    return wrong('nothing-tried', say, place);
  }
  const how = wish.how ?? mine?.how ?? null;
  if (how === null) return wrong('say-how', 'Say first how it went: same, gone or unclear.', place);
  const value = typeof how === 'string' && how in LOOKED ? LOOKED[how] : 'unclear';
  const old = wish.old ?? undefined;
  if (old === undefined) {
    const say = `Did the old one go back? Until that is said, ${mine?.put ?? 'the new one'} counts as in.`;
    warnings.push({ code: 'old-open', say });
  }
  const beside = old === undefined ? {} : { old };
  return write(stamp, wish, { verb: 'looked', value, ...place, ...beside }, { warnings });
}

/** The trouble is the same with the new part: it was not this one. */
const LOOKED = { same: 'good', gone: 'bad', unclear: 'unclear' } as const;

function lastTried(job: Job, suspect: string): Entry | null {
  const mine = (e: Entry) => e.suspect === suspect && e.verb === 'tried' && job.living.has(e.id);
  return job.entries.findLast(mine) ?? null;
}

function sayOpen(job: Job, open: readonly OpenTry[]): string {
  const said = open.map(({ suspect, put }) => {
    return `${put} for ${job.upper.suspects.get(suspect)?.what ?? suspect}`;
  });
  return `Two things are changed at once: ${list(said)} ${said.length === 1 ? 'is' : 'are'} still in. Put the old one back first, or nobody knows which it was.`;
}

export function judgeList(job: Job, wish: Wished<'list'>, stamp: Stamp): Verdict {
  const { section, key, fields } = wish;
  const own = section === 'suspects' ? 'what' : 'check';
  const what = fields[own];
  if (typeof what !== 'string' || what.trim() === '') {
    return wrong('nothing-said', 'Say what it may be, or what is looked at.');
  }
  if (!NAME.test(key)) return wrong('bad-name', `${key} is no name.`, { key });
  const known: ReadonlyMap<string, unknown> = job.upper[section];
  if (known.has(key)) return wrong('exists', `${key} is listed already.`, { key });
  const place = section === 'suspects' ? { suspect: key } : { check: key };
  const value = section === 'suspects' ? suspectLine(asSuspect(wish)) : checkLine(asCheck(wish));
  const edits: Edit[] = [{ edit: 'named', section, key, fields }];
  const whole = section === 'suspects' ? takenWhole(what) : lookTakenWhole(what);
  const warnings = whole === null ? [] : [{ code: 'taken-whole', say: whole }];
  return write(stamp, wish, { verb: 'listed', value, ...place }, { edits, warnings });
}

/** What it was: into the file's `found:`, behind what stands there. */
export function judgeFound(job: Job, wish: Wished<'found'>, stamp: Stamp): Verdict {
  const spec = job.upper.suspects.get(wish.suspect);
  if (!spec) return noSuspect(job, wish.suspect);
  const was = job.printed.found;
  const before = (e: Entry) => e.verb === 'found' && e.suspect === spec.key && job.living.has(e.id);
  if (job.entries.some(before)) return already();
  const value = was ? `${was}; ${spec.what}` : spec.what;
  const { buy, mend, test, gone } = wish;
  const tasks = [mend, test, gone].filter((task) => task && !job.upper.tasks.has(task.key));
  const edits: Edit[] = [
    { edit: 'top', key: 'found', was: was || null, text: value },
    ...(buy && !job.upper.buys.has(buy.key)
      ? [{ edit: 'named', section: 'buy', ...buy } as const]
      : []),
    ...tasks.flatMap((task) =>
      task ? [{ edit: 'named', section: 'tasks', ...task } as const] : [],
    ),
  ];
  const what = { verb: 'found', value, suspect: spec.key } as const;
  return write(stamp, wish, { ...what, ...(was ? { was } : {}) }, { edits });
}

/** What an undo of these does to the person's part, as long as it stands there as it was left. */
export function tracedBack(job: Job, entry: Entry, way: UndoWay): Undone {
  const upper = job.printed;
  if (entry.verb === 'found') return foundBack(job, upper, entry, way);
  if (entry.check === undefined && entry.suspect === undefined) return startBack(upper, entry, way);
  const section: NamedSection = entry.check === undefined ? 'suspects' : 'checks';
  const key = entry.check ?? entry.suspect ?? '';
  const now = section === 'suspects' ? upper.suspects.get(key) : upper.checks.get(key);
  if (way === 'back') {
    const naming = namedBy(upper, section, key);
    if (now && naming.length > 0) {
      const one = naming.length === 1 ? 'names' : 'name';
      const say = `${key} stays in the file: ${list(naming)} ${one} it. Take it out there first.`;
      return { edits: [], warnings: [{ code: 'file-stays', say }] };
    }
    const says = now && ('what' in now ? suspectLine(now) : checkLine(now));
    if (says === entry.value) return { edits: [{ edit: 'unnamed', section, key }], warnings: [] };
    const say = `${key} was changed in the file since: that stays as it is.`;
    return { edits: [], warnings: now ? [{ code: 'file-changed', say }] : [] };
  }
  const read =
    section === 'suspects'
      ? readSuspectLine(entry.value, upper)
      : readCheckLine(entry.value, upper);
  if (now || 'say' in read) return { edits: [], warnings: [] };
  return { edits: [{ edit: 'named', section, key, fields: read.fields }], warnings: [] };
}

/** What of the file would name nobody without it, in its own words. */
function namedBy(upper: Upper, section: NamedSection, key: string): string[] {
  const checks = [...upper.checks.values()]
    .filter((c) => c.along.includes(key) || (section === 'suspects' && c.bad.includes(key)))
    .map(({ check }) => check);
  const tasks = [...upper.tasks.values()]
    .filter(({ proves }) => section === 'checks' && proves.includes(key))
    .map(({ say }) => say.text);
  return [...checks, ...tasks];
}

function foundBack(
  job: Job,
  upper: Upper,
  { value, was, suspect = '' }: Entry,
  way: UndoWay,
): Undone {
  const [from, to] = way === 'back' ? [value, was ?? null] : [was ?? null, value];
  const same = (upper.found || null) === from;
  const edits: Edit[] = same ? [{ edit: 'top', key: 'found', was: from, text: to }] : [];
  if (way === 'again') {
    const say =
      'Its part, its mending and its test went with the undo: to have them again, say once more that it was found.';
    return { edits, warnings: [{ code: 'say-anew', say }] };
  }
  const say = 'found: was changed in the file since: that stays as it is.';
  return {
    edits: [...edits, ...followed(job, upper, suspect)],
    warnings: same ? [] : [{ code: 'file-changed', say }],
  };
}

/** What came into the file with it, as long as nobody wrote more of it or marked it. */
function followed(job: Job, { suspects, tasks, buys }: Upper, suspect: string): Edit[] {
  const marked = (key: 'task' | 'buy', name: string) =>
    job.entries.some((e) => e[key] === name && job.living.has(e.id));
  const test = tasks.get(proofKey(suspect));
  const mend = tasks.get(mendKey(suspect));
  const gone = [...tasks.values()].find(
    ({ key, after }) => isGoneKey(key) && after.includes(proofKey(suspect)),
  );
  const goneGoes = gone && !gone.note && !marked('task', gone.key);
  const goes = test !== undefined && !test.note && !marked('task', test.key) && (goneGoes || !gone);
  const mendGoes =
    mend && !mend.note && !marked('task', mend.key) && (goes || !test?.after.includes(mend.key));
  const part = suspects.get(suspect)?.part ?? null;
  const bare = [...buys.values()].find(
    (b) => b.what === part && !buys.has(part) && !b.price && !b.count && !b.from && !b.note,
  );
  return [
    ...(goneGoes ? [{ edit: 'unnamed', section: 'tasks', key: gone.key } as const] : []),
    ...(goes ? [{ edit: 'unnamed', section: 'tasks', key: test.key } as const] : []),
    ...(mendGoes ? [{ edit: 'unnamed', section: 'tasks', key: mend.key } as const] : []),
    ...(bare && !marked('buy', bare.key)
      ? [{ edit: 'unnamed', section: 'buy', key: bare.key } as const]
      : []),
  ];
}
