/** The screens opened on a terminal, and the terminal left clean however they end. */
import { basename, dirname } from 'node:path';
import { PassThrough } from 'node:stream';
import { setTimeout as later } from 'node:timers/promises';
import type { Instance } from 'ink';
import { ownFault } from '../../own-fault.ts';
import type { World } from '../../world.ts';
import type { Press } from '../kit/press.ts';
import { type Painted, paintFirst } from './first-frame.ts';
import { cannotOpen, colourAllowed, drawnSize, readOutAsked } from './guard.ts';
import { tellPresses } from './held.ts';
import { createLoop, type Hands } from './loop.ts';
import { thinned } from './loop-output.ts';
import type { HandOver } from './loop-view.tsx';
import { shelf } from './shelf.ts';
import type { Show } from './show.ts';
import { cleanStdin } from './stdin-stream.ts';
import { stopUntilContinued } from './stopped.ts';
import { timers } from './timers.ts';

export type Target = { file: string } | { folder: string };

/** How the screens are to look, where that is said on the command line. */
interface How {
  /** Read out as plain lines. */
  lines?: boolean;
  /** 7-bit characters only. */
  ascii?: boolean;
  /** What to try is said on the way. */
  guide?: boolean;
}

/** A frame at most every 4 ms: the answer to a key must not wait for the end of a longer pause. */
const FRAMES_A_SECOND = 250;
/** ms. So long the first frame waits for what it is to show; a slow disk gets an empty one. */
const FIRST_WAIT = 100;

/**
 * What an earlier program that was killed may have left on: mouse, focus reports, bracketed paste, the kitty
 * keyboard. The Linux console would print the last one's letter.
 */
function modeReset(term: string | undefined): string {
  const off = [1000, 1002, 1003, 1004, 1006, 2004].map((mode) => `\x1b[?${mode}l`).join('');
  return term === 'linux' ? off : `${off}\x1b[<u`;
}

/**
 * Plays it until it ends. Ink is loaded when colour is settled, since its colours read the environment once, and when
 * the first frame is painted. Exit code 0 when it was ended, 1 by a fault, 3 when it was not waited
 * for the disk; a signal ends the process by itself.
 */
export async function play<S>(load: () => Promise<Show<S>>, world: World): Promise<number> {
  const { stdin, stdout, stderr, env, platform } = world;
  // From here on keys are kept as they are pressed, and not edited by the terminal's driver.
  stdin.setRawMode(true);
  // biome-ignore lint/style/noProcessEnv: Ink's colours know NO_COLOR only by this name.
  if (!colourAllowed(env)) process.env.FORCE_COLOR = '0';
  const show = await load().catch((error) => {
    stdin.setRawMode(false);
    throw error;
  });

  const hands: Hands = {
    ...show.hands,
    ring: () => void stdout.write('\x07'),
    soon: timers.soon,
  };
  const loop = createLoop(show, hands);
  const disk = show.attend(loop);
  const clean = cleanStdin(stdin, new PassThrough(), timers, loop.quit);
  let ink: Instance | null = null;
  /** Null while the terminal is not ours. */
  let handOver: HandOver | null = null;
  let painted: Painted | null = null;

  /** All that is drawn goes through it: it knows what is on the screen. */
  const drawn = thinned(stdout);
  let resized = false;
  function size(): void {
    resized = true;
    const { columns, rows } = drawnSize(stdout, 'linux');
    // Ink would run a program to find out, for each frame.
    Object.assign(stdout, { columns, rows });
    // Nobody knows what the terminal made of the last frame (wrapped, cut, moved), so the next one is drawn on an empty screen.
    if (ink !== null && handOver !== null) {
      ink.clear();
      drawn.write('\x1b[H\x1b[J');
    }
    loop.happen({ on: 'size', ...drawnSize(stdout, platform) });
  }

  /** A resize that ends at the same size: Node says nothing of it, but the terminal has lost the frame. */
  function maybeResized(): void {
    setImmediate(() => {
      if (!resized) stdout.emit('resize');
      resized = false;
    });
  }

  async function stop(): Promise<void> {
    const take = handOver;
    if (take === null || platform === 'win32') return;
    handOver = null;
    const takeBack = await take();
    await stopUntilContinued();
    await takeBack();
    handOver = take;
    // The terminal may have become another size meanwhile.
    process.kill(process.pid, 'SIGWINCH');
  }

  function own(press: Press): (() => void) | null {
    if (press === 'ctrl-c' && !show.asksFirst(loop.state())) return loop.quit;
    if (press === 'ctrl-z' && !show.takesCtrlZ(loop.state())) {
      return () => void stop().catch(loop.fail);
    }
    disk.pressed();
    return null;
  }

  stdout.on('error', loop.quit);
  process.on('uncaughtException', loop.fail);
  process.on('unhandledRejection', loop.fail);
  let last = '';
  let code = 0;
  try {
    await Promise.race([loop.idle(), later(FIRST_WAIT, null, { ref: false })]);
    stdout.write(modeReset(env.TERM));
    size();
    // Before Ink's own listener: the frame it draws then is already one for the new size.
    stdout.on('resize', size);
    process.on('SIGWINCH', maybeResized);
    painted = paintFirst(show.frame(loop.state()), world);
    const [{ mount }, App] = await Promise.all([import('./loop-view.tsx'), show.app()]);
    const onReady = (how: HandOver) => {
      handOver = how;
    };
    ink = mount(
      { loop, App, own, told: tellPresses(() => performance.now()), onReady },
      {
        stdin: clean,
        stdout: painted.handOn(drawn),
        stderr,
        // CI=1 in somebody's shell does not mean that this is no terminal.
        interactive: true,
        alternateScreen: true,
        incrementalRendering: true,
        exitOnCtrlC: false,
        maxFps: FRAMES_A_SECOND,
      },
    );
    painted.done();
    const done = await Promise.race([loop.ended, ink.waitUntilExit()]);
    const left = await show.farewell(loop.state());
    last = `${left.say}\n`;
    code = left.unsaved ? 3 : 0;
    if (done === false) {
      last = 'putback: ended before the last mark was on the disk; it may be missing.\n';
      code = 3;
    }
  } catch (error) {
    world.forget?.();
    last = `${ownFault(error, 'Everything that was shown as done is in the file.')}\n`;
    code = 1;
  }
  if (ink === null && painted !== null) painted.undo();
  else if (ink === null) stdin.setRawMode(false);
  ink?.unmount();
  await ink?.waitUntilExit().catch(() => {});
  disk.stop();
  stdout.off('resize', size);
  process.off('SIGWINCH', maybeResized);
  process.off('uncaughtException', loop.fail);
  process.off('unhandledRejection', loop.fail);
  (code === 0 ? stdout : stderr).write(last);
  // Whatever still hangs would keep the process alive for ever.
  if (code === 3) process.exit(code);
  return code;
}

