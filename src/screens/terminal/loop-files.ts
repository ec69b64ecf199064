/** What the screens want of job files, carried out: reading, marking, listing, committing. */
import { type Bench, findBench, oddIn } from '../../diary/bench.ts';
import { commitPlace } from '../../diary/milestone.ts';
import { linesOfJob, startJob } from '../../diary/start-job.ts';
import { startsShipped } from '../../diary/starts.made.ts';
import { jobOf, readJob } from '../../job/read.ts';
import { keepHalf, readHalf } from '../../job/save/half.ts';
import { SIDE } from '../../job/save/plain.ts';
import { recordSeen, STILL } from '../../job/save/record.ts';
import { beingSaved } from '../../job/save/save.ts';
import { readText } from '../../job/save/text.ts';
import { IS_JOB } from '../../job/yaml/is-job.ts';
import { takeFrom } from '../../memory/bench/earlier.ts';
import { sayLeft } from '../../memory/take.ts';
import type { Half, Job, Recorded, UpperChange, Wish } from '../../model/types.ts';
import { nowHere, type World } from '../../world.ts';
import type { FileState } from '../base/state.ts';
import type { Hands } from './loop.ts';
import { benchHands } from './loop-bench.ts';
import { keepShown, type LookedAt } from './loop-shown.ts';
import type { Shelf } from './shelf.ts';

export interface Files {
  hands: Omit<Hands, 'ring' | 'soon'>;
  pathOf(file: string): string;
  /** Whether the file is another than when it was last read or written here. */
  changed(file: string): boolean;
  /** The next `open` of this file comes from watching it, not from a person: while it is not whole the last picture stays. */
  expect(file: string): void;
  /** Who is told that a file is to be looked at again, though nothing may have happened to it. */
  onWake(wake: (file: string) => void): void;
  /** Keeps what is half done on this job, for the next time it is opened. False: it cannot be kept. */
  keepHalf(file: string, half: Half): boolean;
  /** One line about new photographs of a job that was opened; null: there are none. */
  newPhotos(file: string): Promise<string | null>;
  /** What the person has to know of the bench itself, one line; mostly null. */
  note(): string | null;
  /** Nothing more is read of the bench. */
  stop(): void;
  /** Before the end: one line about marks that are not in their file; null: all are. */
  leave(): Promise<string | null>;
}

/** None where the settings of the bench cannot be read: a job opens all the same. */
function benchOf(folder: string): Bench | null {
  try {
    return findBench(folder);
  } catch {
    return null;
  }
}

/** ms. So long a mark waits for a program that is in the middle of saving its file; and the pause between two looks. */
const PATIENCE = STILL + 900;
const PAUSE = 30;

const leadsOut = (name: string) => ({
  say: `${name} is a link that leads out of this bench.`,
  fix: 'Open it by its own path, if you trust it.',
});

/**
 * `file` in all effects is a name in `folder`. `strange`: what was found among putback's own files and is none of
 * them. `settings`: what is wrong in the user's own. `others`: other benches that are searched.
 */
