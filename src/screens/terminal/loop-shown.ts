/**
 * What was shown as done stays, whatever another program makes of the file while it is open here. What is in the
 * file by somebody else's hand is believed when it is whole, is still this job, and has stood still for a while;
 * until then nothing is written into it.
 */
import { realpathSync } from 'node:fs';
import { type GitSaw, gitSaw } from '../../diary/git/moved.ts';
import { lostEntries } from '../../job/diary/lost.ts';
import { readJob } from '../../job/read.ts';
import { howItStands, noJob } from '../../job/same-job.ts';
import { writeAgain } from '../../job/save/again.ts';
import { copyOf, dropCopy, keepCopy } from '../../job/save/kept.ts';
import { type OnDisk, STILL } from '../../job/save/record.ts';
import { elsewhere, leadsAway } from '../../job/save/save.ts';
import { readText } from '../../job/save/text.ts';
import { IS_JOB } from '../../job/yaml/is-job.ts';
import type { Entry, Job } from '../../model/types.ts';
import type { FileState } from '../base/state.ts';
import { dropKept, findKept, keptBefore } from './loop-kept.ts';
import {
  are,
  copy,
  isAppended,
  keepSight,
  keptSay,
  lostIn,
  marks,
  nowState,
  okState,
  type Seen,
  type Sight,
  seenAs,
  sightOf,
  they,
} from './loop-sight.ts';
import type { Shelf } from './shelf.ts';

export interface LookedAt {
  /** What the file says now. */
  now: FileState;
  /** What is to be shown of it: while it is not whole, what it said before. */
  state: FileState;
  /** One line for the person. */
  say: string | null;
  /** Why no mark may be written into it just now; null: one may. */
  no: 'waits' | 'other' | null;
}

/** ms. A text that is no job is waited for so long before the marks that it lacks are kept beside it. */
const HALF = 3000;
/** ms. Until what could not be written again, or what git has in hand, is looked at again. */
const AGAIN = 4000;
/** Nothing of the job is to be found under its name. */
const GONE: readonly string[] = ['gone', 'elsewhere', 'not-plain', 'not-text'];
/** ms. More than a timer can come too early. */
const LATE = 15;

interface Shown {
  /** Whether it was opened in this sitting. */
  has(file: string): boolean;
  /** The file as it is now; null: it is no job, and was not asked for as one. */
  look(file: string, as: 'job' | 'file'): Promise<LookedAt | null>;
  /** Whether a mark may be written into this text of the file. */
  may(file: string, text: string): boolean;
  /** As it stands in the file now. */
  job(file: string): Job | undefined;
  /** Where the file was when it was opened. */
  home(file: string): string | undefined;
  /** A mark is on disk, and this is the file with it. */
  took(file: string, job: Job, disk: OnDisk): void;
  /** Whether somebody has written the file since it was last looked at. */
  changed(file: string): boolean;
  /** Before the end: marks that are not in their file are kept beside it. One line that says so. */
  leave(): Promise<string | null>;
}

