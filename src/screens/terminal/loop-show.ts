/** Putback's own show: its first state, its pictures, and hands for one folder of job files. */

import { safeLine } from '../../model/safe.ts';
import { list } from '../../model/words.ts';
import { nextWork } from '../../plan/next.ts';
import { openings } from '../../plan/openings.ts';
import type { World } from '../../world.ts';
import { start } from '../base/start.ts';
import type { State } from '../base/state.ts';
import { openOf } from '../show/screens.ts';
import { update } from '../show/update.ts';
import { App } from './app.tsx';
import { asciiOnly, colourAllowed, drawnSize } from './guard.ts';
import { filesIn } from './loop-files.ts';
import { attendFiles } from './loop-watch.ts';
import type { Shelf } from './shelf.ts';
import type { Show } from './show.ts';
import type { Timers } from './stdin-stream.ts';

/** Opened on a folder, `file` is null; on a file, it is a name in the folder. */
export function showOf(
  { folder, file }: { folder: string; file: string | null },
  world: World,
  outside: { shelf: Shelf; timers: Timers; strange?: readonly string[] },
): Show<State> {
  const { env, platform, stdout } = world;
  const { state, effects } = start({
    on: file === null ? { folder } : { file },
    ...drawnSize(stdout, platform),
    colour: colourAllowed(env),
    ascii: asciiOnly(env, platform),
    now: world.now(),
  });
  const { shelf, timers, strange } = outside;
  const files = filesIn(folder, world, shelf, strange);
  return {
    first: state,
    effects,
    update,
    App,
    hands: files.hands,
    attend: (loop) => attendFiles(loop, folder, files, shelf, timers, world.now),
    takesCtrlZ: (now) => openOf(now).text() !== null,
    async farewell({ open }) {
      const left = await files.leave();
      const next = open === null ? null : (nextWork(open.job)?.say ?? 'Nothing is next.');
      const line = open === null ? `Bench: ${folder}` : `${open.file}: ${next}`;
      const gaps = open === null ? [] : openings(open.job).filter((o) => o.covered === null);
      const said =
        gaps.length === 0
          ? []
          : [`Stands open: ${list(gaps.map((o) => o.name))}. Covered, plugged? + notes how.`];
      return [...(left === null ? [] : left.split('\n')), ...said, line].map(safeLine).join('\n');
    },
  };
}
