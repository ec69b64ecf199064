/** What the screens ask of all jobs of a bench: their rows, earlier ones on a machine, lines that hold words. */

import { foundSaid } from '../../diary/found-said.ts';
import { findSteps } from '../../find/index/find.ts';
import { leaveLittleGarbage } from '../../find/index/lean.ts';
import { type KeptRow, type KeptRows, openRows } from '../../find/index/rows.ts';
import { bestFirst, type Held, question } from '../../find/question.ts';
import { errorCode } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { earlierSteps } from '../../memory/bench/earlier.ts';
import { dueOver } from '../../memory/due.ts';
import type { Job } from '../../model/types.ts';
import type { BenchRow, FileState } from '../base/state.ts';
import { benchRow, rowOn, type TimelessRow, timelessRow } from './bench-row.ts';
import type { Hands } from './loop.ts';
import type { Shelf } from './shelf.ts';

export interface BenchHands extends Pick<Hands, 'list' | 'earlier' | 'find' | 'due'> {
  /** Leaves off what is being read. */
  stop(): void;
}

/** What the rows are made of. */
export interface Sources {
  folder: string;
  pathOf(file: string): string;
  now(): string;
  shelf: Shelf;
  /** Folders of other benches that are searched too. */
  others: readonly string[];
  /** The file as the screens have it, where it was opened in this sitting. */
  shown(file: string): Promise<FileState | null> | null;
  /** The file read from disk; null: it is no job. */
  read(file: string): FileState | null;
  /** A link that leads out of the bench. */
  leadsOut(file: string): FileState;
  /** The job that is open. */
  job(file: string): Job | undefined;
}

const IS_YAML = /\.ya?ml$/i;
/** ms. The first rows are shown as soon as they fill a screen or so long has passed; more then and when. */
const FIRST = 40;
const AGAIN = 250;
const SCREENFUL = 20;
/** Files. A smaller bench is read in a moment, and needs no index. */
const MANY = 50;
/** Rows kept at once. */
const BATCH = 200;
/** ms of work between two looks whether somebody pressed a key. */
const WORK = 12;