/** `wake`: a file is to be looked at again, though nothing may have happened to it. */
export function keepShown(
  pathOf: (file: string) => string,
  now: () => string,
  shelf: Shelf,
  wake: (file: string) => void,
): Shown {
  const sights = new Map<string, Sight>();

  // ---------------------------------------------------------------- looking

  async function look(file: string, as: 'job' | 'file'): Promise<LookedAt | null> {
    const path = pathOf(file);
    const before = sights.get(file);
    const s = before ?? leftBehind(file, path);
    if (s && isAway(path, s.home)) return unread(elsewhere(path));
    const stamp = shelf.mark(path);
    if (s && s.now === null && stamp === s.known.stamp) return believed(s, null);
    if (s?.now && stamp === s.now.seen.stamp) return await judge(file, s, s.now.seen);
    const found = readText(path);
    if (!found.ok) {
      if (s && !s.copied) copy(s);
      return unread(found);
    }
    if (!s && as === 'file' && !IS_JOB.test(found.text)) return null;
    const seen = seenAs(found.text, found.stamp, readJob(found.text, file));
    if (!s) return await first(file, path, seen);
    if (!before) s.now = { seen, at: shelf.clock() - shelf.age(path) };
    return await judge(file, s, seen);
  }

  async function first(file: string, path: string, seen: Seen): Promise<LookedAt> {
    const here = nowState(seen);
    if (!here.ok || noJob(seen.read).length > 0) {
      return { now: here, state: here, say: null, no: null };
    }
    const s = sightOf(shelf.real(path), seen, now());
    sights.set(file, s);
    const age = shelf.age(path);
    if (age > STILL) return believed(s, null);
    s.now = { seen, at: shelf.clock() - age };
    return await judge(file, s, seen);
  }

  /** What a sitting that was killed had shown of the file, whatever has become of that since. */
  function leftBehind(file: string, path: string): Sight | undefined {
    const home = shelf.real(path);
    const left = copyOf(home);
    const read = left && readJob(left.text, file);
    if (!left || !read || read.unreadable) return undefined;
    const s = sightOf(home, seenAs(left.text, '', read), left.at);
    s.copied = true;
    s.kept = keptBefore(home, s.entries);
    sights.set(file, s);
    return s;
  }

  /** What is to be made of a text that somebody else may have put there. */
  async function judge(file: string, s: Sight, seen: Seen): Promise<LookedAt> {
    const lost = lostIn(s, seen);
    const ours = seen.text === s.known.text || isAppended(s.known.text, seen.text);
    if (lost.length === 0 && ours && s.now === null) return adopt(file, s, seen);
    if (s.now?.seen.stamp !== seen.stamp) s.now = { seen, at: shelf.clock() };
    s.free = null;
    if (lost.length > 0 && !s.copied) copy(s);
    const age = shelf.clock() - s.now.at;
    const standing = howItStands(s.known, seen, s.base, lost, age > HALF);
    if (age < STILL) {
      again(file, s, STILL - age + LATE);
      const fine = standing === 'whole' && lost.length === 0;
      return fine
        ? { now: okState(seen), state: okState(seen), say: null, no: 'waits' }
        : held(s, seen, `Another program is saving ${file}: it is waited for.`);
    }
    if (standing === 'half') return half(file, s, seen, lost, age);
    if (standing === 'other') return other(file, s, seen, lost);
    return lost.length === 0 ? adopt(file, s, seen) : await missing(file, s, seen, lost);
  }

  /** It stands still, and cannot be read as this job. */
  function half(file: string, s: Sight, seen: Seen, lost: readonly Entry[], age: number): LookedAt {
    if (lost.length > 0 && age > HALF) keepSight(s);
    else if (lost.length > 0) again(file, s, HALF - age + LATE);
    const n = lost.length;
    const kept = n > 0 && s.kept ? ` It lacks ${marks(n)}. ${keptSay(s, n)}` : '';
    return held(s, seen, `${file} was changed and cannot be read just now.${kept}`);
  }

  function other(file: string, s: Sight, seen: Seen, lost: readonly Entry[]): LookedAt {
    const n = lost.length;
    const ids = lost.map((e) => e.id);
    const where = n === 0 ? null : findKept(s.home, ids);
    if (n > 0 && where === null) keepSight(s);
    const kept = where === null ? keptSay(s, n) : `${they(n)} in ${where}.`;
    const before = s.known.job.upper.job;
    // What could be kept nowhere stays in the copy.
    if (n > 0 && where === null && s.kept === null) s.copied = false;
    const without = n === 0 ? '' : ` ${marks(n)} of “${before}” ${are(n)} not in it. ${kept}`;
    s.kept = null;
    adopt(file, s, seen, 'told');
    s.base = seen;
    return { ...believed(s, `This is another job now.${without}`), no: 'other' };
  }

  /** It is whole and this job, and lacks marks. */
  async function missing(
    file: string,
    s: Sight,
    seen: Seen,
    lost: readonly Entry[],
  ): Promise<LookedAt> {
    const n = lost.length;
    const git = await gitSaw(
      s.home,
      seen.text,
      s.since,
      lost.map((e) => e.id),
    );
    if (git?.underWay) {
      const say = `Git is at work on the file: ${marks(n)} ${are(n)} not in it just now.`;
      return freed(file, s, seen, beside(s, git, say, n));
    }
    if (git?.moved) {
      const say = `Git put another version in place, without ${marks(n)}.`;
      const told = beside(s, git, say, n);
      if (!git.keeps && s.kept === null) s.copied = false;
      s.kept = null;
      adopt(file, s, seen, 'told');
      return believed(s, told);
    }
    const done = await writeAgain(pathOf(file), s.entries, seen.text, { real: s.home });
    if (!done.ok) {
      return freed(file, s, seen, `${marks(n)} ${are(n)} gone from the file. ${done.say}`);
    }
    adopt(file, s, seenAs(done.text, done.stamp, readJob(done.text, file)));
    const w = done.written.length;
    return believed(s, `An older text was saved over the file. Written again: ${marks(w)}.`);
  }

  /** With what git does not keep put beside the job. */
  function beside(s: Sight, git: GitSaw, say: string, n: number): string {
    if (git.keeps) return say;
    keepSight(s);
    return `${say} ${keptSay(s, n)}`;
  }

  // ---------------------------------------------------------------- what is answered

  function believed(s: Sight, say: string | null): LookedAt {
    const state = okState(s.known);
    return { now: state, state, say, no: null };
  }

  /** Nothing is written into it, and the picture stays. */
  function held(s: Sight, seen: Seen, say: string): LookedAt {
    return { now: nowState(seen), state: okState(s.known), say: once(s, say), no: 'waits' };
  }

  /** Shown and marked as it is, though it lacks marks; they are not forgotten. */
  function freed(file: string, s: Sight, seen: Seen, say: string): LookedAt {
    s.free = seen.text;
    again(file, s, AGAIN);
    const state = okState(seen);
    return { now: state, state, say: once(s, say), no: null };
  }

  function unread({ code, say, fix }: { code: string; say: string; fix: string }): LookedAt {
    const state: FileState = { ok: false, unread: { code, say, fix } };
    return { now: state, state, say: null, no: null };
  }

  function once(s: Sight, say: string): string | null {
    if (s.said === say) return null;
    s.said = say;
    return say;
  }

  /** All that was shown is in this text, or it was told where else it is. */
  function adopt(file: string, s: Sight, seen: Seen, rest: 'none' | 'told' = 'none'): LookedAt {
    const all = rest === 'none';
    s.stop?.();
    if (s.copied && all) keepCopy(s.home, seen.text);
    else if (s.copied) dropCopy(s.home);
    if (s.kept) dropKept(s.kept);
    const say = s.said === null ? null : `${file} is whole again.`;
    const { entries } = seen.read;
    Object.assign(s, { known: seen, entries, since: now(), now: null, free: null });
    Object.assign(s, { said: null, copied: s.copied && all, kept: null, stop: null });
    return believed(s, say);
  }

  function again(file: string, s: Sight, ms: number): void {
    s.stop?.();
    s.stop = shelf.later(ms, () => wake(file));
  }

  function took(file: string, job: Job, { text, stamp }: OnDisk): void {
    const s = sights.get(file);
    if (!s) return;
    const read = { ...s.known.read, upper: job.printed, entries: [...job.entries] };
    const seen: Seen = { text, stamp, read, job };
    const more = lostEntries(job.entries, s.entries);
    if (lostIn(s, seen).length === 0) {
      s.copied ||= more.length > 0;
      adopt(file, s, seen);
      return;
    }
    s.entries = [...s.entries, ...more];
    s.now = { seen, at: shelf.clock() - STILL };
    s.free = text;
    copy(s);
  }

  async function leave(): Promise<string | null> {
    const lines: string[] = [];
    for (const [file, s] of sights) {
      const begun = shelf.clock();
      let looked = await look(file, 'job');
      while (looked?.no === 'waits' && shelf.clock() - begun < STILL + 2 * LATE) {
        await new Promise<void>((done) => shelf.later(LATE, done));
        looked = await look(file, 'job');
      }
      // What was found out only now.
      if (looked?.say && looked.no !== 'waits' && s.now === null) lines.push(looked.say);
      const gone = looked && 'unread' in looked.now && GONE.includes(looked.now.unread.code);
      const lost = s.now ? lostIn(s, s.now.seen) : gone ? s.entries : [];
      if (lost.length > 0) lines.push(await putAway(file, s, lost));
      else if (s.copied && s.now === null) dropCopy(s.home);
    }
    return lines.length === 0 ? null : lines.join('\n');
  }

  /** Says where they are, and sees that they are there. */
  async function putAway(file: string, s: Sight, lost: readonly Entry[]): Promise<string> {
    const n = lost.length;
    const ids = lost.map((e) => e.id);
    const git = await gitSaw(s.home, s.now?.seen.text ?? '', s.since, ids);
    if (!git?.keeps) keepSight(s);
    if (git?.keeps || s.kept) dropCopy(s.home);
    const where = git?.keeps ? `${they(n)} in git.` : keptSay(s, n);
    return `${marks(n)} ${are(n)} not in ${file}. ${where}`;
  }

  return {
    has: (file) => sights.has(file),
    look,
    may(file, text) {
      const s = sights.get(file);
      if (!s) return true;
      if (s.now !== null) return text === s.free;
      return text === s.known.text || isAppended(s.known.text, text);
    },
    job(file) {
      const s = sights.get(file);
      return s && (s.now?.seen ?? s.known).job;
    },
    home: (file) => sights.get(file)?.home,
    took,
    changed(file) {
      const s = sights.get(file);
      if (!s) return false;
      return shelf.mark(pathOf(file)) !== (s.now?.seen ?? s.known).stamp;
    },
    leave,
  };
}

function isAway(path: string, home: string): boolean {
  try {
    return leadsAway(path, realpathSync(path), home);
  } catch {
    return false;
  }
}
