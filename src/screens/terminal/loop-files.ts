/** What the screens want of job files, carried out: reading, marking, listing, committing. */
import type { Wrench } from '../../bolt/wrench.ts';
import { findBench } from '../../diary/bench.ts';
import { commitPlace } from '../../diary/milestone.ts';
import { fold } from '../../job/fold/fold.ts';
import { readJob } from '../../job/read.ts';
import { record } from '../../job/save/record.ts';
import { readText } from '../../job/save/text.ts';
import type { Job, Recorded, UpperChange, Wish } from '../../model/types.ts';
import type { World } from '../../world.ts';
import type { FileState } from '../base/state.ts';
import { benchRow } from './bench-row.ts';
import type { Hands } from './loop.ts';
import { keepShown } from './loop-shown.ts';

/** What is asked of the file system beside the files' texts. */
export interface Shelf {
  /** Names in the folder, null when it cannot be read. */
  names(folder: string): string[] | null;
  /** Another text whenever the file was changed; null: there is none. */
  mark(path: string): string | null;
  /** Calls after a change in the folder, with the name if the system says it. Answers how to stop. */
  watch(folder: string, changed: (name: string | null) => void): () => void;
  /** The folder where the file really is, behind links. */
  folderOf(path: string): string;
  /**
   * What a name in the folder is: a file there, one that a link out of the folder leads to, or nothing that
   * could be read to its end (a folder, a pipe, a device, a link to nowhere).
   */
  leadsTo(folder: string, name: string): 'file' | 'elsewhere' | null;
  /** Waits until what has been pressed meanwhile was read. */
  breath(): Promise<void>;
}

export interface Files {
  hands: Omit<Hands, 'ring' | 'soon'>;
  pathOf(file: string): string;
  /** Whether the file is another than when it was last read or written here. */
  changed(file: string): boolean;
}

/** None where the settings of the bench cannot be read: a job opens all the same. */
function wrenchesOf(folder: string): readonly Wrench[] {
  try {
    return findBench(folder)?.wrenches ?? [];
  } catch {
    return [];
  }
}

/** A key at the top of the file makes it a job; other YAML in the folder is none of ours. */
const IS_JOB = /^\uFEFF?["']?putback["']?\s*:/m;
const IS_YAML = /\.ya?ml$/i;

const leadsOut = (name: string) => ({
  say: `${name} is a link that leads out of this bench.`,
  fix: 'Open it by its own path, if you trust it.',
});

/** `file` in all effects is a name in `folder`. */
export function filesIn(folder: string, world: Pick<World, 'now' | 'id'>, shelf: Shelf): Files {
  const seen = new Map<string, { mark: string | null; read: FileState }>();
  const pathOf = (file: string) => `${folder}/${file}`;
  const shown = keepShown(pathOf, world.now);
  /** What marks of this sitting did to the person's part, by their ids: an undo puts it back. */
  const uppers = new Map<string, UpperChange>();
  /** Links in the bench that lead out of it: what they lead to is nobody's business before they are named. */
  const elsewhere = new Set<string>();

  /** What the text of the file says; null: it is no job file. Read again only after a change. */
  function read(file: string, asJob: boolean): FileState | null {
    const mark = shelf.mark(pathOf(file));
    const before = seen.get(file);
    if (before && mark !== null && before.mark === mark) return before.read;
    const state = readNow(file, asJob);
    if (state !== null) seen.set(file, { mark, read: state });
    return state;
  }

  function readNow(file: string, asJob: boolean): FileState | null {
    const found = readText(pathOf(file));
    if (!found.ok) {
      const { code, say, fix } = found;
      return { ok: false, unread: { code, say, fix } };
    }
    if (!asJob && !IS_JOB.test(found.text)) return null;
    const { upper, entries, faults, unreadable } = readJob(found.text, file);
    return unreadable ? { ok: false, faults } : { ok: true, job: fold(upper, entries), faults };
  }

  function keep(file: string, job: Job): void {
    const before = seen.get(file)?.read;
    const faults = before?.ok ? before.faults : [];
    seen.set(file, { mark: shelf.mark(pathOf(file)), read: { ok: true, job, faults } });
  }

  /** The same, with all that was shown of it back in the file; `say` when something had to be done for that. */
  async function readKept(file: string, asJob: boolean) {
    const state = read(file, asJob);
    if (state === null || !state.ok || !shown.has(file)) return { state, say: null };
    const missed = await shown.mend(file, state.job.entries);
    if (missed === null || missed.mended === null) return { state, say: missed?.say ?? null };
    const mended: FileState = { ok: true, ...missed.mended };
    seen.set(file, { mark: shelf.mark(pathOf(file)), read: mended });
    return { state: mended, say: missed.say };
  }

  /** The mark, and what an editor swept away in the instant before it. */
  async function recordKept(file: string, wish: Wish): Promise<Recorded> {
    const before = isChanged(file) && shown.has(file) ? (await readKept(file, true)).say : null;
    const back = wish.do === 'undo' ? uppers.get(wish.id ?? '') : undefined;
    const result = await record(pathOf(file), wish, world, { back });
    if (!('job' in result)) return result;
    if (result.ok && result.entry && result.upper) uppers.set(result.entry.id, result.upper);
    const missed = await shown.mend(file, result.job.entries);
    const job = missed?.mended?.job ?? result.job;
    keep(file, job);
    if (missed === null) shown.saw(file, job.entries);
    else shown.also(file, job.entries);
    if (!result.ok) return { ...result, job };
    const said = [before, missed?.say ?? null].filter((say) => say !== null);
    const warnings = [...result.warnings, ...said.map((say) => ({ code: 'written-again', say }))];
    return { ...result, job, warnings };
  }

  function isChanged(file: string): boolean {
    const before = seen.get(file);
    return before !== undefined && shelf.mark(pathOf(file)) !== before.mark;
  }

  const hands: Files['hands'] = {
    async record({ file, wish }) {
      return { on: 'recorded', file, wish, result: await recordKept(file, wish) };
    },
    async open({ file }) {
      const wrenches = wrenchesOf(folder);
      if (elsewhere.has(file)) {
        const unread = { code: 'elsewhere', ...leadsOut(file) };
        return { on: 'file', file, read: { ok: false, unread }, wrenches };
      }
      const { state, say } = await readKept(file, true);
      if (state === null) throw new Error(`${file} was asked for as a job and is none`);
      if (state.ok && say === null) shown.saw(file, state.job.entries);
      return { on: 'file', file, read: state, wrenches, ...(say === null ? {} : { say }) };
    },
    async list() {
      const names = (shelf.names(folder) ?? []).filter((n) => IS_YAML.test(n)).sort();
      const jobs = [];
      for (const name of names) {
        const where = shelf.leadsTo(folder, name);
        if (where === 'elsewhere') {
          elsewhere.add(name);
          const unread = { code: 'elsewhere', ...leadsOut(name) };
          jobs.push(benchRow(name, { ok: false, unread }, world.now()));
        } else if (where === 'file') {
          const { state } = await readKept(name, false);
          if (state !== null) jobs.push(benchRow(name, state, world.now()));
        }
        await shelf.breath();
      }
      return { on: 'bench', jobs };
    },
    async milestone({ file, piece, place }) {
      const state = seen.get(file)?.read;
      const now = state?.ok ? state.job.pieces.get(piece) : undefined;
      if (now === undefined || findBench(folder)?.commit !== 'milestones') return null;
      const say = await commitPlace(pathOf(file), now, place);
      return say === null ? null : { on: 'quiet', say };
    },
  };

  return {
    hands,
    pathOf,
    changed: isChanged,
  };
}
