/** The stream that Ink reads from: the terminal's, through the cleaner. */
import { createCleaner } from './stdin.ts';
import type { Timers } from './timers.ts';

/** What Ink asks of its input: a stream, and a terminal's raw mode. */
export type CleanStdin = NodeJS.ReadableStream & {
  isTTY: true;
  setRawMode(on: boolean): CleanStdin;
  ref(): CleanStdin;
  unref(): CleanStdin;
};

/**
 * Reads `source` only while raw mode is on, so that a program that was handed the terminal gets every key.
 * `ended` is called when there is no terminal any more.
 */
export function cleanStdin(
  source: NodeJS.ReadStream,
  through: NodeJS.ReadWriteStream,
  timers: Timers,
  ended: () => void,
): CleanStdin {
  const cleaner = createCleaner();
  let takeBack: (() => void) | null = null;
  let pushes = 0;

  function give(text: string): void {
    if (text !== '') through.write(text);
    takeBack?.();
    const ms = cleaner.wait();
    takeBack = ms === null ? null : timers.later(ms, silence);
  }

  /** The time is over. Input that came while the program was busy is not read yet, so that is no silence. */
  function silence(): void {
    const before = pushes;
    timers.soon(() => {
      if (pushes === before) give(cleaner.quiet());
    });
  }

  function came(chunk: string | Buffer): void {
    pushes += 1;
    give(cleaner.push(chunk.toString()));
  }

  source.setEncoding('utf8');
  source.on('end', () => {
    // What waited for more gets none.
    if (cleaner.wait() !== null) give(cleaner.quiet());
    ended();
  });
  source.on('error', ended);

  const clean: CleanStdin = Object.assign(through, {
    isTTY: true as const,
    setRawMode(on: boolean) {
      source.setRawMode(on);
      if (on) {
        source.on('data', came);
        source.resume();
      } else {
        source.off('data', came);
        source.pause();
        takeBack?.();
        takeBack = null;
      }
      return clean;
    },
    ref() {
      source.ref();
      return clean;
    },
    unref() {
      source.unref();
      return clean;
    },
  });
  return clean;
}
