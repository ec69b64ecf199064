/** A program in a pseudo-terminal, for measuring: bytes and when they came, without an emulator that costs time. */
import { spawn } from '@lydell/node-pty';
import { pinnedEnv } from '../terminal/world.ts';

/** ms. A program that is silent for so long has failed. */
const GIVE_UP = 20_000;

export interface Terminal {
  pid: number;
  press(keys: string): void;
  /** Waits until all that came since the last call is true of it; answers that text, and the ms until it came. */
  until(isTrue: (bytes: string) => boolean): Promise<{ bytes: string; ms: number }>;
  /** Ends it and waits. */
  end(keys: string): Promise<void>;
}

/** The clock of `until` begins with the start, and then with each press. */
export function open(
  args: readonly string[],
  folder: string,
  columns = 80,
  rows = 24,
  more: Record<string, string> = {},
): Terminal {
  let from = performance.now();
  let bytes = '';
  let heard = () => {};
  const pty = spawn(process.execPath, [...args], {
    name: 'xterm-256color',
    cols: columns,
    rows,
    cwd: folder,
    env: { ...pinnedEnv(folder), ...more },
  });
  pty.onData((data) => {
    bytes += data;
    heard();
  });
  const ended = new Promise<void>((done) => pty.onExit(() => done()));
  return {
    pid: pty.pid,
    press(keys) {
      from = performance.now();
      pty.write(keys);
    },
    until(isTrue) {
      return new Promise((done, fail) => {
        const timer = setTimeout(() => {
          fail(new Error(`nothing came; so far: ${JSON.stringify(bytes.slice(-2000))}`));
        }, GIVE_UP);
        heard = () => {
          if (!isTrue(bytes)) return;
          const answer = { bytes, ms: performance.now() - from };
          clearTimeout(timer);
          heard = () => {};
          bytes = '';
          done(answer);
        };
        heard();
      });
    },
    async end(keys) {
      pty.write(keys);
      await ended;
    },
  };
}

/** The end of a frame: what a terminal may show at once has been said. */
export const aFrame = (bytes: string): boolean => bytes.endsWith('\x1b[?2026l');
