/** What the screens want of job files, carried out: reading, marking, listing, committing. */
import type { Wrench } from '../bolt/wrench.ts';
import { findBench } from '../diary/bench.ts';
import { commitPlace } from '../diary/milestone.ts';
import { fold } from '../job/fold.ts';
import { readJob } from '../job/read.ts';
import { record } from '../job/save/record.ts';
import { readText } from '../job/save/text.ts';
import type { Job } from '../job/types.ts';
import type { World } from '../world.ts';
import { benchRow } from './bench-row.ts';
import type { Hands } from './loop.ts';
import type { FileState } from './state.ts';

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

/** `file` in all effects is a name in `folder`. */
export function filesIn(folder: string, world: Pick<World, 'now' | 'id'>, shelf: Shelf): Files {
  const seen = new Map<string, { mark: string | null; read: FileState }>();
  const pathOf = (file: string) => `${folder}/${file}`;

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

  const hands: Files['hands'] = {
    async record({ file, wish }) {
      const result = await record(pathOf(file), wish, world);
      if ('job' in result) keep(file, result.job);
      return { on: 'recorded', file, wish, result };
    },
    async open({ file }) {
      const state = read(file, true);
      if (state === null) throw new Error(`${file} was asked for as a job and is none`);
      return { on: 'file', file, read: state, wrenches: wrenchesOf(folder) };
    },
    async list() {
      const names = (shelf.names(folder) ?? []).filter((n) => IS_YAML.test(n)).sort();
      const jobs = [];
      for (const name of names) {
        const state = read(name, false);
        if (state !== null) jobs.push(benchRow(name, state, world.now()));
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
    changed(file) {
      const before = seen.get(file);
      return before !== undefined && shelf.mark(pathOf(file)) !== before.mark;
    },
  };
}