export function filesIn(
  folder: string,
  world: Pick<World, 'now' | 'id' | 'zone'> & Partial<Pick<World, 'platform' | 'env'>>,
  shelf: Shelf,
  strange: readonly string[] = [],
  settings: string | null = null,
  others: readonly string[] = [],
): Files {
  const { now, id, platform = 'linux', env = {} } = world;
  const desktop = { now: () => now(), id: () => id(), platform, env };
  const pathOf = (file: string) => `${folder}/${file}`;
  const realOf = (file: string) => shown.home(file) ?? shelf.real(pathOf(file));
  let wake: (file: string) => void = () => {};
  const shown = keepShown(pathOf, world.now, shelf, (file) => wake(file));
  /** What marks of this sitting did to the person's part, by their ids: an undo puts it back. */
  const uppers = new Map<string, UpperChange>();
  /** Links in the bench that lead out of it: what they lead to is nobody's business before they are named. */
  const elsewhere = new Set<string>();
  const expected = new Set<string>();

  function readNow(file: string): FileState | null {
    const found = readText(pathOf(file));
    if (!found.ok) {
      const { code, say, fix } = found;
      return { ok: false, unread: { code, say, fix } };
    }
    if (!IS_JOB.test(found.text)) return null;
    const { upper, entries, faults, unreadable } = readJob(found.text, file);
    return unreadable
      ? { ok: false, faults }
      : { ok: true, job: jobOf({ upper, entries, faults }), faults };
  }

  /** The mark, once the file is whole and this job; and what an editor swept away before or behind it. */
  async function recordKept(file: string, wish: Wish): Promise<Recorded> {
    const path = pathOf(file);
    const begun = shelf.clock();
    const said: string[] = [];
    const back = wish.do === 'undo' ? uppers.get(wish.id ?? '') : undefined;
    for (;;) {
      const looked = await shown.look(file, 'job');
      // While it is waited for, only how that ended is told.
      if (looked?.say) said.splice(0, Infinity, looked.say);
      if (looked?.no === 'other') return notThis(looked, said);
      const late = shelf.clock() - begun > PATIENCE;
      if (looked?.no !== 'waits') {
        const may = (text: string) => shown.may(file, text);
        const real = shown.home(file);
        const { recorded, disk } = await recordSeen(path, wish, world, {
          back,
          may,
          real,
          saving: 0,
        });
        const waits = 'unsaved' in recorded && recorded.unsaved.code === 'waits';
        if (!waits && recorded.ok && disk !== null) {
          shown.took(file, recorded.job, disk);
          return await behind(file, recorded, said);
        }
        if (!waits || late) return recorded;
      } else if (late) {
        const { code, say, fix } = beingSaved(path);
        return { ok: false, unsaved: { code, say, fix } };
      }
      await new Promise<void>((done) => shelf.later(PAUSE, done));
    }
  }

  /** With what was missing beside it, or is so again by now. */
  async function behind(
    file: string,
    result: Extract<Recorded, { ok: true }>,
    said: string[],
  ): Promise<Recorded> {
    if (result.entry && result.upper) uppers.set(result.entry.id, result.upper);
    const looked = shown.has(file) ? await shown.look(file, 'job') : null;
    if (looked?.say) said.push(looked.say);
    const job: Job = looked?.no === null && looked.state.ok ? looked.state.job : result.job;
    const warnings = [...result.warnings, ...said.map((say) => ({ code: 'written-again', say }))];
    return { ...result, job, warnings };
  }

  const bench = benchHands({
    folder,
    pathOf,
    now: () => nowHere(world),
    shelf,
    others,
    shown: (name) =>
      shown.has(name) ? shown.look(name, 'file').then((looked) => looked?.state ?? null) : null,
    read: readNow,
    leadsOut(name) {
      elsewhere.add(name);
      return { ok: false, unread: { code: 'elsewhere', ...leadsOut(name) } };
    },
    job: shown.job,
  });

  /** What there is to take over is worked out from both files as they are now; what is not as printed goes with it. */
  async function recordTaken(file: string, wish: Extract<Wish, { do: 'take' }>): Promise<Recorded> {
    const job = shown.job(file);
    const found = job && takeFrom(pathOf(file), job, wish);
    const { pairs = [], truths = [] } = found ?? {};
    const result = await recordKept(file, { ...wish, pairs, truths: truths.length > 0 });
    if (!result.ok || !found) return result;
    let { job: last } = result;
    for (const truth of truths) {
      const came = result.entry === null ? {} : { came: result.entry.id };
      const more = await recordKept(file, { ...truth, ...came });
      if (more.ok) last = more.job;
    }
    const say = sayLeft(found.left);
    const left = say === '' ? [] : [{ code: 'left', say }];
    return { ...result, job: last, warnings: [...result.warnings, ...left] };
  }

  const hands: Files['hands'] = {
    async record({ file, wish }) {
      const result = await (wish.do === 'take' ? recordTaken(file, wish) : recordKept(file, wish));
      return { on: 'recorded', file, wish, result };
    },
    async open({ file }) {
      const again = expected.delete(file);
      const { wrenches = [], hour = null, hours = null } = benchOf(folder) ?? {};
      const bench = { wrenches, hour, hours, starts: startsShipped() };
      if (elsewhere.has(file)) {
        const unread = { code: 'elsewhere', ...leadsOut(file) };
        return { on: 'file', file, read: { ok: false, unread }, ...bench };
      }
      const looked = await shown.look(file, 'job');
      if (looked === null) throw new Error(`${file} was asked for as a job and is none`);
      const read = again || looked.now.ok ? looked.state : looked.now;
      const { say } = looked;
      const half = again || !read.ok ? {} : { half: readHalf(realOf(file)) };
      return { on: 'file', file, read, ...bench, ...(say === null ? {} : { say }), ...half };
    },
    list: bench.list,
    earlier: bench.earlier,
    find: bench.find,
    due: bench.due,
    async start({ file, job, machine }) {
      const made = begun(pathOf(file), job, machine);
      if (made.ok) return await hands.open({ do: 'open', file });
      const { code, say, fix } = made;
      return { on: 'file', file, read: { ok: false, unread: { code, say, fix } }, unmade: true };
    },
    async milestone({ file, piece, place }) {
      const now = shown.job(file)?.pieces.get(piece);
      if (now === undefined || benchOf(folder)?.commit !== 'milestones') return null;
      const say = await commitPlace(pathOf(file), now, place);
      return say === null ? null : { on: 'quiet', say };
    },
    async print({ file, paper, piece, open }) {
      const job = shown.job(file);
      if (!job) return null;
      const { printPaper } = await import('../../paper/desk/print.ts');
      const say = await printPaper({ job, file: pathOf(file), what: paper, piece, open }, desktop);
      return { on: 'quiet', say };
    },
    async show({ file, picture }) {
      const { showPicture } = await import('../../paper/desk/print.ts');
      return { on: 'quiet', say: await showPicture(pathOf(file), picture, desktop) };
    },
  };

  return {
    hands,
    pathOf,
    changed: shown.changed,
    expect: (file) => void expected.add(file),
    onWake(call) {
      wake = call;
    },
    keepHalf: (file, half) => keepHalf(realOf(file), half),
    async newPhotos(file) {
      const [job, bench] = [shown.job(file), benchOf(folder)];
      if (!job || !bench || bench['photos-from'].length === 0) return null;
      const { newPhotosSaid } = await import('../../paper/desk/sweep.ts');
      return await newPhotosSaid(job, bench['photos-from'], bench.folder, world.now());
    },
    note() {
      const odd =
        strange.length === 0
          ? null
          : `${SIDE} holds what is none of putback's, and it is left alone: ${strange.join(', ')}.`;
      const set = benchOf(folder);
      const said = [settings, set && oddIn(set), odd].filter((say) => say !== null);
      return said.length === 0 ? null : said.join(' ');
    },
    leave: shown.leave,
    stop: bench.stop,
  };
}

/** The file of a job that begins, or why there is none. */
function begun(
  path: string,
  job: string,
  machine: string | null,
): { ok: true } | { ok: false; code: string; say: string; fix: string } {
  try {
    return startJob(path, linesOfJob(job, machine ?? undefined));
  } catch (error) {
    const say = `It could not be written: ${error instanceof Error ? error.message : String(error)}.`;
    return { ok: false, code: 'unsaved', say, fix: 'Look at the folder, then start it again.' };
  }
}

/** What was pressed was meant for the job that was shown before. */
function notThis({ state }: LookedAt, said: readonly string[]): Recorded {
  if (!state.ok) throw new Error('another job that cannot be read');
  const say = `${said.join(' ')} Nothing was marked in it.`;
  return {
    ok: false,
    refused: { code: 'other-job', say, data: {}, overrulable: false },
    job: state.job,
  };
}
