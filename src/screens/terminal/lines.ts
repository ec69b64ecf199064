/**
 * The screens read out: no alternate screen, no cursor that moves, each screen as plain lines in their order and each
 * change as the lines that are new. Keys come from a keyboard or a pipe.
 */
import { PassThrough } from 'node:stream';
import type { World } from '../../world.ts';
import type { State } from '../base/state.ts';
import { keyName } from '../kit/press.ts';
import { split } from '../kit/text.ts';
import { changedLines, cursorSaid } from '../show/read-out.ts';
import { type TypedBytes, typedIn } from './bytes.ts';
import { tellPresses } from './held.ts';
import { createLoop } from './loop.ts';
import type { Show } from './show.ts';
import { cleanStdin } from './stdin-stream.ts';
import { stopUntilContinued } from './stopped.ts';
import { timers } from './timers.ts';

/** What a press types where a text is asked for; empty: it does something else. */
function textOf(typed: TypedBytes): string {
  if ('paste' in typed) return '';
  if (typed.press === 'space') return ' ';
  return split(typed.press).length === 1 ? typed.press : '';
}

/** ms. Longer than any sitting. */
const LONG = 2 ** 30;

/** Plays it until it is left or the keys end; answers the exit code. */
export async function playLines(show: Show<State>, world: World): Promise<number> {
  const { stdin, stdout, stderr } = world;
  const loop = createLoop(show, {
    ...show.hands,
    ring: () => void (stdout.isTTY && stdout.write('\x07')),
    soon: timers.soon,
  });
  const disk = show.attend(loop);
  let last: State | null = null;
  /** Lines written so far. */
  let written = 0;
  /** While a press is carried out nothing is read out: what it leads to is told once, at its end. */
  let busy = false;
  let isStopped = false;
  const write = (text: string) => {
    written += 1;
    stdout.write(`${text}\n`);
  };
  const tell = () => {
    const state = loop.state();
    for (const line of changedLines(last, state)) write(line);
    last = state;
  };
  stdout.on('error', loop.quit);
  await (stdin.isTTY ? loop.idle() : loop.whole());
  tell();
  loop.subscribe(() => void (busy || tell()));

  const told = tellPresses(() => performance.now());
  const take = (typed: TypedBytes) => {
    if ('paste' in typed) return loop.happen({ on: 'paste', text: typed.paste });
    if (typed.press === 'ctrl-c' && !show.asksFirst(loop.state())) return loop.quit();
    if (typed.press === 'ctrl-z' && stdin.isTTY && !show.takesCtrlZ(loop.state()))
      return void stop().catch(loop.fail);
    disk.pressed();
    loop.happen({ on: 'press', press: typed.press, ...(stdin.isTTY ? told(typed.press) : {}) });
  };
  /** The same quiet line as before is no new line, but it is the answer to this press: it is read out once more. */
  const answer = (from: number, typed: TypedBytes) => {
    const { quiet, waiting } = loop.state();
    if (written !== from || waiting !== null || isStopped || loop.isLeaving()) return;
    if (quiet !== null) return write(quiet);
    if ('paste' in typed) return;
    write(cursorSaid(loop.state()) ?? `${keyName(typed.press)} changes nothing here.`);
  };
  const press = (typed: TypedBytes) => {
    const from = written;
    take(typed);
    answer(from, typed);
  };
  // From a pipe each key is pressed when all that the one before it led to has been read out; a text that is typed
  // somewhere goes in at once.
  let queue: Promise<unknown> = Promise.resolve();
  const waiting: TypedBytes[] = [];
  async function next(): Promise<void> {
    const typed = waiting.shift();
    if (!typed) return;
    const run = show.takesCtrlZ(loop.state()) ? textOf(typed) : '';
    let more = run;
    while (more !== '' && waiting[0]) {
      const letter = textOf(waiting[0]);
      if (letter === '') break;
      more += letter;
      waiting.shift();
    }
    const from = written;
    busy = true;
    take(more === run ? typed : { paste: more });
    await loop.whole();
    busy = false;
    tell();
    answer(from, typed);
    await next();
  }
  const came = (text: string) => {
    const all = typedIn(text, stdin.isTTY);
    if (stdin.isTTY) for (const typed of all) press(typed);
    else {
      waiting.push(...all);
      queue = queue.then(next);
    }
  };
  async function stop(): Promise<void> {
    if (world.platform === 'win32') return;
    isStopped = true;
    clean.setRawMode(false);
    await stopUntilContinued();
    clean.setRawMode(true);
    isStopped = false;
    // What stands above on the terminal is another program's by now.
    last = null;
    tell();
  }
  const raw = (on: boolean) => void (stdin.isTTY && stdin.setRawMode(on));
  const source = Object.assign(Object.create(stdin), { setRawMode: raw }) as NodeJS.ReadStream;
  const through = new PassThrough({ encoding: 'utf8' });
  const clean = cleanStdin(source, through, timers, () => through.end());
  clean.on('data', came);
  clean.on('end', () => {
    queue = queue.then(loop.quit);
  });
  clean.setRawMode(true);

  // A pipe that has ended keeps no program alive, and what is waited for may be another program's save.
  const sleep = timers.later(LONG, () => {});
  let code = 0;
  try {
    const done = await loop.ended;
    const left = await show.farewell(loop.state());
    code = left.unsaved || !done ? 3 : 0;
    const say = done
      ? left.say
      : 'putback: ended before the last mark was on the disk; it may be missing.';
    (code === 0 ? stdout : stderr).write(`${say}\n`);
  } finally {
    sleep();
    clean.setRawMode(false);
    disk.stop();
    stdin.destroy();
  }
  return code;
}