export function benchHands(from: Sources): BenchHands {
  const { folder, shelf, now } = from;
  /** Rows of files that nobody has opened, by their stamps. */
  const rows = new Map<string, { mark: string | null; row: TimelessRow | null; day: string }>();
  /** As they were last listed to the end. */
  let shown: readonly BenchRow[] = [];
  let listing = 0;
  let finding = 0;
  let stopped = false;

  /** Lets keys go first, after so much work. */
  function pauses(): () => Promise<void> {
    let from = shelf.clock();
    return async () => {
      if (shelf.clock() - from < WORK) return;
      await shelf.breath();
      from = shelf.clock();
    };
  }

  async function rowOf(
    file: string,
    kept: KeptRows | null,
    put: KeptRow[],
  ): Promise<BenchRow | null> {
    const where = shelf.leadsTo(folder, file);
    if (where === null) return null;
    if (where === 'elsewhere') return benchRow(file, from.leadsOut(file), now());
    const opened = from.shown(file);
    if (opened !== null) {
      const state = await opened;
      return state && benchRow(file, state, now());
    }
    const stamp = shelf.stamp(from.pathOf(file));
    const mark = stamp?.text ?? null;
    const day = now().slice(0, 10);
    const known = rows.get(file);
    const holds =
      known && mark !== null && known.mark === mark && (known.day === '' || known.day === day);
    if (holds) return known.row && rowOn(known.row, now());
    const text = mark === null ? null : (kept?.get(file, mark, day) ?? null);
    const before = text === null ? null : readKept(text);
    if (before) {
      rows.set(file, { mark, row: before, day });
      return rowOn(before, now());
    }
    const read = from.read(file);
    if (read === null) {
      rows.set(file, { mark, row: null, day: '' });
      return null;
    }
    const { day: until, ...made } = timelessRow(file, read, now());
    // A copy: V8 keeps the whole text of a file in memory as long as a part of it is held, and there may be ten thousand.
    const said = JSON.stringify(made);
    const row = JSON.parse(said) as TimelessRow;
    rows.set(file, { mark, row, day: until });
    if (kept && stamp?.still) put.push({ name: file, stamp: stamp.text, day: until, row: said });
    return rowOn(row, now());
  }

  return {
    async list(_, tell = () => {}) {
      listing += 1;
      const own = listing;
      const names = (shelf.names(folder) ?? []).filter((n) => IS_YAML.test(n)).sort();
      const kept = names.length > MANY ? openRows(folder) : null;
      if (names.length > MANY) leaveLittleGarbage();
      const jobs: BenchRow[] = [];
      const before = new Map(shown.map((row) => [row.file, row]));
      const put: KeptRow[] = [];
      let told = shelf.clock() + FIRST - AGAIN;
      let any = false;
      const pause = pauses();
      try {
        for (const [i, name] of names.entries()) {
          const row = await rowOf(name, kept, put);
          if (row !== null) jobs.push(row);
          if (put.length >= BATCH) kept?.put(put.splice(0));
          const full = !any && jobs.length === SCREENFUL;
          if (full || shelf.clock() - told > AGAIN) {
            any = true;
            told = shelf.clock();
            // What was shown before stays until it is read again.
            const left = names.slice(i + 1);
            const still = left.flatMap((n) => before.get(n) ?? []);
            tell({ on: 'bench', jobs: [...jobs, ...still], more: left.length - still.length });
            await shelf.breath();
          } else await pause();
          // Another list is being made, or the person has left.
          if (stopped || own !== listing) return null;
        }
        kept?.put(put);
      } finally {
        kept?.close();
      }
      shown = jobs;
      return { on: 'bench', jobs };
    },
    async earlier({ file }) {
      const job = from.job(file);
      if (!job) return null;
      const steps = earlierSteps(from.pathOf(file), job);
      const pause = pauses();
      for (;;) {
        // The job itself is drawn first.
        await shelf.breath();
        const { value, done } = steps.next();
        if (stopped) return null;
        if (done) return { on: 'earlier', file, before: value.jobs, older: value.older };
        await pause();
      }
    },
    async find({ text }, tell = () => {}) {
      finding += 1;
      const own = finding;
      await shelf.breath();
      const ask = question(text.split(/\s+/));
      if (ask === null) return { on: 'found', text, found: [], unread: [] };
      const found: Held[] = [];
      // Files of which not all, or nothing, could be read.
      const unread: string[] = [];
      let told = shelf.clock();
      for (const bench of new Set([folder, ...from.others])) {
        try {
          const steps = findSteps(bench, ask);
          for (;;) {
            // Somebody typed on: the newer question alone is answered.
            if (stopped || own !== finding) return null;
            const { value, done } = steps.next();
            if (done) {
              const named = (name: string) => (bench === folder ? name : `${bench}/${name}`);
              for (const h of value.held) found.push({ ...h, file: named(h.file) });
              unread.push(...value.unread);
              break;
            }
            if (shelf.clock() - told > AGAIN) {
              told = shelf.clock();
              tell({ on: 'finding', text, ...value });
            }
            await shelf.breath();
          }
        } catch (error) {
          if (errorCode(error) === null) throw error;
          unread.push(failOf(error, bench, 'read').say);
        }
      }
      return { on: 'found', text, found: inWords(found.sort(bestFirst)), unread };
    },
    async due() {
      const all = dueOver(now());
      const unread: string[] = [];
      const pause = pauses();
      for (const name of (shelf.names(folder) ?? []).filter((n) => IS_YAML.test(n)).sort()) {
        await pause();
        if (stopped) return null;
        if (shelf.leadsTo(folder, name) !== 'file') continue;
        const read = from.read(name);
        if (read !== null && (!read.ok || read.job.unread.length > 0)) unread.push(name);
        if (read?.ok && mayBeDue(read.job)) all.add({ file: name, job: read.job });
      }
      return { on: 'due', due: all.list(), unread };
    },
    stop() {
      stopped = true;
    },
  };
}

/** Only a job with a diary, or with a machine whose counter it may tell, says anything of what is due. */
function mayBeDue(job: Job): boolean {
  return job.entries.length > 0 || job.upper.machine !== null;
}

function readKept(text: string): TimelessRow | null {
  try {
    const { row, last } = JSON.parse(text) as TimelessRow;
    return typeof row.file === 'string' && typeof row.job === 'string' ? { row, last } : null;
  } catch {
    return null;
  }
}

/** Lines that are put in words; nobody reads further down, and those behind are shown as they stand in the file. */
const MOST_SAID = 100;

function inWords(found: readonly Held[]): Held[] {
  return found.map((held, i) => {
    const said = held.day === null || i >= MOST_SAID ? null : foundSaid(held.text, null);
    return said === null ? held : { ...held, said };
  });
}