/** The line that says why not, on stderr, and the exit code; null when the screens can be opened. */
export function refuseToOpen(target: Target, world: World): number | null {
  const { stdin, stdout, stderr, env } = world;
  const said = cannotOpen(
    { stdinIsTerminal: stdin.isTTY, stdoutIsTerminal: stdout.isTTY, env },
    target,
  );
  if (said === null) return null;
  stderr.write(`${said}\n`);
  return 2;
}

/** What is said on the command line goes before the environment, and that before the settings. */
async function lookOf(how: How, { env }: World) {
  const [{ benchFolders, findUser, oddInUser }, { ownPresses }] = await Promise.all([
    import('../../diary/user.ts'),
    import('../show/own-keys.ts'),
  ]);
  let presses = {};
  const user = findUser(env, ({ keys }, report) => {
    presses = ownPresses(keys, report);
  });
  const { settings } = user;
  const ascii = how.ascii ?? (settings.signs === 'ascii' ? true : undefined);
  return {
    look: {
      ascii,
      palette: settings.colours,
      presses,
      odd: oddInUser(user),
      guide: how.guide,
      others: benchFolders(user, env),
    },
    readOut: how.lines || readOutAsked(env) || settings['read-out'] === 'always',
  };
}

/**
 * Opens a job file or a bench, by its absolute path, and answers the exit code: 0 when it was left, 1 after a
 * fault of the program, 2 where there is no terminal for it, 3 when it was left before a mark was on the disk.
 */
export async function openScreens(target: Target, world: World, how: How = {}): Promise<number> {
  const { look, readOut } = await lookOf(how, world);
  const load = async () => {
    const [{ showOf }, { cleanFolder }] = await Promise.all([
      import('./loop-show.ts'),
      import('../../job/save/clean.ts'),
    ]);
    const where =
      'file' in target
        ? { folder: dirname(target.file), file: basename(target.file) }
        : { folder: target.folder, file: null };
    // What a killed run left beside the files is put right before anything is shown.
    const strange = await cleanFolder(where.folder);
    return showOf(where, world, { shelf, timers, strange, ...look });
  };
  if (readOut) {
    const [show, { playLines }] = await Promise.all([load(), import('./lines.ts')]);
    return await playLines(show, world);
  }
  const refused = refuseToOpen(target, world);
  return refused ?? (await play(load, world));
}
