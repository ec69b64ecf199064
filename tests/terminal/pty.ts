/**
 * A person at a terminal: starts a program in a real pseudo-terminal, types, and sees what is visible.
 * Nothing here waits for time to pass: `until` waits for what is on the screen, and gives up with the screen.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pass } from 'node:timers/promises';
import { type IPty, spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';
import { onTestFinished } from 'vitest';
import { pinnedEnv } from './world.ts';

/** ms. Only how long a failing test takes. */
const GIVE_UP = 10_000;

export interface How {
  columns?: number;
  rows?: number;
  /** The folder it is started in; a new empty one when left out. */
  folder?: string;
  /** On top of the pinned environment; undefined takes a variable away. */
  env?: Record<string, string | undefined>;
  /** Another program than Node. */
  program?: string;
}

export interface Person {
  /** Types it, all in one write. */
  press(...keys: string[]): void;
  /** Waits until the text is to be seen, or the test answers true; answers the screen. */
  until(seen: string | RegExp | ((screen: string) => boolean)): Promise<string>;
  /** Waits until something is true of all bytes that have come. */
  untilBytes(true_: (bytes: string) => boolean): Promise<void>;
  /** What is to be seen now, blanks at line ends cut off. */
  screen(): string;
  /** All bytes that the program has written. */
  bytes(): string;
  resize(columns: number, rows: number): void;
  kill(signal: NodeJS.Signals): void;
  readonly pid: number;
  /** Whether the alternate screen is shown now. */
  alternate(): boolean;
  cursor(): { column: number; row: number };
  /** What comes while nobody does anything, in so many ms: here the passing of time is what is looked at. */
  idle(ms: number): Promise<string>;
  /** Waits for its end. `signal` is 0 when it ended by itself. */
  exit(): Promise<{ code: number; signal: number }>;
}

/** A new folder that is gone when the test is over. */
export function newFolder(name = 'putback-terminal-'): string {
  const folder = mkdtempSync(join(tmpdir(), name));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Starts Node with these arguments in a terminal; whatever is left of it is killed when the test is over. */
export function start(args: readonly string[], how: How = {}): Person {
  const folder = how.folder ?? newFolder();
  const columns = how.columns ?? 80;
  const rows = how.rows ?? 24;
  const env: Record<string, string | undefined> = { ...pinnedEnv(folder), ...how.env };
  const pty = spawn(how.program ?? process.execPath, [...args], {
    name: env.TERM ?? 'xterm-256color',
    cols: columns,
    rows,
    cwd: folder,
    env: Object.fromEntries(Object.entries(env).filter(([, v]) => v !== undefined)),
  });
  return attach(pty, columns, rows);
}

/** The program in the terminal and all it has started; it may have ended a moment ago. */
function endGroup(pid: number): void {
  try {
    process.kill(-pid, 'SIGKILL');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}

function attach(pty: IPty, columns: number, rows: number): Person {
  const terminal = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
  let log = '';
  let ended: { code: number; signal: number } | null = null;
  const changed = new Set<() => void>();
  const tell = () => {
    for (const call of [...changed]) call();
  };
  // A terminal answers what it is asked.
  terminal.onData((answer) => pty.write(answer));
  pty.onData((data) => {
    log += data;
    terminal.write(data, tell);
  });
  pty.onExit(({ exitCode, signal }) => {
    // Only when all that it wrote is to be seen.
    terminal.write('', () => {
      ended = { code: exitCode, signal: signal ?? 0 };
      tell();
    });
  });
  onTestFinished(() => {
    if (ended === null) endGroup(pty.pid);
    terminal.dispose();
  });

  function screen(): string {
    const buffer = terminal.buffer.active;
    const lines = Array.from(
      { length: terminal.rows },
      (_, i) => buffer.getLine(buffer.baseY + i)?.translateToString(true) ?? '',
    );
    return lines.join('\n');
  }

  function wait(what: string, isTrue: () => boolean): Promise<void> {
    return new Promise((done, fail) => {
      const finish = (how: () => void) => {
        clearTimeout(timer);
        changed.delete(look);
        how();
      };
      const look = () => {
        if (isTrue()) finish(done);
        else if (ended !== null) finish(() => fail(sight(`It ended before: ${what}`)));
      };
      const timer = setTimeout(() => finish(() => fail(sight(`Not seen: ${what}`))), GIVE_UP);
      changed.add(look);
      look();
    });
  }

  function sight(say: string): Error {
    const end = ended === null ? '' : `\nended with ${JSON.stringify(ended)}`;
    return new Error(
      `${say}${end}\n${'-'.repeat(terminal.cols)}\n${screen()}\n${'-'.repeat(terminal.cols)}`,
    );
  }

  return {
    press: (...keys) => pty.write(keys.join('')),
    async until(seen) {
      const isSeen =
        typeof seen === 'function'
          ? () => seen(screen())
          : () => (typeof seen === 'string' ? screen().includes(seen) : seen.test(screen()));
      await wait(String(seen), isSeen);
      return screen();
    },
    untilBytes: (isTrue) => wait('bytes', () => isTrue(log)),
    screen,
    bytes: () => log,
    resize(c, r) {
      terminal.resize(c, r);
      pty.resize(c, r);
    },
    kill: (signal) => process.kill(pty.pid, signal),
    pid: pty.pid,
    alternate: () => terminal.buffer.active.type === 'alternate',
    cursor: () => ({ column: terminal.buffer.active.cursorX, row: terminal.buffer.active.cursorY }),
    async idle(ms) {
      const from = log.length;
      await pass(ms);
      return log.slice(from);
    },
    async exit() {
      if (ended === null) {
        await new Promise<void>((done, fail) => {
          const timer = setTimeout(() => fail(sight('It did not end')), GIVE_UP);
          const look = () => {
            if (ended === null) return;
            clearTimeout(timer);
            changed.delete(look);
            done();
          };
          changed.add(look);
        });
      }
      return ended ?? { code: -1, signal: -1 };
    },
  };
}
