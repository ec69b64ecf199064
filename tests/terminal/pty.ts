/**
 * A person at a terminal: starts a program in a real pseudo-terminal, types, and sees what is visible.
 * Nothing here waits for time to pass: `until` waits for what is on the screen, and gives up with the screen.
 *
 * What is seen are whole frames only. A program on the alternate screen says where an update of it begins and ends
 * (synchronized output, private mode 2026), and terminals that know the mode show nothing of it in between; a
 * frame is what stands at such an end. On the normal screen, where a shell speaks too, each piece of output counts.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type IPty, spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';
import { onTestFinished } from 'vitest';
import { pinnedEnv } from './world.ts';

/** ms. Only how long a failing test takes. */
const GIVE_UP = 30_000;

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
  /** Waits for a frame with this text, or of which the test answers true; answers that very frame. */
  until(seen: string | RegExp | ((frame: string) => boolean)): Promise<string>;
  /** Waits until something is true of all bytes that have come; answers them. */
  untilBytes(isTrue: (bytes: string) => boolean): Promise<string>;
  /** The last whole frame, blanks at line ends cut off. Later than the one that `until` answered, perhaps. */
  frame(): string;
  /** All bytes that the program has written. */
  bytes(): string;
  resize(columns: number, rows: number): void;
  kill(signal: NodeJS.Signals): void;
  readonly pid: number;
  /** Whether the alternate screen is shown now. */
  alternate(): boolean;
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
  let frame = '';
  let ended: { code: number; signal: number } | null = null;
  /** What is waited for: asked anew with each frame, each piece of output and at the end. */
  const waiting = new Set<() => void>();
  const tell = () => {
    for (const look of [...waiting]) look();
  };
  const alternate = () => terminal.buffer.active.type === 'alternate';

  function visible(): string {
    const buffer = terminal.buffer.active;
    const lines = Array.from(
      { length: terminal.rows },
      (_, i) => buffer.getLine(buffer.baseY + i)?.translateToString(true) ?? '',
    );
    return lines.join('\n');
  }
  function see(): void {
    frame = visible();
    tell();
  }

  // A terminal answers what it is asked.
  terminal.onData((answer) => pty.write(answer));
  terminal.parser.registerCsiHandler({ prefix: '?', final: 'l' }, ([mode]) => {
    if (mode === 2026) see();
    return false;
  });
  pty.onData((data) => {
    log += data;
    terminal.write(data, () => (alternate() ? tell() : see()));
  });
  pty.onExit(({ exitCode, signal }) => {
    // Only when all that it wrote has been read; what stands then stays, whole or not.
    terminal.write('', () => {
      ended = { code: exitCode, signal: signal ?? 0 };
      see();
    });
  });
  onTestFinished(() => {
    if (ended === null) endGroup(pty.pid);
    terminal.dispose();
  });

  /** Waits until `ask` has an answer. Where the program ends, nothing more can come. */
  function wait<T>(what: string, ask: () => T | null): Promise<T> {
    return new Promise((done, fail) => {
      const over = () => {
        clearTimeout(timer);
        waiting.delete(look);
      };
      const look = () => {
        const answer = ask();
        if (answer === null && ended === null) return;
        over();
        if (answer === null) fail(sight(`It ended before: ${what}`));
        else done(answer);
      };
      const timer = setTimeout(() => {
        over();
        fail(sight(`Not seen: ${what}`));
      }, GIVE_UP);
      waiting.add(look);
      look();
    });
  }

  function sight(say: string): Error {
    const end = ended === null ? '' : `\nended with ${JSON.stringify(ended)}`;
    const line = '-'.repeat(terminal.cols);
    return new Error(`${say}${end}\n${line}\n${frame}\n${line}`);
  }

  return {
    press: (...keys) => pty.write(keys.join('')),
    until(seen) {
      const isSeen =
        typeof seen === 'function'
          ? seen
          : (text: string) => (typeof seen === 'string' ? text.includes(seen) : seen.test(text));
      return wait(String(seen), () => (isSeen(frame) ? frame : null));
    },
    untilBytes: (isTrue) => wait(String(isTrue), () => (isTrue(log) ? log : null)),
    frame: () => frame,
    bytes: () => log,
    resize(c, r) {
      terminal.resize(c, r);
      pty.resize(c, r);
    },
    kill: (signal) => process.kill(pty.pid, signal),
    pid: pty.pid,
    alternate,
    exit: () => wait('its end', () => ended),
  };
}
