/** Looks after what others do to the files that are shown: an editor, a command beside it, git. */

import { dirname } from 'node:path';
import { JOB_DRAFT } from '../base/drafts.ts';
import type { State } from '../base/state.ts';
import { begunJob, halfMade } from '../show/half-made.ts';
import type { Loop } from './loop.ts';
import type { Files } from './loop-files.ts';
import type { Shelf } from './shelf.ts';
import type { Timers } from './timers.ts';

/** ms. An editor or git touches a file several times for one change. */
const SETTLED = 50;
const NOTHING = JSON.stringify({ drafts: {}, wish: null });
/** ms. Until a mark that could not be saved is tried again. */
const AGAIN = 2000;

/**
 * Watches from the first state on. `pressed` looks for itself, since not every file system tells of changes;
 * while nothing happens, and all is saved, no timer runs.
 */
export function attendFiles(
  loop: Loop<State>,
  folder: string,
  files: Files,
  shelf: Shelf,
  timers: Timers,
  now: () => string,
): { pressed(): void; stop(): void } {
  const watched = new Map<string, () => void>();
  let takeBack: (() => void) | null = null;
  let again: (() => void) | null = null;
  let minute = loop.state().now.slice(0, 16);

  function lookAt(file: string): void {
    files.expect(file);
    loop.ask({ do: 'open', file });
  }

  function look(): void {
    const { open, view, bench } = loop.state();
    if (open !== null && files.changed(open.file)) lookAt(open.file);
    if (bench !== null && view.screen === 'bench') loop.ask({ do: 'list', folder: bench.folder });
  }

  function touched(name: string | null): void {
    // Locks and what is written beside come and go with every mark.
    if (name !== null && !/\.ya?ml$/i.test(name)) return;
    takeBack?.();
    takeBack = timers.later(SETTLED, look);
  }

  function watch(where: string): void {
    if (!watched.has(where)) watched.set(where, shelf.watch(where, touched));
  }

  const note = files.note();
  if (note !== null) void loop.idle().then(() => loop.happen({ on: 'quiet', say: note }));
  files.onWake((file) => {
    if (loop.state().open?.file === file) lookAt(file);
  });
  watch(folder);
  let opened: string | null = null;
  let stopped = false;
  function tryAgain(): void {
    again = null;
    loop.happen({ on: 'again' });
  }

  let kept = '';
  /** What is half typed outlives whatever ends the program: on disk before it is drawn. */
  function keepHalf(): void {
    const { open } = loop.state();
    keepBegun();
    if (open === null) return;
    const half = halfMade(loop.state());
    const now = `${open.file} ${JSON.stringify(half)}`;
    if (now === kept) return;
    // Mostly nothing is half done, and nothing was kept: then the disk is left alone.
    if (kept !== '' || now !== `${open.file} ${NOTHING}`) files.keepHalf(open.file, half);
    kept = now;
  }

  let begun = loop.state().bench?.begun ?? '';
  /** What is typed of a job that has no file yet is kept too, under the bench. */
  function keepBegun(): void {
    if (loop.state().bench === null) return;
    const now = begunJob(loop.state()) ?? '';
    if (now === begun) return;
    files.keepHalf('.', { drafts: now === '' ? {} : { [JOB_DRAFT]: now }, wish: null });
    begun = now;
  }

  const unsubscribe = loop.subscribe(() => {
    keepHalf();
    const { view, waiting } = loop.state();
    if (view.screen === 'unsaved' && waiting === null) again ??= timers.later(AGAIN, tryAgain);
    const file = loop.state().open?.file ?? null;
    if (file === null || file === opened) return;
    opened = file;
    // A job file may be a link to one elsewhere.
    watch(dirname(shelf.real(files.pathOf(file))));
    void files.newPhotos(file).then((say) => {
      const { open, quiet } = loop.state();
      if (stopped || say === null || quiet !== null || open?.file !== file) return;
      loop.happen({ on: 'quiet', say });
    });
  });

  return {
    pressed() {
      const { open } = loop.state();
      if (open !== null && files.changed(open.file)) lookAt(open.file);
      const time = now();
      if (time.slice(0, 16) === minute) return;
      minute = time.slice(0, 16);
      loop.happen({ on: 'time', now: time });
    },
    stop() {
      stopped = true;
      files.stop();
      unsubscribe();
      takeBack?.();
      again?.();
      for (const stop of watched.values()) stop();
    },
  };
}
