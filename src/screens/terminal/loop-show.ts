/** Putback's own show: its first state, its pictures, and hands for one folder of job files. */
import { safeLine } from '../../model/safe.ts';
import { nextWork } from '../../plan/next.ts';
import type { World } from '../../world.ts';
import { start } from '../base/start.ts';
import type { State } from '../base/state.ts';
import { typing } from '../base/takes.ts';
import { update } from '../show/update.ts';
import { App } from './app.tsx';
import { asciiOnly, colourAllowed, drawnSize } from './guard.ts';
import { filesIn, type Shelf } from './loop-files.ts';
import { attendFiles } from './loop-watch.ts';
import type { Show } from './show.ts';
import type { Timers } from './stdin-stream.ts';

/** Opened on a folder, `file` is null; on a file, it is a name in the folder. */
export function showOf(
  { folder, file }: { folder: string; file: string | null },
  world: World,
  outside: { shelf: Shelf; timers: Timers },
): Show<State> {
  const { env, platform, stdout } = world;
  const { state, effects } = start({
    on: file === null ? { folder } : { file },
    ...drawnSize(stdout, platform),
    colour: colourAllowed(env),
    ascii: asciiOnly(env, platform),
    now: world.now(),
  });
  const { shelf, timers } = outside;
  const files = filesIn(folder, world, shelf);
  return {
    first: state,
    effects,
    update,
    App,
    hands: files.hands,
    attend: (loop) => attendFiles(loop, folder, files, shelf, timers, world.now),
    takesCtrlZ: (now) => typing(now) !== null,
    farewell: ({ open }) => {
      if (open === null) return safeLine(`Bench: ${folder}`);
      const next = nextWork(open.job)?.say ?? 'Nothing is next.';
      return safeLine(`${open.file}: ${next}`);
    },
  };
}
