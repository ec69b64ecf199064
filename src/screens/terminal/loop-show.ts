/** Putback's own show: its first state, its pictures, and hands for one folder of job files. */

import { readHalf } from '../../job/save/half.ts';
import { safeLine } from '../../model/safe.ts';
import type { Job } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { backNow } from '../../plan/next/back.ts';
import { nextNow } from '../../plan/next/next-now.ts';
import { nothingNext } from '../../plan/next/nothing-next.ts';
import { openings } from '../../plan/order/openings.ts';
import { sayWish } from '../../plan/say-wish.ts';
import { nowHere, type World } from '../../world.ts';
import { JOB_DRAFT } from '../base/drafts.ts';
import { start } from '../base/start.ts';
import type { State } from '../base/state.ts';
import { paint } from '../kit/paint.ts';
import type { Palette } from '../kit/palettes.ts';
import type { OwnPresses } from '../kit/press.ts';
import { begunJob, halfMade, onlyNamed, onlyNamedSaid, typedNow } from '../show/half-made.ts';
import { picture } from '../show/picture.ts';
import { openOf } from '../show/screens.ts';
import { update } from '../show/update.ts';
import { asciiOnly, colourAllowed, drawnSize } from './guard.ts';
import { type Files, filesIn } from './loop-files.ts';
import { attendFiles } from './loop-watch.ts';
import type { Shelf } from './shelf.ts';
import type { Show } from './show.ts';
import type { Timers } from './timers.ts';

/** One line about a mark that was not saved when the screens were left; null: there is none. */
function leftUnsaved(state: State, files: Files): string | null {
  const { open, now } = state;
  const half = halfMade(state);
  if (open === null || half.wish === null) return null;
  const mark = sayWish(open.job, half.wish, now) ?? 'it is so already';
  const kept = files.keepHalf(open.file, half)
    ? 'It is kept, and asked about when this job is opened here again.'
    : 'It could not be kept either.';
  return `Not saved: ${mark}. ${kept}`;
}

/** One line about a piece that was named and left with nothing noted of it; null: there is none. */
function leftNamed(state: State, files: Files): string | null {
  const name = onlyNamed(state);
  if (name === null || state.open === null) return null;
  return files.keepHalf(state.open.file, halfMade(state))
    ? onlyNamedSaid(name)
    : `${name} is not in the file yet, and its name could not be kept.`;
}

/** One line about the text that was being typed when they were left; null: none, or one that only looks for something. */
function leftTyped(state: State, files: Files): string | null {
  const text = typedNow(state);
  const { open } = state;
  const half = halfMade(state);
  const begun = begunJob(state);
  // What was only offered, and left as it stood, is nobody's text.
  if (text === '' || (begun !== text && !Object.values(half.drafts).includes(text))) return null;
  const isKept =
    begun === text
      ? files.keepHalf('.', { drafts: { [JOB_DRAFT]: begun }, wish: null })
      : open !== null && files.keepHalf(open.file, half);
  return isKept
    ? 'What you were typing is kept, and stands where you left it.'
    : `What you were typing could not be kept: ${text}`;
}

/** What was left typed of a job that is to be started there. */
function begunIn(folder: string): { begun?: string } {
  const begun = readHalf(folder).drafts[JOB_DRAFT];
  return begun === undefined ? {} : { begun };
}

/** Opened on a folder, `file` is null; on a file, it is a name in the folder. */
export function showOf(
  { folder, file }: { folder: string; file: string | null },
  world: World,
  outside: {
    shelf: Shelf;
    timers: Timers;
    strange?: readonly string[];
    ascii?: boolean | undefined;
    palette?: Palette;
    guide?: boolean | undefined;
    presses?: OwnPresses;
    /** What is wrong in the user's settings; null: nothing. */
    odd?: string | null;
    /** Other benches that are searched. */
    others?: readonly string[];
  },
): Show<State> {
  const { env, platform, stdout } = world;
  const { state, effects } = start({
    on: file === null ? { folder } : { file },
    ...drawnSize(stdout, platform),
    colour: colourAllowed(env),
    ascii: outside.ascii ?? asciiOnly(env, platform),
    now: nowHere(world),
    palette: outside.palette ?? 'usual',
    guide: outside.guide ?? false,
    presses: outside.presses ?? {},
    ...(file === null ? begunIn(outside.shelf.real(folder)) : {}),
  });
  const { shelf, timers, strange, odd = null } = outside;
  const files = filesIn(folder, world, shelf, strange, odd, outside.others);
  return {
    first: state,
    effects,
    update,
    app: async () => (await import('./app.tsx')).App,
    frame(now) {
      const { lines, cursor } = picture(now);
      return { rows: lines.map((line) => paint(line, now)), cursor };
    },
    hands: files.hands,
    attend: (loop) => attendFiles(loop, folder, files, shelf, timers, () => nowHere(world)),
    takesCtrlZ: (now) => openOf(now).text() !== null,
    asksFirst: (now) => openOf(now).asked() !== null,
    async farewell(last) {
      const { open } = last;
      const left = await files.leave();
      const next = open === null ? null : nextSaid(open.job, nowHere(world));
      const line = open === null ? `Bench: ${folder}` : `${open.file}: ${next}`;
      const gaps = open === null ? [] : openings(open.job).filter((o) => o.covered === null);
      const gap =
        gaps.length === 0
          ? null
          : `Stands open: ${list(gaps.map((o) => o.name))}. Covered, plugged? + notes how.`;
      const unsaved = leftUnsaved(last, files);
      const typed = leftTyped(last, files);
      const named = leftNamed(last, files);
      const lines = [...(left === null ? [] : left.split('\n')), gap, unsaved, named, typed, line];
      const said = lines.filter((l) => l !== null).map(safeLine);
      return { say: said.join('\n'), unsaved: unsaved !== null };
    },
  };
}

/** What is next, or what it waits for. */
function nextSaid(job: Job, now: string): string {
  return nextNow(job, now)?.say ?? nothingNext(job, backNow(job, now), now);
}
